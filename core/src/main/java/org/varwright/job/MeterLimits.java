package org.varwright.job;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.varwright.bank.Standard;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;
import org.varwright.survey.SurveySettings;

/**
 * By which limits of error the readings of a job are judged: those that its log states; of a meter that nobody stated, the usual ones, and that is said.
 * While devices disagree on a meter the smaller limits judge, for they hide nothing.
 *
 * @param stated what people stated and still stands; more than one of a meter where devices disagree
 */
public record MeterLimits(List<Counted<Fact.MeterStated>> stated) {
    /** Every meter that is not stated by its name. */
    private static final String ANY = "";

    public MeterLimits {
        stated = List.copyOf(stated);
    }

    /** What stands of one meter, by its name; of every meter that is not stated by name where that is empty. */
    public List<Counted<Fact.MeterStated>> of(Optional<String> instrument) {
        String key = key(instrument);
        return stated.stream().filter(s -> key(s.fact()).equals(key)).toList();
    }

    /** Limits of error of every meter that has none of its own, as a part of the reading. */
    public double limit() {
        return limitOf(ANY).orElse(SurveySettings.USUAL_METER_LIMIT);
    }

    /** Whether somebody stated the limits of every meter that has none of its own. */
    public boolean isStated() {
        return limitOf(ANY).isPresent();
    }

    /** The same of the meters that were stated by name, as a part of the reading. */
    public Map<String, Double> byInstrument() {
        Map<String, Double> limits = new LinkedHashMap<>();
        for (Counted<Fact.MeterStated> each : stated) {
            String key = key(each.fact());
            if (!key.equals(ANY)) {
                limits.put(key, limitOf(key).orElseThrow());
            }
        }
        return Collections.unmodifiableMap(limits);
    }

    /** What a survey of this job is judged with. */
    public SurveySettings settings(Standard standard) {
        return SurveySettings.of(standard, limit(), byInstrument());
    }

    /** The limits in a few words. */
    public String words() {
        List<String> words = new ArrayList<>();
        words.add("±" + percent(limit()) + (isStated() ? "" : " (usual; nobody has stated the meter's)"));
        byInstrument().forEach((name, limit) -> words.add(name + " ±" + percent(limit)));
        return String.join(", ", words);
    }

    /** Who stated which meter, a sentence each; of the meter that nobody stated, that it is so. */
    public List<String> sentences() {
        return sentences(event -> event.by());
    }

    /**
     * The same sentences with more than a name.
     *
     * @param who what is said of an event: who wrote it, and when
     */
    public List<String> sentences(Function<JobEvent, String> who) {
        List<String> sentences = new ArrayList<>();
        if (!isStated()) {
            sentences.add(
                    "every meter not stated by name: ±" + percent(limit()) + ", which is usual; nobody has stated it");
        }
        for (Counted<Fact.MeterStated> each : stated) {
            sentences.add(each.fact().instrument().orElse("every meter not stated by name") + ": ±"
                    + percent(requireLimit(each.fact().limit())) + " (" + who.apply(each.event()) + ")");
        }
        return sentences;
    }

    /** Meters on which devices disagree. */
    List<Conflict> conflicts() {
        Map<String, List<Counted<Fact.MeterStated>>> byMeter = new LinkedHashMap<>();
        stated.forEach(s ->
                byMeter.computeIfAbsent(key(s.fact()), k -> new ArrayList<>()).add(s));
        return byMeter.values().stream()
                .filter(all -> all.size() > 1)
                .map(all -> new Conflict(
                        "limits of error of "
                                + all.getFirst().fact().instrument().orElse("every meter not stated by name"),
                        all.stream().map(s -> s.event().id()).toList()))
                .toList();
    }

    /** The meter that a fact is of; the case of its name says nothing. */
    static String key(Fact.MeterStated fact) {
        return key(fact.instrument());
    }

    private static String key(Optional<String> instrument) {
        return instrument.map(name -> name.strip().toLowerCase(Locale.ROOT)).orElse(ANY);
    }

    /** Whether both, of the same meter, give the same limits. */
    static boolean sayTheSame(Fact.MeterStated one, Fact.MeterStated other) {
        return Double.compare(requireLimit(one.limit()), requireLimit(other.limit())) == 0;
    }

    /** Why limits are none that a meter has; nothing where they may be. */
    static List<Problem> problems(String typed) {
        try {
            SurveySettings.of(Standard.IEEE, requireLimit(typed));
            return List.of();
        } catch (VarwrightException e) {
            return e.problems();
        }
    }

    private OptionalDouble limitOf(String key) {
        return stated.stream()
                .map(Counted::fact)
                .filter(f -> key(f).equals(key))
                .mapToDouble(f -> requireLimit(f.limit()))
                .min();
    }

    private static double requireLimit(String typed) {
        Dimension part = Dimension.FRACTION;
        Place place = new Place("", 0, 0, "limit");
        return switch (part.parse(typed)) {
            case Reading.Value value -> value.si();
            case Reading.NoUnit r -> throw new VarwrightException(Message.NO_UNIT, place, r.text(), "1 %");
            case Reading.WrongUnit r ->
                throw new VarwrightException(Message.WRONG_UNIT, place, r.text(), r.unit(), "%", "1 %");
            case Reading.NotANumber r -> throw new VarwrightException(Message.NOT_A_QUANTITY, place, r.text(), "1 %");
            case Reading.DecimalComma r ->
                throw new VarwrightException(Message.DECIMAL_COMMA, place, r.text(), r.suggestion());
        };
    }

    private static String percent(double part) {
        return Dimension.digits(100.0 * part, 3) + " %";
    }
}
