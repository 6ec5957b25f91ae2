package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.UnitPosition;
import org.varwright.json.Json;

class BankJsonTest {
    private static Bank bank(String name) {
        return BankFile.read(name, BankFileTest.example(name)).requireBank();
    }

    private static Json at(Json json, String... path) {
        Json at = json;
        for (String name : path) {
            at = name.matches("[0-9]+")
                    ? ((Json.Arr) at).items().get(Integer.parseInt(name))
                    : ((Json.Obj) at).get(name);
        }
        return at;
    }

    private static List<Json> items(Json json, String... path) {
        return assertInstanceOf(Json.Arr.class, at(json, path)).items();
    }

    private static List<String> names(Json json, String... path) {
        return items(json, path).stream()
                .map(item -> ((Json.Str) at(item, "name")).value())
                .toList();
    }

    @Test
    void everyPositionOfEveryExampleStandsInItsGroupOnce() {
        for (String name : BankFileTest.ALL) {
            Bank bank = bank(name);
            Json json = BankJson.of(bank);
            List<String> written = new ArrayList<>();
            for (Json stage : items(json, "stages")) {
                for (Json leg : items(stage, "legs")) {
                    for (Json group : items(leg, "groups")) {
                        written.addAll(names(group, "positions"));
                    }
                }
            }
            assertEquals(bank.positions().stream().map(UnitPosition::name).toList(), written, name);
            assertEquals(Json.parse(json.print()), json, name);
        }
    }

    @Test
    void whatAScreenShowsOfTheEnclosureIsThere() {
        Json json = BankJson.of(bank("demo/corbel-reach-3.bank.yaml"));
        assertEquals(Json.of("CR-BK3"), at(json, "label"));
        assertEquals(Json.of("ground"), at(json, "words", "ground"));
        // C = 200 kvar/(2π·60 Hz·(7.2 kV)²) = 10.2337 µF
        assertEquals(10.2337e-6, ((Json.Num) at(json, "unitTypes", "0", "capacitanceFarads")).value(), 1e-10);
        assertEquals(11.2571e-6, ((Json.Num) at(json, "unitTypes", "0", "highestFarads")).value(), 1e-10);
        Json u2 = at(json, "stages", "2", "legs", "1", "groups", "0", "positions", "1");
        assertEquals(Json.of("stage 3/B/u2"), at(u2, "name"));
        assertEquals(Json.of("CR19-0110"), at(u2, "serial"));
        assertEquals(10.53e-6, ((Json.Num) at(u2, "capacitanceFarads")).value(), 1e-15);
        assertEquals(
                List.of("controls", "cable box", "bay 1", "bay 2", "bay 3", "bay 4"),
                names(json, "isolation", "compartments"));
        assertEquals(Json.strings(List.of("bus", "stage 3")), at(json, "isolation", "compartments", "4", "exposes"));
        assertEquals(Json.strings(List.of("CR-6")), at(json, "isolation", "compartments", "4", "keys"));
        assertEquals(
                Json.strings(List.of("off", "manual", "auto")), at(json, "control", "selectors", "0", "positions"));
        assertEquals(
                Json.strings(List.of("bay 1", "bay 2", "bay 3", "bay 4")),
                at(json, "isolation", "devices", "3", "where"));
        assertEquals(
                Json.parse("[\"manual\", \"auto\"]"), at(json, "isolation", "interlocks", "0", "requires", "43-C"));
    }

    @Test
    void sourcesListWhatMustBeCrossedOffTransformersToo() {
        assertEquals(
                List.of(
                        "utility feeder 21",
                        "station service",
                        "voltage transformer of the neutral voltage sensor of stage 1",
                        "voltage transformer of the neutral voltage sensor of stage 2",
                        "voltage transformer of the neutral voltage sensor of stage 3",
                        "voltage transformer of the neutral voltage sensor of stage 4",
                        "voltage transformer of the control",
                        "discharge transformer of stage 4"),
                names(BankJson.of(bank("demo/corbel-reach-3.bank.yaml")), "sources"));
        Json hallin = BankJson.of(bank("demo/hallin-moor-2.bank.yaml"));
        assertEquals(
                List.of("33 kV busbar", "heater supply", "voltage transformer of the control"),
                names(hallin, "sources"));
        assertEquals(Json.of("main"), at(hallin, "sources", "0", "kind"));
        assertEquals(Json.of("control"), at(hallin, "sources", "1", "kind"));
        assertEquals(Json.of("earth"), at(hallin, "words", "ground"));
    }

    @Test
    void whatTheFileLeavesOutIsNull() {
        Json ratio = at(BankJson.of(bank("tamarack-flats-2.bank.yaml")), "control", "ratio");
        assertEquals(Json.none(), ratio);
    }
}
