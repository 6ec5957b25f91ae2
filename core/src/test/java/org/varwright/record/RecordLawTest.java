package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.quantity.Complex;
import org.varwright.unbalance.Locate;
import org.varwright.waveform.Waves;

/** What failed in the network is found again from waveforms of what the network shows, whatever frequency, rate, noise and bank. A failure prints its seed. */
class RecordLawTest {
    private static double wave(Complex phasor, double hertz, double t) {
        return Waves.wave(phasor.magnitude(), hertz, phasor.degrees(), t);
    }

    @Test
    void whatFailedIsNamedWithItsPhase() {
        List<Bank> banks = List.of(RecordBanks.fourGroups(), RecordBanks.doubleWye(), RecordBanks.grounded());
        for (long seed = 1; seed <= 24; seed++) {
            Random random = new Random(seed);
            Bank bank = banks.get(random.nextInt(banks.size()));
            Stage stage = bank.stages().getFirst();
            Supply supply = Supply.nominal(bank.system());
            Network network = Network.of(bank, stage, Capacitances.known(bank), supply);
            UnitPosition at =
                    stage.positions().get(random.nextInt(stage.positions().size()));
            Failure failure = random.nextBoolean()
                    ? new Failure.UnitOut(at)
                    : new Failure.SectionsShorted(at, 1 + random.nextInt(2));
            Solution.Solved healthy = (Solution.Solved) network.healthy();
            Solution.Solved failed = (Solution.Solved) network.solve(List.of(failure));
            double hertz = 59.5 + random.nextDouble();
            double rate = 60.0 * (20 + random.nextInt(80));
            double fails = 0.1 + 0.1 * random.nextDouble();
            double noise = 5e-4;
            Synthetic record = new Synthetic(rate, 0.45);
            for (int p = 0; p < 3; p++) {
                String phase = Role.PHASES.get(p);
                Complex v = supply.phaseVolts().get(p);
                record.primary(
                        "V" + phase, "V", t -> wave(v, hertz, t) + noise * v.magnitude() * random.nextGaussian());
                Complex before = healthy.line(stage.name(), phase).orElseThrow().amperes();
                Complex after = failed.line(stage.name(), phase).orElseThrow().amperes();
                record.primary(
                        "I" + phase,
                        "A",
                        t -> wave(t < fails ? before : after, hertz, t)
                                + noise * before.magnitude() * random.nextGaussian());
            }
            Complex before = healthy.sensors().getFirst().primary();
            Complex after = failed.sensors().getFirst().primary();
            boolean volts = healthy.sensors().getFirst().senses().unit().equals("V");
            record.primary(
                    volts ? "VN" : "IN",
                    volts ? "V" : "A",
                    t -> wave(t < fails ? before : after, hertz, t)
                            + noise * after.magnitude() * random.nextGaussian());
            RecordStudy study = RecordStudy.of(record.input(), bank, List.of());
            String said = "seed " + seed + " " + failure + "\n" + RecordStudyText.of(study);
            assertTrue(study.matching().orElseThrow().open().isEmpty(), said);
            assertEquals(1, study.located().size(), said);
            Locate locate = study.located().getFirst().locate();
            assertTrue(
                    locate.candidates().stream()
                            .anyMatch(c -> c.parts().size() == 1
                                    && c.parts().getFirst().place().endsWith("/" + at.leg())
                                    && failure.kind()
                                            .startsWith(c.parts().getFirst().kind())),
                    said);
            // the phase of the likeliest is right whatever the kind
            assertEquals(
                    at.leg().charAt(0),
                    locate.candidates()
                            .getFirst()
                            .parts()
                            .getFirst()
                            .place()
                            .split("/", -1)[1]
                            .charAt(0),
                    said);
        }
    }
}
