package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;

/** A stick across the ends of a leg must take everything that stands between them. */
class StickTest {
    private static final UnitType UNIT = BankSketch.type(
            "U", 200e3, 7200, 60, new Tolerance(0.0, 0.0), 0, 0, false, Optional.of(new DischargeDevice.Resistor(4e6)));

    private static Bank bank(Connection connection, LegLayout layout) {
        return new BankSketch()
                .system(12.47e3, 60, SystemGrounding.SOLID)
                .stage("s", connection, layout, UNIT)
                .build();
    }

    private static Bank withSecond(Bank bank, LegLayout second) {
        Stage s = bank.stages().getFirst();
        Stage changed = new Stage(
                s.name(),
                s.connection(),
                s.switchName(),
                s.layout(),
                Optional.of(second),
                s.unit(),
                s.fuse(),
                s.reactor(),
                s.label(),
                s.note());
        return new Bank(
                bank.name(),
                bank.site(),
                bank.standard(),
                bank.system(),
                bank.unitTypes(),
                bank.fuseTypes(),
                List.of(changed),
                bank.protection(),
                bank.control(),
                bank.isolation(),
                bank.units(),
                bank.spares(),
                bank.label(),
                bank.note());
    }

    /** What flows off when the ends of the first leg are joined: energy of the whole stage before, less the energy after. */
    private static double lost(Bank bank, double legVolts) {
        StageCircuit circuit = StageCircuit.of(
                new UnitValues(bank, UnitReadings.NONE), bank.stages().getFirst(), new Resistance.NotKnown());
        StageCircuit.Leg first = circuit.legs().getFirst();
        int far = circuit.legs().stream().anyMatch(l -> l.from() == first.to()) ? 0 : first.to();
        List<RcNetwork.Branch> before = new ArrayList<>();
        List<RcNetwork.Branch> after = new ArrayList<>();
        for (StageCircuit.Leg leg : circuit.legs()) {
            before.add(new RcNetwork.Branch(leg.from(), leg.to(), leg.farads(), 0.0));
            after.add(new RcNetwork.Branch(leg.from(), leg.to(), leg.farads(), 0.0));
        }
        // a short is a capacitance so large that it takes any charge at next to no voltage
        int from = circuit.isDelta() ? first.to() : first.from();
        after.add(new RcNetwork.Branch(from, circuit.isDelta() ? first.from() : far, 1e3, 0.0));
        double[] volts = new double[before.size()];
        for (int l = 0; l < volts.length; l++) {
            StageCircuit.Leg leg = circuit.legs().get(l);
            // the first leg charged to the full, everything that hangs on the same ends with it
            volts[l] = circuit.isDelta()
                    ? (l == 0 ? legVolts : -0.5 * legVolts)
                    : onTheSameEnds(leg)
                            ? legVolts / (circuit.stage().connection().isBridge() ? 2 : 1)
                            : 0.0;
        }
        double[] short0 = new double[after.size()];
        System.arraycopy(volts, 0, short0, 0, volts.length);
        int nodes = circuit.nodes().size();
        double[] left = new RcNetwork(nodes, after).from(short0).voltsAfter(0.0);
        double joules = 0.0;
        for (int l = 0; l < volts.length; l++) {
            double farads = circuit.legs().get(l).farads();
            joules += Decay.energyJoules(farads, volts[l]) - Decay.energyJoules(farads, left[l]);
        }
        return joules;
    }

    private static boolean onTheSameEnds(StageCircuit.Leg leg) {
        return leg.name().startsWith("A");
    }

    /**
     * <pre>
     *   double wye   A ─┬─ A1 ─┬─ n      delta   A ──── AB ──── B      bridge   A ─┬─ul─┬─ll─┬─ n
     *                   └─ A2 ─┘                 └─ CA ─ C ─ BC ─┘                 └─ur─┴─lr─┘
     * </pre>
     */
    @Test
    void itTakesAllThatStandsBetweenTheEndsOfALeg() {
        for (Connection connection : Connection.values()) {
            for (LegLayout layout : List.of(new LegLayout(1, 1, 3), new LegLayout(2, 3, 4))) {
                Bank bank = bank(connection, layout);
                LegCharge leg =
                        Discharge.of(bank, Optional.empty()).stages().getFirst().legCharge();
                assertEquals(lost(bank, leg.volts()), leg.joules(), 1e-6 * leg.joules(), connection.code());
            }
        }
    }

    /** Two and five units a leg: seven stand between line and neutral. C = 200e3/(2π·60·7200²) = 10.2337 µF each. */
    @Test
    void ofUnlikeWyesItTakesBoth() {
        Bank bank = withSecond(bank(Connection.DOUBLE_WYE_UNGROUNDED, new LegLayout(1, 1, 2)), new LegLayout(1, 1, 5));
        StageDischarge stage = Discharge.of(bank, Optional.empty()).stages().getFirst();
        double joules = 7.0 * 0.5 * 10.2337e-6 * Math.pow(stage.opening().initialVolts(), 2);
        assertEquals(joules, stage.legCharge().joules(), 1e-5 * joules);
        assertEquals(lost(bank, stage.legCharge().volts()), joules, 1e-5 * joules);
        // half as much again for the stick that is asked for (common practice)
        assertEquals(1.5 * joules, stage.stickNeeded().joules(), 2e-5 * joules);
    }

