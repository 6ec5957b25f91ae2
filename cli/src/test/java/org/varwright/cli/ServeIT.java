package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.PipedReader;
import java.io.PipedWriter;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code serve}: prints its address, answers, and refuses a folder that another server has. */
class ServeIT {
    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path data;

    @Test
    void servesUntilItIsStopped() throws Exception {
        ExecutorService thread = Executors.newSingleThreadExecutor();
        try (PipedReader reader = new PipedReader();
                BufferedReader lines = new BufferedReader(reader);
                PrintWriter out = new PrintWriter(new PipedWriter(reader), true)) {
            Future<Integer> running = thread.submit(() -> Main.run(
                    out, new PrintWriter(new StringWriter()), "serve", "--data", data.toString(), "--port", "0"));
            String address = lines.readLine();
            assertEquals(
                    200,
                    HttpClient.newHttpClient()
                            .send(
                                    HttpRequest.newBuilder(URI.create(address + "healthz"))
                                            .build(),
                                    HttpResponse.BodyHandlers.ofString())
                            .statusCode());
            Session second = Session.run("serve", "--data", data.toString(), "--port", "0");
            assertEquals(2, second.code());
            assertTrue(second.err().contains("another server has this folder"), second.err());
            thread.shutdownNow();
            assertEquals(0, running.get());
        }
        assertEquals(
                2,
                Session.run("serve", "--data", data.toString(), "--port", "70000")
                        .code());
    }
}
