package org.varwright.switching;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Reactor;
import org.varwright.discharge.Ngspice;
import org.varwright.network.Capacitances;

/** Inrush, opening and restrike in time against ngspice, from decks that share no code with the program's circuit. */
class InrushOracleTest {
    private static final double RAMP_SECONDS = 0.04;
    private static final double AFTER_SECONDS = 0.012;
    private static final double TOLERANCE = 1e-3;

    /** Over many swings the resistors that ngspice needs beside its inductors damp this much. */
    private static final double DAMPED = 3e-3;

    private static final double[] NOTHING = new double[3];

    private static SwitchedStage stage(Bank bank, int i) {
        return SwitchedStage.of(bank.stages().get(i), Capacitances.known(bank));
    }

    private static List<SwitchedStage> stages(Bank bank, int from) {
        List<SwitchedStage> stages = new ArrayList<>();
        for (int i = from; i < bank.stages().size(); i++) {
            stages.add(stage(bank, i));
        }
        return stages;
    }

    /** The first stage closes onto all others; peaks of its three poles, of its legs' voltages and of the second stage's poles. */
    private static void compare(
            Bank bank, Map<String, Double> trapped, double[] degrees, double stepSeconds, double tolerance)
            throws IOException, InterruptedException {
        Source source = Source.of(bank.system());
        Closing ours = new ClosingStudy(source, stage(bank, 0), stages(bank, 1), Path.LEAST_PER_METRE, trapped)
                .at(List.of(degrees[0], degrees[1], degrees[2]), true);
        double first = Math.min(degrees[0], Math.min(degrees[1], degrees[2]));
        double[] seconds = new double[3];
        double[] volts = new double[3];
        boolean delta = bank.stages().getFirst().connection() == Connection.DELTA;
        for (int p = 0; p < 3; p++) {
            seconds[p] = (degrees[p] - first) / 360.0 / source.hertz();
            String leg = delta ? bank.stages().getFirst().legs().get(p) : String.valueOf((char) ('A' + p));
            volts[p] = trapped.getOrDefault(leg, 0.0) * source.peakVolts() * (delta ? Math.sqrt(3.0) : 1.0);
        }
        SpiceBank deck = new SpiceBank(bank, first, RAMP_SECONDS).switched(0, seconds, volts);
        for (int i = 1; i < bank.stages().size(); i++) {
            deck.on(i);
        }
        for (int p = 0; p < 3; p++) {
            deck.peak("i" + p, SpiceBank.pole(0, p));
            deck.peak("v" + p, SpiceBank.leg(bank, 0, p));
            if (bank.stages().size() > 1) {
                deck.peak("o" + p, SpiceBank.pole(1, p));
            }
        }
        Ngspice.Measured spice = Ngspice.measure(deck.deck(AFTER_SECONDS, stepSeconds));
        int legs = bank.stages().getFirst().legs().size();
        double largest = 0.0;
        for (int p = 0; p < 3; p++) {
            largest = Math.max(largest, SpiceBank.magnitude(spice, "i" + p));
        }
        for (int p = 0; p < 3; p++) {
            near(bank, "pole " + p, SpiceBank.magnitude(spice, "i" + p), peak(ours, p), tolerance * largest);
            double leg = SpiceBank.magnitude(spice, "v" + p);
            near(bank, "leg " + p, leg, peak(ours, 3 + legs + leg(bank, p)) * terminalsPerLeg(bank), tolerance * leg);
            if (bank.stages().size() > 1) {
                near(
                        bank,
                        "other " + p,
                        SpiceBank.magnitude(spice, "o" + p),
                        peak(ours, 3 + 2 * legs + p),
                        tolerance * largest);
            }
        }
    }

    /** Place of a leg of phase {@code p} among the legs of the first stage. */
    private static int leg(Bank bank, int p) {
        return bank.stages().getFirst().connection().isBridge() ? 4 * p : p;
    }

    /** A quarter of a bridge whose quarters are equal bears half of what stands between its terminals. */
    private static double terminalsPerLeg(Bank bank) {
        return bank.stages().getFirst().connection().isBridge() ? 2.0 : 1.0;
    }

    private static void near(Bank bank, String what, double spice, double ours, double allowed) {
        assertEquals(spice, ours, allowed, bank.stages().getFirst().connection() + " " + what);
    }

