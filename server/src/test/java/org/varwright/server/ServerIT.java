package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.job.Sha256;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** Every operation of the API over HTTP, with a real database; every answer is held against the description. */
@SuppressWarnings("NullAway.Init") // JUnit sets them
class ServerIT {
    @TempDir
    private Path data;

    private Server server;
    private Api api;

    @BeforeEach
    void start() throws IOException {
        server = Server.start(new ServerSettings(data, 0));
        api = new Api(server.address());
    }

    @AfterEach
    void stop() {
        server.close();
    }

    // ---- banks

    @Test
    void aBankIsPutReadAndReplacedByWhoHasSeenIt() throws Exception {
        String text = Lines.bank("corbel-reach-3");
        HttpResponse<String> made = api.send("PUT", "api/banks/corbel", text, "If-None-Match", "*");
        assertEquals(201, made.statusCode(), made.body());
        HttpResponse<String> read = api.get("api/banks/corbel");
        assertEquals(text, read.body());
        String tag = read.headers().firstValue("ETag").orElseThrow();
        assertEquals(
                412,
                api.send("PUT", "api/banks/corbel", text, "If-None-Match", "*").statusCode());
        assertEquals(428, api.send("PUT", "api/banks/corbel", text).statusCode());
        String changed = text.replace("Corbel Reach water works", "Corbel Reach pumping works");
        assertEquals(
                204,
                api.send("PUT", "api/banks/corbel", changed, "If-Match", tag).statusCode());
        assertEquals(
                412,
                api.send("PUT", "api/banks/corbel", text, "If-Match", tag).statusCode(),
                "the tag is of the version before");
        assertEquals(
                "Corbel Reach pumping works",
                api.json(api.get("api/banks")).at("/banks/0/site").asText());
    }

    @Test
    void aBankThatCanNotBeReadIsRefusedWithEveryPlace() throws Exception {
        String text = Lines.bank("corbel-reach-3").replace("voltage: 12.47 kV", "voltage: 12.47");
        HttpResponse<String> refused = api.send("PUT", "api/banks/corbel", text, "If-None-Match", "*");
        assertEquals(422, refused.statusCode());
        assertEquals("NO_UNIT", api.json(refused).at("/problems/0/code").asText());
        assertTrue(api.json(refused).at("/problems/0/line").asInt() > 1);
        assertEquals(0, api.json(api.get("api/banks")).path("banks").size());
    }

    @Test
    void aBankThatIsTooLargeIsRefused() throws Exception {
        assertEquals(
                413,
                api.send("PUT", "api/banks/corbel", "#".repeat(2_000_001), "If-None-Match", "*")
                        .statusCode());
    }

    // ---- jobs

    @Test
    void linesGoInAndComeOutAsTheyAre() throws Exception {
        Lines tablet = new Lines("spring", "tablet-a");
        String first = tablet.open();
        assertEquals(
                1,
                api.json(api.send("POST", "api/jobs/spring/events", first))
                        .path("added")
                        .asInt());
        String seen = tablet.lastHash();
        String more = tablet.note("one") + tablet.note("two");
        HttpResponse<String> added = api.send("POST", "api/jobs/spring/events", first + more);
        assertEquals(2, api.json(added).path("added").asInt());
        assertEquals(1, api.json(added).path("known").asInt(), "sending twice does no harm");
        assertEquals(tablet.hash(), api.json(added).path("hash").asText());
        assertEquals(tablet.all(), api.get("api/jobs/spring/events").body());
        assertEquals(more, api.get("api/jobs/spring/events?have=" + seen).body());
        assertEquals("alarm", api.json(api.get("api/jobs/spring")).path("title").asText());
        assertEquals("spring", api.json(api.get("api/jobs")).at("/jobs/0/job").asText());
    }

    /** A device that holds all of it asks with the tag, and is told so without a line. */
    @Test
    void whatADeviceHoldsIsNotSentAgain() throws Exception {
        Lines tablet = new Lines("spring", "tablet-a");
        api.send("POST", "api/jobs/spring/events", tablet.open());
        api.send("PUT", "api/banks/corbel", Lines.bank("corbel-reach-3"), "If-None-Match", "*");
        assertEquals(
                tablet.hash(),
                api.json(api.get("api/jobs")).at("/jobs/0/hash").asText(),
                "the device works out the same hash");
        for (String path : new String[] {"jobs", "jobs/spring", "jobs/spring/events", "banks", "banks/corbel"}) {
            String tag = api.get("api/" + path).headers().firstValue("ETag").orElseThrow();
            assertEquals(
                    304,
                    api.send("GET", "api/" + path, "", "If-None-Match", tag).statusCode(),
                    path);
            if (path.startsWith("jobs")) {
                api.send("POST", "api/jobs/spring/events", tablet.note("more for " + path.length()));
                assertEquals(
                        200,
                        api.send("GET", "api/" + path, "", "If-None-Match", tag).statusCode(),
                        path);
            }
        }
        assertEquals(4, api.json(api.get("api/jobs")).at("/jobs/0/events").asInt());
        assertEquals(4, api.json(api.get("api/jobs/spring")).path("events").asInt());
    }

