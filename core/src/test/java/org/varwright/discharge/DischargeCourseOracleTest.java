package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;

/** Opening, decay, strings and windings against ngspice, whose decks are made here and which knows nothing of modes and phasors. */
class DischargeCourseOracleTest {
    private static final double PEAK = 10e3;
    private static final double[] FARADS = {8e-6, 10e-6, 12e-6};
    private static final double[] OHMS = {2e6, 3e6, 4e6};

    private static Bank bank(Connection connection) {
        UnitType type = BankSketch.type("U", 200e3, 7200, 60, new Tolerance(0.0, 0.0), 0, 0, false, Optional.empty());
        BankSketch sketch = new BankSketch().stage("s", connection, new LegLayout(1, 1, 1), type);
        for (int l = 0; l < 3; l++) {
            sketch.known("s/" + "ABC".charAt(l), "", FARADS[l]);
        }
        return sketch.build();
    }

    /**
     * <pre>
     *   VA ──/SA──┬── 8 µF ──┐
     *   VB ──/SB──┼── 10 µF ─┼── n (floats, or ground)   poles open at the moments that we say; ngspice then says
     *   VC ──/SC──┴── 12 µF ─┘                           whether their currents were zero and what the legs hold
     * </pre>
     */
    @Test
    void unlikeLegsOpenAndDecayAsNgspiceSays() throws IOException, InterruptedException {
        for (Connection connection : List.of(Connection.WYE_UNGROUNDED, Connection.WYE_GROUNDED)) {
            Bank bank = bank(connection);
            StageCircuit circuit = StageCircuit.of(
                    new UnitValues(bank, UnitReadings.NONE), bank.stages().getFirst(), new Resistance.NotKnown());
            PoleSimulation simulation = new PoleSimulation(circuit, PEAK, 60.0, false);
            for (int first = 0; first < 3; first++) {
                PoleOpening opening = simulation.all().get(first);
                Ngspice.Measured spice =
                        Ngspice.measure(openingDeck(simulation, opening, first, connection == Connection.WYE_GROUNDED));
                double[] held = new double[3];
                for (int l = 0; l < 3; l++) {
                    String leg = "abc".substring(l, l + 1);
                    double crest = 2.0 * Math.PI * 60.0 * FARADS[l] * PEAK;
                    assertEquals(0.0, spice.get("i" + leg), 2e-3 * crest, connection + " pole " + leg + spice);
                    held[l] = spice.get("v" + leg);
                    assertEquals(held[l], opening.legs().get(l).volts(), 3e-3 * PEAK, connection + leg + spice);
                }
                decays(connection, held);
            }
        }
    }

    /** The legs start in their steady state, so that the neutral holds no charge of its own. */
    private static String openingDeck(PoleSimulation simulation, PoleOpening opening, int first, boolean grounded) {
        double cycle = 1.0 / 60.0;
        double start = cycle * (1.0 + simulation.startRadians(first) / (2.0 * Math.PI));
        String n = grounded ? "0" : "n";
        double neutral = 0.0;
        StringBuilder deck = new StringBuilder("opening\n");
        double last = start;
        for (int p = 0; p < 3; p++) {
            String pole = "ABC".substring(p, p + 1);
            double opens = start
                    + opening.clearings().stream()
                            .filter(c -> c.poles().contains(pole))
                            .findFirst()
                            .orElseThrow()
                            .seconds();
            last = Math.max(last, opens);
            double before = simulation.legVolts(first, new double[] {-start})[p][0];
            neutral += FARADS[p] * before;
            deck.append(String.format(
                    Locale.ROOT,
                    "V%1$s s%1$s 0 SIN(0 %2$g 60 0 0 %3$d)%nS%1$s s%1$s %1$s g%1$s 0 sw%n"
                            + "VG%1$s g%1$s 0 PWL(0 1 %4$.10f 1 %5$.10f 0)%nC%1$s %1$s %7$s %6$e IC=%8$.6f%n"
                            + "EX%1$s x%1$s 0 %1$s %7$s 1%n.meas tran i%1$s FIND i(V%1$s) AT=%4$.10f%n",
                    pole,
                    PEAK,
                    90 - 120 * p,
                    opens,
                    opens + 1e-6,
                    FARADS[p],
                    n,
                    before));
        }
        assertTrue(grounded || Math.abs(neutral) < 1e-9 * PEAK, "charge of the neutral " + neutral);
        deck.append(String.format(
                Locale.ROOT,
                "RN n 0 1e12%n.model sw SW(VT=0.5 VH=0 RON=1e-2 ROFF=1e13)%n.tran 1e-5 %.6f 0 4e-6 UIC%n"
                        + ".options reltol=1e-6 gmin=1e-18 abstol=1e-12%n",
                last + 2e-3));
        for (int p = 0; p < 3; p++) {
            String pole = "ABC".substring(p, p + 1);
            deck.append(String.format(Locale.ROOT, ".meas tran v%1$s FIND v(x%1$s) AT=%2$.6f%n", pole, last + 1e-3));
        }
        return deck.append(".end\n").toString();
    }

