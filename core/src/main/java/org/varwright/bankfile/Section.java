package org.varwright.bankfile;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One kind of mapping in the format: its keys, each with an example for messages. The JSON Schema has the same keys; a test holds them together.
 *
 * @param name as under {@code $defs} in the schema
 * @param examples example by key, in the order in which the writer writes
 */
record Section(String name, Map<String, String> examples) {
    static final Section BANK = of(
            "bank",
            "format",
            "varwright/1",
            "name",
            "North yard bank 1",
            "label",
            "BANK 1",
            "site",
            "North yard",
            "note",
            "free text",
            "standard",
            "IEEE",
            "system",
            "{voltage: 13.8 kV, frequency: 60 Hz, grounding: solid}",
            "unit-types",
            "[{name: U300, …}]",
            "fuse-types",
            "[{name: F65, …}]",
            "switch-types",
            "[{name: V15, …}]",
            "stages",
            "[{name: stage 1, …}]",
            "protection",
            "[{stage: stage 1, senses: neutral-voltage, …}]",
            "control",
            "{senses: voltage}",
            "load",
            "{power: 2.4 MW, reactive: 1.9 Mvar}",
            "isolation",
            "{sources: […], devices: […], compartments: […]}",
            "positions",
            "[{at: stage 1/A/u1, serial: \"0007\"}]",
            "spares",
            "[{serial: \"0098\", unit: U300}]");
    static final Section SYSTEM = of(
            "system",
            "voltage",
            "13.8 kV",
            "maximum-voltage",
            "14.5 kV",
            "frequency",
            "60 Hz",
            "short-circuit",
            "280 MVA",
            "x-over-r",
            "11",
            "grounding",
            "solid",
            "harmonics",
            "[{order: 5, voltage: 3 %}]");
    static final Section HARMONIC = of("harmonic", "order", "5", "voltage", "3 %", "current", "14 A");
    static final Section UNIT_TYPE = of(
            "unit-type",
            "name",
            "U300",
            "label",
            "300 kvar",
            "note",
            "free text",
            "rating",
            "300 kvar",
            "voltage",
            "7.96 kV",
            "frequency",
            "60 Hz",
            "tolerance",
            "[0 %, +10 %]",
            "phases",
            "3",
            "internal",
            "delta",
            "sections",
            "4",
            "elements",
            "12",
            "element-fuses",
            "none",
            "discharge-resistance",
            "4.1 MΩ",
            "discharge",
            "{to: 50 V, within: 5 min}",
            "bushings",
            "2",
            "bil",
            "95 kV",
            "mass",
            "58 kg");
    static final Section DISCHARGE = of("discharge", "to", "50 V", "within", "5 min");
    static final Section FUSE_TYPE = of(
            "fuse-type",
            "name",
            "F65",
            "note",
            "free text",
            "kind",
            "expulsion",
            "link",
            "65T",
            "rating",
            "65 A",
            "voltage",
            "8.3 kV",
            "maximum-parallel-energy",
            "15 kJ",
            "interrupting",
            "10 kA",
            "melting-i2t",
            "4200 A²s",
            "clearing-i2t",
            "16000 A²s");
    static final Section SWITCH_TYPE = of(
            "switch-type",
            "name",
            "V15",
            "note",
            "free text",
            "voltage",
            "15.5 kV",
            "current",
            "200 A",
            "inrush-peak",
            "20 kA",
            "inrush-frequency",
            "4.2 kHz",
            "outrush-product",
            "20 kA·kHz",
            "capacitive-current",
            "160 A");
    static final Section STAGE = of(
            "stage",
            "name",
            "stage 1",
            "label",
            "STAGE 1",
            "note",
            "free text",
            "connection",
            "wye-ungrounded",
            "switch",
            "24-1",
            "strings",
            "1",
            "groups",
            "1",
            "units",
            "2",
            "second",
            "{units: 3}",
            "unit",
            "U300",
            "fuse",
            "F65",
            "line-fuse",
            "F100",
            "reactor",
            "{inductance: 45 uH, position: line}",
            "bus-length",
            "1.5 m",
            "stray-inductance",
            "3 uH",
            "discharge-path",
            "{kind: transformer, between: lines, resistance: 2.1 kΩ}");
    static final Section SECOND = of("second", "strings", "1", "groups", "1", "units", "3");
    static final Section REACTOR = of(
            "reactor",
            "inductance",
            "45 uH",
            "position",
            "line",
            "purpose",
            "inrush",
            "resistance",
            "2 mΩ",
            "current",
            "100 A",
            "peak-current",
            "8 kA");
    static final Section DISCHARGE_PATH = of(
            "discharge-path", "kind", "transformer", "between", "lines", "resistance", "2.1 kΩ", "inductance", "900 H");
    static final Section PROTECTION = of(
            "protection",
            "stage",
            "stage 1",
            "senses",
            "neutral-voltage",
            "ratio",
            "\"8400:120\"",
            "alarm",
            "6 V",
            "trip",
            "15 V",
            "primary",
            "true",
            "delay",
            "0.5 s",
            "note",
            "free text");
    static final Section CONTROL = of(
            "control",
            "senses",
            "voltage",
            "ratio",
            "\"7200:120\"",
            "current-ratio",
            "\"400:5\"",
            "on",
            "120.5 V",
            "off",
            "125 V",
            "reclose-delay",
            "5 min",
            "note",
            "free text");
    static final Section LOAD = of(
            "load",
            "power",
            "2.4 MW",
            "reactive",
            "1.9 Mvar",
            "light-power",
            "0.5 MW",
            "light-reactive",
            "0.2 Mvar",
            "wanted-power-factor",
            "0.97");
    static final Section ISOLATION = of(
            "isolation",
            "sources",
            "[{name: feeder, at: line}]",
            "devices",
            "[{name: 89-1, kind: disconnector, between: [line, bus]}]",
            "compartments",
            "[{name: bay 1, exposes: [bus]}]",
            "locks",
            "[{door: bay 1, key: K-1}]",
            "keys",
            "[{name: K-1, copies: 1}]",
            "exchanges",
            "[{name: exchange, in: [K-1], out: [K-2]}]",
            "interlocks",
            "[{device: 24-1, to: closed, requires: {43-1: [auto]}}]",
            "delays",
            "[{lock: {device: 43-1, key: K-1}, after: 5 min, open: [24-1]}]",
            "start",
            "{89-1: open}");
    static final Section SOURCE = of("source", "name", "feeder", "at", "line", "voltage", "120 V", "note", "free text");
    static final Section DEVICE = of(
            "device",
            "name",
            "89-1",
            "label",
            "89-1",
            "note",
            "free text",
            "kind",
            "disconnector",
            "between",
            "[line, bus]",
            "type",
            "V15",
            "positions",
            "[off, manual, auto]",
            "withdrawable",
            "true",
            "remote",
            "true",
            "indicates",
            "lamp",
            "seen-through",
            "window");
    static final Section COMPARTMENT =
            of("compartment", "name", "bay 1", "label", "BAY 1", "note", "free text", "exposes", "[bus]");
    static final Section LOCK = of(
            "lock",
            "device",
            "89-1",
            "door",
            "bay 1",
            "key",
            "K-1",
            "keys",
            "[K-1, K-2]",
            "holds",
            "open",
            "note",
            "free text");
    static final Section KEY = of("key", "name", "K-1", "copies", "2", "note", "free text");
    static final Section EXCHANGE =
            of("exchange", "name", "key exchange", "label", "KX-1", "note", "free text", "in", "[K-1]", "out", "[K-2]");
    static final Section INTERLOCK = of(
            "interlock", "device", "24-1", "to", "closed", "requires", "{43-1: [manual, auto]}", "note", "free text");
    static final Section DELAY = of(
            "delay",
            "lock",
            "{device: 43-1, key: K-1}",
            "move",
            "{device: 57-1, to: closed}",
            "after",
            "5 min",
            "open",
            "[24-1]",
            "note",
            "free text");
    static final Section DELAYED_LOCK = of("delayed-lock", "device", "43-1", "door", "bay 1", "key", "K-1");
    static final Section DELAYED_MOVE = of("delayed-move", "device", "57-1", "to", "closed");
    static final Section POSITION = of(
            "position",
            "at",
            "stage 1/A/u1",
            "serial",
            "\"0007\"",
            "capacitance",
            "12.71 uF",
            "made",
            "2016",
            "label",
            "0007",
            "note",
            "free text");
    static final Section SPARE =
            of("spare", "serial", "\"0098\"", "unit", "U300", "capacitance", "12.69 uF", "note", "free text");

