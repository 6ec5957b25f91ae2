package org.varwright.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.bankfile.BankReading;
import org.varwright.job.Job;
import org.varwright.job.Planner;
import picocli.CommandLine.Parameters;

/** The bank file that most commands take. */
final class BankArgument {
    @Parameters(
            paramLabel = "BANK",
            index = "0",
            description = "The bank file (.bank.yaml), or a job log (.job.jsonl) for the bank in it.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path file;

    Path file() {
        return file;
    }

    /** The job where the file is a job log. */
    Optional<Job> job() {
        return file.toString().endsWith(".jsonl")
                ? Optional.of(Job.of(new JobFile(file).log(), Planner.keeping()))
                : Optional.empty();
    }

    BankReading reading() {
        return job().map(job ->
                        BankFile.read(file + ", bank file", job.bankText().getBytes(StandardCharsets.UTF_8)))
                .orElseGet(() -> BankFile.read(file.toString(), InputFile.read(file)));
    }

    /**
     * The bank; its warnings are counted on standard error, they stop nothing.
     *
     * @throws org.varwright.problem.VarwrightException with every error of the file
     */
    Bank bank(PrintWriter err) {
        BankReading reading = reading();
        Bank bank = reading.requireBank();
        int warnings = reading.warnings().size();
        if (warnings > 0) {
            err.println("varwright: " + (warnings == 1 ? "1 warning" : warnings + " warnings") + " in " + file
                    + "; \"varwright check " + file + "\" shows " + (warnings == 1 ? "it" : "them"));
        }
        return bank;
    }
}
