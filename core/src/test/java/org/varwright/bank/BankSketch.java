package org.varwright.bank;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Puts a bank together for a test: one line where a bank file would take a page. All values are the test's own. */
public final class BankSketch {
    private Standard standard = Standard.IEEE;
    private double nominalVolts = 13.8e3;
    private double hertz = 60.0;
    private SystemGrounding grounding = SystemGrounding.SOLID;
    private Optional<Control> control = Optional.empty();
    private final List<UnitType> types = new ArrayList<>();
    private final List<FuseType> fuses = new ArrayList<>();
    private final List<Stage> stages = new ArrayList<>();
    private final List<KnownUnit> units = new ArrayList<>();
    private final List<Spare> spares = new ArrayList<>();

    public BankSketch standard(Standard value) {
        standard = value;
        return this;
    }

    public BankSketch system(double volts, double frequencyHertz, SystemGrounding neutral) {
        nominalVolts = volts;
        hertz = frequencyHertz;
        grounding = neutral;
        return this;
    }

    public BankSketch reclose(double seconds) {
        control = Optional.of(new Control(Optional.empty(), OptionalDouble.of(seconds), Optional.empty()));
        return this;
    }

    public BankSketch type(UnitType type) {
        types.add(type);
        return this;
    }

    public BankSketch stage(String name, Connection connection, LegLayout layout, UnitType type) {
        return stage(name, connection, layout, type, Optional.empty());
    }

    public BankSketch stage(
            String name, Connection connection, LegLayout layout, UnitType type, Optional<FuseType> fuse) {
        if (!types.contains(type)) {
            types.add(type);
        }
        fuse.filter(f -> !fuses.contains(f)).ifPresent(fuses::add);
        stages.add(new Stage(
                name,
                connection,
                Optional.empty(),
                layout,
                Optional.empty(),
                type,
                fuse,
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
        return this;
    }

    public BankSketch known(String position, String serial, double farads) {
        UnitPosition at = build().position(position).orElseThrow();
        units.add(new KnownUnit(
                at,
                serial.isEmpty() ? Optional.empty() : Optional.of(serial),
                farads > 0.0 ? OptionalDouble.of(farads) : OptionalDouble.empty(),
                OptionalInt.empty(),
                Optional.empty(),
                Optional.empty()));
        return this;
    }

    public Bank build() {
        return new Bank(
                "sketch",
                Optional.empty(),
                standard,
                new SupplySystem(
                        nominalVolts,
                        OptionalDouble.empty(),
                        hertz,
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        grounding),
                types,
                fuses,
                stages,
                List.of(),
                control,
                Optional.empty(),
                units,
                spares,
                Optional.empty(),
                Optional.empty());
    }

    /** A single-phase type; {@code sections} 0 leaves what is inside unknown. */
    public static UnitType type(
            String name,
            double vars,
            double volts,
            double hertz,
            Tolerance tolerance,
            int sections,
            int elements,
            boolean fused,
            Optional<DischargeDevice> discharge) {
        return type(name, vars, volts, hertz, tolerance, sections, elements, fused, discharge, Optional.empty());
    }

    public static UnitType type(
            String name,
            double vars,
            double volts,
            double hertz,
            Tolerance tolerance,
            int sections,
            int elements,
            boolean fused,
            Optional<DischargeDevice> discharge,
            Optional<InternalConnection> threePhase) {
        return new UnitType(
                name,
                vars,
                volts,
                hertz,
                tolerance,
                sections == 0 ? Optional.empty() : Optional.of(new Construction(sections, elements, fused)),
                discharge,
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                threePhase,
                Optional.empty(),
                Optional.empty());
    }

    /** An expulsion fuse with nothing known but its name. */
    public static FuseType fuse(String name) {
        return new FuseType(
                name,
                FuseType.Kind.EXPULSION,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
    }
}
