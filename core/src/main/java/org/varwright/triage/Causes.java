package org.varwright.triage;

import java.util.ArrayList;
import java.util.List;
import org.varwright.basis.Source;

/** Puts a cause together. */
final class Causes {
    private final String id;
    private final String text;
    private final Cause.Rank rank;
    private final List<Statement> speaksFor = new ArrayList<>();
    private final List<Statement> against = new ArrayList<>();
    private final List<Inspection> checks = new ArrayList<>();

    private Causes(String id, String text, Cause.Rank rank) {
        this.id = id;
        this.text = text;
        this.rank = rank;
    }

    static Causes likely(String id, String text) {
        return new Causes(id, text, Cause.Rank.LIKELY);
    }

    static Causes possible(String id, String text) {
        return new Causes(id, text, Cause.Rank.POSSIBLE);
    }

    static Causes rare(String id, String text) {
        return new Causes(id, text, Cause.Rank.RARE);
    }

    Causes speaksFor(String sentence) {
        return speaksFor(new Statement(sentence, Source.COMMON_PRACTICE));
    }

    Causes speaksFor(Statement statement) {
        speaksFor.add(statement);
        return this;
    }

    Causes against(String sentence) {
        return against(new Statement(sentence, Source.COMMON_PRACTICE));
    }

    Causes against(Statement statement) {
        against.add(statement);
        return this;
    }

    Cause check(Inspection... inspections) {
        checks.addAll(List.of(inspections));
        return new Cause(id, text, rank, speaksFor, against, checks);
    }
}
