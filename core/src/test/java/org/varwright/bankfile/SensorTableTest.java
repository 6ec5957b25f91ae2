package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.network.Capacitances;
import org.varwright.network.Network;
import org.varwright.network.Supply;

/** Which sensor can stand where: the whole table. One that stands where nothing flows reads 0 whatever fails, and the bank would run on unwatched. */
class SensorTableTest {
    /** By where there is a neutral that floats, one that carries current to ground or to the other wye, and a bridge. */
    private static final Map<String, Set<String>> FITS = Map.of(
            "delta", Set.of(),
            "wye-grounded", Set.of("neutral-current", "phase-voltage"),
            "wye-ungrounded", Set.of("neutral-voltage", "phase-voltage"),
            "double-wye-grounded", Set.of("neutral-current", "neutral-differential", "phase-voltage"),
            "double-wye-ungrounded", Set.of("neutral-voltage", "neutral-current", "phase-voltage"),
            "bridge-grounded", Set.of("neutral-current", "bridge-current", "phase-voltage"),
            "bridge-ungrounded", Set.of("neutral-voltage", "bridge-current", "phase-voltage"));

    private static LimitBank bank(String connection, int groups, String senses) {
        String si = senses.endsWith("voltage") ? "V" : "A";
        return new LimitBank()
                .system("maximum-voltage: 11 kV, ", "")
                .stage("connection: " + connection + ", groups: " + groups + ", units: 1")
                .more("protection:\n  - {stage: S, senses: " + senses + ", ratio: \"100:5\", alarm: 1 " + si
                        + ", trip: 3 " + si + "}\n");
    }

    @Test
    void everySensorAtEveryConnection() {
        for (Connection connection : Connection.values()) {
            for (Protection.Senses senses : Protection.Senses.values()) {
                boolean fits = FITS.getOrDefault(connection.code(), Set.of()).contains(senses.code());
                List<String> said = bank(connection.code(), 2, senses.code()).said().stream()
                        .filter(s -> s.startsWith("SENSOR"))
                        .toList();
                assertEquals(
                        fits ? List.of() : List.of("SENSOR_DOES_NOT_FIT protection[0].senses"),
                        said,
                        connection + " " + senses);
                if (fits) {
                    // and the network has such a sensor
                    bank(connection.code(), 2, senses.code())
                            .read()
                            .bank()
                            .ifPresent(bank -> Network.of(
                                    bank,
                                    bank.stages().getFirst(),
                                    Capacitances.known(bank),
                                    Supply.nominal(bank.system())));
                }
            }
        }
    }

    /** A tap needs a group on either side. */
    @Test
    void aTapBehindTheOnlyGroupIsTheNeutral() {
        assertEquals(
                List.of("SENSOR_DOES_NOT_FIT protection[0].senses"),
                bank("wye-grounded", 1, "phase-voltage").said().stream()
                        .filter(s -> s.startsWith("SENSOR"))
                        .toList());
    }

    @Test
    void settingsAgainstEachOther() {
        for (List<String> row : List.of(
                List.of("alarm: 1 A, trip: 3 A", ""),
                List.of("alarm: 2.99 A, trip: 3 A", ""),
                List.of("alarm: 3 A, trip: 3 A", "ALARM_AT_TRIP protection[0].alarm"),
                List.of("alarm: 3.01 A, trip: 3 A", "ALARM_ABOVE_TRIP protection[0].alarm"),
                List.of("alarm: 3 A", ""),
                List.of("trip: 3 A", ""),
                List.of("delay: 1 s", "NO_SETTINGS protection[0]"))) {
            assertEquals(
                    row.get(1).isEmpty() ? List.of() : List.of(row.get(1)),
                    new LimitBank()
                            .stage("connection: wye-grounded, groups: 1, units: 1")
                            .system("voltage: 10 kV, maximum-voltage: 11 kV", "voltage: 17 kV, maximum-voltage: 18 kV")
                            .more("protection:\n  - {stage: S, senses: neutral-current, ratio: \"100:5\", " + row.get(0)
                                    + "}\n")
                            .said(),
                    row.toString());
        }
    }

    /** A bank lifts voltage and power factor; it takes reactive power and current of the load down: on before off in that order. */
    @Test
    void thresholdsOfAControl() {
        for (List<String> row : List.of(
                List.of("senses: voltage, ratio: \"7200:120\", on: 118 V, off: 124 V", ""),
                List.of("senses: voltage, ratio: \"7200:120\", on: 124 V, off: 118 V", "THRESHOLDS_ORDER control.on"),
                List.of("senses: voltage, ratio: \"7200:120\", on: 124 V, off: 124 V", "THRESHOLDS_EQUAL control.off"),
                List.of("senses: power-factor, on: 0.92, off: 0.99", ""),
                List.of("senses: power-factor, on: 0.99, off: 0.92", "THRESHOLDS_ORDER control.on"),
                List.of("senses: kvar, on: 600 kvar, off: 100 kvar", ""),
                List.of("senses: kvar, on: 100 kvar, off: 600 kvar", "THRESHOLDS_ORDER control.on"),
                List.of("senses: current, current-ratio: \"400:5\", on: 4 A, off: 2 A", ""),
                List.of("senses: current, current-ratio: \"400:5\", on: 2 A, off: 4 A", "THRESHOLDS_ORDER control.on"),
                List.of("senses: voltage, ratio: \"7200:120\", on: 118 V", ""),
                List.of("senses: voltage, on: 118 V", "THRESHOLD_WITHOUT_RATIO control.on"),
                List.of("senses: voltage, off: 124 V", "THRESHOLD_WITHOUT_RATIO control.off"),
                List.of("senses: current, off: 2 A", "THRESHOLD_WITHOUT_RATIO control.off"))) {
            assertEquals(
                    row.get(1).isEmpty() ? List.of() : List.of(row.get(1)),
                    new LimitBank().more("control: {" + row.get(0) + "}\n").said(),
                    row.toString());
        }
    }
}
