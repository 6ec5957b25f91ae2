package org.varwright.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.varwright.fuzz.AnyBank;
import org.varwright.fuzz.Mutation;
import org.varwright.job.Sha256;

/** Somebody who sends the server what comes to mind, and remembers what it has acknowledged. */
final class AnyVisit {
    private static final List<String> NAMES = List.of("spring", "autumn", "a", "x-1");
    private static final List<String> METHODS =
            List.of("POST", "PUT", "DELETE", "PATCH", "OPTIONS", "GET", "HEAD", "BREW");
    private static final List<String> NO_NAMES = List.of(
            "..%2F..%2Fetc",
            "%00",
            "A",
            "%F0%9F%94%91",
            "-",
            "a".repeat(41),
            "a%20b",
            "%2e%2e",
            "%ff",
            "a;b=c",
            "'--",
            "a%0d%0aX:1",
            "*");
    private static final List<String> READ = List.of(
            "",
            "nowhere",
            "healthz",
            "index.html",
            "api/openapi.yaml",
            "api",
            "api/",
            "api/banks",
            "api/jobs",
            "api/jobs/",
            "api//banks",
            "api/attachments/",
            "api/jobs/spring/report.docx");

    private final Random random;
    private final Api api;
    private final Map<String, String> banks = new LinkedHashMap<>();
    private final Map<String, String> tags = new LinkedHashMap<>();
    private final Map<String, Set<String>> jobs = new LinkedHashMap<>();
    private final Map<String, String> attachments = new LinkedHashMap<>();
    private final Map<String, Lines> devices = new LinkedHashMap<>();
    private int taken;
    private int refused;

    AnyVisit(Random random, Api api) {
        this.random = random;
        this.api = api;
    }

    int taken() {
        return taken;
    }

    int refused() {
        return refused;
    }

    /** One request, and what holds of its answer. */
    void act() throws Exception {
        switch (random.nextInt(11)) {
            case 0, 1 -> putBank();
            case 2, 3, 4 -> postEvents();
            case 5 -> putAttachment();
            case 6 -> read(Mutation.pick(random, READ));
            case 7 -> read("api/banks/" + name());
            case 8 -> readJob();
            case 9 -> otherMethod();
            default -> read("api/attachments/" + (random.nextBoolean() && !attachments.isEmpty() ? hash() : name()));
        }
    }

    private String name() {
        return random.nextInt(8) == 0 ? Mutation.pick(random, NO_NAMES) : Mutation.pick(random, NAMES);
    }

    private String hash() {
        return Mutation.pick(random, List.copyOf(attachments.keySet()));
    }

    private HttpResponse<String> send(String method, String path, String body, String... headers) throws Exception {
        List<String> all = new ArrayList<>(Arrays.asList(headers));
        if (random.nextInt(10) == 0) {
            all.addAll(Mutation.pick(
                    random,
                    List.of(
                            List.of("Content-Type", "application/x-www-form-urlencoded"),
                            List.of("Content-Type", "multipart/form-data; boundary=x"),
                            List.of("Content-Type", "///"),
                            List.of("Accept", "image/png"),
                            List.of("Range", "bytes=5-1"),
                            List.of("Content-Encoding", "gzip"),
                            List.of("Accept-Encoding", "gzip;q=x"),
                            List.of("If-None-Match", "\"" + "0".repeat(64) + "\", W/\"x\", *x"),
                            List.of("X-Forwarded-For", "10.0.0.1"),
                            List.of("Cookie", "x=" + "y".repeat(3000)))));
        }
        HttpResponse<String> answer = api.send(method, path, body, all.toArray(String[]::new));
        hold(method + " " + path, answer);
        return answer;
    }

