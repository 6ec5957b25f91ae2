package org.varwright.record;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.network.Capacitances;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.quantity.Complex;

/**
 * What each place of a bank in good order carries: rms at a voltage of the bus, from the network with the capacitances of the bank file.
 */
final class Expected {
    private final Bank bank;
    private final Map<String, Double> amperes = new HashMap<>();

    private Expected(Bank bank) {
        this.bank = bank;
    }

    /** At the nominal voltage. */
    static Expected nominal(Bank bank) {
        Expected expected = new Expected(bank);
        for (Stage stage : bank.stages()) {
            Network network = Network.of(bank, stage, Capacitances.known(bank), Supply.nominal(bank.system()));
            if (network.healthy() instanceof Solution.Solved solved) {
                for (String phase : Role.PHASES) {
                    solved.line(stage.name(), phase)
                            .ifPresent(l -> expected.amperes.put(
                                    stage.name() + "/" + phase, l.amperes().magnitude()));
                }
            }
        }
        return expected;
    }

    /** What a place carries [V] or [A]; empty for sensors, for the whole bank, and where the network has no answer. */
    Optional<Double> of(Role role) {
        return switch (role) {
            case Role.BusVolts r -> Optional.of(bank.system().phaseVolts());
            case Role.BusLineVolts r -> Optional.of(bank.system().nominalVolts());
            case Role.StageVolts r -> Optional.of(bank.system().phaseVolts());
            case Role.StageAmperes r -> Optional.ofNullable(amperes.get(r.stage() + "/" + r.phase()));
            case Role.BankAmperes r -> Optional.empty();
            case Role.Sensor r -> Optional.empty();
            case Role.None r -> Optional.empty();
        };
    }

    /** Current of a pole at a bus voltage [A rms]; empty where the network has no answer. */
    Optional<Double> amperes(String stage, String phase, double phaseVolts) {
        return of(new Role.StageAmperes(stage, phase))
                .map(a -> a * phaseVolts / bank.system().phaseVolts());
    }

    /** Whether one of some magnitudes is the sum of two or more stages. */
    boolean isSomeOfStages(List<Double> magnitudes, String phase, double within) {
        List<Double> sums = new ArrayList<>();
        int n = Math.min(bank.stages().size(), 8);
        for (int set = 1; set < 1 << n; set++) {
            if (Integer.bitCount(set) < 2) {
                continue;
            }
            double sum = 0.0;
            for (int s = 0; s < n; s++) {
                if ((set >> s & 1) == 1) {
                    sum += of(new Role.StageAmperes(bank.stages().get(s).name(), phase))
                            .orElse(0.0);
                }
            }
            sums.add(sum);
        }
        return magnitudes.stream()
                .anyMatch(m -> sums.stream().anyMatch(s -> s > 0.0 && Math.abs(m / s - 1.0) < within));
    }

    /** Currents of the poles of a stage by the network at measured voltages, A, B, C; empty where it has no answer. */
    static Optional<List<Complex>> lines(Bank bank, Stage stage, Supply supply) {
        Solution solution =
                Network.of(bank, stage, Capacitances.known(bank), supply).healthy();
        return solution instanceof Solution.Solved solved
                ? Optional.of(Role.PHASES.stream()
                        .map(p -> solved.line(stage.name(), p)
                                .map(Solution.LineValue::amperes)
                                .orElse(Complex.ZERO))
                        .toList())
                : Optional.empty();
    }
}
