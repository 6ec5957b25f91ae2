package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.job.Sha256;

/** The disk, the rights and the database fail under a running server: what is refused says what to do, and whatever was acknowledged stands. */
@SuppressWarnings("NullAway.Init") // JUnit sets them
class FaultIT {
    private static final String EVENTS = "api/jobs/spring/events";

    @TempDir
    private Path data;

    private Lines tablet;
    private String acknowledged = "";

    @BeforeEach
    void open() {
        tablet = new Lines("spring", "tablet-a");
    }

    private void acknowledge(RunningServer server, String line) throws Exception {
        HttpResponse<String> answer = server.send("POST", EVENTS, line);
        assertEquals(200, answer.statusCode(), answer.body());
        acknowledged += line;
    }

    private static void assertRefused(int status, String said, HttpResponse<String> answer) {
        assertEquals(status, answer.statusCode(), answer.body());
        assertTrue(answer.body().contains(said), answer.body());
        assertTrue(answer.body().contains("nothing was taken in"), answer.body());
    }

    private List<Path> attachments() throws IOException {
        try (var files = Files.walk(data.resolve("attachments"))) {
            return files.filter(Files::isRegularFile).toList();
        }
    }

    /** The kernel lets no file of the server grow further; its write fails in the middle as on a full disk. */
    @Test
    void aFullDisk() throws Exception {
        String photo = "x".repeat(900_000);
        String hash = Sha256.of(photo);
        try (RunningServer server = RunningServer.start(data)) {
            acknowledge(server, tablet.open());
            acknowledge(server, tablet.note("with room"));
            long log = Files.size(data.resolve("varwright.sqlite-wal"));
            server.roomFor(String.valueOf(log + 3_000));
            String late = tablet.note("without room");
            assertRefused(507, "no room", server.send("POST", EVENTS, late));
            assertRefused(507, "no room", server.send("PUT", "api/attachments/" + hash, photo));
            assertRefused(
                    507,
                    "no room",
                    server.send("PUT", "api/banks/corbel", Lines.bank("corbel-reach-3"), "If-None-Match", "*"));
            assertEquals(acknowledged, server.get(EVENTS).body(), "reading goes on");
            assertEquals(List.of(), attachments(), "no half file");
            assertEquals(200, server.get("healthz").statusCode());
            server.roomFor("unlimited");
            acknowledge(server, late);
            assertEquals(
                    201, server.send("PUT", "api/attachments/" + hash, photo).statusCode());
            assertEquals(acknowledged, server.get(EVENTS).body());
        }
        try (RunningServer again = RunningServer.start(data)) {
            assertEquals(acknowledged, again.get(EVENTS).body());
        }
    }

