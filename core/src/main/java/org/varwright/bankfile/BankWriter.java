package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.CAPACITANCE;
import static org.varwright.quantity.Dimension.CURRENT;
import static org.varwright.quantity.Dimension.CURRENT_FREQUENCY;
import static org.varwright.quantity.Dimension.CURRENT_SQUARED_TIME;
import static org.varwright.quantity.Dimension.ENERGY;
import static org.varwright.quantity.Dimension.FRACTION;
import static org.varwright.quantity.Dimension.FREQUENCY;
import static org.varwright.quantity.Dimension.INDUCTANCE;
import static org.varwright.quantity.Dimension.LENGTH;
import static org.varwright.quantity.Dimension.MASS;
import static org.varwright.quantity.Dimension.REACTIVE_POWER;
import static org.varwright.quantity.Dimension.RESISTANCE;
import static org.varwright.quantity.Dimension.TIME;
import static org.varwright.quantity.Dimension.VOLTAGE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import org.varwright.bank.Bank;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.DischargePath;
import org.varwright.bank.FuseType;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Protection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.SwitchType;
import org.varwright.bank.UnitType;
import org.varwright.quantity.Dimension;

/** A bank as YAML in the words of its standard: the same bank gives the same text, and reading the text gives the same bank. */
final class BankWriter {
    private final Spelling spelling;
    private final StringBuilder out = new StringBuilder();

    private BankWriter(Bank bank) {
        this.spelling = new Spelling(bank.standard());
    }

    static String write(Bank bank) {
        BankWriter writer = new BankWriter(bank);
        writer.bank(bank);
        return writer.out.toString();
    }

    private void bank(Bank bank) {
        line("format: " + BankReader.FORMAT);
        line("name: " + Written.text(bank.name()));
        bank.label().ifPresent(v -> line("label: " + Written.text(v)));
        bank.site().ifPresent(v -> line("site: " + Written.text(v)));
        bank.note().ifPresent(v -> line("note: " + Written.text(v)));
        line("standard: " + Words.of(Words.STANDARDS, bank.standard()));
        line("system: " + SupplyWriter.system(bank.system(), spelling));
        items("unit-types", bank.unitTypes().stream().map(this::unitType).toList());
        items("fuse-types", bank.fuseTypes().stream().map(this::fuseType).toList());
        items("switch-types", bank.switchTypes().stream().map(this::switchType).toList());
        items(spelling.key("stages"), bank.stages().stream().map(this::stage).toList());
        items("protection", bank.protection().stream().map(this::protection).toList());
        bank.control().ifPresent(c -> line("control: " + SupplyWriter.control(c)));
        bank.load().ifPresent(l -> line("load: " + SupplyWriter.load(l)));
        bank.isolation().ifPresent(i -> new IsolationWriter(spelling, out).write(i));
        items("positions", bank.units().stream().map(this::unit).toList());
        items("spares", bank.spares().stream().map(this::spare).toList());
    }

    private void line(String text) {
        out.append(text).append('\n');
    }

    private void items(String key, List<Flow> items) {
        if (!items.isEmpty()) {
            line(key + ":");
            items.forEach(item -> line("  - " + item.print()));
        }
    }

    private Flow unitType(UnitType u) {
        Flow flow = new Flow()
                .text("name", u.name())
                .text("label", u.label())
                .text("note", u.note())
                .quantity("rating", u.ratedVars(), REACTIVE_POWER)
                .quantity("voltage", u.ratedVolts(), VOLTAGE)
                .quantity("frequency", u.ratedHertz(), FREQUENCY)
                .raw(
                        "tolerance",
                        "[" + Written.quantity(u.tolerance().low(), FRACTION) + ", "
                                + (u.tolerance().high() > 0.0 ? "+" : "")
                                + Written.quantity(u.tolerance().high(), FRACTION) + "]");
        u.threePhase()
                .ifPresent(i -> flow.raw("phases", "3")
                        .word("internal", Optional.of(spelling.word(Words.of(Words.INTERNALS, i)))));
        u.construction()
                .ifPresent(c -> flow.raw("sections", String.valueOf(c.sections()))
                        .raw("elements", String.valueOf(c.elements()))
                        .word("element-fuses", Optional.of(Words.of(Words.ELEMENT_FUSES, c.internallyFused()))));
        u.discharge().ifPresent(d -> {
            switch (d) {
                case DischargeDevice.Resistor r -> flow.quantity("discharge-resistance", r.ohms(), RESISTANCE);
                case DischargeDevice.Rated r ->
                    flow.raw(
                            "discharge",
                            new Flow()
                                    .quantity("to", r.volts(), VOLTAGE)
                                    .quantity("within", r.seconds(), TIME)
                                    .print());
            }
        });
        return flow.count("bushings", u.bushings())
                .quantity("bil", u.bilVolts(), VOLTAGE)
                .quantity("mass", u.massKilograms(), MASS);
    }

    private Flow fuseType(FuseType f) {
        boolean ratingFollows = f.link()
                .map(TypeReader::linkAmperes)
                .filter(f.ratedAmperes()::equals)
                .isPresent();
        return new Flow()
                .text("name", f.name())
                .text("note", f.note())
                .word("kind", Optional.of(Words.of(Words.FUSE_KINDS, f.kind())))
                .text("link", f.link())
                .quantity("rating", ratingFollows ? OptionalDouble.empty() : f.ratedAmperes(), CURRENT)
                .quantity("voltage", f.ratedVolts(), VOLTAGE)
                .quantity("maximum-parallel-energy", f.maximumParallelJoules(), ENERGY)
                .quantity("interrupting", f.interruptingAmperes(), CURRENT)
                .quantity("melting-i2t", f.meltingAmpereSquaredSeconds(), CURRENT_SQUARED_TIME)
                .quantity("clearing-i2t", f.clearingAmpereSquaredSeconds(), CURRENT_SQUARED_TIME);
    }

