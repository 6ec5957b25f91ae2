package org.varwright.isolation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.varwright.bank.Bank;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.Vocabulary;

/** What stands at the top of everything that is taken to the bank. */
public final class Cautions {
    private static final String TABLE = "29 CFR 1910.269 table R-6, up to 900 m altitude";
    /** Highest voltage of each row [V], distance phase to ground and phase to phase [m]. */
    private static final double[][] APPROACH = {
        {750, 0.33, 0.33},
        {5_000, 0.63, 0.63},
        {15_000, 0.65, 0.68},
        {36_000, 0.77, 0.89},
        {46_000, 0.84, 0.98},
        {72_500, 1.00, 1.20}
    };

    private static final double LOWEST_VOLTS = 301;
    private static final int PCB_YEAR = 1979;

    private Cautions() {}

    /**
     * Minimum approach distance.
     *
     * @param volts highest sustained voltage that the row was chosen by, line to line [V]
     * @param phaseToGroundMetres for a person at ground potential [m]
     * @param phaseToPhaseMetres between phases [m]
     * @param source table and its limits
     */
    public record Approach(double volts, double phaseToGroundMetres, double phaseToPhaseMetres, String source) {}

    /**
     * Minimum approach distance at the bank's highest sustained voltage, else its nominal voltage; empty below 301 V and above 72.5 kV, where that table has no row.
     *
     * <p><b>Source.</b> 29 CFR 1910.269 table R-6, altitude up to 900 m; above that its table R-5 applies and no distance is given here.
     */
    public static Optional<Approach> approach(Bank bank) {
        double volts = bank.system().maximumVolts().orElse(bank.system().nominalVolts());
        if (volts < LOWEST_VOLTS) {
            return Optional.empty();
        }
        for (double[] row : APPROACH) {
            if (volts <= row[0]) {
                return Optional.of(new Approach(volts, row[1], row[2], TABLE));
            }
        }
        return Optional.empty();
    }

    /** The cautions of a bank, the most important first. */
    public static List<String> of(Bank bank) {
        Vocabulary words = bank.words();
        List<String> all = new ArrayList<>();
        all.add(
                "Local codes, the owner's rules, the maker's instructions and the judgement of a licensed or authorised person"
                        + " come first. This is planning information worked out from a file; if the bank is not as the file says, stop.");
        all.add(
                "Not known counts as live, charged and unlocked. A lever, a lamp, a colour, a fuse or another circuit proves"
                        + " nothing; only a gap that is seen, or a test with a tester proved before and after, counts.");
        all.add(
                "A wait ends with: now prove dead. It is never a permission to touch. A failed discharge resistor makes any"
                        + " waiting worthless, and a unit behind an operated fuse keeps its charge whatever else is "
                        + words.grounded() + ".");
        all.add("A line or cable that stays joined to capacitors counts as live until it is shorted too"
                + " (29 CFR 1910.269(w)(1)(iii)).");
        all.add(
                "After a discharge voltage comes back by itself (dielectric absorption): the short stays on while anybody works.");
        all.add(
                "A tester that works with direct voltage (insulation tester, megohmmeter) leaves what it measured charged: discharge"
                        + " and short the unit before and after, each unit alone, and put its short back before the next one.");
        all.add("A " + words.groundingSwitch() + " is not a discharge device. A " + words.grounded() + " bus does not "
                + words.ground() + " a " + words.stage() + " behind its open switch, nor a floating neutral.");
        approach(bank)
                .ifPresentOrElse(
                        a -> all.add(String.format(
                                Locale.ROOT,
                                "Keep at least %.2f m from live parts (phase to %s; %.2f m phase to phase), %s. Above 900 m"
                                        + " altitude more; the owner's own distances come first.",
                                a.phaseToGroundMetres(),
                                words.ground(),
                                a.phaseToPhaseMetres(),
                                a.source())),
                        () -> all.add(
                                "Approach distances: no row of " + TABLE + " fits this voltage; use the owner's."));
        pcb(bank).ifPresent(all::add);
        all.add(
                "A bulged or leaking unit can burst and can hold its charge: keep clear until it is shorted from a distance.");
        all.add("If the scope changes, this sheet ends: have a new one made from where things stand.");
        return all;
    }

    private static Optional<String> pcb(Bank bank) {
        boolean all = !bank.positions().isEmpty()
                && bank.positions().stream()
                        .allMatch(p -> bank.unitAt(p)
                                .map(KnownUnit::made)
                                .orElse(OptionalInt.empty())
                                .isPresent());
        List<String> old = bank.units().stream()
                .filter(u -> u.made().isPresent() && u.made().getAsInt() <= PCB_YEAR)
                .map(u -> u.at().name())
                .toList();
        String rule = "a unit made before 2 July 1979 whose liquid is not known is taken to hold PCB at 500 ppm or more"
                + " (40 CFR 761.2(a)(4)): no bare skin, no drain, its own disposal";
        if (!old.isEmpty()) {
            return Optional.of("PCB: " + rule + ". Here: " + Phrases.list(old) + ".");
        }
        return all ? Optional.empty() : Optional.of("PCB: the year of some units is not on file; " + rule + ".");
    }
}
