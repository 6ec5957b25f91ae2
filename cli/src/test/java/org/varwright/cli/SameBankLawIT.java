package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.fuzz.AnyBank;
import org.varwright.fuzz.Mutation;
import org.varwright.fuzz.Seeds;
import org.varwright.json.Json;

/** One bank told in another way is the same bank: other names, other order of its parts, written by the program itself. */
class SameBankLawIT {
    private static final List<String> COMMANDS =
            List.of("check", "discharge", "unbalance", "duty", "resonance", "energize", "interlock");

    /** A resonance that nothing damps: what is left of it is rounding, and the text says "without bound". */
    private static final double WITHOUT_BOUND = 1e12;

    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    @Test
    void otherNamesChangeNoNumber() throws IOException {
        Seeds.hold("other names", 12, random -> {
            long seed = random.nextLong();
            String command = Mutation.pick(random, COMMANDS);
            AnyBank plain = AnyBank.of(seed, AnyBank.Manner.PLAIN);
            AnyBank odd = AnyBank.of(seed, AnyBank.Manner.ODD);
            if (command.equals("interlock") && plain.bank().isolation().isEmpty()) {
                return Seeds.Outcome.REFUSED;
            }
            same(answer(command, plain.text(), plain.bank()), answer(command, odd.text(), odd.bank()), false);
            return Seeds.Outcome.TAKEN;
        });
    }

    @Test
    void otherOrderChangesNoNumber() throws IOException {
        Seeds.hold("other order", 12, random -> {
            Bank bank = AnyBank.of(random).bank();
            String command = Mutation.pick(random, COMMANDS);
            if (command.equals("interlock") && bank.isolation().isEmpty()) {
                return Seeds.Outcome.REFUSED;
            }
            Bank mixed = new Bank(
                    bank.name(),
                    bank.site(),
                    bank.standard(),
                    bank.system(),
                    mixed(random, bank.unitTypes()),
                    mixed(random, bank.fuseTypes()),
                    bank.switchTypes(),
                    mixed(random, bank.stages()),
                    mixed(random, bank.protection()),
                    bank.control(),
                    bank.load(),
                    bank.isolation(),
                    mixed(random, bank.units()),
                    bank.spares(),
                    bank.label(),
                    bank.note());
            same(answer(command, BankFile.write(bank), bank), answer(command, BankFile.write(mixed), mixed), true);
            return Seeds.Outcome.TAKEN;
        });
    }

    private static <T> List<T> mixed(Random random, List<T> items) {
        List<T> mixed = new ArrayList<>(items);
        Collections.shuffle(mixed, random);
        return mixed;
    }

    /** What a command's JSON says, number by number, with its exit code first. */
    private List<Double> answer(String command, String text, Bank bank) throws IOException {
        Path file = Files.writeString(folder.resolve("same.bank.yaml"), text);
        List<String> arguments = new ArrayList<>(List.of(command, file.toString(), "--json"));
        if (command.equals("energize")) {
            arguments.addAll(List.of("--bus", bank.system().nominalVolts() * 1.01 + " V"));
        }
        Session session = Session.run(arguments.toArray(String[]::new));
        assertTrue(session.code() < 2 || session.code() == 3, command + ": " + session.err());
        List<Double> numbers = new ArrayList<>();
        numbers.add((double) session.code());
        collect(Json.parse(session.out()), numbers);
        return numbers;
    }

    private static void collect(Json value, List<Double> numbers) {
        switch (value) {
            case Json.Obj object ->
                object.members().forEach((name, member) -> {
                    // Lines and columns of the file are not numbers of the bank.
                    if (!name.equals("line") && !name.equals("column")) {
                        collect(member, numbers);
                    }
                });
            case Json.Arr array -> array.items().forEach(item -> collect(item, numbers));
            case Json.Num(double number) -> numbers.add(number);
            case Json.Null none -> {}
            case Json.Bool flag -> numbers.add(flag.value() ? 1.0 : 0.0);
            case Json.Str text -> {}
        }
    }

    private static void same(List<Double> one, List<Double> other, boolean inAnyOrder) {
        assertEquals(one.getFirst(), other.getFirst(), "exit code");
        assertEquals(one.size(), other.size(), "as many numbers");
        if (inAnyOrder) {
            Collections.sort(one);
            Collections.sort(other);
        }
        for (int i = 0; i < one.size(); i++) {
            if (one.get(i) > WITHOUT_BOUND && other.get(i) > WITHOUT_BOUND) {
                continue;
            }
            double tolerance = Math.max(1e-9, 1e-7 * Math.abs(one.get(i)));
            assertEquals(one.get(i), other.get(i), tolerance, "number " + i);
        }
    }
}
