package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Devices, doors, feeds and keys of a small bay, changed one thing at a time, and exactly what is said.
 *
 * <pre>
 *   net ── bus ──[Q]── S         G: bus to ground
 *   K1: in Q where open, and in G where closed; in the exchange against D, which opens the door of the bay
 * </pre>
 */
class IsolationTableTest {
    private static final String BAY = """
            isolation:
              sources: [{name: net, at: bus}]
              devices:
                - {name: Q, kind: stage-switch, between: [bus, S]}
                - {name: G, kind: grounding-switch, between: [bus, ground]}
              compartments:
                - {name: bay, exposes: [bus, S]}
              locks:
                - {device: Q, key: K1, holds: open}
                - {device: G, key: K1, holds: open}
                - {device: G, key: K2, holds: closed}
                - {door: bay, key: D}
              exchanges:
                - {name: box, in: [K2], out: [D]}
            """;

    private static List<String> said(String... changes) {
        String bay = BAY;
        for (int i = 0; i < changes.length; i += 2) {
            if (!bay.contains(changes[i])) {
                throw new IllegalArgumentException(changes[i]);
            }
            bay = bay.replace(changes[i], changes[i + 1]);
        }
        return new LimitBank()
                .stage("connection: delta, groups: 1, units: 1, switch: Q")
                .more(bay)
                .said();
    }

    private static void says(List<String> due, String... changes) {
        assertEquals(due, said(changes), String.join(" -> ", changes));
    }

    @Test
    void theBayIsPlain() {
        says(List.of());
    }

    /** Breakers, load-break switches and stage switches switch a stage; nothing else does. */
    @Test
    void whatMaySwitchAStage() {
        String q = "kind: stage-switch, between: [bus, S]";
        says(List.of(), q, "kind: breaker, between: [bus, S]");
        says(List.of(), q, "kind: load-break-switch, between: [bus, S]");
        List<String> wrong = List.of("SWITCH_KIND stages[0].switch");
        says(wrong, q, "kind: disconnector, between: [bus, S]");
        says(
                List.of(
                        "STAGE_NOT_A_CONDUCTOR stages[0].name",
                        "SWITCH_KIND stages[0].switch",
                        "SWITCH_ELSEWHERE stages[0].switch",
                        "STAGE_NEVER_FED stages[0].name"),
                q,
                "kind: grounding-switch, between: [bus, ground]",
                "exposes: [bus, S]",
                "exposes: [bus]");
    }

    /** Of two ends either may be the stage. */
    @Test
    void aSwitchStandsAtItsStage() {
        says(List.of(), "between: [bus, S]}", "between: [S, bus]}");
        List<String> elsewhere = said(
                "- {name: Q, kind: stage-switch, between: [bus, S]}",
                "- {name: Q, kind: stage-switch, between: [bus, x]}\n    - {name: R, kind: breaker, between: [x, S]}");
        assertEquals(List.of("SWITCH_ELSEWHERE stages[0].switch"), elsewhere);
    }

    @Test
    void aStageSwitchThatNoStageNames() {
        says(
                List.of("STAGE_SWITCH_UNUSED isolation.devices[1].name"),
                "    - {name: G,",
                "    - {name: R, kind: stage-switch, between: [bus, x]}\n    - {name: G,");
        says(List.of(), "    - {name: G,", "    - {name: R, kind: breaker, between: [bus, x]}\n    - {name: G,");
    }

    /** In service the supply has to reach the stage: through closed devices, not from low voltage, not through the grounding switch. */
    @Test
    void aStageThatNothingFeeds() {
        String never = "STAGE_NEVER_FED stages[0].name";
        says(List.of(never), "at: bus}", "at: bus, voltage: 120 V}");
        says(
                List.of(never),
                "at: bus}",
                "at: far}",
                "    - {name: G,",
                "    - {name: B, kind: breaker, between: [far, near]}\n    - {name: G,");
        // two devices in a row, written in either order and direction
        for (String row : List.of(
                "{name: B, kind: breaker, between: [far, near]}\n    - {name: C, kind: disconnector, between: [near, bus]}",
                "{name: C, kind: disconnector, between: [bus, near]}\n    - {name: B, kind: breaker, between: [near, far]}")) {
            says(List.of(), "at: bus}", "at: far}", "    - {name: G,", "    - " + row + "\n    - {name: G,");
        }
    }

    /** A door in front of high voltage or of a stage has a lock; one in front of controls need not. */
    @Test
    void doors() {
        String door = "- {name: bay, exposes: [bus, S]}";
        String more = door + "\n    - {name: side, exposes: [WHAT]}";
        says(List.of("DOOR_WITHOUT_LOCK isolation.compartments[1].name"), door, more.replace("WHAT", "bus"));
        says(List.of("DOOR_WITHOUT_LOCK isolation.compartments[1].name"), door, more.replace("WHAT", "S"));
        says(
                List.of(),
                door,
                more.replace("WHAT", "aux"),
                "{name: net, at: bus}",
                "{name: net, at: bus}, {name: station, at: aux, voltage: 120 V}");
        says(List.of("COMPARTMENT_EMPTY isolation.compartments[1].exposes"), door, more.replace("WHAT", ""));
    }

