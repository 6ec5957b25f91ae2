package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.List;
import org.varwright.job.Sha256;

/** Everything that devices ask of a server, again and again until it is gone, and a book of what it acknowledged. */
final class Storm {
    private final Lines tablet = new Lines("spring", "tablet-a");
    private final List<String> pending = new ArrayList<>();
    private final List<String> lines = new ArrayList<>();
    private final List<String> photos = new ArrayList<>();
    private final String bank;
    private String acknowledgedBank = "";
    private String sentBank = "";
    private int banks;
    private int reports;

    Storm() throws IOException {
        bank = Lines.bank("corbel-reach-3");
        pending.add(tablet.open());
    }

    /** One request after another; ends when there is no server any more. */
    private interface Request {
        void send() throws IOException, InterruptedException;
    }

    @SuppressWarnings("InfiniteLoopStatement")
    private static Object untilGone(Request request) throws InterruptedException {
        try {
            while (true) {
                request.send();
            }
        } catch (IOException e) {
            return e;
        }
    }

    private static void require(boolean good, HttpResponse<String> answer) {
        if (!good) {
            throw new AssertionError(answer.statusCode() + " " + answer.body());
        }
    }

    /** Lines of a job; one without an answer is sent again, as a tablet does. */
    Object lines(RunningServer server) throws InterruptedException {
        return untilGone(() -> {
            if (pending.isEmpty()) {
                pending.add(tablet.note("line " + lines.size()));
            }
            HttpResponse<String> answer = server.send("POST", "api/jobs/spring/events", pending.getFirst());
            require(answer.statusCode() == 200, answer);
            lines.add(pending.removeFirst());
        });
    }

    /** A bank that is changed again and again by who has read it. */
    Object banks(RunningServer server) throws InterruptedException {
        return untilGone(() -> {
            HttpResponse<String> stands = server.get("api/banks/corbel");
            sentBank = bank + "# edition " + banks + "\n";
            HttpResponse<String> put = stands.statusCode() == 404
                    ? server.send("PUT", "api/banks/corbel", sentBank, "If-None-Match", "*")
                    : server.send(
                            "PUT",
                            "api/banks/corbel",
                            sentBank,
                            "If-Match",
                            stands.headers().firstValue("ETag").orElseThrow());
            require(put.statusCode() == 201 || put.statusCode() == 204, put);
            acknowledgedBank = sentBank;
            banks++;
        });
    }

    /** Photographs of a size at which a kill falls into the middle of one. */
    Object photos(RunningServer server) throws InterruptedException {
        return untilGone(() -> {
            String photo = photo(photos.size());
            String hash = Sha256.of(photo);
            HttpResponse<String> answer = server.send("PUT", "api/attachments/" + hash, photo);
            require(answer.statusCode() == 201 || answer.statusCode() == 204, answer);
            photos.add(hash);
        });
    }

    private static String photo(int number) {
        return ("photo " + number + " ").repeat(60_000);
    }

    Object reports(RunningServer server) throws InterruptedException {
        return untilGone(() -> {
            HttpResponse<String> answer = server.get("api/jobs/spring/report.json");
            require(answer.statusCode() == 200 || answer.statusCode() == 404, answer);
            reports += answer.statusCode() == 200 ? 1 : 0;
        });
    }

    /** Whatever was acknowledged is there; a bank may also stand as it was sent last, without an answer. */
    void check(RunningServer server, String when) throws IOException, InterruptedException {
        String stored = server.get("api/jobs/spring/events").body();
        for (String line : lines) {
            assertTrue(stored.contains(line), when + ": an acknowledged line is gone");
        }
        if (banks > 0) {
            String stands = server.get("api/banks/corbel").body();
            assertTrue(
                    stands.equals(acknowledgedBank) || stands.equals(sentBank),
                    when + ": the bank is neither the one acknowledged nor the one sent last");
        }
        for (int i = 0; i < photos.size(); i++) {
            assertEquals(
                    photo(i), server.get("api/attachments/" + photos.get(i)).body(), when);
        }
        if (!lines.isEmpty()) {
            HttpResponse<String> report = server.get("api/jobs/spring/report.pdf");
            assertTrue(report.body().startsWith("%PDF-"), when + ": " + report.statusCode());
        }
    }

    String told() {
        assertTrue(
                lines.size() > 10 && banks > 10 && photos.size() > 3 && reports > 3, "the storm did something of each");
        return lines.size() + " lines, " + banks + " editions of a bank, " + photos.size() + " photographs, " + reports
                + " reports acknowledged, none lost";
    }
}
