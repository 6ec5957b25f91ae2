package org.varwright.fuzz;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.bankfile.JobSheetFile;
import org.varwright.bankfile.JobSheetReading;
import org.varwright.comtrade.Bytes;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.RecordReader;
import org.varwright.comtrade.Source;
import org.varwright.isolation.Access;
import org.varwright.isolation.OrderOfWork;
import org.varwright.isolation.Plan;
import org.varwright.isolation.PlanRequest;
import org.varwright.isolation.SavedState;
import org.varwright.isolation.SavedStateReader;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.JobJson;
import org.varwright.job.JobLog;
import org.varwright.job.JobText;
import org.varwright.job.Walk;
import org.varwright.json.Json;
import org.varwright.problem.VarwrightException;
import org.varwright.record.RecordInput;
import org.varwright.record.RecordStudy;
import org.varwright.record.RecordStudyJson;
import org.varwright.record.RecordStudyText;
import org.varwright.survey.Readings;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.Spares;
import org.varwright.survey.SparesFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveyJson;
import org.varwright.survey.SurveySettings;
import org.varwright.survey.SurveyText;

/** Every reader of files over damaged files: a value, or a refusal in words; and a value is written so that it is read back the same. */
class ParsersLawTest {
    private static final Path DEMO = Path.of("..", "examples", "demo");
    private static final List<String> BANKS = List.of("corbel-reach-3", "hallin-moor-2", "lantern-mesa-1");
    /** A record may claim more samples than anybody has memory for; this many are read at most. */
    private static final int VALUES = 200_000;

    private static byte[] demo(String name) throws IOException {
        return Files.readAllBytes(DEMO.resolve(name));
    }

