package org.varwright.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.fuzz.AnyBank;
import org.varwright.fuzz.Mutation;
import org.varwright.triage.Symptom;

/**
 * A command line with the files that it names: any bank, sometimes damaged; options that mostly fit it, sometimes not.
 *
 * @param arguments without {@code --json}
 * @param picture where a picture would go
 * @param hasLongNames whether names are in the bank that take a line of their own
 * @param mayBeRefused whether anything was spoilt on purpose, or asked of a bank that does not have it
 */
record AnyCommand(List<String> arguments, Path picture, boolean hasLongNames, boolean mayBeRefused) {
    /** Those that compute for seconds come up less often. */
    private static final List<String> OFTEN = List.of(
            "check",
            "triage",
            "draw",
            "interlock",
            "isolate",
            "discharge",
            "unbalance",
            "locate",
            "survey",
            "fit",
            "energize",
            "duty",
            "resonance");

    private static final List<String> NOW_AND_THEN = List.of("fuses", "inrush", "report");

    static AnyCommand of(Random random, Path folder) throws IOException {
        return new Draw(random, folder).command(Mutation.pick(random, random.nextInt(12) == 0 ? NOW_AND_THEN : OFTEN));
    }

    /** One command line in the making. */
    private static final class Draw {
        private final Random random;
        private final Path folder;
        private final Path picture;
        private final Bank bank;
        private final boolean hasLongNames;
        private final Path file;
        private final List<String> words = new ArrayList<>();
        private boolean mayBeRefused;

        Draw(Random random, Path folder) throws IOException {
            this.random = random;
            this.folder = folder;
            picture = folder.resolve("picture.svg");
            AnyBank.Manner manner = Mutation.pick(random, List.of(AnyBank.Manner.values()));
            AnyBank any = AnyBank.of(random.nextLong(), manner);
            hasLongNames = manner == AnyBank.Manner.LONG;
            bank = any.bank();
            file = write("any.bank.yaml", any.text());
        }

        /** A file, one of eight damaged. */
        private Path write(String name, String text) throws IOException {
            boolean spoilt = random.nextInt(8) == 0;
            mayBeRefused |= spoilt;
            return Files.writeString(
                    folder.resolve(name), spoilt ? Mutation.text(random, text).replaceAll("\\p{Cs}", "?") : text);
        }

        private void put(String... more) {
            words.addAll(List.of(more));
        }

        private boolean chance(int oneIn) {
            return random.nextInt(oneIn) == 0;
        }

        /** What is typed, one of twelve spoilt. */
        private String typed(String good) {
            if (!chance(12)) {
                return good;
            }
            mayBeRefused = true;
            // Two dashes in front would be another option, and half a character or a zero byte can't be typed.
            String spoilt = chance(2) ? Mutation.strange(random) : Mutation.text(random, good);
            return spoilt.replaceAll("[\\p{Cs}\\x00]", "?").replaceFirst("^-+(?=[a-zA-Z])", "");
        }

        private String quantity(double most, String unit) {
            return typed(String.format(Locale.ROOT, "%.3f %s", most * random.nextDouble(), unit));
        }

        private String bus() {
            return typed(String.format(
                    Locale.ROOT, "%.4f kV", bank.system().nominalVolts() / 1e3 * (0.8 + 0.35 * random.nextDouble())));
        }

        private String stage() {
            return typed(Mutation.pick(random, bank.stages()).name());
        }

        private String position() {
            return typed(Mutation.pick(random, bank.positions()).name());
        }

        private List<String> doors() {
            return bank.isolation().stream()
                    .flatMap(i -> i.compartments().stream())
                    .map(Compartment::name)
                    .toList();
        }

        private String device() {
            List<String> devices = bank.isolation().stream()
                    .map(Isolation::devices)
                    .flatMap(List::stream)
                    .map(Device::name)
                    .toList();
            String device = devices.isEmpty() ? "52" : Mutation.pick(random, devices);
            // An equals sign parts a device from its position.
            mayBeRefused |= devices.isEmpty() || device.indexOf('=') >= 0;
            return typed(device);
        }

        private String door() {
            return typed(doors().isEmpty() ? "bay 1" : Mutation.pick(random, doors()));
        }

        private String readings() throws IOException {
            StringBuilder table = new StringBuilder("position,capacitance,resistance,insulation,temperature,note\n");
            for (Stage stage : bank.stages()) {
                for (UnitPosition at : stage.positions()) {
                    if (!chance(12)) {
                        table.append(reading(at, stage.unit().capacitanceFarads() * 1e6));
                    }
                }
            }
            return write("readings.csv", table.toString()).toString();
        }

        private String reading(UnitPosition at, double nameplate) {
            double micro = nameplate * (0.98 + 0.04 * random.nextDouble());
            String value = chance(20)
                    ? Mutation.pick(random, List.of("OL", "0", "-", "1e9", "0.0001", "12,71", "9 kV"))
                    : String.format(Locale.ROOT, "%.4f", chance(15) ? micro * (0.5 + random.nextDouble()) : micro);
            return quoted(at.name()) + "," + value + ",4.1,12," + random.nextInt(40) + "," + (chance(5) ? "=1+1" : "")
                    + "\n";
        }

