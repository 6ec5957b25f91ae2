package org.varwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.varwright.plot.Axis;
import org.varwright.plot.Chart;
import org.varwright.plot.Marker;
import org.varwright.plot.Panel;
import org.varwright.plot.Shape;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;

/**
 * Works that grow with the same size, in one picture and one table.
 *
 * @param file name of the picture
 * @param title over it
 * @param size what the works grow with
 * @param text what they are, in Markdown
 */
record GrowthChart(String file, String title, String size, String text, List<Growth> works) {
    private static final List<Marker> MARKERS =
            List.of(Marker.DOT, Marker.SQUARE, Marker.TRIANGLE, Marker.DIAMOND, Marker.CROSS, Marker.RING);
    private static final Path FOLDER = Path.of("docs", "performance");

    GrowthChart {
        works = List.copyOf(works);
    }

    /** Writes the picture. */
    void write() throws IOException {
        Panel panel = Panel.of(Axis.log("time", Dimension.TIME));
        for (int i = 0; i < works.size(); i++) {
            panel = panel.with(works.get(i).curve(MARKERS.get(i % MARKERS.size())));
        }
        String svg = Chart.of(title, Axis.log(size, ""), panel)
                .caption("Both axes logarithmic; the number at a curve is its slope over the larger half.")
                .shape(Shape.SQUARE)
                .svg(Width.PAGE);
        Files.createDirectories(FOLDER);
        Files.writeString(FOLDER.resolve(file), svg);
    }

    String markdown() {
        StringBuilder rows = new StringBuilder();
        works.forEach(w -> rows.append(w.row()).append('\n'));
        return "### " + title + "\n\n" + text.strip() + "\n\n![" + title + "](performance/" + file + ")\n\n| work | "
                + size + " | least | most | exponent | expected |\n| --- | --- | --- | --- | --: | --- |\n" + rows;
    }
}
