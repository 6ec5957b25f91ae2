package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * What the survey says of random banks whose truth is known: the law test asserts on it, the bench prints it.
 *
 * @param banks that were judged
 * @param counts by truth (in the order of {@link #TRUTHS}) and verdict
 * @param oneElement units with a single element fuse operated, by what they were held against and verdict
 * @param silent such units that were called healthy without a word of it, each with its seed
 * @param wrong units whose fault was missed, or that were condemned without one, each with its seed
 */
public record SurveyConfusion(
        int banks,
        Map<String, Map<UnitVerdict, Integer>> counts,
        Map<String, Map<UnitVerdict, Integer>> oneElement,
        List<String> silent,
        List<String> wrong) {
    private static final String HEALTHY = "healthy";

    /** Truths in the order of the table, with their words. */
    private static final Map<String, String> TRUTHS = truths();

    private static final List<UnitVerdict> VERDICTS =
            List.of(UnitVerdict.HEALTHY, UnitVerdict.WATCH, UnitVerdict.REPLACE, UnitVerdict.MEASURE_AGAIN);

    private static Map<String, String> truths() {
        Map<String, String> truths = new LinkedHashMap<>();
        truths.put(HEALTHY, HEALTHY);
        truths.put("SECTION_SHORTED", "one section shorted");
        truths.put("ELEMENTS_OUT", "elements out, a step of 7 % or more");
        truths.put("LEADS_OPEN", "leads open");
        truths.put("OVER_RANGE", "over range (leads touch)");
        truths.put("NEIGHBOUR", "neighbour connected");
        truths.put("WRONG_RANGE", "wrong range");
        return truths;
    }

    /**
     * Judges banks.
     *
     * @param banks seeds 1 to this
     */
    public static SurveyConfusion of(int banks) {
        Map<String, Map<UnitVerdict, Integer>> counts = new LinkedHashMap<>();
        TRUTHS.keySet().forEach(truth -> counts.put(truth, new LinkedHashMap<>()));
        List<String> wrong = new ArrayList<>();
        for (long seed = 1; seed <= banks; seed++) {
            RandomSurvey random = RandomSurvey.of(seed);
            for (UnitSurvey unit : random.judged().units()) {
                RandomSurvey.Planted planted =
                        random.planted().get(unit.position().name());
                String truth = planted == null ? HEALTHY : planted.name();
                counts.computeIfAbsent(truth, ignored -> new LinkedHashMap<>()).merge(unit.verdict(), 1, Integer::sum);
                boolean found;
                if (planted == null) {
                    // a unit in order may be watched or measured again, never condemned
                    found = unit.verdict() != UnitVerdict.REPLACE;
                } else if (planted.isLie()) {
                    found = unit.verdict() == UnitVerdict.MEASURE_AGAIN;
                } else {
                    found = unit.verdict() != UnitVerdict.HEALTHY && unit.verdict() != UnitVerdict.NOT_MEASURED;
                }
                if (!found) {
                    wrong.add("seed " + seed + " " + unit.position().name() + " " + truth + ": " + unit.reason());
                }
            }
        }
        Map<String, Map<UnitVerdict, Integer>> oneElement = new LinkedHashMap<>();
        List<String> silent = new ArrayList<>();
        for (long seed = 1; seed <= banks; seed++) {
            oneElement(seed, oneElement, silent);
        }
        return new SurveyConfusion(banks, counts, oneElement, List.copyOf(silent), List.copyOf(wrong));
    }

    private static void oneElement(long seed, Map<String, Map<UnitVerdict, Integer>> oneElement, List<String> silent) {
        RandomSurvey random = RandomSurvey.withOneElementOut(seed);
        if (!random.planted().containsValue(RandomSurvey.Planted.ELEMENTS_OUT)) {
            return;
        }
        for (UnitSurvey unit : random.judged().units()) {
            if (random.planted().get(unit.position().name()) != RandomSurvey.Planted.ELEMENTS_OUT) {
                continue;
            }
            boolean own = unit.reference().map(Reference::isOwn).orElse(false);
            String against = (own ? "its own earlier value" : "its mates") + ", meter ±"
                    + (random.meterLimit() == 0.005 ? "0.5 %" : "1 %");
            oneElement
                    .computeIfAbsent(against, ignored -> new LinkedHashMap<>())
                    .merge(unit.verdict(), 1, Integer::sum);
            boolean said = unit.reason().contains("One element out changes it by")
                    || unit.reason().contains("all the same, 1 of");
            if (unit.verdict() == UnitVerdict.HEALTHY && !said) {
                silent.add("seed " + seed + " " + unit.position().name() + ": " + unit.reason());
            }
        }
    }

    /** Units of one truth with one verdict. */
    public int count(String truth, UnitVerdict verdict) {
        return counts.getOrDefault(truth, Map.of()).getOrDefault(verdict, 0);
    }

    /** Units of one truth. */
    public int of(String truth) {
        return counts.getOrDefault(truth, Map.of()).values().stream()
                .mapToInt(Integer::intValue)
                .sum();
    }

    /** Faults and slips that were called healthy. */
    public int missed() {
        return TRUTHS.keySet().stream()
                .filter(truth -> !truth.equals(HEALTHY))
                .mapToInt(truth -> count(truth, UnitVerdict.HEALTHY))
                .sum();
    }

    /** Healthy units that were to be replaced. */
    public int invented() {
        return count(HEALTHY, UnitVerdict.REPLACE);
    }

    /** Healthy units that were watched or to be measured again. */
    public int doubted() {
        return of(HEALTHY) - count(HEALTHY, UnitVerdict.HEALTHY) - invented();
    }

    /** The table with a sentence, in Markdown. */
    public String text() {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%,d random banks of known truth (`RandomSurvey`, seeds 1 to %d): meters of ±1 %% and ±0.5 %% with a common and a random error, six in ten"
                        + " banks with earlier values. Rows: what was planted; columns: the verdict.%n%n",
                banks,
                banks));
        text.append(
                "| truth | units | healthy | watch | replace | measure again |\n| --- | --: | --: | --: | --: | --: |\n");
        TRUTHS.forEach((truth, words) -> {
            text.append("| ").append(words).append(String.format(Locale.ROOT, " | %d", of(truth)));
            VERDICTS.forEach(verdict -> text.append(String.format(Locale.ROOT, " | %d", count(truth, verdict))));
            text.append(" |\n");
        });
        text.append(String.format(
                Locale.ROOT,
                "%nMissed (a fault or a slip called healthy): %d. Invented (a healthy unit to be replaced): %d. Healthy units that were doubted: %d of %d.%n",
                missed(),
                invented(),
                doubted(),
                of(HEALTHY)));
        text.append(String.format(
                Locale.ROOT,
                "%nThe same banks with a single element fuse operated in a unit, a step of one to four percent. Called healthy without a word that one may be"
                        + " out or that so small a step can't be shown: %d.%n%n| held against | units | healthy | watch | replace | measure again |%n| --- | --: | --: | --: | --: | --: |%n",
                silent.size()));
        new TreeMap<>(oneElement).forEach((against, verdicts) -> {
            text.append("| ").append(against).append(" | ");
            text.append(verdicts.values().stream().mapToInt(Integer::intValue).sum());
            VERDICTS.forEach(verdict -> text.append(" | ").append(verdicts.getOrDefault(verdict, 0)));
            text.append(" |\n");
        });
        return text.toString();
    }
}
