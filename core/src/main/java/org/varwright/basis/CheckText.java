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
        return switch (unit) {
            case "F" -> Dimension.CAPACITANCE.format(value);
            case "V" -> Dimension.VOLTAGE.format(value);
            case "A" -> Dimension.CURRENT.format(value);
            case "Ω" -> Dimension.RESISTANCE.format(value);
            case "J" -> Dimension.ENERGY.format(value);
            case "s" -> Dimension.TIME.format(value);
            case "var" -> Dimension.REACTIVE_POWER.format(value);
            case "Hz" -> Dimension.FREQUENCY.format(value);
            case "A·Hz" -> Dimension.CURRENT_FREQUENCY.format(value);
            case "A²s" -> Dimension.CURRENT_SQUARED_TIME.format(value);
            case "" -> Dimension.digits(value, 4);
            default -> Dimension.digits(value, 4) + " " + unit;
        };
    }
}
