package org.varwright.cli;

import org.varwright.bankfile.BankCheck;
import org.varwright.bankfile.BankCheckJson;
import org.varwright.bankfile.BankCheckText;
import picocli.CommandLine.Command;

/** {@code check BANK}. */
@Command(
        name = "check",
        description = {
            "Reads the bank file and prints every error and warning with its place, and the bank in brief.",
            "Exit 2 where there is an error; warnings stop nothing."
        })
final class CheckCommand extends BankCommand {
    @Override
    Answer answer(BankArgument bank) {
        BankCheck check = BankCheck.of(bank.reading());
        return new Answer(
                BankCheckText.of(check, explain()),
                BankCheckJson.of(check),
                check.ok() ? ExitCode.DONE : ExitCode.BAD_INPUT);
    }
}
