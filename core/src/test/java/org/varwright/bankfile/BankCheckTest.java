package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.json.Json;

class BankCheckTest {
    private static BankCheck check(String name) {
        return BankCheck.of(BankFile.read(name, BankFileTest.example(name)));
    }

    private static double number(Json object, String... path) {
        Json at = object;
        for (String name : path) {
            at = name.matches("[0-9]+")
                    ? ((Json.Arr) at).items().get(Integer.parseInt(name))
                    : ((Json.Obj) at).get(name);
        }
        return ((Json.Num) at).value();
    }

    @Test
    void sumsTheExampleUp() {
        BankCheck check = check("tamarack-flats-2.bank.yaml");
        assertTrue(check.ok());
        assertEquals(7.2e6, check.ratedVars());
        // by hand: C = 300 kvar/(2π·60 Hz·(7.96 kV)²) = 12.559 µF, I = 13.8 kV/√3·2π·60 Hz·C = 37.72 A; the 45 µH
        // reactor adds 0.005 %
        StageSummary one = check.stages().getFirst();
        assertEquals(12.5592e-6, one.capacitanceFaradsPerLeg(), 1e-9);
        assertEquals(37.724, one.legAmperes(), 0.005);
        assertEquals(1.00094, one.unitVoltsPerRated(), 2e-4);
        Json json = BankCheckJson.of(check);
        assertEquals(900.0, number(json, "summary", "stages", "0", "ratedKvar"));
        assertEquals(one.legAmperes(), number(json, "summary", "stages", "0", "legCurrentAmperes"));
        assertEquals(11.0, number(json, "summary", "isolation", "locks"));
        assertEquals(new Json.Bool(true), ((Json.Obj) json).get("ok"));
        assertEquals(Json.parse(json.print()), json);
    }

    @Test
    void sumsABridgeUp() {
        // quarters of 2 units at 33 kV/√3/2 = 9.5263 kV; C = 400 kvar/(2π·50 Hz·(10.5 kV)²) = 11.5487 µF a unit
        StageSummary bridge = check("demo/hallin-moor-2.bank.yaml").stages().getFirst();
        assertEquals(2 * 11.5487e-6, bridge.capacitanceFaradsPerLeg(), 1e-9);
        assertEquals(9526.3, bridge.unitVolts(), 15.0);
        assertEquals(69.12, bridge.legAmperes(), 0.1);
        assertEquals(24, bridge.units());
        assertEquals(9.6e6, bridge.ratedVars());
        assertEquals(9.6e6 * Math.pow(9526.3 / 10500.0, 2), bridge.varsAtNominal(), 0.02e6);
    }

    @Test
    void theTextFitsThePageAndUsesTheWordsOfTheStandard() {
        for (String name : BankFileTest.ALL) {
            String text = BankCheckText.of(check(name), true);
            for (String line : text.split("\n", -1)) {
                assertTrue(line.length() <= 100, line);
            }
        }
        String iec = BankCheckText.of(check("demo/hallin-moor-2.bank.yaml"), false);
        assertTrue(iec.contains("unearthed bridge") && iec.contains("STEPS"), iec);
        assertFalse(iec.contains("ground"), iec);
        assertTrue(
                BankCheckText.of(check("demo/lantern-mesa-1.bank.yaml"), false).contains("ungrounded double wye"));
    }

    @Test
    void theTextSaysWhatWasUnderstoodOfTheOptionalData() {
        String text =
                BankCheckText.of(check("demo/corbel-reach-3.bank.yaml"), false).replaceAll("\\s+", " ");
        for (String part : new String[] {
            "order 5: 0.8 % of voltage, 14 A injected; order 7",
            "load 5.2 MW and 3.9 Mvar; at light load 1.3 MW and 800 kvar; wanted power factor 0.97",
            "control senses power-factor, voltage transformer 7200:120, current transformer 400:5, on at 0.94, off at 0.995",
            "line fuse C100, 3 m of bus, 3 µH of wiring, switched by 24-C",
            "a voltage transformer of 3.2 kΩ between each two lines, switched by 24-D",
            "V15: 15.5 kV, 200 A, capacitor current up to 200 A, makes an inrush of 6 kA at 6 kHz, bears an outrush of 30 kA·kHz"
        }) {
            assertTrue(text.contains(part), part + " is not in " + text);
        }
    }

    @Test
    void anErrorLeavesNoSummary() {
        BankCheck check =
                BankCheck.of(BankFile.read("x.yaml", "format: varwright/1\n".getBytes(StandardCharsets.UTF_8)));
        assertFalse(check.ok());
        Json.Obj json = (Json.Obj) BankCheckJson.of(check);
        assertEquals(Json.none(), json.get("summary"));
        assertEquals(new Json.Bool(false), json.get("ok"));
        Json.Obj first = (Json.Obj) ((Json.Arr) json.get("errors")).items().getFirst();
        assertEquals(
                Set.of("line", "column", "path", "message", "code"),
                first.members().keySet());
        assertTrue(
                BankCheckText.of(check, false).endsWith("x.yaml: 5 errors, 1 warning\n"),
                BankCheckText.of(check, false));
    }
}
