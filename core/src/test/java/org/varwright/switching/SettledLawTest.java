package org.varwright.switching;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.Stage;
import org.varwright.network.Banks;
import org.varwright.network.Capacitances;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.transients.Outcome;
import org.varwright.transients.Probe;
import org.varwright.transients.Setting;
import org.varwright.transients.Transient;

/**
 * The circuit in time, left to settle, against the phasor network, which knows nothing of loops, stars on paper or states: every connection, reactors at either
 * place, unequal units. A failure prints the seed.
 */
class SettledLawTest {
    private interface Law {
        void holds(Bank bank, Stage stage, Capacitances values, String what);
    }

    private static void everywhere(Law law) {
        List<Banks.Plan> plans = Banks.everyKind();
        for (int k = 0; k < plans.size(); k++) {
            Bank bank = plans.get(k).bank();
            Stage stage = bank.stages().getFirst();
            // cans with stars of their own are one star on paper only while they are alike
            boolean cans = stage.unit()
                    .threePhase()
                    .filter(i -> i == InternalConnection.WYE_UNGROUNDED)
                    .isPresent();
            Capacitances values =
                    cans ? Capacitances.nameplate(bank) : Banks.scattered(bank, new Random(900L + k), 0.2);
            law.holds(bank, stage, values, plans.get(k) + " seed " + (900 + k));
        }
    }

    private static BankCircuit circuit(Bank bank, Stage stage, Capacitances values) {
        return BankCircuit.of(Source.of(bank.system()), List.of(SwitchedStage.of(stage, values)), Path.LEAST_PER_METRE);
    }

    private static Solution.Solved network(Bank bank, Stage stage, Capacitances values, Supply supply) {
        return assertInstanceOf(
                Solution.Solved.class, Network.of(bank, stage, values, supply).healthy());
    }

    private static Supply behind(Bank bank) {
        return new Supply.Thevenin(
                bank.system().nominalVolts(),
                bank.system().shortCircuitVoltAmperes().orElseThrow(),
                bank.system().xOverR().orElseThrow());
    }

    /** Peaks over one cycle without any switching are √2 times what the network says: of every pole and leg, current and voltage. */
    @Test
    void settledItIsTheNetwork() {
        everywhere((bank, stage, values, what) -> {
            BankCircuit circuit = circuit(bank, stage, values);
            Solution.Solved expected = network(bank, stage, values, behind(bank));
            List<Probe> probes = new ArrayList<>();
            for (int p = 0; p < 3; p++) {
                probes.add(circuit.poleAmperes(0, p));
            }
            circuit.legs(0).forEach(l -> probes.add(l.amperes()));
            circuit.legs(0).forEach(l -> probes.add(l.volts()));
            Outcome outcome = Transient.run(
                    Setting.discharged(circuit.circuit(), List.of()), 17.0, List.of(), probes, 1.0 / 60.0, false);
            double root = Math.sqrt(2.0);
            int legs = circuit.legs(0).size();
            assertEquals(expected.legs().size(), legs, what);
            for (int p = 0; p < 3; p++) {
                near(root * expected.lines().get(p).amperes().magnitude(), outcome, p, what + " pole " + p);
            }
            for (int l = 0; l < legs; l++) {
                Solution.LegValue leg = expected.legs().get(l);
                assertEquals(leg.leg(), circuit.legs(0).get(l).name());
                near(root * leg.amperes().magnitude(), outcome, 3 + l, what + " current of " + leg.leg());
                near(root * leg.volts().magnitude(), outcome, 3 + legs + l, what + " voltage of " + leg.leg());
            }
        });
    }

    private static void near(double expected, Outcome outcome, int probe, String what) {
        assertEquals(expected, outcome.swings().get(probe).magnitude(), 1e-6 * expected, what);
    }

