package org.varwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.quantity.Dimension;
import org.varwright.survey.Reference;
import org.varwright.survey.Survey;
import org.varwright.survey.UnitSurvey;
import org.varwright.survey.UnitVerdict;

/** Turns the verdicts of a survey into what may be done with each unit (FIT-10). */
final class SurveyedUnits {
    /** Readings that stand off the earlier values by less, all alike, are left as they are. */
    private static final double SMALLEST_SCALE = 0.001;
    /** More than this is no error of a meter: left alone. */
    private static final double LARGEST_SCALE = 0.05;
    /** Units needed to tell a common error. */
    private static final int ENOUGH = 5;

    private SurveyedUnits() {}

    static FitInput of(Survey survey, List<Spare> spares, FitOptions options) {
        Bank bank = survey.bank();
        double scale = scale(survey);
        List<Fitted> units = new ArrayList<>();
        List<String> remarks = new ArrayList<>();
        if (scale != 1.0) {
            remarks.add("readings are divided by " + Dimension.digits(scale, 5)
                    + ": good units with earlier values read off them by that much, all alike (meter or temperature), and spares"
                    + " are counted with their own values; measure the spares with the same meter to be sure");
        }
        for (UnitSurvey unit : survey.units()) {
            units.add(fitted(bank, unit, scale));
        }
        List<String> provisional = survey.with(UnitVerdict.MEASURE_AGAIN).stream()
                .map(u -> u.position().name())
                .toList();
        return new FitInput(bank, units, spares, options, provisional, remarks);
    }

    /** What all readings of good units have in common against those units' own earlier values: the median ratio; 1 where it can't be told. */
    private static double scale(Survey survey) {
        List<Double> ratios = survey.units().stream()
                .filter(u -> u.verdict() == UnitVerdict.HEALTHY)
                .filter(u -> u.reference().isPresent() && u.reference().get().isOwn())
                .map(UnitSurvey::ratio)
                .flatMap(r -> r.stream().boxed())
                .sorted()
                .toList();
        if (ratios.size() < ENOUGH) {
            return 1.0;
        }
        double median = (ratios.get((ratios.size() - 1) / 2) + ratios.get(ratios.size() / 2)) / 2.0;
        double off = Math.abs(median - 1.0);
        return off >= SMALLEST_SCALE && off <= LARGEST_SCALE ? median : 1.0;
    }

    private static Fitted fitted(Bank bank, UnitSurvey unit, double scale) {
        Fitted filed = FitInput.asFiled(bank, unit.position());
        Optional<String> serial = unit.serial().or(filed::serial);
        OptionalDouble measured = unit.capacitanceFarads().isPresent()
                ? OptionalDouble.of(unit.capacitanceFarads().getAsDouble() / scale)
                : OptionalDouble.empty();
        double reference = unit.referenceFarads().orElse(filed.capacitanceFarads());
        Fitted.From referenceFrom =
                unit.referenceFarads().isPresent() && unit.reference().isPresent()
                        ? switch (unit.reference().get()) {
                            case Reference.Factory f -> Fitted.From.KNOWN;
                            case Reference.Earlier e -> Fitted.From.KNOWN;
                            case Reference.Mates m -> Fitted.From.MATES;
                            case Reference.Nameplate n -> Fitted.From.NAMEPLATE;
                        }
                        : filed.from();
        return switch (unit.verdict()) {
            case HEALTHY, WATCH ->
                new Fitted(
                        unit.position(),
                        serial,
                        measured.orElse(reference),
                        measured.isPresent() ? Fitted.From.MEASURED : referenceFrom,
                        Fitted.Role.KEPT,
                        unit.verdict() == UnitVerdict.WATCH ? unit.reason() : "");
            case NOT_MEASURED -> new Fitted(unit.position(), serial, reference, referenceFrom, Fitted.Role.KEPT, "");
            case MEASURE_AGAIN ->
                new Fitted(
                        unit.position(),
                        serial,
                        reference,
                        referenceFrom,
                        Fitted.Role.IMMOVABLE,
                        "measure again; until then it stays and is counted with "
                                + Dimension.CAPACITANCE.format(reference) + " (" + referenceFrom.words() + "): "
                                + unit.reason());
            case REPLACE ->
                new Fitted(
                        unit.position(),
                        serial,
                        disconnected(unit) ? 0.0 : measured.orElse(0.0),
                        measured.isPresent() ? Fitted.From.MEASURED : referenceFrom,
                        Fitted.Role.CONDEMNED,
                        unit.reason());
        };
    }

    /** Behind an operated fuse the unit is not in the circuit, whatever it measures. */
    private static boolean disconnected(UnitSurvey unit) {
        return unit.finding().filter("fuse-open"::equals).isPresent();
    }
}
