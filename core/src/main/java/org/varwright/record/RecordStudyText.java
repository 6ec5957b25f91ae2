package org.varwright.record;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.varwright.basis.Unanswered;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;
import org.varwright.unbalance.Candidate;
import org.varwright.unbalance.Locate;

/** {@link RecordStudy} as text for people: 100 columns, to be printed and taken to site. */
public final class RecordStudyText {
    private RecordStudyText() {}

    public static String of(RecordStudy study) {
        Page page = new Page();
        study.matching().ifPresent(m -> questions(page, m));
        failed(page, study.located());
        page.heading(study.bank().isPresent() ? "What happened" : "What the record shows");
        if (study.findings().isEmpty()) {
            page.text("Nothing that can be told.");
        }
        for (Finding finding : study.findings()) {
            page.item("  " + mark(finding.weight()) + "  ", finding.words());
        }
        study.matching().ifPresent(m -> channels(page, m));
        if (!study.unanswered().isEmpty()) {
            page.heading("Not answered");
            for (Unanswered u : study.unanswered()) {
                page.item("  - ", sentence(u));
            }
        }
        if (study.bank().isPresent()) {
            page.heading("Bear in mind");
            Set<String> all = new LinkedHashSet<>(notes());
            study.located().forEach(l -> all.addAll(l.locate().notes()));
            all.forEach(n -> page.item("  - ", n));
        }
        return page.print();
    }

    /** Times count from the first sample. */
    static List<String> notes() {
        return List.of(
                "Times count from the first sample of the record, to one step of its samples.",
                "A record shows what was recorded, not what is so now. It is no proof that anything is dead, open or"
                        + " discharged: follow the order of work.");
    }

    /** What can't be told, and what was missing for it. */
    public static String sentence(Unanswered unanswered) {
        String effect = unanswered.effect();
        return Character.toUpperCase(effect.charAt(0)) + effect.substring(1) + ". Missing: " + unanswered.missing()
                + ".";
    }

    /** A moment as it is printed everywhere. */
    public static String at(double seconds) {
        return Say.at(seconds);
    }

    private static void channels(Page page, ChannelMatching matching) {
        page.heading("Channels");
        List<List<String>> rows = new ArrayList<>();
        for (ChannelMatching.Assignment a : matching.assignments()) {
            rows.add(List.of(a.channel().name().strip(), a.role().text(), String.join("; ", a.why())));
        }
        for (ChannelMatching.Unused u : matching.unused()) {
            rows.add(List.of(u.channel().name().strip(), "not used", u.why()));
        }
        if (!rows.isEmpty()) {
            page.table(List.of("channel", "measures", "how that is known"), rows);
        }
    }

    private static void questions(Page page, ChannelMatching matching) {
        if (matching.open().isEmpty()) {
            return;
        }
        page.heading("Say which channel measures what");
        for (ChannelMatching.Question q : matching.open()) {
            page.item("  ?   ", capital(q.what()) + ".");
            page.item("      ", example(q));
        }
    }

    private static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** What to type. */
    static String example(ChannelMatching.Question question) {
        List<String> texts = question.choices().stream()
                .map(c -> c.contains("=")
                        ? "--channel-map \"" + c + "\""
                        : "--channel-map \""
                                + question.channels().getFirst().name().strip() + "=" + c + "\"")
                .toList();
        return String.join(" or ", texts.subList(0, Math.min(4, texts.size())));
    }

    private static String mark(Finding.Weight weight) {
        return switch (weight) {
            case NOTE -> "    ";
            case LOOK -> "LOOK";
            case FAILED -> "FAIL";
        };
    }

    private static void failed(Page page, List<Located> located) {
        if (located.isEmpty()) {
            return;
        }
        page.heading("What failed?");
        Set<String> next = new LinkedHashSet<>();
        for (Located l : located) {
            page.text(l.sensor() + " from " + Say.at(l.fromSeconds()) + " to " + Say.at(l.toSeconds()) + ":");
            candidates(page, l.locate());
            next.addAll(l.locate().nextMeasurements());
        }
        page.blank().text("Measure next:");
        int n = 1;
        for (String measurement : next) {
            page.item("  " + n++ + ". ", measurement);
        }
    }

    private static void candidates(Page page, Locate locate) {
        if (!locate.isExplained()) {
            page.item(
                    "  ",
                    "UNDECIDED. No single failure and no pair of failures gives what the record shows. Look at the sensor, its ratio"
                            + " and wiring, and at the voltages; more than two places may have failed.");
            return;
        }
        Dimension dimension = locate.senses().dimension();
        List<List<String>> rows = new ArrayList<>();
        for (Candidate c : locate.candidates()) {
            rows.add(List.of(
                    likely(c.probability()),
                    dimension.format(c.sensor().magnitude(), 3),
                    Say.degrees(c.sensor().degrees()),
                    c.words()));
        }
        page.table(List.of("likely", "would show", "at", "what"), rows, 0, 1, 2);
    }

    /** Never "100 %": what was not thought of is not among the candidates. */
    public static String likely(double probability) {
        return probability > 0.99 ? "> 99 %" : String.format(java.util.Locale.ROOT, "%.0f", 100.0 * probability) + " %";
    }

    /** The findings as single sentences, for a job and its report: what failed first named by its likeliest cause. */
    public static List<String> sentences(RecordStudy study) {
        List<String> sentences = new ArrayList<>();
        study.located().stream().map(RecordStudyText::sentence).forEach(sentences::add);
        study.findings().stream()
                .filter(f -> f.weight() != Finding.Weight.NOTE || LISTED.contains(f.kind()))
                .map(Finding::words)
                .forEach(sentences::add);
        return List.copyOf(sentences);
    }

    /** What a sensor tells of, in one sentence. */
    public static String sentence(Located located) {
        String from = located.sensor() + " from " + Say.at(located.fromSeconds()) + " on";
        if (!located.locate().isExplained() || located.locate().candidates().isEmpty()) {
            return from + ": no single failure and no pair explains what the record shows.";
        }
        Candidate best = located.locate().candidates().getFirst();
        return from + " tells of: " + best.words() + " (" + likely(best.probability()) + " likely).";
    }

    /** Notes that a job keeps all the same. */
    private static final List<String> LISTED = List.of("opened", "closed", "inrush", "trapped-charge", "decay");
}
