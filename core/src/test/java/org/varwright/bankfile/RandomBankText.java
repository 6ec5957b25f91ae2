package org.varwright.bankfile;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.Standard;

/** A random bank that is right, with names that a careless writer would spoil and in either vocabulary. */
final class RandomBankText {
    private static final List<String> NASTY = List.of(
            "off",
            "0123",
            "1e3",
            "null",
            "true",
            "~",
            "- x",
            "# x",
            "a: b",
            "{x}",
            "[y]",
            "&x",
            "*x",
            "!t",
            "@",
            "%",
            "`",
            "x #y",
            "\"q\"",
            "it's",
            "back\\slash",
            "2016-01-01",
            "µΩ",
            "\u00fcber \u00d6l",
            "\ud83d\udd11",
            "0x1F",
            "1_000",
            ".5",
            "a,b",
            "?",
            "yes",
            ">",
            "|",
            "x:",
            "=",
            "1:2");

    private final Random random;
    private int counter;

    private RandomBankText(Random random) {
        this.random = random;
    }

    static String of(Random random) {
        return new RandomBankText(random).text();
    }

    /** A quoted name that has not been given before. */
    private String name() {
        counter++;
        String core = NASTY.get(random.nextInt(NASTY.size()));
        String name = counter <= NASTY.size() && random.nextBoolean() ? core + counter : counter + core;
        return "\"" + name.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
    }

    private String maybe(String text) {
        return random.nextBoolean() ? text : "";
    }

    private String number(double value) {
        return String.format(Locale.ROOT, "%." + (1 + random.nextInt(9)) + "f", value);
    }