    /** Largest magnitude of a recorded probe in the time that ngspice ran. */
    private static double peak(Closing closing, int probe) {
        Closing.Recorded recorded = closing.recorded().orElseThrow();
        double[] seconds = recorded.wave().seconds();
        double[] values = recorded.wave().values()[probe];
        double largest = 0.0;
        for (int i = 1; i + 1 < seconds.length && seconds[i] <= AFTER_SECONDS; i++) {
            largest = Math.max(largest, Math.abs(values[i]));
            double a = Math.abs(values[i - 1]);
            double b = Math.abs(values[i]);
            double c = Math.abs(values[i + 1]);
            if (b >= a && b >= c && b > 0.0 && seconds[i + 1] > seconds[i] && seconds[i] > seconds[i - 1]) {
                // top of the parabola through three steps
                double bend = a - 2.0 * b + c;
                largest = bend < 0.0 ? Math.max(largest, b - (c - a) * (c - a) / (8.0 * bend)) : largest;
            }
        }
        return largest;
    }

    private static TestBank.Plan plan(Connection connection, double vars, double henries, Reactor.Position position) {
        TestBank.Plan plan = TestBank.Plan.of(connection, vars);
        return henries > 0.0 ? plan.reactor(henries, 0.01, position, 0.0) : plan;
    }

    private static TestBank weak() {
        return new TestBank(13.8e3, 60.0).source(250e6, 12.0);
    }

    /**
     * <pre>
     *   ~ ──R─L── bus ──[poles]──┤├── n
     * </pre>
     */
    @Test
    void aloneWithTheWholeStageOfEveryConnection() throws IOException, InterruptedException {
        for (Connection connection : Connection.values()) {
            Bank bank = weak().stage(
                            "s",
                            plan(connection, 3e6, 0.0, Reactor.Position.LINE).layout(new LegLayout(1, 2, 3)))
                    .build();
            compare(bank, Map.of(), new double[] {90.0, 90.0, 90.0}, 2e-6, TOLERANCE);
        }
    }

    /** A closes first and carries nothing on a floating star; then B, at the worst for it, and C. */
    @Test
    void polesClosingApart() throws IOException, InterruptedException {
        for (Connection connection : List.of(Connection.WYE_UNGROUNDED, Connection.DELTA, Connection.WYE_GROUNDED)) {
            Bank bank = weak().stage("s", plan(connection, 3e6, 100e-6, Reactor.Position.LINE))
                    .build();
            compare(bank, Map.of(), new double[] {30.0, 60.0, 120.0}, 2e-6, TOLERANCE);
        }
    }

    @Test
    void trappedChargeOnAWyeAndOnADelta() throws IOException, InterruptedException {
        Bank wye = weak().stage("s", plan(Connection.WYE_UNGROUNDED, 3e6, 0.0, Reactor.Position.LINE))
                .build();
        compare(wye, Map.of("A", -1.0, "B", 0.366, "C", 1.366), new double[] {90.0, 90.0, 90.0}, 2e-6, TOLERANCE);
        Bank delta = weak().stage("s", plan(Connection.DELTA, 3e6, 0.0, Reactor.Position.LINE))
                .build();
        compare(delta, Map.of("AB", -1.0, "BC", 0.3, "CA", 0.7), new double[] {90.0, 90.0, 90.0}, 2e-6, TOLERANCE);
    }

    /**
     * <pre>
     *   bus ─┬─[poles]─L─┤├─    closes
     *        └───────L─┤├─      is on
     * </pre>
     */
    @Test
    void backToBack() throws IOException, InterruptedException {
        Bank bank = weak().stage("s1", plan(Connection.WYE_UNGROUNDED, 600e3, 120e-6, Reactor.Position.LINE))
                .stage("s2", plan(Connection.WYE_UNGROUNDED, 1200e3, 120e-6, Reactor.Position.LINE))
                .build();
        compare(bank, Map.of(), new double[] {90.0, 90.0, 90.0}, 5e-7, TOLERANCE);
    }

