package org.varwright.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bankfile.BankFile;
import org.varwright.bankfile.BankReading;

/**
 * A whole bank file that is right: steel-enclosed stages with bays, keys and an exchange, an open rack behind gates, or electrical parts alone; every connection;
 * externally fused, internally fused, fuseless, three-phase cans; with and without reactors, protection, harmonics, load, positions, spares; either vocabulary;
 * names that are plain, odd or long. A lock is sometimes missing, so that not everything is enforced.
 *
 * @param text of the file
 * @param bank that it is
 * @param draws how often it was drawn until it was right
 */
public record AnyBank(String text, Bank bank, int draws) {
    /** How things are named. */
    public enum Manner {
        /** As on most drawings. */
        PLAIN,
        /** With what a careless writer of files, pages or formats would trip over. */
        ODD,
        /** Some too long for a column. */
        LONG
    }

    /** A bank that is right. */
    public static AnyBank of(Random random) {
        return of(random.nextLong(), Mutation.pick(random, List.of(Manner.values())));
    }

    /** A bank that is right; the same seed gives the same bank under other names. */
    public static AnyBank of(long seed, Manner manner) {
        Random random = new Random(seed);
        for (int draws = 1; draws < 50; draws++) {
            String text = new Draw(random, manner).text();
            BankReading reading = BankFile.read("any.bank.yaml", text.getBytes(StandardCharsets.UTF_8));
            if (reading.bank().isPresent()) {
                return new AnyBank(text, reading.requireBank(), draws);
            }
        }
        throw new AssertionError("no bank that is right in fifty draws");
    }

    /** One bank in the making. */
    private static final class Draw {
        private static final List<String> ODD = List.of(
                "0123",
                "1e3",
                "- x",
                "# x",
                "a: b",
                "{x}",
                "&x",
                "*x",
                "!t",
                "%s%n",
                "x #y",
                "\"q\"",
                "it's",
                "<b>",
                "&amp;",
                "]]>",
                "µΩ",
                "Åse Øvre",
                "配電盤",
                "\ud83d\udd11",
                "$1",
                "back\\slash",
                "a,b",
                "=1+1",
                "off",
                "<script src=x>");

        private final Random random;
        private final StringBuilder out = new StringBuilder();
        private final boolean iec;
        private final int hertz;
        private final double kilovolts;
        private final List<String> stages = new ArrayList<>();
        private final List<String> switches = new ArrayList<>();
        private final List<String> positions = new ArrayList<>();
        private final List<String> protections = new ArrayList<>();
        private final boolean isolated;
        private final Manner manner;
        /** Draws names only, so that other names are no other bank. */
        private final Random names;

        private String switchType = "";
        private int counter;

        Draw(Random random, Manner manner) {
            this.random = random;
            this.manner = manner;
            names = new Random(random.nextLong());
            iec = random.nextBoolean();
            hertz = iec ? 50 : 60;
            kilovolts = 2.4 + 36.0 * random.nextDouble() * random.nextDouble();
            isolated = random.nextInt(6) > 0;
        }

        /** Quoted, and never the same twice. */
        private String name(String plain) {
            counter++;
            String name = switch (manner) {
                case PLAIN -> plain;
                case ODD -> plain + " " + Mutation.pick(names, ODD) + counter;
                case LONG ->
                    names.nextInt(4) == 0
                            ? plain
                                    + " of the outdoor switchgear of the pumping station by the old northern quarry road "
                                    + counter
                            : Mutation.pick(names, ODD) + " " + counter;
            };
            return "\"" + name.replace("\\", "\\\\").replace("\"", "\\\"") + "\"";
        }

        private boolean chance(int oneIn) {
            return random.nextInt(oneIn) == 0;
        }

        private String maybe(String text) {
            return random.nextBoolean() ? text : "";
        }

        private String number(double value) {
            return String.format(Locale.ROOT, "%." + (3 + random.nextInt(5)) + "f", value);
        }

        private void line(String text) {
            out.append(text).append('\n');
        }

