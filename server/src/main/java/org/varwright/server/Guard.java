package org.varwright.server;

import io.javalin.http.Context;
import java.net.URI;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What every request must pass, and what every answer carries. */
final class Guard {
    private static final Set<String> OWN_NAMES = Set.of("127.0.0.1", "localhost", "[::1]");
    private static final Set<String> READING = Set.of("GET", "HEAD");

    /** What every answer carries, whoever gives it. */
    static final Map<String, String> HARDENING = Map.of(
            "Content-Security-Policy",
            "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; connect-src 'self'; style-src 'self';"
                    + " img-src 'self' data: blob:; font-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none';"
                    + " frame-ancestors 'none'",
            "X-Content-Type-Options",
            "nosniff",
            "Referrer-Policy",
            "no-referrer",
            "Cross-Origin-Opener-Policy",
            "same-origin",
            "Cross-Origin-Resource-Policy",
            "same-origin",
            "Permissions-Policy",
            "geolocation=(), microphone=(), camera=(self)");

    /**
     * What the script in which {@code core} computes may do: no page, no style, nothing from elsewhere. The loader of the WebAssembly module makes its functions from constant texts, so
     * this one script may, and no page may.
     */
    static final String WORKER_POLICY =
            "default-src 'none'; script-src 'self' 'wasm-unsafe-eval' 'unsafe-eval'; connect-src 'self'";

    private Guard() {}

    /**
     * Lets in only what this machine's own pages ask. A page from elsewhere can make a browser send requests to loopback, under a host name of its own (rebinding) or across
     * origins; neither gets through.
     *
     * @throws Refusal 421 for a strange host name, 403 for a strange origin, 400 for a method that says it is another
     */
    static void check(Context context) {
        String host = context.header("Host");
        if (host == null || !OWN_NAMES.contains(withoutPort(host))) {
            throw Refusal.of(421, "this server answers to 127.0.0.1 and localhost only");
        }
        if (context.header("X-HTTP-Method-Override") != null) {
            throw Refusal.of(400, "X-HTTP-Method-Override is not listened to; send the method that is meant");
        }
        if (!READING.contains(context.method().name()) && isStrange(context.header("Origin"), host)) {
            throw Refusal.of(403, "only a page of this server may change anything");
        }
        if (!READING.contains(context.method().name()) && "cross-site".equals(context.header("Sec-Fetch-Site"))) {
            throw Refusal.of(403, "only a page of this server may change anything");
        }
    }

    /** Headers that keep a browser from doing more with an answer than it should. */
    static void harden(Context context) {
        HARDENING.forEach(context::header);
        if (context.path().startsWith("/api/")) {
            context.header("Cache-Control", "no-store");
        }
    }

    private static boolean isStrange(@Nullable String origin, String host) {
        if (origin == null) {
            return false;
        }
        try {
            return !host.equals(URI.create(origin).getAuthority());
        } catch (IllegalArgumentException e) {
            return true;
        }
    }

    private static String withoutPort(String host) {
        int colon = host.lastIndexOf(':');
        return colon > host.lastIndexOf(']') ? host.substring(0, colon) : host;
    }
}
