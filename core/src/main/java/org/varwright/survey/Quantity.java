package org.varwright.survey;

import java.util.List;
import java.util.Locale;
import org.varwright.quantity.Dimension;

/** A kind of value in a table, with the unit of its bare numbers and the names of its column. */
enum Quantity {
    CAPACITANCE(
            "capacitance",
            Dimension.CAPACITANCE,
            "µF",
            List.of("capacitance", "cap", "c", "measured capacitance", "capacity")),
    RESISTANCE(
            "resistance",
            Dimension.RESISTANCE,
            "MΩ",
            List.of("resistance", "discharge resistance", "discharge resistor", "resistor", "r")),
    INSULATION(
            "insulation",
            Dimension.RESISTANCE,
            "MΩ",
            List.of("insulation", "insulation resistance", "insulation to case", "case insulation", "ir")),
    FUSE("fuse", Dimension.RESISTANCE, "mΩ", List.of("fuse", "fuse resistance", "link", "link resistance")),
    TEMPERATURE("temperature", Dimension.TEMPERATURE, "°C", List.of("temperature", "temp", "t", "unit temperature")),
    CASE_TEMPERATURE(
            "case temperature in service",
            Dimension.TEMPERATURE,
            "°C",
            List.of("case temperature", "case temp", "case temperature in service", "hot spot", "infrared")),
    INDUCTANCE("inductance", Dimension.INDUCTANCE, "µH", List.of("inductance", "l", "reactor inductance")),
    CONTACT(
            "contact resistance",
            Dimension.RESISTANCE,
            "µΩ",
            List.of("contact", "contact resistance", "pole resistance", "main contact resistance")),
    CURRENT("current", Dimension.CURRENT, "A", List.of("current", "leg current", "amps", "line current")),
    TEST_VOLTS("test voltage", Dimension.VOLTAGE, "V", List.of("test voltage", "applied voltage", "test volts")),
    TEST_AMPERES("test current", Dimension.CURRENT, "A", List.of("test current", "test amperes", "test amps")),
    TEST_HERTZ("test frequency", Dimension.FREQUENCY, "Hz", List.of("test frequency", "test hertz"));

    private final String word;
    private final Dimension dimension;
    private final String bareUnit;

    @SuppressWarnings("ImmutableEnumChecker") // unmodifiable: List.of
    private final List<String> names;

    Quantity(String word, Dimension dimension, String bareUnit, List<String> names) {
        this.word = word;
        this.dimension = dimension;
        this.bareUnit = bareUnit;
        this.names = names;
    }

    String word() {
        return word;
    }

    Dimension dimension() {
        return dimension;
    }

    String bareUnit() {
        return bareUnit;
    }

    boolean isNamed(String plainName) {
        return names.contains(plainName.toLowerCase(Locale.ROOT));
    }

    /** Allowed at all: anything outside is a slip of the pen, not a reading. */
    double most() {
        return switch (this) {
            case CAPACITANCE -> 1.0;
            case RESISTANCE, INSULATION, FUSE -> 1e15;
            case TEMPERATURE, CASE_TEMPERATURE -> 120.0;
            case INDUCTANCE -> 10.0;
            case CONTACT -> 1e3;
            case TEST_VOLTS -> 1e5;
            case TEST_AMPERES, CURRENT -> 1e4;
            case TEST_HERTZ -> 1e5;
        };
    }

    double least() {
        return this == TEMPERATURE || this == CASE_TEMPERATURE ? -60.0 : 0.0;
    }
}
