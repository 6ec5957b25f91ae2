package org.varwright.report;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Values against limits, and how each number came about. */
final class CheckSection {
    /** So many values that pass by one formula are shown one by one; more share a row. */
    private static final int SINGLY = 6;

    /** So many uses of a formula are shown with their terms. */
    private static final int MOST_USES = 20;

    private CheckSection() {}

    /** The checks with their verdicts, those that failed first. */
    static Section checks(List<Check> checks) {
        if (checks.isEmpty()) {
            return Section.absent("Checks", "Nothing was held against a limit in this job.");
        }
        List<Row> rows = new ArrayList<>();
        for (Verdict verdict : List.of(Verdict.FAIL, Verdict.WARN)) {
            checks.stream()
                    .filter(c -> c.verdict() == verdict)
                    .map(CheckSection::row)
                    .forEach(rows::add);
        }
        Map<String, List<Check>> passed = checks.stream()
                .filter(c -> c.verdict() == Verdict.PASS)
                .collect(Collectors.groupingBy(
                        c -> c.basis().id() + " " + c.unit(), LinkedHashMap::new, Collectors.toList()));
        for (List<Check> alike : passed.values()) {
            if (alike.size() > SINGLY) {
                rows.add(together(alike));
            } else {
                alike.stream().map(CheckSection::row).forEach(rows::add);
            }
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

    /** Many values that pass alike, in one row. */
    private static Row together(List<Check> alike) {
        Check first = alike.getFirst();
        return new Row(List.of(
                new Cell.Text("pass"),
                new Cell.Text(alike.size() + " values, from \u201c" + first.subject() + "\u201d to \u201c"
                        + alike.getLast().subject() + "\u201d"),
                new Cell.Text(range(alike.stream().mapToDouble(Check::value), first.unit())),
                new Cell.Text(range(alike.stream().mapToDouble(Check::limit), first.unit())),
                new Cell.Text(first.basis().id())));
    }

    private static String range(DoubleStream values, String unit) {
        DoubleSummaryStatistics all = values.summaryStatistics();
        String low = Values.print(all.getMin(), unit);
        String high = Values.print(all.getMax(), unit);
        return low.equals(high) ? low : low + " to " + high;
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
        Map<Formula, List<Basis>> byFormula = new TreeMap<>(
                Comparator.comparing(Formula::id).thenComparing(Formula::text).thenComparing(Formula::source));
        for (Basis basis : bases) {
            Formula formula =
                    new Formula(basis.id(), basis.formula(), basis.source().print());
            byFormula.computeIfAbsent(formula, f -> new ArrayList<>()).add(basis);
        }
        List<Row> rows = new ArrayList<>();
        byFormula.forEach((formula, uses) -> rows.add(new Row(List.of(
                new Cell.Strong(formula.id()),
                new Cell.Explained(formula.text(), lines(uses)),
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

    /** The terms of every use: those that are alike in all of them once, then the others use by use. */
    private static List<String> lines(List<Basis> uses) {
        if (uses.size() == 1) {
            return List.of(terms(uses.getFirst().terms()));
        }
        List<Term> common = new ArrayList<>(uses.getFirst().terms());
        uses.forEach(use -> common.retainAll(use.terms()));
        List<String> lines = new ArrayList<>();
        if (!common.isEmpty()) {
            lines.add("In each: " + terms(common));
        }
        Set<String> seen = new LinkedHashSet<>();
        for (Basis use : uses) {
            List<Term> own = new ArrayList<>(use.terms());
            own.removeAll(common);
            String line = values(own);
            if (!own.isEmpty() && seen.add(line) && seen.size() <= MOST_USES) {
                lines.add(seen.size() == 1 ? terms(own) : line);
            }
        }
        if (seen.size() > MOST_USES) {
            lines.add("and " + (seen.size() - MOST_USES) + " more; the commands\u2019 JSON output has every one");
        }
        return lines;
    }

    private static String terms(List<Term> terms) {
        return terms.stream().map(t -> value(t) + " (" + t.meaning() + ")").collect(Collectors.joining("; "));
    }

    /** The values alone: what the letters mean stands in the line above. */
    private static String values(List<Term> terms) {
        return terms.stream().map(CheckSection::value).collect(Collectors.joining("; "));
    }

    private static String value(Term term) {
        return term.symbol() + "\u00a0=\u00a0"
                + Values.print(term.value(), term.unit()).replace(' ', '\u00a0');
    }
}
