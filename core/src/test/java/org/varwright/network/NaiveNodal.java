package org.varwright.network;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.varwright.quantity.Complex;

/**
 * The naive twin: tableau of all node voltages and all part currents, plain Gaussian elimination with full row search, written for this test alone.
 */
final class NaiveNodal {
    final Map<String, Complex> volts = new LinkedHashMap<>();
    final Map<String, Complex> amperes = new LinkedHashMap<>();

    NaiveNodal(Netlist list) {
        TreeSet<String> names = new TreeSet<>();
        list.parts.forEach(p -> {
            names.add(p.from());
            names.add(p.to());
        });
        names.remove("0");
        TreeMap<String, Integer> index = new TreeMap<>();
        names.forEach(n -> index.put(n, index.size()));
        int nodes = index.size();
        int n = nodes + list.parts.size();
        double omega = 2 * Math.PI * list.hertz;
        Complex[][] a = new Complex[n][n + 1];
        for (Complex[] row : a) {
            java.util.Arrays.fill(row, Complex.ZERO);
        }
        double unit = 1e-3;
        for (int k = 0; k < list.parts.size(); k++) {
            Netlist.Part part = list.parts.get(k);
            int from = index.getOrDefault(part.from(), -1);
            int to = index.getOrDefault(part.to(), -1);
            int column = nodes + k;
            // Currents are counted in units of 1 mA, so that both kinds of entry stand near 1.
            if (from >= 0) {
                a[from][column] = a[from][column].plus(Complex.ONE);
                a[column][from] = a[column][from].plus(Complex.ONE);
            }
            if (to >= 0) {
                a[to][column] = a[to][column].minus(Complex.ONE);
                a[column][to] = a[column][to].minus(Complex.ONE);
            }
            Complex z = switch (part) {
                case Netlist.Part.Capacitor c -> Complex.ONE.dividedBy(new Complex(0, omega * c.farads()));
                case Netlist.Part.Inductor l -> new Complex(0, omega * l.henries());
                case Netlist.Part.Resistor r -> new Complex(r.ohms(), 0);
                case Netlist.Part.Source s -> {
                    a[column][n] = s.volts();
                    yield Complex.ZERO;
                }
            };
            a[column][column] = a[column][column].minus(z.times(unit));
        }
        for (int p = 0; p < n; p++) {
            int best = p;
            for (int r = p; r < n; r++) {
                if (a[r][p].magnitude() > a[best][p].magnitude()) {
                    best = r;
                }
            }
            Complex[] swap = a[p];
            a[p] = a[best];
            a[best] = swap;
            if (a[p][p].magnitude() < 1e-9) {
                throw new ArithmeticException("singular");
            }
            for (int r = 0; r < n; r++) {
                if (r != p && a[r][p].magnitude() > 0) {
                    Complex f = a[r][p].dividedBy(a[p][p]);
                    for (int c = p; c <= n; c++) {
                        a[r][c] = a[r][c].minus(f.times(a[p][c]));
                    }
                }
            }
        }
        index.forEach((name, i) -> volts.put(name, a[i][n].dividedBy(a[i][i])));
        volts.put("0", Complex.ZERO);
        for (int k = 0; k < list.parts.size(); k++) {
            int row = nodes + k;
            amperes.put(
                    list.parts.get(k).name(), a[row][n].dividedBy(a[row][row]).times(unit));
        }
    }

    Complex between(String from, String to) {
        return volts.getOrDefault(from, Complex.ZERO).minus(volts.getOrDefault(to, Complex.ZERO));
    }
}
