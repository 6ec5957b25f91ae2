package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.CAPACITANCE;
import static org.varwright.quantity.Dimension.CURRENT;
import static org.varwright.quantity.Dimension.CURRENT_FREQUENCY;
import static org.varwright.quantity.Dimension.CURRENT_SQUARED_TIME;
import static org.varwright.quantity.Dimension.ENERGY;
import static org.varwright.quantity.Dimension.FRACTION;
import static org.varwright.quantity.Dimension.FREQUENCY;
import static org.varwright.quantity.Dimension.MASS;
import static org.varwright.quantity.Dimension.REACTIVE_POWER;
import static org.varwright.quantity.Dimension.RESISTANCE;
import static org.varwright.quantity.Dimension.TIME;
import static org.varwright.quantity.Dimension.VOLTAGE;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.varwright.bank.Construction;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.FuseType;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.Spare;
import org.varwright.bank.SwitchType;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;
import org.varwright.quantity.Dimension;

/** Reads types of unit, fuse and switch, units in place and spares. */
final class TypeReader {
    private static final Pattern LINK = Pattern.compile("([0-9]{1,4})\\s*[A-Za-z]{0,3}");

    private TypeReader() {}

    static Optional<UnitType> unitType(Fields f) {
        String name = f.name("name");
        Optional<String> label = f.optionalText("label");
        Optional<String> note = f.optionalText("note");
        double vars = f.quantity("rating", REACTIVE_POWER, 10.0, 1e8);
        double volts = f.quantity("voltage", VOLTAGE, 10.0, 1e6);
        double hertz = f.quantity("frequency", FREQUENCY, 10.0, 1000.0);
        Tolerance tolerance = tolerance(f);
        boolean threePhase = f.optionalChoice("phases", Words.PHASES).orElse(1) == 3;
        Optional<InternalConnection> internal = f.optionalChoice("internal", Words.INTERNALS);
        if (threePhase && internal.isEmpty()) {
            f.error(Message.KEYS_TOGETHER, "phases", "phases: 3", "internal");
        }
        if (!threePhase && internal.isPresent()) {
            f.error(Message.KEY_DOES_NOT_FIT, "internal", "internal", "a single-phase unit", "write \"phases: 3\"");
        }
        Optional<Construction> construction = construction(f);
        Optional<DischargeDevice> discharge = discharge(f, volts);
        var bushings = f.optionalCount("bushings", 1, 4);
        OptionalDouble bil = f.optionalQuantity("bil", VOLTAGE, 1e3, 5e6);
        OptionalDouble mass = f.optionalQuantity("mass", MASS, 0.1, 5000.0);
        return f.finish(() -> new UnitType(
                name,
                vars,
                volts,
                hertz,
                tolerance,
                construction,
                discharge,
                bushings,
                bil,
                mass,
                internal,
                label,
                note));
    }

    private static Tolerance tolerance(Fields f) {
        Optional<List<Tree>> pair = f.pair("tolerance");
        if (pair.isEmpty()) {
            return new Tolerance(0.0, 0.0);
        }
        double low = fraction(pair.get().get(0), f);
        double high = fraction(pair.get().get(1), f);
        boolean ordered = low <= 0.0 && high >= 0.0 && low >= -0.5 && high <= 0.5;
        if (!ordered && !Double.isNaN(low) && !Double.isNaN(high)) {
            f.error(Message.TOLERANCE_ORDER, "tolerance", FRACTION.format(low), FRACTION.format(high));
        }
        return new Tolerance(low + 0.0, high + 0.0);
    }

    private static double fraction(Tree tree, Fields f) {
        if (tree instanceof Tree.Scalar scalar && !scalar.isNothing()) {
            double value = Quantities.read(scalar, FRACTION, -1.0, 1.0, f.findings());
            return value == 0.0 ? 0.0 : value;
        }
        if (!(tree instanceof Tree.Unreadable)) {
            f.findings().error(Message.EXPECTED_TEXT, tree.place(), tree.describe(), FRACTION.example());
        }
        return Double.NaN;
    }

    private static Optional<Construction> construction(Fields f) {
        List<String> keys = List.of("sections", "elements", "element-fuses");
        Optional<String> there = keys.stream().filter(f::has).findFirst();
        var sections = f.optionalCount("sections", 1, 1000);
        var elements = f.optionalCount("elements", 1, 1000);
        Optional<Boolean> fused = f.optionalChoice("element-fuses", Words.ELEMENT_FUSES);
        if (there.isPresent()) {
            keys.stream()
                    .filter(k -> !f.has(k))
                    .forEach(missing -> f.error(Message.KEYS_TOGETHER, there.get(), there.get(), missing));
        }
        return sections.isPresent() && elements.isPresent() && fused.isPresent()
                ? Optional.of(new Construction(sections.getAsInt(), elements.getAsInt(), fused.get()))
                : Optional.empty();
    }

