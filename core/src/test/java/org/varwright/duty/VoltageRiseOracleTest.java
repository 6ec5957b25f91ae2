package org.varwright.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.powsybl.iidm.network.Network;
import com.powsybl.iidm.network.Substation;
import com.powsybl.iidm.network.TopologyKind;
import com.powsybl.iidm.network.VoltageLevel;
import com.powsybl.loadflow.LoadFlow;
import com.powsybl.loadflow.LoadFlowParameters;
import com.powsybl.loadflow.LoadFlowResult;
import com.powsybl.math.matrix.DenseMatrixFactory;
import com.powsybl.openloadflow.OpenLoadFlowParameters;
import com.powsybl.openloadflow.OpenLoadFlowProvider;
import com.powsybl.openloadflow.network.SlackBusSelectionMode;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.resonance.BankText;
import org.varwright.resonance.SourceImpedance;

/**
 * Voltage rise and short-circuit level against a load flow of a general grid library, and against a public distribution feeder.
 *
 * <pre>
 *  B1 (115 kV, held) ──T 115/13.8── B2 ──line── B3 ──┤├── ground
 * </pre>
 */
class VoltageRiseOracleTest {
    private static final double VOLTS = 13.8e3;
    /** Transformer and line, both at 13.8 kV [Ω]. */
    private static final double[] TRANSFORMER = {0.042, 0.76};

    private static final double[] LINE = {0.11, 0.37};

    /** The short-circuit level that the bank file states, from the chain's impedance, brings the same rise as a load flow of the chain. */
    @Test
    void riseAgreesWithALoadFlow() {
        double r = TRANSFORMER[0] + LINE[0];
        double x = TRANSFORMER[1] + LINE[1];
        double shortCircuit = VOLTS * VOLTS / Math.hypot(r, x);
        for (double kvar : new double[] {600.0, 1800.0, 5400.0}) {
            Bank bank = BankText.bank(
                    "standard: IEEE\nsystem: {voltage: 13.8 kV, frequency: 60 Hz, short-circuit: " + shortCircuit
                            + " VA, x-over-r: " + x / r + ", grounding: solid}",
                    """
                    unit-types: [{name: U, rating: %s kvar, voltage: 7.967433715 kV, frequency: 60 Hz, tolerance: [0 %%, +10 %%]}]
                    stages: [{name: S, connection: wye-ungrounded, groups: 1, units: 1, unit: U}]
                    """.formatted(kvar / 3.0));
            VoltageRise rise = Duty.of(bank, DutyQuestion.PLAIN).rises().getFirst();
            assertEquals(kvar * 1e3, rise.vars(), 1.0);
            double before = busKilovolts(0.0);
            double after = busKilovolts(kvar * 1e3);
            assertEquals(13.8, before, 1e-9);
            assertEquals(after / before - 1.0, rise.exact(), 1e-8, kvar + " kvar");
            // The rule counts the whole impedance for reactance: never too low here, and near.
            assertEquals(rise.exact(), rise.byRule(), 0.08 * rise.exact());
        }
    }

