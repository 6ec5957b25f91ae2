package org.varwright.server;

import io.javalin.http.Context;
import java.net.URI;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What every request must pass, and what every answer carries. */
final class Guard {
    private static final Set<String> OWN_NAMES = Set.of("127.0.0.1", "localhost", "[::1]");
    private static final Set<String> READING = Set.of("GET", "HEAD");

    private Guard() {}

    /**
     * Lets in only what this machine's own pages ask. A page from elsewhere can make a browser send requests to loopback, under a host name of its own (rebinding) or across
     * origins; neither gets through.
     *
     * @throws Refusal 421 for a strange host name, 403 for a strange origin
     */
    static void check(Context context) {
        String host = context.header("Host");
        if (host == null || !OWN_NAMES.contains(withoutPort(host))) {
            throw Refusal.of(421, "this server answers to 127.0.0.1 and localhost only");
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
        context.header(
                "Content-Security-Policy",
                "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; worker-src 'self'; connect-src 'self'; style-src 'self';"
                        + " img-src 'self' data: blob:; font-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none';"
                        + " frame-ancestors 'none'");
        context.header("X-Content-Type-Options", "nosniff");
        context.header("Referrer-Policy", "no-referrer");
        context.header("Cross-Origin-Opener-Policy", "same-origin");
        context.header("Cross-Origin-Resource-Policy", "same-origin");
        context.header("Permissions-Policy", "geolocation=(), microphone=(), camera=(self)");
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
