package org.varwright.picture;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.fit.Balance;
import org.varwright.fit.FitResult;
import org.varwright.plot.Dash;
import org.varwright.plot.Dial;
import org.varwright.plot.Phasor;
import org.varwright.plot.PhasorDiagram;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** What the sensors read before and after the lifts of a fit. */
public final class FitPhasors {
    private FitPhasors() {}

    /** Whether there is anything to draw. */
    public static boolean has(FitResult result) {
        return !result.after().sensors().isEmpty();
    }

    /**
     * The picture.
     *
     * @throws VarwrightException {@code NOTHING_TO_DRAW} where the bank has no sensor
     */
    public static PhasorDiagram of(FitResult result) {
        if (!has(result)) {
            throw new VarwrightException(
                    Message.NOTHING_TO_DRAW,
                    Place.NOWHERE,
                    "the bank file has no unbalance sensor under \"protection\"");
        }
        Map<String, Dial> dials = new LinkedHashMap<>();
        Balance before = result.before();
        for (Balance.SensorReading after : result.after().sensors()) {
            String key = after.stage() + " " + after.senses().code();
            Dial start = dials.containsKey(key)
                    ? dials.get(key)
                    : Phasors.settings(
                            Dial.of(key, after.senses().dimension()), result.bank(), after.stage(), after.senses());
            String place = after.name().substring(Math.min(after.name().length(), key.length()));
            Optional<Balance.SensorReading> old = before.sensors().stream()
                    .filter(s -> s.name().equals(after.name()))
                    .findFirst();
            double scale = Math.max(
                    after.primary().magnitude(),
                    old.map(o -> o.primary().magnitude()).orElse(0.0));
            double larger = Math.max(scale, after.alarmPrimary().orElse(0.0));
            Dial dial = old.isPresent()
                    ? start.with(Phasor.of(
                                    ("before" + place), Phasors.clean(old.get().primary(), larger))
                            .with(Dash.DASHED))
                    : start;
            dials.put(key, dial.with(Phasor.of("after" + place, Phasors.clean(after.primary(), larger))));
        }
        return PhasorDiagram.of(result.bank().name() + ": unbalance before and after", List.copyOf(dials.values()))
                .caption(
                        "At nominal voltage, primary values, by the capacitances read. Dashed: as found. Full: after the lifts. "
                                + Phasors.AGAINST);
    }
}
