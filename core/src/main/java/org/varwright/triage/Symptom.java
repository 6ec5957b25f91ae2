package org.varwright.triage;

import java.util.List;
import java.util.stream.Collectors;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** What was reported or seen. */
public enum Symptom {
    UNBALANCE_ALARM("unbalance-alarm", "unbalance alarm"),
    UNBALANCE_TRIP("unbalance-trip", "unbalance trip"),
    OVERCURRENT_TRIP("overcurrent-trip", "overcurrent trip"),
    OVERVOLTAGE("overvoltage", "overvoltage alarm or trip"),
    UNDERVOLTAGE("undervoltage", "undervoltage trip"),
    LOSS_OF_VOLTAGE("loss-of-voltage", "loss of voltage"),
    BLOWN_FUSE("blown-fuse", "operated fuse seen"),
    FUSE_INDICATOR("fuse-indicator", "indicator of a fuse"),
    STAGE_WONT_CLOSE("wont-close", "a switch does not close"),
    STAGE_WONT_OPEN("wont-open", "a switch does not open"),
    LOW_POWER_FACTOR("low-power-factor", "power factor low, bill high"),
    HUNTING("switching-too-often", "switches too often"),
    HOT_UNIT("hot-unit", "hot unit or connection"),
    BULGED_UNIT("bulged-unit", "bulged unit"),
    LEAKING_UNIT("leaking-unit", "leaking unit"),
    NOISE("noise", "noise"),
    CONTROL_FUSE("control-fuse", "blown control fuse"),
    CONTROLLER_DARK("controller-dark", "controller dark"),
    SELECTOR_IN_MANUAL("selector-in-manual", "selector found in manual or off"),
    SWITCH_FAULT("switch-fault", "contactor or switch damaged or slow"),
    CONTROL_TRANSFORMER("control-transformer", "control transformer faulty"),
    VOLTAGE_TRANSFORMER_FUSE("voltage-transformer-fuse", "fuse of a voltage transformer operated"),
    RESTRIKE("restrike", "a record says restrike");

    private final String code;
    private final String words;

    Symptom(String code, String words) {
        this.code = code;
        this.words = words;
    }

    /** The word in requests and on the command line. */
    public String code() {
        return code;
    }

    public String words() {
        return words;
    }

    /** All words, in order. */
    public static List<String> codes() {
        return List.of(values()).stream().map(Symptom::code).toList();
    }

    /**
     * The symptom of a word.
     *
     * @throws VarwrightException {@code TRIAGE_SYMPTOM} with the words there are
     */
    public static Symptom require(String code) {
        return List.of(values()).stream()
                .filter(s -> s.code.equals(code.strip()))
                .findFirst()
                .orElseThrow(() -> new VarwrightException(
                        Message.TRIAGE_SYMPTOM,
                        new Place("", 0, 0, "symptom"),
                        code,
                        codes().stream().collect(Collectors.joining(", "))));
    }
}
