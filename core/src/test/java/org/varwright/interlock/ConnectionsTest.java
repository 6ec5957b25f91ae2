package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bankfile.BankFile;
import org.varwright.drawing.ConductorState;
import org.varwright.drawing.DrawingState;

class ConnectionsTest {
    private static final Bank BANK = bank();
    private static final Isolation ISOLATION = BANK.isolation().orElseThrow();

    private static Bank bank() {
        try {
            return BankFile.read(
                            "bank", Files.readAllBytes(Path.of("..", "examples", "demo", "corbel-reach-3.bank.yaml")))
                    .requireBank();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static Map<String, String> inService() {
        Map<String, String> positions = new HashMap<>();
        ISOLATION.devices().forEach(d -> positions.put(d.name(), d.inServicePosition()));
        return positions;
    }

    @Test
    void pathToTheSourceNamesEveryDeviceInOrder() {
        Connections.Path path = toSource(Connections.of(BANK, inService(), "stage 1"));
        assertEquals(
                List.of("24-A", "89-C", "52-C"),
                path.hops().stream().map(Connections.Hop::device).toList());
        assertTrue(path.isCertain());
    }

    @Test
    void openDeviceIsAGapAndEndsThePath() {
        Map<String, String> positions = inService();
        positions.put("24-A", Device.OPEN);
        Connections connections = Connections.of(BANK, positions, "stage 1");
        assertTrue(connections.paths().stream().noneMatch(p -> p.end() == Connections.End.SOURCE));
        assertTrue(connections.gaps().contains(new Connections.Gap("24-A", Device.OPEN, "bus")));
    }

    @Test
    void unknownPositionCountsAsClosedAndSaysSo() {
        Map<String, String> positions = inService();
        positions.remove("24-A");
        Connections connections = Connections.of(BANK, positions, "stage 1");
        assertFalse(toSource(connections).isCertain());
        assertTrue(ConnectionsJson.text(connections, BANK.words()).getFirst().startsWith("May be joined to "));
    }

    /** Every single device in every position: a path to a source stands exactly where the drawing says live or unknown. */
    @Test
    void agreesWithTheDrawingOnEveryConductor() {
        for (Device device : ISOLATION.devices()) {
            for (String position : device.positions()) {
                Map<String, String> positions = inService();
                positions.put(device.name(), position);
                DrawingState drawn = DrawingState.of(
                        BANK, "", positions, java.util.Set.of(), List.of(), java.util.Set.of(), java.util.Set.of());
                for (String conductor : ISOLATION.conductors()) {
                    boolean live = drawn.conductors().get(conductor) == ConductorState.LIVE;
                    boolean reached = Connections.of(BANK, positions, conductor).paths().stream()
                            .anyMatch(p -> p.end() == Connections.End.SOURCE);
                    assertEquals(live, reached, device.name() + " " + position + ": " + conductor);
                }
            }
        }
    }

    private static Connections.Path toSource(Connections connections) {
        return connections.paths().stream()
                .filter(p -> p.end() == Connections.End.SOURCE)
                .findFirst()
                .orElseThrow();
    }
}
