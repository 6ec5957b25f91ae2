package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.ExecutorService;
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
                RunningServer server = RunningServer.start(data);
                String stored = server.get("api/jobs/spring/events").body();
                for (String line : acknowledged) {
                    assertTrue(
                            stored.contains(line),
                            "seed " + seed + ", round " + round + ": an acknowledged line is gone");
                }
                Future<Process> kill = killer.schedule(
                        server.process()::destroyForcibly, 800 + random.nextInt(1_700), TimeUnit.MILLISECONDS);
                while (storm(server, tablet, pending, acknowledged)) {
                    assertTrue(acknowledged.size() < 100_000, "the server was never killed");
                }
                kill.get().waitFor();
            }
        }
        RunningServer last = RunningServer.start(data);
        try {
            String stored = last.get("api/jobs/spring/events").body();
            for (String line : acknowledged) {
                assertTrue(stored.contains(line), "an acknowledged line is gone");
            }
            System.out.println(
                    "kill: " + ROUNDS + " times SIGKILL, " + acknowledged.size() + " acknowledged lines, none lost");
            assertTrue(acknowledged.size() > ROUNDS, "the storm wrote something");
        } finally {
            last.process().destroyForcibly().waitFor();
        }
    }

    /** Sends the next line; false once the server is gone. A line without an answer is sent again later, as a tablet does. */
    private static boolean storm(RunningServer server, Lines tablet, List<String> pending, List<String> acknowledged)
            throws InterruptedException {
        if (pending.isEmpty()) {
            pending.add(tablet.note("line " + acknowledged.size()));
        }
        try {
            if (server.send("POST", "api/jobs/spring/events", pending.getFirst())
                            .statusCode()
                    != 200) {
                throw new AssertionError("refused");
            }
            acknowledged.add(pending.removeFirst());
            return true;
        } catch (IOException e) {
            return false;
        }
    }

    /** Killed while banks are replaced, photographs arrive, reports are made and lines come in, all at once. */
    @Test
    void killedInEveryPhaseOfAJob() throws Exception {
        long seed = 20_261_126L;
        Random random = new Random(seed);
        Storm storm = new Storm();
        for (int round = 0; round < ROUNDS; round++) {
            try (RunningServer server = RunningServer.start(data);
                    ExecutorService hands = Executors.newFixedThreadPool(4)) {
                storm.check(server, "seed " + seed + ", round " + round);
                List<Future<?>> running = List.of(
                        hands.submit(() -> storm.lines(server)),
                        hands.submit(() -> storm.banks(server)),
                        hands.submit(() -> storm.photos(server)),
                        hands.submit(() -> storm.reports(server)));
                Thread.sleep(900 + random.nextInt(1_200));
                server.kill();
                for (Future<?> each : running) {
                    each.get();
                }
            }
        }
        try (RunningServer last = RunningServer.start(data)) {
            storm.check(last, "seed " + seed + ", at the end");
        }
        System.out.println("kill in every phase: " + storm.told());
    }
}
