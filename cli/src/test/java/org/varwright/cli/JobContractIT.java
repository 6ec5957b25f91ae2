package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.job.Sha256;
import org.varwright.json.Json;

/** The JSON fields and exit codes that others rely on, of the commands over jobs. */
class JobContractIT {
    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path elsewhere;

    private String job = "";

    @BeforeEach
    void aJob() {
        job = folder.resolve("spring.job.jsonl").toString();
        String bank = Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
        run(0, "job", "new", job, "--bank", bank, "--title", "alarm", "--name", "spring", "--by", "R. Imhof");
    }

    private static Session run(int code, String... args) {
        Session session = Session.run(args);
        assertEquals(code, session.code(), () -> String.join(" ", args) + "\n" + session.err());
        return session;
    }

    private static Json.Obj json(int code, String... args) {
        return (Json.Obj) Json.parse(run(code, args).out());
    }

    private static void assertNames(Json.Obj json, String... names) {
        assertEquals(Set.of(names), json.members().keySet());
    }

    private static Json.Obj only(Json.Obj json, String name) {
        List<Json> items = ((Json.Arr) json.get(name)).items();
        assertEquals(1, items.size());
        return (Json.Obj) items.getFirst();
    }

    @Test
    void list() throws Exception {
        Json.Obj listed = only(json(0, "job", "list", "--json", folder.toString()), "jobs");
        assertNames(listed, "file", "title", "bank", "events", "stands", "nextVisit", "whole");
        assertEquals(Json.of("spring.job.jsonl"), listed.get("file"));
        assertEquals(Json.of("alarm"), listed.get("title"));
        assertEquals(Json.of("Corbel Reach bank 3"), listed.get("bank"));
        assertEquals(Json.of(1), listed.get("events"));
        assertEquals(Json.of(""), listed.get("nextVisit"));
        assertEquals(Json.of(true), listed.get("whole"));
        assertEquals(
                Json.of(List.of()),
                json(0, "job", "list", "--json", elsewhere.toString()).get("jobs"));
        Files.writeString(Path.of(job), Files.readString(Path.of(job)).replace("alarm", "trip"));
        Files.writeString(Path.of(job), Files.readString(Path.of(job)) + "{");
        Json.Obj broken = only(json(1, "job", "list", "--json", folder.toString()), "jobs");
        assertEquals(Json.of(false), broken.get("whole"));
        run(2, "job", "list", folder.resolve("none").toString());
    }

    @Test
    void due() throws Exception {
        String on = "2030-05-12";
        Json.Obj none = json(0, "job", "due", "--json", folder.toString(), "--on", on);
        assertNames(none, "on", "visits", "mayHideAVisit");
        assertEquals(Json.of(on), none.get("on"));
        assertEquals(Json.of("none"), only(none, "visits").get("stands"));
        run(0, "job", "visit", job, "--by", "R. Imhof", "--date", on, "--for", "gaskets");
        Json.Obj today = only(json(0, "job", "due", "--json", folder.toString(), "--on", on), "visits");
        assertNames(today, "bank", "job", "stands", "devicesDisagree", "date", "days", "for", "by");
        assertNames(only(none, "visits"), "bank", "job", "stands", "devicesDisagree");
        assertEquals(Json.of("spring"), today.get("job"));
        assertEquals(Json.of("gaskets"), today.get("for"));
        Json.Obj late = only(json(1, "job", "due", "--json", folder.toString(), "--on", "2030-05-13"), "visits");
        assertEquals(Json.of("overdue"), late.get("stands"));
        Files.writeString(folder.resolve("b.job.jsonl"), "no event\n");
        Json.Obj hidden = json(1, "job", "due", "--json", folder.toString(), "--on", "2030-05-11");
        assertEquals(1, ((Json.Arr) hidden.get("mayHideAVisit")).items().size());
        run(2, "job", "due", folder.toString(), "--on", "today");
        run(2, "job", "due", folder.toString());
    }

    @Test
    void exportAndImport() throws Exception {
        String zip = folder.resolve("spring.zip").toString();
        String back = elsewhere.resolve("back.job.jsonl").toString();
        assertEquals(
                "job archive: " + zip + ", 1 events, 0 of 0 attachments\n",
                run(0, "job", "export", job, "-o", zip).out());
        Json.Obj taken = json(0, "job", "import", "--json", zip, "-o", back);
        assertEquals(json(0, "job", "show", "--json", job), taken, "as the job is shown");
        assertEquals(Files.readString(Path.of(job)), Files.readString(Path.of(back)));

        String hash = Sha256.of("a photo");
        String body =
                "{\"name\": \"a.jpg\", \"mediaType\": \"image/jpeg\", \"bytes\": 7, \"sha256\": \"" + hash + "\"}";
        run(0, "job", "add", job, "attached", "--by", "R. Imhof", "--body", body);
        Session without = run(1, "job", "export", job, "-o", zip);
        assertTrue(without.out().endsWith("2 events, 0 of 1 attachments\n"), without.out());
        assertTrue(without.err().contains(hash + " is not at hand; give its folder with --attachments"), without.err());
        Files.writeString(elsewhere.resolve(hash), "a photo");
        assertTrue(run(0, "job", "export", job, "-o", zip, "--attachments", elsewhere.toString())
                .out()
                .endsWith("2 events, 1 of 1 attachments\n"));
        String own = folder.resolve("own").toString();
        run(0, "job", "import", zip, "-o", back, "--attachments", own);
        assertEquals("a photo", Files.readString(Path.of(own, hash)));

        run(2, "job", "export", job);
        run(2, "job", "import", zip);
        run(2, "job", "import", folder.resolve("none.zip").toString(), "-o", back);
        run(2, "job", "export", folder.resolve("none.job.jsonl").toString(), "-o", zip);
    }
}
