package org.varwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitResult;
import org.varwright.interlock.SpinSubject;

/** Measures everything in one run, prints it and writes it to the document. Started by {@code ./varwright-bench} in the checkout's folder. */
final class Main {
    private static final Path DOCUMENT = Path.of("docs", "performance.md");
    private static final Path EXAMPLE = Path.of("examples", "tamarack-flats-2.bank.yaml");

    private Main() {}

    public static void main(String[] args) throws IOException {
        String loadBefore = Machine.load();
        String interlock = interlock();
        String fit = fit();
        String start = start();
        String text = """
                # Performance

                Written by `./varwright-bench`; run it to measure again (a few minutes; it needs Maven, the Debian packages spin and gcc, and an idle machine). No
                test depends on a time.

                Measured %s at commit %s on %s.
                Programs that wanted a core (means of 1 / 5 / 15 minutes): %s before, %s after. This run itself wants one; more means that others
                ran beside it, and then the clock's times say little and the processor's are longer than on an idle machine.

                ## Interlocking: ours and SPIN's verifier
                The same schemes in one run. SPIN: `spin -a`, `gcc -O2 -DSAFETY -DNOREDUCE -DNOCLAIM`, exhaustive, with a hash table of as many slots as there are
                states and room for as deep a search; the whole process without compiling. Its model has the states and moves of the one that the tests
                hold against ours, and everything is in its favour: it judges no property and works out what is live only where a move depends on it.
                Ours judges every property of every state and move, and whether each state gets home: `Verifier` in a warm JVM (time of its thread; compiler and
                collector of the JVM run beside it), once *state by state* as SPIN does it and once with *alike stages once* (ILK-9), as the commands do. The number
                of states was the same each time, or there would be no figures. "Not run": more than two million states (SPIN), more than six million
                (state by state).

                %s

                ## Fit
                %s

                ## Start of small commands
                Whole process, after building, file in the cache, least / median / most of 5 runs:

                %s
                """.formatted(
                        Machine.date(),
                        System.getProperty("varwright.commit", "not known"),
                        Machine.text(),
                        loadBefore,
                        Machine.load(),
                        interlock,
                        fit,
                        start);
        System.out.println(text);
        Files.writeString(DOCUMENT, text);
    }

    private static String interlock() throws IOException {
        Path folder = Files.createTempDirectory("varwright-bench");
        try {
            InterlockBench bench = new InterlockBench(new Command(folder));
            for (Path file : banks()) {
                Bank bank = BankFile.read(file.getFileName().toString(), Files.readAllBytes(file))
                        .requireBank();
                SpinSubject.of(bank).ifPresent(bench::measure);
            }
            for (int stages = 7; stages <= 11; stages++) {
                bench.measure(SpinSubject.row(stages));
            }
            return bench.text();
        } finally {
            delete(folder);
        }
    }

    private static List<Path> banks() throws IOException {
        try (Stream<Path> demo = Files.list(Path.of("examples", "demo"))) {
            return Stream.concat(
                            Stream.of(EXAMPLE),
                            demo.filter(f -> f.toString().endsWith(".bank.yaml"))
                                    .sorted())
                    .toList();
        }
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
        }
        Files.delete(folder);
    }

    private static String fit() {
        FitInput input = FitSubject.input();
        FitResult result = Fit.plan(input);
        Times times = Times.of(() -> Fit.plan(input), 0.0, 5);
        return String.format(
                Locale.ROOT,
                """
                144 positions, 3 condemned, 8 spares, up to 2 extra lifts: %,d plans looked at, outcome `%s`, %s.

                | | least / median / most of 5 runs |
                | --- | --- |
                | processor | %s |
                | clock | %s |""",
                result.plansExamined(),
                result.outcome().code(),
                result.provenBest() ? "proven best" : "not proven best",
                times.cpuText(),
                times.wallText());
    }

    private static String start() {
        Command here = new Command(Path.of("."));
        StringBuilder rows = new StringBuilder("| command | clock | processor |\n| --- | --- | --- |");
        for (String name : List.of("check", "interlock")) {
            // The example's keys leave two properties not enforced, which the exit says.
            Times times = here.times(5, name.equals("interlock") ? 1 : 0, "./varwright", name, EXAMPLE.toString());
            rows.append("\n| `./varwright ")
                    .append(name)
                    .append(' ')
                    .append(EXAMPLE)
                    .append("` | ")
                    .append(times.wallText())
                    .append(" | ")
                    .append(times.cpuText())
                    .append(" |");
        }
        return rows.toString();
    }
}