    /** What multiples are multiples of: √2 times the leg's voltage in the network with nothing in series. */
    @Test
    void thePeakOfALegIsThatOfService() {
        everywhere((bank, stage, values, what) -> {
            if (stage.reactor().isPresent() || !stage.connection().isGrounded()) {
                return;
            }
            Solution.Solved stiff = network(bank, stage, values, Supply.nominal(bank.system()));
            List<BankCircuit.LegPlace> legs = circuit(bank, stage, values).legs(0);
            for (int l = 0; l < legs.size(); l++) {
                double peak = Math.sqrt(2.0) * stiff.legs().get(l).volts().magnitude();
                assertEquals(peak, legs.get(l).peakVolts(), 1e-6 * peak, what);
            }
        });
    }

    /** The share that one unit's fuse carries of its leg's current: the largest that any unit of the network has. */
    @Test
    void aUnitCarriesTheLargestShareOfItsLeg() {
        everywhere((bank, stage, values, what) -> {
            if (stage.hasThreePhaseUnits()) {
                return;
            }
            Solution.Solved solved = network(bank, stage, values, Supply.nominal(bank.system()));
            Map<String, Double> share = new HashMap<>();
            for (Solution.UnitValue unit : solved.units()) {
                String leg = unit.unit().stageLeg();
                double whole =
                        solved.leg(stage.name(), leg).orElseThrow().amperes().magnitude();
                share.merge(leg, unit.amperes().magnitude() / whole, Math::max);
            }
            Map<String, Double> told = SwitchedStage.of(stage, values).unitShare();
            assertEquals(share.size(), told.size(), what);
            share.forEach((leg, most) -> assertEquals(most, told.getOrDefault(leg, -1.0), 1e-9, what + " " + leg));
        });
    }

    /** What is trapped stands across its leg before the poles close: by phase, of a delta by leg, where the third follows from two. */
    @Test
    void trappedChargeStandsOnItsLegs() {
        everywhere((bank, stage, values, what) -> {
            BankCircuit circuit = circuit(bank, stage, values);
            boolean delta = stage.connection() == Connection.DELTA;
            Map<String, Double> perPeak =
                    delta ? Map.of("AB", 0.5, "BC", -0.9, "CA", 0.4) : Map.of("A", 1.0, "B", -0.3, "C", 0.6);
            List<Probe> probes =
                    circuit.legs(0).stream().map(BankCircuit.LegPlace::volts).toList();
            Outcome outcome = Transient.run(
                    new Setting(circuit.circuit(), circuit.poles(0), circuit.trapped(0, perPeak)),
                    0.0,
                    List.of(),
                    probes,
                    1e-6,
                    false);
            for (int l = 0; l < probes.size(); l++) {
                BankCircuit.LegPlace leg = circuit.legs(0).get(l);
                double expected =
                        perPeak.getOrDefault(delta ? leg.name() : leg.name().substring(0, 1), 9.0);
                assertEquals(
                        expected * leg.peakVolts(),
                        outcome.swings().get(l).peak(),
                        1e-6 * leg.peakVolts(),
                        what + " " + leg.name());
            }
        });
    }

    /** By stars alone: a delta of equal legs is a star of three times a leg; unequal ones by the published formula, checked at the terminals. */
    @Test
    void aDeltaAndItsStarDrawTheSame() {
        StarFarads equal = StarFarads.ofDelta(2e-6, 2e-6, 2e-6);
        assertEquals(6e-6, equal.a(), 1e-18);
        assertEquals(6e-6, equal.largest(), 1e-18);
        StarFarads star = StarFarads.ofDelta(1e-6, 2e-6, 4e-6);
        // A with B and C joined: both legs at A in parallel; the star's A in series with B and C in parallel
        double bc = star.b() + star.c();
        assertEquals(5e-6, star.a() * bc / (star.a() + bc), 1e-15);
        double ca = star.c() + star.a();
        assertEquals(3e-6, star.b() * ca / (star.b() + ca), 1e-15);
        double ab = star.a() + star.b();
        assertEquals(6e-6, star.c() * ab / (star.c() + ab), 1e-15);
        assertTrue(star.largest() == star.c());
    }
}
