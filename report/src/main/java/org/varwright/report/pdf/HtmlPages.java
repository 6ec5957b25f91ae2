package org.varwright.report.pdf;

import java.util.Base64;
import java.util.List;
import org.varwright.jobsheet.PaperSize;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Facts.Fact;
import org.varwright.report.document.Block.Table.Align;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.ReportDocument;
import org.varwright.report.document.Section;
import org.varwright.report.document.StepLine;
import org.varwright.report.document.StepLine.Items;

/** A report document as XHTML for the page setter. */
final class HtmlPages {
    private static final String BOX = "\u2610";

    /** Items up to so many stand one under the other. */
    private static final int FEW_ITEMS = 5;

    private final Markup out;
    private final Figures figures;
    private final PaperSize paper;
    private int headings;

    private HtmlPages(PaperSize paper, Fonts fonts, Figures figures) {
        this.out = new Markup(fonts::printable);
        this.paper = paper;
        this.figures = figures;
    }

    /**
     * The document as markup.
     *
     * @param figures takes the figures, which the markup names by number
     */
    static String of(ReportDocument document, PaperSize paper, Fonts fonts, Figures figures) {
        return new HtmlPages(paper, fonts, figures).write(document);
    }

    private String write(ReportDocument document) {
        out.open("html", "xmlns", "http://www.w3.org/1999/xhtml", "lang", document.language());
        out.open("head").element("title", document.title() + ": " + document.subject());
        meta("subject", document.subject())
                .meta("description", document.title() + ", " + document.date().toString());
        out.open("style")
                .trusted(pageSize(paper) + Resources.text("report.css"))
                .close();
        bookmarks(document.sections());
        out.close();
        out.open("body");
        out.element("div", document.running(), "class", "running");
        out.element("div", document.date().toString() + " \u00b7 " + document.foot(), "class", "foot");
        out.element("h1", document.title());
        document.sections().forEach(this::section);
        return out.close().close().finish();
    }

    private static String pageSize(PaperSize paper) {
        return switch (paper) {
            case A4 -> "@page { size: 210mm 297mm; }\n";
            case LETTER -> "@page { size: 8.5in 11in; }\n";
        };
    }

    private HtmlPages meta(String name, String content) {
        out.open("meta", "name", name, "content", content).close();
        return this;
    }

    private void bookmarks(List<Section> sections) {
        out.open("bookmarks");
        for (int i = 0; i < sections.size(); i++) {
            out.open("bookmark", "name", sections.get(i).title(), "href", "#s" + (i + 1))
                    .close();
        }
        out.close();
    }

    private void section(Section section) {
        headings++;
        String style = switch (section.page()) {
            case NEW_PAGE -> "section page";
            case RUN_ON -> "section";
        };
        out.open("div", "class", style);
        // A heading is no use without what it stands over, nor is the line before a table without the table.
        int together = Bulk.leading(section.blocks());
        if (together > 0) {
            out.open("div", "class", "keep");
        }
        out.element("h2", headings + "  " + section.title(), "id", "s" + headings);
        for (int i = 0; i < section.blocks().size(); i++) {
            block(section.blocks().get(i));
            if (i == together - 1) {
                out.close();
            }
        }
        out.close();
    }

    private void block(Block block) {
        switch (block) {
            case Block.Subheading(String text) -> out.element("h3", text);
            case Block.Paragraph(String text) -> out.element("p", text);
            case Block.Bullets(List<String> points) -> bullets(points);
            case Block.Notice notice -> notice(notice);
            case Block.Facts(List<Fact> facts) -> facts(facts);
            case Block.Table table -> table(table);
            case Block.Steps(List<StepLine> steps) -> steps(steps);
            case Block.Ticks(List<String> lines) -> ticks(lines);
            case Block.Signatures(List<String> roles) -> signatures(roles);
            case Block.Figure(String svg, String description) -> figure(svg, description);
            case Block.Photograph photograph -> photograph(photograph);
        }
    }

    private void bullets(List<String> points) {
        out.open("ul");
        points.forEach(p -> out.element("li", p));
        out.close();
    }

