package org.varwright.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.quantity.Complex;
import org.varwright.quantity.Dimension;
import org.varwright.waveform.Signal;

/**
 * Holds channels against each other: voltages follow A-B-C, a capacitor's current leads its voltage by a quarter cycle (REC-11).
 *
 * <p>A current that lags by a quarter cycle has its polarity turned, which is put right and said. One that leads another phase's voltage is in the wrong
 * place, which is asked for, unless a person has said its place.
 */
final class MatchPhysics {
    private static final double WITHIN_DEGREES = 30.0;

    /** Part of its largest that a channel must show to count as alive. */
    private static final double ALIVE = 0.2;

    private final Bank bank;
    private final List<Steady> steadies;
    private final Set<Integer> said;
    private final List<ChannelMatching.Assignment> assignments;
    private final List<ChannelMatching.Question> questions;

    MatchPhysics(
            Bank bank,
            List<Steady> steadies,
            Set<Integer> said,
            List<ChannelMatching.Assignment> assignments,
            List<ChannelMatching.Question> questions) {
        this.bank = bank;
        this.steadies = steadies;
        this.said = said;
        this.assignments = assignments;
        this.questions = questions;
    }

    void check() {
        voltages();
        for (ChannelMatching.Assignment a : List.copyOf(assignments)) {
            switch (a.role()) {
                case Role.StageAmperes r -> current(a, r.phase());
                case Role.BankAmperes r -> {}
                case Role.BusVolts r -> {}
                case Role.BusLineVolts r -> {}
                case Role.StageVolts r -> {}
                case Role.Sensor r -> {}
                case Role.None r -> {}
            }
        }
    }

    private void voltages() {
        Optional<ChannelMatching.Assignment> a =
                Role.PHASES.stream().flatMap(p -> bus(p).stream()).findFirst();
        if (a.isEmpty()) {
            return;
        }
        String first =
                Role.PHASES.stream().filter(p -> bus(p).isPresent()).findFirst().orElseThrow();
        List<ChannelMatching.Assignment> wrong = new ArrayList<>();
        for (String phase : Role.PHASES.subList(Role.PHASES.indexOf(first) + 1, 3)) {
            Optional<ChannelMatching.Assignment> other = bus(phase);
            if (other.isPresent()) {
                double should = -120.0 * (Role.PHASES.indexOf(phase) - Role.PHASES.indexOf(first));
                Optional<Double> degrees = angle(other.get().primary(), a.get().primary());
                if (degrees.isPresent() && away(degrees.get(), should) > WITHIN_DEGREES) {
                    wrong.add(other.get());
                }
            }
        }
        if (wrong.isEmpty()
                || wrong.stream().allMatch(w -> said.contains(w.channel().number()))) {
            return;
        }
        assignments.removeAll(wrong);
        List<String> choices = new ArrayList<>();
        wrong.forEach(w -> Role.PHASES.forEach(p -> {
            String text = w.channel().name().strip() + "=" + new Role.BusVolts(p).text();
            choices.add(text);
        }));
        questions.add(new ChannelMatching.Question(
                wrong.stream().map(ChannelMatching.Assignment::channel).toList(),
                "bus voltages don't follow A-B-C: "
                        + String.join(
                                ", ",
                                wrong.stream()
                                        .map(w -> w.channel().title() + " stands at "
                                                + Dimension.digits(
                                                        angle(
                                                                        w.primary(),
                                                                        a.get().primary())
                                                                .orElse(0.0),
                                                        3)
                                                + "° against phase " + first)
                                        .toList())
                        + "; two names or two conductors may be exchanged, or a transformer's polarity turned",
                choices));
    }

    private Optional<ChannelMatching.Assignment> bus(String phase) {
        return assignments.stream()
                .filter(x -> x.role().equals(new Role.BusVolts(phase)))
                .findFirst();
    }

    private void current(ChannelMatching.Assignment a, String phase) {
        Optional<ChannelMatching.Assignment> own = bus(phase);
        if (own.isEmpty()) {
            return;
        }
        Optional<Double> degrees = angle(a.primary(), own.get().primary());
        if (degrees.isEmpty() || away(degrees.get(), 90.0) <= WITHIN_DEGREES) {
            return;
        }
        if (away(degrees.get(), -90.0) <= WITHIN_DEGREES) {
            List<String> why = new ArrayList<>(a.why());
            why.add("it lags its voltage by a quarter cycle, which a capacitor's current can't: its polarity is turned"
                    + " round here");
            assignments.set(
                    assignments.indexOf(a),
                    new ChannelMatching.Assignment(
                            a.channel(), a.role(), a.primary().times(-1.0), why));
            return;
        }
        if (said.contains(a.channel().number())) {
            return;
        }
        assignments.remove(a);
        List<String> choices = new ArrayList<>(Role.PHASES.stream()
                .map(p -> a.role().text().replaceAll("/[ABC]$", "/" + p))
                .toList());
        choices.add("none");
        questions.add(new ChannelMatching.Question(
                List.of(a.channel()),
                a.channel().title() + " stands at " + Dimension.digits(degrees.get(), 3)
                        + "° against the voltage of phase "
                        + phase + "; a capacitor's current stands at 90°: another phase, or no current of "
                        + bank.words().stage() + " capacitors at all",
                choices));
    }

    /** Angle against another channel in the longest steady stretch in which neither is dead; empty where there is none. */
    private Optional<Double> angle(Signal signal, Signal reference) {
        double loudest = steadies.stream()
                .mapToDouble(s -> s.magnitude(signal))
                .filter(Double::isFinite)
                .max()
                .orElse(0.0);
        double loudestReference = steadies.stream()
                .mapToDouble(s -> s.magnitude(reference))
                .filter(Double::isFinite)
                .max()
                .orElse(0.0);
        return steadies.stream()
                .filter(s -> loudest > 0.05 * signal.largest(0, signal.size()) && s.magnitude(signal) > ALIVE * loudest)
                .filter(s -> loudestReference > 0.0 && s.magnitude(reference) > ALIVE * loudestReference)
                .max(Comparator.comparingInt(s -> s.windows().size()))
                .flatMap(s -> s.phasor(signal, reference))
                .map(Complex::degrees);
    }

    private static double away(double degrees, double from) {
        double off = Math.abs(degrees - from) % 360.0;
        return Math.min(off, 360.0 - off);
    }
}