    /** The legs are left to their resistors, from what ngspice found for the opening; the neutral is the reference. */
    private static void decays(Connection connection, double[] held) throws IOException, InterruptedException {
        StringBuilder deck = new StringBuilder("decay\n");
        List<RcNetwork.Branch> branches = new ArrayList<>();
        for (int l = 0; l < 3; l++) {
            deck.append(String.format(
                    Locale.ROOT,
                    "C%1$d %1$d 0 %2$e IC=%3$.6f%nR%1$d %1$d 0 %4$e%n.meas tran v%1$d FIND v(%1$d) AT=40%n",
                    l + 1,
                    FARADS[l],
                    held[l],
                    OHMS[l]));
            branches.add(new RcNetwork.Branch(l + 1, 0, FARADS[l], 1.0 / OHMS[l]));
        }
        deck.append(".tran 0.02 41 0 0.02 UIC\n.options reltol=1e-6 gmin=1e-18\n.end\n");
        Ngspice.Measured spice = Ngspice.measure(deck.toString());
        double[] left = new RcNetwork(4, branches).from(held).voltsAfter(40.0);
        for (int l = 0; l < 3; l++) {
            assertEquals(spice.get("v" + (l + 1)), left[l], 1e-4 * PEAK, connection + " leg " + l);
        }
    }

