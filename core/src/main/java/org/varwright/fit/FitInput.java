package org.varwright.fit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitPosition;
import org.varwright.survey.Survey;

/**
 * Everything that a fit starts from.
 *
 * @param bank the bank; its spares are not used
 * @param units one for each position of the bank, in the bank's order
 * @param spares units that could be fitted
 * @param options what the person asks for
 * @param provisional positions whose units must be measured again before anything is fitted
 * @param remarks what was assumed on the way here, each one sentence; shown with the result
 */
public record FitInput(
        Bank bank,
        List<Fitted> units,
        List<Spare> spares,
        FitOptions options,
        List<String> provisional,
        List<String> remarks) {
    public FitInput {
        units = List.copyOf(units);
        provisional = List.copyOf(provisional);
        remarks = List.copyOf(remarks);
        spares = List.copyOf(spares);
    }

    /**
     * The bank with what is known of single positions; every other unit is kept with the capacitance of the bank file, else the nameplate's.
     *
     * @param bank the bank, whose spares are used
     * @param known what is known, at most one a position
     * @param options what the person asks for
     */
    public static FitInput of(Bank bank, List<Fitted> known, FitOptions options) {
        Map<UnitPosition, Fitted> at = new HashMap<>();
        known.forEach(k -> at.put(k.at(), k));
        List<Fitted> units = new ArrayList<>();
        for (UnitPosition position : bank.positions()) {
            Fitted given = at.get(position);
            units.add(given == null ? asFiled(bank, position) : given);
        }
        return new FitInput(bank, units, bank.spares(), options, List.of(), List.of());
    }

    /** What the bank file says of a position: kept. */
    static Fitted asFiled(Bank bank, UnitPosition position) {
        Optional<KnownUnit> filed = bank.unitAt(position);
        double nameplate = bank.stage(position.stage()).orElseThrow().unit().capacitanceFarads();
        boolean measured = filed.isPresent() && filed.get().capacitanceFarads().isPresent();
        return new Fitted(
                position,
                filed.flatMap(KnownUnit::serial),
                measured ? filed.get().capacitanceFarads().getAsDouble() : nameplate,
                measured ? Fitted.From.KNOWN : Fitted.From.NAMEPLATE,
                Fitted.Role.KEPT,
                "");
    }

    /**
     * The bank as a survey leaves it: units to be replaced are condemned, those to be measured again stay with their reference and are not moved, all others
     * are kept with what was measured, else with the reference, else as filed.
     *
     * @param survey the survey
     * @param spares units that could be fitted
     * @param options what the person asks for
     */
    public static FitInput from(Survey survey, List<Spare> spares, FitOptions options) {
        return SurveyedUnits.of(survey, spares, options);
    }
}
