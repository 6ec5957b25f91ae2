package org.varwright.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.waveform.Signal;
import org.varwright.waveform.SpiceWaves;

/**
 * A bank as an ngspice deck, group by group, with poles that move and units that fail at a time, sampled as a recorder would. Shares no code with the
 * program's own circuits.
 *
 * <pre>
 *   (e)─R─L── bus ──[pole]── top ─L─R─ group 1 ── group 2 … ── neutral ── 1 MΩ ── ground
 *                     └──[pole]── next stage
 * </pre>
 *
 * The sources rise slowly; times count from {@link #RAMP}, where the clock stands at 0° (phase A rises through zero).
 */
final class SpiceStage {
    static final double RAMP = 0.15;
    private static final String[] PHASES = {"a", "b", "c"};
    private static final double OPEN = -22.0;
    private static final double CLOSED = 7.0;

    private final StringBuilder text = new StringBuilder("record\n");
    private final Map<String, String> vectors = new LinkedHashMap<>();
    private final Bank bank;
    private int parts;

    SpiceStage(Bank bank, double hertz) {
        this.bank = bank;
        double v = bank.system().nominalVolts();
        double z = v * v / bank.system().shortCircuitVoltAmperes().orElseThrow();
        double ratio = bank.system().xOverR().orElseThrow();
        double r = z / Math.hypot(1.0, ratio);
        double l = r * ratio / bank.system().angularFrequency();
        double omega = 2.0 * Math.PI * hertz;
        for (int p = 0; p < 3; p++) {
            double ahead = Math.toRadians(-120.0 * p) - omega * RAMP;
            line(String.format(
                    Locale.ROOT,
                    "B%1$s e%1$s 0 V=%2$s*sin(%3$s*time+%4$s)*(time<%5$s?(sin(%6$s*time))^2:1)",
                    PHASES[p],
                    n(v * Math.sqrt(2.0 / 3.0)),
                    n(omega),
                    n(ahead),
                    n(0.7 * RAMP),
                    n(Math.PI / 2.0 / (0.7 * RAMP))));
            line(String.format(Locale.ROOT, "Rs%1$s e%1$s f%1$s %2$s", PHASES[p], n(r)));
            inductor("f" + PHASES[p], "bus" + PHASES[p], l, 2e4);
            vectors.put("V" + "ABC".charAt(p), "v(bus" + PHASES[p] + ")");
        }
        line(".options reltol=1e-4 abstol=1e-3 vntol=1e-2 chgtol=1e-12 gmin=1e-15 itl4=200");
    }

    private static String n(double value) {
        return String.format(Locale.ROOT, "%.12e", value);
    }

    private void line(String words) {
        text.append(words).append('\n');
    }

    private void inductor(String from, String to, double henries, double damping) {
        parts++;
        line(String.format(Locale.ROOT, "L%d %s %s %s", parts, from, to, n(henries)));
        line(String.format(Locale.ROOT, "Rp%d %s %s %s", parts, from, to, n(damping)));
    }

    /** A conductance that is moved within 20 µs at each time; times count from the end of the ramp. */
    private void contact(String name, String from, String to, boolean closed, double... changes) {
        line(String.format(Locale.ROOT, "B%1$s %2$s %3$s I=v(%2$s,%3$s)*exp(v(g%1$s))", name, from, to));
        boolean now = closed;
        StringBuilder times = new StringBuilder("0 " + (now ? CLOSED : OPEN));
        for (double change : changes) {
            double at = RAMP + change;
            times.append(' ').append(n(at)).append(' ').append(now ? CLOSED : OPEN);
            times.append(' ').append(n(at + 20e-6)).append(' ').append(now ? OPEN : CLOSED);
            now = !now;
        }
        line(String.format(Locale.ROOT, "Vg%1$s g%1$s 0 PWL(%2$s)", name, times));
    }

    /** When and how a unit fails. */
    sealed interface Trouble {
        double seconds();

        /** Its fuse operates. */
        record UnitOut(String leg, int group, double seconds) implements Trouble {}

        /** Some of its sections short. */
        record SectionsShorted(String leg, int group, int sections, double seconds) implements Trouble {}

        /** It shorts, and its fuse operates later. */
        record ShortedThenOut(String leg, int group, double seconds, double outSeconds) implements Trouble {}
    }

    /**
     * A stage.
     *
     * @param index of the stage in the bank file
     * @param closed whether its poles are closed at first
     * @param changes times at which the poles A, B, C change
     */
    SpiceStage stage(int index, boolean closed, double[][] changes, List<Trouble> troubles) {
        Stage stage = bank.stages().get(index);
        String tag = String.valueOf(index);
        double henries = stage.reactor().map(r -> r.henries()).orElse(0.0)
                + stage.strayHenries().orElse(1e-6);
        double ohms = stage.reactor()
                        .map(r -> r.resistanceOhms())
                        .orElse(OptionalDouble.empty())
                        .orElse(0.0)
                + 1e-3;
        for (int p = 0; p < 3; p++) {
            line(String.format(Locale.ROOT, "Vm%1$s%2$s bus%2$s q%1$s%2$s 0", tag, PHASES[p]));
            contact("k" + tag + PHASES[p], "q" + tag + PHASES[p], "t" + tag + PHASES[p], closed, changes[p]);
            inductor("t" + tag + PHASES[p], "r" + tag + PHASES[p], henries, 2e2);
            line(String.format(Locale.ROOT, "Rr%1$s%2$s r%1$s%2$s s%1$s%2$s %3$s", tag, PHASES[p], n(ohms)));
            vectors.put("I" + "ABC".charAt(p) + " " + stage.name(), "i(vm" + tag + PHASES[p] + ")");
            vectors.put("V" + "ABC".charAt(p) + " " + stage.name(), "v(t" + tag + PHASES[p] + ")");
        }
        boolean twice = stage.connection().isDoubleWye();
        for (String leg : stage.legs()) {
            String neutral = stage.connection().isGrounded() ? "0" : "n" + tag + (leg.endsWith("2") ? "x" : "");
            leg(stage, tag, leg, neutral, troubles);
        }
        if (!stage.connection().isGrounded()) {
            line(String.format(Locale.ROOT, "Rn%1$s n%1$s 0 1e6", tag));
            vectors.put("VN " + stage.name(), "v(n" + tag + ")");
        }
        if (twice) {
            line(String.format(Locale.ROOT, "Vn%1$s n%1$s n%1$sx 0", tag));
            vectors.put("IN " + stage.name(), "i(vn" + tag + ")");
        }
        return this;
    }

