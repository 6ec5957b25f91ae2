package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** {@code serve}: prints its address, answers, and refuses a folder that another server has. */
class ServeIT {
    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path data;

    @Test
    void aDamagedDatabaseIsNamedAndLeftAsItIs() throws Exception {
        Path database = Files.writeString(data.resolve("varwright.sqlite"), "Dear Sir, ".repeat(500));
        Session session = Session.run("serve", "--data", data.toString(), "--port", "0");
        assertEquals(2, session.code());
        assertTrue(session.err().contains("varwright.sqlite: the database is damaged"), session.err());
        assertTrue(session.err().contains("Copy the whole folder away first"), session.err());
        assertEquals("Dear Sir, ".repeat(500), Files.readString(database));
    }

    @Test
    void servesUntilItIsStopped() throws Exception {
        try (RunningCommand serve = new RunningCommand("serve", "--data", data.toString(), "--port", "0")) {
            assertEquals(200, serve.send("GET", "healthz", "").statusCode());
            Session second = Session.run("serve", "--data", data.toString(), "--port", "0");
            assertEquals(2, second.code());
            assertTrue(second.err().contains("another server has this folder"), second.err());
            assertEquals(0, serve.stop());
        }
        assertEquals(
                2,
                Session.run("serve", "--data", data.toString(), "--port", "70000")
                        .code());
    }
}
