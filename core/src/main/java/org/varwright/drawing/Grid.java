package org.varwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.EnergySource;

/**
 * Where rows lie, in px before scaling, for one width of text; {@link Across} says where columns do.
 *
 * <pre>
 * sources
 * per layer:  ties that run over others │ conductors, one track under another │ feet of outlines │ what hangs on them │ feet of outlines
 * </pre>
 */
final class Grid {
    static final double UNDER_BAR = 12.0;
    static final double OVER_TIE = 15.0;
    static final double DROP = 10.0;
    private static final double CHANNEL = 9.0;
    static final double FOOT_GAP = 6.0;
    private static final double WIRE_GAP = 6.0;
    static final double OUTLINE_GAP = 3.0;
    /** Room under an outline for a door that stands open. */
    static final double DOOR_GAP = 13.0;

    private final Feeding feeding;
    private final Columns columns;
    private final Spans spans;
    private final List<Territory> territories;
    private final Wording wording;

    private final Across across;
    private double height;
    private double sourceBottom;
    private final double[] tieTop;
    private final double[] conductorTop;
    private final double[] conductorBottom;
    private final double[] hangTop;
    private final double[] hangBottom;
    private final double[] layerBottom;
    private final Map<Territory, Double> footTops = new LinkedHashMap<>();
    private final Map<Integer, List<Double>> tracks = new LinkedHashMap<>();
    private final Map<Integer, Double> channels = new LinkedHashMap<>();

    Grid(Feeding feeding, Columns columns, Spans spans, List<Territory> territories, Wording wording, Across across) {
        this.across = across;
        this.feeding = feeding;
        this.columns = columns;
        this.spans = spans;
        this.territories = territories;
        this.wording = wording;
        int layers = feeding.deepest() + 1;
        tieTop = new double[layers];
        conductorTop = new double[layers];
        conductorBottom = new double[layers];
        hangTop = new double[layers];
        hangBottom = new double[layers];
        layerBottom = new double[layers];
        layRows();
    }

    private void layRows() {
        double y = 0.0;
        double sourceHeight = 0.0;
        for (String root : feeding.roots()) {
            for (EnergySource source : across.sources(root)) {
                sourceHeight =
                        Math.max(sourceHeight, wording.source(source).height(across.textWidth(columns.head(root))));
            }
        }
        for (int c = 0; c < columns.all().size(); c++) {
            if (columns.all().get(c).hangs() instanceof Column.Hangs.Source) {
                sourceHeight = Math.max(sourceHeight, Part.height(across.parts(c), across.textWidth(c)));
            }
        }
        y += sourceHeight;
        sourceBottom = y;
        for (int layer = 0; layer <= feeding.deepest(); layer++) {
            tieTop[layer] = y;
            y += tieHeight(layer, y);
            conductorTop[layer] = y;
            y = layTracks(layer, y);
            conductorBottom[layer] = y;
            y += footHeight(2 * layer);
            hangTop[layer] = y;
            y += hangHeight(layer);
            hangBottom[layer] = y;
            y += footHeight(2 * layer + 1);
            layerBottom[layer] = y;
        }
        height = y;
        for (int c = 0; c < columns.all().size(); c++) {
            height = Math.max(height, hangBottom(c));
        }
        layFeet();
    }

    /** Feet of outlines with nothing below them stand right under what is inside, those that end in the same row at one height. */
    private void layFeet() {
        Map<Integer, Double> level = new LinkedHashMap<>();
        for (Territory territory : territories) {
            if (falls(territory)) {
                level.merge(territory.lastRow(), insideBottom(territory), Math::max);
            }
        }
        for (Territory territory : territories) {
            double top =
                    falls(territory) ? level.getOrDefault(territory.lastRow(), 0.0) : rowBottom(territory.lastRow());
            footTops.put(territory, top);
            height = Math.max(height, top + footSpace(territory));
        }
    }

