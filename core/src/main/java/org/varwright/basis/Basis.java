package org.varwright.basis;

import java.util.List;

/**
 * How a number came about, so that it can be redone by hand.
 *
 * @param id id of the formula in {@code docs/theory}, such as {@code DIS-1}
 * @param formula the formula as text
 * @param terms what was put in
 * @param source where formula or limit comes from
 */
public record Basis(String id, String formula, List<Term> terms, Source source) {
    public Basis {
        terms = List.copyOf(terms);
    }
}