        private static String quoted(String cell) {
            return "\"" + cell.replace("\"", "\"\"") + "\"";
        }

        private String spares() throws IOException {
            StringBuilder table = new StringBuilder("serial,unit,capacitance\n");
            for (Stage stage : bank.stages()) {
                double micro = stage.unit().capacitanceFarads() * 1e6 * (1.0 + 0.04 * random.nextDouble());
                table.append("X")
                        .append(table.length())
                        .append(",")
                        .append(quoted(stage.unit().name()))
                        .append(",")
                        .append(String.format(Locale.ROOT, "%.4f", micro))
                        .append('\n');
            }
            return write("spares.csv", table.toString()).toString();
        }

        AnyCommand command(String name) throws IOException {
            put(name, file.toString());
            switch (name) {
                case "triage" -> triage();
                case "draw" -> draw();
                case "interlock" -> interlock();
                case "isolate" -> isolate();
                case "discharge" -> discharge();
                case "unbalance" -> unbalance();
                case "locate" -> locate();
                case "survey" -> put(readings());
                case "fit" -> fit();
                case "energize" -> energize();
                case "fuses" -> fuses();
                case "duty" -> duty();
                case "resonance" -> resonance();
                case "inrush" -> inrush();
                case "report" -> report();
                default -> {}
            }
            if (List.of("discharge", "unbalance", "locate", "survey", "fit", "energize", "fuses", "resonance", "inrush")
                            .contains(name)
                    && chance(2)) {
                put("-o", picture.toString());
                // There is nothing to draw of a sensor that is not there, or of what could not be computed.
                mayBeRefused = true;
            }
            if (!List.of("draw", "report").contains(name) && chance(3)) {
                put("--explain");
            }
            return new AnyCommand(List.copyOf(words), picture, hasLongNames, mayBeRefused);
        }

        private void triage() {
            put("--symptom", typed(Mutation.pick(random, Symptom.codes())));
            if (chance(2)) {
                put("--stage", stage());
            }
            if (chance(3)) {
                put("--reading", sensor());
            }
            if (chance(3)) {
                put("--bus", bus());
            }
        }

        private String sensor() {
            if (bank.protection().isEmpty()) {
                mayBeRefused = true;
                return quantity(9, "V");
            }
            Protection sensor = Mutation.pick(random, bank.protection());
            String phase = switch (sensor.senses()) {
                case PHASE_VOLTAGE, BRIDGE_CURRENT -> " " + Mutation.pick(random, List.of("A", "B", "C"));
                case NEUTRAL_VOLTAGE, NEUTRAL_CURRENT, NEUTRAL_DIFFERENTIAL -> "";
            };
            // In a double wye each wye has its own.
            mayBeRefused |= !phase.isEmpty();
            return typed(sensor.stage() + " " + sensor.senses().code() + phase + "="
                    + quantity(9, sensor.senses().unit()));
        }

        private void draw() {
            put("-o", picture.toString());
            mayBeRefused |= bank.isolation().isEmpty();
            if (chance(2)) {
                put("--state", device() + "=" + Mutation.pick(random, List.of("open", "closed", "withdrawn", "off")));
            }
            if (chance(3)) {
                put("--open", door());
            }
            if (chance(3)) {
                put("--portrait");
            }
            if (chance(3)) {
                put("--black-and-white");
            }
        }

        private void interlock() throws IOException {
            mayBeRefused |= bank.isolation().isEmpty();
            if (chance(3)) {
                put("--memory", typed(String.valueOf(1 + random.nextInt(3))));
            }
            if (chance(4)) {
                put("--audit");
            }
            if (chance(3)) {
                AnyBank neighbour =
                        AnyBank.of(random.nextLong(), Mutation.pick(random, List.of(AnyBank.Manner.values())));
                put(
                        "--with",
                        chance(6)
                                ? file.toString()
                                : write("other.bank.yaml", neighbour.text()).toString());
                // It may be without an isolation part, or the same file again.
                mayBeRefused = true;
            }
        }

        private void isolate() {
            mayBeRefused |= doors().isEmpty();
            put("--access", door());
            if (chance(4)) {
                put("--access", door());
            }
            if (chance(4)) {
                mayBeRefused = true;
                put(
                        "--start",
                        device() + "=" + Mutation.pick(random, List.of("open", "closed", "withdrawn", "manual")));
            }
            if (chance(6)) {
                put("--open", door());
            }
            if (chance(5)) {
                put("--not-use", device());
            }
            if (chance(5)) {
                put("--card");
            }
            if (chance(5)) {
                put("--card-drawing", picture.toString());
            }
            if (chance(8)) {
                put("--state-after", typed(String.valueOf(random.nextInt(30))));
            }
        }

