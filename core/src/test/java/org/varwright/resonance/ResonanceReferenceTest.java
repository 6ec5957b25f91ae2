package org.varwright.resonance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;

/** Resonance and detuning against values from outside, source beside each. */
class ResonanceReferenceTest {
    private static final double OMEGA_50 = 2.0 * Math.PI * 50.0;

    private static Bank wye(String kilovolts, String megavoltAmperes, double kvarPerUnit, double unitKilovolts) {
        return BankText.bank(
                BankText.system(kilovolts, megavoltAmperes, ""), """
                unit-types: [{name: U, rating: %s kvar, voltage: %s kV, frequency: 60 Hz, tolerance: [0 %%, +10 %%]}]
                stages: [{name: S, connection: wye-ungrounded, groups: 1, units: 1, unit: U}]
                """.formatted(kvarPerUnit, unitKilovolts));
    }

    private static CombinationResult only(Bank bank) {
        return Resonance.of(bank, new ResonanceQuestion(OptionalDouble.empty(), Optional.empty(), Optional.empty()))
                .combinations()
                .getFirst();
    }

    /** Published case study of a 13.8 kV bus, recomputed: 125 MVA, 5 Mvar in resonance at the 5th, half of it at 7.07. */
    @Test
    void wholeBankAtTheFifthHalfAtTheSeventh() {
        CombinationResult whole = only(wye("13.8", "125", 5000.0 / 3.0, 13.8 / Math.sqrt(3.0)));
        assertEquals(5.0, whole.simpleOrder(), 5e-4);
        assertEquals(5.0, whole.peaks().getFirst().order(), 5e-4);
        CombinationResult half = only(wye("13.8", "125", 2500.0 / 3.0, 13.8 / Math.sqrt(3.0)));
        assertEquals(7.07107, half.peaks().getFirst().order(), 7e-4);
    }

    /** The rule h = √(S_sc/Q), published example: 17 391 kVA and 350 kvar give 7.05. */
    @Test
    void ruleOfTheSquareRoot() {
        CombinationResult result = only(wye("4.16", "17.391", 350.0 / 3.0, 4.16 / Math.sqrt(3.0)));
        assertEquals(7.05, result.simpleOrder(), 0.005);
        assertEquals(result.simpleOrder(), result.peaks().getFirst().order(), 1e-3);
    }

    /** 1.04 of nominal voltage on the 5 Mvar bank: 5.408 Mvar (published case study, recomputed). */
    @Test
    void outputFollowsTheSquareOfTheVoltage() {
        Bank bank = wye("13.8", "125", 5000.0 / 3.0, 13.8 / Math.sqrt(3.0));
        StageModel model = StageModel.of(bank).getFirst();
        assertEquals(5.408e6, model.vars(1.04 * 13.8e3, bank.system().angularFrequency()), 5.4e3);
    }

    /** 7 % reactor with 80 kvar, 525 V, 50 Hz (worked example of the general literature, recomputed). */
    @Test
    void sevenPercentReactor() {
        double farads = 80e3 / (OMEGA_50 * 525.0 * 525.0);
        assertEquals(923.893e-6, farads, 1e-9);
        assertEquals(3.44531, 1.0 / (OMEGA_50 * farads), 1e-5);
        double henries = new Detuning(0.07).henries(farads, OMEGA_50);
        assertEquals(0.767674e-3, henries, 1e-9);
        Detuning detuning = Detuning.of(henries, farads, OMEGA_50);
        assertEquals(188.982, 50.0 * detuning.tunedOrder(), 1e-3);
        assertEquals(86.0215e3, detuning.netVars(80e3), 0.1);
        double at400 = 80e3 * (400.0 / 525.0) * (400.0 / 525.0);
        assertEquals(49.9354e3, detuning.netVars(at400), 0.1);
        assertEquals(430.108, 400.0 * detuning.voltageRise(), 1e-3);
        // The same by the impedance of the branch.
        SeriesBranch branch = new SeriesBranch(farads, henries, 0.0);
        assertEquals(430.108, 400.0 * branch.capacitorShare(OMEGA_50), 1e-3);
        assertEquals(detuning.tunedOrder(), branch.tunedOrder(OMEGA_50), 1e-12);
    }

    /** First principles: 6 % reactor on 400 V, 50 kvar net need 53.19 kvar on the plate at 425.5 V. */
    @Test
    void plateBehindASixPercentReactor() {
        Detuning detuning = new Detuning(0.06);
        double capacitorVolts = 400.0 * detuning.voltageRise();
        assertEquals(425.532, capacitorVolts, 1e-3);
        // Net Q = Q_C(at V_C)·(1 − p), so the plate at its own voltage shows Q_net/(1 − p).
        double plate = 50e3 / (1.0 - 0.06);
        assertEquals(53.1915e3, plate, 0.1);
        assertEquals(50e3, detuning.netVars(plate * Math.pow(400.0 / capacitorVolts, 2)), 1e-6);
    }

    /** First principles: p 5.67, 6, 7, 12.5, 14 % are tuned to 4.200, 4.082, 3.780, 2.828, 2.673; voltage by 1/(1 − p). */
    @Test
    void usualDetuningFactors() {
        double[][] rows = {
            {0.0567, 4.200, 1.0601},
            {0.06, 4.082, 1.0638},
            {0.07, 3.780, 1.0753},
            {0.125, 2.828, 1.1429},
            {0.14, 2.673, 1.1628}
        };
        for (double[] row : rows) {
            Detuning detuning = new Detuning(row[0]);
            assertEquals(row[1], detuning.tunedOrder(), 5e-4);
            assertEquals(row[2], detuning.voltageRise(), 5e-5);
        }
    }

    /** First principles: 7.96 kV units behind 6 % on 13.8 kV stand at 106.48 % of rated, at 1.05 of nominal at 111.81 %. */
    @Test
    void mediumVoltageUnitsBehindASixPercentReactor() {
        double farads = 200e3 / (2.0 * Math.PI * 60.0 * 7.96e3 * 7.96e3);
        double henries = new Detuning(0.06).henries(farads, 2.0 * Math.PI * 60.0);
        Bank bank = BankText.bank(BankText.system("13.8", "300", ""), """
                unit-types: [{name: U, rating: 200 kvar, voltage: 7.96 kV, frequency: 60 Hz, tolerance: [0 %%, +10 %%]}]
                stages: [{name: S, connection: wye-ungrounded, groups: 1, units: 1, unit: U, reactor: {inductance: %s mH, position: line, purpose: detuning}}]
                """.formatted(henries * 1e3));
        FundamentalDuty duty = FundamentalDuty.of(bank, bank.stages().getFirst());
        assertEquals(1.06482, duty.at(1.0, List.of()).voltage(), 5e-4);
        assertEquals(1.11806, duty.at(1.05, List.of()).voltage(), 5e-4);
    }
}
