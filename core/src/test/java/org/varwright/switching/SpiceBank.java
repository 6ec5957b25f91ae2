package org.varwright.switching;

import java.util.Locale;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.discharge.Ngspice;
import org.varwright.network.Capacitances;

/**
 * A bank as an ngspice deck, written from the text of bank-file.md leg by leg, sharing no code with the program's own circuit. The sources rise slowly, so
 * that nothing swings before the poles move.
 */
final class SpiceBank {
    private static final String[] PHASES = {"a", "b", "c"};

    /** Logarithms of a pole's conductance. */
    private static final String OPEN = "-20";

    private static final String CLOSED = "9.2";

    private final StringBuilder text = new StringBuilder("inrush\n");
    private final Bank bank;
    private final double rampSeconds;
    private int parts;

    /** Closing or opening times are counted from {@code rampSeconds}; the clock then stands at {@code degrees}. */
    SpiceBank(Bank bank, double degrees, double rampSeconds) {
        this.bank = bank;
        this.rampSeconds = rampSeconds;
        double v = bank.system().nominalVolts();
        double z = v * v / bank.system().shortCircuitVoltAmperes().orElseThrow();
        double ratio = bank.system().xOverR().orElseThrow();
        double r = z / Math.sqrt(1.0 + ratio * ratio);
        double l = r * ratio / bank.system().angularFrequency();
        for (int p = 0; p < 3; p++) {
            double ahead = degrees - 120.0 * p - 360.0 * bank.system().frequencyHertz() * rampSeconds;
            line(String.format(
                    Locale.ROOT,
                    "B%1$s e%1$s 0 V=%2$.12e*sin(%3$.12e*time+%4$.12e)*(time<%5$.6e?(sin(%6$.12e*time))^2:1)",
                    PHASES[p],
                    v * Math.sqrt(2.0 / 3.0),
                    bank.system().angularFrequency(),
                    Math.toRadians(ahead),
                    0.75 * rampSeconds,
                    Math.PI / 2.0 / (0.75 * rampSeconds)));
            line(String.format(Locale.ROOT, "Rs%1$s e%1$s f%1$s %2$.9e", PHASES[p], r));
            inductor("s" + PHASES[p], "f" + PHASES[p], "bus" + PHASES[p], l);
        }
        line(".options reltol=1e-5 abstol=1e-4 vntol=1e-2 chgtol=1e-12 gmin=1e-15 itl4=200");
    }

    private void line(String line) {
        text.append(line).append('\n');
    }

    /** A stage that is on all the time. */
    SpiceBank on(int index) {
        for (int p = 0; p < 3; p++) {
            line(String.format(Locale.ROOT, "V%1$ds%2$s bus%2$s p%1$d%2$s 0", index, PHASES[p]));
        }
        return stage(index, new double[3]);
    }

    /** A stage whose poles close at these times; {@code trapped} volts on its legs. */
    SpiceBank switched(int index, double[] seconds, double[] trapped) {
        for (int p = 0; p < 3; p++) {
            pole(index, p, false, seconds[p]);
        }
        return stage(index, trapped);
    }

    /** A stage whose poles open at these times; one of them closes again. */
    SpiceBank opened(int index, double[] seconds, int again, double againSeconds) {
        for (int p = 0; p < 3; p++) {
            if (p == again) {
                pole(index, p, true, seconds[p], againSeconds);
            } else {
                pole(index, p, true, seconds[p]);
            }
        }
        return stage(index, new double[3]);
    }

