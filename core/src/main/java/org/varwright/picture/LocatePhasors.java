package org.varwright.picture;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.Supply;
import org.varwright.plot.Circle;
import org.varwright.plot.Dash;
import org.varwright.plot.Dial;
import org.varwright.plot.Phasor;
import org.varwright.plot.PhasorDiagram;
import org.varwright.quantity.Complex;
import org.varwright.unbalance.Candidate;
import org.varwright.unbalance.Locate;
import org.varwright.unbalance.Sighting;

/** What was read beside what each candidate would show, and the leg voltages of the most probable one. */
public final class LocatePhasors {
    private static final int MOST = 6;

    private LocatePhasors() {}

    /**
     * The picture.
     *
     * @param locate as found
     * @param capacitances with which it was worked out
     * @param supply likewise
     */
    public static PhasorDiagram of(Locate locate, Capacitances capacitances, Supply supply) {
        List<Dial> dials = new ArrayList<>();
        dials.add(sensor(locate));
        List<Candidate> shown = shown(locate);
        StringBuilder caption = new StringBuilder();
        for (int i = 0; i < shown.size(); i++) {
            caption.append(i + 1).append(": ").append(shown.get(i).words()).append(i + 1 < shown.size() ? "; " : ". ");
        }
        if (locate.candidates().size() > shown.size()) {
            caption.append("Less probable ones are not drawn. ");
        }
        if (!locate.isExplained()) {
            caption.append("NO FAILURE COMES NEAR THE READING. ");
        } else if (!shown.isEmpty()) {
            dials.addAll(legs(locate, shown.getFirst(), capacitances, supply));
        }
        return PhasorDiagram.of(locate.bank().name() + ": which failure shows this?", dials)
                .caption(caption
                        + (locate.sighting().primary() ? "Primary values. " : "Values at the relay. ")
                        + Phasors.AGAINST);
    }

    private static List<Candidate> shown(Locate locate) {
        return locate.candidates().subList(0, Math.min(MOST, locate.candidates().size()));
    }

    private static Dial sensor(Locate locate) {
        Sighting sighting = locate.sighting();
        double factor = sighting.primary() ? 1.0 : locate.ratio();
        Dial dial = Dial.of(sighting.sensor(), locate.senses().dimension());
        double magnitude = sighting.magnitude();
        if (sighting.degrees().isPresent()) {
            Complex read = Complex.polar(magnitude, sighting.degrees().getAsDouble());
            dial = dial.with(Phasor.of("read", read)).with(Circle.band(read, sighting.uncertainty() * magnitude, ""));
        } else {
            dial = dial.with(
                    Circle.reading(magnitude, "read: " + dial.dimension().format(magnitude) + ", angle not known"));
        }
        if (sighting.healthy().isPresent()) {
            dial = dial.with(Phasor.of("when healthy", sighting.healthy().get()).with(Dash.FINE));
        }
        List<Candidate> shown = shown(locate);
        for (int i = 0; i < shown.size(); i++) {
            Candidate candidate = shown.get(i);
            dial = dial.with(Phasor.of(
                            (i + 1) + " (" + percent(candidate.probability()) + ")",
                            Phasors.clean(candidate.sensor().times(factor), magnitude))
                    .with(i == 0 ? Dash.DASHED : Dash.DOTTED));
        }
        return dial;
    }

    private static String percent(double part) {
        long percent = Math.round(100.0 * part);
        return percent < 1 ? "below 1 %" : percent + " %";
    }

    /** Leg voltages with the most probable failure, where it has one that the network can show. */
    private static List<Dial> legs(Locate locate, Candidate candidate, Capacitances capacitances, Supply supply) {
        Bank bank = locate.bank();
        List<Failure> failures = new ArrayList<>();
        candidate.parts().forEach(p -> failures.addAll(p.standIn()));
        List<Dial> dials = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            boolean own = locate.sighting().sensor().startsWith(stage.name() + " ");
            if (own && !failures.isEmpty() && !stage.connection().isBridge()) {
                Dial legs = UnbalancePhasors.dials(bank, stage, capacitances, supply, failures)
                        .getFirst();
                dials.add(new Dial(legs.title() + ", if it is 1", legs.dimension(), legs.phasors(), legs.circles()));
            }
        }
        return dials;
    }
}
