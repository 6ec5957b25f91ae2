package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.fuzz.Mutation;
import org.varwright.fuzz.Seeds;
import org.varwright.json.Json;

/** {@code job list} and {@code job due} over folders in which something is damaged or is no job: one bad file hides no other. */
class JobFoldersLawIT {
    private static final String DAY = "2030-05-12";

    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path room;

    private String good = "";

    @BeforeEach
    void aJob() throws IOException {
        Path job = room.resolve("good.job.jsonl");
        String bank = Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
        done("job", "new", job.toString(), "--bank", bank, "--title", "alarm", "--name", "spring", "--by", "R. Imhof");
        done("job", "add", job.toString(), "noted", "--by", "R. Imhof", "--body", "{\"text\": \"seen\"}");
        done("job", "visit", job.toString(), "--by", "R. Imhof", "--date", "2030-06-01", "--for", "gaskets");
        good = Files.readString(job);
        Files.delete(job);
    }

    private static void done(String... arguments) {
        Session session = Session.run(arguments);
        assertEquals(0, session.code(), session.err());
    }

    @Test
    void oneBadFileHidesNoOther() throws IOException {
        Seeds.hold("folders of jobs", 30, random -> {
                    Path folder = Files.createTempDirectory(room, "jobs");
                    Set<String> names = new TreeSet<>(List.of("a.job.jsonl"));
                    Files.writeString(folder.resolve("a.job.jsonl"), good);
                    Files.writeString(folder.resolve("notes.txt"), "no job");
                    int more = 1 + random.nextInt(3);
                    for (int i = 0; i < more; i++) {
                        names.add(spoilt(random, folder, i));
                    }
                    Session text = run("job", "list", folder.toString());
                    Session session = run("job", "list", "--json", folder.toString());
                    assertEquals(text.code(), session.code());
                    List<Json> listed = items((Json.Obj) Json.parse(session.out()), "jobs");
                    assertEquals(
                            names,
                            new TreeSet<>(listed.stream()
                                    .map(j -> string((Json.Obj) j, "file"))
                                    .toList()));
                    boolean areAllWhole = true;
                    for (Json each : listed) {
                        Json.Obj job = (Json.Obj) each;
                        boolean isWhole = job.get("whole").equals(Json.of(true));
                        areAllWhole &= isWhole;
                        Session shown = run(
                                "job",
                                "show",
                                folder.resolve(string(job, "file")).toString());
                        assertEquals(isWhole, shown.code() == 0, string(job, "file") + shown.err());
                        assertEquals(
                                isWhole,
                                !string(job, "stands").matches("(?s)(CAN'T BE READ|THE LOG IS NOT WHOLE).*"),
                                job.print());
                    }
                    assertEquals(areAllWhole, session.code() == 0);
                    due(folder, areAllWhole);
                    return areAllWhole ? Seeds.Outcome.TAKEN : Seeds.Outcome.REFUSED;
                })
                .requireBoth(0.02);
    }

    /** Nobody comes later than the good job says; what can't be read is named as what may hide another. */
    private static void due(Path folder, boolean areAllWhole) {
        Session text = run("job", "due", folder.toString(), "--on", DAY);
        Session session = run("job", "due", "--json", folder.toString(), "--on", DAY);
        assertEquals(text.code(), session.code());
        List<Json> visits = items((Json.Obj) Json.parse(session.out()), "visits");
        assertEquals(1, visits.size(), text.out());
        assertTrue(string((Json.Obj) visits.getFirst(), "date").compareTo("2030-06-01") <= 0, text.out());
        assertTrue(areAllWhole || session.code() == 1, text.out());
        assertTrue(areAllWhole || text.out().contains("MAY HIDE A VISIT"), text.out());
    }

    /** Puts one more thing into the folder that ends like a job; its name. */
    private String spoilt(Random random, Path folder, int number) throws IOException {
        String odd = Mutation.strange(random).replaceAll("[\\p{Cs}\\x00/]", "_");
        String name = (random.nextInt(3) == 0 && odd.length() < 100 ? odd : "b" + number) + ".job.jsonl";
        Path file = folder.resolve(name);
        if (Files.exists(file)) {
            return name;
        }
        switch (random.nextInt(8)) {
            case 0 -> Files.createDirectory(file);
            case 1 -> Files.createSymbolicLink(file, Path.of("nowhere"));
            case 2 -> Files.writeString(file, "");
            case 3 -> Files.writeString(file, good.substring(0, random.nextInt(good.length())));
            case 4 -> Files.writeString(file, good);
            case 5 -> Files.writeString(file, good.replace("2030-06-01", "2030-09-01"));
            case 6 -> Files.write(file, new byte[] {0, (byte) 0xFF, (byte) 0xFE, 10, 0});
            default ->
                Files.write(file, Mutation.bytes(random, good.getBytes(java.nio.charset.StandardCharsets.UTF_8)));
        }
        return name;
    }

    private static Session run(String... arguments) {
        Session session = Session.run(arguments);
        HeldSession.holdEither(session, String.join(" ", arguments));
        assertFalse(
                session.out().codePoints().anyMatch(c -> c != '\n' && Character.isISOControl(c)),
                () -> String.join(" ", arguments) + ": control characters\n" + session.out());
        return session;
    }

    private static List<Json> items(Json.Obj object, String name) {
        return ((Json.Arr) object.get(name)).items();
    }

    private static String string(Json.Obj object, String name) {
        return ((Json.Str) object.get(name)).value();
    }
}
