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
        Map<String, Double> bySerial = new HashMap<>();
        Map<String, Double> byPosition = new LinkedHashMap<>();
        Set<String> measured = new HashSet<>();
        Map<String, String> nameAt = new HashMap<>();
        for (Fitted unit : input.units()) {
            bySerial.put(unit.name(), unit.capacitanceFarads());
            nameAt.put(unit.at().name(), unit.name());
            if (unit.from() == Fitted.From.MEASURED) {
                measured.add(unit.name());
            }
            byPosition.put(unit.at().name(), unit.role() == Fitted.Role.EMPTY ? 0.0 : unit.capacitanceFarads());
        }
        for (Spare spare : input.spares()) {
            OptionalDouble read = spare.capacitanceFarads();
            bySerial.put(spare.serial(), read.orElse(spare.unit().capacitanceFarads()));
            if (read.isPresent()) {
                measured.add(spare.serial());
            }
        }
        for (Move move : result.moves()) {
            byPosition.computeIfPresent(move.from(), (position, farads) -> 0.0);
        }
        for (Move move : result.moves()) {
            byPosition.computeIfPresent(move.to(), (position, farads) -> bySerial.getOrDefault(move.serial(), 0.0));
            nameAt.put(move.to(), move.serial());
        }
        Map<UnitPosition, Double> fitted = new LinkedHashMap<>();
        for (UnitPosition position : input.bank().positions()) {
            double farads = byPosition.getOrDefault(position.name(), 0.0);
            if (!(farads > 0.0)) {
                return Optional.empty();
            }
            if (measured.contains(nameAt.getOrDefault(position.name(), ""))) {
                fitted.put(position, farads);
            }
        }
        return Optional.of(fitted);
    }
}
