package org.varwright.bank;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A part of the bank that is switched as one.
 *
 * @param name unique among stages; also the name of its conductor under isolation
 * @param connection of the legs
 * @param switchName the device under isolation that switches it; empty where it has none of its own
 * @param layout of every leg, or of the first wye's where {@code second} is given
 * @param second layout of the second wye's legs where it differs
 * @param unit type of its units
 * @param fuse one a unit; empty where units are not individually fused
 * @param lineFuse one a phase ahead of the whole stage; empty where there is none
 * @param reactor one a phase
 * @param busMetres length of bus or cable from the common point to the stage [m]
 * @param strayHenries inductance of one phase of the stage's own wiring [H]
 * @param dischargePath a voltage transformer or coil through which its charge flows off; empty where there is none
 * @param label what is written or coded on it
 * @param note free text
 */
public record Stage(
        String name,
        Connection connection,
        Optional<String> switchName,
        LegLayout layout,
        Optional<LegLayout> second,
        UnitType unit,
        Optional<FuseType> fuse,
        Optional<FuseType> lineFuse,
        Optional<Reactor> reactor,
        OptionalDouble busMetres,
        OptionalDouble strayHenries,
        Optional<DischargePath> dischargePath,
        Optional<String> label,
        Optional<String> note) {

    /** A stage without line fuses and discharge path, whose bus and wiring nobody measured. */
    public Stage(
            String name,
            Connection connection,
            Optional<String> switchName,
            LegLayout layout,
            Optional<LegLayout> second,
            UnitType unit,
            Optional<FuseType> fuse,
            Optional<Reactor> reactor,
            Optional<String> label,
            Optional<String> note) {
        this(
                name,
                connection,
                switchName,
                layout,
                second,
                unit,
                fuse,
                Optional.empty(),
                reactor,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                label,
                note);
    }

    /** Whether the units are three-phase units: then a position is the can and {@link #legs()} are inside it. */
    public boolean hasThreePhaseUnits() {
        return unit.threePhase().isPresent();
    }

    /** Whether the legs stand between the lines: a three-phase unit says so by its inside. */
    public boolean isDelta() {
        return unit.threePhase()
                .map(inside -> inside == InternalConnection.DELTA)
                .orElse(connection == Connection.DELTA);
    }

    /** Names of the legs in order. */
    public List<String> legs() {
        return connection.legs();
    }

    /** Layout of the named leg. */
    public LegLayout layoutOf(String leg) {
        return connection.isDoubleWye() && leg.endsWith("2") ? second.orElse(layout) : layout;
    }

    /** Every position in order: leg, string, group, unit; for three-phase units one position a can. */
    public List<UnitPosition> positions() {
        List<UnitPosition> positions = new ArrayList<>();
        for (String leg : hasThreePhaseUnits() ? List.of("") : legs()) {
            LegLayout legLayout = layoutOf(leg);
            for (int s = 1; s <= legLayout.strings(); s++) {
                for (int g = 1; g <= legLayout.groups(); g++) {
                    for (int u = 1; u <= legLayout.units(); u++) {
                        positions.add(UnitPosition.of(name, leg, legLayout, s, g, u));
                    }
                }
            }
        }
        return List.copyOf(positions);
    }

    /** Rated reactive power of the stage: the sum of its units' ratings [var]. */
    public double ratedVars() {
        return positions().size() * unit.ratedVars();
    }
}
