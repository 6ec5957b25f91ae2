package org.varwright.bank;

import java.util.List;
import java.util.Optional;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * One capacitor bank. References by name have been checked when it was read.
 *
 * @param name of the bank
 * @param site where it stands
 * @param standard limits and words
 * @param system the supply
 * @param unitTypes types of unit, those of spares included
 * @param fuseTypes types of fuse
 * @param switchTypes types of switching device by their nameplates
 * @param stages in the order of the file
 * @param protection sensors with settings
 * @param control the controller
 * @param load what the bank compensates; empty where the file doesn't say
 * @param isolation how it is fed, entered and locked; empty where the file has no such part (then no order of work can be planned)
 * @param units what is known of units in place
 * @param spares units that could be fitted
 * @param label what is written or coded on the bank
 * @param note free text
 */
public record Bank(
        String name,
        Optional<String> site,
        Standard standard,
        SupplySystem system,
        List<UnitType> unitTypes,
        List<FuseType> fuseTypes,
        List<SwitchType> switchTypes,
        List<Stage> stages,
        List<Protection> protection,
        Optional<Control> control,
        Optional<Load> load,
        Optional<Isolation> isolation,
        List<KnownUnit> units,
        List<Spare> spares,
        Optional<String> label,
        Optional<String> note) {
    public Bank {
        unitTypes = List.copyOf(unitTypes);
        fuseTypes = List.copyOf(fuseTypes);
        switchTypes = List.copyOf(switchTypes);
        stages = List.copyOf(stages);
        protection = List.copyOf(protection);
        units = List.copyOf(units);
        spares = List.copyOf(spares);
    }

    /** A bank of which neither types of switch nor a load are known. */
    public Bank(
            String name,
            Optional<String> site,
            Standard standard,
            SupplySystem system,
            List<UnitType> unitTypes,
            List<FuseType> fuseTypes,
            List<Stage> stages,
            List<Protection> protection,
            Optional<Control> control,
            Optional<Isolation> isolation,
            List<KnownUnit> units,
            List<Spare> spares,
            Optional<String> label,
            Optional<String> note) {
        this(
                name,
                site,
                standard,
                system,
                unitTypes,
                fuseTypes,
                List.of(),
                stages,
                protection,
                control,
                Optional.empty(),
                isolation,
                units,
                spares,
                label,
                note);
    }

    /** The same bank with another isolation part. */
    public Bank with(Isolation other) {
        return new Bank(
                name,
                site,
                standard,
                system,
                unitTypes,
                fuseTypes,
                switchTypes,
                stages,
                protection,
                control,
                load,
                Optional.of(other),
                units,
                spares,
                label,
                note);
    }

    public Vocabulary words() {
        return Vocabulary.of(standard);
    }

    public Optional<Stage> stage(String stageName) {
        return stages.stream().filter(s -> s.name().equals(stageName)).findFirst();
    }

    /** The device that switches a stage; empty where the file names none or has no isolation part. */
    public Optional<Device> switchOf(Stage stage) {
        return stage.switchName().flatMap(device -> isolation.flatMap(i -> i.device(device)));
    }

    /** Every position of every stage, in order. */
    public List<UnitPosition> positions() {
        return stages.stream().flatMap(s -> s.positions().stream()).toList();
    }

    /** The position with this name, else one that differs from it only in blanks around the slashes or in capitals. */
    public Optional<UnitPosition> position(String written) {
        String wanted = normal(written);
        return positions().stream()
                .filter(p -> p.name().equals(written))
                .findFirst()
                .or(() -> positions().stream()
                        .filter(p -> normal(p.name()).equals(wanted))
                        .findFirst());
    }

    /**
     * The position with this name.
     *
     * @throws VarwrightException {@code POSITION_UNKNOWN} with the positions that the bank has
     */
    public UnitPosition requirePosition(String written, Place place) {
        return position(written)
                .orElseThrow(() -> new VarwrightException(Message.POSITION_UNKNOWN, place, written, positionHint()));
    }

    /** What positions look like in this bank, for messages. */
    public String positionHint() {
        List<UnitPosition> all = positions();
        return "positions of this bank run from \"" + all.getFirst().name() + "\" to \""
                + all.getLast().name() + "\"";
    }

    /** What is known of the unit at a position. */
    public Optional<KnownUnit> unitAt(UnitPosition position) {
        return units.stream().filter(u -> u.at().equals(position)).findFirst();
    }

    private static String normal(String written) {
        return written.strip().replaceAll("\\s*/\\s*", "/").toLowerCase(java.util.Locale.ROOT);
    }
}
