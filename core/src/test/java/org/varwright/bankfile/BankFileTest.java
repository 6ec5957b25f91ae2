package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.Lock;
import org.varwright.bank.Standard;

class BankFileTest {
    static final Path EXAMPLES = Path.of("..", "examples");

    static byte[] example(String name) {
        try {
            return Files.readAllBytes(EXAMPLES.resolve(name));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    static BankReading tamarack() {
        return BankFile.read("tamarack-flats-2.bank.yaml", example("tamarack-flats-2.bank.yaml"));
    }

    @Test
    void readsTheWholeExample() {
        BankReading reading = tamarack();
        assertEquals(List.of(), reading.errors().stream().map(p -> p.print()).toList());
        assertEquals(List.of(), reading.warnings().stream().map(p -> p.print()).toList());
        Bank bank = reading.requireBank();
        assertEquals("Tamarack Flats bank 2", bank.name());
        assertEquals(Standard.IEEE, bank.standard());
        assertEquals(13800.0, bank.system().nominalVolts());
        assertEquals(280e6, bank.system().shortCircuitVoltAmperes().orElseThrow());
        assertEquals(11.0, bank.system().xOverR().orElseThrow());
        assertEquals(4, bank.stages().size());
        assertEquals(Connection.WYE_UNGROUNDED, bank.stages().getFirst().connection());
        assertEquals(24, bank.positions().size());
        assertEquals(65.0, bank.fuseTypes().getFirst().ratedAmperes().orElseThrow());
        var isolation = bank.isolation().orElseThrow();
        assertEquals(8, isolation.devices().size());
        assertEquals(
                List.of("off", "manual", "auto"),
                isolation.device("43-2").orElseThrow().positions());
        assertEquals(
                List.of("closed", "open", "withdrawn"),
                isolation.device("52-7").orElseThrow().positions());
        assertEquals(
                new Device.Between("bus", "ground"),
                isolation.device("57-2").orElseThrow().between().orElseThrow());
        assertEquals(11, isolation.locks().size());
        assertEquals(new Lock.On.OfDoor("bay 1"), isolation.locks().get(6).on());
        assertEquals("closed", isolation.locks().get(6).holds());
        assertEquals(List.of("TF-8", "TF-9"), isolation.locks().getLast().keys());
        assertEquals(
                new Delay.Of.Bolt(new Lock.On.OfDevice("43-2"), "TF-1"),
                isolation.delays().getFirst().of());
        assertEquals(300.0, isolation.delays().getFirst().afterSeconds());
        assertEquals("stage 2/A/u1", bank.units().getFirst().at().name());
        assertEquals(12.71e-6, bank.units().getFirst().capacitanceFarads().orElseThrow(), 1e-18);
        assertTrue(bank.spares().getFirst().unit().name().equals("U300"));
    }

    static final List<String> ALL = List.of(
            "tamarack-flats-2.bank.yaml",
            "demo/corbel-reach-3.bank.yaml",
            "demo/lantern-mesa-1.bank.yaml",
            "demo/hallin-moor-2.bank.yaml");

    @Test
    void everyExampleReadsWithoutErrorOrWarning() {
        for (String name : ALL) {
            BankReading reading = BankFile.read(name, example(name));
            assertEquals(
                    List.of(), reading.errors().stream().map(p -> p.print()).toList());
            assertEquals(
                    List.of(), reading.warnings().stream().map(p -> p.print()).toList());
            assertTrue(reading.bank().isPresent(), name);
        }
    }

    @Test
    void whatIsWrittenIsReadBackAsTheSameBank() {
        for (String name : ALL) {
            Bank bank = BankFile.read(name, example(name)).requireBank();
            String text = BankFile.write(bank);
            BankReading again = BankFile.read(name, text.getBytes(StandardCharsets.UTF_8));
            assertEquals(List.of(), again.errors().stream().map(p -> p.print()).toList(), text);
            assertEquals(bank, again.requireBank());
            assertEquals(text, BankFile.write(again.requireBank()));
        }
    }
}