    private Flow switchType(SwitchType s) {
        return new Flow()
                .text("name", s.name())
                .text("note", s.note())
                .quantity("voltage", s.ratedVolts(), VOLTAGE)
                .quantity("current", s.ratedAmperes(), CURRENT)
                .quantity("inrush-peak", s.inrushPeakAmperes(), CURRENT)
                .quantity("inrush-frequency", s.inrushHertz(), FREQUENCY)
                .quantity("outrush-product", s.outrushAmpereHertz(), CURRENT_FREQUENCY)
                .quantity("capacitive-current", s.capacitiveAmperes(), CURRENT);
    }

    private Flow stage(Stage s) {
        return layout(
                        new Flow()
                                .text("name", s.name())
                                .text("label", s.label())
                                .text("note", s.note())
                                .word(
                                        "connection",
                                        Optional.of(spelling.word(s.connection().code())))
                                .text("switch", s.switchName()),
                        s.layout())
                .raw(
                        "second",
                        s.second().map(second -> layout(new Flow(), second).print()))
                .text("unit", s.unit().name())
                .text("fuse", s.fuse().map(FuseType::name))
                .text("line-fuse", s.lineFuse().map(FuseType::name))
                .raw("reactor", s.reactor().map(BankWriter::reactor))
                .quantity("bus-length", s.busMetres(), LENGTH)
                .quantity("stray-inductance", s.strayHenries(), INDUCTANCE)
                .raw("discharge-path", s.dischargePath().map(BankWriter::dischargePath));
    }

    private static Flow layout(Flow flow, LegLayout layout) {
        return flow.raw("strings", String.valueOf(layout.strings()))
                .raw("groups", String.valueOf(layout.groups()))
                .raw("units", String.valueOf(layout.units()));
    }

    private static String reactor(Reactor r) {
        return new Flow()
                .quantity("inductance", r.henries(), INDUCTANCE)
                .word("position", Optional.of(Words.of(Words.REACTOR_POSITIONS, r.position())))
                .word("purpose", Optional.of(Words.of(Words.REACTOR_PURPOSES, r.purpose())))
                .quantity("resistance", r.resistanceOhms(), RESISTANCE)
                .quantity("current", r.ratedAmperes(), CURRENT)
                .quantity("peak-current", r.peakAmperes(), CURRENT)
                .print();
    }

    private static String dischargePath(DischargePath p) {
        return new Flow()
                .word("kind", Optional.of(Words.of(Words.PATH_KINDS, p.kind())))
                .word("between", Optional.of(Words.of(Words.PATH_PLACES, p.between())))
                .quantity("resistance", p.resistanceOhms(), RESISTANCE)
                .quantity("inductance", p.henries(), INDUCTANCE)
                .print();
    }

    private Flow protection(Protection p) {
        Dimension dimension = p.senses().dimension();
        return new Flow()
                .text(spelling.key("stage"), p.stage())
                .word("senses", Optional.of(p.senses().code()))
                .raw("ratio", p.ratio().map(Written::ratio))
                .quantity("alarm", p.alarm(), dimension)
                .quantity("trip", p.trip(), dimension)
                .raw("primary", p.settingsArePrimary() ? Optional.of("true") : Optional.empty())
                .quantity("delay", p.delaySeconds(), TIME)
                .text("note", p.note());
    }

    private Flow unit(KnownUnit u) {
        return new Flow()
                .text("at", u.at().name())
                .text("serial", u.serial())
                .quantity("capacitance", u.capacitanceFarads(), CAPACITANCE)
                .count("made", u.made())
                .text("label", u.label())
                .text("note", u.note());
    }

    private Flow spare(Spare s) {
        return new Flow()
                .text("serial", s.serial())
                .text("unit", s.unit().name())
                .quantity("capacitance", s.capacitanceFarads(), CAPACITANCE)
                .text("note", s.note());
    }

    /** A mapping on one line. */
    static final class Flow {
        private final List<String> parts = new ArrayList<>();

        Flow raw(String key, String value) {
            parts.add(key + ": " + value);
            return this;
        }

        Flow raw(String key, Optional<String> value) {
            value.ifPresent(v -> raw(key, v));
            return this;
        }

        Flow word(String key, Optional<String> value) {
            return raw(key, value);
        }

        Flow text(String key, String value) {
            return raw(key, Written.text(value));
        }

        Flow text(String key, Optional<String> value) {
            value.ifPresent(v -> text(key, v));
            return this;
        }

        Flow texts(String key, List<String> values) {
            return raw(key, Written.list(values));
        }

        Flow quantity(String key, double si, Dimension dimension) {
            return raw(key, Written.quantity(si, dimension));
        }

        Flow quantity(String key, OptionalDouble si, Dimension dimension) {
            si.ifPresent(v -> quantity(key, v, dimension));
            return this;
        }

        Flow number(String key, OptionalDouble value) {
            value.ifPresent(v -> raw(key, Written.number(v)));
            return this;
        }

        Flow count(String key, OptionalInt value) {
            value.ifPresent(v -> raw(key, String.valueOf(v)));
            return this;
        }

        Flow flag(String key, boolean value) {
            return value ? raw(key, "true") : this;
        }

        String print() {
            return parts.stream().collect(Collectors.joining(", ", "{", "}"));
        }
    }
}
