package org.varwright.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;

/** The bank files of the checkout. */
final class Examples {
    static final Path TAMARACK = Path.of("examples", "tamarack-flats-2.bank.yaml");

    /** A compartment of that bank that work may be done in. */
    static final String TAMARACK_COMPARTMENT = "bay 2";

    private Examples() {}

    /** The example and the demo's banks, in order of name. */
    static List<Path> files() throws IOException {
        try (Stream<Path> demo = Files.list(Path.of("examples", "demo"))) {
            return Stream.concat(
                            Stream.of(TAMARACK),
                            demo.filter(f -> f.toString().endsWith(".bank.yaml"))
                                    .sorted())
                    .toList();
        }
    }

    static Bank read(Path file) throws IOException {
        return BankFile.read(file.getFileName().toString(), Files.readAllBytes(file))
                .requireBank();
    }

    static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
