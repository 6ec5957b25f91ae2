package org.varwright.isolation;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;

/** The banks of the examples. */
final class Banks {
    private static final Path EXAMPLES = Path.of("..", "examples");

    private Banks() {}

    static Bank tamarack() {
        return read(EXAMPLES.resolve("tamarack-flats-2.bank.yaml"));
    }

    static Bank demo(String name) {
        return read(EXAMPLES.resolve("demo").resolve(name + ".bank.yaml"));
    }

    /** Every bank file under examples, in order. */
    static List<Bank> all() {
        try (Stream<Path> files = Files.walk(EXAMPLES)) {
            List<Bank> banks = new ArrayList<>();
            files.filter(f -> f.toString().endsWith(".bank.yaml")).sorted().forEach(f -> banks.add(read(f)));
            return banks;
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private static Bank read(Path file) {
        try {
            return BankFile.read(file.toString(), Files.readAllBytes(file)).requireBank();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }
}