    @Test
    void keysHaveTheirLocksAndCopies() {
        // D comes out of the box and fits no lock
        says(
                List.of(
                        "KEY_WITHOUT_LOCK isolation.exchanges[0].out",
                        "DOOR_WITHOUT_LOCK isolation.compartments[0].name"),
                "    - {door: bay, key: D}\n",
                "");
        // a key that only passes from one box to another needs none
        says(
                List.of(),
                "- {name: box, in: [K2], out: [D]}",
                "- {name: box, in: [K2], out: [X]}\n    - {name: other, in: [X], out: [D]}");
        says(List.of("KEY_WITHOUT_LOCK isolation.exchanges[0].out"), "out: [D]}", "out: [D, X]}");
        says(List.of("KEY_WITHOUT_LOCK isolation.exchanges[0].in"), "in: [K2]", "in: [K2, X]");
        // a lock alone with its key, in no exchange
        says(
                List.of("KEY_ALONE isolation.locks[3].key"),
                "    - {door: bay, key: D}",
                "    - {device: G, key: Z, holds: open}\n    - {door: bay, key: D}");
        // held open, K1 is free from G in service, and trapped in Q; held closed by both it is trapped twice at once
        says(
                List.of("TOO_FEW_COPIES isolation.locks[0].key"),
                "key: K1, holds: open}\n    - {device: G, key: K1, holds: open}",
                "key: K1, holds: open}\n    - {device: G, key: K1, holds: closed}");
        says(
                List.of(),
                "key: K1, holds: open}\n    - {device: G, key: K1, holds: open}",
                "key: K1, holds: open}\n    - {device: G, key: K1, holds: closed}",
                "  exchanges:",
                "  keys: [{name: K1, copies: 2}]\n  exchanges:");
    }

    /** Where things stand at the start decides which keys are trapped. */
    @Test
    void theStartIsNotAlwaysInService() {
        // Q open at the start: K1 is free from it; G open: free from it too
        says(List.of(), "  exchanges:", "  start: {Q: open}\n  exchanges:");
        // G closed at the start and Q closed: K1 is trapped in both
        says(List.of("TOO_FEW_COPIES isolation.locks[0].key"), "  exchanges:", "  start: {G: closed}\n  exchanges:");
        // and in a position that there isn't no key is free
        says(
                List.of("TOO_FEW_COPIES isolation.locks[0].key", "UNKNOWN_NAME isolation.start.G"),
                "  exchanges:",
                "  start: {G: half}\n  exchanges:");
    }

    @Test
    void interlocksAndDelaysNamePositionsThatAre() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("  interlocks: [{device: Q, to: closed, requires: {G: open}}]\n", ""));
        rows.add(List.of(
                "  interlocks: [{device: Q, to: shut, requires: {G: open}}]\n",
                "UNKNOWN_NAME isolation.interlocks[0].to"));
        rows.add(List.of(
                "  interlocks: [{device: Q, to: closed, requires: {G: [open, half]}}]\n",
                "UNKNOWN_NAME isolation.interlocks[0].requires.G[1]"));
        rows.add(List.of(
                "  interlocks: [{device: Q, to: closed, requires: {G: [open, closed]}}]\n",
                "ALWAYS_SATISFIED isolation.interlocks[0].requires.G"));
        rows.add(List.of("  delays: [{move: {device: G, to: closed}, after: 5 min, open: [Q]}]\n", ""));
        rows.add(List.of(
                "  delays: [{move: {device: G, to: shut}, after: 5 min, open: [Q]}]\n",
                "UNKNOWN_NAME isolation.delays[0].move.to"));
        rows.add(List.of("  delays: [{lock: {device: G, key: K1}, after: 5 min, open: [Q]}]\n", ""));
        rows.add(List.of(
                "  delays: [{lock: {device: G, key: D}, after: 5 min, open: [Q]}]\n",
                "LOCK_UNKNOWN isolation.delays[0].lock.key"));
        rows.add(List.of("  delays: [{lock: {door: bay, key: D}, after: 5 min, open: [Q]}]\n", ""));
        rows.add(List.of(
                "  delays: [{move: {device: G, to: closed}, after: 4 min, open: [Q]}]\n",
                "DELAY_SHORT isolation.delays[0].after"));
        // a delay that runs from another device says nothing of this stage's discharge
        rows.add(List.of("  delays: [{move: {device: Q, to: closed}, after: 4 min, open: [G]}]\n", ""));
        for (List<String> row : rows) {
            says(row.get(1).isEmpty() ? List.of() : List.of(row.get(1)), "  exchanges:", row.get(0) + "  exchanges:");
        }
    }
}
