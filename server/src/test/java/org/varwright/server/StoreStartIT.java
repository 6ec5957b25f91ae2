package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** A server that finds its folder in a bad state says what is wrong and what to try, and changes nothing in it. */
@SuppressWarnings("NullAway.Init") // JUnit sets them
class StoreStartIT {
    @TempDir
    private Path data;

    private Path database;

    @BeforeEach
    void aFolderWithAJob() throws Exception {
        database = data.resolve("varwright.sqlite");
        Lines tablet = new Lines("spring", "tablet-a");
        try (Server server = Server.start(new ServerSettings(data, 0))) {
            new Api(server.address()).send("POST", "api/jobs/spring/events", tablet.open() + tablet.note("kept"));
        }
    }

    private Problem refused() throws IOException {
        byte[] before = Files.readAllBytes(database);
        VarwrightException e = assertThrows(VarwrightException.class, () -> Server.start(new ServerSettings(data, 0)));
        assertArrayEquals(before, Files.readAllBytes(database), "what lies there is left as it is");
        return e.problems().getFirst();
    }

    private void assertDamaged() throws IOException {
        Problem problem = refused();
        assertEquals(Message.SERVER_STORE_DAMAGED, problem.message(), problem.print());
        assertTrue(problem.print().contains("varwright.sqlite"), problem.print());
        assertTrue(problem.print().contains("Copy the whole folder away first"), problem.print());
    }

    @Test
    void noDatabaseAtAll() throws IOException {
        Files.writeString(database, "Dear Sir, ".repeat(900), StandardCharsets.UTF_8);
        assertDamaged();
    }

    @Test
    void aDatabaseCutInHalf() throws IOException {
        byte[] whole = Files.readAllBytes(database);
        Files.write(database, Arrays.copyOf(whole, whole.length / 2));
        assertDamaged();
    }

    @Test
    void aDatabaseWithADamagedPage() throws IOException {
        byte[] bytes = Files.readAllBytes(database);
        byte[] noise = new byte[4_096];
        new Random(20_261_125L).nextBytes(noise);
        System.arraycopy(noise, 0, bytes, bytes.length - 2 * noise.length, noise.length);
        System.arraycopy(noise, 0, bytes, bytes.length - 4 * noise.length, noise.length);
        Files.write(database, bytes);
        assertDamaged();
    }

    @Test
    void aDatabaseOfANewerVersion() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
                Statement statement = connection.createStatement()) {
            statement.execute("INSERT INTO flyway_schema_history SELECT 99, '99', 'from later', type, script, checksum,"
                    + " installed_by, installed_on, 1, 1 FROM flyway_schema_history LIMIT 1");
        }
        assertEquals(Message.SERVER_STORE_NEWER, refused().message());
    }

    @Test
    void aDatabaseThatAnotherProgramHolds() throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA locking_mode = EXCLUSIVE");
            statement.execute("BEGIN EXCLUSIVE");
            Problem problem = refused();
            assertEquals(Message.SERVER_STORE_BUSY, problem.message());
            assertTrue(problem.print().contains("close it"), problem.print());
        }
        Server.start(new ServerSettings(data, 0)).close();
    }

    @Test
    void aFileOrAFolderInTheWrongPlace() throws IOException {
        Path file = Files.writeString(data.resolve("a-file"), "x");
        VarwrightException e = assertThrows(VarwrightException.class, () -> Server.start(new ServerSettings(file, 0)));
        assertEquals(Message.SERVER_FOLDER, e.problems().getFirst().message());
        Path other = data.resolve("other");
        Files.createDirectories(other.resolve("varwright.sqlite"));
        VarwrightException f = assertThrows(VarwrightException.class, () -> Server.start(new ServerSettings(other, 0)));
        assertEquals(Message.SERVER_FOLDER, f.problems().getFirst().message());
    }

    /** SQLite's own word for a full disk, which a database that may not grow gives too. */
    @Test
    void everyWordOfSqliteForAFaultIsKnown() throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + data.resolve("small"));
                Statement statement = connection.createStatement()) {
            statement.execute("CREATE TABLE t (x BLOB)");
            statement.execute("PRAGMA max_page_count = 4");
            SQLException full =
                    assertThrows(SQLException.class, () -> statement.execute("INSERT INTO t VALUES (zeroblob(60000))"));
            assertEquals(Optional.of(StorageFault.FULL), StorageFault.of(new IllegalStateException(full)));
            SQLException ours = assertThrows(SQLException.class, () -> statement.execute("SELECT y FROM t"));
            assertEquals(Optional.empty(), StorageFault.of(ours), "a fault in a statement is the program's own");
        }
    }
}
