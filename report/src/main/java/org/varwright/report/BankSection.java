package org.varwright.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.FuseType;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Protection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitType;
import org.varwright.quantity.Dimension;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** What the bank is made of, by its file. */
final class BankSection {
    private BankSection() {}

    static Section of(Bank bank) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(stages(bank));
        blocks.add(unitTypes(bank));
        if (!bank.protection().isEmpty()) {
            blocks.add(protection(bank));
        }
        return new Section("Bank", Section.PageStart.RUN_ON, blocks);
    }

    private static Block stages(Bank bank) {
        String stage = bank.words().stage();
        List<Row> rows = bank.stages().stream()
                .map(s -> Row.of(
                        s.name(),
                        bank.words().connection(s.connection()),
                        Dimension.REACTIVE_POWER.format(s.ratedVars()),
                        s.positions().size() + " \u00d7 " + s.unit().name(),
                        layout(s),
                        s.switchName().orElse("none of its own"),
                        fittings(s)))
                .toList();
        return new Block.Table(
                capital(stage) + "s",
                List.of(
                        Column.left(capital(stage), 15),
                        Column.left("Connection", 15),
                        Column.right("Rated", 11),
                        Column.left("Units", 12),
                        Column.left("In each leg", 18),
                        Column.left("Switch", 11),
                        Column.left("Fuse, reactor", 18)),
                rows);
    }

    private static String layout(Stage stage) {
        return stage.second()
                .map(second -> "first: " + layout(stage.layout()) + "; second: " + layout(second))
                .orElse(layout(stage.layout()));
    }

    private static String layout(LegLayout layout) {
        String series = layout.groups() + " in series, " + layout.units() + " in parallel";
        return layout.strings() == 1 ? series : layout.strings() + " strings, each " + series;
    }

    private static String fittings(Stage stage) {
        List<String> parts = new ArrayList<>();
        stage.fuse().map(BankSection::fuse).ifPresent(parts::add);
        stage.reactor().map(BankSection::reactor).ifPresent(parts::add);
        return parts.isEmpty() ? "none" : String.join("; ", parts);
    }

    private static String fuse(FuseType fuse) {
        String kind = switch (fuse.kind()) {
            case EXPULSION -> "expulsion";
            case CURRENT_LIMITING -> "current-limiting";
        };
        return fuse.name() + " " + kind + fuse.link().map(l -> " " + l).orElse("");
    }

    private static String reactor(Reactor reactor) {
        String side = switch (reactor.position()) {
            case LINE -> "line side";
            case NEUTRAL -> "neutral side";
        };
        return Dimension.INDUCTANCE.format(reactor.henries()) + " reactor, " + side;
    }

    private static Block unitTypes(Bank bank) {
        Map<String, UnitType> used = new LinkedHashMap<>();
        bank.unitTypes().forEach(t -> used.put(t.name(), t));
        bank.stages().forEach(s -> used.put(s.unit().name(), s.unit()));
        List<Row> rows = used.values().stream()
                .map(t -> Row.of(
                        t.name(),
                        Dimension.REACTIVE_POWER.format(t.ratedVars()) + ", "
                                + Dimension.VOLTAGE.format(t.ratedVolts()) + ", "
                                + Dimension.FREQUENCY.format(t.ratedHertz()),
                        Dimension.CAPACITANCE.format(t.capacitanceFarads()) + ", "
                                + percent(t.tolerance().low()) + " to "
                                + percent(t.tolerance().high()),
                        construction(t),
                        t.discharge().map(BankSection::discharge).orElse("not given")))
                .toList();
        return new Block.Table(
                "Units by nameplate",
                List.of(
                        Column.left("Type", 12),
                        Column.left("Rating", 25),
                        Column.left("Capacitance, tolerance", 23),
                        Column.left("Inside", 22),
                        Column.left("Discharge resistor", 18)),
                rows);
    }

    private static String construction(UnitType type) {
        return type.construction()
                .map(c -> c.sections() + " sections of " + c.elements() + " elements"
                        + (c.internallyFused() ? ", each with a fuse" : ""))
                .orElse("not given");
    }

    private static String discharge(DischargeDevice device) {
        return switch (device) {
            case DischargeDevice.Resistor(double ohms) -> Dimension.RESISTANCE.format(ohms);
            case DischargeDevice.Rated(double volts, double seconds) ->
                "to " + Dimension.VOLTAGE.format(volts) + " within " + Dimension.TIME.format(seconds);
        };
    }

    private static Block protection(Bank bank) {
        List<Row> rows = bank.protection().stream()
                .map(p -> Row.of(
                        p.stage(),
                        p.senses().code().replace('-', ' '),
                        p.ratio()
                                .map(r -> Dimension.digits(r.primary(), 6) + ":" + Dimension.digits(r.secondary(), 6))
                                .orElse("not given"),
                        setting(p, p.alarm().isPresent() ? Optional.of(p.alarm().getAsDouble()) : Optional.empty()),
                        setting(p, p.trip().isPresent() ? Optional.of(p.trip().getAsDouble()) : Optional.empty()),
                        p.delaySeconds().isPresent()
                                ? Dimension.TIME.format(p.delaySeconds().getAsDouble())
                                : "not given"))
                .toList();
        return new Block.Table(
                "Unbalance protection",
                List.of(
                        Column.left(capital(bank.words().stage()), 20),
                        Column.left("Senses", 22),
                        Column.left("Ratio", 16),
                        Column.left("Alarm", 16),
                        Column.left("Trip", 16),
                        Column.left("Delay", 10)),
                rows);
    }

    private static String setting(Protection protection, Optional<Double> value) {
        return value.map(v -> Dimension.digits(v, 4) + " " + protection.senses().unit()
                        + (protection.settingsArePrimary() ? " primary" : " at the relay"))
                .orElse("not given");
    }

    private static String percent(double part) {
        String text = Dimension.digits(part * 100.0, 4);
        return (part > 0.0 ? "+" + text : text.replace('-', '\u2212')) + " %";
    }

    private static String capital(String word) {
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }
}