    private String text() {
        List<Connection> connections = List.of(Connection.values());
        Connection connection = connections.get(random.nextInt(connections.size()));
        boolean iec = random.nextBoolean();
        double kilovolts = 4.0 + 30.0 * random.nextDouble();
        int groups = 1 + random.nextInt(3);
        int units = 1 + random.nextInt(3);
        int strings = 1 + random.nextInt(2);
        double leg = connection == Connection.DELTA
                ? kilovolts
                : kilovolts / Math.sqrt(3.0) / (connection.isBridge() ? 2.0 : 1.0);
        String unit = name();
        String fuse = name();
        String stage = name();
        String switchName = name();
        String breaker = name();
        String selector = name();
        String line = name();
        String key = name();
        String other = name();
        String door = name();
        String code = iec ? new Spelling(Standard.IEC).word(connection.code()) : connection.code();
        StringBuilder out = new StringBuilder("format: varwright/1\nname: " + name() + "\n"
                + maybe("site: " + name() + "\n") + maybe("note: \"two\\nlines, a tab\\t and \\\"quotes\\\"\"\n")
                + maybe("label: " + name() + "\n"));
        out.append("standard: ").append(iec ? "IEC" : "IEEE").append('\n');
        out.append("system: {voltage: ")
                .append(number(kilovolts))
                .append(" kV, frequency: ")
                .append(iec ? "50" : "60")
                .append(" Hz, ")
                .append(maybe("short-circuit: " + number(500 + 500 * random.nextDouble()) + " MVA, "))
                .append(maybe("x-over-r: " + number(2 + 20 * random.nextDouble()) + ", "))
                .append(iec ? "earthing" : "grounding")
                .append(": resonant}\n");
        out.append("unit-types:\n  - {name: ")
                .append(unit)
                .append(", rating: ")
                .append(number(50 + 400 * random.nextDouble()))
                .append(" kvar, voltage: ")
                .append(number(1.02 * leg / groups + 0.1))
                .append(" kV, frequency: ")
                .append(iec ? "50" : "60")
                .append(" Hz, tolerance: [")
                .append(number(-5 * random.nextDouble()))
                .append(" %, ")
                .append(number(10 * random.nextDouble() + 1))
                .append(" %]")
                .append(maybe(", sections: 4, elements: 7, element-fuses: internal"))
                .append(
                        random.nextBoolean()
                                ? ", discharge-resistance: " + number(3 + random.nextDouble()) + " Mohm"
                                : ", discharge: {to: 50 V, within: 5 min}")
                .append(maybe(", bushings: 1"))
                .append(maybe(", mass: " + number(50 * random.nextDouble() + 1) + " lb"))
                .append("}\n");
        out.append("fuse-types:\n  - {name: ")
                .append(fuse)
                .append(", kind: current-limiting, rating: ")
                .append(number(800 + random.nextDouble()))
                .append(" A")
                .append(maybe(", link: 65T"))
                .append("}\n");
        out.append(iec ? "steps" : "stages")
                .append(":\n  - {name: ")
                .append(stage)
                .append(", connection: ")
                .append(code)
                .append(", switch: ")
                .append(switchName)
                .append(", strings: ")
                .append(strings)
                .append(", groups: ")
                .append(groups)
                .append(", units: ")
                .append(units)
                .append(connection.isDoubleWye() ? maybe(", second: {units: " + (units + 1) + "}") : "")
                .append(", unit: ")
                .append(unit)
                .append(maybe(", fuse: " + fuse))
                .append(maybe(
                        ", reactor: {inductance: " + number(1 + 20 * random.nextDouble()) + " uH, position: line}"))
                .append("}\n");
        for (Protection.Senses senses : Protection.Senses.values()) {
            if (ProtectionCheck.fits(senses, connection) && (senses != Protection.Senses.PHASE_VOLTAGE || groups > 1)) {
                String symbol = senses.unit();
                out.append(out.indexOf("protection:") < 0 ? "protection:\n" : "")
                        .append("  - {")
                        .append(iec ? "step: " : "stage: ")
                        .append(stage)
                        .append(", senses: ")
                        .append(senses.code())
                        .append(", ratio: \"")
                        .append(1 + random.nextInt(9000))
                        .append(":")
                        .append(1 + random.nextInt(120))
                        .append("\", alarm: ")
                        .append(number(1 + random.nextDouble()))
                        .append(" m")
                        .append(symbol)
                        .append(maybe(", trip: 1 k" + symbol))
                        .append(maybe(", primary: true"))
                        .append(maybe(", delay: 300 ms"))
                        .append("}\n");
            }
        }
        out.append(maybe("control: {senses: kvar, reclose-delay: 7.5 min}\n"));
        out.append("isolation:\n  sources:\n    - {name: ")
                .append(name())
                .append(", at: ")
                .append(line)
                .append(maybe(", voltage: 11 kV"))
                .append("}\n");
        out.append("  devices:\n    - {name: ")
                .append(breaker)
                .append(", kind: breaker, withdrawable: true, remote: true, between: [")
                .append(line)
                .append(", bar]}\n    - {name: ")
                .append(switchName)
                .append(iec ? ", kind: step-switch" : ", kind: stage-switch")
                .append(", between: [bar, ")
                .append(stage)
                .append("]}\n    - {name: ")
                .append(name())
                .append(iec ? ", kind: earthing-switch" : ", kind: grounding-switch")
                .append(", between: [bar, ")
                .append(iec ? "earth" : "ground")
                .append("]}\n    - {name: ")
                .append(selector)
                .append(", kind: selector, positions: [off, \"0\", \"1e3\"]}\n");
        out.append("  compartments:\n    - {name: ")
                .append(door)
                .append(", exposes: [bar, ")
                .append(stage)
                .append("]}\n");
        out.append("  locks:\n    - {device: ")
                .append(breaker)
                .append(", key: ")
                .append(key)
                .append(", holds: withdrawn}\n    - {door: ")
                .append(door)
                .append(", keys: [")
                .append(other)
                .append("]}\n");
        out.append("  exchanges:\n    - {name: ")
                .append(name())
                .append(", in: ")
                .append(key)
                .append(", out: [")
                .append(other)
                .append("]}\n");
        out.append(maybe("  keys: [{name: " + other + ", copies: 2}]\n"));
        out.append("  interlocks:\n    - {device: ")
                .append(switchName)
                .append(", to: closed, requires: {")
                .append(selector)
                .append(": \"1e3\"}}\n");
        out.append("  delays:\n    - {move: {device: ")
                .append(breaker)
                .append(", to: closed}, after: ")
                .append(number(601 + random.nextDouble()))
                .append(" s, open: ")
                .append(switchName)
                .append("}\n");
        out.append(maybe("  start: {" + selector + ": off}\n"));
        out.append(maybe("spares:\n  - {serial: " + name() + ", unit: " + unit + maybe(", note: " + name()) + "}\n"));
        return out.toString();
    }
}
