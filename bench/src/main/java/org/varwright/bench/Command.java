package org.varwright.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Runs other programs and takes their time, all of their processes included. */
final class Command {
    /** What the shell's own {@code time} writes last: wall, user, system. */
    private static final Pattern TIME = Pattern.compile("varwright-time ([0-9.]+) ([0-9.]+) ([0-9.]+)\\s*$");

    private final Path folder;

    Command(Path folder) {
        this.folder = folder;
    }

    /**
     * What came of one run.
     *
     * @param output everything printed
     * @param wallSeconds by the clock on the wall
     * @param cpuSeconds user and system
     */
    record Run(String output, double wallSeconds, double cpuSeconds) {}

    Run run(String... command) {
        return run(0, command);
    }

    Run run(int expectedExit, String... command) {
        List<String> timed = new ArrayList<>(
                List.of("bash", "-c", "TIMEFORMAT='varwright-time %3R %3U %3S'; LC_ALL=C; time \"$@\"", "bash"));
        timed.addAll(List.of(command));
        try {
            Process process = new ProcessBuilder(timed)
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .start();
            String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            int exit = process.waitFor();
            Matcher time = TIME.matcher(output);
            if (exit != expectedExit || !time.find()) {
                throw new IllegalStateException(String.join(" ", command) + " ended with " + exit + ":\n" + output);
            }
            return new Run(
                    output.substring(0, time.start()),
                    Double.parseDouble(time.group(1)),
                    Double.parseDouble(time.group(2)) + Double.parseDouble(time.group(3)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** Runs it once before it counts, then several times. */
    Times times(int runs, int expectedExit, String... command) {
        run(expectedExit, command);
        List<Double> wall = new ArrayList<>();
        List<Double> cpu = new ArrayList<>();
        for (int i = 0; i < runs; i++) {
            Run run = run(expectedExit, command);
            wall.add(run.wallSeconds());
            cpu.add(run.cpuSeconds());
        }
        return new Times(wall, cpu);
    }

    void write(String name, String text) {
        try {
            Files.writeString(folder.resolve(name), text);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
