package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpServer;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.isolation.OrderStep;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.JobLog;
import org.varwright.job.Order;
import org.varwright.job.Planner;
import org.varwright.job.Proposal;
import org.varwright.json.Json;
import org.varwright.problem.VarwrightException;

/** {@code demo}: banks and jobs are there, what is done stays until it is begun anew, and what is not the demo's is left alone. */
class DemoIT {
    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    private RunningCommand demo(String... more) throws Exception {
        String[] args = new String[5 + more.length];
        System.arraycopy(new String[] {"demo", "-o", folder.toString(), "--port", "0"}, 0, args, 0, 5);
        System.arraycopy(more, 0, args, 5, more.length);
        return new RunningCommand(args);
    }

    private static List<String> jobs(RunningCommand demo) throws Exception {
        return ((Json.Arr) ((Json.Obj) Json.parse(demo.get("api/jobs"))).get("jobs"))
                .items().stream()
                        .map(j -> ((Json.Str) ((Json.Obj) j).get("job")).value())
                        .toList();
    }

    private static Job job(RunningCommand demo, String name) throws Exception {
        return Job.of(JobLog.read(name, demo.get("api/jobs/" + name + "/events")), Planner.ANEW);
    }

    @Test
    void theJobsStandWhereTheDemoSays() throws Exception {
        try (RunningCommand demo = demo()) {
            List<String> names = jobs(demo);
            assertEquals(3, names.size());
            Job waiting = job(demo, names.getFirst());
            assertEquals(List.of(), waiting.log().findings());
            assertEquals(List.of(), waiting.notCounted());
            Order order = waiting.currentOrder().orElseThrow();
            assertEquals(Order.Phase.WAY_IN, order.phase());
            OrderStep next = order.next().orElseThrow();
            assertEquals(OrderStep.Kind.HOLD, next.kind());
            assertTrue(waiting.log().events().getLast().event().fact() instanceof Fact.HoldStarted);
            long since = waiting.log().events().getLast().event().clock().wallMillis();
            long passed = System.currentTimeMillis() - since;
            assertTrue(passed >= 120_000 && passed < next.seconds().orElseThrow() * 1_000, "the wait runs: " + passed);
            Job finished = job(demo, names.get(1));
            assertTrue(finished.isClosed());
            assertEquals(List.of(), finished.notCounted());
            Job measuring = job(demo, names.getLast());
            assertEquals(List.of(), measuring.notCounted());
            assertEquals(
                    Order.Phase.WORK, measuring.currentOrder().orElseThrow().phase());
            assertEquals(2, measuring.peopleOn().size());
            assertTrue(measuring.readingsTable().orElseThrow().lines().count() > 40);
        }
    }

    @Test
    void whatWasDoneStaysUntilItIsBegunAnew() throws Exception {
        List<String> first;
        try (RunningCommand demo = demo()) {
            first = jobs(demo);
            Job job = job(demo, first.getFirst());
            if (!(job.propose("visitor", "A. Visitor", System.currentTimeMillis(), new Fact.Noted("was here"))
                    instanceof Proposal.Accepted accepted)) {
                throw new AssertionError("a note is refused");
            }
            assertEquals(
                    200,
                    demo.send(
                                    "POST",
                                    "api/jobs/" + first.getFirst() + "/events",
                                    accepted.event().line() + "\n")
                            .statusCode());
        }
        try (RunningCommand demo = demo()) {
            assertEquals(first, jobs(demo));
            assertTrue(demo.get("api/jobs/" + first.getFirst() + "/events").contains("was here"));
            Session second = Session.run("demo", "-o", folder.toString(), "--fresh", "--port", "0");
            assertEquals(2, second.code(), "a running demo is not swept away");
        }
        Path own = Files.writeString(folder.resolve("app").resolve("mine.txt"), "mine");
        Thread.sleep(1_100); // names of jobs hold the second
        try (RunningCommand demo = demo("--fresh")) {
            assertEquals(3, jobs(demo).size());
            assertFalse(jobs(demo).contains(first.getFirst()), "a browser may hold the earlier job under its name");
        }
        assertEquals("mine", Files.readString(own));
    }

    @Test
    void dataThatTheDemoDidNotMakeAreLeftAlone() throws Exception {
        Path data = folder.resolve("app");
        try (RunningCommand serve = new RunningCommand("serve", "--data", data.toString(), "--port", "0")) {
            assertEquals(0, serve.stop());
        }
        byte[] before = Files.readAllBytes(data.resolve("varwright.sqlite"));
        for (String more : List.of("--port=0", "--fresh")) {
            Session session = Session.run("demo", "-o", folder.toString(), more);
            assertEquals(2, session.code());
            assertTrue(session.err().contains("data that the demo did not make"), session.err());
        }
        assertEquals(before.length, Files.readAllBytes(data.resolve("varwright.sqlite")).length);
    }

    /** A full disk was called a fault in the program itself. */
    @Test
    void aServerThatTakesNothingIsToldInItsOwnWords() throws Exception {
        HttpServer full = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        full.createContext("/", exchange -> {
            byte[] words = (exchange.getRequestMethod().equals("PUT")
                            ? "{\"detail\": \"the disk has no room\"}"
                            : "<p>")
                    .getBytes(StandardCharsets.UTF_8);
            exchange.sendResponseHeaders(507, words.length);
            exchange.getResponseBody().write(words);
            exchange.close();
        });
        full.start();
        String address = "http://127.0.0.1:" + full.getAddress().getPort() + "/";
        try {
            String said = assertThrows(VarwrightException.class, () -> DemoApp.fill(address))
                    .problems()
                    .getFirst()
                    .text();
            assertTrue(said.contains("(the disk has no room); mend that, and start again with --fresh"), said);
        } finally {
            full.stop(0);
        }
        String gone = assertThrows(VarwrightException.class, () -> DemoApp.fill(address))
                .problems()
                .getFirst()
                .text();
        assertTrue(gone.contains("(the server does not answer)"), gone);
    }

    @Test
    void optionsOfOneKindAreNotTakenForTheOther() {
        assertEquals(2, Session.run("demo", "--bank", "HALLIN_MOOR_2").code());
        assertEquals(2, Session.run("demo", "--steps", "--fresh").code());
        assertEquals(2, Session.run("demo", "--port", "70000").code());
    }
}