    private static Optional<DischargeDevice> discharge(Fields f, double ratedVolts) {
        OptionalDouble ohms = f.optionalQuantity("discharge-resistance", RESISTANCE, 100.0, 1e11);
        Optional<DischargeDevice> rated = f.optionalChild("discharge", Section.DISCHARGE)
                .flatMap(d -> {
                    double volts = d.quantity("to", VOLTAGE, 1.0, Double.isNaN(ratedVolts) ? 1e6 : ratedVolts);
                    double seconds = d.quantity("within", TIME, 1.0, 86400.0);
                    return d.finish(() -> new DischargeDevice.Rated(volts, seconds));
                });
        if (ohms.isPresent() && f.has("discharge")) {
            f.error(Message.EITHER_KEY, "discharge", "\"discharge-resistance\" and \"discharge\"");
        }
        return ohms.isPresent() ? Optional.of(new DischargeDevice.Resistor(ohms.getAsDouble())) : rated;
    }

    static Optional<FuseType> fuseType(Fields f) {
        String name = f.name("name");
        Optional<String> note = f.optionalText("note");
        FuseType.Kind kind = f.choice("kind", Words.FUSE_KINDS);
        Optional<String> link = f.optionalWord("link");
        OptionalDouble rating = f.optionalQuantity("rating", CURRENT, 0.1, 1e4);
        if (!f.has("link") && !f.has("rating")) {
            f.error(Message.ONE_OF_KEYS, "name", "\"link\" nor \"rating\"", "link: 65T");
        }
        OptionalDouble volts = f.optionalQuantity("voltage", VOLTAGE, 10.0, 1e6);
        OptionalDouble joules = f.optionalQuantity("maximum-parallel-energy", ENERGY, 1.0, 1e7);
        OptionalDouble interrupting = f.optionalQuantity("interrupting", CURRENT, 1.0, 1e6);
        OptionalDouble melting = f.optionalQuantity("melting-i2t", CURRENT_SQUARED_TIME, 1e-3, 1e12);
        OptionalDouble clearing = f.optionalQuantity("clearing-i2t", CURRENT_SQUARED_TIME, 1e-3, 1e12);
        if (melting.isPresent() && clearing.isPresent() && melting.getAsDouble() > clearing.getAsDouble()) {
            f.error(
                    Message.MELTING_ABOVE_CLEARING,
                    "melting-i2t",
                    CURRENT_SQUARED_TIME.format(melting.getAsDouble()),
                    CURRENT_SQUARED_TIME.format(clearing.getAsDouble()));
        }
        OptionalDouble named = link.map(TypeReader::linkAmperes).orElse(OptionalDouble.empty());
        if (named.isPresent() && rating.isPresent() && Math.abs(named.getAsDouble() - rating.getAsDouble()) > 1e-9) {
            f.error(
                    Message.LINK_AGAINST_RATING,
                    "rating",
                    link.orElse(""),
                    CURRENT.format(named.getAsDouble()),
                    CURRENT.format(rating.getAsDouble()));
        }
        OptionalDouble amperes = rating.isPresent() ? rating : named;
        return f.finish(
                () -> new FuseType(name, kind, link, amperes, volts, joules, interrupting, melting, clearing, note));
    }

    static Optional<SwitchType> switchType(Fields f) {
        String name = f.name("name");
        Optional<String> note = f.optionalText("note");
        OptionalDouble volts = f.optionalQuantity("voltage", VOLTAGE, 10.0, 1.5e6);
        OptionalDouble amperes = f.optionalQuantity("current", CURRENT, 1.0, 1e5);
        OptionalDouble peak = f.optionalQuantity("inrush-peak", CURRENT, 1.0, 1e7);
        OptionalDouble hertz = f.optionalQuantity("inrush-frequency", FREQUENCY, 1.0, 1e7);
        f.together("inrush-peak", "inrush-frequency");
        OptionalDouble product = f.optionalQuantity("outrush-product", CURRENT_FREQUENCY, 1.0, 1e12);
        OptionalDouble capacitive = f.optionalQuantity("capacitive-current", CURRENT, 1.0, 1e5);
        return f.finish(() -> new SwitchType(name, volts, amperes, peak, hertz, product, capacitive, note));
    }

    /** The rated current that the name of a link tells, such as 65 A of {@code 65T}. */
    static OptionalDouble linkAmperes(String link) {
        Matcher matcher = LINK.matcher(link);
        return matcher.matches() && Integer.parseInt(matcher.group(1)) > 0
                ? OptionalDouble.of(Integer.parseInt(matcher.group(1)))
                : OptionalDouble.empty();
    }

    static Optional<Draft.UnitNote> position(Fields f) {
        String at = f.word("at");
        Optional<String> serial = f.optionalWord("serial");
        OptionalDouble farads = f.optionalQuantity("capacitance", CAPACITANCE, 1e-12, 1.0);
        var made = f.optionalCount("made", 1900, 2100);
        Optional<String> label = f.optionalText("label");
        Optional<String> note = f.optionalText("note");
        return f.finish(() -> new Draft.UnitNote(at, serial, farads, made, label, note));
    }

    static Optional<Spare> spare(Fields f, Declared declared, List<Item<UnitType>> types) {
        String serial = f.word("serial");
        String type = f.reference("unit", "unit type", declared.unitTypes());
        OptionalDouble farads = f.optionalQuantity("capacitance", Dimension.CAPACITANCE, 1e-12, 1.0);
        Optional<String> note = f.optionalText("note");
        Optional<UnitType> unit = types.stream()
                .map(Item::value)
                .filter(t -> t.name().equals(type))
                .findFirst();
        return f.finish(() -> unit.map(u -> new Spare(serial, u, farads, note))).flatMap(s -> s);
    }
}