    /**
     * <pre>
     *   A ─┬─ C1 (R open) ── m ── C2‖R ─┬─ N     four strings of two units a leg; ends joined by S when the wait is over
     *      ├─ C‖R ──── p ──── C‖R ──────┤
     *      ├─ … (three sound strings) ──┤
     *      └──────────── S ─────────────┘
     * </pre>
     */
    @Test
    void oneOpenResistorAmongFourStringsIsAsNgspiceSays() throws IOException, InterruptedException {
        UnitType type = BankSketch.type(
                "U",
                200e3,
                3600,
                60,
                new Tolerance(0.0, 0.0),
                0,
                0,
                false,
                Optional.of(new DischargeDevice.Resistor(1e6)));
        Bank bank = new BankSketch()
                .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(4, 2, 1), type)
                .build();
        Discharge discharge = Discharge.of(bank, Optional.empty());
        StageDischarge stage = discharge.stages().getFirst();
        StringCase.Case open =
                discharge.courses().getFirst().string().orElseThrow().oneOpen();
        double v0 = stage.opening().initialVolts();
        double wait = stage.waitSeconds();
        double later = wait + open.joinedSecondsToSafe().orElseThrow();
        Ngspice.Measured spice = Ngspice.measure(String.format(
                Locale.ROOT,
                """
                string
                C1 a m %1$e IC=%2$.6f
                R1 a m 1e15
                C2 m 0 %1$e IC=%2$.6f
                R2 m 0 1.1meg
                C3 a p %3$e IC=%2$.6f
                R3 a p %4$e
                C4 p 0 %3$e IC=%2$.6f
                R4 p 0 %4$e
                S1 a 0 g 0 sw
                VG g 0 PWL(0 0 %5$.3f 0 %6$.3f 1)
                EX x 0 a m 1
                .model sw SW(VT=0.5 VH=0 RON=10 ROFF=1e15)
                .tran 0.05 %7$.3f 0 0.05 UIC
                .options reltol=1e-6 gmin=1e-18
                .meas tran slow FIND v(x) AT=%8$.3f
                .meas tran mate FIND v(m) AT=%8$.3f
                .meas tran ends FIND v(a) AT=%8$.3f
                .meas tran joined FIND v(x) AT=%9$.3f
                .meas tran other FIND v(m) AT=%9$.3f
                .meas tran late FIND v(x) AT=%10$.3f
                .end
                """,
                stage.capacitanceFarads(),
                v0,
                3.0 * stage.capacitanceFarads(),
                1.1e6 / 3.0,
                wait,
                wait + 0.001,
                later + 2.0,
                wait - 0.01,
                wait + 0.05,
                later));
        assertEquals(spice.get("slow"), open.slowVolts(), 1e-3 * v0);
        assertEquals(spice.get("mate"), open.mateVolts(), 1e-3 * v0);
        assertEquals(spice.get("ends"), open.endsVolts(), 1e-3 * v0);
        assertEquals(spice.get("joined"), open.joinedSlowVolts(), 1e-3 * v0);
        assertEquals(spice.get("other"), open.joinedMateVolts(), 1e-3 * v0);
        assertEquals(stage.chosen().volts(), Math.abs(spice.get("late")), 1.0);
        assertTrue(Math.abs(open.joinedSlowVolts()) > 100.0, "the case must have something to hide: " + open);
    }

    /** A leg of 20 µF at 14 kV through a winding of 2.1 kΩ: swinging at 900 H, creeping at 10 H. */
    @Test
    void aLegEmptiesThroughAWindingAsNgspiceSays() throws IOException, InterruptedException {
        for (double henries : new double[] {900.0, 10.0}) {
            WindingDischarge.Swing swing = new WindingDischarge.Swing(20e-6, 2100.0, henries, 14e3);
            double safe = swing.secondsTo(50.0);
            Ngspice.Measured spice = Ngspice.measure(
                    String.format(Locale.ROOT, """
                    winding
                    C1 1 0 20u IC=14000
                    L1 1 2 %1$g IC=0
                    R1 2 3 2100
                    V1 3 0 0
                    .tran 1e-4 %2$.6f 0 2e-4 UIC
                    .options reltol=1e-6 method=trap
                    .meas tran early FIND v(1) AT=%3$.6f
                    .meas tran half FIND v(1) AT=%4$.6f
                    .meas tran peak MAX i(V1)
                    .meas tran high MAX v(1) FROM=%5$.6f TO=%2$.6f
                    .meas tran low MIN v(1) FROM=%5$.6f TO=%2$.6f
                    .end
                    """, henries, safe + 1.0, safe / 20.0, safe / 2.0, safe));
            assertEquals(henries > 100.0, swing.oscillates());
            assertEquals(spice.get("early"), swing.voltsAfter(safe / 20.0), 15.0);
            assertEquals(spice.get("half"), swing.voltsAfter(safe / 2.0), 5.0);
            assertEquals(spice.get("peak"), swing.peakAmperes(), 2e-3 * swing.peakAmperes());
            assertTrue(spice.get("high") < 50.5 && spice.get("low") > -50.5, henries + " H: " + spice);
            // and it was not safe much earlier: the bound is tight to one swing
            assertTrue(Math.abs(swing.voltsAfter(0.0)) > 13_999.0);
        }
    }

    /**
     * <pre>
     *   a ──‖── n      windings ab, bc, ca of 2.1 kΩ, 900 H each;
     *   b ──‖── n      legs at 1, 0.366, −1.366 of 10 kV
     *   c ──‖── n
     * </pre>
     */
    @Test
    void threeWindingsBetweenLinesEmptyAWyeWithinTheirBounds() throws IOException, InterruptedException {
        Bank bank = new BankSketch()
                .stage(
                        "s",
                        Connection.WYE_UNGROUNDED,
                        new LegLayout(1, 1, 1),
                        BankSketch.type("U", 200e3, 7200, 60, new Tolerance(0.0, 0.0), 0, 0, false, Optional.empty()))
                .build();
        StageCircuit circuit = StageCircuit.of(
                new UnitValues(bank, UnitReadings.NONE), bank.stages().getFirst(), new Resistance.NotKnown());
        double farads = circuit.legs().getFirst().farads();
        double between = 2.366 * PEAK;
        double slowest = 1.0 / WindingDischarge.elastance(circuit, true)[0][0];
        // elastance across one winding is 2/C; the slowest current that drains anything sees 3/C
        assertEquals(farads / 2.0, slowest, 1e-9 * farads);
        WindingDischarge.Swing swing = new WindingDischarge.Swing(farads / 3.0, 2100.0, 900.0, between);
        double safe = swing.secondsTo(50.0);
        Ngspice.Measured spice = Ngspice.measure(
                String.format(Locale.ROOT, """
                windings
                CA a n %1$e IC=%2$g
                CB b n %1$e IC=%3$g
                CC c n %1$e IC=%4$g
                RN n 0 1e9
                LAB a d 900 IC=0
                RAB d b 2100
                LBC b e 900 IC=0
                RBC e c 2100
                LCA c f 900 IC=0
                RCA f a 2100
                EAB x 0 a b 1
                ECA y 0 c a 1
                BP p 0 V = (v(f)-v(a))*(v(f)-v(a))/2100
                .tran 1e-4 %6$.6f 0 2e-4 UIC
                .options reltol=1e-6
                .meas tran hab MAX v(x) FROM=%5$.6f TO=%6$.6f
                .meas tran hca MAX v(y) FROM=%5$.6f TO=%6$.6f
                .meas tran lca MIN v(y) FROM=%5$.6f TO=%6$.6f
                .meas tran peak MAX i(LCA)
                .meas tran low MIN i(LCA)
                .meas tran joules INTEG v(p) FROM=0 TO=%6$.6f
                .end
                """, farads, PEAK, 0.366 * PEAK, -1.366 * PEAK, safe, safe + 0.5));
        assertTrue(spice.get("hab") < 50.0 && spice.get("hca") < 50.0 && spice.get("lca") > -50.0, spice.toString());
        double peak = Math.max(Math.abs(spice.get("peak")), Math.abs(spice.get("low")));
        assertEquals(swing.peakAmperes(), peak, 5e-3 * peak);
        double stored = 0.5 * farads * PEAK * PEAK * (1.0 + 0.366 * 0.366 + 1.366 * 1.366);
        assertTrue(spice.get("joules") > 0.3 * stored && spice.get("joules") < stored, spice + " of " + stored);
    }

    /** 20 µF at −0.6 of the crest, switched through 100 µH onto the crest: 2.6 and 1.6 times what a discharged one meets (DIS-7). */
    @Test
    void closingOnTrappedChargeSwingsAsFarAsNgspiceSays() throws IOException, InterruptedException {
        Ngspice.Measured trapped = closing(-0.6);
        Ngspice.Measured none = closing(0.0);
        assertEquals(2.6, trapped.get("v"), 5e-3);
        assertEquals(2.0, none.get("v"), 5e-3);
        assertEquals(1.6, trapped.get("i") / none.get("i"), 5e-3);
    }

    private static Ngspice.Measured closing(double perPeak) throws IOException, InterruptedException {
        return Ngspice.measure(String.format(Locale.ROOT, """
                closing
                V1 1 0 SIN(0 1 60 0 0 90)
                L1 1 2 100u IC=0
                C1 2 0 20u IC=%g
                .tran 1e-7 4e-4 0 1e-7 UIC
                .options reltol=1e-6
                .meas tran v MAX v(2)
                .meas tran i MIN i(V1)
                .end
                """, perPeak));
    }

    /** Without an inductance the bound on the current is that of a pure resistance, whatever the inductance turns out to be. */
    @Test
    void noInductanceDrivesMoreThanTheBoundWithoutOne() {
        for (double henries : new double[] {1e-3, 1.0, 100.0, 900.0}) {
            WindingDischarge.Swing swing = new WindingDischarge.Swing(20e-6, 2100.0, henries, 14e3);
            assertTrue(swing.peakAmperes() < 14e3 / 2100.0, henries + " H");
            assertTrue(swing.amperesAfter(0.0) == 0.0);
        }
    }
}
