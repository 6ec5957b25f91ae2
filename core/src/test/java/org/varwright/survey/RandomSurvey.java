package org.varwright.survey;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;

/**
 * A random bank with known truth and the table of readings that a person would bring back from it.
 *
 * @param bank the bank
 * @param table of readings, as CSV
 * @param meterLimit of the meter that read it
 * @param planted what is wrong, by position; healthy units are not in it
 */
record RandomSurvey(Bank bank, String table, double meterLimit, Map<String, Planted> planted) {
    /** What is wrong with a unit or with its reading. */
    enum Planted {
        SECTION_SHORTED,
        ELEMENTS_OUT,
        LEADS_OPEN,
        NEIGHBOUR,
        WRONG_RANGE,
        OVER_RANGE;

        boolean isLie() {
            return this != SECTION_SHORTED && this != ELEMENTS_OUT;
        }
    }

    Survey judged() {
        Readings readings = ReadingsFile.read(bank, "readings.csv", table.getBytes(StandardCharsets.UTF_8));
        return Survey.of(bank, readings, SurveySettings.of(bank.standard(), meterLimit));
    }

    /** Elements out are as many as a meter of ±1 % against mates can show: a step of 7 % at least. */
    static RandomSurvey of(long seed) {
        return of(seed, 0.93);
    }

    /** Elements out are a single one: a step of one to four percent, which few meters show. */
    static RandomSurvey withOneElementOut(long seed) {
        return of(seed, 1.0);
    }

    private static RandomSurvey of(long seed, double mostFactor) {
        SplittableRandom random = new SplittableRandom(seed);
        boolean fused = random.nextInt(3) == 0;
        int sections = fused ? random.nextInt(3, 6) : random.nextInt(3, 11);
        int elements = random.nextInt(8, 17);
        UnitType type = BankSketch.type(
                "U", 200e3, 7960, 60, new Tolerance(0.0, 0.10), sections, elements, fused, Optional.empty());
        Connection[] connections = {
            Connection.WYE_UNGROUNDED,
            Connection.WYE_GROUNDED,
            Connection.DELTA,
            Connection.DOUBLE_WYE_UNGROUNDED,
            Connection.BRIDGE_GROUNDED
        };
        LegLayout layout = new LegLayout(1, random.nextInt(1, 4), random.nextInt(2, 7));
        BankSketch sketch = new BankSketch()
                .system(13.8e3, 60, SystemGrounding.SOLID)
                .stage("s", connections[random.nextInt(connections.length)], layout, type);
        Bank plain = sketch.build();
        boolean factory = random.nextInt(10) < 6;
        double batch = 1.0 + random.nextDouble(0.0, 0.08);
        Map<UnitPosition, Double> truth = new LinkedHashMap<>();
        for (UnitPosition position : plain.positions()) {
            double healthy = type.capacitanceFarads() * batch * (1.0 + 0.008 * gauss(random));
            truth.put(position, healthy);
            if (factory) {
                sketch.known(position.name(), "", healthy * (1.0 + random.nextDouble(-0.004, 0.004)));
            }
        }
        Map<String, Planted> planted = plant(random, plain, fused);
        double meterLimit = random.nextBoolean() ? 0.01 : 0.005;
        double bias = 1.0 + random.nextDouble(-0.5, 0.5) * meterLimit;
        double celsius = random.nextDouble(-5.0, 40.0);
        boolean thermometer = random.nextInt(10) < 7;
        StringBuilder table =
                new StringBuilder("position,capacitance (µF)" + (thermometer ? ",temperature" : "") + "\n");
        for (UnitPosition position : plain.positions()) {
            double film = 1.0 - 3e-4 * (celsius - 25.0);
            double noise = 1.0 + random.nextDouble(-0.5, 0.5) * meterLimit;
            double read = truth.getOrDefault(position, 0.0) * film * bias * noise;
            double together = read;
            if (planted.get(position.name()) == Planted.NEIGHBOUR) {
                List<Double> others = truth.entrySet().stream()
                        .filter(e -> beside(e.getKey(), position))
                        .map(Map.Entry::getValue)
                        .toList();
                for (double other : others.subList(0, random.nextInt(1, layout.units()))) {
                    together += other * film * bias;
                }
            }
            String cell = cell(random, planted.get(position.name()), together, sections, elements, mostFactor);
            table.append(position.name()).append(',').append(cell);
            if (thermometer) {
                table.append(String.format(Locale.ROOT, ",%.0f", celsius));
            }
            table.append('\n');
        }
        return new RandomSurvey(sketch.build(), table.toString(), meterLimit, planted);
    }

    private static Map<String, Planted> plant(SplittableRandom random, Bank bank, boolean fused) {
        List<UnitPosition> positions = new ArrayList<>(bank.positions());
        Map<String, Planted> planted = new LinkedHashMap<>();
        int faults = random.nextInt(0, 3);
        int lies = random.nextInt(0, 3);
        for (int i = 0; i < faults + lies; i++) {
            UnitPosition position = positions.remove(random.nextInt(positions.size()));
            Planted kind = i < faults
                    ? fused ? Planted.ELEMENTS_OUT : Planted.SECTION_SHORTED
                    : Planted.values()[2 + random.nextInt(4)];
            planted.put(position.name(), kind);
        }
        return planted;
    }

    private static String cell(
            SplittableRandom random,
            @Nullable Planted planted,
            double read,
            int sections,
            int elements,
            double mostFactor) {
        double micro = read * 1e6;
        if (planted == null) {
            return String.format(Locale.ROOT, "%.3f", micro);
        }
        return switch (planted) {
            case SECTION_SHORTED -> String.format(Locale.ROOT, "%.3f", micro * sections / (sections - 1.0));
            case ELEMENTS_OUT -> {
                int out = 1;
                while (out < elements - 1 && factor(sections, elements, out) > mostFactor) {
                    out++;
                }
                yield String.format(Locale.ROOT, "%.3f", micro * factor(sections, elements, out));
            }
            case LEADS_OPEN -> String.format(Locale.ROOT, "%.4f", random.nextDouble(0.0, 0.01) * micro);
            case NEIGHBOUR -> String.format(Locale.ROOT, "%.3f", micro);
            case WRONG_RANGE ->
                String.format(Locale.ROOT, "%.6f", micro * Math.pow(10.0, random.nextBoolean() ? 3 : -3));
            case OVER_RANGE -> "OL";
        };
    }

    private static boolean beside(UnitPosition one, UnitPosition other) {
        return !one.equals(other)
                && one.leg().equals(other.leg())
                && one.string() == other.string()
                && one.group() == other.group();
    }

    private static double factor(int sections, int elements, int out) {
        double left = (double) sections * (elements - out);
        return left / (left + out);
    }

    private static double gauss(SplittableRandom random) {
        double sum = -6.0;
        for (int i = 0; i < 12; i++) {
            sum += random.nextDouble();
        }
        return sum;
    }
}