    private static Bank bank(String name) throws IOException {
        return BankFile.read(name, demo(name + ".bank.yaml")).requireBank();
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** Reads, and counts a refusal in words as an outcome. */
    private interface Reading {
        void read() throws Exception;
    }

    private static Seeds.Outcome taken(Reading reading) throws Exception {
        try {
            reading.read();
            return Seeds.Outcome.TAKEN;
        } catch (VarwrightException refused) {
            refused.problems().forEach(problem -> {
                assertTrue(problem.print().length() > 15, problem.print());
                assertFalse(problem.print().contains("Exception"), problem.print());
            });
            return Seeds.Outcome.REFUSED;
        }
    }

    @Test
    void json() throws IOException {
        String good = Files.readString(Path.of("src/test/resources/vectors/triage.json"));
        String log = Files.readString(Path.of("src/test/resources/vectors/job.json"));
        Seeds.hold("JSON", 200, random -> {
                    String whole = random.nextBoolean() ? good : log;
                    int from = random.nextInt(whole.length() / 2);
                    String text = random.nextBoolean() ? whole : whole.substring(from, from + random.nextInt(400));
                    String damaged = random.nextInt(3) == 0 ? text : Mutation.text(random, text);
                    return taken(() -> {
                        Json value = Json.parse(damaged);
                        // by its text: a zero with a sign is written as zero
                        assertEquals(value.print(), Json.parse(value.print()).print(), "written and read again");
                    });
                })
                .requireBoth(0.05);
    }

    @Test
    void jobSheets() throws IOException {
        List<byte[]> good = new ArrayList<>();
        for (String name : BANKS) {
            good.add(demo(name + ".job.yaml"));
        }
        Seeds.hold("job sheets", 200, random -> {
                    byte[] damaged = damaged(random, Mutation.pick(random, good));
                    JobSheetReading reading = JobSheetFile.read("job.yaml", damaged);
                    assertEquals(reading.errors().isEmpty(), reading.job().isPresent());
                    reading.errors().forEach(e -> assertTrue(e.print().startsWith("job.yaml"), e.print()));
                    Bank bank = bank(Mutation.pick(random, BANKS));
                    return taken(() -> reading.requireFor(bank));
                })
                .requireBoth(0.02);
    }

    private static byte[] damaged(Random random, byte[] good) {
        return random.nextInt(3) == 0
                ? Mutation.bytes(random, good)
                : utf8(Mutation.text(random, new String(good, StandardCharsets.UTF_8)));
    }

    @Test
    void jobLogs() throws IOException {
        String good = log();
        Seeds.hold("job logs", 70, random -> {
                    String damaged = random.nextInt(3) == 0
                            ? new String(Mutation.bytes(random, utf8(good)), StandardCharsets.UTF_8)
                            : Mutation.text(random, good);
                    return taken(() -> {
                        JobLog log = JobLog.read("a.job.jsonl", damaged);
                        assertEquals(
                                log.events(), JobLog.read("again", log.text()).events(), "written and read again");
                        assertEquals(log, log.merge(log), "merged with itself");
                        assertTrue(
                                log.text().equals(good)
                                        || !log.findings().isEmpty()
                                        || log.events().size() < 5
                                        || good.startsWith(log.text()),
                                "what was changed shows, but for lines cut off at the end");
                        Job job = Job.of(log, Walk.PLANNER);
                        assertEquals(
                                JobJson.of(job).print(),
                                Json.parse(JobJson.of(job).print()).print());
                        assertFalse(JobText.of(job).isBlank());
                    });
                })
                .requireBoth(0.02);
    }

    /** A job begun on a demonstration bank, with an order of work and some notes. */
    private static String log() throws IOException {
        Walk walk = new Walk("tablet-a", JobLog.empty("spring"), 1_795_000_000_000L);
        walk.yes(new Fact.Opened(
                "alarm",
                new String(demo("lantern-mesa-1.bank.yaml"), StandardCharsets.UTF_8),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
        walk.yes(
                new Fact.OrderMade(List.of("north gate"), Fact.Origin.AsFound.inService(), Optional.empty(), "survey"));
        walk.yes(new Fact.Noted("oil under the rack; \"wet\" <b>"));
        walk.yes(new Fact.Noted("Åse was here"));
        walk.yes(new Fact.Stopped("weather"));
        walk.yes(new Fact.Resumed("clear"));
        return walk.job().log().text();
    }

    @Test
    void savedStates() throws IOException {
        Bank bank = bank("lantern-mesa-1");
        OrderOfWork order = ((Plan.Planned) Access.plan(bank, PlanRequest.to(List.of("north gate")))).order();
        Seeds.hold("saved states", 120, random -> {
                    String good = order.stateAfter(1 + random.nextInt(order.in().size()))
                            .json()
                            .print();
                    String damaged = random.nextBoolean()
                            ? Mutation.text(random, good)
                            : JsonMutation.of(random, Json.parse(good)).print();
                    return taken(() -> {
                        SavedState state = SavedStateReader.read("state.json", damaged);
                        assertEquals(
                                state,
                                SavedStateReader.read("again", state.json().print()));
                        Plan plan = Access.plan(
                                bank, PlanRequest.to(List.of("north gate")).from(new PlanRequest.Start.Saved(state)));
                        assertFalse(plan.toString().isBlank());
                    });
                })
                .requireBoth(0.05);
    }

    @Test
    void tables() throws IOException {
        List<Charset> charsets = List.of(
                StandardCharsets.UTF_8,
                StandardCharsets.UTF_16LE,
                StandardCharsets.UTF_16,
                Charset.forName("windows-1252"),
                StandardCharsets.ISO_8859_1);
        Seeds.hold("tables", 120, random -> {
                    String name = Mutation.pick(random, BANKS);
                    Bank bank = bank(name);
                    String kind = random.nextInt(3) == 0 ? ".spares.csv" : ".readings.csv";
                    String good = new String(demo(name + kind), StandardCharsets.UTF_8);
                    String text = random.nextInt(4) == 0 ? good : Mutation.text(random, good);
                    byte[] bytes = text.replace("\n", random.nextBoolean() ? "\r\n" : "\n")
                            .getBytes(Mutation.pick(random, charsets));
                    byte[] damaged = random.nextInt(4) == 0 ? Mutation.bytes(random, bytes) : bytes;
                    return taken(() -> {
                        if (kind.startsWith(".spares")) {
                            Spares spares = SparesFile.read(bank, "spares.csv", damaged);
                            spares.problems().forEach(p -> assertTrue(p.print().startsWith("spares.csv"), p.print()));
                        } else {
                            Readings readings = ReadingsFile.read(bank, "readings.csv", damaged);
                            Survey survey = Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01));
                            assertEquals(bank.positions().size(), survey.units().size(), "every unit has its verdict");
                            // unless somebody has written it, and it is shown as it was written
                            assertTrue(
                                    text.contains("NaN")
                                            || !SurveyText.of(survey).contains("NaN"),
                                    () -> SurveyText.of(survey));
                            assertEquals(
                                    SurveyJson.of(survey).print(),
                                    Json.parse(SurveyJson.of(survey).print()).print());
                        }
                    });
                })
                .requireBoth(0.05);
    }

    @Test
    void records() throws IOException {
        byte[] good = demo("corbel-reach-3.trip.cff");
        Bank bank = bank("corbel-reach-3");
        Seeds.hold("records", 25, random -> {
                    byte[] damaged = Mutation.bytes(random, good);
                    return taken(() -> {
                        RecordStudy study = RecordStudy.of(
                                RecordInput.of(RecordReader.readCombined(
                                        Source.of("trip.cff", Bytes.of(damaged)), ReadOptions.ALL.atMost(VALUES))),
                                bank,
                                List.of());
                        assertFalse(RecordStudyText.of(study).isBlank());
                        Json.Builder json = Json.object();
                        RecordStudyJson.put(json, study);
                        String print = json.build().print();
                        assertEquals(print, Json.parse(print).print());
                    });
                })
                .requireBoth(0.02);
    }
}
