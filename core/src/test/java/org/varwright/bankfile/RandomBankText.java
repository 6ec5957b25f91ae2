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

    private String control() {
        return switch (random.nextInt(5)) {
            case 0 ->
                "senses: kvar, on: " + number(500) + " kvar, off: -" + number(100 * random.nextDouble()) + " kvar";
            case 1 ->
                "senses: voltage, ratio: \"7200:120\", on: " + number(119 + random.nextDouble()) + " V, off: 126 V";
            case 2 ->
                "senses: current, current-ratio: \"400:5\", on: 3.4 A, off: " + number(1 + random.nextDouble()) + " A";
            case 3 -> "senses: power-factor, on: 0.9" + random.nextInt(4) + ", off: 0.9" + (5 + random.nextInt(5));
            default -> "senses: time, ratio: \"66000:110\"";
        };
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
        String switchType = name();
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
                .append(": resonant")
                .append(maybe(", harmonics: [{order: 11, current: " + number(9 * random.nextDouble())
                        + " A}, {order: 5, voltage: " + number(4 * random.nextDouble()) + " %, current: 3 mA}]"))
                .append("}\n");
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
                .append(maybe(", link: slow"))
                .append(maybe(", interrupting: " + number(5 + random.nextDouble()) + " kA"))
                .append(maybe(", melting-i2t: " + number(5000 * random.nextDouble() + 1) + " A2s"))
                .append(maybe(", clearing-i2t: " + number(5000 * random.nextDouble() + 9000) + " A²s"))
                .append("}\n");
        out.append("switch-types:\n  - {name: ")
                .append(switchType)
                .append(maybe(", voltage: 38 kV"))
                .append(maybe(", current: " + number(200 + 600 * random.nextDouble()) + " A"))
                .append(maybe(", inrush-peak: " + number(20 * random.nextDouble() + 1) + " kA, inrush-frequency: "
                        + number(4 + random.nextDouble()) + " kHz"))
                .append(maybe(", outrush-product: " + number(60 * random.nextDouble() + 1) + " kA*kHz"))
                .append(maybe(", capacitive-current: 160 A"))
                .append(maybe(", note: " + name()))
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
                .append(maybe(", reactor: {inductance: " + number(1 + 20 * random.nextDouble()) + " uH, position: line"
                        + maybe(", resistance: " + number(1 + random.nextDouble()) + " mΩ, current: 900 A")
                        + maybe(", peak-current: " + number(9 + random.nextDouble()) + " kA") + "}"))
                .append(maybe(", bus-length: " + number(1 + random.nextDouble()) + (iec ? " m" : " ft")))
                .append(maybe(", stray-inductance: " + number(1 + random.nextDouble()) + " uH"))
                .append(maybe(", discharge-path: {kind: " + (iec ? "coil" : "transformer")
                        + ", between: lines, resistance: " + number(1 + random.nextDouble()) + " kΩ"
                        + maybe(", inductance: " + number(900 * random.nextDouble() + 1) + " H") + "}"))
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
        out.append(maybe("control: {" + control() + maybe(", reclose-delay: 7.5 min") + "}\n"));
        out.append(maybe("load: {power: " + number(5 + random.nextDouble()) + " MW, reactive: 3 Mvar"
                + maybe(", light-power: " + number(900 * random.nextDouble()) + " kW, light-reactive: -"
                        + number(random.nextDouble()) + " Mvar")
                + maybe(", wanted-power-factor: 0." + (5 + random.nextInt(5)) + random.nextInt(10)) + "}\n"));
        out.append("isolation:\n  sources:\n    - {name: ")
                .append(name())
                .append(", at: ")
                .append(line)
                .append(maybe(", voltage: 11 kV"))
                .append("}\n");
        out.append("  devices:\n    - {name: ")
                .append(breaker)
                .append(", kind: breaker")
                .append(maybe(", type: " + switchType))
                .append(", withdrawable: true, remote: true, between: [")
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
