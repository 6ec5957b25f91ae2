package org.varwright.resonance;

import java.util.List;
import java.util.Locale;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Capacitances;
import org.varwright.network.UnitBranch;

/**
 * A whole bank, all three phases and every unit, as a netlist for an AC sweep of ngspice. Shares no code with the phase-by-phase model: that a delta,
 * a double wye or a bridge reduces to one branch is what the comparison shows.
 *
 * <pre>
 *  es ──R──L── bus A ──R──L── unit ‖ unit ── neutral       (B and C alike, a third of a turn later)
 *               └── load R ‖ L to the load's neutral, Iac into the bus
 * </pre>
 */
final class HarmonicDeck {
    private static final String[] PHASES = {"a", "b", "c"};

    private final Bank bank;
    private final SourceImpedance source;
    private final StringBuilder deck = new StringBuilder("varwright harmonic oracle\n");
    private int parts;

    HarmonicDeck(Bank bank, SourceImpedance source) {
        this.bank = bank;
        this.source = source;
    }

    /**
     * The deck.
     *
     * @param load beside the stages
     * @param backgroundVolts behind the source, phase to neutral, one at every frequency [V]
     * @param injectedAmperes into the bus, likewise [A]
     * @param orders at which {@code vN} (bus A), {@code iN_S} (line of stage S) are measured, N counted from 0
     */
    String text(LoadCase load, double backgroundVolts, double injectedAmperes, List<Double> orders) {
        double omega = bank.system().angularFrequency();
        for (int p = 0; p < 3; p++) {
            String x = PHASES[p];
            double degrees = -120.0 * p;
            line(String.format(Locale.ROOT, "Ve%s es%s 0 dc 0 ac %.15g %.15g", x, x, backgroundVolts, degrees));
            line(String.format(Locale.ROOT, "Rs%s es%s em%s %.15g", x, x, x, Math.max(source.resistanceOhms(), 1e-12)));
            line(String.format(Locale.ROOT, "Ls%s em%s bus%s %.15g", x, x, x, source.reactanceOhms() / omega));
            line(String.format(Locale.ROOT, "Ii%s 0 bus%s dc 0 ac %.15g %.15g", x, x, injectedAmperes, degrees));
            double square = bank.system().nominalVolts() * bank.system().nominalVolts();
            if (load.watts() > 0.0) {
                line(String.format(Locale.ROOT, "Rl%s bus%s ln %.15g", x, x, square / load.watts()));
            }
            if (load.vars() > 0.0) {
                line(String.format(Locale.ROOT, "Ll%s bus%s ln %.15g", x, x, square / load.vars() / omega));
            }
        }
        line("Rln ln 0 1e9");
        for (int s = 0; s < bank.stages().size(); s++) {
            stage(s, bank.stages().get(s));
        }
        double first = orders.getFirst() * bank.system().frequencyHertz();
        double last = orders.getLast() * bank.system().frequencyHertz();
        line(".save all");
        line(String.format(Locale.ROOT, ".ac lin %d %.15g %.15g", orders.size(), first, last));
        for (int i = 0; i < orders.size(); i++) {
            double hertz = orders.get(i) * bank.system().frequencyHertz();
            line(String.format(Locale.ROOT, ".meas ac v%d find vm(busa) at=%.15g", i, hertz));
            for (int s = 0; s < bank.stages().size(); s++) {
                line(String.format(Locale.ROOT, ".meas ac i%d_%d find vm(sense%d) at=%.15g", i, s, s, hertz));
            }
        }
        return deck + ".options numdgt=12\n.end\n";
    }

    private void stage(int s, Stage stage) {
        Reactor reactor = stage.reactor().orElse(new Reactor(0.0, Reactor.Position.LINE, Reactor.Purpose.INRUSH));
        boolean atNeutral = reactor.position() == Reactor.Position.NEUTRAL;
        for (String x : PHASES) {
            // A wire whose current is wanted, and that current as a voltage.
            line(String.format(Locale.ROOT, "Vw%d%s bus%s w%d%s dc 0", s, x, x, s, x));
            series("w" + s + x, "t" + s + x, atNeutral ? 0.0 : reactor.henries(), atNeutral ? 0.0 : ohms(reactor));
        }
        line(String.format(Locale.ROOT, "Hs%d sense%d 0 Vw%da 1", s, s, s));
        line(String.format(Locale.ROOT, "Rh%d sense%d 0 1", s, s));
        for (String leg : stage.legs()) {
            String x = leg.substring(0, 1).toLowerCase(Locale.ROOT);
            String top = "t" + s + x;
            String end = "e" + s + leg.replace("-", "");
            String neutral = stage.connection().isGrounded() ? "0" : "n" + s + (leg.endsWith("2") ? "b" : "a");
            switch (stage.connection()) {
                case WYE_GROUNDED, WYE_UNGROUNDED, DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> {
                    chain(stage, leg, top, end);
                    series(end, neutral, atNeutral ? reactor.henries() : 0.0, atNeutral ? ohms(reactor) : 0.0);
                }
                case DELTA -> {
                    String next = "t" + s + leg.substring(1).toLowerCase(Locale.ROOT);
                    chain(stage, leg, top, end);
                    series(end, next, atNeutral ? reactor.henries() : 0.0, atNeutral ? ohms(reactor) : 0.0);
                }
                case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> {
                    String middle = "m" + s + x;
                    boolean upper = leg.charAt(2) == 'u';
                    chain(stage, leg, upper ? top : middle, upper ? middle : "b" + s + x);
                    if (leg.endsWith("ul")) {
                        series(
                                "b" + s + x,
                                neutral,
                                atNeutral ? reactor.henries() : 0.0,
                                atNeutral ? ohms(reactor) : 0.0);
                    }
                }
            }
        }
        if (!stage.connection().isGrounded() && stage.connection() != Connection.DELTA) {
            line(String.format(Locale.ROOT, "Rn%da n%da 0 1e10", s, s));
            if (stage.connection().isDoubleWye()) {
                line(String.format(Locale.ROOT, "Vn%d n%da n%db dc 0", s, s, s));
            }
        }
    }

    private static double ohms(Reactor reactor) {
        return reactor.resistanceOhms().orElse(0.0);
    }

    private void series(String from, String to, double henries, double ohms) {
        int n = parts++;
        if (henries == 0.0) {
            line(String.format(Locale.ROOT, "Vz%d %s %s dc 0", n, from, to));
        } else {
            line(String.format(Locale.ROOT, "Rz%d %s y%d %.15g", n, from, n, Math.max(ohms, 1e-12)));
            line(String.format(Locale.ROOT, "Lz%d y%d %s %.15g", n, n, to, henries));
        }
    }

    /** Units of a leg, group after group; a large resistor across each leads charge off for the operating point. */
    private void chain(Stage stage, String leg, String top, String end) {
        LegLayout layout = stage.layoutOf(leg);
        Capacitances known = Capacitances.known(bank);
        for (UnitPosition p : stage.positions()) {
            if (p.leg().equals(leg)) {
                int n = parts++;
                String node = "k" + top + leg.replace("-", "") + "s" + p.string() + "g";
                String from = p.group() == 1 ? top : node + (p.group() - 1);
                String to = p.group() == layout.groups() ? end : node + p.group();
                line(String.format(Locale.ROOT, "Cu%d %s %s %.15g", n, from, to, known.farads(UnitBranch.of(p))));
                line(String.format(Locale.ROOT, "Ru%d %s %s 1e10", n, from, to));
            }
        }
    }

    private void line(String text) {
        deck.append(text).append('\n');
    }
}
