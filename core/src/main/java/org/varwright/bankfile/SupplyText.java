package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.ACTIVE_POWER;
import static org.varwright.quantity.Dimension.CURRENT;
import static org.varwright.quantity.Dimension.CURRENT_FREQUENCY;
import static org.varwright.quantity.Dimension.FRACTION;
import static org.varwright.quantity.Dimension.FREQUENCY;
import static org.varwright.quantity.Dimension.INDUCTANCE;
import static org.varwright.quantity.Dimension.LENGTH;
import static org.varwright.quantity.Dimension.REACTIVE_POWER;
import static org.varwright.quantity.Dimension.RESISTANCE;
import static org.varwright.quantity.Dimension.TIME;
import static org.varwright.quantity.Dimension.VOLTAGE;
import static org.varwright.quantity.Dimension.digits;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.varwright.bank.Control;
import org.varwright.bank.DischargePath;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Load;
import org.varwright.bank.Stage;
import org.varwright.bank.SwitchType;
import org.varwright.bank.TransformerRatio;
import org.varwright.quantity.Dimension;

/** What a file may leave out, in words: switch types, wiring of a stage, harmonics, control, load. */
final class SupplyText {
    private SupplyText() {}

    static String switchType(SwitchType type) {
        List<String> parts = new ArrayList<>();
        add(parts, "", type.ratedVolts(), VOLTAGE, "");
        add(parts, "", type.ratedAmperes(), CURRENT, "");
        add(parts, "capacitor current up to ", type.capacitiveAmperes(), CURRENT, "");
        type.inrushPeakAmperes()
                .ifPresent(peak -> parts.add("makes an inrush of " + CURRENT.format(peak) + " at "
                        + FREQUENCY.format(type.inrushHertz().orElseThrow())));
        add(parts, "bears an outrush of ", type.outrushAmpereHertz(), CURRENT_FREQUENCY, "");
        return type.name() + ": " + (parts.isEmpty() ? "nothing known of it" : String.join(", ", parts));
    }

    /** What stands between bus and units, each part after a comma; empty where nothing is known of it. */
    static String wiring(Stage stage) {
        List<String> parts = new ArrayList<>();
        stage.lineFuse().ifPresent(f -> parts.add("line fuse " + f.name()));
        add(parts, "", stage.busMetres(), LENGTH, " of bus");
        add(parts, "", stage.strayHenries(), INDUCTANCE, " of wiring");
        stage.dischargePath().ifPresent(p -> parts.add(path(p)));
        return parts.stream().map(p -> ", " + p).collect(Collectors.joining());
    }

    private static String path(DischargePath path) {
        String what = switch (path.kind()) {
            case TRANSFORMER -> "a voltage transformer";
            case COIL -> "a discharge coil";
        };
        String where = switch (path.between()) {
            case LINES -> "between each two lines";
            case LINE_TO_NEUTRAL -> "from each line to the neutral";
        };
        return what + " of " + RESISTANCE.format(path.resistanceOhms()) + " " + where;
    }

    static String harmonics(List<Harmonic> harmonics) {
        return harmonics.stream().map(SupplyText::harmonic).collect(Collectors.joining("; "));
    }

    private static String harmonic(Harmonic h) {
        List<String> parts = new ArrayList<>();
        add(parts, "", h.voltageFraction(), FRACTION, " of voltage");
        add(parts, "", h.currentAmperes(), CURRENT, " injected");
        return "order " + h.order() + ": " + String.join(", ", parts);
    }

    static String control(Control control) {
        List<String> parts = new ArrayList<>();
        control.senses().ifPresent(s -> {
            parts.add("senses " + Words.of(Words.CONTROLS, s));
            control.ratio().ifPresent(r -> parts.add("voltage transformer " + ratio(r)));
            control.currentRatio().ifPresent(r -> parts.add("current transformer " + ratio(r)));
            threshold(parts, "on at ", control.on(), s);
            threshold(parts, "off at ", control.off(), s);
        });
        add(parts, "closes again after ", control.recloseDelaySeconds(), TIME, "");
        return parts.isEmpty() ? "nothing known of it" : String.join(", ", parts);
    }

    private static String ratio(TransformerRatio ratio) {
        return digits(ratio.primary(), 6) + ":" + digits(ratio.secondary(), 6);
    }

    private static void threshold(List<String> parts, String words, OptionalDouble value, Control.Senses senses) {
        value.ifPresent(v -> parts.add(words
                + switch (senses) {
                    case VOLTAGE -> VOLTAGE.format(v);
                    case CURRENT -> CURRENT.format(v);
                    case KVAR -> REACTIVE_POWER.format(v);
                    case POWER_FACTOR, TIME -> digits(v, 4);
                }));
    }

    static String load(Load load) {
        List<String> parts = new ArrayList<>();
        parts.add(ACTIVE_POWER.format(load.watts()) + " and " + REACTIVE_POWER.format(load.vars()));
        load.lightWatts()
                .ifPresent(w -> parts.add("at light load " + ACTIVE_POWER.format(w) + " and "
                        + REACTIVE_POWER.format(load.lightVars().orElseThrow())));
        load.wantedPowerFactor().ifPresent(p -> parts.add("wanted power factor " + digits(p, 4)));
        return String.join("; ", parts);
    }

    private static void add(
            List<String> parts, String before, OptionalDouble value, Dimension dimension, String after) {
        value.ifPresent(v -> parts.add(before + dimension.format(v) + after));
    }
}
