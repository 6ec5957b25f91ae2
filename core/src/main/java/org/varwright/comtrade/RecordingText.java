package org.varwright.comtrade;

import java.util.ArrayList;
import java.util.List;
import org.varwright.page.Page;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.quantity.Dimension;

/** {@link Recording} as text for people: what is in the record, and what was read although it departs from the standard. */
public final class RecordingText {
    /** Changes of one status channel that are told one by one. */
    static final int MOST_CHANGES = 8;

    private static final int LONGEST_NAME = 32;
    private static final int LONGEST_REMARK = 400;

    private RecordingText() {}

    public static String of(Recording recording) {
        Page page = new Page();
        page.heading("Disturbance record  " + title(recording));
        head(page, recording);
        analogs(page, recording);
        statuses(page, recording);
        if (!recording.header().isBlank()) {
            page.heading("Header file");
            for (String line : recording.header().strip().split("\\R", -1)) {
                page.item("  ", shown(line, Page.COLUMNS - 2));
            }
        }
        remarks(page, recording);
        return page.print();
    }

    /** Station and device, as far as the record names them. */
    public static String title(Recording recording) {
        String title = (shown(recording.station()).strip() + "  "
                        + shown(recording.device()).strip())
                .strip();
        return title.isEmpty() ? "without a name" : title;
    }

    /** How the values came about, channel by channel. */
    public static String explain(Recording recording) {
        Page page = new Page();
        page.blank();
        page.heading("How it was read");
        page.text("value = a·x + b, x the number in the data, in the unit and at the side that the record states"
                + " (C37.111, analog channel information). Primary = secondary times the ratio.");
        page.text(
                switch (recording.timing().basis()) {
                    case RATES -> "Times: by the sampling rates; time stamps show no gap, or are of no use.";
                    case RATES_WITH_GAPS -> "Times: by the sampling rates; gaps by the time stamps.";
                    case STAMPS -> "Times: by the time stamps; the record states no rate.";
                    case NONE -> "Times: none; samples are numbered.";
                });
        for (Analog analog : recording.analogs()) {
            Scale scale = analog.scale();
            String skew = analog.skewSeconds() == 0.0
                    ? ""
                    : ", converted " + Dimension.digits(analog.skewSeconds() * 1e6, 6) + " µs after its sample's time";
            page.item(
                    "  ",
                    shown(analog.title()) + ": a " + written(scale.multiplier()) + ", b " + written(scale.offset())
                            + ", x from " + written(scale.least()) + " to " + written(scale.largest()) + skew);
        }
        return page.print();
    }

    private static String written(double value) {
        return Double.isFinite(value) ? Dimension.digits(value, 10) : "not known";
    }

    private static void head(Page page, Recording recording) {
        Timing timing = recording.timing();
        Origin origin = recording.origin();
        page.row(
                "written by",
                recording.revision().standard() + ", " + origin.format() + ", names " + origin.codePage());
        page.row(
                "first sample",
                timing.start().print().isBlank() ? "not known" : timing.start().print());
        page.row("trigger", trigger(timing));
        page.row("samples", samples(recording));
        page.row(
                "line frequency", recording.hertz() > 0.0 ? Dimension.FREQUENCY.format(recording.hertz()) : "not said");
        timing.clock().ifPresent(clock -> page.row("clock", clock(clock)));
    }

    private static String trigger(Timing timing) {
        String when = timing.trigger().print();
        return timing.triggerSeconds().isPresent()
                ? Dimension.TIME.format(timing.triggerSeconds().getAsDouble(), 6) + " after the first sample (" + when
                        + ")"
                : when.isBlank() ? "not known" : when + ", which is outside the record";
    }

    private static String samples(Recording recording) {
        Samples seconds = recording.seconds();
        long all = recording.origin().samples();
        String part = seconds.size() < all ? seconds.size() + " of " + all : Long.toString(all);
        if (seconds.size() == 0) {
            return part;
        }
        double from = seconds.at(0);
        double to = seconds.at(seconds.size() - 1);
        return part
                + switch (recording.timing().basis()) {
                    case RATES, RATES_WITH_GAPS ->
                        " from " + time(from) + " to " + time(to) + ", at "
                                + rates(recording.timing().rates())
                                + " a second"
                                + (recording.timing().basis() == TimeBasis.RATES ? "" : ", with gaps");
                    case STAMPS -> " from " + time(from) + " to " + time(to) + ", by their time stamps";
                    case NONE -> "; the record has neither rate nor time stamps: no time or frequency can be told";
                };
    }

    private static String rates(List<Rate> rates) {
        List<String> told = new ArrayList<>();
        for (Rate rate : rates) {
            String one = Dimension.digits(rate.hertz(), 6);
            if (!told.contains(one)) {
                told.add(one);
            }
        }
        return told.size() > 4 ? told.size() + " different rates around " + told.getFirst() : String.join(", ", told);
    }

