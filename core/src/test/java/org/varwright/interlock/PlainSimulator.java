package org.varwright.interlock;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
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
 * The naive twin: states as maps of words, every rule written out again from the definitions, nothing shared with the verifier. Slow and plain on purpose.
 */
final class PlainSimulator {
    /** A state: device to position, door to open or closed, one word a bolt, one word an exchange, the charged stages. */
    record Spot(
            Map<String, String> devices,
            Map<String, String> doors,
            List<String> bolts,
            Map<String, String> exchanges,
            Set<String> charged) {}

    /** A move by its name, the properties that it breaks on the way, the state after it. */
    record Action(String name, Set<String> breaks, Spot after) {}

    /** What came of walking everywhere. */
    record Walk(int states, long moves, Map<String, Integer> shortest) {}

    private final Isolation isolation;
    private final Map<String, String> switchOf = new LinkedHashMap<>();

    PlainSimulator(Isolation isolation, List<StagePoint> stages) {
        this.isolation = isolation;
        stages.forEach(s -> switchOf.put(s.name(), s.switchName().orElse("")));
    }

    static String nameOf(Move move) {
        return switch (move) {
            case Move.Withdraw m -> "withdraw " + nameOf(m.lock());
            case Move.Extend m -> "extend " + nameOf(m.lock());
            case Move.Operate m -> "operate " + m.device() + " to " + m.position();
            case Move.OpenDoor m -> "open " + m.compartment();
            case Move.CloseDoor m -> "close " + m.compartment();
            case Move.Give m -> "give " + m.exchange().name();
            case Move.Return m -> "return " + m.exchange().name();
            case Move.Wait m -> "wait " + m.stage();
        };
    }

    private static String nameOf(Lock lock) {
        return lock.on() + " " + lock.holds() + " " + lock.keys();
    }

    private static String word(Map<String, String> words, String name) {
        return Objects.requireNonNull(words.get(name), name);
    }

    Spot start() {
        return at(isolation.start());
    }

    Spot inService() {
        return at(Map.of());
    }

    private Spot at(Map<String, String> positions) {
        Map<String, String> devices = new TreeMap<>();
        for (Device d : isolation.devices()) {
            String usual = switch (d.kind()) {
                case GROUNDING_SWITCH -> "open";
                case SELECTOR -> d.positions().get(d.positions().size() - 1);
                case BREAKER, DISCONNECTOR, LOAD_BREAK_SWITCH, STAGE_SWITCH -> "closed";
            };
            devices.put(d.name(), positions.getOrDefault(d.name(), usual));
        }
        Map<String, String> doors = new TreeMap<>();
        isolation.compartments().forEach(c -> doors.put(c.name(), "closed"));
        List<String> bolts = new ArrayList<>();
        for (Lock lock : isolation.locks()) {
            bolts.add(placeOf(lock, devices, doors).equals(lock.holds()) ? "extended" : "withdrawn");
        }
        Map<String, String> exchanges = new TreeMap<>();
        isolation.exchanges().forEach(e -> exchanges.put(e.name(), "home"));
        return new Spot(devices, doors, bolts, exchanges, new TreeSet<>(switchOf.keySet()));
    }

    private static String placeOf(Lock lock, Map<String, String> devices, Map<String, String> doors) {
        Map<String, String> words = lock.on() instanceof Lock.On.OfDevice ? devices : doors;
        return word(words, lock.on().name());
    }

    private boolean isFree(String key, Spot spot) {
        int copies = 1;
        for (KeyCopies k : isolation.keys()) {
            if (k.name().equals(key)) {
                copies = k.copies();
            }
        }
        int trapped = 0;
        for (int i = 0; i < isolation.locks().size(); i++) {
            if (spot.bolts().get(i).equals("withdrawn")
                    && isolation.locks().get(i).keys().contains(key)) {
                trapped++;
            }
        }
        for (KeyExchange e : isolation.exchanges()) {
            List<String> inside = word(spot.exchanges(), e.name()).equals("home") ? e.out() : e.in();
            trapped += inside.contains(key) ? 1 : 0;
        }
        return trapped < copies;
    }

    /** Everything joined to a conductor by the closed devices, leaving one device out. */
    private Set<String> joined(String from, Map<String, String> devices, String leftOut) {
        Set<String> found = new TreeSet<>(Set.of(from));
        boolean grew = true;
        while (grew) {
            grew = false;
            for (Device d : isolation.devices()) {
                if (d.name().equals(leftOut)
                        || !word(devices, d.name()).equals("closed")
                        || d.between().isEmpty()) {
                    continue;
                }
                String a = d.between().get().first();
                String b = d.between().get().second();
                if (found.contains(a) != found.contains(b)) {
                    found.add(a);
                    found.add(b);
                    grew = true;
                }
            }
        }
        return found;
    }

    private boolean hasSource(Set<String> conductors, boolean highVoltageOnly) {
        for (EnergySource s : isolation.sources()) {
            boolean low = s.volts().isPresent() && s.volts().getAsDouble() < 1000;
            if (conductors.contains(s.at()) && !(low && highVoltageOnly)) {
                return true;
            }
        }
        return false;
    }