    static final List<Section> ALL = List.of(
            BANK,
            SYSTEM,
            HARMONIC,
            UNIT_TYPE,
            DISCHARGE,
            FUSE_TYPE,
            SWITCH_TYPE,
            STAGE,
            SECOND,
            REACTOR,
            DISCHARGE_PATH,
            PROTECTION,
            CONTROL,
            LOAD,
            ISOLATION,
            SOURCE,
            DEVICE,
            COMPARTMENT,
            LOCK,
            KEY,
            EXCHANGE,
            INTERLOCK,
            DELAY,
            DELAYED_LOCK,
            DELAYED_MOVE,
            POSITION,
            SPARE);

    private static Section of(String name, String... keysAndExamples) {
        Map<String, String> examples = new LinkedHashMap<>();
        for (int i = 0; i < keysAndExamples.length; i += 2) {
            examples.put(keysAndExamples[i], keysAndExamples[i + 1]);
        }
        return new Section(name, Collections.unmodifiableMap(examples));
    }

    List<String> keys() {
        return List.copyOf(examples.keySet());
    }

    /** Keys that are read: these and the IEC words for some of them. */
    List<String> readableKeys() {
        List<String> keys = new ArrayList<>();
        for (String key : examples.keySet()) {
            keys.add(key);
            String iec = Words.IEC_KEYS.get(key);
            if (iec != null) {
                keys.add(iec);
            }
        }
        return keys;
    }

    String example(String key) {
        String example = examples.get(key);
        if (example == null) {
            throw new IllegalStateException("the section " + name + " has no key " + key);
        }
        return example;
    }
}
