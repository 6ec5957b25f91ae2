package org.varwright.triage;

import java.util.ArrayList;
import java.util.List;

/** Which records to fetch before they are overwritten. */
final class Fetch {
    private Fetch() {}

    static List<String> of(Scene scene, Symptom symptom) {
        String relay = Scene.named(scene.sensorThings(), "the bank");
        List<String> all = new ArrayList<>();
        switch (symptom) {
            case UNBALANCE_ALARM,
                    UNBALANCE_TRIP,
                    OVERCURRENT_TRIP,
                    OVERVOLTAGE,
                    RESTRIKE,
                    STAGE_WONT_OPEN,
                    SWITCH_FAULT,
                    VOLTAGE_TRANSFORMER_FUSE -> {
                all.add("the disturbance record of that moment from the relay of " + relay
                        + "; the command record reads it");
                all.add("the relay's list of events with times, before anything is reset");
            }
            case UNDERVOLTAGE, LOSS_OF_VOLTAGE ->
                all.add("the list of events of the supply and the relay of the last hour");
            case BLOWN_FUSE, FUSE_INDICATOR, HOT_UNIT, BULGED_UNIT, LEAKING_UNIT, NOISE ->
                all.add("readings of " + relay + " since the last visit: when did they step?");
            case STAGE_WONT_CLOSE,
                    LOW_POWER_FACTOR,
                    HUNTING,
                    CONTROL_FUSE,
                    CONTROLLER_DARK,
                    SELECTOR_IN_MANUAL,
                    CONTROL_TRANSFORMER ->
                all.add(
                        "the controller's log and counters, and a week of voltage, current and power factor at the bus");
        }
        all.add(
                "the report of the last visit: readings of every unit, what was exchanged, how the selectors were left");
        return List.copyOf(all);
    }
}
