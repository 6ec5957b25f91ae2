package org.varwright.server;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;

/** The built app's files, as they lie on the class path. */
final class AppFiles {
    /** The folder of the class path that the module {@code web} fills. */
    static final String FOLDER = "org/varwright/web/";

    /** Folders and a file of plain letters; nothing in it can climb, hide or mean something else to a file system. */
    private static final Pattern PLAIN =
            Pattern.compile("(?:[A-Za-z0-9_][A-Za-z0-9._-]*/)*[A-Za-z0-9_][A-Za-z0-9._-]*");

    /** Names that change with the content: {@code assets/main-Bq3xK0aZ.js}, {@code core-0f3a…/varwright-core.wasm}. */
    private static final Pattern NAMED_BY_CONTENT =
            Pattern.compile("assets/(?:.*/)?[^/]*-[A-Za-z0-9_-]{8}\\.[a-z0-9]+|core-[0-9a-f]{8,}/.*");

    /** The script that a page starts as a worker. */
    private static final Pattern WORKER = Pattern.compile("assets/worker-[A-Za-z0-9_-]{8}\\.js");

    private static final Map<String, String> MEDIA_TYPES = Map.ofEntries(
            Map.entry("html", "text/html;charset=utf-8"),
            Map.entry("js", "text/javascript;charset=utf-8"),
            Map.entry("mjs", "text/javascript;charset=utf-8"),
            Map.entry("css", "text/css;charset=utf-8"),
            Map.entry("wasm", "application/wasm"),
            Map.entry("webmanifest", "application/manifest+json"),
            Map.entry("json", "application/json;charset=utf-8"),
            Map.entry("txt", "text/plain;charset=utf-8"),
            Map.entry("svg", "image/svg+xml"),
            Map.entry("png", "image/png"),
            Map.entry("ico", "image/x-icon"),
            Map.entry("woff2", "font/woff2"));

    private final String folder;
    private final Map<String, AppFile> found = new ConcurrentHashMap<>();

    private AppFiles(String folder) {
        this.folder = folder;
    }

    /** The files under a folder of the class path, ended by a slash. */
    static AppFiles under(String folder) {
        return new AppFiles(folder);
    }

    /**
     * The file of that name, such as {@code assets/main-Bq3xK0aZ.js}; empty where there is none, or where the name is not a plain one. A file is kept once it was asked for: the
     * class path does not change.
     */
    Optional<AppFile> find(String name) {
        AppFile known = found.get(name);
        if (known != null) {
            return Optional.of(known);
        }
        String type = MEDIA_TYPES.get(ending(name));
        if (type == null || !PLAIN.matcher(name).matches()) {
            return Optional.empty();
        }
        Optional<AppFile> file = bytes(name)
                .map(plain -> AppFile.of(
                        type,
                        plain,
                        bytes(name + ".gz"),
                        NAMED_BY_CONTENT.matcher(name).matches()));
        file.ifPresent(f -> found.put(name, f));
        return file;
    }

    /** Whether a file is the script of a worker, which runs without a page. */
    static boolean isWorker(String name) {
        return WORKER.matcher(name).matches();
    }

    private Optional<byte[]> bytes(String name) {
        try (InputStream in = AppFiles.class.getClassLoader().getResourceAsStream(folder + name)) {
            return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String ending(String name) {
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }
}