    private void hold(String what, HttpResponse<String> answer) throws IOException {
        int status = answer.statusCode();
        assertTrue(status < 500, () -> what + ": " + status + " " + answer.body());
        assertTrue(answer.headers().firstValue("Content-Security-Policy").isPresent(), what);
        assertEquals(
                "nosniff", answer.headers().firstValue("X-Content-Type-Options").orElse(""), what);
        if (status < 400) {
            taken++;
            return;
        }
        refused++;
        assertEquals(
                "application/problem+json",
                answer.headers().firstValue("Content-Type").orElse("").replaceFirst(";.*", ""),
                what);
        if (what.startsWith("HEAD")) {
            return;
        }
        JsonNode problem = api.json(answer);
        assertEquals(status, problem.path("status").asInt(), what);
        assertTrue(problem.path("detail").asText().length() > 15, what + ": " + answer.body());
        assertTrue(
                !problem.path("title").asText().isBlank()
                        && !problem.path("title").asText().equals("Internal Server Error"),
                answer.body());
        assertTrue(!answer.body().matches("(?s).*(Exception|org\\.varwright|\\tat ).*"), answer.body());
    }

    private void putBank() throws Exception {
        String id = name();
        String good = random.nextBoolean()
                ? AnyBank.of(random).text()
                : Lines.bank("hallin-moor-2") + "# " + random.nextInt(99) + "\n";
        String text = (random.nextInt(3) == 0 ? Mutation.text(random, good) : good).replaceAll("\\p{Cs}", "?");
        String[] condition = switch (random.nextInt(5)) {
            case 0 -> new String[] {"If-None-Match", "*"};
            case 1, 2 ->
                banks.containsKey(id) ? new String[] {"If-Match", tags.get(id)} : new String[] {"If-None-Match", "*"};
            case 3 ->
                new String[] {
                    "If-Match",
                    Mutation.pick(
                            random,
                            List.of(
                                    "\"\"",
                                    "*",
                                    "\"" + Sha256.of("x") + "\"",
                                    "W/\"a\"",
                                    "\"a\", \"b\"",
                                    "'; drop table bank"))
                };
            default -> new String[0];
        };
        HttpResponse<String> answer = send("PUT", "api/banks/" + id, text, condition);
        if (answer.statusCode() < 300) {
            boolean knew = banks.containsKey(id);
            assertEquals(knew ? 204 : 201, answer.statusCode(), "nobody overwrites what they have not seen");
            assertTrue(
                    !knew || (condition[0].equals("If-Match") && condition[1].equals(tags.get(id))),
                    "If-Match names the version before");
            banks.put(id, text);
            tags.put(id, answer.headers().firstValue("ETag").orElseThrow());
        }
    }

    private void postEvents() throws Exception {
        String job = Mutation.pick(random, NAMES);
        String key = job + " tablet-" + "ab".charAt(random.nextInt(2));
        Lines lines = devices.get(key);
        StringBuilder sent = new StringBuilder();
        if (lines == null) {
            lines = new Lines(job, key.substring(key.indexOf(' ') + 1));
            devices.put(key, lines);
            sent.append(lines.open());
        }
        for (int i = random.nextInt(4); i > 0; i--) {
            sent.append(lines.note(
                    "note " + Mutation.strange(random).replaceAll("[\\p{Cs}\\p{Cc}]", "?") + random.nextInt()));
        }
        String body = damaged(random.nextInt(3) == 0 ? lines.all() : sent.toString());
        String to = random.nextInt(10) == 0 ? name() : job;
        HttpResponse<String> answer = send("POST", "api/jobs/" + to + "/events", body);
        if (answer.statusCode() == 200) {
            assertEquals(job, to, "lines of one job are not taken for another's");
            jobs.computeIfAbsent(to, k -> new LinkedHashSet<>())
                    .addAll(body.lines()
                            .filter(l -> !l.isBlank())
                            .map(String::strip)
                            .toList());
            assertEquals(jobs.get(to).size(), api.json(answer).path("events").asInt(), "each line once");
        }
    }

