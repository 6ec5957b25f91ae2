package org.varwright.comtrade;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** Reads a configuration ({@code .cfg}) line by line. */
final class ConfigurationReader {
    private static final int FIRST_1999 = 1992;
    private static final int FIRST_2013 = 2013;
    private static final int ANALOG_FIELDS_1991 = 10;
    private static final double MICRO = 1e-6;
    private static final double NANO = 1e-9;

    /** No recorder takes a sample less often than once in ten years, or more often than a clock can tell: such a number is none. */
    private static final double SLOWEST_HERTZ = 1e-9;

    private static final double FASTEST_HERTZ = 1e12;
    private static final double LARGEST_MULTIPLIER = 1e12;

    private final Source source;
    private final Remarks remarks;
    private final List<ConfigurationLine> lines;
    private final String codePage;
    private int at;

    private ConfigurationReader(Source source, ReadOptions options, Remarks remarks) {
        this.source = source;
        this.remarks = remarks;
        this.lines = ConfigurationLines.of(source, options, remarks);
        this.codePage = lines.isEmpty() ? TextDecoder.ASCII : lines.get(0).codePage();
    }

    /**
     * Reads it.
     *
     * @throws VarwrightException where it is no configuration, or its counts don't fit its lines
     */
    static Configuration read(Source source, ReadOptions options, Remarks remarks) {
        return new ConfigurationReader(source, options, remarks).read();
    }

    private Configuration read() {
        if (lines.size() < 2) {
            throw new VarwrightException(Message.RECORD_NOT_A_CFG, source.whole());
        }
        ConfigurationLine first = next();
        boolean threeOrMore = first.size() >= 3;
        int last = first.size() - 1;
        String year = threeOrMore ? first.text(last) : "";
        int deviceField = threeOrMore ? last - 1 : Math.min(last, 1);
        String device = deviceField == 0 ? "" : first.text(deviceField);
        String station = first.text(0, Math.max(0, deviceField - 1));
        if (first.size() > 3) {
            remarks.add(Message.RECORD_COMMA_IN_NAME, source.at(first.number(), 1), station);
        }
        int[] counts = counts(next());
        ChannelLines channels = new ChannelLines(source, remarks);
        Revision revision = revision(year, first, counts[0]);
        List<Analog> analogs = new ArrayList<>();
        List<Status> statuses = new ArrayList<>();
        for (int i = 0; i < counts[0]; i++) {
            analogs.add(channels.analog(next(), i + 1));
        }
        for (int i = 0; i < counts[1]; i++) {
            statuses.add(channels.status(next(), i + 1));
        }
        double hertz = hertz();
        List<Rate> rates = rates();
        MomentReader moments = new MomentReader(revision, remarks);
        Moment start = moment(moments, "the time of the first sample");
        Moment trigger = moment(moments, "the time of the trigger");
        Optional<DataFormat> format = format();
        double multiplier = multiplier(revision);
        Optional<Clock> clock = clock(revision);
        if (at < lines.size()) {
            remarks.add(
                    Message.RECORD_LINES_AFTER,
                    source.at(lines.get(at).number(), 1),
                    Integer.toString(lines.size() - at));
        }
        boolean nanoseconds = revision == Revision.C2013 && moments.isNanoseconds();
        return new Configuration(
                revision,
                year,
                station,
                device,
                analogs,
                statuses,
                hertz,
                rates,
                start,
                trigger,
                format,
                multiplier * (nanoseconds ? NANO : MICRO),
                clock,
                codePage);
    }

    private ConfigurationLine next() {
        return lines.get(at++);
    }

    private boolean hasNext() {
        return at < lines.size();
    }

    /** Place of the line that comes next, or of the end. */
    private Place place() {
        return hasNext()
                ? source.at(lines.get(at).number(), 1)
                : source.at(lines.get(lines.size() - 1).number() + 1, 0);
    }

    /** The edition by its year; the form of the analog lines overrides it. */
    private Revision revision(String year, ConfigurationLine first, int analogs) {
        int number = wholeNumber(year);
        Revision said = number >= FIRST_2013 ? Revision.C2013 : number >= FIRST_1999 ? Revision.C1999 : Revision.C1991;
        Place place = source.at(first.number(), first.column(first.size() - 1));
        if (!year.isEmpty() && number != said.year()) {
            remarks.add(Message.RECORD_YEAR, place, year, Integer.toString(said.year()));
        }
        if (analogs == 0) {
            return said;
        }
        int fields = lines.get(at).size();
        if (said == Revision.C1991 && fields > ANALOG_FIELDS_1991) {
            remarks.add(Message.RECORD_FORM, place, year, Integer.toString(fields), "1999");
            return Revision.C1999;
        }
        if (said != Revision.C1991 && fields == ANALOG_FIELDS_1991) {
            remarks.add(Message.RECORD_FORM, place, year, Integer.toString(fields), "1991");
            return Revision.C1991;
        }
        return said;
    }

