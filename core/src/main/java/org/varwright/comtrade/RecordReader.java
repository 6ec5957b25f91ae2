package org.varwright.comtrade;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * Reads disturbance records of IEEE C37.111-1991, -1999 and -2013: exact where the standard is, forgiving where files in the field are not, every
 * forgiveness said. The data are read twice, block by block: once to see how many samples there are and what their stamps look like, once to keep what is
 * wanted.
 */
public final class RecordReader {
    /** Text of header and information files that is kept. */
    private static final int NOTE_BYTES = 1 << 20;

    private static final int NAMES_SHOWN = 12;

    /** A trigger at the last sample may lie behind it by the rounding of the lines. */
    private static final double TRIGGER_SLACK_SECONDS = 1e-3;

    private final RecordFiles files;
    private final ReadOptions options;
    private final Remarks remarks;

    private RecordReader(RecordFiles files, ReadOptions options, Remarks remarks) {
        this.files = files;
        this.options = options;
        this.remarks = remarks;
    }

    /**
     * Reads a record of several files.
     *
     * @throws VarwrightException where no samples can be got out of them, or more than {@code options} allows to keep
     */
    public static Recording read(RecordFiles files, ReadOptions options) {
        return new RecordReader(files, options, new Remarks()).read();
    }

    /**
     * Reads a combined file ({@code .cff}).
     *
     * @throws VarwrightException where no samples can be got out of it, or more than {@code options} allows to keep
     */
    public static Recording readCombined(Source file, ReadOptions options) {
        Remarks remarks = new Remarks();
        return new RecordReader(CombinedFile.split(file, remarks), options, remarks).read();
    }

    private Recording read() {
        Configuration configuration = ConfigurationReader.read(files.configuration(), options, remarks);
        int[] wanted = wanted(configuration.analogs());
        DataReader.Opened opened = new DataReader(configuration, files.data(), remarks).open(files.dataFormat());
        StampSurvey survey = survey(opened.rows(), configuration);
        if (survey.samples() == 0L) {
            throw new VarwrightException(Message.RECORD_NO_SAMPLES, dataPlace());
        }
        RatePlan plan = RatePlan.of(configuration.rates(), survey.samples(), cfgPlace(), remarks);
        TimeBasis basis = basis(plan, survey, configuration);
        TimeLine line =
                new TimeLine(basis, survey.followsRates(), plan, configuration.stampSeconds(), remarks, dataPlace());
        Columns columns = keep(opened.rows(), configuration, wanted, line, survey);
        List<Analog> analogs = new ArrayList<>();
        for (int i = 0; i < wanted.length; i++) {
            Analog head = configuration.analogs().get(wanted[i]);
            analogs.add(new Analog(
                    head.number(),
                    head.name(),
                    head.phase(),
                    head.component(),
                    head.unit(),
                    head.scale(),
                    head.ratio(),
                    head.skewSeconds(),
                    columns.values(i, head.scale())));
        }
        List<Status> statuses = new ArrayList<>();
        for (int i = 0; i < configuration.statuses().size(); i++) {
            Status head = configuration.statuses().get(i);
            statuses.add(new Status(
                    head.number(), head.name(), head.phase(), head.component(), head.normal(), columns.states(i)));
        }
        TimeBasis found = line.gaps() > 0 ? TimeBasis.RATES_WITH_GAPS : basis;
        return new Recording(
                new Origin(
                        configuration.revision(),
                        configuration.year(),
                        opened.format(),
                        configuration.codePage(),
                        survey.samples()),
                configuration.station(),
                configuration.device(),
                configuration.hertz(),
                analogs,
                statuses,
                columns.seconds(),
                new Timing(
                        configuration.start(),
                        configuration.trigger(),
                        trigger(configuration, survey, line.seconds()),
                        configuration.rates(),
                        found,
                        configuration.clock()),
                note(files.header()),
                note(files.information()),
                remarks.list());
    }

    private Place cfgPlace() {
        return files.configuration().whole();
    }

    private Place dataPlace() {
        return files.data().whole();
    }

    /** Indices of the channels that are wanted, in the record's order. */
    private int[] wanted(List<Analog> analogs) {
        Set<Integer> indices = new LinkedHashSet<>();
        for (String name : options.channels()) {
            boolean found = false;
            for (Analog analog : analogs) {
                if (analog.name().strip().equalsIgnoreCase(name.strip())
                        || Integer.toString(analog.number()).equals(name.strip())) {
                    indices.add(analog.number() - 1);
                    found = true;
                }
            }
            if (!found) {
                throw new VarwrightException(Message.RECORD_NO_CHANNEL, cfgPlace(), name, names(analogs));
            }
        }
        int[] all = new int[options.channels().isEmpty() ? analogs.size() : indices.size()];
        int at = 0;
        for (int i = 0; i < analogs.size(); i++) {
            if (options.channels().isEmpty() || indices.contains(i)) {
                all[at] = i;
                at++;
            }
        }
        return all;
    }

    private static String names(List<Analog> analogs) {
        List<String> names = new ArrayList<>();
        for (Analog analog : analogs) {
            if (names.size() == NAMES_SHOWN) {
                names.add((analogs.size() - NAMES_SHOWN) + " more");
                break;
            }
            names.add(analog.number() + " \"" + analog.name() + "\"");
        }
        return names.isEmpty() ? "none" : String.join(", ", names);
    }

