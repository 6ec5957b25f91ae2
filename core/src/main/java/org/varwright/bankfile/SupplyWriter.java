package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.ACTIVE_POWER;
import static org.varwright.quantity.Dimension.APPARENT_POWER;
import static org.varwright.quantity.Dimension.CURRENT;
import static org.varwright.quantity.Dimension.FRACTION;
import static org.varwright.quantity.Dimension.FREQUENCY;
import static org.varwright.quantity.Dimension.REACTIVE_POWER;
import static org.varwright.quantity.Dimension.TIME;
import static org.varwright.quantity.Dimension.VOLTAGE;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.varwright.bank.Control;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Load;
import org.varwright.bank.SupplySystem;
import org.varwright.bankfile.BankWriter.Flow;

/** The supply, the load and the control as YAML. */
final class SupplyWriter {
    private SupplyWriter() {}

    static String system(SupplySystem s, Spelling spelling) {
        Flow flow = new Flow()
                .quantity("voltage", s.nominalVolts(), VOLTAGE)
                .quantity("maximum-voltage", s.maximumVolts(), VOLTAGE)
                .quantity("frequency", s.frequencyHertz(), FREQUENCY)
                .quantity("short-circuit", s.shortCircuitVoltAmperes(), APPARENT_POWER)
                .number("x-over-r", s.xOverR())
                .word(spelling.key("grounding"), Optional.of(Words.of(Words.GROUNDINGS, s.grounding())));
        if (!s.harmonics().isEmpty()) {
            flow.raw(
                    "harmonics",
                    s.harmonics().stream().map(SupplyWriter::harmonic).collect(Collectors.joining(", ", "[", "]")));
        }
        return flow.print();
    }

    private static String harmonic(Harmonic h) {
        return new Flow()
                .raw("order", String.valueOf(h.order()))
                .quantity("voltage", h.voltageFraction(), FRACTION)
                .quantity("current", h.currentAmperes(), CURRENT)
                .print();
    }

    static String control(Control c) {
        Flow flow = new Flow()
                .word("senses", c.senses().map(s -> Words.of(Words.CONTROLS, s)))
                .raw("ratio", c.ratio().map(Written::ratio))
                .raw("current-ratio", c.currentRatio().map(Written::ratio));
        c.senses().ifPresent(senses -> {
            threshold(flow, "on", c.on(), senses);
            threshold(flow, "off", c.off(), senses);
        });
        return flow.quantity("reclose-delay", c.recloseDelaySeconds(), TIME)
                .text("note", c.note())
                .print();
    }

    private static void threshold(Flow flow, String key, OptionalDouble value, Control.Senses senses) {
        switch (senses) {
            case VOLTAGE -> flow.quantity(key, value, VOLTAGE);
            case CURRENT -> flow.quantity(key, value, CURRENT);
            case KVAR -> flow.quantity(key, value, REACTIVE_POWER);
            case POWER_FACTOR, TIME -> flow.number(key, value);
        }
    }

    static String load(Load l) {
        return new Flow()
                .quantity("power", l.watts(), ACTIVE_POWER)
                .quantity("reactive", l.vars(), REACTIVE_POWER)
                .quantity("light-power", l.lightWatts(), ACTIVE_POWER)
                .quantity("light-reactive", l.lightVars(), REACTIVE_POWER)
                .number("wanted-power-factor", l.wantedPowerFactor())
                .print();
    }
}
