package org.varwright.isolation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;
import org.varwright.bank.Stage;

/**
 * The bank pole by pole: what is really joined to what, whatever the handles say.
 *
 * <p><b>Model.</b> Three phases; a pole joins its two conductors of one phase. A stage is energized when one phase of it is live (neutral grounded) or two are
 * (neutral floating, delta): with a single live phase no current flows and its units discharge through their resistors (ISO-6). Low-voltage sources are left out.
 * <p><b>Not modelled.</b> Coupling between phases, arcs, the voltage of a floating conductor.
 */
final class Poles {
    static final int PHASES = 3;

    private final Isolation isolation;
    private final List<Stage> stages;
    private final Map<String, String> handles = new HashMap<>();
    private final Map<String, Set<Integer>> stayClosed = new HashMap<>();
    private final Map<String, Set<Integer>> stayOpen = new HashMap<>();
    private final Set<String> openResistors = new HashSet<>();
    private final Set<String> charged = new LinkedHashSet<>();
    private final Set<String> hidden = new LinkedHashSet<>();
    private final Set<String> extraSources = new LinkedHashSet<>();
    /** Conductors with a portable ground on every phase. */
    private final Set<String> portable = new LinkedHashSet<>();
    /** Conductors with fewer: they protect nobody, and make an arc all the same. */
    private final Set<String> partly = new LinkedHashSet<>();

    private final Set<String> shorted = new LinkedHashSet<>();

    Poles(Bank bank, SavedState start) {
        isolation = bank.isolation().orElseThrow();
        stages = bank.stages();
        handles.putAll(start.positions());
        start.charges().forEach((stage, isCharged) -> {
            if (isCharged) {
                charged.add(stage);
            }
        });
        start.grounds().forEach((conductor, count) -> (count < PHASES ? partly : portable).add(conductor));
        shorted.addAll(start.shorts().keySet());
    }

    void keepClosed(String device, Set<Integer> phases) {
        stayClosed.put(device, Set.copyOf(phases));
    }

    void keepOpen(String device, Set<Integer> phases) {
        stayOpen.put(device, Set.copyOf(phases));
    }

    /** A unit of the stage keeps its charge; one behind an operated fuse does not show it at the stage's conductor; a shorted one holds none. */
    void openResistor(String stage, boolean behindFuse) {
        if (shorted.contains(stage)) {
            return;
        }
        if (behindFuse) {
            hidden.add(stage);
        } else {
            openResistors.add(stage);
        }
    }

    void feed(String conductor) {
        extraSources.add(conductor);
        energize();
    }

    void ground(String conductor) {
        portable.add(conductor);
        partly.remove(conductor);
    }

    void unground(String conductor) {
        portable.remove(conductor);
        partly.remove(conductor);
    }

    void shortUnits(String stage) {
        shorted.add(stage);
    }

    void unshortUnits(String stage) {
        shorted.remove(stage);
    }

    /** Whether a pole really joins its conductors. A withdrawn breaker never does. */
    boolean isClosed(Device device, int phase) {
        String handle = handles.getOrDefault(device.name(), Device.CLOSED);
        if (handle.equals(Device.WITHDRAWN)) {
            return false;
        }
        return handle.equals(Device.CLOSED)
                ? !stayOpen.getOrDefault(device.name(), Set.of()).contains(phase)
                : stayClosed.getOrDefault(device.name(), Set.of()).contains(phase);
    }

    void move(String device, String position) {
        handles.put(device, position);
        energize();
    }

    private void energize() {
        Set<String> held = energized();
        held.removeAll(shorted);
        charged.addAll(held);
    }

    /** Time passes: a stage that no source holds up discharges, unless a resistor is open. */
    void waitFor(String stage) {
        if (!energized().contains(stage) && !openResistors.contains(stage)) {
            charged.remove(stage);
        }
    }

    /** Every unit of the stage is discharged and shorted by hand; says whether any was still charged. */
    boolean discharge(String stage) {
        boolean was = charged.remove(stage);
        was |= hidden.remove(stage);
        was |= openResistors.remove(stage);
        return was;
    }

    boolean isCharged(String stage) {
        return charged.contains(stage);
    }

    boolean hasHiddenCharge(String stage) {
        return hidden.contains(stage);
    }

    Set<String> charged() {
        return charged;
    }

