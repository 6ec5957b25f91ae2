package org.varwright.bench;

import java.nio.file.Path;
import java.util.List;

/** How long small commands take, the start of the JVM included. */
final class StartBench {
    private StartBench() {}

    static String text() {
        Command here = new Command(Path.of("."));
        StringBuilder rows = new StringBuilder("""
                Whole process, after building, file in the cache, least / median / most of 5 runs:

                | command | clock | processor |
                | --- | --- | --- |""");
        for (String name : List.of("check", "interlock")) {
            // The example's keys leave two properties not enforced, which the exit says.
            Times times =
                    here.times(5, name.equals("interlock") ? 1 : 0, "./varwright", name, Examples.TAMARACK.toString());
            rows.append("\n| `./varwright ")
                    .append(name)
                    .append(' ')
                    .append(Examples.TAMARACK)
                    .append("` | ")
                    .append(times.wallText())
                    .append(" | ")
                    .append(times.cpuText())
                    .append(" |");
        }
        return rows.toString();
    }
}
