package org.varwright.fuse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.discharge.Ngspice;

/** Currents into a shorted unit against ngspice, which knows neither the closed forms nor the network solver. */
class FuseOracleTest {
    private static final double C = 10.234e-6;
    private static final double V0 = 1.1 * 10182.3;

    /**
     * <pre>
     *   ┌─R─L─┬─R─L─┬─R─L─┐
     *   C     C     C    short at t = 0
     *   └─────┴─────┴─────┘
     * </pre>
     */
    @Test
    void outrushOfThreeNeighboursRingingAndDamped() throws IOException, InterruptedException {
        outrush(3, 4e-3, 2e-6);
        outrush(7, 25e-3, 3e-6);
        outrush(1, 4e-3, 2e-6);
        // so much resistance that nothing rings
        outrush(3, 1.5, 2e-6);
    }

    private static void outrush(int n, double ohms, double henries) throws IOException, InterruptedException {
        double whole = 1.0 / (2.0 * Math.PI * Math.sqrt(henries * (1.0 + 1.0 / n) * n * C));
        double end = 12.0 * Math.max(2.0 * henries / ohms, ohms * (n + 1.0) * C);
        StringBuilder deck = new StringBuilder("outrush\n");
        for (int k = 1; k <= n; k++) {
            deck.append(String.format(Locale.ROOT, "C%1$d c%1$d 0 %2$.9e IC=%3$.6e%n", k, C, V0))
                    .append(String.format(Locale.ROOT, "R%1$d c%1$d r%1$d %2$.9e%n", k, ohms))
                    .append(String.format(Locale.ROOT, "L%1$d r%1$d bus %2$.9e IC=0%n", k, henries));
        }
        deck.append(String.format(Locale.ROOT, """
                R0 bus r0 %1$.9e
                L0 r0 s0 %2$.9e IC=0
                VS s0 0 0
                VN nb 0 0
                BN 0 nb I=i(L1)
                BF 0 qf I=i(VS)*i(VS)
                CF qf 0 1 IC=0
                RF qf 0 1e15
                BQ 0 qn I=i(L1)*i(L1)
                CQ qn 0 1 IC=0
                RQ qn 0 1e15
                .tran %3$.6e %4$.6e 0 %3$.6e UIC
                .options reltol=1e-5 method=trap
                .meas tran peak MAX i(VS)
                .meas tran failed MAX v(qf)
                .meas tran neighbour MAX v(qn)
                .end
                """, ohms, henries, Math.min(1.0 / whole / 400.0, end / 4000.0), end));
        Ngspice.Measured spice = Ngspice.measure(deck.toString());
        Outrush outrush = Outrush.compute(n, C, V0, OptionalDouble.of(ohms), OptionalDouble.of(henries));
        String at = n + " neighbours, " + ohms + " Ω, " + henries + " H";
        assertEquals(1.0, outrush.peakAmperes().orElseThrow() / spice.get("peak"), 2e-3, at);
        assertEquals(1.0, outrush.failedAmpereSquaredSeconds().orElseThrow() / spice.get("failed"), 5e-3, at);
        assertEquals(1.0, outrush.neighbourAmpereSquaredSeconds().orElseThrow() / spice.get("neighbour"), 5e-3, at);
    }

    /** Ungrounded wye, one and two groups in series, behind the impedance of the bus: the current of a shorted unit. */
    @Test
    void aShortedUnitOfAnUngroundedWye() throws IOException, InterruptedException {
        currents(Connection.WYE_UNGROUNDED, 1);
        currents(Connection.WYE_UNGROUNDED, 2);
    }

    @Test
    void aShortedUnitOfAGroundedWye() throws IOException, InterruptedException {
        currents(Connection.WYE_GROUNDED, 1);
        currents(Connection.WYE_GROUNDED, 3);
    }

    @Test
    void aShortedUnitOfADelta() throws IOException, InterruptedException {
        currents(Connection.DELTA, 1);
        currents(Connection.DELTA, 2);
    }

    /**
     * <pre>
     *   E─R─L─┬── C1 ══ … ══ CS ──┬── neutral, ground, or the next line
     *         (3 phases)          the upper group of leg A shorted by VS
     * </pre>
     */
    private static void currents(Connection connection, int groups) throws IOException, InterruptedException {
        double lineVolts = 12.47e3;
        double legVolts = connection == Connection.DELTA ? lineVolts : lineVolts / Math.sqrt(3.0);
        int units = 3;
        Stage stage = FuseBanks.stage(
                "s",
                connection,
                new LegLayout(1, groups, units),
                FuseBanks.unit(200e3, legVolts / groups, 60.0),
                Optional.of(FuseBanks.link("50T")),
                Optional.empty());
        Bank bank = FuseBanks.bank(Standard.IEEE, FuseBanks.behind(lineVolts, 60.0, 210e6, 9.0), stage);
        FullShort fault = assertInstanceOf(
                        FullShort.Result.Found.class,
                        FullShort.of(bank, stage, stage.positions().getFirst()))
                .fault();

        double z = lineVolts * lineVolts / 210e6;
        double r = z / Math.sqrt(1.0 + 81.0);
        double l = 9.0 * r / (2.0 * Math.PI * 60.0);
        double farads = units * stage.unit().capacitanceFarads();
        StringBuilder deck = new StringBuilder("shorted unit\n");
        String[] phases = {"a", "b", "c"};
        for (int p = 0; p < 3; p++) {
            String x = phases[p];
            deck.append(String.format(
                    Locale.ROOT,
                    "V%1$s e%1$s 0 dc 0 ac %2$.9e %3$d%nR%1$s e%1$s f%1$s %4$.9e%nL%1$s f%1$s t%1$s %5$.9e%n",
                    x,
                    lineVolts / Math.sqrt(3.0),
                    -120 * p,
                    r,
                    l));
            String end = switch (connection) {
                case DELTA -> "t" + phases[(p + 1) % 3];
                case WYE_GROUNDED -> "0";
                default -> "n";
            };
            for (int g = 1; g <= groups; g++) {
                String from = g == 1 ? "t" + x : "m" + x + (g - 1);
                String to = g == groups ? end : "m" + x + g;
                if (p == 0 && g == 1) {
                    // ngspice wants no voltage source across nothing: 1 µΩ in series
                    deck.append("VS ")
                            .append(from)
                            .append(" q 0\nRS q ")
                            .append(to)
                            .append(" 1u\n");
                } else {
                    deck.append(String.format(Locale.ROOT, "C%s%d %s %s %.9e%n", x, g, from, to, farads));
                }
            }
        }
        // currents as voltages, 1 V for 1 A
        deck.append("""
                HU hu 0 VS 1
                HL hl 0 Va 1
                .options rshunt=1e12
                .ac lin 1 60 60
                .control
                set numdgt=12
                run
                let unit = mag(v(hu))
                let line = mag(v(hl))
                print unit line
                .endc
                .end
                """);
        Ngspice.Measured spice = Ngspice.measure(deck.toString());
        assertEquals(1.0, fault.unitAmperes() / spice.get("unit"), 1e-5, connection + " " + groups);
        assertEquals(1.0, fault.lineAmperes() / spice.get("line"), 1e-5, connection + " " + groups);
    }
}
