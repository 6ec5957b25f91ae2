package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.UnitType;

/** Finds what each unit is to be held against: its own earlier value, its mates, its nameplate. */
final class References {
    /** Fewest mates whose median is taken. */
    private static final int FEWEST_MATES = 3;

    /** Fewest units with earlier values whose common error is taken out. */
    private static final int FEWEST_FOR_COMMON = 4;

    /** How many units the batch spread of the settings counts for beside the spread of the mates. */
    private static final double BATCH_COUNTS = 8.0;

    private final List<Gathered> all;
    private final Instruments instruments;
    private final Visits visits;
    private final SurveySettings settings;
    private final Map<String, Double> commonByInstrument = new LinkedHashMap<>();
    private final Map<String, Misprint> misprints = new LinkedHashMap<>();

    /**
     * Units of one type that agree with each other and not with their nameplate.
     *
     * @param type of unit
     * @param medianFarads what they read [F]
     * @param ratio to the nameplate's
     * @param words what may be behind it
     */
    record Misprint(UnitType type, double medianFarads, double ratio, String words) {}

    References(List<Gathered> all, Instruments instruments, Visits visits, SurveySettings settings) {
        this.all = all;
        this.instruments = instruments;
        this.visits = visits;
        this.settings = settings;
        findCommonErrors();
        findMisprints();
    }

    Map<String, Double> commonErrors() {
        return commonByInstrument;
    }

    List<Misprint> misprints() {
        return List.copyOf(misprints.values());
    }

    /** What a unit is held against; {@code known} is what is known of the unit that stands there by its serial number. */
    Reference of(Gathered unit, Optional<KnownUnit> known) {
        if (known.isPresent() && known.get().capacitanceFarads().isPresent()) {
            String scale = instruments.scaleOf(unit);
            double common = commonByInstrument.getOrDefault(scale, 1.0);
            boolean corrected = commonByInstrument.containsKey(scale);
            boolean warm = unit.takes().stream().allMatch(Gathered.Take::hasTemperature);
            // without a thermometer and without mates to show the common error, ±10 K are open
            double unknownKelvin = warm || corrected ? 0.0 : 10.0 * settings.capacitancePerKelvin();
            return new Reference.Factory(
                    known.get().capacitanceFarads().getAsDouble() * common,
                    Math.hypot(settings.factorySigma(), unknownKelvin));
        }
        return visits.reference(unit).or(() -> mates(unit)).orElseGet(() -> nameplate(unit));
    }

    private Optional<Reference> mates(Gathered unit) {
        record Scope(String where, Predicate<Gathered> holds) {}
        List<Scope> scopes = List.of(
                new Scope(
                        unit.position().leg().isEmpty()
                                ? unit.position().stage()
                                : "leg " + unit.position().stage() + "/"
                                        + unit.position().leg(),
                        other -> other.position().stage().equals(unit.position().stage())
                                && other.position().leg().equals(unit.position().leg())),
                new Scope(
                        unit.position().stage(),
                        other -> other.position().stage().equals(unit.position().stage())),
                new Scope("the bank", other -> true));
        for (Scope scope : scopes) {
            double[] values = all.stream()
                    .filter(other -> !other.position().equals(unit.position())
                            && other.type().equals(unit.type()))
                    .filter(scope.holds())
                    .flatMap(other -> other.middle().stream().boxed())
                    .mapToDouble(Double::doubleValue)
                    .filter(farads -> plausible(unit.type(), farads))
                    .toArray();
            if (values.length >= FEWEST_MATES) {
                double median = Robust.median(values);
                double own = Robust.sigma(values) / median;
                double batch = settings.batchSpread();
                double n = values.length;
                double variance = (n * own * own + BATCH_COUNTS * batch * batch) / (n + BATCH_COUNTS);
                double sigma = Math.sqrt(variance * (1.0 + Math.PI / 2.0 / n));
                return Optional.of(new Reference.Mates(median, sigma, values.length, scope.where()));
            }
        }
        return Optional.empty();
    }

    private Reference nameplate(Gathered unit) {
        UnitType type = unit.type();
        return new Reference.Nameplate(
                type.capacitanceFarads(),
                type.tolerance().low(),
                type.tolerance().high());
    }

