package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.varwright.bank.Bank;

/**
 * The verifier against SPIN (Gerard J. Holzmann, "The SPIN Model Checker"): the compiled exhaustive verifier of a generated model stores the same number of
 * states, follows the same number of moves and breaks the same properties.
 * Small models are compiled unoptimized, because compiling takes longer than running.
 */
class SpinOracleTest {
    private static final Pattern STORED = Pattern.compile("\\s*(\\d+) states, stored");

    private static final Pattern MOVE = Pattern.compile("[\\d,]+ \\d+ [\\d,]+ \\d+");

    @TempDir
    Path folder;

    /** What SPIN's verifier printed. */
    private record Seen(int stored, int states, int moves, Set<String> broken) {}

    private String run(List<String> command) throws IOException, InterruptedException {
        Process process;
        try {
            process = new ProcessBuilder(command)
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("output").toFile())
                    .start();
        } catch (IOException missing) {
            throw new AssertionError(
                    "this test needs SPIN and a C compiler: install the Debian packages spin and gcc", missing);
        }
        if (!process.waitFor(240, TimeUnit.SECONDS)) {
            process.destroyForcibly();
            throw new AssertionError("no end: " + command);
        }
        String output = Files.readString(folder.resolve("output"), StandardCharsets.UTF_8);
        if (process.exitValue() != 0) {
            throw new AssertionError(command + " failed:\n" + output.substring(0, Math.min(4000, output.length())));
        }
        return output;
    }

    private Seen spin(Schemes schemes, String optimization) throws IOException, InterruptedException {
        Files.writeString(folder.resolve("scheme.pml"), PromelaModel.of(schemes.isolation(), schemes.stages()));
        run(List.of("spin", "-a", "scheme.pml"));
        run(List.of("gcc", optimization, "-w", "-DSAFETY", "-DNOREDUCE", "-DNOCLAIM", "-o", "pan", "pan.c"));
        String output = run(List.of("./pan", "-m200000", "-w18", "-n"));
        return read(output, home(schemes));
    }

    /** The in-service state as the model prints it. */
    private static String home(Schemes schemes) {
        PlainSimulator.Spot spot = new PlainSimulator(schemes.isolation(), schemes.stages()).inService();
        List<String> parts = new ArrayList<>();
        schemes.isolation()
                .devices()
                .forEach(d -> parts.add(
                        String.valueOf(d.positions().indexOf(spot.devices().get(d.name())))));
        schemes.isolation().compartments().forEach(c -> parts.add("0"));
        spot.bolts().forEach(b -> parts.add(b.equals("withdrawn") ? "1" : "0"));
        schemes.isolation().exchanges().forEach(e -> parts.add("0"));
        schemes.stages().forEach(s -> parts.add("1"));
        return String.join(",", parts);
    }

    private static Seen read(String output, String home) {
        int stored = 0;
        int moves = 0;
        int bits = 0;
        Set<String> states = new HashSet<>();
        Map<String, List<String>> into = new HashMap<>();
        for (String line : output.lines().toList()) {
            Matcher matcher = STORED.matcher(line);
            List<String> part = List.of(line.split(" ", -1));
            if (matcher.lookingAt()) {
                stored = Integer.parseInt(matcher.group(1));
            } else if (line.startsWith("start ")) {
                states.add(part.get(1));
                bits |= Integer.parseInt(part.get(2));
            } else if (MOVE.matcher(line).matches()) {
                moves++;
                bits |= Integer.parseInt(part.get(1)) | Integer.parseInt(part.get(3));
                states.add(part.get(0));
                states.add(part.get(2));
                into.computeIfAbsent(part.get(2), s -> new ArrayList<>()).add(part.get(0));
            }
        }
        Set<String> back = new HashSet<>();
        List<String> open = new ArrayList<>(states.contains(home) ? List.of(home) : List.of());
        back.addAll(open);
        while (!open.isEmpty()) {
            for (String before : into.getOrDefault(open.removeLast(), List.of())) {
                if (back.add(before)) {
                    open.add(before);
                }
            }
        }
        Set<String> broken = new TreeSet<>();
        for (Property property : Property.values()) {
            if ((bits & PromelaModel.bit(property.id())) != 0) {
                broken.add(property.id());
            }
        }
        if (back.size() < states.size()) {
            broken.add(Property.KEY_STRANDED.id());
        }
        return new Seen(stored, states.size(), moves, broken);
    }

    private void same(Schemes schemes, String optimization) throws IOException, InterruptedException {
        Verification verification = Verifier.verify(schemes.scheme(), 1_000_000_000L, Verifier.Progress.SILENT);
        Seen seen = spin(schemes, optimization);
        assertEquals(verification.states(), seen.states(), "states printed by the model");
        assertEquals(
                verification.states() + 1, seen.stored(), "states stored by SPIN: these and the one before the start");
        assertEquals(verification.moves(), seen.moves(), "moves");
        assertEquals(TwinOracleTest.shortest(verification).keySet(), seen.broken(), "broken properties");
    }

    @Test
    void theExample() throws IOException, InterruptedException {
        same(Schemes.enclosed(4), "-O2");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
    void seededRandomSchemes(long seed) throws IOException, InterruptedException {
        same(RandomScheme.of(seed), "-O0");
    }

    @ParameterizedTest
    @ValueSource(strings = {"correct", "spare key", "no delay"})
    void theTeachingScheme(String variant) throws IOException, InterruptedException {
        same(TeachingScheme.of(variant), "-O0");
    }

    @ParameterizedTest
    @MethodSource("org.varwright.interlock.InterlockingTest#demoFiles")
    void theDemoBanks(Path file) throws IOException, InterruptedException {
        Bank bank = InterlockingTest.read(file);
        same(Schemes.of(bank.isolation().orElseThrow(), Scheme.stagesOf(bank)), "-O2");
    }
}
