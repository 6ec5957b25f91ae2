package org.varwright.fit;

import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitPosition;

/** The capacitances of a bank after a plan's lifts, for the first energization. */
public final class AsFitted {
    private AsFitted() {}

    /**
     * Capacitance of the units after the lifts, as far as somebody has measured them [F]. One that nobody measured is not in it, whatever its mates read.
     *
     * @param input what the plan started from
     * @param result the plan
     * @return positions in order; empty where a position of the bank is left without a unit, or holds one of which nothing conducts
     */
    public static Optional<Map<UnitPosition, Double>> of(FitInput input, FitResult result) {
        Map<String, Double> farads = new HashMap<>();
        Set<String> measured = new HashSet<>();
        Map<String, String> unitAt = new HashMap<>();
        for (Fitted unit : input.units()) {
            farads.put(unit.name(), unit.capacitanceFarads());
            if (unit.isMeasured()) {
                measured.add(unit.name());
            }
            if (unit.role() != Fitted.Role.EMPTY) {
                unitAt.put(unit.at().name(), unit.name());
            }
        }
        for (Spare spare : input.spares()) {
            OptionalDouble read = spare.capacitanceFarads();
            farads.put(spare.serial(), read.orElse(spare.unit().capacitanceFarads()));
            if (read.isPresent()) {
                measured.add(spare.serial());
            }
        }
        result.moves().forEach(move -> unitAt.remove(move.from()));
        result.moves().forEach(move -> unitAt.put(move.to(), move.serial()));
        Map<UnitPosition, Double> fitted = new LinkedHashMap<>();
        for (UnitPosition position : input.bank().positions()) {
            String unit = unitAt.getOrDefault(position.name(), "");
            double value = farads.getOrDefault(unit, 0.0);
            if (!(value > 0.0)) {
                return Optional.empty();
            }
            if (measured.contains(unit)) {
                fitted.put(position, value);
            }
        }
        return Optional.of(fitted);
    }
}
