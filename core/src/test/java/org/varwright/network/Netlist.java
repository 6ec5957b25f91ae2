package org.varwright.network;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.quantity.Complex;

/**
 * The same bank as a list of parts between named nodes, written from the text of bank-file.md and sharing no code with the network's own circuit: the
 * naive twin solves it, and ngspice reads it.
 *
 * <pre>
 *   qA ── sA ──(pole)── pA ──L── tA ──┤├── tA.x ──┤├── nA ──L── N1 ── 0
 * </pre>
 */
final class Netlist {
    /** A part: C in farads, L in henries, a source in volts, or a wire whose current is wanted. */
    sealed interface Part {
        String name();

        String from();

        String to();

        record Capacitor(String name, String from, String to, double farads) implements Part {}

        record Inductor(String name, String from, String to, double henries) implements Part {}

        record Resistor(String name, String from, String to, double ohms) implements Part {}

        record Source(String name, String from, String to, Complex volts) implements Part {}
    }

    final List<Part> parts = new ArrayList<>();
    final Map<UnitBranch, String[]> unitEnds = new LinkedHashMap<>();
    final Map<UnitBranch, Double> unitFarads = new LinkedHashMap<>();
    final double hertz;
    private final Stage stage;
    private final Map<UnitBranch, Double> farads;
    private final Set<UnitBranch> shorted;

    private Netlist(Bank bank, Map<UnitBranch, Double> farads, Set<UnitBranch> shorted) {
        this.hertz = bank.system().frequencyHertz();
        this.stage = bank.stages().getFirst();
        this.farads = farads;
        this.shorted = shorted;
    }

    /**
     * The parts list.
     *
     * @param farads of every branch; 0 where it is out
     * @param shorted branches that are a short circuit
     * @param open phases whose pole is open
     */
    static Netlist of(
            Bank bank, Supply supply, Map<UnitBranch, Double> farads, Set<UnitBranch> shorted, Set<String> open) {
        Netlist list = new Netlist(bank, farads, shorted);
        String[] phases = {"A", "B", "C"};
        for (int p = 0; p < 3; p++) {
            String x = phases[p];
            list.parts.add(
                    new Part.Source("src" + x, "q" + x, "0", supply.phaseVolts().get(p)));
            list.wire("line" + x, "q" + x, "z" + x);
            Complex z = supply.ohms();
            if (z.magnitude() > 0.0) {
                list.parts.add(new Part.Resistor("zr" + x, "z" + x, "zm" + x, z.re()));
                list.parts.add(new Part.Inductor("zl" + x, "zm" + x, "s" + x, z.im() / (2 * Math.PI * list.hertz)));
            } else {
                list.wire("stiff" + x, "z" + x, "s" + x);
            }
            if (!open.contains(x)) {
                list.wire("pole" + x, "s" + x, "p" + x);
            }
            list.reactor("lr" + x, "p" + x, "t" + x, Reactor.Position.LINE);
        }
        list.legs();
        return list;
    }

    private void wire(String name, String from, String to) {
        parts.add(new Part.Source(name, from, to, Complex.ZERO));
    }

    private void reactor(String name, String from, String to, Reactor.Position position) {
        if (stage.reactor().filter(r -> r.position() == position).isPresent()) {
            parts.add(new Part.Inductor(name, from, to, stage.reactor().get().henries()));
        } else {
            wire(name, from, to);
        }
    }

    private void legs() {
        if (stage.hasThreePhaseUnits()) {
            boolean delta = stage.unit().threePhase().get() == InternalConnection.DELTA;
            for (UnitPosition can : stage.positions()) {
                String star = "star" + can.unit();
                unit(new UnitBranch(can, delta ? "AB" : "A"), "tA", delta ? "tB" : star);
                unit(new UnitBranch(can, delta ? "BC" : "B"), "tB", delta ? "tC" : star);
                unit(new UnitBranch(can, delta ? "CA" : "C"), "tC", delta ? "tA" : star);
            }
            return;
        }
        for (String leg : stage.legs()) {
            String top = "t" + leg.charAt(0);
            switch (stage.connection()) {
                case DELTA -> {
                    chain(leg, top, "e" + leg);
                    reactor("ln" + leg, "e" + leg, "t" + leg.charAt(1), Reactor.Position.NEUTRAL);
                }
                case WYE_GROUNDED, WYE_UNGROUNDED, DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> {
                    chain(leg, top, "e" + leg);
                    String neutral = leg.endsWith("2") ? "N2" : "N1";
                    reactor("ln" + leg, "e" + leg, neutral, Reactor.Position.NEUTRAL);
                }
                case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> {
                    String middle = "m" + leg.charAt(0) + leg.charAt(3);
                    boolean upper = leg.charAt(2) == 'u';
                    chain(leg, upper ? top : middle, upper ? middle : "b" + leg.charAt(0));
                }
            }
        }
        if (stage.connection().isBridge()) {
            for (String x : List.of("A", "B", "C")) {
                wire("bridge" + x, "m" + x + "l", "m" + x + "r");
                reactor("ln" + x, "b" + x, "N1", Reactor.Position.NEUTRAL);
            }
        }
        if (stage.connection().isGrounded()) {
            wire("neutral1", "N1", "0");
            if (stage.connection() == Connection.DOUBLE_WYE_GROUNDED) {
                wire("neutral2", "N2", "0");
            }
        } else if (stage.connection() == Connection.DOUBLE_WYE_UNGROUNDED) {
            wire("neutral1", "N1", "N2");
        }
    }

    private void chain(String leg, String top, String end) {
        for (UnitPosition p : stage.positions()) {
            if (p.leg().equals(leg)) {
                int groups = stage.layoutOf(leg).groups();
                String from = p.group() == 1 ? top : leg.replace("-", "") + "s" + p.string() + "n" + (p.group() - 1);
                String to = p.group() == groups ? end : leg.replace("-", "") + "s" + p.string() + "n" + p.group();
                unit(new UnitBranch(p, ""), from, to);
            }
        }
    }

    private void unit(UnitBranch branch, String from, String to) {
        unitEnds.put(branch, new String[] {from, to});
        double value = Objects.requireNonNull(farads.get(branch));
        unitFarads.put(branch, value);
        String name = "u" + unitEnds.size();
        if (shorted.contains(branch)) {
            wire(name, from, to);
        } else if (value > 0.0) {
            parts.add(new Part.Capacitor(name, from, to, value));
        }
    }
}
