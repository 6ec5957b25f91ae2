package org.varwright.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/**
 * Runs small commands once each, so that a JVM that takes notes knows what they need ({@code scripts/start-cache.sh}). The report and the server are left out:
 * their libraries are large, and every command would carry them. What the commands print goes nowhere.
 */
public final class Rehearsal {
    private static final String BANK = DemoBank.CORBEL_REACH_3.file();

    private final Path folder;

    private Rehearsal(Path folder) {
        this.folder = folder;
    }

    /** Takes one argument: an empty folder that may be filled. */
    public static void main(String[] args) {
        new Rehearsal(Path.of(args[0])).play();
    }

    private void play() {
        String bank = file("bank.yaml");
        String readings = file("readings.csv");
        String spares = file("spares.csv");
        String job = folder.resolve("rehearsal.job.jsonl").toString();
        Stream.of(
                        List.of("--version"),
                        List.of("--help"),
                        List.of("check", bank),
                        List.of("check", bank, "--json"),
                        List.of("isolate", bank, "--access", "bay 3"),
                        List.of("interlock", bank),
                        List.of("discharge", bank),
                        List.of("unbalance", bank),
                        List.of(
                                "draw",
                                bank,
                                "-o",
                                folder.resolve("one-line.svg").toString()),
                        List.of("survey", bank, readings),
                        List.of("fit", bank, readings, "--spares", spares),
                        List.of("energize", bank, "--bus", "13.8 kV"),
                        List.of("fuses", bank),
                        List.of("duty", bank),
                        List.of("job", "new", job, "--bank", bank, "--title", "rehearsal", "--by", "nobody"),
                        List.of("job", "show", job))
                .forEach(Rehearsal::play);
    }

    private String file(String kind) {
        Path path = folder.resolve(BANK + "." + kind);
        OutputFile.write(path, DemoFiles.bytes(BANK + "." + kind));
        return path.toString();
    }

    private static void play(List<String> command) {
        StringWriter said = new StringWriter();
        PrintWriter writer = new PrintWriter(said);
        int code = Main.run(writer, writer, command.toArray(String[]::new));
        writer.flush();
        if (code == ExitCode.BAD_INPUT.code() || code == ExitCode.INTERNAL.code()) {
            throw new IllegalStateException(String.join(" ", command) + " ended with " + code + ":\n" + said);
        }
    }
}
