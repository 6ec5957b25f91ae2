package org.varwright.drawing;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;

/**
 * The one-line diagram of a bank in a state, as one sheet of SVG 1.1.
 *
 * <p>The same bank and state always give the same text. Nothing in it refers to anything outside it, and nothing in it runs.
 */
public final class OneLineDrawing {
    private static final String NOTE =
            "Drawn from the bank's file and the state named above. It proves nothing: prove dead before you touch.";

    private static final double MARGIN = 22.0;
    private static final double GAP = 10.0;
    private static final double PANEL_WIDTH = 196.0;
    private static final double LARGEST = 1.35;
    private static final double SMALLEST = 0.05;
    /** A diagram smaller than this gets a smaller panel beside it. */
    private static final double SMALL_PANEL_BELOW = 0.85;

    private static final double SMALL_PANEL = 0.8;
    /** Widths of text that are tried, from comfortable to tight. */
    private static final double[] TEXT_WIDTHS = {120.0, 104.0, 92.0, 82.0, 74.0, 67.0, 61.0, 56.0, 51.0, 46.0};

    private OneLineDrawing() {}

    /** The drawing as the text of an SVG file. */
    public static String draw(Bank bank, DrawingState state, DrawingOptions options) {
        return sheet(bank, state, options)
                .svg(
                        bank.name() + ": one-line diagram, " + state.name(),
                        "One-line diagram of " + bank.name() + " in the state " + state.name()
                                + ". Line styles and words say what is live, charged and grounded.");
    }

    /**
     * How the parts share the sheet.
     *
     * @param beside whether the panel stands to the right of the diagram; else below it
     * @param panelScale of the panel
     * @param scale of the diagram
     */
    private record Sheet(Diagram diagram, Panel panel, boolean beside, double panelScale, double scale) {
        double panelWidth() {
            return panel.width() * panelScale;
        }

        double panelHeight() {
            return panel.height() * panelScale;
        }
    }

    static Canvas sheet(Bank bank, DrawingState state, DrawingOptions options) {
        Canvas canvas = new Canvas(options);
        double width = options.page().widthPx() - 2.0 * MARGIN;
        TitleBlock title = new TitleBlock(bank, "one-line diagram", "state drawn", state.name(), NOTE, width);
        Legend legend = new Legend(bank, width);
        double titleTop = options.page().heightPx() - MARGIN - title.height();
        double legendTop = titleTop - GAP - legend.height();
        double height = legendTop - GAP - MARGIN;
        Sheet sheet = best(bank, state, width, height);
        double diagramWidth = sheet.diagram().width() * sheet.scale();
        double diagramHeight = sheet.diagram().height() * sheet.scale();
        double roomWide = sheet.beside() ? width - sheet.panelWidth() : width;
        double roomHigh = sheet.beside() ? height : height - sheet.panelHeight() - GAP;
        canvas.placed(
                MARGIN + Math.max(0.0, (roomWide - diagramWidth) / 2.0),
                MARGIN + Math.max(0.0, (roomHigh - diagramHeight) / 2.0),
                sheet.scale(),
                () -> sheet.diagram().draw(canvas));
        canvas.placed(
                sheet.beside() ? MARGIN + width - sheet.panelWidth() + Panel.GAP * sheet.panelScale() : MARGIN,
                sheet.beside() ? MARGIN : legendTop - GAP - sheet.panelHeight(),
                sheet.panelScale(),
                () -> sheet.panel().draw(canvas, 0.0, 0.0));
        canvas.line(MARGIN, legendTop, MARGIN + width, legendTop, Ink.RULE);
        legend.draw(canvas, MARGIN, legendTop);
        title.draw(canvas, MARGIN, titleTop);
        return canvas;
    }

    /** Of all widths of text, and the panel beside or below, what lets the diagram be largest; the wider text where equal. */
    private static Sheet best(Bank bank, DrawingState state, double width, double height) {
        List<Piece> pieces = Piece.of(bank, state);
        List<Diagram> diagrams = new ArrayList<>();
        for (double textWidth : TEXT_WIDTHS) {
            diagrams.add(new Diagram(bank, state, textWidth));
        }
        Sheet best = best(diagrams, pieces, 1.0, width, height);
        if (best.scale() < SMALL_PANEL_BELOW) {
            Sheet tight = best(diagrams, pieces, SMALL_PANEL, width, height);
            return tight.scale() > best.scale() ? tight : best;
        }
        return best;
    }

    private static Sheet best(
            List<Diagram> diagrams, List<Piece> pieces, double panelScale, double width, double height) {
        double wide = width / panelScale;
        Panel beside = Panel.set(pieces, besides(pieces, height / panelScale), PANEL_WIDTH);
        int across = (int) Math.floor((wide + Panel.GAP) / (PANEL_WIDTH + Panel.GAP));
        Panel below = Panel.set(pieces, across, (wide + Panel.GAP) / across - Panel.GAP);
        Sheet best = fitted(diagrams.getFirst(), below, false, panelScale, width, height);
        for (Diagram diagram : diagrams) {
            for (Sheet sheet : List.of(
                    fitted(diagram, beside, true, panelScale, width, height),
                    fitted(diagram, below, false, panelScale, width, height))) {
                if (sheet.scale() > best.scale() + 1e-6) {
                    best = sheet;
                }
            }
        }
        return best;
    }

    /** How many columns of the panel it takes beside the diagram. */
    private static int besides(List<Piece> pieces, double height) {
        int count = 1;
        while (count < 4 && Panel.set(pieces, count, PANEL_WIDTH).height() > height) {
            count++;
        }
        return count;
    }

    private static Sheet fitted(
            Diagram diagram, Panel panel, boolean beside, double panelScale, double width, double height) {
        double wide = beside ? width - panel.width() * panelScale : width;
        double high = beside ? height : height - panel.height() * panelScale - GAP;
        double scale = Math.min(LARGEST, Math.min(wide / diagram.width(), high / diagram.height()));
        if (beside && panel.height() * panelScale > height) {
            scale = 0.0;
        }
        return new Sheet(diagram, panel, beside, panelScale, Math.max(scale, SMALLEST));
    }
}
