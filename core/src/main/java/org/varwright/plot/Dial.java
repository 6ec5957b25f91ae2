package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;
import org.varwright.quantity.Dimension;

/**
 * Phasors that share an origin and a scale.
 *
 * @param title what they are
 * @param dimension of all of them
 */
public record Dial(String title, Dimension dimension, List<Phasor> phasors, List<Circle> circles) {
    public Dial {
        phasors = List.copyOf(phasors);
        circles = List.copyOf(circles);
    }

    public static Dial of(String title, Dimension dimension) {
        return new Dial(title, dimension, List.of(), List.of());
    }

    public Dial with(Phasor phasor) {
        List<Phasor> all = new ArrayList<>(phasors);
        all.add(phasor);
        return new Dial(title, dimension, all, circles);
    }

    public Dial with(Circle circle) {
        List<Circle> all = new ArrayList<>(circles);
        all.add(circle);
        return new Dial(title, dimension, phasors, all);
    }
}
