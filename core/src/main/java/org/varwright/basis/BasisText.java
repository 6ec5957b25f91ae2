package org.varwright.basis;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** Bases as text, for {@code --explain}. */
public final class BasisText {
    private BasisText() {}

    /** How every check was worked out. */
    public static String ofChecks(List<Check> checks) {
        Page page = new Page().heading("How this was worked out");
        for (Check check : checks) {
            page.blank()
                    .text(check.subject() + ": " + value(check.value(), check.unit()) + ", limit "
                            + value(check.limit(), check.unit()) + ", "
                            + check.verdict().code());
            add(page, check.basis());
        }
        return page.print();
    }

    /** Every basis once. */
    public static String of(Collection<Basis> bases) {
        Page page = new Page().heading("How this was worked out");
        for (Basis basis : new LinkedHashSet<>(bases)) {
            page.blank();
            add(page, basis);
        }
        return page.print();
    }

    private static void add(Page page, Basis basis) {
        page.item(lead(basis.id()), basis.formula());
        for (Term term : basis.terms()) {
            page.item(lead(""), term.symbol() + " = " + value(term.value(), term.unit()) + "   " + term.meaning());
        }
        page.item(lead(""), "source: " + basis.source().print());
    }

    private static String lead(String id) {
        return "  " + id + " ".repeat(Math.max(1, 8 - id.length()));
    }

    private static String value(double value, String unit) {
        return (Double.isFinite(value) ? Dimension.digits(value, 6) : "not known") + (unit.isEmpty() ? "" : " " + unit);
    }
}