    private static String clock(Clock clock) {
        String zone = clock.offsetMinutes().isPresent()
                ? "UTC " + (clock.offsetMinutes().getAsInt() < 0 ? "-" : "+")
                        + Math.abs(clock.offsetMinutes().getAsInt()) / 60 + " h "
                        + Math.abs(clock.offsetMinutes().getAsInt()) % 60 + " min"
                : "zone not known (\"" + clock.timeCode() + "\")";
        String quality =
                clock.qualityText().isEmpty() ? "quality not known (\"" + clock.quality() + "\")" : clock.qualityText();
        return zone + ", " + quality + (clock.leapText().isEmpty() ? "" : ", " + clock.leapText());
    }

    private static void analogs(Page page, Recording recording) {
        page.heading("Analog channels (" + recording.analogs().size() + ")");
        if (recording.analogs().isEmpty()) {
            page.text("  none");
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        for (Analog analog : recording.analogs()) {
            Samples values = analog.values();
            rows.add(List.of(
                    Integer.toString(analog.number()),
                    shown(analog.title()),
                    shown(analog.phase().strip()),
                    value(analog, values.least()),
                    value(analog, values.largest()),
                    value(analog, values.rms()),
                    side(analog.ratio()),
                    values.missing() == 0 ? "" : Integer.toString(values.missing())));
        }
        page.table(List.of("no.", "name", "phase", "least", "largest", "rms", "side", "missing"), rows, 0, 3, 4, 5, 7);
    }

    private static String value(Analog analog, double value) {
        if (Double.isNaN(value)) {
            return "none";
        }
        return switch (analog.measure()) {
            case VOLTS -> Dimension.VOLTAGE.format(value * analog.toSi());
            case AMPERES -> Dimension.CURRENT.format(value * analog.toSi());
            case OTHER -> (Dimension.digits(value, 4) + " " + analog.unit().strip()).strip();
        };
    }

    private static String side(Ratio ratio) {
        String written = Double.isNaN(ratio.primary()) || Double.isNaN(ratio.secondary())
                ? ""
                : ", " + Dimension.digits(ratio.primary(), 6) + ":" + Dimension.digits(ratio.secondary(), 6);
        return switch (ratio.side()) {
            case PRIMARY -> "primary" + written;
            case SECONDARY -> "secondary" + written;
            case UNKNOWN -> "not said" + written;
        };
    }

    private static void statuses(Page page, Recording recording) {
        if (recording.statuses().isEmpty()) {
            return;
        }
        List<List<String>> rows = new ArrayList<>();
        int ones = 0;
        for (Status status : recording.statuses()) {
            if (status.bits().changes() > 0) {
                rows.add(List.of(
                        Integer.toString(status.number()),
                        shown(status.title()),
                        changes(status, recording.seconds())));
            } else if (status.bits().ones() > 0) {
                ones++;
            }
        }
        page.heading("Status channels (" + recording.statuses().size() + ")");
        if (!rows.isEmpty()) {
            page.table(List.of("no.", "name", "changes"), rows, 0);
        }
        int still = recording.statuses().size() - rows.size();
        page.text("  " + still + " never change; " + ones + " of them are 1.");
    }

    private static String changes(Status status, Samples seconds) {
        Bits bits = status.bits();
        StringBuilder text = new StringBuilder();
        int told = 0;
        for (int i = 1; i < bits.size() && told < MOST_CHANGES; i++) {
            if (bits.at(i) != bits.at(i - 1)) {
                text.append(text.isEmpty() ? "" : ", ")
                        .append(bits.at(i) ? "1 at " : "0 at ")
                        .append(time(seconds.at(i)));
                told++;
            }
        }
        int more = bits.changes() - told;
        return text + (more > 0 ? ", " + more + " more" : "");
    }

    private static void remarks(Page page, Recording recording) {
        if (recording.remarks().isEmpty()) {
            return;
        }
        page.heading("Departs from the standard, and how it was read");
        String file = "";
        for (Problem remark : recording.remarks()) {
            Place place = remark.place();
            if (!place.file().equals(file)) {
                file = place.file();
                page.text("  " + file.substring(Math.max(file.lastIndexOf('/'), file.lastIndexOf('\\')) + 1) + ":");
            }
            String where = place.line() == 0
                    ? ""
                    : "line " + place.line() + (place.column() == 0 ? "" : ", column " + place.column()) + ": ";
            page.item("    ", shown(where + remark.text(), LONGEST_REMARK));
        }
    }

    private static String time(double seconds) {
        return Dimension.TIME.format(seconds, 6);
    }

    /** Names come from strange files: what can't be seen is left out, and what would fill the page is cut. */
    private static String shown(String name) {
        return shown(name, LONGEST_NAME);
    }

    private static String shown(String name, int longest) {
        StringBuilder shown = new StringBuilder();
        for (int i = 0; i < name.length() && shown.length() < longest; i++) {
            char c = name.charAt(i);
            shown.append(c < ' ' || (c >= 0x7F && c < 0xA0) ? ' ' : c);
        }
        return shown.toString();
    }
}
