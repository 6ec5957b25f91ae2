package org.varwright.basis;

import java.util.List;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** Checks as lines of a page, the same in every answer: mark, subject, value, limit, formula, source. */
public final class CheckText {
    private CheckText() {}

    /** Adds one line a check. */
    public static void add(Page page, List<Check> checks) {
        for (Check check : checks) {
            page.item(
                    "  " + mark(check.verdict()) + "  ",
                    check.subject() + ": " + value(check.value(), check.unit()) + ", limit "
                            + value(check.limit(), check.unit()) + "  ["
                            + check.basis().id() + "; "
                            + check.basis().source().print() + "]");
        }
    }

    private static String mark(Verdict verdict) {
        return switch (verdict) {
            case PASS -> "ok  ";
            case WARN -> "WARN";
            case FAIL -> "FAIL";
        };
    }

    private static String value(double value, String unit) {
        return Dimension.of(unit)
                .map(d -> d.format(value))
                .orElseGet(() -> Dimension.digits(value, 4) + (unit.isEmpty() ? "" : " " + unit));
    }
}
