package org.varwright.cli;

import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.varwright.basis.BasisText;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.discharge.Discharge;
import org.varwright.discharge.DischargeJson;
import org.varwright.discharge.DischargeText;
import org.varwright.discharge.Stick;
import org.varwright.quantity.Dimension;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code discharge BANK}. */
@Command(name = "discharge", description = "Waiting times, stored energies and the discharge stick, stage by stage.")
final class DischargeCommand extends BankCommand {
    @Option(
            names = "--stick",
            paramLabel = "OHMS",
            description = "Resistance of the discharge stick at hand, such as \"10 kΩ\" or 10kohm.")
    private @Nullable String stickOhms;

    @Option(
            names = "--stick-energy",
            paramLabel = "JOULES",
            description = "Energy that the stick's resistor bears, such as 2kJ.")
    private @Nullable String stickJoules;

    @Override
    Answer answer(BankArgument bank) {
        Optional<Stick> stick = Optional.ofNullable(stickOhms)
                .map(ohms -> new Stick(
                        Typed.quantity("--stick", Dimension.RESISTANCE, ohms),
                        stickJoules == null
                                ? OptionalDouble.empty()
                                : OptionalDouble.of(Typed.quantity("--stick-energy", Dimension.ENERGY, stickJoules))));
        Discharge discharge = Discharge.of(bank.bank(err()), stick);
        String text = DischargeText.of(discharge) + (explain() ? BasisText.ofChecks(discharge.checks()) : "");
        return new Answer(text, DischargeJson.of(discharge), code(discharge.checks()));
    }

    private static ExitCode code(Iterable<Check> checks) {
        for (Check check : checks) {
            if (check.verdict() == Verdict.FAIL) {
                return ExitCode.NO;
            }
        }
        return ExitCode.DONE;
    }
}
