package org.varwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.bankfile.BankReading;
import org.varwright.interlock.DesignFault;
import org.varwright.interlock.InterlockAudit;
import org.varwright.interlock.InterlockAuditJson;
import org.varwright.interlock.InterlockAuditText;
import org.varwright.interlock.InterlockJson;
import org.varwright.interlock.InterlockText;
import org.varwright.interlock.Interlocking;
import org.varwright.interlock.Property;
import org.varwright.interlock.SharedKeys;
import org.varwright.interlock.Verification;
import org.varwright.interlock.Verifier;
import org.varwright.page.Page;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code interlock BANK}. */
@Command(
        name = "interlock",
        description = {
            "Verifies the interlocking: what the keys enforce in every state that anyone can reach, what they don't, and the shortest way there.",
            "Exit 1 where a property is not enforced, 3 where one is undecided."
        })
final class InterlockCommand extends BankCommand {
    /** Memory that a search may hold where nothing else is said [B]. */
    static final long USUAL_MEMORY_BYTES = 1_024_000_000L;

    @Option(
            names = "--memory",
            paramLabel = "MB",
            defaultValue = "1024",
            description =
                    "Memory that the search may hold, in megabytes (default ${DEFAULT-VALUE}); past it the answer is \"undecided\".")
    private int megabytes;

    @Option(
            names = "--audit",
            description =
                    "Print the list that an auditor walks instead: each lock, each position, each forbidden move to try by hand.")
    private boolean audit;

    @Option(
            names = "--with",
            paramLabel = "BANK",
            description =
                    "Another bank of the same site; repeat it for each. A key that two of them share is a second copy.")
    private List<Path> others = new ArrayList<>();

    /** A part of the bank file, as design faults name it. */
    private static final Pattern PATH = Pattern.compile("isolation\\.[a-z]+\\[[0-9]+]");

    @Override
    Answer answer(BankArgument bank) {
        long bytes = Math.max(1, megabytes) * 1_000_000L;
        Interlocking interlocking = together(Interlocking.examine(bank.bank(err()), bytes, progress(err())), bytes);
        ExitCode code = code(interlocking);
        if (audit) {
            InterlockAudit walked = InterlockAudit.of(interlocking, bytes, progress(err()));
            return new Answer(InterlockAuditText.of(walked), InterlockAuditJson.of(walked), code);
        }
        return new Answer(
                InterlockText.of(interlocking) + lines(bank.reading(), interlocking),
                InterlockJson.of(interlocking),
                code);
    }

    /** The lines of the bank file that design faults speak of by their path. */
    private static String lines(BankReading reading, Interlocking interlocking) {
        Map<String, Integer> lines = new LinkedHashMap<>();
        for (DesignFault fault : interlocking.faults()) {
            Matcher path = PATH.matcher(fault.text());
            while (path.find()) {
                lines.put(path.group(), reading.place(path.group()).line());
            }
        }
        if (lines.isEmpty()) {
            return "";
        }
        Page page = new Page().heading("In the bank file");
        lines.forEach((path, line) -> page.row(path, "line " + line));
        return page.print();
    }

    /** With what keys shared with other banks break. */
    private Interlocking together(Interlocking alone, long bytes) {
        if (others.isEmpty()) {
            return alone;
        }
        List<Bank> banks = new ArrayList<>(List.of(alone.bank()));
        for (Path other : others) {
            banks.add(neighbour(other, banks));
        }
        List<DesignFault> faults = new ArrayList<>(alone.faults());
        faults.addAll(SharedKeys.of(banks, bytes, progress(err())));
        return new Interlocking(alone.bank(), alone.scheme(), alone.verification(), faults);
    }

    /** Another bank whose keys are known; "no key is shared" must not be said of one that names none. */
    private static Bank neighbour(Path file, List<Bank> banks) {
        Bank bank = BankFile.read(file.toString(), InputFile.read(file)).requireBank();
        Place place = new Place(file.toString(), 0, 0, "");
        if (bank.isolation().isEmpty()) {
            throw new VarwrightException(Message.SCHEME_MISSING, place, bank.name());
        }
        if (banks.stream().anyMatch(known -> known.name().equals(bank.name()))) {
            throw new VarwrightException(Message.SCHEME_SAME_BANK, place, bank.name());
        }
        return bank;
    }

    /** A key that opens another bank's locks, and a door that keys can never open, are a "no" as much as a property that is not enforced. */
    private static ExitCode code(Interlocking interlocking) {
        if (interlocking.faults().stream()
                .map(DesignFault::kind)
                .anyMatch(kind -> kind == DesignFault.Kind.KEY_LOOP || kind == DesignFault.Kind.SHARED_KEY)) {
            return ExitCode.NO;
        }
        ExitCode code = ExitCode.DONE;
        for (Property property : Property.values()) {
            switch (interlocking.verification().outcome(property)) {
                case Verification.Outcome.Enforced enforced -> {}
                case Verification.Outcome.NotEnforced broken -> {
                    return ExitCode.NO;
                }
                case Verification.Outcome.Undecided open -> code = ExitCode.UNDECIDED;
            }
        }
        return code;
    }

    /** Says how far a long search is, where the launcher found standard error to be a terminal. */
    static Verifier.Progress progress(PrintWriter err) {
        if (!Boolean.getBoolean("varwright.terminal")) {
            return Verifier.Progress.SILENT;
        }
        return (states, moves, depth) -> {
            err.printf("\r%,d states, %,d moves, %d moves deep ", states, moves, depth);
            err.flush();
            return true;
        };
    }
}
