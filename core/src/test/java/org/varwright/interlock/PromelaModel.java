package org.varwright.interlock;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Compartment;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;

/**
 * A scheme as a Promela model, written from the definitions and not from the compiled scheme.
 *
 * <p>Visible variables are exactly the parts of a state; all else is {@code hidden}. Each move is one {@code d_step} of a single loop, so that SPIN's stored
 * states are the reachable states. Each move prints the state before, what it breaks, the state after it and what is broken there; the reader of that output
 * needs nothing of the semantics.
 */
final class PromelaModel {
    private final Isolation isolation;
    private final List<StagePoint> stages;
    private final boolean printing;
    private final PlainSimulator plain;
    private final List<String> conductors = new ArrayList<>();
    private final StringBuilder out = new StringBuilder();
    private final List<String> visible = new ArrayList<>();
    private final Map<String, Integer> device = new LinkedHashMap<>();

    private PromelaModel(Isolation isolation, List<StagePoint> stages, boolean printing) {
        this.isolation = isolation;
        this.stages = stages;
        this.printing = printing;
        plain = new PlainSimulator(isolation, stages);
        conductors.add("ground");
        conductors.addAll(isolation.conductors());
        stages.stream()
                .map(StagePoint::name)
                .filter(s -> !conductors.contains(s))
                .forEach(conductors::add);
        isolation.devices().forEach(d -> device.put(d.name(), device.size()));
    }

    static String of(Isolation isolation, List<StagePoint> stages) {
        PromelaModel model = new PromelaModel(isolation, stages, true);
        model.write();
        return model.out.toString();
    }

    /**
     * The same states and moves for measuring speed: nothing is judged or printed, and only what is live is worked out, where a move depends on it. All in
     * favour of SPIN.
     */
    static String bare(Isolation isolation, List<StagePoint> stages) {
        PromelaModel model = new PromelaModel(isolation, stages, false);
        model.write();
        return model.out.toString();
    }

    private void line(String text) {
        out.append(text).append('\n');
    }

    private void variable(String name, int start) {
        visible.add(name);
        line("byte " + name + " = " + start + ";");
    }

    private void write() {
        PlainSimulator.Spot start = plain.start();
        for (Device d : isolation.devices()) {
            variable(
                    "d" + device.get(d.name()),
                    d.positions().indexOf(start.devices().get(d.name())));
        }
        for (int i = 0; i < isolation.compartments().size(); i++) {
            variable("o" + i, 0);
        }
        for (int i = 0; i < isolation.locks().size(); i++) {
            variable("w" + i, start.bolts().get(i).equals("withdrawn") ? 1 : 0);
        }
        for (int i = 0; i < isolation.exchanges().size(); i++) {
            variable("g" + i, 0);
        }
        for (int i = 0; i < stages.size(); i++) {
            variable("c" + i, 1);
        }
        line("c_decl {");
        conduction();
        line("}");
        line("active proctype anyone() {");
        if (printing) {
            line("  c_code { LOAD; printf(\"start " + format() + " %d\\n\", SHOW, judge()); };");
        }
        line("  do");
        moves();
        line("  od");
        line("}");
    }

    private static boolean low(EnergySource s) {
        return s.volts().isPresent() && s.volts().getAsDouble() < 1000;
    }

    private int conductor(String name) {
        return conductors.indexOf(name);
    }

    private static String array(String name, List<Integer> values) {
        List<String> texts =
                new ArrayList<>(values.stream().map(String::valueOf).toList());
        texts.add("-1");
        return "  static const int " + name + "[] = {" + String.join(", ", texts) + "};";
    }

