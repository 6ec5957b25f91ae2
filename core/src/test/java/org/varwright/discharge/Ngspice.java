package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Runs a netlist through ngspice and returns what its {@code .meas} lines found. */
public final class Ngspice {
    private static final Pattern MEASURED = Pattern.compile(
            "^(\\w+)\\s*=\\s*([-+0-9.]+(?:e[-+]?[0-9]+)?)", Pattern.CASE_INSENSITIVE | Pattern.MULTILINE);

    private Ngspice() {}

    /** What the {@code .meas} lines found, by name in lower case. */
    public record Measured(Map<String, Double> values) {
        public double get(String name) {
            Double value = values.get(name);
            return value == null ? fail("ngspice did not measure " + name + ", only " + values) : value;
        }
    }

    public static Measured measure(String netlist) throws IOException, InterruptedException {
        Path file = Files.createTempFile("varwright", ".cir");
        try {
            Files.writeString(file, netlist);
            String out = run(file);
            Map<String, Double> values = new LinkedHashMap<>();
            Matcher matcher = MEASURED.matcher(out);
            while (matcher.find()) {
                values.put(matcher.group(1).toLowerCase(Locale.ROOT), Double.parseDouble(matcher.group(2)));
            }
            if (values.isEmpty()) {
                fail("ngspice measured nothing:\n" + out);
            }
            return new Measured(Map.copyOf(values));
        } finally {
            Files.delete(file);
        }
    }

    /** Runs a deck to its end; what it printed. */
    public static String run(Path deck) throws IOException, InterruptedException {
        Process process;
        try {
            process = new ProcessBuilder("ngspice", "-b", deck.toString())
                    .redirectErrorStream(true)
                    .start();
        } catch (IOException e) {
            return fail("this check needs ngspice: install the Debian package ngspice", e);
        }
        String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return out;
    }
}
