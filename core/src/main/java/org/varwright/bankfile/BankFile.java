package org.varwright.bankfile;

import java.util.Optional;
import org.varwright.bank.Bank;

/** Bank files ({@code .bank.yaml}): YAML 1.2, or JSON, which is a part of it. */
public final class BankFile {
    /** A file larger than this is no bank file and is refused unread [bytes]. */
    public static final int MAXIMUM_BYTES = 2_000_000;

    private BankFile() {}

    /**
     * Reads a bank file and finds every fault in it in one run.
     *
     * @param fileName as the person gave it, for messages
     * @param content of the file
     */
    public static BankReading read(String fileName, byte[] content) {
        Findings findings = new Findings(fileName);
        Optional<Bank> bank = FileText.decode(content, findings)
                .flatMap(text -> TreeReader.read(text, findings))
                .flatMap(tree -> BankReader.read(tree, findings));
        boolean clean = findings.errorCount() == 0;
        return new BankReading(
                fileName, clean ? bank : Optional.empty(), findings.errors(), findings.warnings(), findings.places());
    }

    /**
     * A bank as YAML in the words of its standard. Reading it gives an equal bank; equal banks give equal text. Comments of the file that the bank was
     * read from are not kept.
     */
    public static String write(Bank bank) {
        return BankWriter.write(bank);
    }
}