    /** What is joined to what, in C on the side: spreading marks over closed devices until nothing can change any more. */
    private void conduction() {
        int n = conductors.size();
        List<Integer> from = new ArrayList<>();
        List<Integer> to = new ArrayList<>();
        List<String> load = new ArrayList<>();
        for (Device d : isolation.devices()) {
            int i = device.getOrDefault(d.name(), -1);
            from.add(d.between().map(x -> conductor(x.first())).orElse(0));
            to.add(d.between().map(x -> conductor(x.second())).orElse(0));
            load.add("closed[" + i + "] = " + (d.between().isPresent() ? "now.d" + i + " == 0" : "0"));
        }
        List<Integer> stageAt = new ArrayList<>();
        List<Integer> stageSwitch = new ArrayList<>();
        for (int s = 0; s < stages.size(); s++) {
            stageAt.add(conductor(stages.get(s).name()));
            stageSwitch.add(stages.get(s).switchName().map(device::get).orElse(-1));
            load.add("ch[" + s + "] = now.c" + s);
        }
        List<Integer> highAt = isolation.sources().stream()
                .filter(x -> !low(x))
                .map(x -> conductor(x.at()))
                .toList();
        List<Integer> anyAt =
                isolation.sources().stream().map(x -> conductor(x.at())).toList();
        List<Integer> exposed = new ArrayList<>();
        List<Integer> exposedBy = new ArrayList<>();
        for (int i = 0; i < isolation.compartments().size(); i++) {
            int door = i;
            load.add("door[" + i + "] = now.o" + i);
            isolation.compartments().get(i).exposes().forEach(x -> {
                exposed.add(conductor(x));
                exposedBy.add(door);
            });
        }
        line("  \\#include <stdio.h>");
        line(array("from", from));
        line(array("to", to));
        line(array("stage_at", stageAt));
        line(array("stage_switch", stageSwitch));
        line(array("high_at", highAt));
        line(array("any_at", anyAt));
        line(array("exposed", exposed));
        line(array("exposed_by", exposedBy));
        line(
                "  static int closed[64], ch[64], door[64], live[64], any[64], earth[64], charge[64], was_live[64], was_earth[64], move_broken;");
        line("  \\#define LOAD (" + String.join(", ", load) + ", spread())");
        line("  \\#define SHOW " + values());
        if (printing) {
            line("  static void mark(int *m) { int r, d; for (r = 0; r < " + n + "; r++) for (d = 0; d < " + from.size()
                    + "; d++) if (closed[d]) m[from[d]] = m[to[d]] = m[from[d]] | m[to[d]]; }");
        } else {
            line("  static void mark(int *m) { int more = 1, d; while (more) for (more = 0, d = 0; d < " + from.size()
                    + "; d++) if (closed[d] && m[from[d]] != m[to[d]]) m[from[d]] = m[to[d]] = more = 1; }");
        }
        line("  static void at(int *m, const int *where) { int i; for (i = 0; i < " + n
                + "; i++) m[i] = 0; for (i = 0; where[i] >= 0; i++) m[where[i]] = 1; mark(m); }");
        if (!printing) {
            line("  static void spread() { at(live, high_at); }");
            return;
        }
        line(
                "  static void spread() { int i; static const int ground[] = {0, -1}; at(live, high_at); at(any, any_at); at(earth, ground);");
        line("    for (i = 0; i < " + n + "; i++) charge[i] = 0; for (i = 0; i < " + stages.size()
                + "; i++) if (ch[i]) charge[stage_at[i]] = 1; mark(charge); }");
        line("  static int judge() { int i, s, c, behind, b = any[0] ? " + bit("closed-to-ground") + " : 0;");
        line("    for (i = 0; exposed[i] >= 0; i++) { if (!door[exposed_by[i]]) continue; c = exposed[i]; behind = 0;");
        line("      for (s = 0; s < " + stages.size()
                + "; s++) if (stage_at[s] == c && stage_switch[s] >= 0 && !closed[stage_switch[s]]) behind = 1;");
        line("      if (live[c]) b |= " + bit("exposed-live") + "; else if (any[c]) { b |= "
                + bit("exposed-low-voltage") + "; continue; }");
        line("      else if (!earth[c] && charge[c]) b |= " + bit("exposed-charged") + ";");
        line("      if ((live[c] || !earth[c]) && !behind) b |= " + bit("ungrounded-entry") + "; } return b; }");
        line("  static void before(int d, int disconnector) { int s, keep = closed[d], staged[64]; move_broken = 0;");
        line("    for (s = 0; s < " + stages.size()
                + "; s++) { was_live[s] = live[stage_at[s]]; was_earth[s] = earth[stage_at[s]]; }");
        line("    if (!disconnector) return; closed[d] = 0; spread(); at(staged, stage_at);");
        line("    if ((live[from[d]] && staged[to[d]]) || (live[to[d]] && staged[from[d]])) move_broken = "
                + bit("load-break") + ";");
        line("    closed[d] = keep; spread(); }");
        line("  static void after() { int s; for (s = 0; s < " + stages.size() + "; s++) { int c = stage_at[s];");
        line("    if (ch[s] && !was_live[s] && live[c]) move_broken |= " + bit("recharge") + ";");
        line("    if (ch[s] && !was_earth[s] && earth[c]) move_broken |= " + bit("grounded-charged") + "; } }");
    }

