package org.varwright.basis;

import java.util.List;
import org.varwright.json.Json;

/** {@link Basis} and {@link Check} as JSON, the same in every result. */
public final class BasisJson {
    private BasisJson() {}

    public static Json of(Basis basis) {
        return Json.object()
                .put("id", basis.id())
                .put("formula", basis.formula())
                .put(
                        "terms",
                        Json.of(basis.terms().stream().map(BasisJson::term).toList()))
                .put("source", basis.source().print())
                .build();
    }

    public static Json of(Check check) {
        return Json.object()
                .put("subject", check.subject())
                .put("value", check.value())
                .put("limit", check.limit())
                .put("unit", check.unit())
                .put("verdict", check.verdict().code())
                .put("basis", of(check.basis()))
                .build();
    }

    public static Json of(List<Check> checks) {
        return Json.of(checks.stream().map(BasisJson::of).toList());
    }

    private static Json term(Term term) {
        return Json.object()
                .put("symbol", term.symbol())
                .put("meaning", term.meaning())
                .put("value", term.value())
                .put("unit", term.unit())
                .build();
    }
}