    /** Whether a reading may come from a unit of this type at all, healthy or with a section or two gone. */
    private boolean plausible(UnitType type, double farads) {
        Misprint misprint = misprints.get(type.name());
        double middle = misprint == null ? type.capacitanceFarads() : misprint.medianFarads();
        return farads > 0.7 * middle * (1.0 + type.tolerance().low())
                && farads < 1.4 * middle * (1.0 + type.tolerance().high());
    }

    private void findCommonErrors() {
        Map<String, List<Double>> ratios = new LinkedHashMap<>();
        for (Gathered unit : all) {
            if (unit.middle().isPresent() && unit.factoryFarads().isPresent() && serialAgrees(unit)) {
                double ratio =
                        unit.middle().getAsDouble() / unit.factoryFarads().getAsDouble();
                if (ratio > 0.8 && ratio < 1.25) {
                    ratios.computeIfAbsent(instruments.scaleOf(unit), ignored -> new ArrayList<>())
                            .add(ratio);
                }
            }
        }
        ratios.forEach((instrument, list) -> {
            double median =
                    Robust.median(list.stream().mapToDouble(Double::doubleValue).toArray());
            // what meter and weather can do together; more than that is for a person to look at
            if (list.size() >= FEWEST_FOR_COMMON
                    && Math.abs(median - 1.0) <= 2.0 * settings.meterLimit(Optional.of(instrument)) + 0.01) {
                commonByInstrument.put(instrument, median);
            }
        });
    }

    static boolean serialAgrees(Gathered unit) {
        return unit.readSerial().isEmpty()
                || unit.known().flatMap(KnownUnit::serial).isEmpty()
                || Serials.same(
                        unit.readSerial().get(),
                        unit.known().flatMap(KnownUnit::serial).get());
    }

    private void findMisprints() {
        Map<String, List<Gathered>> byType = new LinkedHashMap<>();
        all.stream()
                .filter(unit ->
                        unit.middle().isPresent() && unit.factoryFarads().isEmpty())
                .forEach(unit -> byType.computeIfAbsent(unit.type().name(), ignored -> new ArrayList<>())
                        .add(unit));
        byType.forEach((name, units) -> {
            double[] values = units.stream()
                    .mapToDouble(unit -> unit.middle().orElse(0.0))
                    .toArray();
            double median = Robust.median(values);
            long close = units.stream()
                    .filter(unit -> Math.abs(unit.middle().orElse(0.0) / median - 1.0) < 0.05)
                    .count();
            if (values.length >= FEWEST_FOR_COMMON && close >= 0.7 * values.length) {
                misprint(units.getFirst().type(), median).ifPresent(misprint -> misprints.put(name, misprint));
            }
        });
    }

    private Optional<Misprint> misprint(UnitType type, double median) {
        record Slip(double ratio, String words) {}
        double ratio = median / type.capacitanceFarads();
        double low = 1.0 + type.tolerance().low() - settings.meterLimit() - 0.01;
        double high = 1.0 + type.tolerance().high() + settings.meterLimit() + 0.01;
        if (ratio >= low && ratio <= high) {
            return Optional.empty();
        }
        List<Slip> slips = List.of(
                new Slip(1.2, "as if kvar were for 50 Hz"),
                new Slip(1.0 / 1.2, "as if kvar were for 60 Hz"),
                new Slip(
                        3.0,
                        type.threePhase().isPresent()
                                ? "as a wye taken for a delta by the file would read"
                                : "as if kvar were for one phase and the voltage for three"),
                new Slip(
                        1.0 / 3.0,
                        type.threePhase().isPresent()
                                ? "as a delta taken for a wye by the file would read"
                                : "as if kvar were for three phases"));
        for (Slip slip : slips) {
            if (ratio >= slip.ratio() * low && ratio <= slip.ratio() * high) {
                return Optional.of(new Misprint(type, median, ratio, slip.words()));
            }
        }
        return ratio > 0.75 && ratio < 1.35
                ? Optional.of(new Misprint(type, median, ratio, "kvar, kV and Hz do not give it"))
                : Optional.empty();
    }
}
