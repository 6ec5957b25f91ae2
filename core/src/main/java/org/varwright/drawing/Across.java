package org.varwright.drawing;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;

/** Where columns lie and how wide the words in them may be, in px before scaling: lead, wire, words, gap. */
final class Across {
    static final double LEAD = 17.0;
    static final double TEXT_GAP = 13.0;
    static final double COLUMN_GAP = 8.0;
    private static final double STRAIGHT_LEAD = 34.0;
    private static final double LEAST_TEXT = 30.0;
    private static final double LONGEST_WORD = 110.0;

    private final Bank bank;
    private final Feeding feeding;
    private final Columns columns;
    private final Spans spans;
    private final List<Territory> territories;
    private final Wording wording;
    private final double textWidth;

    private final double[] left;
    private final double[] lead;
    private final double[] text;
    private double width;

    Across(
            Bank bank,
            Feeding feeding,
            Columns columns,
            Spans spans,
            List<Territory> territories,
            Wording wording,
            double textWidth) {
        this.bank = bank;
        this.feeding = feeding;
        this.columns = columns;
        this.spans = spans;
        this.territories = territories;
        this.wording = wording;
        this.textWidth = textWidth;
        int count = columns.all().size();
        left = new double[count];
        lead = new double[count];
        text = new double[count];
        lay();
    }

    private void lay() {
        List<List<List<TextBlock.Row>>> words = new ArrayList<>();
        for (int c = 0; c < left.length; c++) {
            List<List<TextBlock.Row>> own = new ArrayList<>();
            parts(c).forEach(p -> own.add(p.rows()));
            words.add(own);
        }
        columns.heads().forEach((conductor, head) -> {
            List<List<TextBlock.Row>> own = words.get(head);
            own.add(wording.conductor(conductor));
            Feeding.Feeder feeder = feeding.feeders().get(conductor);
            if (feeder != null) {
                own.add(wording.device(feeder.device()).rows());
            }
            sources(conductor).forEach(s -> own.add(wording.source(s).rows()));
        });
        for (Territory territory : territories) {
            if (territory.firstColumn() == territory.lastColumn()) {
                words.get(territory.firstColumn()).add(footRows(territory));
            }
        }
        double x = 0.0;
        for (int c = 0; c < left.length; c++) {
            lead[c] = spans.isStraight(c) ? STRAIGHT_LEAD : LEAD;
            left[c] = x;
            text[c] = needed(words.get(c));
            x += lead[c] + TEXT_GAP + text[c] + COLUMN_GAP;
        }
        width = x;
    }

    /** The width that the words of a column take; words are broken only where one alone is wider than the limit. */
    private double needed(List<List<TextBlock.Row>> words) {
        double limit = textWidth;
        for (List<TextBlock.Row> rows : words) {
            limit = Math.max(limit, Math.min(LONGEST_WORD, TextBlock.longestWord(rows)));
        }
        double need = LEAST_TEXT;
        for (List<TextBlock.Row> rows : words) {
            need = Math.max(need, TextBlock.wrapped(rows, limit).width());
        }
        return need + 0.01;
    }

    /** What hangs in a column on the conductor that it is named for; a tie's device as well. */
    List<Part> parts(int c) {
        return switch (columns.all().get(c).hangs()) {
            case Column.Hangs.Legs legs -> wording.legs(legs.stage());
            case Column.Hangs.ToGround ground -> wording.toGround(ground.device());
            case Column.Hangs.Bond bond -> List.of(wording.device(bond.device()));
            case Column.Hangs.Tie tie -> List.of(wording.device(tie.device()));
            case Column.Hangs.Source source -> List.of(wording.source(source.source()));
            case Column.Hangs.Visit visit -> List.of();
            case Column.Hangs.Nothing nothing -> List.of();
        };
    }

    List<TextBlock.Row> footRows(Territory territory) {
        return territory.main()
                ? wording.compartment(territory.compartment())
                : List.of(TextBlock.Row.bold(territory.compartment().name()), TextBlock.Row.small("(another part)"));
    }

    List<EnergySource> sources(String conductor) {
        return bank.isolation().map(Isolation::sources).orElse(List.of()).stream()
                .filter(s -> s.at().equals(conductor))
                .limit(1)
                .toList();
    }

    double left(int column) {
        return left[column];
    }

    double right(int column) {
        return left[column] + lead[column] + TEXT_GAP + text[column] + COLUMN_GAP;
    }

    /** Where the wire of a column runs. */
    double wire(int column) {
        return left[column] + lead[column];
    }

    double textLeft(int column) {
        return wire(column) + TEXT_GAP;
    }

    TextBlock wrapped(List<TextBlock.Row> rows, int column) {
        return TextBlock.wrapped(rows, text[column]);
    }

    double textWidth(int column) {
        return text[column];
    }

    double width() {
        return width;
    }
}
