package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.ACTIVE_POWER;
import static org.varwright.quantity.Dimension.CURRENT;
import static org.varwright.quantity.Dimension.REACTIVE_POWER;
import static org.varwright.quantity.Dimension.VOLTAGE;
import static org.varwright.quantity.Dimension.digits;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.varwright.bank.Control;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Load;
import org.varwright.problem.Message;
import org.varwright.quantity.Dimension;

/** Holds harmonics, load and thresholds against themselves. */
final class SupplyCheck {
    private SupplyCheck() {}

    static void harmonics(List<Item<Harmonic>> harmonics, Findings findings) {
        Map<Integer, Integer> lines = new HashMap<>();
        for (Item<Harmonic> item : harmonics) {
            int order = item.value().order();
            int line = findings.place(item.path()).line();
            Integer first = lines.putIfAbsent(order, line);
            if (first != null) {
                findings.error(
                        Message.HARMONIC_TWICE,
                        findings.place(item.path() + ".order"),
                        String.valueOf(order),
                        String.valueOf(first));
            }
        }
    }

    static void load(Load load, Fields f) {
        notAbove(f, "light-power", load.lightWatts(), load.watts(), ACTIVE_POWER);
        notAbove(f, "light-reactive", load.lightVars(), load.vars(), REACTIVE_POWER);
    }

    private static void notAbove(Fields f, String key, OptionalDouble light, double full, Dimension dimension) {
        if (light.isPresent() && light.getAsDouble() > full) {
            f.error(Message.LIGHT_ABOVE_FULL, key, dimension.format(light.getAsDouble()), dimension.format(full));
        }
    }

    static void control(Control control, Fields f) {
        control.senses().ifPresent(senses -> {
            if (senses == Control.Senses.VOLTAGE && control.ratio().isEmpty()) {
                withoutRatio(f, "ratio", "7200:120");
            }
            if (senses == Control.Senses.CURRENT && control.currentRatio().isEmpty()) {
                withoutRatio(f, "current-ratio", "400:5");
            }
            if (control.on().isPresent() && control.off().isPresent()) {
                order(f, senses, control.on().getAsDouble(), control.off().getAsDouble());
            }
        });
    }

    private static void withoutRatio(Fields f, String ratio, String example) {
        for (String threshold : List.of("on", "off")) {
            if (f.has(threshold) && !f.has(ratio)) {
                f.error(Message.THRESHOLD_WITHOUT_RATIO, threshold, ratio, example);
            }
        }
    }

    /** A bank lifts voltage and power factor and takes load current and reactive power down: the order of the thresholds follows. */
    private static void order(Fields f, Control.Senses senses, double on, double off) {
        String sensed = Words.of(Words.CONTROLS, senses);
        if (on == off) {
            f.error(Message.THRESHOLDS_EQUAL, "off", shown(senses, on));
            return;
        }
        boolean onIsLower = switch (senses) {
            case VOLTAGE, POWER_FACTOR -> true;
            case KVAR, CURRENT -> false;
            case TIME -> on < off;
        };
        if (on < off != onIsLower) {
            f.error(
                    Message.THRESHOLDS_ORDER,
                    "on",
                    sensed,
                    shown(senses, on),
                    shown(senses, off),
                    onIsLower ? "below" : "above");
        }
    }

    private static String shown(Control.Senses senses, double value) {
        return switch (senses) {
            case VOLTAGE -> VOLTAGE.format(value);
            case CURRENT -> CURRENT.format(value);
            case KVAR -> REACTIVE_POWER.format(value);
            case POWER_FACTOR, TIME -> digits(value, 4);
        };
    }
}