    private StampSurvey survey(Rows rows, Configuration configuration) {
        // what is said of the rates is said once the number of samples is known
        RatePlan plan = RatePlan.of(configuration.rates(), -1L, cfgPlace(), new Remarks());
        StampSurvey survey = new StampSurvey(plan, configuration.stampSeconds());
        while (rows.next()) {
            survey.add(rows.number(), rows.stamp());
        }
        rows.rewind();
        return survey;
    }

    private TimeBasis basis(RatePlan plan, StampSurvey survey, Configuration configuration) {
        long stated = configuration.rates().isEmpty()
                ? 0L
                : configuration.rates().get(configuration.rates().size() - 1).lastSample();
        if (stated != survey.samples()) {
            remarks.add(
                    Message.RECORD_SAMPLE_COUNT, dataPlace(), Long.toString(stated), Long.toString(survey.samples()));
        }
        if (survey.jumps() > 0) {
            remarks.add(Message.RECORD_NUMBERS_JUMP, dataPlace(), Long.toString(survey.jumps()));
        }
        if (survey.wraps() > 0) {
            remarks.add(Message.RECORD_WRAPS, dataPlace(), Long.toString(survey.wraps()));
        }
        if (!plan.isEmpty()) {
            if (survey.contradictsRates()) {
                remarks.add(Message.RECORD_STAMPS_DIFFER, dataPlace());
            } else if (survey.falls() > 0) {
                remarks.add(Message.RECORD_STAMPS_FALL, dataPlace(), Long.toString(survey.falls()));
            }
            return TimeBasis.RATES;
        }
        if (survey.isTimeBase() || survey.samples() == 1L) {
            return TimeBasis.STAMPS;
        }
        remarks.add(Message.RECORD_NO_TIME, dataPlace());
        return TimeBasis.NONE;
    }

    private Columns keep(Rows rows, Configuration configuration, int[] wanted, TimeLine line, StampSurvey survey) {
        int statuses = configuration.statuses().size();
        // a state takes a bit, a value 64
        long perSample = 1L + wanted.length + (statuses + 63) / 64;
        long most = Math.max(1L, Math.min(options.valuesAtMost() / perSample, Integer.MAX_VALUE / 2));
        if (!options.isWindow() && survey.samples() > most) {
            throw tooMany(configuration, wanted.length, survey, most);
        }
        Columns columns =
                new Columns(wanted.length, statuses, options.isWindow() ? 0 : (int) survey.samples(), (int) most);
        double[] numbers = new double[configuration.analogs().size()];
        long[] states = new long[Bits.wordsFor(statuses)];
        double last = 0.0;
        while (rows.next()) {
            double seconds = line.next(rows.stamp());
            last = seconds;
            if (seconds >= options.fromSeconds() && seconds <= options.toSeconds()) {
                if (columns.isFull()) {
                    throw tooMany(configuration, wanted.length, survey, most);
                }
                Arrays.fill(states, 0L);
                rows.read(numbers, states);
                columns.add(seconds, numbers, wanted, states);
            }
        }
        if (columns.size() == 0) {
            throw new VarwrightException(
                    Message.RECORD_NOTHING_THERE,
                    dataPlace(),
                    String.format(Locale.ROOT, "%.6f", last),
                    bound(options.fromSeconds()),
                    bound(options.toSeconds()));
        }
        return columns;
    }

    private static String bound(double seconds) {
        return Math.abs(seconds) <= Double.MAX_VALUE ? String.format(Locale.ROOT, "%.6f s", seconds) : "the end";
    }

    private VarwrightException tooMany(Configuration configuration, int channels, StampSurvey survey, long most) {
        return new VarwrightException(
                Message.RECORD_TOO_MANY,
                dataPlace(),
                Long.toString(survey.samples()),
                Integer.toString(channels),
                Long.toString(options.valuesAtMost()),
                Long.toString(most),
                Integer.toString(configuration.analogs().size()));
    }

    /** When the recorder was triggered, from the first sample; empty where the record doesn't say or says what can't be. */
    private OptionalDouble trigger(Configuration configuration, StampSurvey survey, double lastSeconds) {
        Optional<Instant> start = configuration.start().instant();
        Optional<Instant> trigger = configuration.trigger().instant();
        if (start.isEmpty() || trigger.isEmpty()) {
            return OptionalDouble.empty();
        }
        double seconds = trigger.get().secondsAfter(start.get());
        if (survey.first() < 0.0) {
            // stamps that start below 0 count from the line of the start, which then is the trigger's
            remarks.add(Message.RECORD_NEGATIVE_STAMP, dataPlace());
            seconds -= survey.first() * configuration.stampSeconds();
        }
        if (seconds < 0.0 || seconds > lastSeconds + TRIGGER_SLACK_SECONDS) {
            remarks.add(
                    Message.RECORD_TRIGGER,
                    cfgPlace(),
                    configuration.trigger().written(),
                    configuration.start().written());
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(seconds);
    }

    /** Text of a file beside; it never stops a record. */
    private String note(Optional<Source> source) {
        if (source.isEmpty()) {
            return "";
        }
        byte[] bytes = source.get().bytes().part(0L, NOTE_BYTES).all();
        TextDecoder guess = TextDecoder.looksLike(bytes, options.codePages());
        TextDecoder decoder = options.codePage()
                .map(name -> TextDecoder.of(name, options.codePages()))
                .orElse(guess);
        return decoder.decode(bytes).replace("\u001a", "").replace("\u0000", "").strip();
    }
}
