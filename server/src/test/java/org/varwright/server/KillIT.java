package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A server that is killed with SIGKILL in the middle of a storm of writes: whatever it had acknowledged is there when it starts again. */
class KillIT {
    private static final int ROUNDS = 4;

    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path data;

    @Test
    void nothingAcknowledgedIsLost() throws Exception {
        long seed = 20_261_125L;
        Random random = new Random(seed);
        Lines tablet = new Lines("spring", "tablet-a");
        List<String> pending = new ArrayList<>(List.of(tablet.open()));
        List<String> acknowledged = new ArrayList<>();
        try (ScheduledExecutorService killer = Executors.newSingleThreadScheduledExecutor()) {
            for (int round = 0; round < ROUNDS; round++) {
                Running server = Running.start(data);
                String stored = server.get("api/jobs/spring/events");
                for (String line : acknowledged) {
                    assertTrue(
                            stored.contains(line),
                            "seed " + seed + ", round " + round + ": an acknowledged line is gone");
                }
                Future<Process> kill = killer.schedule(
                        server.process::destroyForcibly, 800 + random.nextInt(1_700), TimeUnit.MILLISECONDS);
                while (storm(server, tablet, pending, acknowledged)) {
                    assertTrue(acknowledged.size() < 100_000, "the server was never killed");
                }
                kill.get().waitFor();
            }
        }
        Running last = Running.start(data);
        try {
            String stored = last.get("api/jobs/spring/events");
            for (String line : acknowledged) {
                assertTrue(stored.contains(line), "an acknowledged line is gone");
            }
            System.out.println(
                    "kill: " + ROUNDS + " times SIGKILL, " + acknowledged.size() + " acknowledged lines, none lost");
            assertTrue(acknowledged.size() > ROUNDS, "the storm wrote something");
        } finally {
            last.process.destroyForcibly().waitFor();
        }
    }

    /** Sends the next line; false once the server is gone. A line without an answer is sent again later, as a tablet does. */
    private static boolean storm(Running server, Lines tablet, List<String> pending, List<String> acknowledged)
            throws InterruptedException {
        if (pending.isEmpty()) {
            pending.add(tablet.note("line " + acknowledged.size()));
        }
        try {
            if (server.post(pending.getFirst()) != 200) {
                throw new AssertionError("refused");
            }
            acknowledged.add(pending.removeFirst());
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    private record Running(Process process, String address, HttpClient client) {
        static Running start(Path data) throws Exception {
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-XX:+UseSerialGC",
                            "-cp",
                            System.getProperty("java.class.path"),
                            ServerProcess.class.getName(),
                            data.toString())
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
            BufferedReader out =
                    new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
            String address = Objects.requireNonNull(out.readLine(), "the server did not start");
            return new Running(process, address, HttpClient.newHttpClient());
        }

        String get(String path) throws IOException, InterruptedException {
            return client.send(
                            HttpRequest.newBuilder(URI.create(address + path)).build(),
                            HttpResponse.BodyHandlers.ofString())
                    .body();
        }

        int post(String line) throws IOException, InterruptedException {
            return client.send(
                            HttpRequest.newBuilder(URI.create(address + "api/jobs/spring/events"))
                                    .POST(HttpRequest.BodyPublishers.ofString(line))
                                    .build(),
                            HttpResponse.BodyHandlers.ofString())
                    .statusCode();
        }
    }
}
