package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.transients.Act;
import org.varwright.transients.Happening;
import org.varwright.transients.Outcome;
import org.varwright.transients.Probe;
import org.varwright.transients.Setting;
import org.varwright.transients.Swing;
import org.varwright.transients.Transient;
import org.varwright.transients.Wave;

/**
 * A stage that opens (SWI-15): each pole at the next zero of its current, and again where it restrikes.
 *
 * <p>The contacts part when the clock stands at 75°, so that pole A clears first, at 90°. An island that nothing ties to ground keeps the potential it was
 * left with. A pole that restrikes conducts for good. Not modelled: chopping, more than one restrike a pole, stray capacitance to ground.
 */
final class OpeningStudy {
    private static final double PARTING_DEGREES = 75.0;
    private static final double CYCLES = 2.0;
    private static final String[] PHASES = {"A", "B", "C"};

    private OpeningStudy() {}

    static Opened of(
            Source source,
            SwitchedStage opening,
            List<SwitchedStage> on,
            double perMetre,
            Map<String, Double> restrikes) {
        List<SwitchedStage> all = new ArrayList<>();
        all.add(opening);
        all.addAll(on);
        BankCircuit bank = BankCircuit.of(source, all, perMetre);
        double peakVolts = source.peakVolts();
        List<Act> acts = new ArrayList<>();
        List<Probe> probes = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            acts.add(new Act.Open(bank.pole(0, p), 0.0));
            Double volts = restrikes.get(PHASES[p]);
            if (volts != null) {
                acts.add(new Act.Restrike(bank.pole(0, p), volts * peakVolts));
            }
            probes.add(bank.poleAmperes(0, p));
        }
        for (int p = 0; p < 3; p++) {
            probes.add(bank.acrossPole(0, p));
        }
        for (int p = 0; p < 3; p++) {
            probes.add(bank.busVolts(p));
        }
        List<BankCircuit.LegPlace> legs = bank.legs(0);
        legs.forEach(leg -> probes.add(leg.volts()));
        Outcome outcome = Transient.run(
                Setting.discharged(bank.circuit(), List.of()),
                PARTING_DEGREES,
                acts,
                probes,
                CYCLES / source.hertz(),
                true);
        return opened(bank, probes, outcome, peakVolts);
    }

    /** Largest magnitude of a probe from a time on: exact where the peak of the whole run lies there, else that of the steps. */
    private static double largestFrom(double seconds, Wave wave, int probe, Swing whole) {
        if (whole.seconds() >= seconds) {
            return whole.magnitude();
        }
        double largest = 0.0;
        for (int i = 0; i < wave.seconds().length; i++) {
            largest = wave.seconds()[i] >= seconds ? Math.max(largest, Math.abs(wave.values()[probe][i])) : largest;
        }
        return largest;
    }

    private static Opened opened(BankCircuit bank, List<Probe> probes, Outcome outcome, double peakVolts) {
        Wave wave = outcome.wave().orElseThrow();
        List<Opened.Step> steps = new ArrayList<>();
        double restruckAt = Double.POSITIVE_INFINITY;
        for (Happening h : outcome.happenings()) {
            int phase = bank.poles(0).indexOf(h.branch());
            boolean again = h.kind() == Happening.Kind.RESTRUCK;
            if (again) {
                restruckAt = Math.min(restruckAt, h.seconds());
            }
            steps.add(new Opened.Step(
                    h.seconds(), PHASES[phase], again, Math.abs(h.before().get(3 + phase)) / peakVolts));
        }
        List<Opened.Pole> poles = new ArrayList<>();
        double bus = 0.0;
        double peak = 0.0;
        int worst = 0;
        for (int p = 0; p < 3; p++) {
            poles.add(new Opened.Pole(PHASES[p], outcome.swings().get(3 + p).magnitude() / peakVolts));
            bus = Math.max(bus, outcome.swings().get(6 + p).magnitude() / peakVolts);
            double value = largestFrom(restruckAt, wave, p, outcome.swings().get(p));
            if (value > peak * (1.0 + 1e-9)) {
                peak = value;
                worst = p;
            }
        }
        List<Opened.Leg> legs = new ArrayList<>();
        for (int l = 0; l < bank.legs(0).size(); l++) {
            BankCircuit.LegPlace place = bank.legs(0).get(l);
            double[] values = wave.values()[9 + l];
            legs.add(new Opened.Leg(
                    place.name(),
                    outcome.swings().get(9 + l).magnitude() / place.peakVolts(),
                    values[values.length - 1] / place.peakVolts()));
        }
        double hertz = 0.0;
        for (Outcome.Ring ring : outcome.rings()) {
            hertz = ring.hertz().get(worst);
        }
        return new Opened(
                bank.stages().getFirst().name(),
                bank.stages().stream().skip(1).map(SwitchedStage::name).toList(),
                steps,
                poles,
                legs,
                peak,
                hertz,
                bus,
                Optional.of(new Closing.Recorded(probes, wave)));
    }
}