    /** The lines as a bad radio, a careless program or a liar would send them. */
    private String damaged(String lines) {
        List<String> each = new ArrayList<>(lines.lines().toList());
        return switch (random.nextInt(9)) {
            case 0 -> Mutation.text(random, lines).replaceAll("\\p{Cs}", "?");
            case 1 -> {
                Collections.shuffle(each, random);
                yield String.join("\n", each) + "\n";
            }
            case 2 -> lines + lines;
            case 3 -> each.isEmpty() ? "\n\n" : String.join("\n", each.subList(each.size() / 2, each.size())) + "\n";
            case 4 -> lines.replaceAll("\"prev\":\"[0-9a-f]{8}", "\"prev\":\"00000000");
            case 5 -> lines.replaceAll("\"seq\":([0-9]+)", "\"seq\":9$1");
            case 6 -> lines.substring(0, random.nextInt(lines.length() + 1));
            default -> lines;
        };
    }

    private void putAttachment() throws Exception {
        String content =
                "photo " + random.nextInt(40) + Mutation.strange(random).replaceAll("\\p{Cs}", "?");
        String hash = random.nextInt(3) == 0 ? Sha256.of(content + "x") : Sha256.of(content);
        HttpResponse<String> answer =
                send("PUT", "api/attachments/" + (random.nextInt(8) == 0 ? name() : hash), content);
        if (answer.statusCode() < 300 && !attachments.containsKey(hash)) {
            assertEquals(Sha256.of(content), hash, "the name is the hash of what is in it");
            attachments.put(hash, content);
        }
    }

    private void read(String path) throws Exception {
        send(random.nextInt(6) == 0 ? "HEAD" : "GET", path, "");
    }

    private void readJob() throws Exception {
        String tail = Mutation.pick(
                random,
                List.of(
                        "",
                        "/events",
                        "/archive",
                        "/report.json",
                        "/report.xlsx",
                        "/events?have=x",
                        "/report.json?zone=",
                        "/report.json?zone=Europe/Oslo&zone=x",
                        "/report.json?zone=%00",
                        "/report.xlsx?paper=a5",
                        "/events?have=" + "0".repeat(64) + "&have=&hav=1",
                        "/report.json?zone=" + "x".repeat(400),
                        "/events?%"));
        read("api/jobs/" + name() + tail.replace("?%", "?%25"));
    }

    private void otherMethod() throws Exception {
        String path = Mutation.pick(
                random,
                List.of(
                        "api/banks",
                        "api/banks/a",
                        "api/jobs",
                        "api/jobs/spring",
                        "api/jobs/spring/events",
                        "api/jobs/spring/archive",
                        "api/attachments/" + Sha256.of("x"),
                        "",
                        "index.html",
                        "api/openapi.yaml"));
        String method = Mutation.pick(random, METHODS);
        if ((path.endsWith("events") && method.equals("POST")) || method.equals("PUT")) {
            method = "DELETE";
        }
        send(
                method,
                path,
                method.equals("GET") || method.equals("HEAD")
                        ? ""
                        : Mutation.strange(random).replaceAll("\\p{Cs}", "?"));
    }

    /** What was acknowledged is read back as it was sent. */
    void holdWhatWasAcknowledged() throws Exception {
        for (Map.Entry<String, String> bank : banks.entrySet()) {
            assertEquals(bank.getValue(), api.get("api/banks/" + bank.getKey()).body(), bank.getKey());
        }
        assertEquals(banks.size(), api.json(api.get("api/banks")).path("banks").size());
        for (Map.Entry<String, Set<String>> job : jobs.entrySet()) {
            Set<String> stored = api.get("api/jobs/" + job.getKey() + "/events")
                    .body()
                    .lines()
                    .collect(Collectors.toSet());
            assertEquals(job.getValue(), stored, job.getKey());
        }
        assertEquals(jobs.size(), api.json(api.get("api/jobs")).path("jobs").size());
        for (Map.Entry<String, String> attachment : attachments.entrySet()) {
            assertEquals(
                    attachment.getValue(),
                    api.get("api/attachments/" + attachment.getKey()).body());
        }
    }

    /** The same memory before a server that was started again. */
    AnyVisit before(Api other) {
        AnyVisit visit = new AnyVisit(random, other);
        visit.banks.putAll(banks);
        visit.jobs.putAll(jobs);
        visit.attachments.putAll(attachments);
        return visit;
    }
}