        private void discharge() throws IOException {
            if (chance(3)) {
                put("--stick", quantity(2000, "ohm"));
                if (chance(2)) {
                    put("--stick-energy", quantity(9, "kJ"));
                }
            }
            if (chance(3)) {
                put("--after", quantity(900, "s"));
            }
            if (chance(4)) {
                put("--time-constants", typed("5"));
            }
            if (chance(4)) {
                put("--readings", readings());
            }
        }

        private void unbalance() {
            for (int i = random.nextInt(3); i > 0; i--) {
                put("--out", position());
            }
            if (chance(3)) {
                put("--bus", bus());
            }
            if (chance(3)) {
                put("--stage", stage());
            }
        }

        private void locate() {
            put("--reading", sensor());
            if (chance(3)) {
                put("--primary");
            }
            if (chance(3)) {
                put("--angle", typed(String.valueOf(random.nextInt(720) - 360)));
            }
            if (chance(4)) {
                mayBeRefused = true;
                put("--healthy", typed("20mA@79"));
            }
            if (chance(4)) {
                put("--line", "A=" + quantity(300, "A"));
            }
            if (chance(4)) {
                put("--uncertainty", quantity(10, "%"));
            }
        }

        private void fit() throws IOException {
            put(readings(), "--spares", spares());
            if (chance(4)) {
                mayBeRefused = true; // it may be condemned
                put("--keep", position());
            }
            if (chance(5)) {
                mayBeRefused = true;
                put("--swap", position() + "=" + position());
            }
            if (chance(3)) {
                put("--least-unbalance");
            }
            put("--extra-lifts", String.valueOf(random.nextInt(2)));
        }

        private void energize() throws IOException {
            put("--bus", chance(4) ? bus() + "," + bus() + "," + bus() : bus());
            if (chance(2)) {
                Stage stage = Mutation.pick(random, bank.stages());
                put(
                        "--measured",
                        typed(stage.name() + "/" + Mutation.pick(random, stage.legs()) + "=" + quantity(60, "A")));
            }
            if (chance(3)) {
                put("--readings", readings());
            }
        }

        private void fuses() {
            if (chance(3)) {
                put("--stage", stage());
            }
            if (chance(3)) {
                put("--link", typed(Mutation.pick(random, List.of("40T", "65T", "30K", "100K"))));
            }
            if (chance(4)) {
                put("--fuse-resistance", quantity(9, "mΩ"));
            }
            if (chance(4)) {
                put("--fuse-inductance", quantity(9, "uH"));
            }
        }

        private void duty() throws IOException {
            if (chance(3)) {
                put("--bus", bus());
            }
            if (chance(3)) {
                put("--harmonic", typed("5: 2 %"));
            }
            if (chance(3)) {
                put("--measured", typed("7: 3 %"));
            }
            if (chance(3)) {
                put("--overvoltage", typed("1." + random.nextInt(9)), "--for", quantity(900, "s"));
            }
            if (chance(4)) {
                put("--at", bus(), "--at-frequency", quantity(70, "Hz"));
            }
            if (chance(5)) {
                put("--spares", spares());
            }
            if (chance(6)) {
                put("--vt-entered", typed("7200:120"));
            }
        }

        private void resonance() {
            if (chance(3)) {
                put("--bus", bus());
            }
            if (chance(3)) {
                put("--harmonic", typed("11: 4 A"));
            }
            if (chance(3)) {
                put("--stages", stage());
            }
        }

        private void inrush() {
            if (chance(2)) {
                return;
            }
            Stage stage = Mutation.pick(random, bank.stages());
            put("--stage", typed(stage.name()));
            if (chance(4) && bank.stages().size() > 1) {
                put(
                        "--onto",
                        bank.stages().stream()
                                .map(Stage::name)
                                .filter(n -> !n.equals(stage.name()) && n.indexOf(',') < 0)
                                .findFirst()
                                .orElse("none"));
            }
            switch (random.nextInt(5)) {
                case 0 -> {
                    // on a delta the charges of its legs belong together
                    mayBeRefused = true;
                    put("--trapped", typed(Mutation.pick(random, stage.legs()) + "=1.0"));
                }
                case 1 -> put("--angles", typed("A=90,B=210,C=330"));
                case 2 -> put("--opening");
                case 3 -> put("--restrike", typed("A=2.0"));
                default -> {}
            }
        }

        private void report() throws IOException {
            put(
                    "-o",
                    folder.resolve(chance(12) ? "report.pdf" : chance(4) ? "report.xlsx" : "report.json")
                            .toString());
            if (chance(2)) {
                put("--access", door());
            }
            if (chance(2)) {
                put("--readings", readings());
            }
            if (chance(2)) {
                put("--spares", spares());
            }
            if (chance(2)) {
                put("--bus", bus());
            }
            if (chance(8)) {
                put("--paper", typed("A4"));
            }
        }
    }
}
