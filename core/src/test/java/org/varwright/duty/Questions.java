package org.varwright.duty;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.TransformerRatio;

/** Questions with one thing asked beyond the bank file. */
final class Questions {
    private Questions() {}

    static DutyQuestion elsewhere(double volts, double hertz) {
        return new DutyQuestion(
                OptionalDouble.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.of(new DutyQuestion.Elsewhere(volts, hertz)),
                List.of(),
                DutyQuestion.PLAIN.entered());
    }

    static DutyQuestion currentRatioEntered(TransformerRatio ratio) {
        return new DutyQuestion(
                OptionalDouble.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                new DutyQuestion.EnteredRatios(Optional.empty(), Optional.of(ratio)));
    }

    static DutyQuestion voltageRatioEntered(TransformerRatio ratio) {
        return new DutyQuestion(
                OptionalDouble.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                new DutyQuestion.EnteredRatios(Optional.of(ratio), Optional.empty()));
    }
}