    private void notice(Block.Notice notice) {
        String word = switch (notice.weight()) {
            case CAUTION -> "caution";
            case NOTE -> "note";
        };
        out.open("div", "class", "notice " + word).element("p", notice.title(), "class", "first");
        notice.points().forEach(p -> out.element("p", p));
        out.close();
    }

    private void facts(List<Fact> facts) {
        out.open("table", "class", "facts").open("tbody");
        for (Fact fact : facts) {
            out.open("tr").element("th", fact.name(), "scope", "row");
            out.element("td", fact.value()).close();
        }
        out.close().close();
    }

    private void table(Block.Table table) {
        out.open("div", "class", Bulk.isSmall(table) ? "keep" : "");
        if (!table.caption().isEmpty()) {
            out.element("p", table.caption(), "class", "caption");
        }
        out.open("table", "class", "grid");
        out.open("thead").open("tr");
        for (Column column : table.columns()) {
            out.element(
                    "th",
                    column.title(),
                    "scope",
                    "col",
                    "class",
                    align(column.align()),
                    "style",
                    "width: " + column.percent() + "%");
        }
        out.close().close().open("tbody");
        for (Block.Table.Row row : table.rows()) {
            out.open("tr");
            for (int i = 0; i < row.cells().size(); i++) {
                cell(row.cells().get(i), align(table.columns().get(i).align()));
            }
            out.close();
        }
        out.close().close().close();
    }

    private static String align(Align align) {
        return switch (align) {
            case LEFT -> "left";
            case RIGHT -> "right";
        };
    }

    private void cell(Cell cell, String align) {
        switch (cell) {
            case Cell.Text(String text) -> out.element("td", text, "class", align);
            case Cell.Strong(String text) -> out.element("td", text, "class", align + " strong");
            case Cell.Explained(String text, List<String> reasons) -> {
                out.open("td", "class", align).element("div", text, "class", "strong");
                reasons.forEach(reason -> out.element("div", reason, "class", "reason"));
                out.close();
            }
            case Cell.ToFillIn() -> out.element("td", "\u00a0", "class", align + " blank");
            case Cell.ToTick() -> out.element("td", BOX, "class", align + " box");
        }
    }

    private void steps(List<StepLine> steps) {
        out.open("table", "class", "steps").open("thead").open("tr");
        heads("", 5, "No.", 5, "Do", 56, "State after", 19, "By, time", 15);
        out.close().close().open("tbody");
        for (StepLine step : steps) {
            out.open("tr");
            out.element("td", BOX, "class", "box");
            out.element("td", Integer.toString(step.number()), "class", "number");
            out.open("td");
            out.open("div", "class", "do");
            out.element("span", step.kind(), "class", "kind").text(" " + step.text());
            out.close();
            step.frames().forEach(frame -> out.element("div", frame, "class", "frame"));
            items(step.items());
            details(step.details());
            out.close();
            out.open("td", "class", "state");
            step.state().forEach(line -> out.element("div", line));
            out.close();
            out.open("td", "class", "sign");
            step.signers().forEach(signer -> out.element("div", signer, "class", "signer"));
            out.close();
            out.close();
        }
        out.close().close();
    }

    /** One after the other on the line: an order of work is long, and every page of it is carried. */
    private void details(List<Fact> details) {
        out.open("div", "class", "detail");
        for (int i = 0; i < details.size(); i++) {
            Fact detail = details.get(i);
            out.text(i == 0 ? "" : " ").element("span", detail.name() + ":", "class", "name");
            String value = detail.value();
            out.text(" " + value + (value.endsWith(".") || value.endsWith("?") ? "" : "."));
        }
        out.close();
    }

    private void items(List<Items> groups) {
        for (Items group : groups) {
            if (!group.each().isEmpty()) {
                out.element("div", group.each(), "class", "each");
            }
            int columns = columns(group.names());
            if (columns == 1) {
                for (String name : group.names()) {
                    out.open("div", "class", "item");
                    item(name);
                    out.close();
                }
            } else {
                inColumns(group.names(), columns);
            }
        }
    }

