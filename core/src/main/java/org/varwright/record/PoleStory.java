package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Stage;
import org.varwright.waveform.Conduction;
import org.varwright.waveform.Signal;

/**
 * What one pole did, from its current.
 *
 * @param phase A, B or C
 * @param channel name of the channel
 * @param signal its current [A]
 * @param runs every stretch in which it carried current
 * @param closed the run that began when the pole closed; empty where it carried from the begin or never did
 * @param bursts short runs just before it
 * @param stopped the run after which it had opened; empty where it carries to the end or never did
 * @param again runs that began soon after it had stopped
 */
record PoleStory(
        String phase,
        String channel,
        Signal signal,
        List<Conduction.Run> runs,
        Optional<Conduction.Run> closed,
        List<Conduction.Run> bursts,
        Optional<Conduction.Run> stopped,
        List<Conduction.Run> again) {
    /** A run of at least so many cycles is service, a shorter one a burst. */
    private static final double LONG_CYCLES = 1.5;

    /** Cycles before a closing in which a burst belongs to it. */
    private static final double BURST_CYCLES = 1.5;

    /** Cycles after an opening within which conducting again is a restrike; later it is a new closing. */
    static final double AGAIN_CYCLES = 10.0;

    /** A current below this part of the expected counts as none. */
    private static final double NOTHING = 0.03;

    PoleStory {
        runs = List.copyOf(runs);
        bursts = List.copyOf(bursts);
        again = List.copyOf(again);
    }

    /** The stories of a stage's poles as far as their currents are recorded. */
    static List<PoleStory> of(Scene scene, Stage stage) {
        List<PoleStory> stories = new ArrayList<>();
        for (String phase : Role.PHASES) {
            scene.pole(stage.name(), phase).ifPresent(place -> {
                double amperes = scene.expected()
                        .of(new Role.StageAmperes(stage.name(), phase))
                        .orElse(0.0);
                List<Conduction.Run> runs = Conduction.of(
                        place.signal(), scene.cycles(), Math.max(1e-9, NOTHING * Math.sqrt(2.0) * amperes));
                stories.add(told(phase, place, runs, scene.cycleSeconds()));
            });
        }
        return stories;
    }

    private static PoleStory told(String phase, Scene.Place place, List<Conduction.Run> runs, double cycle) {
        Optional<Conduction.Run> closed = Optional.empty();
        Optional<Conduction.Run> stopped = Optional.empty();
        List<Conduction.Run> bursts = new ArrayList<>();
        List<Conduction.Run> again = new ArrayList<>();
        for (Conduction.Run run : runs) {
            boolean isService = run.fromBegin() || run.seconds() > LONG_CYCLES * cycle;
            if (stopped.isPresent() && run.startSeconds() - last(stopped.get(), again) < AGAIN_CYCLES * cycle) {
                again.add(run);
            } else if (isService) {
                if (!run.fromBegin() && closed.isEmpty()) {
                    closed = Optional.of(run);
                }
                if (!run.toEnd() && stopped.isEmpty()) {
                    stopped = Optional.of(run);
                }
            }
        }
        if (closed.isPresent()) {
            double start = closed.get().startSeconds();
            runs.stream()
                    .filter(r -> !r.fromBegin()
                            && r.stopSeconds() <= start
                            && start - r.stopSeconds() < BURST_CYCLES * cycle
                            && r.seconds() <= LONG_CYCLES * cycle)
                    .forEach(bursts::add);
        }
        return new PoleStory(phase, place.name(), place.signal(), runs, closed, bursts, stopped, again);
    }

    private static double last(Conduction.Run stopped, List<Conduction.Run> again) {
        return again.isEmpty() ? stopped.stopSeconds() : again.getLast().stopSeconds();
    }

    /** Whether it carries current at a time. */
    boolean isOn(double seconds) {
        return runs.stream().anyMatch(r -> r.startSeconds() <= seconds && seconds <= r.stopSeconds());
    }

    boolean neverCarries() {
        return runs.isEmpty();
    }

    Evidence evidence(double seconds, double value, String what) {
        return new Evidence(channel, seconds, value, "A", what);
    }
}
