package org.varwright.switching;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Capacitances;
import org.varwright.network.UnitBranch;

/**
 * Capacitance of each leg, and the part of its current that flows through one unit at most.
 *
 * @param farads by leg [F]; of three-phase units the sum of the cans
 * @param unitShare by leg, 0 to 1; of three-phase units the part of the line current in one can
 */
record LegFarads(Map<String, Double> farads, Map<String, Double> unitShare) {
    /** By strings in parallel, groups in series, units in parallel (NET-7). */
    static LegFarads of(Stage stage, Capacitances capacitances) {
        Map<String, Double> farads = new LinkedHashMap<>();
        Map<String, Double> share = new LinkedHashMap<>();
        for (String leg : stage.legs()) {
            Map<Integer, Map<Integer, List<Double>>> strings = new TreeMap<>();
            for (UnitPosition at : stage.positions()) {
                if (stage.hasThreePhaseUnits()) {
                    // cans stand only in parallel: each is a string of its own
                    group(strings, at.unit(), 1).add(capacitances.farads(new UnitBranch(at, leg)));
                } else if (at.leg().equals(leg)) {
                    group(strings, at.string(), at.group()).add(capacitances.farads(UnitBranch.of(at)));
                }
            }
            double whole = 0.0;
            List<Double> parts = new ArrayList<>();
            for (Map<Integer, List<Double>> string : strings.values()) {
                double elastance = 0.0;
                double most = 0.0;
                for (List<Double> units : string.values()) {
                    double sum = units.stream().mapToDouble(c -> c).sum();
                    elastance += 1.0 / sum;
                    most = Math.max(
                            most, units.stream().mapToDouble(c -> c).max().orElse(0.0) / sum);
                }
                whole += 1.0 / elastance;
                parts.add(most / elastance);
            }
            farads.put(leg, whole);
            share.put(leg, parts.stream().mapToDouble(p -> p).max().orElse(0.0) / whole);
        }
        return new LegFarads(farads, share);
    }

    double of(String leg) {
        return farads.getOrDefault(leg, 0.0);
    }

    private static List<Double> group(Map<Integer, Map<Integer, List<Double>>> strings, int string, int group) {
        return strings.computeIfAbsent(string, s -> new TreeMap<>()).computeIfAbsent(group, g -> new ArrayList<>());
    }
}
