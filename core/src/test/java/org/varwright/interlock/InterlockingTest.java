package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.json.Json;

class InterlockingTest {
    private static final long MEMORY = 1_000_000_000L;
    private static final Path EXAMPLES = Path.of("..", "examples");

    static Bank read(Path file) {
        try {
            return BankFile.read(file.getFileName().toString(), Files.readAllBytes(file))
                    .requireBank();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Stream<Path> demoFiles() throws IOException {
        try (Stream<Path> files = Files.list(EXAMPLES.resolve("demo"))) {
            return files.filter(f -> f.toString().endsWith(".bank.yaml")).sorted().toList().stream();
        }
    }

    static Interlocking examine(Bank bank) {
        return Interlocking.examine(bank, MEMORY, Verifier.Progress.SILENT);
    }

    @Test
    void theExampleFileIsTheSchemeOfTheFixture() {
        Interlocking file = examine(read(EXAMPLES.resolve("tamarack-flats-2.bank.yaml")));
        assertEquals(6122, file.verification().states());
        assertEquals(58228, file.verification().moves());
        Json.Obj json = (Json.Obj) InterlockJson.of(file);
        assertEquals(Json.of(6122), json.get("states"));
        assertEquals(Json.of(true), json.get("complete"));
    }

    @Test
    void theTextSaysTheShortestWayAndTheRule() {
        String text = InterlockText.of(examine(read(EXAMPLES.resolve("tamarack-flats-2.bank.yaml"))));
        assertTrue(text.contains("6 122 states and 58 228 moves"), text);
        assertTrue(text.contains("NOT ENFORCED   recharge"), text);
        assertTrue(text.contains("enforced       exposed-live"), text);
        assertTrue(text.contains("22 moves"), text);
        assertTrue(text.lines().allMatch(l -> l.length() <= 100), text);
    }

    @ParameterizedTest
    @MethodSource("demoFiles")
    void everyDemoBankIsDecidedAndKeepsPeopleFromLiveAndChargedConductors(Path file) {
        Interlocking interlocking = examine(read(file));
        assertTrue(interlocking.verification().complete());
        assertTrue(interlocking.verification().isEnforced(Property.EXPOSED_LIVE));
        assertTrue(interlocking.verification().isEnforced(Property.EXPOSED_CHARGED));
        assertTrue(interlocking.verification().isEnforced(Property.KEY_STRANDED));
    }
}