    private void inColumns(List<String> names, int columns) {
        out.open("table", "class", "items").open("tbody");
        int rows = (names.size() + columns - 1) / columns;
        for (int row = 0; row < rows; row++) {
            out.open("tr");
            for (int column = 0; column < columns; column++) {
                int at = column * rows + row;
                out.open("td");
                if (at < names.size()) {
                    item(names.get(at));
                }
                out.close();
            }
            out.close();
        }
        out.close().close();
    }

    private void item(String name) {
        out.element("span", BOX, "class", "small-box").text(" " + name);
    }

    /** Long lists stand in columns where their names are short. */
    private static int columns(List<String> names) {
        int longest = names.stream().mapToInt(String::length).max().orElse(0);
        return names.size() <= FEW_ITEMS || longest > 30 ? 1 : longest <= 20 ? 3 : 2;
    }

    private void heads(Object... pairs) {
        for (int i = 0; i < pairs.length; i += 2) {
            String title = (String) pairs[i];
            String width = "width: " + pairs[i + 1] + "%";
            if (title.isEmpty()) {
                out.element("th", "Done", "scope", "col", "class", "done", "style", width);
            } else {
                out.element("th", title, "scope", "col", "style", width);
            }
        }
    }

    private void ticks(List<String> lines) {
        out.open("table", "class", lines.size() <= 8 ? "ticks keep" : "ticks")
                .open("thead")
                .open("tr");
        heads("", 6, "What", 58, "By", 22, "Time", 14);
        out.close().close().open("tbody");
        for (String line : lines) {
            out.open("tr").element("td", BOX, "class", "box").element("td", line);
            out.element("td", "\u00a0", "class", "blank")
                    .element("td", "\u00a0", "class", "blank")
                    .close();
        }
        out.close().close();
    }

    private void signatures(List<String> roles) {
        out.open("table", "class", "signatures").open("thead").open("tr");
        for (String head : List.of("As", "Name", "Signature", "Date and time")) {
            out.element("th", head, "scope", "col");
        }
        out.close().close().open("tbody");
        for (String role : roles) {
            out.open("tr").element("th", role, "scope", "row");
            for (int i = 0; i < 3; i++) {
                out.element("td", "\u00a0", "class", "blank");
            }
            out.close();
        }
        out.close().close();
    }

    /** A figure as large as the page lets it be with its heading and legend. */
    private void figure(String svg, String description) {
        Picture picture = PictureReader.read(svg);
        int number = figures.add(picture);
        double roomWide = switch (paper) {
            case A4 -> 180.0;
            case LETTER -> 185.0;
        };
        double roomHigh = switch (paper) {
            case A4 -> 233.0;
            case LETTER -> 215.0;
        };
        double scale = Math.min(picture.largest(), Math.min(roomWide / picture.width(), roomHigh / picture.height()));
        String size = "width: " + picture.width() * scale + "mm; height: " + picture.height() * scale + "mm";
        out.open("div", "class", "figure");
        out.open(
                        "object",
                        "type",
                        Figures.TYPE,
                        "data-figure",
                        Integer.toString(number),
                        "style",
                        size,
                        "alt",
                        description)
                .close();
        out.element("p", "Figure " + number + ": " + description, "class", "legend");
        out.close();
    }

    /** Two photographs fit on a page. */
    private void photograph(Block.Photograph photograph) {
        double roomWide = 150.0;
        double roomHigh = 100.0;
        double scale = Math.min(roomWide / photograph.width(), roomHigh / photograph.height());
        out.open("div", "class", "figure");
        out.open(
                        "img",
                        "src",
                        PdfPrinter.JPEG_IN_PAGE + Base64.getEncoder().encodeToString(photograph.jpeg()),
                        "style",
                        "width: " + photograph.width() * scale + "mm; height: " + photograph.height() * scale + "mm",
                        "alt",
                        "photograph: " + photograph.description())
                .close();
        out.element("p", photograph.description(), "class", "legend");
        out.close();
    }
}
