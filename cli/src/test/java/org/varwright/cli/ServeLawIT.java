package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.fuzz.Mutation;
import org.varwright.fuzz.Seeds;

/** {@code serve} and {@code demo} on folders and ports good and bad: they serve from that folder and no other, or refuse in words and change nothing. */
class ServeLawIT {
    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path room;

    private byte[] database = new byte[0];

    @BeforeEach
    void aDatabase() throws Exception {
        Path data = room.resolve("first");
        try (RunningCommand serve = new RunningCommand("serve", "--data", data.toString(), "--port", "0")) {
            assertEquals(0, serve.stop());
        }
        database = Files.readAllBytes(data.resolve("varwright.sqlite"));
    }

    @Test
    void servesFromItsFolderOrRefusesAndChangesNothing() throws IOException {
        Seeds.hold("serve", 24, random -> {
                    Path place = Files.createTempDirectory(room, "place");
                    boolean isDemo = random.nextInt(4) == 0;
                    String odd = Mutation.strange(random).replaceAll("[\\p{Cs}\\x00/]", "_");
                    Path data = place.resolve(random.nextBoolean() && odd.length() < 100 ? odd : "data");
                    fill(random, isDemo ? data.resolve("app") : data);
                    List<String> arguments = new ArrayList<>(
                            List.of(isDemo ? "demo" : "serve", isDemo ? "-o" : "--data", data.toString(), "--port"));
                    arguments.add(port(random));
                    if (isDemo && random.nextInt(3) == 0) {
                        arguments.add("--fresh");
                    }
                    Map<String, byte[]> before = files(place);
                    return held(arguments, isDemo ? data.resolve("app") : data, place, before);
                })
                .requireBoth(0.1);
    }

    private static Seeds.Outcome held(List<String> arguments, Path data, Path place, Map<String, byte[]> before)
            throws Exception {
        String line = String.join(" ", arguments);
        Session session;
        try (RunningCommand running = RunningCommand.tried(arguments.toArray(String[]::new))) {
            if (running.isServing()) {
                assertEquals(200, running.send("GET", "healthz", "").statusCode(), line);
                assertEquals(200, running.send("GET", "api/banks", "").statusCode(), line);
                assertTrue(
                        Files.isRegularFile(data.resolve("varwright.sqlite")), line + ": its data are in its folder");
                assertEquals(0, running.stop(), line);
                for (String name : files(place).keySet()) {
                    assertTrue(place.resolve(name).startsWith(data), line + " made " + name);
                }
                return Seeds.Outcome.TAKEN;
            }
            session = new Session(running.stop(), "", running.err());
        }
        HeldSession.holdEither(session, line);
        assertEquals(2, session.code(), line);
        Map<String, byte[]> after = files(place);
        before.forEach((name, bytes) -> assertArrayEquals(bytes, after.get(name), line + " changed " + name));
        return Seeds.Outcome.REFUSED;
    }

    private static String port(Random random) {
        return switch (random.nextInt(6)) {
            case 0 -> Mutation.strange(random).replaceAll("[\\p{Cs}\\x00]", "?").replaceFirst("^-", "");
            case 1 -> Mutation.pick(random, List.of("-1", "65536", "99999999999", "0x50", "1.5", "", " 0"));
            default -> "0";
        };
    }

    private void fill(Random random, Path data) throws IOException {
        switch (random.nextInt(10)) {
            case 0 -> {
                Files.createDirectories(data.getParent());
                Files.writeString(data, "a file in its place");
            }
            case 1 -> Files.createDirectories(data.resolve("lock"));
            case 2 -> Files.createDirectories(data.resolve("varwright.sqlite"));
            case 3 -> {
                Files.createDirectories(data);
                Files.writeString(data.resolve("attachments"), "a file in its place");
            }
            case 4 -> {
                Files.createDirectories(data);
                Files.write(data.resolve("varwright.sqlite"), database);
            }
            case 5, 6 -> {
                Files.createDirectories(data);
                Files.write(data.resolve("varwright.sqlite"), Mutation.bytes(random, database));
            }
            case 7 -> {
                Files.createDirectories(data);
                Files.writeString(data.resolve("made-by-varwright-demo.txt"), "\ufffd? something else");
            }
            case 8 -> Files.createDirectories(data.resolve("made-by-varwright-demo.txt"));
            default -> {}
        }
    }

    /** Whole files below a folder; those that SQLite and the lock keep beside them are not looked at. */
    private static Map<String, byte[]> files(Path folder) throws IOException {
        Map<String, byte[]> files = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                if (!file.endsWith("lock") && !file.toString().matches("(?s).*-(wal|shm)")) {
                    files.put(folder.relativize(file).toString(), Files.readAllBytes(file));
                }
            }
        }
        return files;
    }
}
