package org.varwright.network;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.Protection.Senses;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;

/** What the network refuses to answer, and what it reckons with where nobody else looks: losses, the supply's impedance, damage upon damage. */
class NetworkRefusalTest {
    private static void refused(Message message, Executable asked) {
        VarwrightException e = assertThrows(VarwrightException.class, asked);
        assertEquals(message, e.problems().getFirst().message());
    }

    private static Network network(Bank bank) {
        return Network.of(bank, bank.stages().getFirst(), Capacitances.nameplate(bank), Supply.nominal(bank.system()));
    }

    /**
     * A sensor that can't stand on a connection would read nothing and call that balance. First principles: a neutral voltage needs a neutral that floats; a
     * neutral current needs a path, to ground or between two neutrals; a difference needs two grounded neutrals; a bridge needs its middle.
     */
    @Test
    void sensorsThatCannotWorkAreRefused() {
        Map<Senses, Set<Connection>> suits = Map.of(
                Senses.NEUTRAL_VOLTAGE,
                Set.of(Connection.WYE_UNGROUNDED, Connection.DOUBLE_WYE_UNGROUNDED, Connection.BRIDGE_UNGROUNDED),
                Senses.NEUTRAL_CURRENT,
                Set.of(
                        Connection.WYE_GROUNDED,
                        Connection.DOUBLE_WYE_GROUNDED,
                        Connection.DOUBLE_WYE_UNGROUNDED,
                        Connection.BRIDGE_GROUNDED),
                Senses.NEUTRAL_DIFFERENTIAL,
                Set.of(Connection.DOUBLE_WYE_GROUNDED),
                Senses.BRIDGE_CURRENT,
                Set.of(Connection.BRIDGE_GROUNDED, Connection.BRIDGE_UNGROUNDED),
                Senses.PHASE_VOLTAGE,
                Set.of(Connection.values()));
        for (Connection connection : Connection.values()) {
            for (Senses senses : Senses.values()) {
                Bank bank = Banks.plan(connection, 1, 2, 2)
                        .sensing(Banks.sensor(senses, 100.0, 5.0))
                        .bank();
                if (suits.getOrDefault(senses, Set.of()).contains(connection)) {
                    assertDoesNotThrow(() -> network(bank), connection + " " + senses);
                } else {
                    refused(Message.SENSOR_UNSUITED, () -> network(bank));
                }
            }
        }
    }

