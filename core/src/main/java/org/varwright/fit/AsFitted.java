package org.varwright.fit;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitPosition;

/** The capacitances of a bank after a plan's lifts, for the first energization. */
public final class AsFitted {
    private AsFitted() {}

    /**
     * Capacitance of the unit in every position after the lifts [F].
     *
     * @param input what the plan started from
     * @param result the plan
     * @return every position of the bank in order; empty where a position is left without a unit, or holds one of which nothing conducts
     */
    public static Optional<Map<UnitPosition, Double>> of(FitInput input, FitResult result) {
        Map<String, Double> bySerial = new HashMap<>();
        Map<String, Double> byPosition = new LinkedHashMap<>();
        for (Fitted unit : input.units()) {
            bySerial.put(unit.name(), unit.capacitanceFarads());
            byPosition.put(unit.at().name(), unit.role() == Fitted.Role.EMPTY ? 0.0 : unit.capacitanceFarads());
        }
        for (Spare spare : input.spares()) {
            OptionalDouble measured = spare.capacitanceFarads();
            bySerial.put(spare.serial(), measured.orElse(spare.unit().capacitanceFarads()));
        }
        for (Move move : result.moves()) {
            byPosition.computeIfPresent(move.from(), (position, farads) -> 0.0);
        }
        for (Move move : result.moves()) {
            byPosition.computeIfPresent(move.to(), (position, farads) -> bySerial.getOrDefault(move.serial(), 0.0));
        }
        Map<UnitPosition, Double> fitted = new LinkedHashMap<>();
        for (UnitPosition position : input.bank().positions()) {
            double farads = byPosition.getOrDefault(position.name(), 0.0);
            if (!(farads > 0.0)) {
                return Optional.empty();
            }
            fitted.put(position, farads);
        }
        return Optional.of(fitted);
    }
}
