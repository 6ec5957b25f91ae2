package org.varwright.server;

import java.util.List;
import org.varwright.json.Json;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** A request that is refused, with what is wrong and what to do: RFC 9457's problem details. */
final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    static final String MEDIA_TYPE = "application/problem+json";

    private final int status;
    private final transient List<Problem> problems;

    private Refusal(int status, String detail, List<Problem> problems) {
        super(detail);
        this.status = status;
        this.problems = List.copyOf(problems);
    }

    static Refusal of(int status, String detail) {
        return new Refusal(status, detail, List.of());
    }

    /** Input that `core` can't use. */
    static Refusal unusable(VarwrightException e) {
        return new Refusal(422, "what was sent can't be used; problems[] says where and why", e.problems());
    }

    int status() {
        return status;
    }

    String json() {
        return Json.object()
                .put("type", "about:blank")
                .put("title", title(status))
                .put("status", status)
                .put("detail", String.valueOf(getMessage()))
                .put(
                        "problems",
                        Json.of(problems.stream()
                                .map(p -> (Json) Json.object()
                                        .put("code", p.message().name())
                                        .put("line", p.place().line())
                                        .put("column", p.place().column())
                                        .put("path", p.place().path())
                                        .put("message", p.text())
                                        .build())
                                .toList()))
                .build()
                .print();
    }

    private static String title(int status) {
        return switch (status) {
            case 400 -> "Bad Request";
            case 403 -> "Forbidden";
            case 404 -> "Not Found";
            case 405 -> "Method Not Allowed";
            case 412 -> "Precondition Failed";
            case 413 -> "Content Too Large";
            case 414 -> "URI Too Long";
            case 415 -> "Unsupported Media Type";
            case 421 -> "Misdirected Request";
            case 422 -> "Unprocessable Content";
            case 428 -> "Precondition Required";
            case 431 -> "Request Header Fields Too Large";
            case 501 -> "Not Implemented";
            case 503 -> "Service Unavailable";
            case 505 -> "HTTP Version Not Supported";
            case 507 -> "Insufficient Storage";
            default -> "Internal Server Error";
        };
    }
}
