package org.varwright.bankfile;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;

/** Collects what is wrong or unusual, and where each part of the document stands. */
final class Findings {
    private static final int MOST = 200;

    private final String file;
    private final List<Problem> errors = new ArrayList<>();
    private final List<Problem> warnings = new ArrayList<>();
    private final Map<String, Place> places = new LinkedHashMap<>();
    private int errorCount;

    Findings(String file) {
        this.file = file;
    }

    String file() {
        return file;
    }

    void error(Message message, Place place, String... arguments) {
        errorCount++;
        add(errors, Problem.of(message, place, arguments));
    }

    void warning(Message message, Place place, String... arguments) {
        add(warnings, Problem.of(message, place, arguments));
    }

    private static void add(List<Problem> list, Problem problem) {
        if (list.size() < MOST && !list.contains(problem)) {
            list.add(problem);
        }
    }

    /** Errors found so far, those beyond what a person can read included. */
    int errorCount() {
        return errorCount;
    }

    void put(String path, Place place) {
        places.putIfAbsent(path, place);
    }

    /** Where the part with this path stands; where it has no place of its own, the nearest part around it. */
    Place place(String path) {
        return BankReading.placeIn(places, path, file);
    }

    List<Problem> errors() {
        return inOrder(errors);
    }

    List<Problem> warnings() {
        return inOrder(warnings);
    }

    Map<String, Place> places() {
        return places;
    }

    private static List<Problem> inOrder(List<Problem> problems) {
        return problems.stream()
                .sorted(Comparator.comparingInt((Problem p) -> p.place().line())
                        .thenComparingInt(p -> p.place().column()))
                .toList();
    }
}
