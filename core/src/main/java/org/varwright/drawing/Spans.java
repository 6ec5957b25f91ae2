package org.varwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * From which column to which the bar of each conductor runs, on which track of its layer, and which ties run straight from bar to bar.
 *
 * @param spans conductor to its span
 * @param straight indices of columns with a tie that joins the ends of two bars
 */
record Spans(Map<String, Span> spans, Set<Integer> straight) {
    /**
     * @param first column where the bar begins; half a column less where it begins left of the head
     * @param last column where it ends
     * @param track 0 at the top
     */
    record Span(double first, double last, int track) {
        boolean overlaps(Span other) {
            return first <= other.last && other.first <= last;
        }
    }

    /** Share of a column by which a straight tie's bars keep apart, and by which the drop of another tie stands left of a head. */
    private static final double ASIDE = 0.25;

    static Spans of(Feeding feeding, Columns columns) {
        Set<Integer> straight = new LinkedHashSet<>();
        for (int c = 0; c < columns.all().size(); c++) {
            if (columns.all().get(c).hangs() instanceof Column.Hangs.Tie) {
                straight.add(c);
            }
        }
        while (true) {
            Spans spans = new Spans(tracked(feeding, columns, straight), Set.copyOf(straight));
            Set<Integer> bent = spans.bent(feeding, columns);
            if (bent.isEmpty()) {
                return spans;
            }
            straight.removeAll(bent);
        }
    }

    Span of(String conductor) {
        Span span = spans.get(conductor);
        return span == null ? new Span(0.0, 0.0, 0) : span;
    }

    boolean isStraight(int column) {
        return straight.contains(column);
    }

    int tracks(Feeding feeding, int layer) {
        return 1
                + spans.entrySet().stream()
                        .filter(e -> feeding.layer(e.getKey()) == layer)
                        .mapToInt(e -> e.getValue().track())
                        .max()
                        .orElse(0);
    }

    /** Straight ties that cannot be so: the bars are not neighbours on one track. */
    private Set<Integer> bent(Feeding feeding, Columns columns) {
        Set<Integer> bent = new LinkedHashSet<>();
        for (int c : straight) {
            Column column = columns.all().get(c);
            if (column.hangs() instanceof Column.Hangs.Tie tie) {
                Span left = of(column.conductor());
                Span right = of(tie.to());
                boolean between = spans.entrySet().stream()
                        .filter(e -> feeding.layer(e.getKey()) == feeding.layer(tie.to()))
                        .filter(e -> !e.getKey().equals(tie.to()) && !e.getKey().equals(column.conductor()))
                        .anyMatch(e -> e.getValue().first() < right.first()
                                && e.getValue().last() > left.last());
                if (left.track() != right.track() || left.last() > c || right.first() < c || between) {
                    bent.add(c);
                }
            }
        }
        return bent;
    }

    private static Map<String, Span> tracked(Feeding feeding, Columns columns, Set<Integer> straight) {
        Map<String, Span> bare = new LinkedHashMap<>();
        for (String conductor : feeding.layers().keySet()) {
            bare.put(conductor, bare(conductor, feeding, columns, straight));
        }
        Map<String, Span> tracked = new LinkedHashMap<>();
        for (int layer = 0; layer <= feeding.deepest(); layer++) {
            int wanted = layer;
            List<String> left = bare.keySet().stream()
                    .filter(c -> feeding.layer(c) == wanted)
                    .sorted((a, b) -> Double.compare(
                            spanOf(bare, a).first(), spanOf(bare, b).first()))
                    .toList();
            List<Span> set = new ArrayList<>();
            for (String conductor : left) {
                Span span = spanOf(bare, conductor);
                int track = 0;
                while (collides(set, span, track)) {
                    track++;
                }
                Span placed = new Span(span.first(), span.last(), track);
                set.add(placed);
                tracked.put(conductor, placed);
            }
        }
        return tracked;
    }

    private static boolean collides(List<Span> set, Span span, int track) {
        return set.stream().anyMatch(s -> s.track() == track && s.overlaps(span));
    }

    private static Span spanOf(Map<String, Span> spans, String conductor) {
        Span span = spans.get(conductor);
        return span == null ? new Span(0.0, 0.0, 0) : span;
    }

    private static Span bare(String conductor, Feeding feeding, Columns columns, Set<Integer> straight) {
        double first = columns.head(conductor);
        double last = first;
        for (String child : feeding.children(conductor)) {
            first = Math.min(first, columns.head(child));
            last = Math.max(last, columns.head(child));
        }
        for (int c = 0; c < columns.all().size(); c++) {
            Column column = columns.all().get(c);
            boolean own = column.conductor().equals(conductor);
            double at = c;
            boolean reached = own;
            switch (column.hangs()) {
                case Column.Hangs.Bond bond -> reached |= bond.to().equals(conductor);
                case Column.Hangs.Tie tie -> {
                    if (straight.contains(c)) {
                        reached |= tie.to().equals(conductor);
                        at = own ? c - ASIDE : c + ASIDE;
                    } else if (tie.to().equals(conductor)) {
                        reached = true;
                        at = columns.head(conductor) - ASIDE;
                    }
                }
                case Column.Hangs.Legs legs -> {}
                case Column.Hangs.ToGround ground -> {}
                case Column.Hangs.Source source -> {}
                case Column.Hangs.Visit visit -> {}
                case Column.Hangs.Nothing nothing -> {}
            }
            if (reached) {
                first = Math.min(first, at);
                last = Math.max(last, at);
            }
        }
        return new Span(first, last, 0);
    }
}