    /** A pole as a conductance that runs from 2 nS to 10 kS, or back, within a microsecond: a step would stop ngspice. */
    private void pole(int index, int p, boolean closed, double... changes) {
        line(String.format(Locale.ROOT, "V%1$ds%2$s bus%2$s q%1$d%2$s 0", index, PHASES[p]));
        line(String.format(
                Locale.ROOT,
                "BS%1$d%2$s q%1$d%2$s p%1$d%2$s I=v(q%1$d%2$s,p%1$d%2$s)*exp(v(g%1$d%2$s))",
                index,
                PHASES[p]));
        boolean now = closed;
        StringBuilder times = new StringBuilder();
        times.append(String.format(Locale.ROOT, "0 %s", now ? CLOSED : OPEN));
        for (double change : changes) {
            double at = rampSeconds + change;
            times.append(String.format(
                    Locale.ROOT, " %.12e %s %.12e %s", at, now ? CLOSED : OPEN, at + 1e-6, now ? OPEN : CLOSED));
            now = !now;
        }
        line(String.format(Locale.ROOT, "Vg%1$d%2$s g%1$d%2$s 0 PWL(%3$s)", index, PHASES[p], times));
    }

    /** An inductance with 100 kΩ beside it, which takes the steps that ngspice can't and damps a little. */
    private void inductor(String name, String from, String to, double henries) {
        line(String.format(Locale.ROOT, "L%1$s %2$s %3$s %4$.12e", name, from, to, henries));
        line(String.format(Locale.ROOT, "Rp%1$s %2$s %3$s 1e5", name, from, to));
    }

    private SpiceBank stage(int i, double[] trapped) {
        Stage stage = bank.stages().get(i);
        LegFarads legs = LegFarads.of(stage, Capacitances.known(bank));
        double line = 0.0;
        double inLeg = 0.0;
        double ohms = 0.0;
        if (stage.reactor().isPresent()) {
            ohms = stage.reactor().get().resistanceOhms().orElse(0.0);
            line = stage.reactor().get().position() == Reactor.Position.LINE
                    ? stage.reactor().get().henries()
                    : 0.0;
            inLeg = stage.reactor().get().position() == Reactor.Position.NEUTRAL
                    ? stage.reactor().get().henries()
                    : 0.0;
        }
        for (int p = 0; p < 3; p++) {
            series("p" + i + PHASES[p], "t" + i + PHASES[p], line, line > 0.0 ? ohms : 0.0);
        }
        String neutral = stage.connection().isGrounded() ? "0" : "n" + i;
        if (!stage.connection().isGrounded() && stage.connection() != Connection.DELTA) {
            line(String.format(Locale.ROOT, "Rn%1$d n%1$d 0 1e6", i));
        }
        for (String leg : stage.legs()) {
            int p = leg.charAt(0) - 'A';
            String top = "t" + i + PHASES[p];
            String end = neutral;
            double share = trapped[p];
            switch (stage.connection()) {
                case DELTA -> end = "t" + i + PHASES[(p + 1) % 3];
                case WYE_GROUNDED, WYE_UNGROUNDED, DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> {}
                case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> {
                    boolean upper = leg.charAt(2) == 'u';
                    String between = "m" + i + PHASES[p];
                    end = upper ? between : "x" + i + PHASES[p];
                    top = upper ? top : between;
                    share = trapped[p] / 2.0;
                }
            }
            boolean bridge = stage.connection().isBridge();
            String after = inLeg > 0.0 && !bridge ? "y" + i + "_" + leg.toLowerCase(Locale.ROOT) : end;
            line(String.format(
                    Locale.ROOT,
                    "C%1$d_%2$d %3$s %4$s %5$.12e IC=%6$.9e",
                    i,
                    ++parts,
                    top,
                    after,
                    legs.of(leg),
                    share));
            if (!after.equals(end)) {
                series(after, end, inLeg, ohms);
            }
        }
        if (stage.connection().isBridge()) {
            for (int p = 0; p < 3; p++) {
                series("x" + i + PHASES[p], neutral, inLeg, inLeg > 0.0 ? ohms : 0.0);
            }
        }
        return this;
    }

    private void series(String from, String to, double henries, double ohms) {
        String middle = ohms > 0.0 && henries > 0.0 ? "z" + ++parts : to;
        if (henries > 0.0) {
            inductor(String.valueOf(++parts), from, middle, henries);
        }
        if (ohms > 0.0) {
            line(String.format(
                    Locale.ROOT, "R%1$d %2$s %3$s %4$.9e", ++parts, middle.equals(to) ? from : middle, to, ohms));
        }
        if (!(henries > 0.0) && !(ohms > 0.0)) {
            line(String.format(Locale.ROOT, "V%1$d %2$s %3$s 0", ++parts, from, to));
        }
    }