    static int bit(String property) {
        List<String> ids = new ArrayList<>();
        for (Property p : Property.values()) {
            ids.add(p.id());
        }
        return 1 << ids.indexOf(property);
    }

    private String format() {
        return visible.stream().map(v -> "%d").reduce((a, b) -> a + "," + b).orElseThrow();
    }

    private String values() {
        return visible.stream()
                .map(v -> "now." + v)
                .reduce((a, b) -> a + ", " + b)
                .orElseThrow();
    }

    private void move(String guard, String effect, String judgeBefore, String judgeAfter) {
        if (!printing) {
            String charges =
                    judgeAfter.isEmpty() ? "" : " c_code { LOAD; " + judgeAfter.replace("after(); ", "") + " }";
            line("  :: d_step { " + guard + " -> " + effect + ";" + charges + " }");
            return;
        }
        line("  :: d_step { " + guard + " -> c_code { LOAD; move_broken = 0; " + judgeBefore + " printf(\"" + format()
                + " \", SHOW); };");
        line("      " + effect + ";");
        line("      c_code { LOAD; " + judgeAfter + " printf(\"%d " + format()
                + " %d\\n\", move_broken, SHOW, judge()); } }");
    }

    private void move(String guard, String effect) {
        move(guard, effect, "", "");
    }

    private String free(String key) {
        int copies = isolation.keys().stream()
                .filter(k -> k.name().equals(key))
                .mapToInt(KeyCopies::copies)
                .findFirst()
                .orElse(1);
        List<String> traps = new ArrayList<>(List.of("0"));
        for (int i = 0; i < isolation.locks().size(); i++) {
            if (isolation.locks().get(i).keys().contains(key)) {
                traps.add("w" + i);
            }
        }
        for (int i = 0; i < isolation.exchanges().size(); i++) {
            KeyExchange e = isolation.exchanges().get(i);
            if (e.in().contains(key)) {
                traps.add("g" + i);
            }
            if (e.out().contains(key)) {
                traps.add("(1-g" + i + ")");
            }
        }
        return "(" + String.join("+", traps) + " < " + copies + ")";
    }

    private String allFree(List<String> keys) {
        return keys.stream().map(this::free).reduce((a, b) -> a + " && " + b).orElse("1");
    }

    private String hasRun(Delay delay) {
        List<String> parts = new ArrayList<>();
        delay.open().forEach(d -> parts.add("d" + device.get(d) + " != 0"));
        for (int s = 0; s < stages.size(); s++) {
            if (plain.isBehind(stages.get(s).name(), delay.open())) {
                parts.add("c" + s + " == 0");
            }
        }
        return String.join(" && ", parts);
    }

    private String unbolted(Lock.On on) {
        List<String> parts = new ArrayList<>(List.of("1"));
        for (int i = 0; i < isolation.locks().size(); i++) {
            if (isolation.locks().get(i).on().equals(on)) {
                parts.add("w" + i);
            }
        }
        return String.join(" && ", parts);
    }

