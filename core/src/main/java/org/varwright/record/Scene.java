package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.network.Supply;
import org.varwright.quantity.Complex;
import org.varwright.waveform.Cycles;
import org.varwright.waveform.Signal;
import org.varwright.waveform.TimeBase;
import org.varwright.waveform.Window;

/** A record at a bank: what each channel is, when nothing changed, and the voltages that fed the bank. */
final class Scene {
    /** Below this part of nominal a bus counts as dead. */
    private static final double DEAD = 0.2;

    private final Bank bank;
    private final RecordInput input;
    private final Cycles cycles;
    private final List<Steady> steadies;
    private final ChannelMatching matching;
    private final Expected expected;

    /**
     * A channel in its place.
     *
     * @param name of the channel or channels, for evidence
     * @param signal primary [V] or [A]
     */
    record Place(String name, Signal signal) {}

    Scene(Bank bank, RecordInput input, Cycles cycles, ChannelMatching matching, Expected expected) {
        this.bank = bank;
        this.input = input;
        this.cycles = cycles;
        this.matching = matching;
        this.expected = expected;
        steadies = Steady.of(
                cycles,
                matching.assignments().stream()
                        .map(ChannelMatching.Assignment::primary)
                        .toList());
    }

    Bank bank() {
        return bank;
    }

    TimeBase base() {
        return input.base();
    }

    Cycles cycles() {
        return cycles;
    }

    double cycleSeconds() {
        return 1.0 / cycles.hertz();
    }

    List<Steady> steadies() {
        return steadies;
    }

    ChannelMatching matching() {
        return matching;
    }

    Expected expected() {
        return expected;
    }

    Optional<Place> at(Role role) {
        return matching.assignments().stream()
                .filter(a -> a.role().equals(role))
                .findFirst()
                .map(a -> new Place(a.channel().name().strip(), a.primary()));
    }

    Optional<Place> pole(String stage, String phase) {
        return at(new Role.StageAmperes(stage, phase));
    }

    /** Whether a channel of the current of any pole of a stage is there. */
    boolean hasPoles(String stage) {
        return Role.PHASES.stream().anyMatch(p -> pole(stage, p).isPresent());
    }

    List<Role.Sensor> sensors() {
        return matching.assignments().stream()
                .filter(a -> a.role() instanceof Role.Sensor)
                .map(a -> (Role.Sensor) a.role())
                .toList();
    }

    /** Bus voltage of a phase to ground; from two line-to-line voltages, without a shift of the system's neutral, where it is not recorded itself. */
    Optional<Place> bus(String phase) {
        Optional<Place> own = at(new Role.BusVolts(phase));
        if (own.isPresent()) {
            return own;
        }
        int p = Role.PHASES.indexOf(phase);
        Optional<Place> ahead = line(p);
        Optional<Place> behind = line((p + 2) % 3);
        if (ahead.isEmpty() || behind.isEmpty()) {
            return Optional.empty();
        }
        Signal one = ahead.get().signal();
        Signal other = behind.get().signal();
        double[] values = new double[one.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = (one.value(i) - other.value(i)) / 3.0;
        }
        return Optional.of(new Place(
                ahead.get().name() + ", " + behind.get().name(), Signal.of(one.base(), one.skewSeconds(), values)));
    }

    /** Voltage from a phase to the next, or from the two others. */
    private Optional<Place> line(int pair) {
        Optional<Place> own = at(new Role.BusLineVolts(Role.PAIRS.get(pair)));
        if (own.isPresent()) {
            return own;
        }
        Optional<Place> next = at(new Role.BusLineVolts(Role.PAIRS.get((pair + 1) % 3)));
        Optional<Place> last = at(new Role.BusLineVolts(Role.PAIRS.get((pair + 2) % 3)));
        if (next.isEmpty() || last.isEmpty()) {
            return Optional.empty();
        }
        double[] values = new double[base().size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = -next.get().signal().value(i) - last.get().signal().value(i);
        }
        return Optional.of(new Place(
                next.get().name() + ", " + last.get().name(),
                Signal.of(base(), next.get().signal().skewSeconds(), values)));
    }

    /** Phase voltage of the bus in a steady stretch [V rms]: recorded, else nominal. */
    double busVolts(Steady steady, String phase) {
        return bus(phase)
                .map(b -> steady.magnitude(b.signal()))
                .filter(v -> Double.isFinite(v))
                .orElse(bank.system().phaseVolts());
    }

    /** Whether the bus is alive; taken for granted where no voltage is recorded. */
    boolean isBusAlive(Steady steady) {
        return Role.PHASES.stream()
                .allMatch(p -> busVolts(steady, p) > DEAD * bank.system().phaseVolts());
    }

    /** The three voltages that fed the bank in a steady stretch, phase A at 0°; empty where not all are recorded. */
    Optional<Supply> supply(Steady steady) {
        Optional<Place> a = bus("A");
        List<Complex> volts = new ArrayList<>();
        for (String phase : Role.PHASES) {
            bus(phase)
                    .flatMap(b -> steady.phasor(b.signal(), a.orElse(b).signal()))
                    .ifPresent(volts::add);
        }
        return a.isPresent() && volts.size() == 3
                ? Optional.of(new Supply.Measured(volts.get(0), volts.get(1), volts.get(2)))
                : Optional.empty();
    }

    /** Angle of the clock at a time, 0 where the voltage of phase A to ground rises through zero [degrees]; empty where it is not recorded. */
    Optional<Double> clockDegrees(double seconds) {
        return bus("A").flatMap(a -> {
            // the cycle before the moment is free of what the moment sets off
            Optional<Window> window = cycles.around(seconds - 0.6 * cycleSeconds());
            return window.flatMap(w -> w.phasor(a.signal())
                    .filter(p -> p.magnitude() > DEAD * bank.system().phaseVolts())
                    .map(p -> p.degrees() + 90.0 + 360.0 * w.hertz() * (seconds - w.middleSeconds())));
        });
    }
}