    private double insideBottom(Territory territory) {
        int layer = territory.lastRow() / 2;
        double bottom = territory.lastRow() % 2 == 0 ? conductorBottom[layer] : hangTop[layer];
        for (int c = territory.firstColumn(); c <= territory.lastColumn(); c++) {
            int row = 2 * feeding.layer(columns.all().get(c).conductor()) + 1;
            if (territory.firstRow() <= row && row <= territory.lastRow()) {
                bottom = Math.max(bottom, hangBottom(c));
            }
        }
        if (territory.lastRow() % 2 == 1) {
            for (Map.Entry<String, Feeding.Feeder> entry : feeding.feeders().entrySet()) {
                int head = columns.head(entry.getKey());
                if (feeding.layer(entry.getValue().from()) == layer
                        && head >= territory.firstColumn()
                        && head <= territory.lastColumn()) {
                    bottom = Math.max(
                            bottom,
                            hangTop[layer]
                                    + wording.device(entry.getValue().device()).height(across.textWidth(head)));
                }
            }
        }
        return bottom;
    }

    /** Bottom of what hangs in a column on its own conductor. */
    private double hangBottom(int c) {
        Column column = columns.all().get(c);
        boolean above = column.hangs() instanceof Column.Hangs.Source || column.hangs() instanceof Column.Hangs.Tie;
        return above
                ? 0.0
                : hangTop[feeding.layer(column.conductor())] + Part.height(across.parts(c), across.textWidth(c));
    }

    private boolean falls(Territory territory) {
        for (int c = territory.firstColumn(); c <= territory.lastColumn(); c++) {
            if (!isClearBelow(c, territory.lastRow() / 2)) {
                return false;
            }
        }
        return true;
    }

    /** Whether what hangs in the column may reach below its row: nothing is under it, nor the foot of an outline around it. */
    private boolean hangsFree(int c, int layer) {
        boolean held = territories.stream()
                .anyMatch(t -> t.firstColumn() <= c && c <= t.lastColumn() && t.lastRow() / 2 >= layer && !falls(t));
        return !held && isClearBelow(c, layer);
    }

    /** Whether no conductor of a deeper layer stands in the column or runs across it. */
    private boolean isClearBelow(int c, int layer) {
        for (String conductor : feeding.layers().keySet()) {
            Spans.Span span = spans.of(conductor);
            if (feeding.layer(conductor) > layer && span.first() <= c && c <= span.last()) {
                return false;
            }
        }
        for (int t = 0; t < columns.all().size(); t++) {
            Column column = columns.all().get(t);
            if (column.hangs() instanceof Column.Hangs.Tie tie && feeding.layer(column.conductor()) > layer) {
                int to = columns.head(tie.to());
                if (Math.min(t, to - 1) <= c && c <= Math.max(t, to)) {
                    return false;
                }
            }
        }
        return true;
    }

    private double tieHeight(int layer, double top) {
        double most = 0.0;
        double channel = top + CHANNEL;
        for (int c = 0; c < columns.all().size(); c++) {
            Column column = columns.all().get(c);
            if (column.hangs() instanceof Column.Hangs.Tie
                    && feeding.layer(column.conductor()) == layer
                    && !spans.isStraight(c)) {
                channels.put(c, channel);
                channel += CHANNEL;
                most = Math.max(most, Part.height(across.parts(c), across.textWidth(c)));
            }
        }
        return most == 0.0 ? 0.0 : channel - top + most + CHANNEL;
    }

    private double layTracks(int layer, double top) {
        List<Double> bars = new ArrayList<>();
        double y = top;
        for (int track = 0; track < spans.tracks(feeding, layer); track++) {
            double label = 0.0;
            double under = 0.0;
            for (String conductor : feeding.layers().keySet()) {
                if (feeding.layer(conductor) == layer && spans.of(conductor).track() == track) {
                    label = Math.max(
                            label,
                            TextBlock.wrapped(wording.conductor(conductor), across.textWidth(columns.head(conductor)))
                                    .height());
                }
            }
            for (int c = 0; c < columns.all().size(); c++) {
                Column column = columns.all().get(c);
                if (spans.isStraight(c)
                        && feeding.layer(column.conductor()) == layer
                        && spans.of(column.conductor()).track() == track) {
                    label = Math.max(
                            label,
                            TextBlock.wrapped(across.parts(c).getFirst().rows(), across.textWidth(c))
                                            .height()
                                    + OVER_TIE);
                    under = 2.0;
                }
            }
            y += label + 8.0;
            bars.add(y);
            y += under + (track + 1 < spans.tracks(feeding, layer) ? 4.0 : 0.0);
        }
        tracks.put(layer, bars);
        return y + UNDER_BAR;
    }

