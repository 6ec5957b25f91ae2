package org.varwright.resonance;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.varwright.bank.Bank;
import org.varwright.plot.Axis;
import org.varwright.plot.Chart;
import org.varwright.plot.Curve;
import org.varwright.plot.Dash;
import org.varwright.plot.Limit;
import org.varwright.plot.Panel;
import org.varwright.plot.Point;
import org.varwright.quantity.Dimension;

/** The impedance scan as a picture: what a harmonic current injected at the bus sees, by order, with some combinations on. */
public final class ScanChart {
    private static final double LAST = 20.0;
    private static final double STEP = 0.05;
    /** Around a resonance points stand closer, so that its peak is drawn as high as it is. */
    private static final int NEAR = 24;

    private static final int MOST_CURVES = 3;
    /** Ends of the sheet, over the reactance of the source. */
    private static final double LEAST = 0.1;

    private static final double MOST = 2000.0;
    private static final double ALIKE = 0.03;

    private ScanChart() {}

    /**
     * The chart of the combinations looked at: the whole bank and the worst ones, at most three, beside the bus without its bank.
     *
     * @param resonance with a source
     */
    public static Chart of(Resonance resonance) {
        Bank bank = resonance.bank();
        SourceImpedance source = resonance.source().orElseThrow();
        // Where nothing damps a resonance its impedance has no end: the sheet has, and the curve leaves it.
        Panel panel = Panel.of(Axis.log("impedance seen from the bus, one phase", Dimension.RESISTANCE)
                .from(LEAST * source.reactanceOhms())
                .to(MOST * source.reactanceOhms()));
        BusModel alone = bus(bank, source, List.of());
        panel = panel.with(
                Curve.of("no " + bank.words().stage() + " on", points(alone)).with(Dash.FINE));
        List<String> peaks = new ArrayList<>();
        for (CombinationResult c : drawn(resonance)) {
            panel = panel.with(Curve.of(
                    c.combination().name(),
                    points(bus(bank, source, c.combination().stages()))));
            for (Peak peak : c.peaks()) {
                if (peak.order() <= LAST) {
                    peaks.add(c.combination().name() + " at order " + Dimension.digits(peak.order(), 3));
                }
            }
        }
        TreeSet<Integer> orders = new TreeSet<>();
        resonance.combinations().forEach(c -> c.amplifications().forEach(a -> orders.add(a.order())));
        for (int order : orders) {
            if (order < LAST) {
                panel = panel.with(Limit.upright(order, String.valueOf(order)));
            }
        }
        return Chart.of(
                        "Impedance scan, " + bank.name(),
                        Axis.linear(
                                        "order, multiple of "
                                                + Dimension.FREQUENCY.format(
                                                        bank.system().frequencyHertz()),
                                        "")
                                .from(1.0)
                                .to(LAST),
                        panel)
                .caption("No load; source resistance as at the fundamental: the highest peaks. Resonance: "
                        + (peaks.isEmpty() ? "none up to order 20" : String.join("; ", peaks)) + ".");
    }

    private static List<CombinationResult> drawn(Resonance resonance) {
        List<CombinationResult> candidates = new ArrayList<>();
        if (!resonance.combinations().isEmpty()) {
            candidates.add(resonance.combinations().getLast());
        }
        candidates.addAll(resonance.avoid());
        candidates.addAll(resonance.clear());
        List<CombinationResult> drawn = new ArrayList<>();
        for (CombinationResult c : candidates) {
            if (drawn.size() < MOST_CURVES && drawn.stream().noneMatch(d -> looksLike(d, c))) {
                drawn.add(c);
            }
        }
        return drawn;
    }

    /** Curves that lie on each other tell nothing more. */
    private static boolean looksLike(CombinationResult a, CombinationResult b) {
        return Math.abs(a.simpleOrder() / b.simpleOrder() - 1.0) < ALIKE
                && a.tunedOrders().size() == b.tunedOrders().size();
    }

    private static BusModel bus(Bank bank, SourceImpedance source, List<StageModel> stages) {
        return new BusModel(
                source,
                LoadCase.of(bank).getFirst(),
                stages,
                bank.system().angularFrequency(),
                SourceImpedance.ResistanceLaw.CONSTANT);
    }

    private static List<Point> points(BusModel bus) {
        TreeSet<Double> orders = new TreeSet<>();
        for (int i = 0; 1.0 + i * STEP <= LAST; i++) {
            orders.add(1.0 + i * STEP);
        }
        List<Double> sharp = new ArrayList<>(bus.parallelOrders());
        sharp.addAll(bus.seriesOrders(LAST));
        for (double h : sharp) {
            for (int i = -NEAR; i <= NEAR; i++) {
                double near = h * (1.0 + 0.001 * i);
                if (near >= 1.0 && near <= LAST) {
                    orders.add(near);
                }
            }
        }
        // A point where nothing damps has no place on the sheet: the axis leaves it out.
        return orders.stream().map(h -> new Point(h, bus.ohms(h))).toList();
    }
}
