package org.varwright.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.varwright.job.JobLog;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.server.Server;
import org.varwright.server.ServerSettings;

/** {@code demo}: the app on loopback, with invented banks and jobs under way. */
final class DemoApp {
    private static final int FIRST_PORT = 8740;
    private static final int PORTS = 20;

    private final Path data;
    private final PrintWriter out;

    DemoApp(Path data, PrintWriter out) {
        this.data = data;
        this.out = out;
    }

    /**
     * Runs until it is stopped.
     *
     * @param port the only one to be taken; empty for the first free one
     * @param isFresh whether earlier data of the demo are deleted first
     */
    ExitCode run(OptionalInt port, boolean isFresh) {
        RunningServer.quietLibraries();
        DemoFolder folder = new DemoFolder(data);
        if (isFresh) {
            folder.clear();
        }
        boolean isNew = folder.claim();
        try (Server server = started(port)) {
            if (isNew) {
                fill(server.address());
                folder.filled();
            }
            out.println(server.address());
            out.println();
            tell(isNew);
            out.flush();
            return RunningServer.untilStopped(server);
        }
    }

    private Server started(OptionalInt port) {
        if (port.isPresent()) {
            return Server.start(new ServerSettings(data, port.getAsInt()));
        }
        for (int candidate = FIRST_PORT; candidate < FIRST_PORT + PORTS - 1; candidate++) {
            try {
                return Server.start(new ServerSettings(data, candidate));
            } catch (VarwrightException e) {
                if (e.problems().stream().noneMatch(p -> p.message() == Message.SERVER_PORT)) {
                    throw e;
                }
            }
        }
        return Server.start(new ServerSettings(data, FIRST_PORT + PORTS - 1));
    }

    private void tell(boolean isNew) {
        if (!isNew) {
            out.println("Goes on from the last start; --fresh begins anew.");
        }
        out.println("Open the address in a browser. Places, people and readings are invented. To try:");
        out.println(
                "  1  \"Neutral voltage alarm on stage 3\": which failure explains 5.6 V? Then the way in, where a wait runs.");
        out.println("  2  There, tap a conductor: why is it live? Stop the network, reload: everything goes on.");
        out.println(
                "  3  \"Neutral current trip, one fuse hanging\": two people are on the bank; type the next reading.");
        out.println("  4  \"Bridge current alarm, phase B\": a job that is over, and its report.");
        out.println("  5  Banks: change a value and see the checks; begin a job of your own.");
        out.println("Ctrl-C stops it; what was done stays in " + data + ".");
    }

    /** Puts banks and jobs in by the same door as every tablet. */
    static void fill(String address) {
        for (DemoBank bank : DemoBank.values()) {
            send(
                    "PUT",
                    address + "api/banks/" + bank.file(),
                    DemoFiles.text(bank.file() + ".bank.yaml"),
                    List.of(201, 412),
                    "If-None-Match",
                    "*");
        }
        Instant now = Instant.now();
        String suffix = DateTimeFormatter.ofPattern("yyMMdd-HHmmss", Locale.ROOT)
                .withZone(ZoneId.systemDefault())
                .format(now);
        for (JobLog job : new DemoJobs(now.toEpochMilli(), suffix).all()) {
            send("POST", address + "api/jobs/" + job.job() + "/events", job.text(), List.of(200));
        }
    }

    private static void send(String method, String uri, String body, List<Integer> good, String... headers) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(uri))
                .method(method, HttpRequest.BodyPublishers.ofString(body, StandardCharsets.UTF_8));
        if (headers.length > 0) {
            request.headers(headers);
        }
        try (HttpClient client = HttpClient.newHttpClient()) {
            HttpResponse<String> answer = client.send(request.build(), HttpResponse.BodyHandlers.ofString());
            if (!good.contains(answer.statusCode())) {
                throw new VarwrightException(Message.DEMO_NOT_FILLED, Place.NOWHERE, reason(answer));
            }
        } catch (IOException e) {
            throw new VarwrightException(Message.DEMO_NOT_FILLED, Place.NOWHERE, "the server does not answer");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new VarwrightException(Message.DEMO_NOT_FILLED, Place.NOWHERE, "it was stopped");
        }
    }

    /** The server's own words, where it has any. */
    private static String reason(HttpResponse<String> answer) {
        try {
            return Json.parse(answer.body()) instanceof Json.Obj problem
                            && problem.get("detail") instanceof Json.Str detail
                    ? detail.value()
                    : "status " + answer.statusCode();
        } catch (VarwrightException noJson) {
            return "status " + answer.statusCode();
        }
    }
}
