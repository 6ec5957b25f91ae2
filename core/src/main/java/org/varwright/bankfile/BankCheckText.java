package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.APPARENT_POWER;
import static org.varwright.quantity.Dimension.CAPACITANCE;
import static org.varwright.quantity.Dimension.CURRENT;
import static org.varwright.quantity.Dimension.FREQUENCY;
import static org.varwright.quantity.Dimension.INDUCTANCE;
import static org.varwright.quantity.Dimension.REACTIVE_POWER;
import static org.varwright.quantity.Dimension.RESISTANCE;
import static org.varwright.quantity.Dimension.TIME;
import static org.varwright.quantity.Dimension.VOLTAGE;
import static org.varwright.quantity.Dimension.digits;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.Isolation;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitType;
import org.varwright.bank.Vocabulary;
import org.varwright.basis.Basis;
import org.varwright.page.Page;
import org.varwright.problem.Problem;
import org.varwright.quantity.Dimension;

/** The answer of {@code check} for people: faults first, then the bank on one page, 100 columns wide. */
public final class BankCheckText {
    private final Page page = new Page();

    private BankCheckText() {}

    /**
     * The text, ended by a newline.
     *
     * @param explain whether to print how the numbers came about
     */
    public static String of(BankCheck check, boolean explain) {
        BankCheckText text = new BankCheckText();
        text.problems("ERRORS", check.errors());
        text.problems("WARNINGS", check.warnings());
        check.bank().ifPresent(bank -> text.bank(check, bank));
        if (explain) {
            check.stages().forEach(text::explain);
        }
        text.page
                .blank()
                .text(
                        check.ok()
                                ? check.file() + ": no errors, "
                                        + count(check.warnings().size(), "warning")
                                : check.file() + ": " + count(check.errors().size(), "error") + ", "
                                        + count(check.warnings().size(), "warning"));
        return text.page.print();
    }

    private static String count(int number, String word) {
        return number + " " + word + (number == 1 ? "" : "s");
    }

    private void problems(String title, List<Problem> problems) {
        if (problems.isEmpty()) {
            return;
        }
        page.heading(title);
        problems.forEach(p -> page.item("  ", p.print()));
    }

    private void bank(BankCheck check, Bank bank) {
        Vocabulary words = bank.words();
        var system = bank.system();
        page.heading(bank.name() + bank.site().map(v -> ", " + v).orElse(""));
        page.row("label", bank.label().orElse("none"));
        page.row("standard", bank.standard().name());
        page.row(
                "system",
                VOLTAGE.format(system.nominalVolts()) + ", " + FREQUENCY.format(system.frequencyHertz()) + ", "
                        + words.grounding() + ": "
                        + system.grounding().name().toLowerCase(Locale.ROOT)
                        + optional(", at most ", system.maximumVolts(), VOLTAGE)
                        + optional(", short circuit ", system.shortCircuitVoltAmperes(), APPARENT_POWER)
                        + (system.xOverR().isPresent()
                                ? ", X/R " + digits(system.xOverR().getAsDouble(), 3)
                                : ""));
        if (!system.harmonics().isEmpty()) {
            page.row("harmonics", SupplyText.harmonics(system.harmonics()));
        }
        bank.load().ifPresent(l -> page.row("load", SupplyText.load(l)));
        bank.control().ifPresent(c -> page.row("control", SupplyText.control(c)));
        page.row(
                "bank",
                REACTIVE_POWER.format(check.ratedVars()) + " rated, " + REACTIVE_POWER.format(check.varsAtNominal())
                        + " at nominal voltage, "
                        + bank.positions().size() + " units, "
                        + count(bank.spares().size(), "spare") + " listed");
        stages(check, bank, words);
        unitTypes(bank);
        if (!bank.switchTypes().isEmpty()) {
            page.heading("SWITCH TYPES");
            bank.switchTypes().forEach(t -> page.item("  ", SupplyText.switchType(t)));
        }
        protection(bank);
        bank.isolation().ifPresent(this::isolation);
    }

    private void stages(BankCheck check, Bank bank, Vocabulary words) {
        page.heading(words.stage().toUpperCase(Locale.ROOT) + "S, healthy, at nominal voltage, by the nameplates");
        List<List<String>> rows = new ArrayList<>();
        List<String> header =
                List.of(words.stage(), "units", "rated", "gives", "a leg", "current a leg", "on a unit", "of rated");
        for (StageSummary s : check.stages()) {
            rows.add(List.of(
                    s.name(),
                    String.valueOf(s.units()),
                    REACTIVE_POWER.format(s.ratedVars()),
                    REACTIVE_POWER.format(s.varsAtNominal()),
                    CAPACITANCE.format(s.capacitanceFaradsPerLeg()),
                    CURRENT.format(s.legAmperes()),
                    VOLTAGE.format(s.unitVolts()),
                    digits(100.0 * s.unitVoltsPerRated(), 4) + " %"));
        }
        page.table(header, rows, 1, 2, 3, 4, 5, 6, 7);
        for (Stage stage : bank.stages()) {
            page.item("  ", stage.name() + ": " + arrangement(stage, words));
        }
    }

