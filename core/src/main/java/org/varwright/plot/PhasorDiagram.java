package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;

/**
 * One or more dials of phasors, each with its own scale. Zero degrees point to the right, angles grow counter-clockwise.
 */
public record PhasorDiagram(String title, List<Dial> dials, String caption) {
    public PhasorDiagram {
        dials = List.copyOf(dials);
        if (dials.isEmpty()) {
            throw new IllegalArgumentException(title + ": a phasor diagram has at least one dial");
        }
    }

    public static PhasorDiagram of(String title, List<Dial> dials) {
        return new PhasorDiagram(title, dials, "");
    }

    public PhasorDiagram caption(String text) {
        return new PhasorDiagram(title, dials, text);
    }

    /** The text of an SVG file. */
    public String svg(Width width) {
        return PhasorPainter.draw(this, width).svg();
    }

    /** For those who can't see it. */
    String inWords() {
        List<String> sentences = new ArrayList<>();
        for (Dial dial : dials) {
            sentences.add(dial.title() + ".");
            dial.phasors().forEach(p -> sentences.add(p.label() + ": " + DialPainter.polar(p, dial) + "."));
            dial.circles().stream()
                    .filter(c -> !c.label().isBlank())
                    .forEach(c -> sentences.add("Circle: " + c.label() + "."));
        }
        return String.join(" ", sentences);
    }
}