    /** Highest and lowest value of an expression from the moment that the poles move: {@code name_high}, {@code name_low}. */
    SpiceBank peak(String name, String expression) {
        line(String.format(Locale.ROOT, "B%1$s w%1$s 0 V=%2$s", name, expression));
        line(String.format(Locale.ROOT, ".meas tran %1$s_high MAX v(w%1$s) FROM=%2$.9e", name, rampSeconds - 1e-6));
        line(String.format(Locale.ROOT, ".meas tran %1$s_low MIN v(w%1$s) FROM=%2$.9e", name, rampSeconds - 1e-6));
        return this;
    }

    /** Largest magnitude of what {@link #peak} measured. */
    static double magnitude(Ngspice.Measured spice, String name) {
        return Math.max(Math.abs(spice.get(name + "_high")), Math.abs(spice.get(name + "_low")));
    }

    /** The same from a time on, counted from the moment that the poles move. */
    SpiceBank peakFrom(String name, String expression, double seconds) {
        line(String.format(Locale.ROOT, "B%1$s w%1$s 0 V=%2$s", name, expression));
        line(String.format(Locale.ROOT, ".meas tran %1$s_high MAX v(w%1$s) FROM=%2$.12e", name, rampSeconds + seconds));
        line(String.format(Locale.ROOT, ".meas tran %1$s_low MIN v(w%1$s) FROM=%2$.12e", name, rampSeconds + seconds));
        return this;
    }

    /** The value of an expression at a time counted from the moment that the poles move. */
    SpiceBank at(String name, String expression, double seconds) {
        line(String.format(Locale.ROOT, "B%1$s w%1$s 0 V=%2$s", name, expression));
        line(String.format(Locale.ROOT, ".meas tran %1$s FIND v(w%1$s) AT=%2$.12e", name, rampSeconds + seconds));
        return this;
    }

    /** Integral of the square of an expression. */
    SpiceBank squares(String name, String expression, double seconds) {
        line(String.format(Locale.ROOT, "B%1$s w%1$s 0 V=(%2$s)*(%2$s)", name, expression));
        line(String.format(
                Locale.ROOT,
                ".meas tran %1$s INTEG v(w%1$s) FROM=%2$.9e TO=%3$.9e",
                name,
                rampSeconds,
                rampSeconds + seconds));
        return this;
    }

    static String pole(int stage, int phase) {
        return "i(V" + stage + "s" + PHASES[phase] + ")";
    }

    /** Voltage across what stands between the terminal of a phase and the neutral, or the next terminal of a delta; only without reactors in the legs. */
    static String leg(Bank bank, int stage, int phase) {
        Stage of = bank.stages().get(stage);
        String top = "t" + stage + PHASES[phase];
        if (of.reactor().filter(r -> r.position() == Reactor.Position.NEUTRAL).isPresent()) {
            return "v(" + top + ",y" + stage + "_" + of.legs().get(phase).toLowerCase(Locale.ROOT) + ")";
        }
        if (of.connection() == Connection.DELTA) {
            return "v(" + top + ",t" + stage + PHASES[(phase + 1) % 3] + ")";
        }
        return of.connection().isGrounded() ? "v(" + top + ")" : "v(" + top + ",n" + stage + ")";
    }

    /** Voltage across a pole. */
    static String across(int stage, int phase) {
        return "v(q" + stage + PHASES[phase] + ",p" + stage + PHASES[phase] + ")";
    }

    String deck(double seconds, double stepSeconds) {
        line(String.format(
                Locale.ROOT,
                ".tran %1$.3e %2$.9e %3$.9e %1$.3e UIC",
                stepSeconds,
                rampSeconds + seconds,
                rampSeconds * 0.99));
        line(".end");
        return text.toString();
    }
}