        String text() {
            line("format: varwright/1");
            line("name: " + name("bank 1"));
            out.append(maybe("site: " + name("yard") + "\n")).append(maybe("label: " + name("BK1") + "\n"));
            line("standard: " + (iec ? "IEC" : "IEEE"));
            line("system: {voltage: " + number(kilovolts) + " kV, frequency: " + hertz + " Hz"
                    + maybe(", maximum-voltage: " + number(kilovolts * 1.05) + " kV")
                    + (chance(5) ? "" : ", short-circuit: " + number(60 + 900 * random.nextDouble()) + " MVA")
                    + maybe(", x-over-r: " + number(2 + 20 * random.nextDouble())) + ", grounding: "
                    + Mutation.pick(random, List.of("solid", "resistance", "reactance", "isolated", "resonant"))
                    + maybe(", harmonics: [{order: 5, voltage: " + number(3 * random.nextDouble())
                            + " %}, {order: 7, current: " + number(9 * random.nextDouble()) + " A}]")
                    + "}");
            parts(1 + random.nextInt(3));
            if (!protections.isEmpty()) {
                line("protection:");
                protections.forEach(this::line);
            }
            out.append(maybe("control: {senses: kvar, on: " + number(500) + " kvar, off: -" + number(100) + " kvar"
                    + maybe(", reclose-delay: 5 min") + "}\n"));
            out.append(maybe("load: {power: 9 MW, reactive: 4 Mvar" + maybe(", wanted-power-factor: 0.97")
                    + maybe(", light-power: 2 MW, light-reactive: -0.5 Mvar") + "}\n"));
            if (isolated) {
                isolation();
            }
            if (!positions.isEmpty() && random.nextBoolean()) {
                line("positions:");
                positions.forEach(this::line);
            }
            return out.toString();
        }

        /** Types of units, fuses and switches, and the stages made of them. */
        private void parts(int count) {
            StringBuilder units = new StringBuilder("unit-types:\n");
            StringBuilder fuses = new StringBuilder();
            StringBuilder made = new StringBuilder("stages:\n");
            switchType = isolated ? maybe(name("SW")) : "";
            for (int i = 1; i <= count; i++) {
                stage(i, units, fuses, made);
            }
            out.append(units);
            if (!fuses.isEmpty()) {
                line("fuse-types:");
                out.append(fuses);
            }
            if (!switchType.isEmpty()) {
                line("switch-types:\n  - {name: " + switchType + ", voltage: " + number(kilovolts * 1.2) + " kV"
                        + maybe(", current: 400 A") + maybe(", capacitive-current: 250 A")
                        + maybe(", inrush-peak: " + number(1 + 19 * random.nextDouble())
                                + " kA, inrush-frequency: 4 kHz")
                        + "}");
            }
            out.append(made);
        }

