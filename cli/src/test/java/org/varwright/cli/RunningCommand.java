package org.varwright.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PipedReader;
import java.io.PipedWriter;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** A command that serves until it is stopped; its first line is its address. */
final class RunningCommand implements AutoCloseable {
    private final ExecutorService thread = Executors.newSingleThreadExecutor();
    private final PipedReader reader = new PipedReader(16_384);
    private final BufferedReader lines = new BufferedReader(reader);
    private final StringWriter err = new StringWriter();
    private final Future<Integer> running;
    private final String address;

    RunningCommand(String... args) throws IOException {
        this(List.of(args));
        if (address.isEmpty()) {
            throw new IOException("no address: " + err);
        }
    }

    private RunningCommand(List<String> args) throws IOException {
        PrintWriter out = new PrintWriter(new PipedWriter(reader), true);
        running = thread.submit(() -> {
            try (out) {
                return Main.run(out, new PrintWriter(err, true), args.toArray(String[]::new));
            }
        });
        address = Objects.requireNonNullElse(lines.readLine(), "");
    }

    /** One that may be refused: then it does not serve. */
    static RunningCommand tried(String... args) throws IOException {
        return new RunningCommand(List.of(args));
    }

    boolean isServing() {
        return !address.isEmpty();
    }

    /** What it wrote to standard error. */
    String err() {
        return err.toString();
    }

    String address() {
        return address;
    }

    HttpResponse<String> send(String method, String path, String body) throws Exception {
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create(address + path))
                                .method(method, HttpRequest.BodyPublishers.ofString(body))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
    }

    String get(String path) throws Exception {
        return send("GET", path, "").body();
    }

    /** Stops it; its exit code. */
    int stop() throws Exception {
        thread.shutdownNow();
        return running.get();
    }

    @Override
    public void close() throws IOException {
        thread.shutdownNow();
        thread.close();
        lines.close();
    }
}
