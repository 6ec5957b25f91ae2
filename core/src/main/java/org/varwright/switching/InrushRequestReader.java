package org.varwright.switching;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Stage;
import org.varwright.page.Enumeration;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** Reads what was typed about a switching. */
public final class InrushRequestReader {
    private static final double MOST_PER_PEAK = 4.0;
    private static final double MOST_DEGREES = 720.0;

    /** Three voltages around a delta add up to nothing; this much is rounding of what was typed. */
    private static final double CLOSED = 0.01;

    private final Bank bank;

    public InrushRequestReader(Bank bank) {
        this.bank = bank;
    }

    /**
     * The request.
     *
     * @param stage name of the stage that is switched
     * @param onto names of stages that are on, or {@code none}
     * @param trapped such as {@code A=1.0,B=-0.5}
     * @param angles such as {@code A=90,B=95,C=100}
     * @param opening whether it opens
     * @param restrike such as {@code A=2.0}
     * @throws VarwrightException {@code INRUSH_STAGE}, {@code INRUSH_LIST}, {@code INRUSH_VALUE}, {@code INRUSH_NEEDS_STAGE}, {@code INRUSH_DELTA},
     *     {@code INRUSH_ONTO_ITSELF}, {@code INRUSH_OPEN_OR_CLOSE}
     */
    public InrushRequest read(
            Optional<String> stage,
            List<String> onto,
            Optional<String> trapped,
            Optional<String> angles,
            boolean opening,
            Optional<String> restrike) {
        Optional<Stage> named = stage.map(name -> require("stage", name));
        boolean opens = opening || restrike.isPresent();
        if (named.isEmpty() && (!onto.isEmpty() || trapped.isPresent() || angles.isPresent() || opens)) {
            throw wrong(Message.INRUSH_NEEDS_STAGE, "stage", stageNames());
        }
        if (opens && (trapped.isPresent() || angles.isPresent())) {
            throw wrong(Message.INRUSH_OPEN_OR_CLOSE, "opening");
        }
        List<String> phases = List.of("A", "B", "C");
        Map<String, Double> charge = trapped.map(
                        t -> values("trapped", t, legNames(named.orElseThrow()), -MOST_PER_PEAK, MOST_PER_PEAK))
                .orElse(Map.of());
        if (named.filter(s -> s.connection() == Connection.DELTA).isPresent() && !charge.isEmpty()) {
            double around = charge.values().stream().mapToDouble(v -> v).sum();
            if (Math.abs(around) > CLOSED) {
                throw wrong(Message.INRUSH_DELTA, "trapped", trapped.orElse(""), String.valueOf(around));
            }
        }
        Optional<List<Double>> degrees = angles.map(a -> {
            Map<String, Double> by = values("angles", a, phases, 0.0, MOST_DEGREES);
            if (by.size() < phases.size()) {
                throw wrong(Message.INRUSH_LIST, "angles", a, "A=90,B=95,C=100", "A, B and C, all three");
            }
            return phases.stream().map(p -> by.getOrDefault(p, 0.0)).toList();
        });
        return new InrushRequest(
                stage,
                onto.isEmpty() ? Optional.empty() : Optional.of(others(named.orElseThrow(), onto)),
                charge,
                degrees,
                opens,
                restrike.map(r -> values("restrike", r, phases, 1e-3, MOST_PER_PEAK))
                        .orElse(Map.of()));
    }

    private static List<String> legNames(Stage stage) {
        return stage.connection() == Connection.DELTA ? stage.legs() : List.of("A", "B", "C");
    }

    private List<String> others(Stage stage, List<String> onto) {
        List<String> names = new ArrayList<>();
        if (onto.size() == 1 && onto.getFirst().strip().equalsIgnoreCase("none")) {
            return names;
        }
        for (String name : onto) {
            String found = require("onto", name).name();
            if (found.equals(stage.name())) {
                throw wrong(Message.INRUSH_ONTO_ITSELF, "onto", found);
            }
            if (!names.contains(found)) {
                names.add(found);
            }
        }
        return names;
    }

    private Stage require(String what, String name) {
        return bank.stage(name.strip()).orElseThrow(() -> wrong(Message.INRUSH_STAGE, what, name, stageNames()));
    }

    private String stageNames() {
        return Enumeration.of(bank.stages().stream().map(Stage::name).toList());
    }

    private static Map<String, Double> values(
            String what, String typed, List<String> names, double least, double most) {
        Map<String, Double> values = new LinkedHashMap<>();
        String example = names.getFirst() + "=1.0," + names.get(1) + "=-0.5";
        for (String part : List.of(typed.split("[,;]", -1))) {
            int equals = part.indexOf('=');
            String name = equals < 0 ? "" : part.substring(0, equals).strip();
            if (!names.contains(name) || values.containsKey(name)) {
                throw wrong(Message.INRUSH_LIST, what, typed, example, Enumeration.of(names) + ", each once");
            }
            double value = number(what, part.substring(equals + 1).strip());
            if (!(value >= least && value <= most)) {
                throw wrong(
                        Message.INRUSH_VALUE,
                        what,
                        name,
                        part.substring(equals + 1).strip(),
                        String.valueOf(least),
                        String.valueOf(most));
            }
            values.put(name, value);
        }
        return values;
    }

    private static double number(String what, String text) {
        try {
            double value = Double.parseDouble(text);
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw wrong(Message.NOT_A_NUMBER, what, text, "1.5");
    }

    private static VarwrightException wrong(Message message, String what, String... arguments) {
        return new VarwrightException(message, new Place("", 0, 0, "--" + what), arguments);
    }
}
