package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.bank.Bank;
import org.varwright.fuzz.AnyBank;
import org.varwright.fuzz.JsonMutation;
import org.varwright.fuzz.Mutation;
import org.varwright.fuzz.Seeds;
import org.varwright.json.Json;

/** Commands that write: what is refused leaves the file as it was; what is written is only ever put behind what stands. */
class JobCommandsLawIT {
    private static final int ACTIONS = 8;

    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    @Test
    void aJobOnlyGrows() throws IOException {
        Seeds.hold("jobs", 4, random -> {
            Path place = Files.createTempDirectory(folder, "job");
            AnyBank any = AnyBank.of(random);
            Path bank = Files.writeString(place.resolve("any.bank.yaml"), any.text());
            Path job = place.resolve("spring.job.jsonl");
            Session begun = run(
                    "job", "new", job.toString(), "--bank", bank.toString(), "--title", "alarm", "--by", "R. Imhof");
            assertEquals(0, begun.code(), begun.err());
            for (int i = 0; i < ACTIONS; i++) {
                act(random, any.bank(), job);
            }
            moveAbout(random, place, job);
            return Seeds.Outcome.TAKEN;
        });
    }

    private static Session run(String... arguments) {
        List<String> all = List.of(arguments);
        Session session = Session.run(arguments);
        HeldSession.holdEither(session, String.join(" ", all));
        return session;
    }

    private static void act(Random random, Bank bank, Path job) throws IOException {
        byte[] before = Files.readAllBytes(job);
        Session session = switch (random.nextInt(6)) {
            case 0 ->
                run(
                        "job",
                        "confirm",
                        job.toString(),
                        String.valueOf(random.nextInt(9) - 1),
                        "--by",
                        "R. Imhof",
                        "--second",
                        "T. Okafor",
                        "--label",
                        "BK1",
                        "--reading",
                        Mutation.strange(random).replaceAll("\\p{Cs}", "?").replaceFirst("^-", ""));
            case 1 -> run("job", "show", job.toString());
            default -> {
                Json body = body(random, bank);
                String type = Mutation.pick(
                        random,
                        List.of(
                                "noted",
                                "order-made",
                                "signed-on",
                                "signed-off",
                                "reading-taken",
                                "stopped",
                                "resumed",
                                "measured",
                                "corrected",
                                "closed",
                                "as-left",
                                "unit-moved",
                                "readings-imported",
                                "meter-stated",
                                "nonsense"));
                yield run(
                        "job",
                        "add",
                        job.toString(),
                        type,
                        "--by",
                        "R. Imhof",
                        "--body",
                        (random.nextInt(3) == 0 ? JsonMutation.of(random, body) : body)
                                .print()
                                .replaceAll("\\p{Cs}", "?"));
            }
        };
        byte[] after = Files.readAllBytes(job);
        if (session.code() == 2) {
            assertArrayEquals(before, after, "what is refused is not written");
        } else {
            assertArrayEquals(before, Arrays.copyOf(after, before.length), "what stands stays");
            assertEquals(0, session.code(), session.err());
        }
    }

    /** One object with every member that some event has. */
    private static Json body(Random random, Bank bank) {
        String door =
                bank.isolation().map(i -> i.compartments().getLast().name()).orElse("bay 1");
        String position = Mutation.pick(random, bank.positions()).name();
        return Json.object()
                .put("text", "position,capacitance\n" + position + ",12.7\n")
                .put("reason", "as asked")
                .put("access", Json.of(List.of(Json.of(door))))
                .put("origin", Json.object().put("kind", "as-found").build())
                .put("person", Mutation.pick(random, List.of("R. Imhof", "T. Okafor")))
                .put("position", position)
                .put("values", Json.object().put("capacitance", "12.7 uF").build())
                .put("place", position)
                .put("value", "12.5 A")
                .put("event", "desk:2")
                .put("outcome", "done")
                .put("file", "readings.csv")
                .put("limit", Mutation.pick(random, List.of("0.5 %", "2 %", "0.5", "90 %")))
                .put("selector", "43-1")
                .put("serial", "X1")
                .put("from", position)
                .put("to", "spare")
                .build();
    }

    /** Out as one file and in again, damaged or not; merged with itself; reported. */
    private static void moveAbout(Random random, Path place, Path job) throws IOException {
        Path zip = place.resolve("job.zip");
        assertEquals(
                0, run("job", "export", job.toString(), "-o", zip.toString()).code());
        Path back = place.resolve("back.job.jsonl");
        assertEquals(
                0, run("job", "import", zip.toString(), "-o", back.toString()).code());
        assertEquals(Files.readString(job), Files.readString(back), "out and in again");
        Path merged = place.resolve("merged.job.jsonl");
        assertEquals(
                0,
                run("job", "merge", job.toString(), back.toString(), "-o", merged.toString())
                        .code());
        assertEquals(Files.readString(job), Files.readString(merged), "a job merged with itself");
        Files.write(zip, Mutation.bytes(random, Files.readAllBytes(zip)));
        Path never = place.resolve("never.job.jsonl");
        Session damaged = run("job", "import", zip.toString(), "-o", never.toString());
        assertTrue(damaged.code() != 2 || !Files.exists(never), "nothing of a damaged file is written");
        Path report = place.resolve("report.json");
        Session reported = run("report", job.toString(), "-o", report.toString());
        assertEquals(0, reported.code(), reported.err());
        assertFalse(((Json.Obj) Json.parse(Files.readString(report))).members().isEmpty());
        List<String> lines = new ArrayList<>(Files.readAllLines(job));
        if (lines.size() > 2) {
            lines.remove(1);
            Files.write(job, lines);
            assertEquals(1, run("job", "show", job.toString()).code(), "a line taken out shows");
        }
    }

    @Test
    void recordsAreReadOrRefused() throws IOException {
        byte[] good = Files.readAllBytes(Session.DEMO.resolve("corbel-reach-3.trip.cff"));
        String bank = Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
        Seeds.hold("record commands", 8, random -> {
            Path file = Files.write(folder.resolve("trip.cff"), Mutation.bytes(random, good));
            Path picture = folder.resolve("picture.svg");
            List<String> arguments = new ArrayList<>(List.of("record", file.toString()));
            if (random.nextBoolean()) {
                arguments.add(bank);
            }
            if (random.nextBoolean()) {
                arguments.addAll(List.of("-o", picture.toString()));
            }
            AnyCommand command = new AnyCommand(arguments, picture, true, true);
            Session text = HeldSession.run(command);
            HeldSession.json(arguments, text);
            return text.code() == 2 ? Seeds.Outcome.REFUSED : Seeds.Outcome.TAKEN;
        });
    }
}
