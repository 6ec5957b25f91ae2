package org.varwright.server;

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

/** A server in a process of its own: it can be killed, and limits of the operating system can be laid on it. */
record RunningServer(Process process, String address, HttpClient client) implements AutoCloseable {
    /** Starts it; words before the command, such as a program that takes rights away, may be given. */
    static RunningServer start(Path data, String... before) throws IOException {
        List<String> command = new ArrayList<>(List.of(before));
        command.addAll(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                ServerProcess.class.getName(),
                data.toString()));
        Process process = new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.DISCARD)
                .start();
        BufferedReader out =
                new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
        return new RunningServer(
                process,
                Objects.requireNonNull(out.readLine(), "the server did not start"),
                HttpClient.newHttpClient());
    }

    /** Words before a command by which permissions hold for the superuser, too; none are needed for anybody else. */
    static String[] withoutOverride() {
        return "root".equals(System.getProperty("user.name"))
                ? new String[] {
                    "setpriv",
                    "--bounding-set=-dac_override,-dac_read_search",
                    "--inh-caps=-dac_override,-dac_read_search"
                }
                : new String[0];
    }

    /** Lets it make no file longer than that, as on a disk that is full there; {@code unlimited} makes room again. */
    void roomFor(String bytes) throws IOException, InterruptedException {
        Process limit = new ProcessBuilder(
                        "prlimit", "--pid", String.valueOf(process.pid()), "--fsize=" + bytes + ":unlimited")
                .inheritIO()
                .start();
        if (limit.waitFor() != 0) {
            throw new AssertionError("prlimit (Debian package util-linux) failed");
        }
    }

    HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return send("GET", path, "");
    }

    HttpResponse<String> send(String method, String path, String body, String... headers)
            throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(address + path))
                .method(method, HttpRequest.BodyPublishers.ofString(body, StandardCharsets.UTF_8));
        if (headers.length > 0) {
            request.headers(headers);
        }
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString());
    }

    void kill() throws InterruptedException {
        process.destroyForcibly().waitFor();
    }

    /** Kills it and waits until it is gone. */
    @Override
    public void close() {
        client.close();
        process.destroyForcibly().onExit().join();
    }
}
