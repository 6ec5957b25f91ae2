package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.Stage;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Unanswered;
import org.varwright.waveform.Decay;

/** What was left on the capacitors after the opening, and how it falls. */
final class DecayFinder {
    /** Mean over peak phase voltage that counts as charge. */
    private static final double LEAST = 0.03;

    /** Time constant over that of the nameplate from which a resistor is doubted. */
    private static final double SLOW = 1.3;

    private final Scene scene;
    private final Stage stage;
    private final List<Finding> findings = new ArrayList<>();
    private final List<Unanswered> unanswered = new ArrayList<>();

    private DecayFinder(Scene scene, Stage stage) {
        this.scene = scene;
        this.stage = stage;
    }

    /** What was found, and what could not be. */
    record Found(List<Finding> findings, List<Unanswered> unanswered) {
        Found {
            findings = List.copyOf(findings);
            unanswered = List.copyOf(unanswered);
        }
    }

    static Found of(Scene scene, Stage stage, double openedAt) {
        DecayFinder finder = new DecayFinder(scene, stage);
        finder.find(openedAt);
        return new Found(finder.findings, finder.unanswered);
    }

    private void find(double openedAt) {
        boolean any = false;
        for (String phase : Role.PHASES) {
            Optional<Scene.Place> place = scene.at(new Role.StageVolts(stage.name(), phase));
            if (place.isPresent()) {
                any = true;
                phase(phase, place.get(), openedAt);
            }
        }
        if (!any) {
            unanswered.add(new Unanswered(
                    "voltages behind the switch of " + stage.name() + " in this record",
                    "what charge was trapped there and how it falls is not told: it counts as charged"));
        }
    }

    private void phase(String phase, Scene.Place place, double openedAt) {
        double peak = Math.sqrt(2.0) * scene.bank().system().phaseVolts();
        Decay decay = Decay.of(
                place.signal(),
                scene.cycles(),
                openedAt + 0.25 * scene.cycleSeconds(),
                scene.base().last(),
                LEAST * peak);
        switch (decay) {
            case Decay.Falls falls -> falls(phase, place, falls, openedAt, peak);
            case Decay.Stands stands ->
                findings.add(finding(
                        "trapped-charge",
                        Finding.Weight.NOTE,
                        openedAt,
                        phase,
                        place,
                        stands.startVolts(),
                        stage.name() + " phase " + phase + " was left at " + Say.volts(stands.startVolts()) + " ("
                                + Say.times(Math.abs(stands.startVolts()) / peak)
                                + " of the peak) and hardly falls in the " + Say.time(stands.seconds())
                                + " that were recorded: the time constant is longer than "
                                + Say.time(stands.longerThanSeconds()) + ". It counts as charged.",
                        new Term("τ", "longer than", stands.longerThanSeconds(), "s")));
            case Decay.Nothing nothing -> {
                // nothing to say: what is not seen is not safe, and nothing is promised
            }
        }
    }

    private void falls(String phase, Scene.Place place, Decay.Falls falls, double openedAt, double peak) {
        Optional<Double> plate = nameplateTau();
        boolean slow = plate.filter(p -> falls.tauSeconds() - 3.0 * falls.tauSigma() > SLOW * p)
                .isPresent();
        findings.add(finding(
                slow ? "decay-slow" : "decay",
                slow ? Finding.Weight.LOOK : Finding.Weight.NOTE,
                openedAt,
                phase,
                place,
                falls.startVolts(),
                stage.name() + " phase " + phase + " was left at " + Say.volts(falls.startVolts()) + " ("
                        + Say.times(Math.abs(falls.startVolts()) / peak)
                        + " of the peak); it falls with a time constant of "
                        + Say.time(falls.tauSeconds()) + " (± " + Say.time(falls.tauSigma()) + ")"
                        + plate.map(p -> ", " + Say.time(p) + " by the nameplate")
                                .orElse("") + "."
                        + (slow
                                ? " Slower than the resistors should make it: one may be open. Wait longer, and prove dead."
                                : ""),
                terms(falls, plate)));
    }

    private static Term[] terms(Decay.Falls falls, Optional<Double> plate) {
        Term tau = new Term("τ", "time constant", falls.tauSeconds(), "s");
        return plate.map(p -> new Term[] {tau, new Term("RC", "by the nameplate", p, "s")})
                .orElse(new Term[] {tau});
    }

    /** R·C of one unit: the same of groups and strings of them. */
    private Optional<Double> nameplateTau() {
        return stage.unit().discharge().map(d -> switch (d) {
            case DischargeDevice.Resistor r -> r.ohms() * stage.unit().capacitanceFarads();
            case DischargeDevice.Rated r ->
                r.seconds() / Math.log(Math.sqrt(2.0) * stage.unit().ratedVolts() / r.volts());
        });
    }

    private Finding finding(
            String kind,
            Finding.Weight weight,
            double at,
            String phase,
            Scene.Place place,
            double volts,
            String words,
            Term... terms) {
        return new Finding(
                kind,
                weight,
                at,
                stage.name() + "/" + phase,
                words,
                List.of(new Evidence(place.name(), at, volts, "V", "mean after the opening")),
                Say.basis(
                        "REC-8", "v = V0·e^(−t/τ) through the means of whole cycles", Source.FIRST_PRINCIPLES, terms));
    }
}