    @Test
    void twoTabletsThatWorkedApartLoseNothing() throws Exception {
        Lines a = new Lines("spring", "tablet-a");
        String opened = a.open();
        Lines b = new Lines("spring", "tablet-b").from(opened);
        api.send("POST", "api/jobs/spring/events", opened + a.note("from a"));
        HttpResponse<String> both = api.send("POST", "api/jobs/spring/events", b.note("from b"));
        assertEquals(3, api.json(both).path("events").asInt());
        assertEquals(0, api.json(api.get("api/jobs/spring")).path("findings").size());
    }

    @Test
    void oneBadLineTakesNoneIn() throws Exception {
        Lines tablet = new Lines("spring", "tablet-a");
        String lines = tablet.open() + "not an event\n" + tablet.note("x");
        assertEquals(422, api.send("POST", "api/jobs/spring/events", lines).statusCode());
        assertEquals(422, api.send("POST", "api/jobs/spring/events", "").statusCode());
        assertEquals(
                422, api.send("POST", "api/jobs/autumn/events", tablet.all()).statusCode());
        assertEquals(404, api.get("api/jobs/spring").statusCode());
    }

    @Test
    void aForgedLineStaysVisible() throws Exception {
        Lines tablet = new Lines("spring", "tablet-a");
        String lines = tablet.open() + tablet.note("all well") + tablet.note("still");
        api.send("POST", "api/jobs/spring/events", lines.replace("all well", "not well"));
        String finding = api.json(api.get("api/jobs/spring")).at("/findings/0").asText();
        assertTrue(finding.contains("tablet-a:3 does not follow"), finding);
    }

    // ---- whole jobs

    @Test
    void aJobIsOneFile() throws Exception {
        Lines tablet = new Lines("spring", "tablet-a");
        String content = "a photo of stage 2";
        String hash = Sha256.of(content);
        api.send("POST", "api/jobs/spring/events", tablet.open() + tablet.attach(hash, content.length()));
        HttpResponse<String> without = api.get("api/jobs/spring/archive");
        assertEquals(200, without.statusCode());
        assertTrue(!without.body().contains(content), "it has not come yet");
        api.send("PUT", "api/attachments/" + hash, content);
        HttpResponse<String> whole = api.get("api/jobs/spring/archive");
        assertTrue(whole.body().startsWith("PK") && whole.body().contains("attachments/" + hash));
        assertTrue(whole.body().contains(content), "stored as it is");
        assertTrue(whole.body().contains("spring.job.jsonl"));
        assertEquals(whole.body(), api.get("api/jobs/spring/archive").body(), "the same job, the same bytes");
        assertEquals(404, api.get("api/jobs/autumn/archive").statusCode());
    }

    // ---- reports

    @Test
    void aJobIsReportedInThreeKinds() throws Exception {
        Lines tablet = new Lines("spring", "tablet-a");
        api.send("POST", "api/jobs/spring/events", tablet.open() + tablet.note("oil under stage 2"));
        for (String kind : new String[] {"pdf", "xlsx", "json"}) {
            String path = "api/jobs/spring/report." + kind + "?zone=America/Denver";
            HttpResponse<String> report = api.get(path);
            assertEquals(200, report.statusCode(), report.body());
            assertTrue(report.body().startsWith(kind.equals("pdf") ? "%PDF-" : kind.equals("json") ? "{" : "PK"));
            String tag = report.headers().firstValue("ETag").orElseThrow();
            assertEquals(
                    304,
                    api.send("GET", path, "", "If-None-Match", tag).statusCode(),
                    "not made again while nothing changed");
        }
        assertEquals(
                tablet.hash(),
                api.json(api.get("api/jobs/spring/report.json")).at("/job/hash").asText());
        assertEquals(200, api.get("api/jobs/spring/report.pdf?paper=a4").statusCode());
        assertEquals(400, api.get("api/jobs/spring/report.pdf?paper=a3").statusCode());
        assertEquals(400, api.get("api/jobs/spring/report.pdf?zone=Nowhere").statusCode());
        assertEquals(404, api.get("api/jobs/autumn/report.pdf").statusCode());
    }

    /** A job whose first line has not come yet has no bank to be reported on. */
    @Test
    void aJobWithoutItsBeginningIsNotReported() throws Exception {
        Lines tablet = new Lines("spring", "tablet-a");
        tablet.open();
        api.send("POST", "api/jobs/spring/events", tablet.note("came first"));
        HttpResponse<String> refused = api.get("api/jobs/spring/report.pdf");
        assertEquals(422, refused.statusCode());
        assertEquals("JOB_NOT_OPEN", api.json(refused).at("/problems/0/code").asText());
    }

    // ---- attachments

