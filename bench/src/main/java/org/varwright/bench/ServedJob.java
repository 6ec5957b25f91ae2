package org.varwright.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.varwright.job.LoggedEvent;
import org.varwright.job.LongJob;
import org.varwright.server.Server;
import org.varwright.server.ServerSettings;

/** A long job on a server of its own, measured by a client over HTTP. */
final class ServedJob {
    /** Lines added one by one, and fetches of the whole. */
    static final int RUNS = 15;

    private final HttpClient client = HttpClient.newHttpClient();
    private final URI events;

    private ServedJob(Server server) {
        events = URI.create(server.address() + "api/jobs/" + LongJob.NAME + "/events");
    }

    /** Medians by the clock on the wall. */
    record Clock(double addedSeconds, double fetchedSeconds) {}

    /** Puts all but the last lines at once, then each of those alone, then fetches everything. */
    static Clock measure(LongJob job) throws IOException {
        List<LoggedEvent> lines = job.log().events();
        List<Double> added = new ArrayList<>();
        List<Double> fetched = new ArrayList<>();
        try (Scratch scratch = Scratch.create();
                Server server = Server.start(new ServerSettings(scratch.folder(), 0))) {
            ServedJob served = new ServedJob(server);
            int first = lines.size() - RUNS;
            StringBuilder start = new StringBuilder();
            lines.subList(0, first).forEach(e -> start.append(e.line()).append('\n'));
            served.post(start.toString());
            for (LoggedEvent event : lines.subList(first, lines.size())) {
                added.add(served.post(event.line() + "\n"));
            }
            for (int i = 0; i < RUNS; i++) {
                fetched.add(served.fetch(lines.size()));
            }
        }
        return new Clock(median(added), median(fetched));
    }

    private static double median(List<Double> seconds) {
        return Times.median(seconds.stream().sorted().toList());
    }

    private double post(String lines) {
        long from = System.nanoTime();
        send(HttpRequest.newBuilder(events)
                .POST(HttpRequest.BodyPublishers.ofString(lines))
                .build());
        return (System.nanoTime() - from) * 1e-9;
    }

    private double fetch(int expectedLines) {
        long from = System.nanoTime();
        long lines = send(HttpRequest.newBuilder(events).build()).lines().count();
        double seconds = (System.nanoTime() - from) * 1e-9;
        if (lines != expectedLines) {
            throw new IllegalStateException(lines + " lines came back of " + expectedLines);
        }
        return seconds;
    }

    private String send(HttpRequest request) {
        try {
            HttpResponse<String> response = client.send(request, HttpResponse.BodyHandlers.ofString());
            if (response.statusCode() != 200) {
                throw new IllegalStateException(
                        "the server answered " + response.statusCode() + ": " + response.body());
            }
            return response.body();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
