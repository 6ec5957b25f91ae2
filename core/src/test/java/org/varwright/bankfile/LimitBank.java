package org.varwright.bankfile;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.varwright.problem.Problem;

/**
 * A plain bank whose numbers are easy by hand, to be moved to a limit and over it: units of 100 kvar at 10 kV take 10 A and have
 * {@code 100 kvar/(2π·50 Hz·(10 kV)²) = 3.1831 µF}.
 */
final class LimitBank {
    /** Of a unit by its nameplate [F]. */
    static final double FARADS = 1e5 / (2.0 * Math.PI * 50.0 * 1e8);

    private String standard = "IEEE";
    private String system =
            "voltage: 10 kV, maximum-voltage: 11 kV, frequency: 50 Hz, short-circuit: 100 MVA, x-over-r: 9, grounding: solid";
    private String unit = "rating: 100 kvar, voltage: 10 kV, frequency: 50 Hz, tolerance: [0 %, +10 %]";
    private String resistor = "discharge-resistance: 15 MΩ";
    private String types = "";
    private String stage = "connection: delta, groups: 1, units: 1";
    private String more = "";

    LimitBank standard(String value) {
        standard = value;
        return this;
    }

    LimitBank system(String from, String to) {
        system = replaced(system, from, to);
        return this;
    }

    LimitBank unit(String from, String to) {
        unit = replaced(unit, from, to);
        return this;
    }

    LimitBank resistor(String value) {
        resistor = value;
        return this;
    }

    LimitBank types(String value) {
        types = value;
        return this;
    }

    LimitBank stage(String value) {
        stage = value;
        return this;
    }

    LimitBank more(String value) {
        more = value;
        return this;
    }

    private static String replaced(String text, String from, String to) {
        if (!text.contains(from)) {
            throw new IllegalArgumentException(text + " has no " + from);
        }
        return text.replace(from, to);
    }

    BankReading read() {
        String text = "format: varwright/1\nname: limits\nstandard: " + standard + "\nsystem: {" + system
                + "}\nunit-types:\n  - {name: U, sections: 4, elements: 10, element-fuses: none, bushings: 2, bil: 95 kV, mass: 20 kg, "
                + unit + ", " + resistor + "}\n" + types + "stages:\n  - {name: S, unit: U, " + stage + "}\n" + more;
        return BankFile.read("t.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    /** What is said, {@code CODE path}, what is merely not given left out. */
    List<String> said() {
        BankReading reading = read();
        List<String> said = new ArrayList<>();
        for (Problem problem : Stream.concat(reading.errors().stream(), reading.warnings().stream())
                .toList()) {
            if (!problem.message().name().equals("NOT_GIVEN")) {
                said.add(problem.message() + " " + problem.place().path());
            }
        }
        return said;
    }

    static String number(double value) {
        return String.format(Locale.ROOT, "%.9g", value);
    }
}