        private void stage(int n, StringBuilder units, StringBuilder fuses, StringBuilder made) {
            Connection connection = Mutation.pick(random, List.of(Connection.values()));
            int fusing = random.nextInt(4);
            boolean cans = fusing == 3 && (connection == Connection.DELTA || connection == Connection.WYE_UNGROUNDED);
            int strings = fusing == 2 ? 1 + random.nextInt(3) : 1;
            int groups = cans ? 1 : 1 + random.nextInt(3);
            int parallel = fusing == 2 ? 1 : 1 + random.nextInt(4);
            double leg = connection == Connection.DELTA
                    ? kilovolts
                    : kilovolts / Math.sqrt(3.0) / (connection.isBridge() ? 2.0 : 1.0);
            double volts = 1e3 * (cans ? kilovolts : leg / groups) * (1.0 + 0.12 * random.nextDouble());
            double vars = 1e3 * (50 + 50 * random.nextInt(8));
            String unit = name("U" + n);
            String fuse = name("F" + n);
            String stage = name("stage " + n);
            String device = name("24-" + n);
            stages.add(stage);
            switches.add(device);
            units.append("  - {name: ")
                    .append(unit)
                    .append(", rating: ")
                    .append(number(vars / 1e3))
                    .append(" kvar, voltage: ")
                    .append(number(volts / 1e3))
                    .append(" kV, frequency: ")
                    .append(hertz)
                    .append(" Hz, tolerance: [0 %, ")
                    .append(iec ? "+5 %" : "+10 %")
                    .append("]")
                    .append(
                            fusing == 1
                                    ? ", sections: 4, elements: 9, element-fuses: internal"
                                    : maybe(", sections: 4, elements: 9, element-fuses: none"))
                    .append(
                            cans
                                    ? ", phases: 3, internal: "
                                            + (connection == Connection.DELTA ? "delta" : "wye-ungrounded")
                                    : "")
                    .append(
                            random.nextInt(3) > 0
                                    ? ", discharge-resistance: " + number(1 + 6 * random.nextDouble()) + " Mohm"
                                    : ", discharge: {to: 50 V, within: 5 min}")
                    .append(maybe(", bushings: " + (cans ? 3 : 2)))
                    .append(maybe(", mass: " + number(20 + 30 * random.nextDouble()) + " kg"))
                    .append("}\n");
            boolean fused = fusing == 0 && (random.nextInt(5) > 0);
            if (fused) {
                double amperes = vars / volts;
                fuses.append("  - {name: ")
                        .append(fuse)
                        .append(", kind: ")
                        .append(random.nextBoolean() ? "expulsion" : "current-limiting")
                        .append(", rating: ")
                        .append(number(amperes * (1.4 + random.nextDouble())))
                        .append(" A")
                        .append(maybe(", voltage: " + number(volts * 1.3 / 1e3) + " kV"))
                        .append(maybe(", interrupting: " + number(1 + 5 * random.nextDouble()) + " kA"))
                        .append(maybe(", maximum-parallel-energy: 15 kJ"))
                        .append(maybe(", melting-i2t: 3000 A2s, clearing-i2t: 9000 A2s"))
                        .append("}\n");
            }
            made.append("  - {name: ")
                    .append(stage)
                    .append(", connection: ")
                    .append(connection.code())
                    .append(isolated ? ", switch: " + device : "")
                    .append(", strings: ")
                    .append(strings)
                    .append(", groups: ")
                    .append(groups)
                    .append(", units: ")
                    .append(parallel)
                    .append(connection.isDoubleWye() ? maybe(", second: {units: " + (parallel + 1) + "}") : "")
                    .append(", unit: ")
                    .append(unit)
                    .append(fused ? ", fuse: " + fuse : "")
                    .append(maybe(", reactor: {inductance: " + number(10 + 60 * random.nextDouble())
                            + " uH, position: line}"))
                    .append(maybe(", bus-length: " + number(1 + 9 * random.nextDouble()) + " m"))
                    .append("}\n");
            if (!cans) {
                protection(stage, connection, groups);
            }
            String plain = stage.substring(1, stage.length() - 1);
            if (strings == 1 && !cans) {
                double farads = vars / (2.0 * Math.PI * hertz * volts * volts);
                for (String legName : connection.legs()) {
                    if (groups == 1 && parallel > 1 && chance(3)) {
                        positions.add("  - {at: \"" + plain + "/" + legName + "/u1\", serial: "
                                + name("S" + n + legName) + ", capacitance: "
                                + number(1e6 * farads * (1.0 + 0.05 * random.nextDouble())) + " uF}");
                    }
                }
            }
        }

        private void protection(String stage, Connection connection, int groups) {
            for (Protection.Senses senses : Protection.Senses.values()) {
                boolean fits = switch (senses) {
                    case NEUTRAL_VOLTAGE -> connection.hasFloatingNeutral();
                    case NEUTRAL_CURRENT -> connection.isDoubleWye() || connection.isGrounded();
                    case NEUTRAL_DIFFERENTIAL -> connection == Connection.DOUBLE_WYE_GROUNDED;
                    case BRIDGE_CURRENT -> connection.isBridge();
                    case PHASE_VOLTAGE -> connection != Connection.DELTA && groups > 1;
                };
                if (fits && random.nextBoolean()) {
                    boolean volts = senses.unit().equals("V");
                    protections.add("  - {stage: " + stage + ", senses: " + senses.code() + ", ratio: \""
                            + (volts ? 1200 + random.nextInt(7000) + ":120" : 5 + random.nextInt(95) + ":5")
                            + "\", alarm: "
                            + number(volts ? 1 + 5 * random.nextDouble() : 0.1 + random.nextDouble()) + " "
                            + senses.unit()
                            + maybe(", trip: " + (volts ? "15 V" : "3 A")) + maybe(", delay: 500 ms") + "}");
                }
            }
        }

