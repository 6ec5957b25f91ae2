package org.varwright.duty;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.network.Capacitances;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.quantity.Dimension;

/** Finds spares that look right by their kvar and are wrong by voltage or frequency (DUT-6). */
final class SpareStudy {
    /** Ratings this near count as the same on a plate. */
    private static final double SAME = 0.02;

    private SpareStudy() {}

    static List<WrongSpare> of(Bank bank, List<Spare> moreSpares) {
        List<WrongSpare> wrong = new ArrayList<>();
        Set<UnitType> onList = new LinkedHashSet<>();
        List<Spare> spares = new ArrayList<>(bank.spares());
        for (Spare spare : moreSpares) {
            if (spares.stream().noneMatch(s -> s.serial().equals(spare.serial()))) {
                spares.add(spare);
            }
        }
        for (Spare spare : spares) {
            onList.add(spare.unit());
            add(wrong, bank, spare.serial(), spare.unit(), spare.capacitanceFarads());
        }
        for (UnitType type : bank.unitTypes()) {
            if (!onList.contains(type)) {
                add(wrong, bank, "", type, OptionalDouble.empty());
            }
        }
        return wrong;
    }

    /** Stages with the same units are named once, with the first of them. */
    private static void add(List<WrongSpare> wrong, Bank bank, String serial, UnitType type, OptionalDouble measured) {
        Set<UnitType> seen = new LinkedHashSet<>();
        for (Stage stage : bank.stages()) {
            if (seen.add(stage.unit())) {
                differs(type, stage.unit())
                        .ifPresent(d -> wrong.add(wrongSpare(bank, serial, type, measured, stage, d)));
            }
        }
    }

    private static Optional<String> differs(UnitType type, UnitType wanted) {
        if (!same(type.ratedVars(), wanted.ratedVars()) || !type.threePhase().equals(wanted.threePhase())) {
            return Optional.empty();
        }
        List<String> parts = new ArrayList<>();
        if (!same(type.ratedVolts(), wanted.ratedVolts())) {
            parts.add(Dimension.VOLTAGE.format(type.ratedVolts()) + ", not "
                    + Dimension.VOLTAGE.format(wanted.ratedVolts()));
        }
        if (!same(type.ratedHertz(), wanted.ratedHertz())) {
            parts.add(Dimension.FREQUENCY.format(type.ratedHertz()) + ", not "
                    + Dimension.FREQUENCY.format(wanted.ratedHertz()));
        }
        return parts.isEmpty() ? Optional.empty() : Optional.of(String.join(" and ", parts));
    }

    private static boolean same(double a, double b) {
        return Math.abs(a - b) <= SAME * Math.abs(b);
    }

    private static WrongSpare wrongSpare(
            Bank bank, String serial, UnitType type, OptionalDouble measured, Stage stage, String differs) {
        UnitType wanted = stage.unit();
        double farads = measured.orElse(type.capacitanceFarads());
        double volts = Relocation.healthyUnitVolts(stage, bank.system().nominalVolts());
        double omega = bank.system().angularFrequency();
        double legs = type.threePhase().isPresent() ? 3.0 : 1.0;
        double ratio = farads / wanted.capacitanceFarads();
        double low = 1.0 + wanted.tolerance().low();
        double high = 1.0 + wanted.tolerance().high();
        boolean fits = ratio >= low * (1.0 - 1e-9) && ratio <= high * (1.0 + 1e-9);
        double ratedAmperes = 2.0 * Math.PI * type.ratedHertz() * type.capacitanceFarads() * type.legVolts();
        return new WrongSpare(
                serial,
                type.name(),
                stage.name(),
                differs,
                farads,
                wanted.capacitanceFarads(),
                legs * volts * volts * omega * farads,
                legs * volts * volts * omega * wanted.capacitanceFarads(),
                volts / type.legVolts(),
                volts * omega * farads / ratedAmperes,
                effect(bank, stage, type, farads),
                new Check(
                        (serial.isEmpty() ? "type " + type.name() : "spare " + serial) + " in " + stage.name()
                                + ": capacitance over that of the unit wanted",
                        ratio,
                        ratio < 1.0 ? low : high,
                        "",
                        fits ? Verdict.PASS : Verdict.WARN,
                        new Basis(
                                "DUT-6",
                                "C_spare/C_wanted, C = Q/(2π·f·V²)",
                                List.of(
                                        new Term("C_spare", "measured, else by its plate", farads, "F"),
                                        new Term("C_wanted", "by the plate", wanted.capacitanceFarads(), "F")),
                                Source.FIRST_PRINCIPLES)));
    }

    private static Optional<WrongSpare.Effect> effect(Bank bank, Stage stage, UnitType type, double farads) {
        UnitPosition first = stage.positions().getFirst();
        Network network =
                Network.of(bank, stage, Capacitances.known(bank).with(first, farads), Supply.nominal(bank.system()));
        return switch (network.healthy()) {
            case Solution.Singular singular -> Optional.empty();
            case Solution.Solved solved ->
                Optional.of(new WrongSpare.Effect(
                        first.name(),
                        solved.units().stream()
                                .filter(Solution.UnitValue::inService)
                                .mapToDouble(u -> perRated(u, first, type))
                                .max()
                                .orElseThrow(),
                        solved.sensors().stream().map(SpareStudy::sensor).toList()));
        };
    }

    /** The spare by its own plate, which is not that of its neighbours. */
    private static double perRated(Solution.UnitValue unit, UnitPosition spare, UnitType type) {
        return unit.unit().at().equals(spare) ? unit.volts().magnitude() / type.legVolts() : unit.voltsPerRated();
    }

    private static String sensor(Solution.SensorValue value) {
        Dimension dimension = value.senses().dimension();
        return value.name() + " "
                + dimension.format(value.secondary().orElse(value.primary()).magnitude())
                + (value.secondary().isPresent() ? " at the relay" : " primary");
    }
}
