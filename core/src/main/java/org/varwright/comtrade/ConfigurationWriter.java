package org.varwright.comtrade;

import java.util.List;
import java.util.Locale;

/** Writes the configuration of a recording. */
final class ConfigurationWriter {
    private final Recording recording;
    private final Revision revision;
    private final Stamps stamps;
    private final Octets out = new Octets();

    private ConfigurationWriter(Recording recording, Revision revision, Stamps stamps) {
        this.recording = recording;
        this.revision = revision;
        this.stamps = stamps;
    }

    static byte[] write(Recording recording, Revision revision, DataFormat format, Stamps stamps, List<Scale> scales) {
        ConfigurationWriter writer = new ConfigurationWriter(recording, revision, stamps);
        writer.channels(scales);
        writer.times();
        writer.out.line(format.name());
        writer.tail();
        return writer.out.toArray();
    }

    private void channels(List<Scale> scales) {
        int analogs = recording.analogs().size();
        int statuses = recording.statuses().size();
        String year = revision == Revision.C1991 ? "" : "," + revision.year();
        out.line(plain(recording.station()) + "," + plain(recording.device()) + year);
        out.line((analogs + statuses) + "," + analogs + "A," + statuses + "D");
        for (int i = 0; i < analogs; i++) {
            out.line(analog(i + 1, recording.analogs().get(i), scales.get(i)));
        }
        for (int i = 0; i < statuses; i++) {
            out.line(status(i + 1, recording.statuses().get(i)));
        }
    }

    private String analog(int number, Analog analog, Scale scale) {
        String line = String.join(
                ",",
                Integer.toString(number),
                plain(analog.name()),
                plain(analog.phase()),
                plain(analog.component()),
                plain(analog.unit()),
                number(scale.multiplier()),
                number(scale.offset()),
                number(rounded(analog.skewSeconds() * 1e6)),
                number(scale.least()),
                number(scale.largest()));
        return revision == Revision.C1991 ? line : line + ratio(analog.ratio());
    }

    /** A ratio that isn't known is written 1 to 1, as recorders write one that nobody entered: the standard has no other word for it. */
    private static String ratio(Ratio ratio) {
        boolean isKnown = ratio.side() != Ratio.Side.UNKNOWN
                && Double.isFinite(ratio.primary())
                && Double.isFinite(ratio.secondary());
        String sides = isKnown ? number(ratio.primary()) + "," + number(ratio.secondary()) : "1,1";
        return "," + sides + "," + (ratio.side() == Ratio.Side.SECONDARY ? "S" : "P");
    }

    private String status(int number, Status status) {
        String normal = switch (status.normal()) {
            case ZERO -> "0";
            case ONE -> "1";
            case UNKNOWN -> "";
        };
        String places = revision == Revision.C1991 ? "" : "," + plain(status.phase()) + "," + plain(status.component());
        return number + "," + plain(status.name()) + places + "," + normal;
    }

    private void times() {
        out.line(number(recording.hertz()));
        List<Rate> rates = stamps.rates();
        boolean isStampsOnly = rates.size() == 1 && rates.getFirst().hertz() == 0.0;
        out.line(isStampsOnly ? "0" : Integer.toString(rates.size()));
        for (Rate rate : rates) {
            out.line(number(rate.hertz()) + "," + rate.lastSample());
        }
        Timing timing = recording.timing();
        double first =
                recording.seconds().size() == 0 ? 0.0 : recording.seconds().at(0);
        out.line(timing.start().instant().map(i -> date(i.plus(first))).orElse(plainMoment(timing.start())));
        out.line(timing.trigger().instant().map(this::date).orElse(plainMoment(timing.trigger())));
    }

    private void tail() {
        if (revision != Revision.C1991) {
            out.line(number(stamps.multiplier()));
        }
        if (revision == Revision.C2013) {
            recording
                    .timing()
                    .clock()
                    .ifPresentOrElse(
                            clock -> out.line(plain(clock.timeCode()) + "," + plain(clock.localCode()))
                                    .line(plain(clock.quality()) + "," + plain(clock.leap())),
                            // no clock is known: its quality code says that its time can't be trusted
                            () -> out.line("0,x").line("F,3"));
        }
    }

    private String date(Instant at) {
        String day = revision == Revision.C1991
                ? String.format(Locale.ROOT, "%02d/%02d/%02d", at.month(), at.day(), at.year() % 100)
                : String.format(Locale.ROOT, "%02d/%02d/%04d", at.day(), at.month(), at.year());
        String fraction = stamps.isNanos()
                ? String.format(Locale.ROOT, "%09d", at.nanos())
                : String.format(Locale.ROOT, "%06d", at.nanos() / 1000);
        return day + "," + String.format(Locale.ROOT, "%02d:%02d:%02d", at.hour(), at.minute(), at.second()) + "."
                + fraction;
    }

    private static String plainMoment(Moment moment) {
        return moment.written().isBlank()
                ? ","
                : moment.written().replace('\r', ' ').replace('\n', ' ');
    }

    /** Without what would end a field or a line. */
    private static String plain(String text) {
        StringBuilder plain = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            plain.append(c == ',' || c < ' ' ? ' ' : c);
        }
        return plain.toString();
    }

    /** To twelve digits, which takes the noise of the change of unit off. */
    private static double rounded(double value) {
        return Double.parseDouble(String.format(Locale.ROOT, "%.11e", value));
    }

    private static String number(double value) {
        if (Double.isNaN(value)) {
            return "";
        }
        return value == Math.rint(value) && Math.abs(value) < 1e15
                ? Long.toString((long) value)
                : Double.toString(value);
    }
}