    private static String arrangement(Stage stage, Vocabulary words) {
        StringBuilder text = new StringBuilder(words.connection(stage.connection()));
        text.append(", ").append(layout(stage.layout()));
        stage.second()
                .ifPresent(s ->
                        text.append("; second ").append(words.wye()).append(' ').append(layout(s)));
        text.append(" of ").append(stage.unit().name());
        stage.fuse().ifPresent(f -> text.append(", fuse ").append(f.name()));
        stage.reactor().ifPresent(r -> text.append(", reactor ").append(INDUCTANCE.format(r.henries())));
        text.append(SupplyText.wiring(stage));
        stage.switchName().ifPresent(s -> text.append(", switched by ").append(s));
        return text.toString();
    }

    private static String layout(LegLayout layout) {
        return (layout.strings() > 1 ? layout.strings() + " strings × " : "") + layout.groups() + " in series × "
                + layout.units() + " in parallel";
    }

    private void unitTypes(Bank bank) {
        page.heading("UNIT TYPES");
        for (UnitType type : bank.unitTypes()) {
            page.item(
                    "  ",
                    type.name() + ": " + REACTIVE_POWER.format(type.ratedVars()) + ", "
                            + VOLTAGE.format(type.ratedVolts()) + ", " + FREQUENCY.format(type.ratedHertz()) + ", "
                            + CAPACITANCE.format(type.capacitanceFarads()) + " ("
                            + digits(100.0 * type.tolerance().low(), 3) + " to +"
                            + digits(100.0 * type.tolerance().high(), 3) + " %), "
                            + type.discharge().map(BankCheckText::discharge).orElse("discharge resistor not given"));
        }
    }

    private static String discharge(DischargeDevice device) {
        return switch (device) {
            case DischargeDevice.Resistor r -> "discharge resistor " + RESISTANCE.format(r.ohms());
            case DischargeDevice.Rated r ->
                "discharges to " + VOLTAGE.format(r.volts()) + " in " + TIME.format(r.seconds());
        };
    }

    private void protection(Bank bank) {
        if (bank.protection().isEmpty()) {
            return;
        }
        page.heading("SENSORS");
        for (Protection p : bank.protection()) {
            Dimension dimension = p.senses().dimension();
            page.item(
                    "  ",
                    p.stage() + ": " + p.senses().code()
                            + p.ratio()
                                    .map(r -> ", " + digits(r.primary(), 6) + ":" + digits(r.secondary(), 6))
                                    .orElse("")
                            + optional(", alarm ", p.alarm(), dimension)
                            + optional(", trip ", p.trip(), dimension)
                            + (p.settingsArePrimary() ? " (primary)" : "")
                            + optional(" after ", p.delaySeconds(), TIME));
        }
    }

    private void isolation(Isolation isolation) {
        page.heading("ISOLATION");
        page.item(
                "  ",
                count(isolation.sources().size(), "source") + ", "
                        + count(isolation.devices().size(), "device")
                        + ", " + count(isolation.compartments().size(), "compartment") + ", "
                        + count(isolation.locks().size(), "lock") + ", "
                        + count(isolation.keyNames().size(), "key") + ", "
                        + count(isolation.exchanges().size(), "exchange") + ", "
                        + count(isolation.interlocks().size(), "interlock") + ", "
                        + count(isolation.delays().size(), "delay"));
        page.item("  ", "Whether the keys keep people safe is not said here: verify the interlocking.");
    }

    private void explain(StageSummary stage) {
        page.heading("HOW " + stage.name() + " WAS WORKED OUT");
        for (Basis basis : stage.basis()) {
            page.item(
                    "  ",
                    basis.id() + "  " + basis.formula() + "  [" + basis.source().print() + "]");
            basis.terms()
                    .forEach(t -> page.item(
                            "      ",
                            t.symbol() + " = " + digits(t.value(), 6)
                                    + (t.unit().isEmpty() ? "" : " " + t.unit()) + "  " + t.meaning()));
        }
    }

    private static String optional(String before, OptionalDouble value, Dimension dimension) {
        return value.isPresent() ? before + dimension.format(value.getAsDouble()) : "";
    }
}