    @Test
    void anAttachmentIsNamedByWhatIsInIt() throws Exception {
        String content = "a photo of stage 2";
        String hash = Sha256.of(content);
        assertEquals(201, api.send("PUT", "api/attachments/" + hash, content).statusCode());
        assertEquals(204, api.send("PUT", "api/attachments/" + hash, content).statusCode());
        HttpResponse<String> read = api.get("api/attachments/" + hash);
        assertEquals(content, read.body());
        assertEquals(
                "attachment", read.headers().firstValue("Content-Disposition").orElse(""));
        String other = Sha256.of("something else");
        assertEquals(422, api.send("PUT", "api/attachments/" + other, content).statusCode());
        assertEquals(404, api.get("api/attachments/" + other).statusCode());
        try (var files = Files.walk(data.resolve("attachments"))) {
            assertEquals(1, files.filter(Files::isRegularFile).count(), "what was refused leaves nothing behind");
        }
    }

    @Test
    void aNameThatClimbsOutOfTheFolderIsNoName() throws Exception {
        for (String path : new String[] {
            "api/attachments/..%2F..%2Fvarwright.sqlite",
            "api/attachments/%2e%2e",
            "api/banks/..%2Fx",
            "api/jobs/%2Fetc%2Fpasswd"
        }) {
            int status = api.get(path).statusCode();
            assertTrue(status == 404 || status == 400, path + ": " + status);
        }
    }

    // ---- who may ask

    @Test
    void aPageFromElsewhereGetsNothing() throws Exception {
        String text = Lines.bank("corbel-reach-3");
        assertEquals(
                403,
                new RawRequest(server.address())
                        .send("PUT /api/banks/corbel HTTP/1.1", "Origin: https://elsewhere.example", text)
                        .status());
        assertEquals(
                403,
                new RawRequest(server.address())
                        .send("PUT /api/banks/corbel HTTP/1.1", "Sec-Fetch-Site: cross-site", text)
                        .status());
        assertEquals(
                421,
                new RawRequest(server.address())
                        .send("GET /api/banks HTTP/1.1", "Host: elsewhere.example", "")
                        .status());
        assertEquals(0, api.json(api.get("api/banks")).path("banks").size());
    }

    /** Found by {@link ServerLawIT}: the web server beneath answered these itself, in HTML and without our headers. */
    @Test
    void aPathThatIsNoneIsRefusedAsAProblem() throws Exception {
        HttpResponse<String> refused = api.get("api/banks/%00");
        assertEquals(400, refused.statusCode());
        assertEquals(
                "application/problem+json",
                refused.headers().firstValue("Content-Type").orElse(""));
        assertEquals("Bad Request", api.json(refused).path("title").asText());
        assertTrue(refused.headers().firstValue("Content-Security-Policy").isPresent());
    }

    /** Found by {@link ServerLawIT}: a GET with this header was carried out as a DELETE would be. */
    @Test
    void aMethodIsWhatItSays() throws Exception {
        assertEquals(
                400,
                new RawRequest(server.address())
                        .send("GET /api/banks HTTP/1.1", "X-HTTP-Method-Override: PUT", "")
                        .status());
    }

    /** Found by {@link ServerLawIT}: a bank file of nothing but comments was neither a bank nor an error. */
    @Test
    void aBankOfCommentsOnlyIsRefused() throws Exception {
        HttpResponse<String> refused = api.send("PUT", "api/banks/corbel", "# to be written\n", "If-None-Match", "*");
        assertEquals(422, refused.statusCode());
        assertEquals("FILE_EMPTY", api.json(refused).at("/problems/0/code").asText());
    }

    @Test
    void everyAnswerIsHardened() throws Exception {
        for (String path : new String[] {"healthz", "api/banks", "api/nothing", "nowhere", "", "nowhere.js"}) {
            var headers = api.get(path).headers();
            assertTrue(headers.firstValue("Content-Security-Policy").orElse("").contains("default-src 'none'"), path);
            assertEquals("nosniff", headers.firstValue("X-Content-Type-Options").orElse(""), path);
        }
    }

    @Test
    void whatIsNotThereIsSaidAsAProblem() throws Exception {
        HttpResponse<String> answer = api.get("api/nothing");
        assertEquals(404, answer.statusCode());
        assertEquals("Not Found", api.json(answer).path("title").asText());
    }

    // ---- the folder

    @Test
    void aFolderHasOneServer() {
        VarwrightException e = assertThrows(VarwrightException.class, () -> Server.start(new ServerSettings(data, 0)));
        assertEquals(Message.SERVER_IN_USE, e.problems().getFirst().message());
    }

    @Test
    void whatWasAcknowledgedIsThereAfterARestart() throws Exception {
        Lines tablet = new Lines("spring", "tablet-a");
        api.send("POST", "api/jobs/spring/events", tablet.open() + tablet.note("kept"));
        server.close();
        start();
        assertEquals(tablet.all(), api.get("api/jobs/spring/events").body());
    }

    @Test
    void theDescriptionIsServed() throws Exception {
        assertEquals(Server.openApiText(), api.get("api/openapi.yaml").body());
    }
}