    String conductor(String name, Spot spot) {
        Set<String> joined = joined(name, spot.devices(), "");
        if (hasSource(joined, true)) {
            return "live";
        }
        if (hasSource(joined, false)) {
            return "live-low-voltage";
        }
        if (joined.contains("ground")) {
            return "grounded";
        }
        for (String stage : spot.charged()) {
            if (joined.contains(stage)) {
                return "charged";
            }
        }
        return "floating";
    }

    Set<String> brokenIn(Spot spot) {
        Set<String> broken = new TreeSet<>();
        for (Compartment c : isolation.compartments()) {
            if (word(spot.doors(), c.name()).equals("closed")) {
                continue;
            }
            for (String conductor : c.exposes()) {
                String state = conductor(conductor, spot);
                if (state.equals("live")) {
                    broken.add("exposed-live");
                }
                if (state.equals("live-low-voltage")) {
                    broken.add("exposed-low-voltage");
                    continue;
                }
                if (state.equals("charged")) {
                    broken.add("exposed-charged");
                }
                String switchName = switchOf.getOrDefault(conductor, "");
                boolean behindOpenSwitch = !switchName.isEmpty()
                        && !word(spot.devices(), switchName).equals("closed");
                if (!state.equals("grounded") && !behindOpenSwitch) {
                    broken.add("ungrounded-entry");
                }
            }
        }
        if (hasSource(joined("ground", spot.devices(), ""), false)) {
            broken.add("closed-to-ground");
        }
        return broken;
    }

    private boolean hasRun(Delay delay, Spot spot) {
        for (String device : delay.open()) {
            if (word(spot.devices(), device).equals("closed")) {
                return false;
            }
        }
        for (String stage : switchOf.keySet()) {
            if (isBehind(stage, delay.open()) && spot.charged().contains(stage)) {
                return false;
            }
        }
        return true;
    }

    boolean isBehind(String stage, List<String> openDevices) {
        Map<String, String> devices = new HashMap<>();
        for (Device d : isolation.devices()) {
            boolean closed = d.kind() != Device.Kind.GROUNDING_SWITCH && !openDevices.contains(d.name());
            devices.put(d.name(), closed ? "closed" : "open");
            if (openDevices.contains(d.name())
                    && d.between().isPresent()
                    && (d.between().get().first().equals(stage)
                            || d.between().get().second().equals(stage))) {
                return true;
            }
        }
        return !hasSource(joined(stage, devices, ""), true);
    }

    List<Action> actions(Spot spot) {
        List<Action> actions = new ArrayList<>();
        for (int i = 0; i < isolation.locks().size(); i++) {
            Lock lock = isolation.locks().get(i);
            if (spot.bolts().get(i).equals("extended")) {
                if (lock.keys().stream().allMatch(k -> isFree(k, spot))) {
                    actions.add(new Action("withdraw " + nameOf(lock), Set.of(), bolt(spot, i, "withdrawn")));
                }
            } else if (placeOf(lock, spot.devices(), spot.doors()).equals(lock.holds()) && delaysOf(lock, spot)) {
                actions.add(new Action("extend " + nameOf(lock), Set.of(), bolt(spot, i, "extended")));
            }
        }
        for (Device d : isolation.devices()) {
            if (isBolted(d.name(), false, spot)) {
                continue;
            }
            for (String to : d.positions()) {
                if (mayMove(d, word(spot.devices(), d.name()), to, spot)) {
                    actions.add(operate(spot, d, to));
                }
            }
        }
        for (Compartment c : isolation.compartments()) {
            if (!isBolted(c.name(), true, spot)) {
                boolean closed = word(spot.doors(), c.name()).equals("closed");
                Map<String, String> doors = new TreeMap<>(spot.doors());
                doors.put(c.name(), closed ? "open" : "closed");
                actions.add(new Action(
                        (closed ? "open " : "close ") + c.name(),
                        Set.of(),
                        new Spot(spot.devices(), doors, spot.bolts(), spot.exchanges(), spot.charged())));
            }
        }
        for (KeyExchange e : isolation.exchanges()) {
            boolean home = word(spot.exchanges(), e.name()).equals("home");
            if ((home ? e.in() : e.out()).stream().allMatch(k -> isFree(k, spot))) {
                Map<String, String> exchanges = new TreeMap<>(spot.exchanges());
                exchanges.put(e.name(), home ? "given" : "home");
                actions.add(new Action(
                        (home ? "give " : "return ") + e.name(),
                        Set.of(),
                        new Spot(spot.devices(), spot.doors(), spot.bolts(), exchanges, spot.charged())));
            }
        }
        for (String stage : spot.charged()) {
            if (!conductor(stage, spot).equals("live")) {
                Set<String> charged = new TreeSet<>(spot.charged());
                charged.remove(stage);
                actions.add(new Action(
                        "wait " + stage,
                        Set.of(),
                        new Spot(spot.devices(), spot.doors(), spot.bolts(), spot.exchanges(), charged)));
            }
        }
        return actions;
    }

