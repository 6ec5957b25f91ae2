package org.varwright.waveform;

import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.varwright.discharge.Ngspice;

/** Waveforms that ngspice computes, at even times as a recorder would sample them. */
public final class SpiceWaves {
    private SpiceWaves() {}

    /**
     * Runs a circuit and samples it.
     *
     * @param circuit title and parts, without control lines
     * @param rate samples a second
     * @param from first sample; the run begins at 0
     * @param to last sample
     * @param mostStep longest internal step [s]
     * @param vectors what to sample, such as {@code v(bus)} or {@code i(vs)}, by the name of the signal
     */
    public static Map<String, Signal> run(
            String circuit, double rate, double from, double to, double mostStep, Map<String, String> vectors)
            throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("varwright");
        Path deck = folder.resolve("deck.cir");
        Path data = folder.resolve("waves.txt");
        try {
            String step = number(1.0 / rate);
            Files.writeString(
                    deck,
                    circuit + ".control\nset wr_singlescale\nset wr_vecnames\noption numdgt=12\ntran " + step + " "
                            + number(to) + " "
                            + number(from) + " " + number(mostStep) + " uic\nlinearize "
                            + String.join(" ", vectors.values()) + "\nwrdata " + data + " "
                            + String.join(" ", vectors.values()) + "\nquit\n.endc\n.end\n");
            String out = Ngspice.run(deck);
            if (!Files.exists(data)) {
                return fail("ngspice wrote no waveforms:\n" + out);
            }
            return read(Files.readAllLines(data), from, vectors);
        } finally {
            Files.deleteIfExists(deck);
            Files.deleteIfExists(data);
            Files.delete(folder);
        }
    }

    private static Map<String, Signal> read(List<String> lines, double from, Map<String, String> vectors) {
        List<double[]> rows = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.strip().split("\\s+", -1);
            double[] row = new double[cells.length];
            for (int c = 0; c < cells.length; c++) {
                row[c] = Double.parseDouble(cells[c]);
            }
            rows.add(row);
        }
        double[] seconds = new double[rows.size()];
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = rows.get(i)[0] - from;
        }
        TimeBase base = TimeBase.of(seconds);
        Map<String, Signal> signals = new LinkedHashMap<>();
        int column = 1;
        for (String name : vectors.keySet()) {
            double[] values = new double[seconds.length];
            for (int i = 0; i < values.length; i++) {
                values[i] = rows.get(i)[column];
            }
            signals.put(name, Signal.of(base, values));
            column++;
        }
        return signals;
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.12e", value);
    }
}