    /** Conductors of one phase joined to any of these. */
    private Set<String> joined(int phase, Set<String> from) {
        Set<String> reached = new HashSet<>(from);
        Deque<String> open = new ArrayDeque<>(from);
        while (!open.isEmpty()) {
            String at = open.remove();
            for (Device device : isolation.devices()) {
                if (device.between().isPresent() && isClosed(device, phase)) {
                    Device.Between ends = device.between().get();
                    String other = ends.first().equals(at)
                            ? ends.second()
                            : ends.second().equals(at) ? ends.first() : "";
                    // a grounded conductor does not carry on: what is joined to ground is joined to nothing else by it
                    if (!other.isEmpty() && reached.add(other) && !other.equals(Isolation.GROUND)) {
                        open.add(other);
                    }
                }
            }
        }
        return reached;
    }

    Set<String> live(int phase) {
        Set<String> sources = new LinkedHashSet<>(extraSources);
        for (EnergySource source : isolation.sources()) {
            if (!source.isLowVoltage()) {
                sources.add(source.at());
            }
        }
        return joined(phase, sources);
    }

    /** Conductors joined to ground, live or not. */
    Set<String> grounded(int phase) {
        Set<String> at = new LinkedHashSet<>(portable);
        at.add(Isolation.GROUND);
        return joined(phase, at);
    }

    /** Conductors of one phase joined to a stage's conductor. */
    Set<String> joinedTo(int phase, String stage) {
        return joined(phase, Set.of(stage));
    }

    /** Stages that a source really holds up. */
    Set<String> energized() {
        Map<Integer, Set<String>> live = new LinkedHashMap<>();
        for (int p = 0; p < PHASES; p++) {
            live.put(p, live(p));
        }
        Set<String> all = new LinkedHashSet<>();
        for (Stage stage : stages) {
            long phases =
                    live.values().stream().filter(l -> l.contains(stage.name())).count();
            if (phases >= (stage.connection().isGrounded() ? 1 : 2)) {
                all.add(stage.name());
            }
        }
        return all;
    }

    /** Stages joined to a conductor by poles enough to show their capacitance: two phases, or one where the neutral is grounded. */
    List<String> stagesAt(String conductor) {
        List<String> all = new ArrayList<>();
        for (Stage stage : stages) {
            int phases = 0;
            for (int p = 0; p < PHASES; p++) {
                phases += joinedTo(p, stage.name()).contains(conductor) ? 1 : 0;
            }
            if (phases >= (stage.connection().isGrounded() ? 1 : 2)) {
                all.add(stage.name());
            }
        }
        return all;
    }

    /** Stages that would lose their source if this device had no pole closed. */
    Set<String> energizedThrough(String device) {
        Set<String> with = energized();
        String handle = handles.getOrDefault(device, Device.CLOSED);
        Set<Integer> stuck = stayClosed.getOrDefault(device, Set.of());
        handles.put(device, Device.OPEN);
        stayClosed.put(device, Set.of());
        Set<String> without = energized();
        handles.put(device, handle);
        stayClosed.put(device, stuck);
        with.removeAll(without);
        return with;
    }

    /** A phase in which a source is joined to ground. */
    boolean isShorted() {
        for (int p = 0; p < PHASES; p++) {
            Set<String> live = live(p);
            if (live.contains(Isolation.GROUND)
                    || portable.stream().anyMatch(live::contains)
                    || partly.stream().anyMatch(live::contains)) {
                return true;
            }
        }
        return false;
    }

    /** Charged stages that are joined to ground in some phase. */
    List<String> chargedOnGround() {
        List<String> all = new ArrayList<>();
        for (String stage : charged) {
            for (int p = 0; p < PHASES; p++) {
                if (grounded(p).contains(stage)) {
                    all.add(stage);
                    break;
                }
            }
        }
        return all;
    }

    /** Whether a tester on a conductor shows voltage in some phase. */
    boolean showsVoltage(String conductor) {
        for (int p = 0; p < PHASES; p++) {
            if (live(p).contains(conductor)) {
                return true;
            }
            boolean grounded = grounded(p).contains(conductor);
            for (String stage : charged) {
                boolean own = stage.equals(conductor);
                if (own || (!grounded && joinedTo(p, stage).contains(conductor))) {
                    return true;
                }
            }
        }
        return false;
    }
}
