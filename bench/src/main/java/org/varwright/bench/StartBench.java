package org.varwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** How long small commands take, the start of the JVM included: of the checkout, and of the release where one was built. */
final class StartBench {
    private static final int RUNS = 15;
    private static final Path RELEASES = Path.of("target", "release");
    private static final String TAMARACK = Examples.TAMARACK.toString();

    /**
     * A small command.
     *
     * @param exit 1 where the answer is "no": the example's keys leave two properties not enforced
     */
    private record Small(int exit, List<String> words) {
        String text() {
            return String.join(" ", words);
        }
    }

    private static final List<Small> COMMANDS = List.of(
            new Small(0, List.of("--version")),
            new Small(0, List.of("check", TAMARACK)),
            new Small(0, List.of("discharge", TAMARACK)),
            new Small(0, List.of("isolate", TAMARACK, "--access", Examples.TAMARACK_COMPARTMENT)),
            new Small(1, List.of("interlock", TAMARACK)));

    private StartBench() {}

    static String text() throws IOException {
        Command here = new Command(Path.of("."));
        List<String> rows = new ArrayList<>();
        COMMANDS.forEach(c -> rows.add(row(here, "checkout", "./varwright", c)));
        Optional<Path> release = release();
        release.ifPresent(launcher -> COMMANDS.forEach(c -> rows.add(row(here, "release", launcher.toString(), c))));
        return """
                Whole process, everything built, files in the system's memory. "First" is the first run here, which may be warm already; then least / median / most of %d more.
                Checkout: `./varwright` with the JDK. Release: the unpacked archive with its own trimmed runtime%s.

                | started from | command | first, clock | clock | processor |
                | --- | --- | --- | --- | --- |
                """.formatted(
                                RUNS,
                                release.isPresent()
                                        ? ""
                                        : " (none was built: `scripts/release.sh` builds it, then run this section again)")
                + String.join("\n", rows);
    }

    private static String row(Command here, String from, String launcher, Small small) {
        List<String> command =
                Stream.concat(Stream.of(launcher), small.words().stream()).toList();
        String[] words = command.toArray(String[]::new);
        Command.Run first = here.run(small.exit(), words);
        Times times = here.times(RUNS, small.exit(), words);
        return "| " + from + " | `" + small.text() + "` | " + Times.seconds(first.wallSeconds()) + " | "
                + times.wallText() + " | " + times.cpuText() + " |";
    }

    /** The launcher of a release that {@code scripts/release.sh} has left. */
    private static Optional<Path> release() throws IOException {
        if (!Files.isDirectory(RELEASES)) {
            return Optional.empty();
        }
        try (Stream<Path> folders = Files.list(RELEASES)) {
            return folders.map(f -> f.resolve("bin").resolve("varwright"))
                    .filter(Files::isExecutable)
                    .findFirst();
        }
    }
}
