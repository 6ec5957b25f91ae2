package org.varwright.server;

import io.javalin.http.Context;
import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The app: its files, and its one page for every address that is a screen. */
final class AppRoutes {
    private static final String PAGE = "index.html";

    private static final String NOT_BUILT = """
            Varwright answers here, but the app is not in this build.

            Start it with ./varwright serve or ./varwright demo from a checkout: both build the app first (Node is needed for that).
            The API works without it; /api/openapi.yaml describes it.
            """;

    private final AppFiles files;

    AppRoutes(AppFiles files) {
        this.files = files;
    }

    /** A file of that name, else the page where the path names a screen. */
    void get(Context context) {
        String path = context.path();
        if (path.equals("/api") || path.startsWith("/api/")) {
            throw nothing(path);
        }
        Optional<AppFile> file = files.find(path.substring(1));
        if (file.isPresent()) {
            if (AppFiles.isWorker(path.substring(1))) {
                context.header("Content-Security-Policy", Guard.WORKER_POLICY);
            }
            send(context, file.get());
        } else if (path.matches("[^.\\\\\\p{Cntrl}]*")) {
            page(context);
        } else {
            throw nothing(path);
        }
    }

    private void page(Context context) {
        Optional<AppFile> page = files.find(PAGE);
        if (page.isPresent()) {
            send(context, page.get());
        } else if (context.path().equals("/")) {
            context.contentType("text/plain;charset=utf-8").result(NOT_BUILT);
        } else {
            throw nothing(context.path());
        }
    }

    private static Refusal nothing(String path) {
        return Refusal.of(404, path + " is nothing that this server has; /api/openapi.yaml lists what it answers");
    }

    private static void send(Context context, AppFile file) {
        boolean isSqueezed = file.squeezed().isPresent() && takesGzip(context.header("Accept-Encoding"));
        String tag = file.tag(isSqueezed);
        // What the build did not squeeze is not worth it: nothing is squeezed at every request.
        context.disableCompression();
        context.header("ETag", tag);
        context.header("Cache-Control", file.cacheControl());
        if (file.squeezed().isPresent()) {
            context.header("Vary", "Accept-Encoding");
        }
        if (Tags.names(context.header("If-None-Match"), tag)) {
            context.status(304);
            return;
        }
        context.contentType(file.mediaType());
        if (isSqueezed) {
            context.header("Content-Encoding", "gzip").result(file.squeezed().get());
        } else {
            context.result(file.plain());
        }
    }

    private static boolean takesGzip(@Nullable String accepted) {
        return accepted != null
                && Arrays.stream(accepted.split(",", -1))
                        .map(coding -> coding.replace(" ", ""))
                        .anyMatch(coding -> coding.equals("gzip") || coding.matches("gzip;q=(?!0(?:\\.0*)?$).*"));
    }
}