    @Test
    void permissionIsLostAndMended() throws Exception {
        Path database = data.resolve("varwright.sqlite");
        String hash = Sha256.of("photo");
        try (RunningServer server = RunningServer.start(data, RunningServer.withoutOverride())) {
            acknowledge(server, tablet.open());
            List<Path> files =
                    List.of(database, data.resolve("varwright.sqlite-wal"), data.resolve("varwright.sqlite-shm"));
            for (Path file : files) {
                Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
            }
            Files.setPosixFilePermissions(data.resolve("attachments"), PosixFilePermissions.fromString("r-xr-xr-x"));
            String late = tablet.note("late");
            assertRefused(503, "Mend the permission", server.send("POST", EVENTS, late));
            assertRefused(503, "Mend the permission", server.send("PUT", "api/attachments/" + hash, "photo"));
            for (Path file : files) {
                Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("rw-r--r--"));
            }
            Files.setPosixFilePermissions(data.resolve("attachments"), PosixFilePermissions.fromString("rwxr-xr-x"));
            acknowledge(server, late);
            assertEquals(
                    201, server.send("PUT", "api/attachments/" + hash, "photo").statusCode());
            assertEquals(acknowledged, server.get(EVENTS).body());
        }
    }

    /** Somebody moves the folder's files away while the server runs: no empty database takes their place. */
    @Test
    void theFolderIsTakenAwayAndPutBack() throws Exception {
        Path elsewhere = data.resolveSibling(data.getFileName() + "-elsewhere");
        try (RunningServer server = RunningServer.start(data)) {
            acknowledge(server, tablet.open());
            Files.move(data, elsewhere);
            assertRefused(503, "put the folder back", server.send("POST", EVENTS, tablet.note("late")));
            assertRefused(
                    503, "put the folder back", server.send("PUT", "api/attachments/" + Sha256.of("photo"), "photo"));
            assertEquals(503, server.get("api/banks").statusCode());
            assertFalse(Files.exists(data));
            Files.move(elsewhere, data);
            assertEquals(acknowledged, server.get(EVENTS).body());
        }
    }

    @Test
    void theDatabaseIsHeldByAnotherProgram() throws Exception {
        try (RunningServer server = RunningServer.start(data)) {
            acknowledge(server, tablet.open());
            String late = tablet.note("late");
            try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("varwright.sqlite"));
                    Statement statement = other.createStatement()) {
                statement.execute("BEGIN IMMEDIATE");
                assertRefused(503, "another program holds", server.send("POST", EVENTS, late));
                assertEquals(acknowledged, server.get(EVENTS).body(), "reading goes on");
                statement.execute("ROLLBACK");
            }
            acknowledge(server, late);
            assertEquals(acknowledged, server.get(EVENTS).body());
        }
    }

    /** The line breaks before everything that was announced has come. */
    @Test
    void whatIsCutOffOnItsWayIsNotTakenIn() throws Exception {
        try (RunningServer server = RunningServer.start(data)) {
            acknowledge(server, tablet.open());
            String photo = "x".repeat(400_000);
            cutOff(server, "POST /" + EVENTS, tablet.note("whole") + tablet.note("half"), 60);
            cutOff(server, "PUT /api/banks/corbel", Lines.bank("corbel-reach-3"), 900);
            cutOff(server, "PUT /api/attachments/" + Sha256.of(photo), photo, 200_000);
            // What runs has ended when the server has served another request of each kind.
            acknowledge(server, tablet.note("after"));
            assertEquals(
                    201,
                    server.send("PUT", "api/attachments/" + Sha256.of("photo"), "photo")
                            .statusCode());
            assertEquals(acknowledged, server.get(EVENTS).body());
            assertEquals(404, server.get("api/banks/corbel").statusCode());
            assertEquals(404, server.get("api/attachments/" + Sha256.of(photo)).statusCode());
        }
        try (RunningServer again = RunningServer.start(data)) {
            assertEquals(acknowledged, again.get(EVENTS).body());
            assertEquals(1, attachments().size());
        }
    }

    private static void cutOff(RunningServer server, String request, String body, int left) throws IOException {
        byte[] bytes = body.getBytes(StandardCharsets.UTF_8);
        URI address = URI.create(server.address());
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), address.getPort())) {
            socket.getOutputStream()
                    .write((request + " HTTP/1.1\r\nHost: " + address.getAuthority()
                                    + "\r\nIf-None-Match: *\r\nContent-Length: " + bytes.length + "\r\n\r\n")
                            .getBytes(StandardCharsets.ISO_8859_1));
            socket.getOutputStream().write(bytes, 0, bytes.length - left);
            socket.getOutputStream().flush();
            socket.shutdownOutput();
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertTrue(answer.isEmpty() || answer.startsWith("HTTP/1.1 400"), answer);
        }
    }

    /** A file of half the length under a hash: it is not given out as the photo, and the photo can be sent again. */
    @Test
    void aTornAttachmentIsMendedByItsSender() throws Exception {
        String photo = "a photo of stage 2";
        String hash = Sha256.of(photo);
        try (RunningServer server = RunningServer.start(data)) {
            server.send("PUT", "api/attachments/" + hash, photo);
            Path kept = attachments().getFirst();
            Files.writeString(kept, photo.substring(9));
            Files.writeString(data.resolve("attachments").resolve("part-1"), "half");
            server.kill();
        }
        try (RunningServer server = RunningServer.start(data)) {
            assertEquals(1, attachments().size(), "half uploads of a killed server are cleared away");
            assertEquals(404, server.get("api/attachments/" + hash).statusCode());
            assertEquals(
                    201, server.send("PUT", "api/attachments/" + hash, photo).statusCode());
            assertEquals(photo, server.get("api/attachments/" + hash).body());
        }
    }

    /** Garbage behind the last whole write of the database's log, as a power cut may leave. */
    @Test
    void aTornWriteIsForgottenAndTheRestStands() throws Exception {
        try (RunningServer server = RunningServer.start(data)) {
            acknowledge(server, tablet.open());
            acknowledge(server, tablet.note("kept"));
        }
        Path log = data.resolve("varwright.sqlite-wal");
        byte[] whole = Files.readAllBytes(log);
        byte[] torn = new byte[whole.length + 2_500];
        System.arraycopy(whole, 0, torn, 0, whole.length);
        Arrays.fill(torn, whole.length, torn.length, (byte) 0x5a);
        Files.write(log, torn);
        try (RunningServer server = RunningServer.start(data)) {
            assertEquals(acknowledged, server.get(EVENTS).body());
            acknowledge(server, tablet.note("goes on"));
            assertEquals(acknowledged, server.get(EVENTS).body());
        }
    }
}