    /** Three-phase units stand side by side between the lines: no groups, no strings, no reactor at a neutral that nobody can reach, no other connection. */
    @Test
    void threePhaseUnitsStandSideBySideOnly() {
        Banks.Plan wye = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2).cans(InternalConnection.WYE_UNGROUNDED);
        Banks.Plan delta = Banks.plan(Connection.DELTA, 1, 1, 2).cans(InternalConnection.DELTA);
        Reactor line = new Reactor(2e-3, Reactor.Position.LINE, Reactor.Purpose.INRUSH);
        Reactor neutral = new Reactor(2e-3, Reactor.Position.NEUTRAL, Reactor.Purpose.INRUSH);
        for (Banks.Plan good : List.of(wye, delta, wye.with(line), delta.with(line))) {
            assertDoesNotThrow(() -> network(good.bank()), good.toString());
        }
        for (Banks.Plan bad : List.of(
                wye.with(neutral),
                delta.with(neutral),
                Banks.plan(Connection.WYE_UNGROUNDED, 1, 2, 2).cans(InternalConnection.WYE_UNGROUNDED),
                Banks.plan(Connection.WYE_UNGROUNDED, 2, 1, 2).cans(InternalConnection.WYE_UNGROUNDED),
                Banks.plan(Connection.WYE_GROUNDED, 1, 1, 2).cans(InternalConnection.WYE_UNGROUNDED),
                Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2).cans(InternalConnection.DELTA),
                Banks.plan(Connection.DELTA, 1, 1, 2).cans(InternalConnection.WYE_UNGROUNDED))) {
            refused(Message.THREE_PHASE_UNITS, () -> network(bad.bank()));
        }
        // the star point of a can is out of reach: a sensor at the neutral is refused though the stage is a wye
        Banks.Plan sensed = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2).cans(InternalConnection.WYE_UNGROUNDED);
        refused(
                Message.SENSOR_UNSUITED,
                () -> network(sensed.sensing(Banks.sensor(Senses.NEUTRAL_VOLTAGE, 100.0, 5.0))
                        .bank()));
    }

    @Test
    void failuresOfWhatIsNotThereAreRefused() {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 2, 2).bank();
        Network network = network(bank);
        Stage stage = bank.stages().getFirst();
        UnitPosition here = stage.positions().getFirst();
        // the third unit of a group that has two
        UnitPosition elsewhere = Banks.plan(Connection.WYE_UNGROUNDED, 1, 2, 3)
                .bank()
                .stages()
                .getFirst()
                .positions()
                .getLast();
        refused(Message.BRANCH_UNKNOWN, () -> network.solve(List.of(new Failure.UnitOut(elsewhere))));
        refused(Message.PHASE_UNKNOWN, () -> network.solve(List.of(new Failure.PhaseOpen(Banks.STAGE, "D"))));
        refused(Message.PHASE_UNKNOWN, () -> network.solve(List.of(new Failure.PhaseOpen("G", "A"))));
        refused(Message.FAILURE_COUNT, () -> network.solve(List.of(new Failure.SectionsShorted(here, 0))));
        refused(Message.FAILURE_COUNT, () -> network.solve(List.of(new Failure.ElementsOut(here, 0))));
        assertInstanceOf(Solution.Solved.class, network.solve(List.of(new Failure.SectionsShorted(here, 1))));
        assertInstanceOf(Solution.Solved.class, network.solve(List.of(new Failure.ElementsOut(here, 1))));
        Capacitances values = Capacitances.nameplate(bank);
        for (double bad : new double[] {0.0, -1e-6, Double.NaN, Double.POSITIVE_INFINITY}) {
            refused(Message.CAPACITANCE_NOT_POSITIVE, () -> values.with(here, bad));
            refused(Message.CAPACITANCE_NOT_POSITIVE, () -> values.with(UnitBranch.of(here), bad));
        }
        refused(Message.CAPACITANCE_MISSING, () -> values.farads(UnitBranch.of(elsewhere)));
        for (double bad : new double[] {-1e-9, 1.0 + 1e-9, Double.NaN}) {
            refused(
                    Message.LOSS_NOT_ALLOWED,
                    () -> Network.of(bank, bank.stages(), values, Supply.nominal(bank.system()), bad));
        }
        // none larger than the other two together, none zero
        for (double[] v :
                new double[][] {{100, 100, 200}, {100, 100, 201}, {0, 100, 100}, {100, 0, 100}, {100, 100, 0}}) {
            refused(Message.SUPPLY_TRIANGLE, () -> Supply.ofLineVolts(v[0], v[1], v[2]));
        }
        assertDoesNotThrow(() -> Supply.ofLineVolts(100, 100, 199));
    }

    /** A short of a whole leg across a supply without impedance has no answer, and says so; behind the system's impedance it has one. */
    @Test
    void aShortAcrossAStiffSupplyHasNoAnswer() {
        Bank bank = Banks.plan(Connection.WYE_GROUNDED, 1, 1, 2).bank();
        List<Failure> shorted = List.of(
                new Failure.UnitShorted(bank.stages().getFirst().positions().getFirst()));
        assertInstanceOf(Solution.Singular.class, network(bank).solve(shorted));
        assertInstanceOf(Solution.Singular.class, network(bank).solveAfresh(shorted));
        Supply behind = new Supply.Thevenin(13800.0, 280e6, 11.0);
        Network real = Network.of(bank, bank.stages().getFirst(), Capacitances.nameplate(bank), behind);
        Solution.Solved solved = assertInstanceOf(Solution.Solved.class, real.solve(shorted));
        // 280 MVA at 13.8 kV: 280e6/(√3·13800) = 11 714.35 A into the fault
        assertEquals(
                11714.35, solved.line(Banks.STAGE, "A").orElseThrow().amperes().magnitude(), 0.01);
        // of X/R = 11 the current lags by 84.81°
        assertEquals(
                -84.81, solved.line(Banks.STAGE, "A").orElseThrow().amperes().degrees(), 0.01);
    }

    /** Every unit draws {@code V²·ωC·tanδ} as heat and gives {@code V²·ωC}: nine units of 200 kvar at rated voltage and tanδ = 0.002 take 3.6 kW, give 1.8 Mvar. */
    @Test
    void lossesAreDrawnFromTheBus() {
        Bank bank = Banks.plan(Connection.WYE_GROUNDED, 1, 1, 3).bank();
        Network network =
                Network.of(bank, bank.stages(), Capacitances.nameplate(bank), Supply.nominal(bank.system()), 0.002);
        Solution.Solved solved = assertInstanceOf(Solution.Solved.class, network.healthy());
        double v = 13800.0 / Math.sqrt(3.0);
        Complex power = Complex.ZERO;
        for (int p = 0; p < 3; p++) {
            Complex amperes = solved.lines().get(p).amperes();
            power = power.plus(Complex.polar(v, -120.0 * p).times(amperes.conjugate()));
        }
        assertEquals(3600.0, power.re(), 0.01);
        assertEquals(-1.8e6, power.im(), 1.0);
        assertEquals(1.8e6, solved.stages().getFirst().vars(), 1.0);
    }

    /**
     * Four sections of ten elements. Damage adds up: three sections shorted and one more is a short circuit, six elements and four more leave the section
     * open; two sections shorted and three elements out: 1/C in units of a section's is 1 + 10/7 after 4, the damaged section bears 4·(10/7)/(17/7) = 40/17.
     */
    @Test
    void damageAddsUp() {
        Bank bank = Banks.plan(Connection.WYE_GROUNDED, 1, 1, 2).bank();
        UnitPosition at = bank.stages().getFirst().positions().getFirst();
        UnitBranch branch = UnitBranch.of(at);
        Network network =
                Network.of(bank, bank.stages().getFirst(), Capacitances.nameplate(bank), Supply.nominal(bank.system()));
        double healthy = Capacitances.nameplate(bank).farads(branch);
        Solution.UnitValue both =
                unit(network, branch, List.of(new Failure.SectionsShorted(at, 2), new Failure.ElementsOut(at, 3)));
        assertEquals(healthy * 4.0 / (1.0 + 10.0 / 7.0), both.farads(), 1e-12 * healthy);
        assertEquals(40.0 / 17.0, both.sectionPerRated(), 1e-9);
        assertTrue(both.inService());
        Solution.UnitValue open =
                unit(network, branch, List.of(new Failure.ElementsOut(at, 6), new Failure.ElementsOut(at, 4)));
        assertEquals(0.0, open.farads());
        assertEquals(0.0, open.amperes().magnitude());
        assertEquals(0.0, open.sectionPerRated());
        assertTrue(!open.inService());
        // one left of each: still there
        assertTrue(
                unit(network, branch, List.of(new Failure.ElementsOut(at, 9))).inService());
        assertTrue(unit(network, branch, List.of(new Failure.SectionsShorted(at, 3)))
                .inService());
        Network behind = Network.of(
                bank,
                bank.stages().getFirst(),
                Capacitances.nameplate(bank),
                new Supply.Thevenin(13800.0, 280e6, 11.0));
        Solution.UnitValue shorted =
                unit(behind, branch, List.of(new Failure.SectionsShorted(at, 3), new Failure.SectionsShorted(at, 1)));
        assertEquals(0.0, shorted.volts().magnitude(), 1e-6);
        assertTrue(!shorted.inService());
        // its fuse operates: the short is gone, whichever is named first
        for (List<Failure> cleared : List.<List<Failure>>of(
                List.of(new Failure.UnitShorted(at), new Failure.UnitOut(at)),
                List.of(new Failure.UnitOut(at), new Failure.UnitShorted(at)))) {
            Solution.UnitValue out = unit(network, branch, cleared);
            assertEquals(0.0, out.amperes().magnitude());
            assertEquals(13800.0 / Math.sqrt(3.0), out.volts().magnitude(), 1e-6);
        }
    }

    private static Solution.UnitValue unit(Network network, UnitBranch branch, List<Failure> failures) {
        return assertInstanceOf(Solution.Solved.class, network.solve(failures))
                .unit(branch)
                .orElseThrow();
    }
}
