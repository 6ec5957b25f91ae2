package org.varwright.triage;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Isolation;
import org.varwright.bankfile.BankFile;
import org.varwright.isolation.Access;
import org.varwright.isolation.Plan;
import org.varwright.isolation.PlanRequest;
import org.varwright.json.Json;
import org.varwright.problem.VarwrightException;
import org.varwright.unbalance.SightingReader;

class TriageTest {
    private static final List<String> BANKS = List.of(
            "demo/corbel-reach-3.bank.yaml",
            "demo/lantern-mesa-1.bank.yaml",
            "demo/hallin-moor-2.bank.yaml",
            "tamarack-flats-2.bank.yaml");

    private static Bank bank(String name) throws IOException {
        return BankFile.read(name, Files.readAllBytes(Path.of("../examples").resolve(name)))
                .requireBank();
    }

    private static Triage triage(Bank bank, Symptom symptom) {
        return Triage.of(bank, new TriageQuestion(symptom, Optional.empty(), Optional.empty(), OptionalDouble.empty()));
    }

    private static Triage triage(Bank bank, Symptom symptom, String reading) {
        var sighting = new SightingReader(bank)
                .read(reading, false, OptionalDouble.empty(), 0.03, Optional.empty(), List.of());
        return Triage.of(
                bank, new TriageQuestion(symptom, Optional.empty(), Optional.of(sighting), OptionalDouble.empty()));
    }

    /** What the bank file names, by a reading of its own. */
    private static Set<Thing> named(Bank bank) {
        Set<Thing> things = new HashSet<>();
        bank.stages().forEach(s -> things.add(new Thing(Thing.Kind.STAGE, s.name())));
        bank.protection()
                .forEach(p -> things.add(new Thing(
                        Thing.Kind.SENSOR, p.stage() + " " + p.senses().code())));
        bank.unitTypes().forEach(u -> things.add(new Thing(Thing.Kind.UNIT_TYPE, u.name())));
        bank.fuseTypes().forEach(f -> things.add(new Thing(Thing.Kind.FUSE_TYPE, f.name())));
        bank.spares().forEach(s -> things.add(new Thing(Thing.Kind.SPARE, s.serial())));
        bank.isolation().ifPresent(i -> {
            i.devices().forEach(d -> things.add(new Thing(Thing.Kind.DEVICE, d.name())));
            i.compartments().forEach(c -> things.add(new Thing(Thing.Kind.COMPARTMENT, c.name())));
            i.sources().forEach(s -> things.add(new Thing(Thing.Kind.SOURCE, s.name())));
            i.keyNames().forEach(k -> things.add(new Thing(Thing.Kind.KEY, k)));
        });
        return things;
    }

    @Test
    void everySymptomOfEveryBankHasCausesWhoseChecksNameWhatTheBankHas() throws IOException {
        for (String name : BANKS) {
            Bank bank = bank(name);
            Set<Thing> known = named(bank);
            List<String> doors = bank.isolation().map(Isolation::compartments).orElse(List.of()).stream()
                    .map(Compartment::name)
                    .toList();
            for (Symptom symptom : Symptom.values()) {
                String at = name + " " + symptom;
                Triage triage = triage(bank, symptom);
                assertFalse(triage.causes().isEmpty(), at);
                assertEquals(
                        triage.causes().size(),
                        triage.causes().stream().map(Cause::id).distinct().count(),
                        at + ": a cause twice");
                for (Cause cause : triage.causes()) {
                    assertFalse(cause.speaksFor().isEmpty(), at + " " + cause.id());
                    assertFalse(cause.checks().isEmpty(), at + " " + cause.id());
                    for (Inspection check : cause.checks()) {
                        assertTrue(known.containsAll(check.things()), at + " " + check.things());
                        assertTrue(doors.containsAll(check.compartments()), at + " " + check.compartments());
                        assertTrue(
                                check.compartments().isEmpty() || check.from() == Inspection.From.INSIDE,
                                at + ": a door is opened from outside");
                    }
                }
                triage.bring().forEach(b -> assertTrue(known.containsAll(b.things()), at + " " + b.things()));
                assertTrue(doors.containsAll(triage.access()), at);
                assertFalse(triage.fetch().isEmpty(), at);
                Json json = TriageJson.of(triage);
                assertEquals(Json.parse(json.print()), json, at);
            }
        }
    }

    @Test
    void nothingSaysSafeAndEveryYesHasConditions() throws IOException {
        for (String name : BANKS) {
            Bank bank = bank(name);
            for (Symptom symptom : Symptom.values()) {
                Triage triage = triage(bank, symptom);
                String text = TriageText.of(triage, true);
                String at = name + " " + symptom;
                assertFalse(text.toLowerCase(Locale.ROOT).matches("(?s).*\\bsafe(ly)?\\b.*"), at);
                text.lines().forEach(l -> assertTrue(l.length() <= 100, at + ": " + l));
                assertEquals(
                        triage.runOn().answer() == RunOn.Answer.YES_WITH,
                        !triage.runOn().conditions().isEmpty(),
                        at);
                assertFalse(triage.runOn().basis().isEmpty(), at);
                List<Inspection.From> order =
                        triage.firstChecks().stream().map(Inspection::from).toList();
                assertEquals(order.stream().sorted().toList(), order, at + ": the harmless first");
            }
        }
    }

