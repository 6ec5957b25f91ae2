package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** The app's files over HTTP; a small one lies on the tests' class path. */
@SuppressWarnings("NullAway.Init") // JUnit sets them
class AppIT {
    private static final String SCRIPT = "assets/main-Bq3xK0aZ.js";

    @TempDir
    private Path data;

    private Server server;

    @BeforeEach
    void start() {
        server = Server.start(new ServerSettings(data, 0));
    }

    @AfterEach
    void stop() {
        server.close();
    }

    private HttpResponse<byte[]> send(String method, String path, String... headers) throws Exception {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create(server.address() + path))
                .method(method, HttpRequest.BodyPublishers.noBody());
        if (headers.length > 0) {
            request.headers(headers);
        }
        return HttpClient.newHttpClient().send(request.build(), HttpResponse.BodyHandlers.ofByteArray());
    }

    private static String header(HttpResponse<?> response, String name) {
        return response.headers().firstValue(name).orElse("");
    }

    private static byte[] file(String name) throws IOException {
        try (var in = AppIT.class.getResourceAsStream("/org/varwright/web/" + name)) {
            return in == null ? new byte[0] : in.readAllBytes();
        }
    }

    @Test
    void everyScreenIsTheOnePage() throws Exception {
        for (String path : List.of("", "index.html", "banks", "jobs/spring/way-in", "jobs/two%20words")) {
            HttpResponse<byte[]> page = send("GET", path);
            assertEquals(200, page.statusCode(), path);
            assertArrayEquals(file("index.html"), page.body(), path);
            assertEquals("text/html;charset=utf-8", header(page, "Content-Type"));
            assertEquals("no-cache", header(page, "Cache-Control"));
            assertTrue(header(page, "Content-Security-Policy").contains("style-src 'self';"));
        }
    }

    @Test
    void aFileHasItsMediaTypeAndIsKeptAsLongAsItsNameAllows() throws Exception {
        Map<String, String> types = Map.of(
                SCRIPT,
                "text/javascript;charset=utf-8",
                "sw.js",
                "text/javascript;charset=utf-8",
                "manifest.webmanifest",
                "application/manifest+json",
                "icon.svg",
                "image/svg+xml",
                "core-0123456789ab/varwright-core.wasm",
                "application/wasm");
        for (Map.Entry<String, String> type : types.entrySet()) {
            String path = type.getKey();
            HttpResponse<byte[]> file = send("GET", path);
            assertEquals(200, file.statusCode(), path);
            assertEquals(type.getValue(), header(file, "Content-Type"), path);
            assertEquals("nosniff", header(file, "X-Content-Type-Options"), path);
            assertArrayEquals(file(path), file.body(), path);
            assertEquals(
                    path.contains("/") ? "public, max-age=31536000, immutable" : "no-cache",
                    header(file, "Cache-Control"),
                    path);
        }
    }

    /** Where core runs, its loader may make functions from texts; nowhere else may anything. */
    @Test
    void onlyTheWorkerMayMakeFunctions() throws Exception {
        String worker = header(send("GET", "assets/worker-Bq3xK0aZ.js"), "Content-Security-Policy");
        assertTrue(worker.contains("'unsafe-eval'") && worker.contains("default-src 'none'"), worker);
        for (String path :
                List.of("", SCRIPT, "sw.js", "core-0123456789ab/varwright-core.wasm", "assets/worker-no.js")) {
            String policy = header(send("GET", path), "Content-Security-Policy");
            assertTrue(
                    policy.contains("'wasm-unsafe-eval'") && !policy.contains("'unsafe-eval'"), path + ": " + policy);
        }
    }

    @Test
    void theSqueezedTwinIsSentToWhoTakesIt() throws Exception {
        HttpResponse<byte[]> squeezed = send("GET", SCRIPT, "Accept-Encoding", "br, gzip;q=0.8");
        assertEquals("gzip", header(squeezed, "Content-Encoding"));
        assertEquals("Accept-Encoding", header(squeezed, "Vary"));
        assertArrayEquals(file(SCRIPT + ".gz"), squeezed.body());
        assertArrayEquals(file(SCRIPT), new GZIPInputStream(new ByteArrayInputStream(squeezed.body())).readAllBytes());
        for (String none : List.of("identity", "gzip;q=0", "gzip; q=0.0")) {
            HttpResponse<byte[]> plain = send("GET", SCRIPT, "Accept-Encoding", none);
            assertEquals("", header(plain, "Content-Encoding"), none);
            assertArrayEquals(file(SCRIPT), plain.body(), none);
            assertFalse(header(plain, "ETag").equals(header(squeezed, "ETag")), "other bytes, another tag");
        }
    }

    @Test
    void whatIsHeldAlreadyIsNotSentAgain() throws Exception {
        for (String path : List.of("", SCRIPT, "icon.svg")) {
            String tag = header(send("GET", path), "ETag");
            HttpResponse<byte[]> again = send("GET", path, "If-None-Match", "\"other\", W/" + tag);
            assertEquals(304, again.statusCode(), path);
            assertEquals(0, again.body().length);
            assertEquals(200, send("GET", path, "If-None-Match", "\"other\"").statusCode());
        }
    }

    @Test
    void headTellsTheSameWithoutTheBody() throws Exception {
        for (String path : List.of("", SCRIPT, "banks", "healthz", "api/banks")) {
            HttpResponse<byte[]> whole = send("GET", path);
            HttpResponse<byte[]> head = send("HEAD", path);
            assertEquals(200, head.statusCode(), path);
            assertEquals(0, head.body().length, path);
            assertEquals(header(whole, "Content-Type"), header(head, "Content-Type"), path);
            assertEquals(header(whole, "ETag"), header(head, "ETag"), path);
        }
        assertEquals(404, send("HEAD", "nothing.js").statusCode());
    }

    @Test
    void whatIsNotThereIsAProblemAndNeverThePage() throws Exception {
        for (String path : List.of(
                "nothing.js",
                "assets/none-12345678.css",
                "api",
                "api/nothing",
                "notes.secret",
                "assets/..js",
                ".git")) {
            HttpResponse<byte[]> answer = send("GET", path);
            assertEquals(404, answer.statusCode(), path);
            assertEquals("application/problem+json", header(answer, "Content-Type"), path);
        }
        assertEquals(404, send("POST", "banks").statusCode());
    }

    /** Names that try to leave the folder: with dots, encoded, with the other slash, with a byte that ends names in some systems. */
    @Test
    void nothingOutsideTheAppIsSent() throws Exception {
        for (String path : List.of(
                "/../server/openapi.yaml",
                "/assets/../../server/openapi.yaml",
                "/%2e%2e/server/openapi.yaml",
                "/assets/%2e%2e/%2e%2e/server/openapi.yaml",
                "/..%2fserver%2fopenapi.yaml",
                "/assets/..%5c..%5cserver%5copenapi.yaml",
                "/..\\server\\openapi.yaml",
                "/%252e%252e/server/openapi.yaml",
                "/index.html%00.js",
                "/assets%00",
                "/banks%00",
                "//org/varwright/server/openapi.yaml",
                "/./../server/Server.class",
                "/..;/server/openapi.yaml",
                "/org/varwright/server/Server.class",
                "/META-INF/MANIFEST.MF")) {
            RawRequest.Answer answer =
                    new RawRequest(server.address()).send("GET " + path + " HTTP/1.1", "Accept: */*", "");
            assertTrue(answer.status() == 404 || answer.status() == 400, path + ": " + answer.text());
            assertFalse(answer.text().contains("openapi: 3"), path);
        }
    }

    @Test
    void aFolderIsNoFile() throws Exception {
        HttpResponse<byte[]> folder = send("GET", "assets/");
        assertArrayEquals(file("index.html"), folder.body(), "a path without a dot is a screen");
    }

    @Test
    void withoutTheAppTheFirstPageSaysHowToBuildIt() throws Exception {
        server.close();
        server = Server.start(new ServerSettings(data, 0), AppFiles.under("org/varwright/none/"));
        HttpResponse<byte[]> page = send("GET", "");
        assertEquals(200, page.statusCode());
        assertEquals("text/plain;charset=utf-8", header(page, "Content-Type"));
        assertTrue(new String(page.body(), StandardCharsets.UTF_8).contains("./varwright serve"));
        assertEquals(404, send("GET", "banks").statusCode());
    }

    /** A port that is taken is said, and the folder is free again for the next try. */
    @Test
    void aTakenPortLeavesTheFolderFree(@TempDir Path other) {
        int taken = Integer.parseInt(server.address().replaceAll(".*:(\\d+)/", "$1"));
        for (int again = 0; again < 2; again++) {
            var e = assertThrows(VarwrightException.class, () -> Server.start(new ServerSettings(other, taken)));
            assertEquals(Message.SERVER_PORT, e.problems().getFirst().message());
        }
    }
}
