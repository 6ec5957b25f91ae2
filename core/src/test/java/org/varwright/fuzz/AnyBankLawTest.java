package org.varwright.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Stage;
import org.varwright.bankfile.BankFile;
import org.varwright.bankfile.BankReading;

/** The generator that other laws stand on draws what it says it draws. */
class AnyBankLawTest {
    @Test
    void everyKindOfBankIsDrawn() {
        Map<String, Integer> seen = new TreeMap<>();
        Set<Connection> connections = EnumSet.noneOf(Connection.class);
        int draws = 0;
        int banks = 200;
        Random random = new Random(25);
        for (int i = 1; i <= banks; i++) {
            AnyBank any = AnyBank.of(random);
            draws += any.draws();
            Bank bank = any.bank();
            count(seen, bank.standard().name());
            count(seen, bank.isolation().isPresent() ? "keys" : "no keys");
            count(seen, bank.protection().isEmpty() ? "no sensor" : "sensor");
            count(seen, bank.stages().size() + " stages");
            for (Stage stage : bank.stages()) {
                connections.add(stage.connection());
                count(seen, stage.fuse().isPresent() ? "fused" : "no fuse");
                count(seen, stage.unit().threePhase().isPresent() ? "cans" : "units");
            }
            assertEquals(
                    bank,
                    BankFile.read("again", BankFile.write(bank).getBytes(StandardCharsets.UTF_8))
                            .requireBank());
        }
        assertEquals(EnumSet.allOf(Connection.class), connections);
        for (String kind : new String[] {
            "IEC", "IEEE", "keys", "no keys", "sensor", "no sensor", "1 stages", "3 stages", "fused", "no fuse", "cans"
        }) {
            assertTrue(seen.getOrDefault(kind, 0) >= 5, kind + " in " + seen);
        }
        assertTrue(draws < 2 * banks, draws + " draws for " + banks + " banks");
    }

    private static void count(Map<String, Integer> seen, String kind) {
        seen.merge(kind, 1, Integer::sum);
    }

    @Test
    void damagedBanksAreReadOrRefusedWithEveryPlace() {
        Seeds.hold("damaged banks", 400, random -> {
                    String text = Mutation.text(random, AnyBank.of(random).text());
                    BankReading reading = BankFile.read("damaged", text.getBytes(StandardCharsets.UTF_8));
                    assertEquals(reading.errors().isEmpty(), reading.bank().isPresent());
                    reading.errors()
                            .forEach(problem -> assertTrue(problem.print().startsWith("damaged:"), problem.print()));
                    return reading.errors().isEmpty() ? Seeds.Outcome.TAKEN : Seeds.Outcome.REFUSED;
                })
                .requireBoth(0.03);
    }
}
