package org.varwright.fuse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.basis.Unanswered;
import org.varwright.network.Solution;

/**
 * What the unbalance protection of a stage does about a shorted unit.
 *
 * @param sensor which sensor, in words; empty where none trips
 * @param delaySeconds after which the quickest sensor trips; the switch's own time comes on top [s]
 * @param missing what is missing to tell, one by one
 */
record BankTrip(Optional<String> sensor, OptionalDouble delaySeconds, List<Unanswered> missing) {
    private static final String EFFECT = "whether the bank trips before the fuse clears";

    BankTrip {
        missing = List.copyOf(missing);
    }

    static BankTrip of(Bank bank, Stage stage, FullShort fault) {
        Optional<String> quickest = Optional.empty();
        double delay = Double.POSITIVE_INFINITY;
        List<Unanswered> missing = new ArrayList<>();
        for (Protection protection : bank.protection()) {
            if (!protection.stage().equals(stage.name())) {
                continue;
            }
            String name = stage.name() + " " + protection.senses().code();
            if (protection.trip().isEmpty() || protection.delaySeconds().isEmpty()) {
                missing.add(new Unanswered("trip and delay of protection " + name, EFFECT));
                continue;
            }
            Optional<Double> seen = seen(protection, fault);
            if (seen.isEmpty()) {
                missing.add(new Unanswered("ratio of protection " + name, EFFECT));
            } else if (seen.get() >= protection.trip().getAsDouble()
                    && protection.delaySeconds().getAsDouble() < delay) {
                delay = protection.delaySeconds().getAsDouble();
                quickest = Optional.of(name);
            }
        }
        return new BankTrip(
                quickest, quickest.isPresent() ? OptionalDouble.of(delay) : OptionalDouble.empty(), missing);
    }

    /** Largest magnitude that the sensor sees, in the base of its settings. */
    private static Optional<Double> seen(Protection protection, FullShort fault) {
        double largest = 0.0;
        for (Solution.SensorValue value : fault.sensors()) {
            if (value.stage().equals(protection.stage()) && value.senses() == protection.senses()) {
                if (!protection.settingsArePrimary() && value.secondary().isEmpty()) {
                    return Optional.empty();
                }
                double magnitude = protection.settingsArePrimary()
                        ? value.primary().magnitude()
                        : value.secondary().orElseThrow().magnitude();
                largest = Math.max(largest, magnitude);
            }
        }
        return Optional.of(largest);
    }
}