    @Test
    void ontoUnlikeStagesWithReactorsInTheLegs() throws IOException, InterruptedException {
        Bank bank = weak().stage("s1", plan(Connection.DOUBLE_WYE_UNGROUNDED, 900e3, 300e-6, Reactor.Position.NEUTRAL))
                .stage("s2", plan(Connection.DELTA, 1200e3, 900e-6, Reactor.Position.NEUTRAL))
                .stage("s3", plan(Connection.WYE_GROUNDED, 600e3, 200e-6, Reactor.Position.NEUTRAL))
                .stage("s4", plan(Connection.BRIDGE_UNGROUNDED, 1500e3, 150e-6, Reactor.Position.NEUTRAL))
                .build();
        compare(bank, Map.of(), new double[] {70.0, 85.0, 95.0}, 5e-7, DAMPED);
    }

    /** The integral of the squared current over the time that ngspice ran. */
    @Test
    void integralOfTheSquare() throws IOException, InterruptedException {
        Bank bank = weak().stage("s", plan(Connection.WYE_UNGROUNDED, 3e6, 0.0, Reactor.Position.LINE))
                .build();
        Closing ours = new ClosingStudy(
                        Source.of(bank.system()), stage(bank, 0), List.of(), Path.LEAST_PER_METRE, Map.of())
                .at(List.of(90.0, 90.0, 90.0), false);
        Ngspice.Measured spice = Ngspice.measure(new SpiceBank(bank, 90.0, RAMP_SECONDS)
                .switched(0, NOTHING, NOTHING)
                .squares("ii", SpiceBank.pole(0, 0), 1.0 / 60.0)
                .deck(1.0 / 60.0, 2e-6));
        assertEquals(spice.get("ii"), ours.ampereSquaredSeconds(), DAMPED * spice.get("ii"));
    }

    /** What ngspice finds at the times at which ours clears and restrikes: currents of zero, the voltage asked for, then the same peaks. */
    @Test
    void openingAndRestrikeOfAGroundedWye() throws IOException, InterruptedException {
        opening(plan(Connection.WYE_GROUNDED, 3e6, 150e-6, Reactor.Position.LINE), "A", 1.8);
    }

    /** Pole A restrikes while B and C still conduct: the star floats until then. */
    @Test
    void openingAndRestrikeOfAnUngroundedWye() throws IOException, InterruptedException {
        opening(plan(Connection.WYE_UNGROUNDED, 3e6, 150e-6, Reactor.Position.LINE), "A", 1.2);
    }

    private static void opening(TestBank.Plan plan, String pole, double perPeak)
            throws IOException, InterruptedException {
        Bank bank = weak().stage("s", plan).build();
        Source source = Source.of(bank.system());
        Opened ours = OpeningStudy.of(source, stage(bank, 0), List.of(), Path.LEAST_PER_METRE, Map.of(pole, perPeak));
        assertTrue(ours.restruck(), ours.toString());
        double[] opens = new double[3];
        double restrikes = 0.0;
        for (Opened.Step step : ours.steps()) {
            if (step.conductsAgain()) {
                restrikes = step.seconds();
                assertEquals(perPeak, step.acrossPerPeak(), 1e-9);
            } else {
                opens[step.pole().charAt(0) - 'A'] = step.seconds();
            }
        }
        int p = pole.charAt(0) - 'A';
        SpiceBank deck = new SpiceBank(bank, 75.0, RAMP_SECONDS).opened(0, opens, p, restrikes);
        for (int i = 0; i < 3; i++) {
            deck.at("z" + i, SpiceBank.pole(0, i), opens[i] - 1e-7);
        }
        deck.at("across", SpiceBank.across(0, p), restrikes - 1e-6);
        deck.peakFrom("again", SpiceBank.pole(0, p), restrikes);
        deck.peakFrom("leg", SpiceBank.leg(bank, 0, p), restrikes);
        Ngspice.Measured spice = Ngspice.measure(deck.deck(2.0 / 60.0, 2e-6));
        double ratedPeak = Math.sqrt(2.0) * 3e6 / Math.sqrt(3.0) / 13.8e3;
        for (int i = 0; i < 3; i++) {
            assertEquals(0.0, spice.get("z" + i), 1e-2 * ratedPeak, "pole " + i + " cleared away from its zero");
        }
        assertEquals(perPeak * source.peakVolts(), Math.abs(spice.get("across")), 2e-3 * source.peakVolts());
        double again = SpiceBank.magnitude(spice, "again");
        assertEquals(again, ours.peakAmperes(), DAMPED * again);
        double leg = SpiceBank.magnitude(spice, "leg");
        assertEquals(leg, ours.legs().get(p).highestPerPeak() * source.peakVolts(), DAMPED * leg);
    }
}