    /** A whole number of one to nine digits; -1 where it is none. */
    private static int wholeNumber(String text) {
        if (text.isEmpty() || text.length() > 9) {
            return -1;
        }
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) < '0' || text.charAt(i) > '9') {
                return -1;
            }
        }
        return Integer.parseInt(text);
    }

    /** Numbers of analog and of status channels, each proven by a line that is there. */
    private int[] counts(ConfigurationLine line) {
        int[] counts = {-1, -1};
        for (int field = 1; field < Math.min(3, line.size()); field++) {
            String text = line.text(field);
            String letter =
                    text.isEmpty() ? "" : text.substring(text.length() - 1).toUpperCase(Locale.ROOT);
            boolean named = letter.equals("A") || letter.equals("D");
            int number = wholeNumber((named ? text.substring(0, text.length() - 1) : text).strip());
            int kind = named ? (letter.equals("A") ? 0 : 1) : field - 1;
            if (!named) {
                remarks.add(Message.RECORD_COUNT_LETTER, source.at(line.number(), line.column(field)), text);
            }
            counts[kind] = number;
        }
        if (counts[0] < 0 || counts[1] < 0) {
            throw new VarwrightException(Message.RECORD_COUNTS, source.at(line.number(), 1), line.all());
        }
        if ((long) counts[0] + counts[1] > lines.size() - at) {
            throw new VarwrightException(
                    Message.RECORD_LINES_MISSING,
                    source.at(line.number(), line.column(1)),
                    Long.toString((long) counts[0] + counts[1]),
                    Integer.toString(lines.size() - at));
        }
        if (line.numberAt(0) != (double) counts[0] + counts[1]) {
            remarks.add(
                    Message.RECORD_TOTAL,
                    source.at(line.number(), 1),
                    line.text(0),
                    Integer.toString(counts[0]),
                    Integer.toString(counts[1]));
        }
        return counts;
    }

    private double hertz() {
        if (!hasNext()) {
            remarks.add(Message.RECORD_LINE_MISSING, place(), "the line's frequency");
            return 0.0;
        }
        ConfigurationLine line = lines.get(at);
        if (line.size() > 2) {
            throw new VarwrightException(Message.RECORD_FREQUENCY_LINE, place(), Integer.toString(line.size()));
        }
        at++;
        double hertz = line.numberAt(0);
        if (!(hertz > 0.0)) {
            remarks.add(Message.RECORD_FREQUENCY, source.at(line.number(), 1), line.text(0));
            return 0.0;
        }
        return hertz;
    }

    private List<Rate> rates() {
        List<Rate> rates = new ArrayList<>();
        if (!hasNext()) {
            remarks.add(Message.RECORD_LINE_MISSING, place(), "the number of sampling rates");
            return rates;
        }
        ConfigurationLine line = next();
        double stated = line.numberAt(0);
        if (!(stated >= 0.0) || stated != Math.rint(stated)) {
            throw new VarwrightException(Message.RECORD_RATE_COUNT, source.at(line.number(), 1), line.all());
        }
        double wanted = Math.max(1.0, stated);
        while (rates.size() < wanted
                && hasNext()
                && !MomentReader.looksLikeOne(lines.get(at).all())) {
            ConfigurationLine row = next();
            double hertz = row.numberAt(0);
            double last = row.numberAt(1);
            if (!(hertz == 0.0 || (hertz >= SLOWEST_HERTZ && hertz <= FASTEST_HERTZ))) {
                remarks.add(Message.RECORD_RATE, source.at(row.number(), 1), row.all());
                hertz = 0.0;
            }
            rates.add(new Rate(hertz, last >= 0.0 ? (long) Math.min(last, 1e15) : 0L));
        }
        if (rates.size() < wanted) {
            remarks.add(Message.RECORD_RATES_MISSING, place(), line.text(0), Integer.toString(rates.size()));
        }
        return rates;
    }

    private Moment moment(MomentReader moments, String what) {
        if (!hasNext() || DataFormat.parse(lines.get(at).all()).isPresent()) {
            remarks.add(Message.RECORD_LINE_MISSING, place(), what);
            return Moment.UNKNOWN;
        }
        ConfigurationLine line = next();
        return moments.read(line.all(), source.at(line.number(), 1));
    }

    private Optional<DataFormat> format() {
        if (!hasNext()) {
            remarks.add(Message.RECORD_LINE_MISSING, place(), "the data's format");
            return Optional.empty();
        }
        ConfigurationLine line = next();
        Optional<DataFormat> format = DataFormat.parse(line.text(0));
        if (format.isEmpty()) {
            remarks.add(Message.RECORD_FORMAT, source.at(line.number(), 1), line.text(0));
        }
        return format;
    }

    private double multiplier(Revision revision) {
        if (!hasNext()) {
            if (revision != Revision.C1991) {
                remarks.add(Message.RECORD_LINE_MISSING, place(), "the multiplier of the time stamps, taken as 1");
            }
            return 1.0;
        }
        ConfigurationLine line = next();
        double multiplier = line.numberAt(0);
        if (!(multiplier >= 1.0 / LARGEST_MULTIPLIER && multiplier <= LARGEST_MULTIPLIER)) {
            remarks.add(Message.RECORD_MULTIPLIER, source.at(line.number(), 1), line.text(0));
            return 1.0;
        }
        return multiplier;
    }

    private Optional<Clock> clock(Revision revision) {
        if (revision != Revision.C2013) {
            return Optional.empty();
        }
        if (!hasNext()) {
            remarks.add(Message.RECORD_LINE_MISSING, place(), "the time code");
            return Optional.empty();
        }
        ConfigurationLine codes = next();
        String quality = "";
        String leap = "";
        if (hasNext()) {
            ConfigurationLine line = next();
            quality = line.text(0);
            leap = line.text(1);
        } else {
            remarks.add(Message.RECORD_LINE_MISSING, place(), "the quality of the clock");
        }
        return Optional.of(ClockReader.read(codes.text(0), codes.text(1), quality, leap));
    }
}