    private double hangHeight(int layer) {
        double most = 0.0;
        for (int c = 0; c < columns.all().size(); c++) {
            Column column = columns.all().get(c);
            boolean above = column.hangs() instanceof Column.Hangs.Source || column.hangs() instanceof Column.Hangs.Tie;
            if (feeding.layer(column.conductor()) == layer && !above && !hangsFree(c, layer)) {
                most = Math.max(most, Part.height(across.parts(c), across.textWidth(c)));
            }
        }
        for (Map.Entry<String, Feeding.Feeder> entry : feeding.feeders().entrySet()) {
            if (feeding.layer(entry.getValue().from()) == layer) {
                most = Math.max(
                        most,
                        wording.device(entry.getValue().device())
                                .height(across.textWidth(columns.head(entry.getKey()))));
            }
        }
        return most;
    }

    private double footHeight(int row) {
        return territories.stream()
                .filter(t -> t.lastRow() == row && !falls(t))
                .mapToDouble(this::footSpace)
                .max()
                .orElse(0.0);
    }

    private double footSpace(Territory territory) {
        return foot(territory).height() + 2.0 * FOOT_GAP + DOOR_GAP;
    }

    double footTop(Territory territory) {
        return footTops.getOrDefault(territory, 0.0) + FOOT_GAP;
    }

    /** Where the outline ends; below it there is room for a door that stands open. */
    double outlineBottom(Territory territory) {
        return falls(territory)
                ? level(territory) + footSpaceOf(territory.lastRow()) - DOOR_GAP
                : feetBottom(territory.lastRow()) - DOOR_GAP;
    }

    private double level(Territory territory) {
        return footTops.getOrDefault(territory, 0.0);
    }

    private double footSpaceOf(int row) {
        return territories.stream()
                .filter(t -> t.lastRow() == row && falls(t))
                .mapToDouble(this::footSpace)
                .max()
                .orElse(0.0);
    }

    /** The words at the foot of an outline, beside any wire that goes on below it. */
    TextBlock foot(Territory territory) {
        int first = territory.firstColumn();
        double room = across.textWidth(first);
        if (first != territory.lastColumn()) {
            double to = falls(territory) ? footRight(territory) : across.wire(first + 1) - WIRE_GAP;
            room = Math.max(room, to - footLeft(territory));
        }
        return TextBlock.wrapped(across.footRows(territory), room);
    }

    double footLeft(Territory territory) {
        return across.left(territory.firstColumn()) + Across.LEAD + Across.TEXT_GAP - 4.0;
    }

    private double footRight(Territory territory) {
        return across.right(territory.lastColumn()) - Across.COLUMN_GAP;
    }

    double bar(String conductor) {
        List<Double> bars = tracks.getOrDefault(feeding.layer(conductor), List.of());
        return bars.get(spans.of(conductor).track());
    }

    double channel(int column) {
        return channels.getOrDefault(column, 0.0);
    }

    double sourceBottom() {
        return sourceBottom;
    }

    double conductorTop(int layer) {
        return conductorTop[layer];
    }

    double hangTop(int layer) {
        return hangTop[layer];
    }

    /** Top of a row's cell in a column: above the channel where the column has a tie that runs over others. */
    double rowTop(int row, int column) {
        int layer = row / 2;
        if (row % 2 == 1) {
            return hangTop[layer];
        }
        return channels.containsKey(column) ? tieTop[layer] : conductorTop[layer];
    }

    /** Bottom of what is drawn in a row, above the feet. */
    double rowBottom(int row) {
        return row % 2 == 1 ? hangBottom[row / 2] : conductorBottom[row / 2];
    }

    /** Bottom of the feet under a row. */
    private double feetBottom(int row) {
        return row % 2 == 1 ? layerBottom[row / 2] : hangTop[row / 2];
    }

    double height() {
        return height;
    }
}
