package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.varwright.bank.Isolation;
import org.varwright.bank.Vocabulary;
import org.varwright.json.Json;

/** {@link Connections} as JSON, in words and as lists. */
public final class ConnectionsJson {
    private ConnectionsJson() {}

    public static Json of(Connections connections, Vocabulary words) {
        return Json.object()
                .put("conductor", connections.conductor())
                .put(
                        "paths",
                        Json.of(connections.paths().stream()
                                .map(p -> (Json) Json.object()
                                        .put("to", p.end().code())
                                        .put("name", p.name())
                                        .put("certain", p.isCertain())
                                        .put(
                                                "hops",
                                                Json.of(p.hops().stream()
                                                        .map(h -> (Json) Json.object()
                                                                .put("device", h.device())
                                                                .put("known", h.known())
                                                                .put("to", h.to())
                                                                .build())
                                                        .toList()))
                                        .build())
                                .toList()))
                .put(
                        "gaps",
                        Json.of(connections.gaps().stream()
                                .map(g -> (Json) Json.object()
                                        .put("device", g.device())
                                        .put("position", g.position())
                                        .put("beyond", g.beyond())
                                        .build())
                                .toList()))
                .put("text", Json.strings(text(connections, words)))
                .build();
    }

    /** A sentence a path and a gap, and what none of it proves. */
    static List<String> text(Connections connections, Vocabulary words) {
        List<String> lines = new ArrayList<>();
        for (Connections.Path path : connections.paths()) {
            lines.add(path.hops().isEmpty() ? own(path, words) : joined(path, words));
        }
        for (Connections.Gap gap : connections.gaps()) {
            String beyond = gap.beyond().equals(Isolation.GROUND) ? words.ground() : gap.beyond();
            lines.add("Kept apart from " + beyond + " by " + gap.device() + " (" + gap.position() + ").");
        }
        lines.add("Worked out from positions; a pole can stay behind. Prove it dead before you touch it.");
        return lines;
    }

    /** What is on the conductor itself. */
    private static String own(Connections.Path path, Vocabulary words) {
        return switch (path.end()) {
            case SOURCE -> "Source " + path.name() + " feeds it directly.";
            case LOW_VOLTAGE_SOURCE -> "Low-voltage source " + path.name() + " feeds it directly.";
            case STAGE -> "The capacitors of " + path.name() + " are on it and may hold a charge.";
            case GROUND -> "It is " + words.ground() + " itself.";
        };
    }

    private static String joined(Connections.Path path, Vocabulary words) {
        String end = switch (path.end()) {
            case SOURCE -> "source " + path.name();
            case LOW_VOLTAGE_SOURCE -> "low-voltage source " + path.name();
            case STAGE -> "the capacitors of " + path.name() + ", which may hold a charge,";
            case GROUND -> words.ground();
        };
        return (path.isCertain() ? "Joined to " : "May be joined to ") + end + " through "
                + path.hops().stream()
                        .map(h -> h.device() + (h.known() ? " (closed)" : " (position not known: counts as closed)"))
                        .collect(Collectors.joining(", then "))
                + ".";
    }
}