    private void leg(Stage stage, String tag, String leg, String neutral, List<Trouble> troubles) {
        LegLayout layout = stage.layoutOf(leg);
        int p = leg.charAt(0) - 'A';
        double unit = stage.unit().capacitanceFarads();
        double resistance = 4.2e6;
        String above = "s" + tag + PHASES[p];
        for (int g = 1; g <= layout.groups(); g++) {
            String below = g == layout.groups() ? neutral : ("m" + tag + leg + g).toLowerCase(Locale.ROOT);
            String name = (tag + leg + "g" + g).toLowerCase(Locale.ROOT);
            double good = layout.units() * layout.strings();
            for (Trouble trouble : troubles) {
                good -= trouble(stage, trouble, leg, g, name, above, below, unit);
            }
            if (good > 0.0) {
                line(String.format(Locale.ROOT, "C%s %s %s %s", name, above, below, n(good * unit)));
            }
            line(String.format(Locale.ROOT, "Rd%s %s %s %s", name, above, below, n(resistance / Math.max(1.0, good))));
            above = below;
        }
    }

    private int trouble(
            Stage stage, Trouble trouble, String leg, int group, String name, String above, String below, double unit) {
        return switch (trouble) {
            case Trouble.UnitOut t
            when t.leg().equals(leg) && t.group() == group -> {
                contact("f" + name, above, "x" + name, true, t.seconds());
                line(String.format(Locale.ROOT, "Cx%1$s x%1$s %2$s %3$s", name, below, n(unit)));
                line(String.format(Locale.ROOT, "Rx%1$s x%1$s %2$s 4.2e6", name, below));
                yield 1;
            }
            case Trouble.SectionsShorted t
            when t.leg().equals(leg) && t.group() == group -> {
                double s = stage.unit().construction().orElseThrow().sections();
                line(String.format(
                        Locale.ROOT, "Cx%1$s %2$s x%1$s %3$s", name, above, n(unit * s / (s - t.sections()))));
                line(String.format(Locale.ROOT, "Cy%1$s x%1$s y%1$s %2$s", name, n(unit * s / t.sections())));
                line(String.format(Locale.ROOT, "Ry%1$s x%1$s y%1$s 4.2e6", name));
                line(String.format(Locale.ROOT, "Rz%1$s y%1$s %2$s 1e-2", name, below));
                contact("f" + name, "x" + name, "y" + name, false, t.seconds());
                yield 1;
            }
            case Trouble.ShortedThenOut t
            when t.leg().equals(leg) && t.group() == group -> {
                contact("f" + name, above, "x" + name, true, t.outSeconds());
                line(String.format(Locale.ROOT, "Cx%1$s x%1$s %2$s %3$s", name, below, n(unit)));
                line(String.format(Locale.ROOT, "Rx%1$s x%1$s y%1$s 2e-2", name));
                contact("h" + name, "y" + name, below, false, t.seconds());
                yield 1;
            }
            case Trouble.UnitOut t -> 0;
            case Trouble.SectionsShorted t -> 0;
            case Trouble.ShortedThenOut t -> 0;
        };
    }

    /** Runs and samples; the record begins at the end of the ramp. */
    Map<String, Signal> run(double rate, double seconds) throws Exception {
        return SpiceWaves.run(text.toString(), rate, RAMP, RAMP + seconds, 1e-5, vectors);
    }

    /** The samples as a record with some channels left out; voltages in kV and currents in A, primary. */
    static RecordInput record(Map<String, Signal> waves, double hertz, List<String> without) {
        List<Channel> channels = new ArrayList<>();
        int number = 0;
        for (Map.Entry<String, Signal> wave : waves.entrySet()) {
            if (without.stream().anyMatch(w -> wave.getKey().startsWith(w))) {
                continue;
            }
            number++;
            boolean volts = wave.getKey().startsWith("V");
            channels.add(new Channel(
                    number,
                    wave.getKey(),
                    "",
                    "",
                    volts ? "V" : "A",
                    volts ? Channel.Quantity.VOLTS : Channel.Quantity.AMPERES,
                    new Channel.Side.Primary(),
                    wave.getValue()));
        }
        return new RecordInput(
                "test",
                "ngspice",
                hertz,
                waves.values().iterator().next().base(),
                channels,
                List.of(),
                OptionalDouble.empty());
    }
}
