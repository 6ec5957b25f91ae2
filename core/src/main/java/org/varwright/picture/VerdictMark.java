package org.varwright.picture;

import org.varwright.plot.Fill;
import org.varwright.survey.UnitVerdict;
import org.varwright.svg.Box;
import org.varwright.svg.Hatching;
import org.varwright.svg.Pen;
import org.varwright.svg.Sheet;
import org.varwright.svg.Tone;

/** A verdict as a letter and a pattern. */
final class VerdictMark {
    private static final Pen LINE = Pen.full(Tone.INK, 0.8);

    private VerdictMark() {}

    static String letter(UnitVerdict verdict) {
        return switch (verdict) {
            case HEALTHY -> "H";
            case WATCH -> "W";
            case REPLACE -> "R";
            case MEASURE_AGAIN -> "M";
            case NOT_MEASURED -> "\u2013";
        };
    }

    /** Fills a strip: empty, hatched, solid, crossed; dotted for what nobody measured. */
    static void strip(Sheet sheet, Box box, UnitVerdict verdict) {
        switch (verdict) {
            case HEALTHY -> sheet.frame(box, LINE);
            case WATCH -> {
                sheet.path(Hatching.of(box, 3.0), LINE);
                sheet.frame(box, LINE);
            }
            case REPLACE -> sheet.fill(box, Tone.INK);
            case MEASURE_AGAIN -> {
                sheet.path(Hatching.crossed(box, 3.6), LINE);
                sheet.frame(box, LINE);
            }
            case NOT_MEASURED -> sheet.frame(box, new Pen(Tone.INK, 0.8, "1.5 2"));
        }
    }

    /** The fill of a bar. */
    static Fill fill(UnitVerdict verdict) {
        return switch (verdict) {
            case HEALTHY, NOT_MEASURED -> Fill.GREY;
            case WATCH -> Fill.HATCHED;
            case REPLACE -> Fill.SOLID;
            case MEASURE_AGAIN -> Fill.OPEN;
        };
    }
}
