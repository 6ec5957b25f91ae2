package org.varwright.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What the figures were measured on and when. */
final class Machine {
    private static final Pattern MODEL = Pattern.compile("(?m)^model name\\s*:\\s*(.+)$");
    private static final Pattern MEMORY = Pattern.compile("(?m)^MemTotal:\\s*([0-9]+) kB$");

    private Machine() {}

    static String text() {
        return Runtime.getRuntime().availableProcessors() + " cores of " + first(MODEL, "/proc/cpuinfo") + ", "
                + memory() + " GB of memory, " + System.getProperty("os.name") + ", Java "
                + System.getProperty("java.version");
    }

    /** Mean number of programs that wanted a core during the last minute, five and fifteen minutes. */
    static String load() {
        String text = read("/proc/loadavg");
        return String.join(" / ", text.split(" ", 4)[0], text.split(" ", 4)[1], text.split(" ", 4)[2]);
    }

    static String date() {
        return LocalDate.now(ZoneOffset.UTC).toString();
    }

    private static String memory() {
        return String.format(Locale.ROOT, "%.0f", Long.parseLong(first(MEMORY, "/proc/meminfo")) * 1024 / 1e9);
    }

    private static String first(Pattern pattern, String file) {
        Matcher matcher = pattern.matcher(read(file));
        if (!matcher.find()) {
            throw new IllegalStateException("not found in " + file + ": " + pattern);
        }
        return matcher.group(1).strip();
    }

    private static String read(String file) {
        try {
            return Files.readString(Path.of(file));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