        private void isolation() {
            String breaker = name("52-1");
            String disconnector = name("89-1");
            String grounding = name("57-1");
            String selector = name("43-1");
            boolean selected = random.nextBoolean();
            boolean withdrawable = random.nextBoolean();
            boolean lowVoltage = chance(3);
            List<String> keys = new ArrayList<>();
            for (int i = 0; i < 4 + stages.size(); i++) {
                keys.add(name("K-" + i));
            }
            line("isolation:\n  sources:\n    - {name: " + name("feeder") + ", at: line}");
            if (lowVoltage) {
                line("    - {name: " + name("station service") + ", at: control supply, voltage: 120 V}");
            }
            String type = switchType.isEmpty() ? "" : ", type: " + switchType;
            line("  devices:\n    - {name: " + breaker + ", kind: breaker, withdrawable: " + withdrawable
                    + ", between: [line, cable]" + maybe(", remote: true") + "}");
            line("    - {name: " + disconnector + ", kind: disconnector, between: [cable, bus]"
                    + maybe(", seen-through: window") + "}");
            line("    - {name: " + grounding + ", kind: grounding-switch, between: [bus, ground]"
                    + maybe(", seen-through: window") + "}");
            for (int i = 0; i < stages.size(); i++) {
                line("    - {name: " + switches.get(i) + ", kind: stage-switch, between: [bus, " + stages.get(i) + "]"
                        + maybe(", indicates: lamp") + maybe(type) + "}");
            }
            if (selected) {
                line("    - {name: " + selector + ", kind: selector, positions: [\"off\", manual, auto]}");
            }
            line("  compartments:");
            List<String> doors = new ArrayList<>();
            if (lowVoltage) {
                line("    - {name: " + name("controls") + ", exposes: [control supply]}");
            }
            for (int i = 0; i < stages.size(); i++) {
                doors.add(name("bay " + (i + 1)));
                line("    - {name: " + doors.get(i) + ", exposes: [bus, " + stages.get(i) + "]"
                        + maybe(", label: " + name("B" + i)) + "}");
            }
            line("  locks:");
            List<String> locks = new ArrayList<>(List.of(
                    "{device: " + disconnector + ", key: " + keys.get(0) + ", holds: open}",
                    "{device: " + grounding + ", key: " + keys.get(0) + ", holds: open}",
                    "{device: " + grounding + ", key: " + keys.get(1) + ", holds: closed}"));
            if (withdrawable) {
                locks.add("{device: " + breaker + ", key: " + keys.get(2) + ", holds: withdrawn}");
                locks.add("{device: " + disconnector + ", key: " + keys.get(2) + ", holds: closed}");
            }
            if (chance(4)) {
                locks.remove(random.nextInt(2));
            }
            boolean exchanged = random.nextInt(4) > 0;
            for (int i = 0; i < doors.size(); i++) {
                locks.add("{door: " + doors.get(i) + ", key: " + (exchanged ? keys.get(4 + i) : keys.get(1)) + "}");
            }
            locks.forEach(l -> line("    - " + l));
            if (exchanged) {
                line("  exchanges:\n    - {name: " + name("key exchange") + ", in: [" + keys.get(1) + "], out: ["
                        + String.join(", ", keys.subList(4, 4 + doors.size())) + "]}");
            }
            if (selected && random.nextBoolean()) {
                line("  interlocks:");
                switches.forEach(s ->
                        line("    - {device: " + s + ", to: closed, requires: {" + selector + ": [manual, auto]}}"));
            }
            if (random.nextBoolean()) {
                line("  delays:\n    - {move: {device: " + grounding + ", to: closed}, after: 5 min, open: ["
                        + String.join(", ", switches) + "]}");
            }
        }
    }
}