    /** Voltage at B3 by the load flow [kV]. */
    private static double busKilovolts(double vars) {
        Network grid = Network.create("chain", "test");
        Substation substation = grid.newSubstation().setId("S").add();
        VoltageLevel high = level(substation, "V1", "B1", 115.0);
        VoltageLevel low = level(substation, "V2", "B2", 13.8);
        VoltageLevel far = level(grid.newSubstation().setId("F").add(), "V3", "B3", 13.8);
        high.newGenerator()
                .setId("G")
                .setBus("B1")
                .setConnectableBus("B1")
                .setMinP(-1000.0)
                .setMaxP(1000.0)
                .setTargetP(5.0)
                .setTargetV(115.0)
                .setVoltageRegulatorOn(true)
                .add();
        high.newLoad()
                .setId("D")
                .setBus("B1")
                .setConnectableBus("B1")
                .setP0(5.0)
                .setQ0(0.0)
                .add();
        substation
                .newTwoWindingsTransformer()
                .setId("T")
                .setVoltageLevel1("V1")
                .setBus1("B1")
                .setConnectableBus1("B1")
                .setRatedU1(115.0)
                .setVoltageLevel2("V2")
                .setBus2("B2")
                .setConnectableBus2("B2")
                .setRatedU2(13.8)
                .setR(TRANSFORMER[0])
                .setX(TRANSFORMER[1])
                .setG(0.0)
                .setB(0.0)
                .add();
        grid.newLine()
                .setId("L")
                .setVoltageLevel1(low.getId())
                .setBus1("B2")
                .setConnectableBus1("B2")
                .setVoltageLevel2(far.getId())
                .setBus2("B3")
                .setConnectableBus2("B3")
                .setR(LINE[0])
                .setX(LINE[1])
                .setG1(0.0)
                .setB1(0.0)
                .setG2(0.0)
                .setB2(0.0)
                .add();
        if (vars > 0.0) {
            far.newShuntCompensator()
                    .setId("C")
                    .setBus("B3")
                    .setConnectableBus("B3")
                    .setSectionCount(1)
                    .newLinearModel()
                    .setBPerSection(vars / (VOLTS * VOLTS))
                    .setMaximumSectionCount(1)
                    .add()
                    .add();
        }
        LoadFlowParameters parameters =
                new LoadFlowParameters().setDistributedSlack(false).setUseReactiveLimits(false);
        OpenLoadFlowParameters.create(parameters)
                .setSlackBusSelectionMode(SlackBusSelectionMode.NAME)
                .setSlackBusId("V1_0")
                .setNewtonRaphsonConvEpsPerEq(1e-11);
        LoadFlowResult result =
                new LoadFlow.Runner(new OpenLoadFlowProvider(new DenseMatrixFactory())).run(grid, parameters);
        assertTrue(result.isFullyConverged(), result.getComponentResults().toString());
        return far.getBusView().getBuses().iterator().next().getV();
    }

    private static VoltageLevel level(Substation substation, String id, String bus, double kilovolts) {
        VoltageLevel level = substation
                .newVoltageLevel()
                .setId(id)
                .setNominalV(kilovolts)
                .setTopologyKind(TopologyKind.BUS_BREAKER)
                .add();
        level.getBusBreakerView().newBus().setId(bus).add();
        return level;
    }

    /**
     * The IEEE 13-node test feeder (IEEE PES Distribution System Analysis Subcommittee, data as published; regulator held at taps 10, 8, 11): its bank of
     * 3 × 200 kvar lifts node 675 by 1.51, 1.97, 1.85 % of nominal voltage in a three-phase solution. Compared: that solution made anew here, and the rise of our balanced
     * model behind the positive-sequence impedance from node 650, against the mean of the three.
     */
    @Test
    void riseOfAPublicFeeder() {
        double[] with = ThirteenNodeFeeder.volts675(true);
        double[] without = ThirteenNodeFeeder.volts675(false);
        // Per unit at node 675 in the solution that the subcommittee publishes.
        double[] profile = {0.9835, 1.0553, 0.9758};
        double[] published = {1.51, 1.97, 1.85};
        double mean = 0.0;
        for (int p = 0; p < 3; p++) {
            double percent = 100.0 * (with[p] - without[p]) / (4160.0 / Math.sqrt(3.0));
            assertEquals(profile[p], with[p] * Math.sqrt(3.0) / 4160.0, 0.003, "phase " + p);
            assertEquals(published[p], percent, 0.02, "phase " + p);
            mean += percent / 3.0;
        }
        assertEquals(1.78, mean, 0.01);
        double[] z = ThirteenNodeFeeder.positiveSequenceOhms();
        assertEquals(0.4914, z[1], 1e-4);
        // The rule with the reactance alone: 600 kvar · X/(10 · 4.16²) = 1.704 %.
        assertEquals(1.704, 600.0 * z[1] / (10.0 * 4.16 * 4.16), 1e-3);
        VoltageRise rise = VoltageRise.of("675", 600e3, new SourceImpedance(z[0], z[1], true), 4160.0);
        assertEquals(mean, 100.0 * rise.exact(), 0.06);
    }
}
