package org.varwright.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.infra.BenchmarkParams;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/** The kernels, by JMH. */
final class KernelBench {
    private static final List<Class<?>> KERNELS =
            List.of(NetworkKernel.class, BankKernel.class, JobKernel.class, RecordKernel.class);
    private static final int FORKS = 2;
    private static final int WARM_UPS = 2;
    private static final int ITERATIONS = 5;
    private static final TimeValue WARM_UP = TimeValue.milliseconds(800);
    private static final TimeValue ITERATION = TimeValue.milliseconds(500);

    private KernelBench() {}

    static String text() throws IOException {
        List<String> rows = new ArrayList<>();
        for (RunResult result : run()) {
            rows.add(row(result));
        }
        return String.format(
                        Locale.ROOT,
                        """
                        By JMH: mean time of one call on one core, by the clock, with half the width of its 99.9 %% confidence interval, from %d JVMs of their own with %d
                        iterations of %d ms each, after %d of %d ms that don't count. A wide interval says that something else ran on the machine, or that the work itself
                        varies; figures whose intervals overlap are not told apart.
                        """,
                        FORKS,
                        ITERATIONS,
                        ITERATION.convertTo(TimeUnit.MILLISECONDS),
                        WARM_UPS,
                        WARM_UP.convertTo(TimeUnit.MILLISECONDS))
                + "\n| kernel | of | one call | ± | ± in percent |\n| --- | --- | --: | --: | --: |\n"
                + String.join("\n", rows);
    }

    private static Collection<RunResult> run() throws IOException {
        try (Scratch scratch = Scratch.create()) {
            Path log = scratch.folder().resolve("jmh.log");
            OptionsBuilder options = new OptionsBuilder();
            KERNELS.forEach(k -> options.include("^" + k.getName().replace(".", "\\.") + "\\."));
            options.mode(Mode.AverageTime)
                    .timeUnit(TimeUnit.MICROSECONDS)
                    .forks(FORKS)
                    .warmupIterations(WARM_UPS)
                    .warmupTime(WARM_UP)
                    .measurementIterations(ITERATIONS)
                    .measurementTime(ITERATION)
                    .shouldFailOnError(true)
                    .jvmArgs("-XX:+UseSerialGC", "-Xms1g", "-Xmx1g")
                    .verbosity(VerboseMode.NORMAL)
                    .output(log.toString());
            return new Runner(options.build()).run();
        } catch (RunnerException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String row(RunResult result) {
        BenchmarkParams params = result.getParams();
        Result<?> primary = result.getPrimaryResult();
        String name = params.getBenchmark();
        String kernel = name.substring(name.lastIndexOf('.', name.lastIndexOf('.') - 1) + 1);
        String of = params.getParamsKeys().stream()
                .map(k -> k.equals("format") ? params.getParam(k) : params.getParam(k) + " " + k)
                .collect(Collectors.joining(", "));
        return String.format(
                Locale.ROOT,
                "| `%s` | %s | %s | %s | %.1f |",
                kernel,
                of,
                time(primary.getScore()),
                time(primary.getScoreError()),
                100.0 * primary.getScoreError() / primary.getScore());
    }

    private static String time(double micros) {
        if (micros < 1.0) {
            return String.format(Locale.ROOT, "%.1f ns", micros * 1e3);
        }
        if (micros < 1e3) {
            return String.format(Locale.ROOT, "%.1f µs", micros);
        }
        return String.format(Locale.ROOT, micros < 1e5 ? "%.2f ms" : "%.0f ms", micros * 1e-3);
    }
}
