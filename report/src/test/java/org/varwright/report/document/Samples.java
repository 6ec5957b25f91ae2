package org.varwright.report.document;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.varwright.report.document.Block.Facts.Fact;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;

/** Documents that show every kind of block. */
public final class Samples {
    public static final String HOSTILE = "<script>alert('x')</script> & \"quoted\" <b>bold</b> ]]> &lt;";
    public static final String ALL_GLYPHS =
            "\u00b5 \u03a9 \u2220 \u2264 \u2265 \u221a \u00b0 \u2013 \u2014 \u2026 \u2610 \u00b1 \u00d7 \u00b7 \u2192 \u00bd \u00b2 \u03c0 \u03b4 \u2212 \u0394 \u00f1 \u00e1 \u00fc \u00df \u00bf";

    private static final String SVG = """
            <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 400 120" width="400" height="120" onload="steal()">
              <title>drawing</title>
              <g transform="translate(200 20)" onclick="steal()"><circle cx="0" cy="0" r="6" fill="none" stroke="#000000"/></g>
              <path d="M300 60 L340 60 A10 10 0 0 1 340 80 L300 80 Z" fill="none" stroke="#000000" stroke-dasharray="4 2"/>
              <line x1="10" y1="20" x2="390" y2="20" stroke="#000000" stroke-width="2"/>
              <text x="20" y="60" font-family="Nowhere Sans" font-size="14" font-weight="bold" textLength="180">conductor &lt;bus&gt; 4.2 M\u03a9</text>
            </svg>
            """;

    private Samples() {}

    /** A document with every kind of block and {@code steps} steps. */
    public static ReportDocument everything(int steps) {
        List<StepLine> lines = new ArrayList<>();
        for (int i = 1; i <= steps; i++) {
            lines.add(new StepLine(
                    i,
                    i % 5 == 0 ? "hold" : "move",
                    "Open the disconnector 89-" + i + " and look at the blades of all three phases before you go on.",
                    i % 5 == 0 ? List.of("Wait 5 min. When the wait is over: now prove dead.") : List.of(),
                    i % 4 == 0
                            ? List.of(
                                    new StepLine.Items("", List.of("phase A", "phase B", "phase C", "neutral")),
                                    new StepLine.Items(
                                            "each: to case", List.of("u1", "u2", "u3", "u4", "u5", "u6", "u7")))
                            : List.of(),
                    List.of(
                            new Fact("Where", "incoming compartment, panel " + i),
                            new Fact("Key", "K" + i + " comes free; take it with you"),
                            new Fact("See", "a gap in each phase"),
                            new Fact("Why", "the lock of the next door needs it")),
                    List.of("live: line", "charged: stage 1", "grounded: none"),
                    i % 3 == 0 ? List.of("done by, time", "second person") : List.of("done by, time")));
        }
        List<Row> rows = new ArrayList<>();
        for (int i = 1; i <= 60; i++) {
            rows.add(new Row(List.of(
                    new Cell.Text("stage 1/A/u" + i),
                    new Cell.Text(i + ".1 \u00b5F"),
                    new Cell.Explained("replace", List.of("one of four sections is shorted")),
                    new Cell.ToFillIn())));
        }
        return new ReportDocument(
                "Order of work and report",
                "Bank " + HOSTILE,
                "Bank " + HOSTILE,
                "planning information, never a permission to touch",
                LocalDate.of(2026, 5, 4),
                "en",
                List.of(
                        Section.of(
                                "Bank",
                                new Block.Facts(List.of(
                                        new Fact("Name", HOSTILE),
                                        new Fact("Glyphs", ALL_GLYPHS),
                                        new Fact("Elsewhere", "\u4e2d and \u0007"),
                                        new Fact("Long", "X".repeat(300)))),
                                new Block.Notice(
                                        Block.Notice.Weight.CAUTION, "Caution", List.of("Unknown counts as live.")),
                                new Block.Bullets(List.of("one", "two"))),
                        Section.of("Drawing", new Block.Figure(SVG, "the bank from line to neutral")),
                        new Section(
                                "Order of work",
                                Section.PageStart.NEW_PAGE,
                                List.of(new Block.Paragraph("Do the steps in this order."), new Block.Steps(lines))),
                        Section.of(
                                "Readings",
                                new Block.Table(
                                        "",
                                        List.of(
                                                Column.left("Position", 25),
                                                Column.right("Capacitance", 15),
                                                Column.left("Verdict", 45),
                                                Column.left("Measured", 15)),
                                        rows)),
                        Section.of(
                                "Counts",
                                new Block.Ticks(List.of("tools counted out", "grounds counted off")),
                                new Block.Signatures(List.of("in charge", "second person")))));
    }
}