    private boolean delaysOf(Lock lock, Spot spot) {
        for (Delay delay : isolation.delays()) {
            if (delay.of() instanceof Delay.Of.Bolt bolt
                    && bolt.on().equals(lock.on())
                    && lock.keys().contains(bolt.key())
                    && !hasRun(delay, spot)) {
                return false;
            }
        }
        return true;
    }

    private boolean mayMove(Device d, String from, String to, Spot spot) {
        if (from.equals(to)) {
            return false;
        }
        if (d.kind() == Device.Kind.BREAKER && !from.equals("open") && !to.equals("open")) {
            return false;
        }
        for (Interlock interlock : isolation.interlocks()) {
            if (interlock.device().equals(d.name()) && interlock.to().equals(to)) {
                for (Map.Entry<String, List<String>> required :
                        interlock.requires().entrySet()) {
                    String stands = spot.devices().containsKey(required.getKey())
                            ? word(spot.devices(), required.getKey())
                            : word(spot.doors(), required.getKey());
                    if (!required.getValue().contains(stands)) {
                        return false;
                    }
                }
            }
        }
        for (Delay delay : isolation.delays()) {
            if (delay.of() instanceof Delay.Of.Move move
                    && move.device().equals(d.name())
                    && move.to().equals(to)
                    && !hasRun(delay, spot)) {
                return false;
            }
        }
        return true;
    }

    private boolean isBolted(String name, boolean door, Spot spot) {
        for (int i = 0; i < isolation.locks().size(); i++) {
            Lock.On on = isolation.locks().get(i).on();
            if (on.name().equals(name)
                    && on instanceof Lock.On.OfDoor == door
                    && spot.bolts().get(i).equals("extended")) {
                return true;
            }
        }
        return false;
    }

    private static Spot bolt(Spot spot, int lock, String word) {
        List<String> bolts = new ArrayList<>(spot.bolts());
        bolts.set(lock, word);
        return new Spot(spot.devices(), spot.doors(), bolts, spot.exchanges(), spot.charged());
    }

    private Action operate(Spot spot, Device d, String to) {
        Map<String, String> devices = new TreeMap<>(spot.devices());
        devices.put(d.name(), to);
        Set<String> charged = new TreeSet<>(spot.charged());
        Set<String> breaks = new TreeSet<>();
        for (String stage : switchOf.keySet()) {
            Set<String> was = joined(stage, spot.devices(), "");
            Set<String> is = joined(stage, devices, "");
            if (spot.charged().contains(stage)) {
                if (!hasSource(was, true) && hasSource(is, true)) {
                    breaks.add("recharge");
                }
                if (!was.contains("ground") && is.contains("ground")) {
                    breaks.add("grounded-charged");
                }
            }
            if (hasSource(is, true)) {
                charged.add(stage);
            }
        }
        if (d.kind() == Device.Kind.DISCONNECTOR && d.between().isPresent()) {
            Set<String> one = joined(d.between().get().first(), spot.devices(), d.name());
            Set<String> other = joined(d.between().get().second(), spot.devices(), d.name());
            for (String stage : switchOf.keySet()) {
                if ((hasSource(one, true) && other.contains(stage))
                        || (hasSource(other, true) && one.contains(stage))) {
                    breaks.add("load-break");
                }
            }
        }
        return new Action(
                "operate " + d.name() + " to " + to,
                breaks,
                new Spot(devices, spot.doors(), spot.bolts(), spot.exchanges(), charged));
    }

    /** Walks everywhere; for every broken property the fewest moves that break it. */
    Walk walk() {
        Map<Spot, Integer> depth = new HashMap<>();
        Map<Spot, List<Spot>> into = new HashMap<>();
        Map<String, Integer> shortest = new TreeMap<>();
        ArrayDeque<Spot> queue = new ArrayDeque<>();
        depth.put(start(), 0);
        queue.add(start());
        long moves = 0;
        while (!queue.isEmpty()) {
            Spot spot = queue.remove();
            int d = depth.getOrDefault(spot, -1);
            brokenIn(spot).forEach(p -> shortest.merge(p, d, Math::min));
            for (Action action : actions(spot)) {
                moves++;
                action.breaks().forEach(p -> shortest.merge(p, d + 1, Math::min));
                into.computeIfAbsent(action.after(), s -> new ArrayList<>()).add(spot);
                if (depth.putIfAbsent(action.after(), d + 1) == null) {
                    queue.add(action.after());
                }
            }
        }
        Set<Spot> home = new HashSet<>();
        if (depth.containsKey(inService())) {
            home.add(inService());
            queue.add(inService());
        }
        while (!queue.isEmpty()) {
            for (Spot before : into.getOrDefault(queue.remove(), List.of())) {
                if (home.add(before)) {
                    queue.add(before);
                }
            }
        }
        depth.forEach((spot, d) -> {
            if (!home.contains(spot)) {
                shortest.merge("key-stranded", d, Math::min);
            }
        });
        return new Walk(depth.size(), moves, shortest);
    }
}
