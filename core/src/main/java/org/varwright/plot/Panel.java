package org.varwright.plot;

import java.util.ArrayList;
import java.util.List;

/** One y axis and what is drawn against it. */
public record Panel(
        Axis y, List<Curve> curves, List<Bars> bars, List<Band> bands, List<Limit> limits, List<Callout> callouts) {
    public Panel {
        bars = List.copyOf(bars);
        curves = List.copyOf(curves);
        bands = List.copyOf(bands);
        limits = List.copyOf(limits);
        callouts = List.copyOf(callouts);
    }

    public static Panel of(Axis y) {
        return new Panel(y, List.of(), List.of(), List.of(), List.of(), List.of());
    }

    public Panel with(Curve curve) {
        return new Panel(y, and(curves, curve), bars, bands, limits, callouts);
    }

    public Panel with(Bars more) {
        return new Panel(y, curves, and(bars, more), bands, limits, callouts);
    }

    public Panel with(Band band) {
        return new Panel(y, curves, bars, and(bands, band), limits, callouts);
    }

    public Panel with(Limit limit) {
        return new Panel(y, curves, bars, bands, and(limits, limit), callouts);
    }

    public Panel with(Callout callout) {
        return new Panel(y, curves, bars, bands, limits, and(callouts, callout));
    }

    private static <T> List<T> and(List<T> list, T more) {
        List<T> all = new ArrayList<>(list);
        all.add(more);
        return all;
    }
}
