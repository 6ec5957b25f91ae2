package org.varwright.report;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Values against limits, and how each number came about. */
final class CheckSection {
    private CheckSection() {}

    /** The checks with their verdicts, those that failed first. */
    static Section checks(List<Check> checks) {
        if (checks.isEmpty()) {
            return Section.absent("Checks", "Nothing was held against a limit in this job.");
        }
        List<Row> rows = new ArrayList<>();
        for (Verdict verdict : List.of(Verdict.FAIL, Verdict.WARN, Verdict.PASS)) {
            checks.stream()
                    .filter(c -> c.verdict() == verdict)
                    .map(CheckSection::row)
                    .forEach(rows::add);
        }
        return Section.of(
                "Checks",
                new Block.Paragraph(
                        "What fails stands first. The basis of each number is on the last pages, by its number."),
                new Block.Table(
                        "",
                        List.of(
                                Column.left("Verdict", 12),
                                Column.left("Subject", 52),
                                Column.right("Value", 13),
                                Column.right("Limit", 13),
                                Column.left("Basis", 10)),
                        rows));
    }

    private static Row row(Check check) {
        String word = switch (check.verdict()) {
            case PASS -> "pass";
            case WARN -> "WARNING";
            case FAIL -> "FAILS";
        };
        return new Row(List.of(
                check.verdict() == Verdict.PASS ? new Cell.Text(word) : new Cell.Strong(word),
                new Cell.Text(check.subject()),
                new Cell.Text(Values.print(check.value(), check.unit())),
                new Cell.Text(Values.print(check.limit(), check.unit())),
                new Cell.Text(check.basis().id())));
    }

    /** How was this worked out: every formula with its terms and its source, each once. */
    static Section bases(Collection<Basis> all) {
        Set<Basis> bases = new LinkedHashSet<>(all);
        if (bases.isEmpty()) {
            return Section.absent("How was this worked out", "No number in this report was computed.");
        }
        Map<Formula, List<String>> terms = new TreeMap<>(
                Comparator.comparing(Formula::id).thenComparing(Formula::text).thenComparing(Formula::source));
        for (Basis basis : bases) {
            Formula formula =
                    new Formula(basis.id(), basis.formula(), basis.source().print());
            terms.computeIfAbsent(formula, f -> new ArrayList<>()).add(terms(basis));
        }
        List<Row> rows = new ArrayList<>();
        terms.forEach((formula, values) -> rows.add(new Row(List.of(
                new Cell.Strong(formula.id()),
                new Cell.Explained(formula.text(), values),
                new Cell.Text(formula.source())))));
        return Section.of(
                "How was this worked out",
                new Block.Paragraph("Each number above can be redone by hand from these lines. \u201cFrom memory,"
                        + " unchecked\u201d means that nobody had the document open: check it before you lean on it."),
                new Block.Table(
                        "",
                        List.of(Column.left("No.", 9), Column.left("Formula and terms", 63), Column.left("Source", 28)),
                        rows));
    }

    /** A formula with its source, whatever was put in. */
    private record Formula(String id, String text, String source) {}

    private static String terms(Basis basis) {
        return String.join(
                "; ",
                basis.terms().stream()
                        .map(t -> t.symbol() + " = " + Values.print(t.value(), t.unit()) + " (" + t.meaning() + ")")
                        .toList());
    }
}
