package org.varwright.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Unanswered;
import org.varwright.waveform.Cycles;
import org.varwright.waveform.Signal;

/**
 * What a disturbance record says.
 *
 * @param input the record
 * @param cycles it cut into cycles, frequency tracked
 * @param bank whose it is; empty where no bank was given
 * @param matching which channel measures what; empty without a bank
 * @param findings what happened, by time
 * @param located which failures explain the sensors
 * @param unanswered what the record can't tell
 */
public record RecordStudy(
        RecordInput input,
        Cycles cycles,
        Optional<Bank> bank,
        Optional<ChannelMatching> matching,
        List<Finding> findings,
        List<Located> located,
        List<Unanswered> unanswered) {
    public RecordStudy {
        findings = List.copyOf(findings);
        located = List.copyOf(located);
        unanswered = List.copyOf(unanswered);
    }

    /** How far the answer goes. */
    public enum Answer {
        /** Nothing failed as far as the record shows. */
        NOTHING_FAILED,
        /** Something failed. */
        FAILED,
        /** Channels are not clear, nothing of the bank is in the record, a pole is not seen to open, or no failure explains what was read. */
        UNDECIDED
    }

    private static final double USUAL_HERTZ = 60.0;

    /** Findings that are the bank's own doing, and how many cycles around them a change is theirs. */
    private static final List<String> OWN =
            List.of("closed", "opened", "fault", "admittance", "restrike", "re-ignition");

    private static final double OWN_CYCLES = 4.0;

    /** The record alone: measures without a bank. */
    public static RecordStudy of(RecordInput input) {
        Cycles cycles = cycles(input, input.hertz());
        return new RecordStudy(
                input,
                cycles,
                Optional.empty(),
                Optional.empty(),
                GeneralFinder.of(input, cycles),
                List.of(),
                GeneralFinder.unanswered(input, cycles));
    }

    /**
     * The record at a bank.
     *
     * @param map what a person says about channels, such as {@code IA=stage 1/A}
     * @throws org.varwright.problem.VarwrightException {@code CHANNEL_MAP_…}
     */
    public static RecordStudy of(RecordInput input, Bank bank, List<String> map) {
        Cycles first = cycles(
                input, input.hertz() > 0.0 ? input.hertz() : bank.system().frequencyHertz());
        Expected expected = Expected.nominal(bank);
        List<Signal> all = input.channels().stream()
                .filter(c -> c.quantity() != Channel.Quantity.OTHER)
                .map(Channel::signal)
                .toList();
        ChannelMatching matching = new ChannelMatcher(
                        bank, first, Steady.of(first, all), expected, new ChannelMap(bank).read(map, input.channels()))
                .match(input.channels());
        Scene scene = new Scene(bank, input, first, matching, expected);
        List<Finding> findings = new ArrayList<>(
                GeneralFinder.frequency(input, first, bank.system().frequencyHertz()));
        findings.addAll(GeneralFinder.statuses(input));
        List<Unanswered> unanswered = new ArrayList<>(GeneralFinder.unanswered(input, first));
        List<Located> located = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            List<PoleStory> poles = PoleStory.of(scene, stage);
            ClosingFinder.Found closing = ClosingFinder.of(scene, stage, poles);
            OpeningFinder.Found opening = OpeningFinder.of(scene, stage, poles);
            findings.addAll(closing.findings());
            findings.addAll(opening.findings());
            findings.addAll(StateFinder.of(scene, stage, poles));
            findings.addAll(ChainFinder.of(scene, stage, poles));
            unanswered.addAll(closing.unanswered());
            unanswered.addAll(opening.unanswered());
            opening.openedAt().ifPresent(at -> {
                DecayFinder.Found decay = DecayFinder.of(scene, stage, at);
                findings.addAll(decay.findings());
                unanswered.addAll(decay.unanswered());
            });
            for (Role.Sensor sensor : scene.sensors()) {
                if (sensor.stage().equals(stage.name())) {
                    scene.at(sensor).ifPresent(place -> {
                        SensorFinder.Found found =
                                SensorFinder.of(scene, stage, sensor, place, poles, opening.firstAt());
                        findings.addAll(found.findings());
                        unanswered.addAll(found.unanswered());
                        located.addAll(found.located());
                    });
                }
            }
        }
        missing(scene, unanswered);
        explained(findings, first.hertz());
        findings.sort(Comparator.comparingDouble(Finding::seconds));
        return new RecordStudy(input, first, Optional.of(bank), Optional.of(matching), findings, located, unanswered);
    }

    /** What the bank itself did is no switching elsewhere. */
    private static void explained(List<Finding> findings, double hertz) {
        List<Finding> own = findings.stream()
                .filter(f ->
                        OWN.contains(f.kind()) || (f.kind().equals("sensor") && f.weight() == Finding.Weight.FAILED))
                .toList();
        findings.removeIf(f -> f.kind().endsWith("-elsewhere")
                && own.stream().anyMatch(o -> Math.abs(o.seconds() - f.seconds()) < OWN_CYCLES / hertz));
    }

    private static void missing(Scene scene, List<Unanswered> unanswered) {
        for (Stage stage : scene.bank().stages()) {
            boolean any = scene.hasPoles(stage.name())
                    || scene.sensors().stream().anyMatch(s -> s.stage().equals(stage.name()));
            if (!any) {
                unanswered.add(new Unanswered(
                        "a current or sensor of " + stage.name() + " in this record",
                        "nothing is said of " + stage.name()));
            }
        }
    }

    /** Cut into cycles by the voltage that is loudest for its unit, else by a current. */
    private static Cycles cycles(RecordInput input, double hertz) {
        double nominal = hertz > 0.0 ? hertz : GeneralFinder.guessHertz(input).orElse(USUAL_HERTZ);
        return Cycles.of(input.base(), reference(input), nominal);
    }

    private static Optional<Signal> reference(RecordInput input) {
        for (Channel.Quantity quantity : List.of(Channel.Quantity.VOLTS, Channel.Quantity.AMPERES)) {
            Optional<Signal> loudest = input.channels().stream()
                    .filter(c -> c.quantity() == quantity)
                    .map(Channel::signal)
                    .filter(s -> s.largest(0, s.size()) > 0.0)
                    .max(Comparator.comparingDouble(s -> steadiness(s)));
            if (loudest.isPresent()) {
                return loudest;
            }
        }
        return Optional.empty();
    }

    /** Rms of a channel: the loudest voltage is one of the bus, whatever a neutral does. */
    private static double steadiness(Signal signal) {
        double squares = 0.0;
        int n = 0;
        for (int i = 0; i < signal.size(); i++) {
            if (Double.isFinite(signal.value(i))) {
                squares += signal.value(i) * signal.value(i);
                n++;
            }
        }
        return n == 0 ? 0.0 : squares / n;
    }

    public Answer answer() {
        boolean unclear =
                matching.filter(m -> !m.open().isEmpty() || !isSeen(m)).isPresent()
                        || findings.stream().anyMatch(f -> f.kind().equals(OpeningFinder.NOT_SEEN_TO_OPEN))
                        || located.stream()
                                .anyMatch(l -> !l.locate().isExplained()
                                        || l.locate().candidates().isEmpty());
        if (unclear) {
            return Answer.UNDECIDED;
        }
        boolean failed = findings.stream().anyMatch(f -> f.weight() == Finding.Weight.FAILED)
                || located.stream()
                        .anyMatch(
                                l -> !l.locate().candidates().getFirst().parts().isEmpty());
        return failed ? Answer.FAILED : Answer.NOTHING_FAILED;
    }

    /** Whether a current or a sensor of the bank is there for a whole cycle: what is not seen has not been found in good order. */
    private boolean isSeen(ChannelMatching matching) {
        return matching.assignments().stream().anyMatch(a -> switch (a.role()) {
            case Role.StageAmperes r -> isThere(a.primary());
            case Role.BankAmperes r -> false;
            case Role.Sensor r -> isThere(a.primary());
            case Role.BusVolts r -> false;
            case Role.BusLineVolts r -> false;
            case Role.StageVolts r -> false;
            case Role.None r -> false;
        });
    }

    private boolean isThere(Signal signal) {
        return cycles.windows().stream().anyMatch(w -> w.phasor(signal).isPresent());
    }

    /** Every basis. */
    public List<Basis> bases() {
        List<Basis> bases = new ArrayList<>();
        findings.forEach(f -> bases.add(f.basis()));
        located.forEach(l -> bases.add(l.locate().basis()));
        return bases;
    }
}
