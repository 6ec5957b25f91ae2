package org.varwright.cli;

import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.quantity.Dimension;
import org.varwright.triage.RunOn;
import org.varwright.triage.Symptom;
import org.varwright.triage.Triage;
import org.varwright.triage.TriageJson;
import org.varwright.triage.TriageQuestion;
import org.varwright.triage.TriageText;
import org.varwright.unbalance.Sighting;
import org.varwright.unbalance.SightingReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code triage BANK}. */
@Command(
        name = "triage",
        description = {
            "What an alarm or something seen may mean, what to check first, whether the bank may run on, what to bring.",
            "Exit 1 where it may not run on, 3 where that is undecided."
        })
final class TriageCommand extends BankCommand {
    @Option(
            names = "--symptom",
            required = true,
            paramLabel = "WORD",
            completionCandidates = Words.class,
            description = "What was reported, one of: ${COMPLETION-CANDIDATES}.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String symptom;

    @Option(names = "--stage", paramLabel = "STAGE", description = "The stage that it is about; all where nobody says.")
    private @Nullable String stage;

    @Option(
            names = "--reading",
            paramLabel = "[SENSOR=]VALUE",
            description = "What the relay shows, such as 0.55A; with the sensor's name where there are several.")
    private @Nullable String reading;

    @Option(names = "--primary", description = "The reading is a primary value; otherwise it is at the relay.")
    private boolean primary;

    @Option(
            names = "--uncertainty",
            paramLabel = "PERCENT",
            defaultValue = "3 %",
            description = "Of the reading (default ${DEFAULT-VALUE}).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String uncertainty;

    @Option(
            names = "--bus",
            paramLabel = "VOLTS",
            description = "Bus voltage, line to line; the nominal voltage where it is not given.")
    private @Nullable String bus;

    /** The symptoms that there are. */
    static final class Words implements Iterable<String> {
        @Override
        public Iterator<String> iterator() {
            return Symptom.codes().iterator();
        }
    }

    @Override
    Answer answer(BankArgument argument) {
        Symptom what = Symptom.require(symptom);
        Bank bank = argument.bank(err());
        Triage triage = Triage.of(
                bank,
                new TriageQuestion(
                        what,
                        Optional.ofNullable(stage),
                        sighting(bank),
                        bus == null
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(Typed.quantity("--bus", Dimension.VOLTAGE, bus))));
        return new Answer(
                TriageText.of(triage, explain()),
                TriageJson.of(triage),
                code(triage.runOn().answer()));
    }

    private Optional<Sighting> sighting(Bank bank) {
        return reading == null
                ? Optional.empty()
                : Optional.of(new SightingReader(bank)
                        .read(
                                reading,
                                primary,
                                OptionalDouble.empty(),
                                Typed.quantity("--uncertainty", Dimension.FRACTION, uncertainty),
                                Optional.empty(),
                                List.of()));
    }

    private static ExitCode code(RunOn.Answer answer) {
        return switch (answer) {
            case YES_WITH -> ExitCode.DONE;
            case NO -> ExitCode.NO;
            case UNDECIDED -> ExitCode.UNDECIDED;
        };
    }
}