    /** One wye of single units, the other of two in series: there a unit may hold half while the ends read 0 V, and that is said. */
    @Test
    void theLongerStringOfUnlikeWyesHidesVoltage() {
        Bank bank = withSecond(bank(Connection.DOUBLE_WYE_UNGROUNDED, new LegLayout(1, 1, 4)), new LegLayout(1, 2, 4));
        StageDischarge stage = Discharge.of(bank, Optional.empty()).stages().getFirst();
        assertEquals(stage.opening().initialVolts() / 2.0, stage.hiddenVolts().orElseThrow(), 1e-9);
        assertTrue(Discharge.waitOf(bank, "s").notes().stream().anyMatch(n -> n.contains("read 0 V")));
    }

    /** The slowest unit read small: the others are as large as ever, and so is what they hold. */
    @Test
    void aSmallSlowUnitDoesNotMakeTheStickLookStronger() {
        Bank bank = bank(Connection.WYE_GROUNDED, new LegLayout(1, 1, 4));
        UnitPosition at = bank.position("s/A/u1").orElseThrow();
        Discharge plain = Discharge.of(bank, Optional.empty());
        double joules = plain.stages().getFirst().legCharge().joules();
        Stick weak = new Stick(1000.0, OptionalDouble.of(0.99 * joules));
        Question read = Question.NOTHING_MORE
                .with(new UnitReadings(Map.of(at, 40e6), Map.of(at, 5e-6)))
                .with(Optional.of(weak));
        Discharge discharge = Discharge.of(bank, read);
        assertEquals(5e-6, discharge.stages().getFirst().capacitanceFarads());
        assertEquals(joules, discharge.stages().getFirst().legCharge().joules(), 1e-6 * joules);
        Check energy = discharge.checks().stream()
                .filter(c -> c.subject().contains("energy in the stick"))
                .findFirst()
                .orElseThrow();
        assertEquals(Verdict.FAIL, energy.verdict());
    }

    /** Worked by hand: 10 µF at 10 kV is 500 J; 1 kΩ: 10 A, 10 ms, ln(200)·10 ms to 50 V. 20 A and 2 s are the common-practice limits. */
    @Test
    void currentAndTimeAreJudged() {
        record Case(double ohms, Verdict time, Verdict current) {}
        double quick = 2.0 / (10e-6 * Math.log(10e3 / 50.0));
        for (Case each : List.of(
                new Case(1000.0, Verdict.PASS, Verdict.PASS),
                new Case(499.0, Verdict.PASS, Verdict.WARN),
                new Case(501.0, Verdict.PASS, Verdict.PASS),
                new Case(0.999 * quick, Verdict.PASS, Verdict.PASS),
                new Case(1.001 * quick, Verdict.WARN, Verdict.PASS))) {
            List<Check> checks = new Stick(each.ohms, OptionalDouble.of(500.0)).checks("s", 500.0, 10e-6, 10e3, 50.0);
            assertEquals(List.of(Verdict.PASS, each.time, each.current), verdicts(checks), each.toString());
            assertEquals(10e3 / each.ohms, checks.get(2).value(), 1e-9);
            assertEquals(each.ohms * 10e-6 * Math.log(200.0), checks.get(1).value(), 1e-9);
        }
        Stick.Needed needed = Stick.needed(10e-6, 500.0, 10e3, 20e3, 50.0);
        assertEquals(500.0, needed.leastOhms(), 1e-9);
        assertEquals(quick, needed.mostOhms(), 1e-6);
        assertEquals(750.0, needed.joules(), 1e-9);
        assertEquals(20e3, needed.volts());
        // without its rating the energy is not judged, but time and current are
        assertEquals(
                2,
                new Stick(1000.0, OptionalDouble.empty())
                        .checks("s", 500.0, 10e-6, 10e3, 50.0)
                        .size());
    }

    /** A can of three legs gives up three times a leg's energy. */
    @Test
    void aThreePhaseCanCountsWithAllItsLegs() {
        UnitType can = BankSketch.type(
                "can",
                400e3,
                6600,
                50,
                new Tolerance(0.0, 0.0),
                0,
                0,
                false,
                Optional.of(new DischargeDevice.Rated(75.0, 600.0)),
                Optional.of(InternalConnection.WYE_UNGROUNDED));
        Bank bank = new BankSketch()
                .standard(Standard.IEC)
                .system(6000, 50, SystemGrounding.ISOLATED)
                .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2), can)
                .build();
        Discharge discharge = Discharge.of(bank, Question.NOTHING_MORE.after(60.0));
        StageDischarge stage = discharge.stages().getFirst();
        UnitDecay first = discharge.courses().getFirst().units().getFirst();
        double left = 3.0 * 0.5 * 29.2296e-6 * Math.pow(stage.endVolts(), 2);
        assertEquals(left, first.endJoules(), 1e-4 * left);
        assertEquals(stage.unitEndJoules(), first.endJoules(), 1e-9 * left);
        Residual after = discharge.courses().getFirst().after().orElseThrow();
        double then = 3.0 * 0.5 * 29.2296e-6 * Math.pow(after.volts(), 2);
        assertEquals(then, after.joules(), 1e-4 * then);
        double unit = 3.0 * 0.5 * 29.2296e-6 * Math.pow(stage.opening().initialVolts(), 2);
        String text = DischargeText.of(Discharge.of(bank, Optional.of(new Stick(1e4, OptionalDouble.of(2.5 * unit)))));
        assertTrue(text.lines().anyMatch(l -> l.contains("units in succession") && l.contains(" 2 at the peak")), text);
    }

    private static List<Verdict> verdicts(List<Check> checks) {
        return checks.stream().map(Check::verdict).toList();
    }
}
