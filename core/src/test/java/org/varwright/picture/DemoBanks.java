package org.varwright.picture;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;

/** The demonstration banks with their readings. All values there are invented. */
final class DemoBanks {
    static final List<String> NAMES = List.of("corbel-reach-3", "hallin-moor-2", "lantern-mesa-1");

    private static final Path DEMO = Path.of("..", "examples", "demo");

    private DemoBanks() {}

    static Bank bank(String name) {
        return BankFile.read(name, bytes(name + ".bank.yaml")).requireBank();
    }

    static Survey survey(String name) {
        Bank bank = bank(name);
        return Survey.of(
                bank,
                ReadingsFile.read(bank, name, bytes(name + ".readings.csv")),
                SurveySettings.of(bank.standard(), 0.01));
    }

    private static byte[] bytes(String file) {
        try {
            return Files.readAllBytes(DEMO.resolve(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
