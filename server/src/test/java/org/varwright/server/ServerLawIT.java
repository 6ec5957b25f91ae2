package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.fuzz.Mutation;
import org.varwright.fuzz.Seeds;

/** Whatever is sent to the API: never a fault of the server, a problem on every refusal, and nothing acknowledged is lost or changed. */
class ServerLawIT {
    private static final int REQUESTS = 60;

    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    @Test
    void whateverIsSentNothingAcknowledgedIsLost() {
        Seeds.hold("visits", 5, random -> {
            Path data = Files.createTempDirectory(folder, "data");
            AnyVisit visit;
            try (Server server = Server.start(new ServerSettings(data, 0))) {
                visit = new AnyVisit(random, new Api(server.address()));
                for (int i = 0; i < REQUESTS; i++) {
                    visit.act();
                }
                visit.holdWhatWasAcknowledged();
            }
            assertTrue(
                    visit.taken() > 5 && visit.refused() > 5,
                    visit.taken() + " taken, " + visit.refused() + " refused");
            try (Server again = Server.start(new ServerSettings(data, 0))) {
                visit.before(new Api(again.address())).holdWhatWasAcknowledged();
            }
            return Seeds.Outcome.TAKEN;
        });
    }

    /** Heads that no client of good manners sends; some end before our code is reached, and none brings it down. */
    @Test
    void headsOfBadMannersAreRefused() throws Exception {
        try (Server server = Server.start(new ServerSettings(folder.resolve("raw"), 0))) {
            RawRequest raw = new RawRequest(server.address());
            Seeds.hold("raw heads", 60, random -> {
                String line =
                        Mutation.text(random, "PUT /api/banks/spring HTTP/1.1").replaceAll("[\\r\\n\\p{Cs}]", "");
                String header = Mutation.text(random, "If-Match: \"abc\"").replaceAll("[\\r\\n\\p{Cs}]", "");
                String answer = raw.sendAnything(line, header, Mutation.text(random, "format: varwright/1\nname: x\n"));
                assertTrue(
                        answer.isEmpty()
                                || answer.matches("(?s)HTTP/1\\.[01] [1234][0-9]{2}.*")
                                || answer.startsWith("HTTP/1.1 505"),
                        line + "\n" + answer);
                assertTrue(!answer.contains("\tat ") && !answer.contains("org.eclipse"), answer);
                return answer.startsWith("HTTP/1.1 2") ? Seeds.Outcome.TAKEN : Seeds.Outcome.REFUSED;
            });
            assertTrue(new Api(server.address()).healthy(), "still there");
        }
    }
}