    /** Every suggestion can be planned: an order of work exists for the compartments named together. */
    @Test
    void theSuggestedAccessCanBePlannedOrIsRefusedWithAReason() throws IOException {
        for (String name : List.of("demo/corbel-reach-3.bank.yaml", "demo/lantern-mesa-1.bank.yaml")) {
            Bank bank = bank(name);
            Triage triage = Triage.of(
                    bank,
                    new TriageQuestion(
                            Symptom.UNBALANCE_ALARM,
                            Optional.of(bank.stages().getLast().name()),
                            Optional.empty(),
                            OptionalDouble.empty()));
            assertFalse(triage.access().isEmpty(), name);
            assertTrue(Access.plan(bank, PlanRequest.to(triage.access())) instanceof Plan.Planned, name);
        }
    }

    /** 5.6 V at stage 3 of Corbel Reach is far from what a unit out gives there (two in a leg: 1/8 of V_LN/… at the relay); the locator says which failure it is. */
    @Test
    void aReadingPutsFirstWhatExplainsIt() throws IOException {
        Bank bank = bank("demo/corbel-reach-3.bank.yaml");
        Triage triage = triage(bank, Symptom.UNBALANCE_ALARM, "stage 3 neutral-voltage=5.6 V");
        assertEquals(List.of("stage 3"), triage.stages());
        assertTrue(triage.located().orElseThrow().isExplained());
        double failed = share(triage, "sections-shorted");
        double out = share(triage, "unit-out");
        String first = failed > out ? "unit-failed" : "unit-fuse";
        assertEquals(first, triage.causes().getFirst().id());
        assertTrue(triage.causes().getFirst().speaksFor().getFirst().text().contains("fits"));
        assertEquals(List.of("bay 3"), triage.access());
        assertTrue(triage.bring().stream().anyMatch(b -> b.text().contains("CR19-0131")));
    }

    private static double share(Triage triage, String kind) {
        return triage.located().orElseThrow().candidates().stream()
                .filter(c -> c.parts().stream().anyMatch(p -> p.kind().equals(kind)))
                .mapToDouble(c -> c.probability())
                .sum();
    }

    /** Two groups of eight in a double wye: one unit out of eight leaves 6SP/(6S(P−n)+5n) = 96/89 = 1.079 on the rest; 34.5 kV/√3/2 on 9.96 kV makes 1.079. */
    @Test
    void oneUnitOutMayRunOnWhereTheRestStaysWithinTheLimitAndTwoMayNot() throws IOException {
        Bank bank = bank("demo/lantern-mesa-1.bank.yaml");
        Triage one = triage(bank, Symptom.FUSE_INDICATOR);
        assertEquals(RunOn.Answer.YES_WITH, one.runOn().answer());
        assertTrue(one.runOn().basis().getFirst().text().contains("limit 1.10"));
        Triage trip = triage(bank, Symptom.UNBALANCE_TRIP);
        assertEquals(RunOn.Answer.NO, trip.runOn().answer());
        // With one unit alone in each leg the leg is lost with it.
        assertEquals(
                RunOn.Answer.NO,
                triage(bank("demo/corbel-reach-3.bank.yaml"), Symptom.BLOWN_FUSE)
                        .runOn()
                        .answer());
    }

    @Test
    void withoutAReadingAnAlarmIsUndecidedAndAReadingThatFitsNothingAsWell() throws IOException {
        Bank bank = bank("demo/lantern-mesa-1.bank.yaml");
        assertEquals(
                RunOn.Answer.UNDECIDED,
                triage(bank, Symptom.UNBALANCE_ALARM).runOn().answer());
        Triage odd = triage(bank, Symptom.UNBALANCE_ALARM, "900 A");
        assertFalse(odd.located().orElseThrow().isExplained());
        assertEquals(RunOn.Answer.UNDECIDED, odd.runOn().answer());
        assertEquals("sensor", odd.causes().getFirst().id());
    }

    @Test
    void aBankWithoutIsolationSaysWhatItCannotSay() throws IOException {
        String text = Files.readString(Path.of("../examples/demo/lantern-mesa-1.bank.yaml"));
        List<String> lines = new ArrayList<>();
        boolean inside = false;
        for (String line : text.lines().toList()) {
            inside = line.startsWith("isolation:") || (inside && (line.startsWith(" ") || line.startsWith("#")));
            if (!inside && !line.contains("switch: 52-K")) {
                lines.add(line);
            }
        }
        Bank bank = BankFile.read("bank", String.join("\n", lines).getBytes(java.nio.charset.StandardCharsets.UTF_8))
                .requireBank();
        assertTrue(bank.isolation().isEmpty());
        for (Symptom symptom : Symptom.values()) {
            Triage triage = triage(bank, symptom);
            assertFalse(triage.causes().isEmpty());
            assertTrue(triage.access().isEmpty());
            assertTrue(triage.unknown().stream().anyMatch(u -> u.startsWith("isolation is not given")));
        }
    }

    @Test
    void unknownWordsAreNamedWithWhatThereIs() throws IOException {
        VarwrightException word = assertThrows(VarwrightException.class, () -> Symptom.require("smoke"));
        assertTrue(String.valueOf(word.getMessage()).contains("unbalance-alarm"), word.getMessage());
        Bank bank = bank("demo/lantern-mesa-1.bank.yaml");
        VarwrightException stage = assertThrows(
                VarwrightException.class,
                () -> Triage.of(
                        bank,
                        new TriageQuestion(
                                Symptom.NOISE, Optional.of("stage 9"), Optional.empty(), OptionalDouble.empty())));
        assertTrue(String.valueOf(stage.getMessage()).contains("rack"), stage.getMessage());
    }
}
