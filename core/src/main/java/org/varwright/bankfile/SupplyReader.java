package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.ACTIVE_POWER;
import static org.varwright.quantity.Dimension.APPARENT_POWER;
import static org.varwright.quantity.Dimension.CURRENT;
import static org.varwright.quantity.Dimension.FRACTION;
import static org.varwright.quantity.Dimension.FREQUENCY;
import static org.varwright.quantity.Dimension.REACTIVE_POWER;
import static org.varwright.quantity.Dimension.TIME;
import static org.varwright.quantity.Dimension.VOLTAGE;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Control;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Load;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.TransformerRatio;
import org.varwright.problem.Message;

/** Reads the supply with its harmonics, the load and the control that answers to both. */
final class SupplyReader {
    private static final int HIGHEST_ORDER = 100;
    private static final double MOST_POWER = 1e10;

    private SupplyReader() {}

    static Optional<SupplySystem> system(Fields f) {
        double volts = f.quantity("voltage", VOLTAGE, 100.0, 1.2e6);
        OptionalDouble maximum = f.optionalQuantity("maximum-voltage", VOLTAGE, 100.0, 1.5e6);
        double hertz = f.quantity("frequency", FREQUENCY, 10.0, 1000.0);
        OptionalDouble shortCircuit = f.optionalQuantity("short-circuit", APPARENT_POWER, 1e3, 1e12);
        OptionalDouble xOverR = f.optionalNumber("x-over-r", 0.01, 1000.0);
        SystemGrounding grounding = f.choice("grounding", Words.GROUNDINGS);
        List<Item<Harmonic>> harmonics = f.each("harmonics", Section.HARMONIC, SupplyReader::harmonic);
        SupplyCheck.harmonics(harmonics, f.findings());
        List<Harmonic> byOrder = harmonics.stream()
                .map(Item::value)
                .sorted(Comparator.comparingInt(Harmonic::order))
                .toList();
        return f.finish(() -> new SupplySystem(volts, maximum, hertz, shortCircuit, xOverR, grounding, byOrder));
    }

    private static Optional<Harmonic> harmonic(Fields f) {
        int order = f.count("order", 2, HIGHEST_ORDER);
        OptionalDouble voltage = f.optionalQuantity("voltage", FRACTION, 0.0, 1.0);
        OptionalDouble current = f.optionalQuantity("current", CURRENT, 0.0, 1e5);
        if (!f.has("voltage") && !f.has("current")) {
            f.error(Message.ONE_OF_KEYS, "order", "\"voltage\" nor \"current\"", "voltage: 3 %");
        }
        return f.finish(() -> new Harmonic(order, voltage, current));
    }

    static Optional<Control> control(Fields f) {
        Optional<Control.Senses> senses = f.optionalChoice("senses", Words.CONTROLS);
        Optional<TransformerRatio> ratio = f.optionalRatio("ratio");
        Optional<TransformerRatio> currentRatio = f.optionalRatio("current-ratio");
        OptionalDouble on = threshold(f, "on", senses);
        OptionalDouble off = threshold(f, "off", senses);
        OptionalDouble reclose = f.optionalQuantity("reclose-delay", TIME, 0.0, 86400.0);
        Optional<String> note = f.optionalText("note");
        Control control = new Control(senses, ratio, currentRatio, on, off, reclose, note);
        SupplyCheck.control(control, f);
        return f.finish(() -> control);
    }

    /** A threshold in the unit of what is sensed; for a clock there is none. */
    private static OptionalDouble threshold(Fields f, String key, Optional<Control.Senses> senses) {
        if (f.has(key) && senses.isEmpty()) {
            f.error(Message.KEYS_TOGETHER, key, key, "senses");
        }
        if (senses.isEmpty()) {
            f.optionalScalar(key);
            return OptionalDouble.empty();
        }
        return switch (senses.get()) {
            case VOLTAGE -> f.optionalQuantity(key, VOLTAGE, 1.0, 1e6);
            case CURRENT -> f.optionalQuantity(key, CURRENT, 1e-3, 1e6);
            case KVAR -> f.optionalQuantity(key, REACTIVE_POWER, -MOST_POWER, MOST_POWER);
            case POWER_FACTOR -> f.optionalNumber(key, 0.1, 1.0);
            case TIME -> {
                if (f.has(key)) {
                    f.error(
                            Message.KEY_DOES_NOT_FIT,
                            key,
                            key,
                            "a control by time",
                            "write what it senses, or leave the threshold out");
                }
                f.optionalScalar(key);
                yield OptionalDouble.empty();
            }
        };
    }

    static Optional<Load> load(Fields f) {
        double watts = f.quantity("power", ACTIVE_POWER, 0.0, MOST_POWER);
        double vars = f.quantity("reactive", REACTIVE_POWER, -MOST_POWER, MOST_POWER);
        OptionalDouble lightWatts = f.optionalQuantity("light-power", ACTIVE_POWER, 0.0, MOST_POWER);
        OptionalDouble lightVars = f.optionalQuantity("light-reactive", REACTIVE_POWER, -MOST_POWER, MOST_POWER);
        f.together("light-power", "light-reactive");
        OptionalDouble wanted = f.optionalNumber("wanted-power-factor", 0.5, 1.0);
        Load load = new Load(watts, vars, lightWatts, lightVars, wanted);
        SupplyCheck.load(load, f);
        return f.finish(() -> load);
    }
}