    private int door(String name) {
        return isolation.compartments().stream().map(Compartment::name).toList().indexOf(name);
    }

    private void moves() {
        for (int i = 0; i < isolation.locks().size(); i++) {
            Lock lock = isolation.locks().get(i);
            move("!w" + i + " && " + allFree(lock.keys()), "w" + i + " = 1");
            String held = lock.on() instanceof Lock.On.OfDoor
                    ? "o" + door(lock.on().name()) + " == 0"
                    : "d" + device.get(lock.on().name()) + " == "
                            + isolation
                                    .device(lock.on().name())
                                    .orElseThrow()
                                    .positions()
                                    .indexOf(lock.holds());
            StringBuilder guard = new StringBuilder("w" + i + " && " + held);
            for (Delay delay : isolation.delays()) {
                if (delay.of() instanceof Delay.Of.Bolt b
                        && b.on().equals(lock.on())
                        && lock.keys().contains(b.key())) {
                    guard.append(" && ").append(hasRun(delay));
                }
            }
            move(guard.toString(), "w" + i + " = 0");
        }
        isolation.devices().forEach(this::deviceMoves);
        for (int i = 0; i < isolation.compartments().size(); i++) {
            move(unbolted(new Lock.On.OfDoor(isolation.compartments().get(i).name())), "o" + i + " = 1 - o" + i);
        }
        for (int i = 0; i < isolation.exchanges().size(); i++) {
            KeyExchange e = isolation.exchanges().get(i);
            move("!g" + i + " && " + allFree(e.in()), "g" + i + " = 1");
            move("g" + i + " && " + allFree(e.out()), "g" + i + " = 0");
        }
        for (int s = 0; s < stages.size(); s++) {
            String apart = "c_expr { (LOAD, !live[" + conductor(stages.get(s).name()) + "]) }";
            move("c" + s + " && " + apart, "c" + s + " = 0");
        }
    }

    private void deviceMoves(Device d) {
        String var = "d" + device.get(d.name());
        for (int from = 0; from < d.positions().size(); from++) {
            for (int to = 0; to < d.positions().size(); to++) {
                if (from == to || (d.kind() == Device.Kind.BREAKER && Math.abs(from - to) > 1)) {
                    continue;
                }
                StringBuilder guard =
                        new StringBuilder(var + " == " + from + " && " + unbolted(new Lock.On.OfDevice(d.name())));
                for (Interlock interlock : isolation.interlocks()) {
                    if (interlock.device().equals(d.name())
                            && interlock.to().equals(d.positions().get(to))) {
                        interlock.requires().forEach((name, positions) -> {
                            List<String> ways = new ArrayList<>(List.of("0"));
                            for (String position : positions) {
                                ways.add(
                                        device.containsKey(name)
                                                ? "d" + device.get(name) + " == "
                                                        + isolation
                                                                .device(name)
                                                                .orElseThrow()
                                                                .positions()
                                                                .indexOf(position)
                                                : "o" + door(name) + " == " + (position.equals("open") ? 1 : 0));
                            }
                            guard.append(" && (")
                                    .append(String.join(" || ", ways))
                                    .append(')');
                        });
                    }
                }
                for (Delay delay : isolation.delays()) {
                    if (delay.of() instanceof Delay.Of.Move m
                            && m.device().equals(d.name())
                            && m.to().equals(d.positions().get(to))) {
                        guard.append(" && ").append(hasRun(delay));
                    }
                }
                StringBuilder charges = new StringBuilder("after(); ");
                for (int s = 0; s < stages.size(); s++) {
                    charges.append("if (live[" + conductor(stages.get(s).name()) + "]) now.c" + s + " = 1; ");
                }
                move(
                        guard.toString(),
                        var + " = " + to,
                        "before(" + device.get(d.name()) + ", " + (d.kind() == Device.Kind.DISCONNECTOR ? 1 : 0) + ");",
                        charges.append("LOAD;").toString());
            }
        }
    }
}
