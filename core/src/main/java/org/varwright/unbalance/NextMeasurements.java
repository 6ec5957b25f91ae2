package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.quantity.Complex;
import org.varwright.quantity.Dimension;

/**
 * What to measure next, by how much of the doubt it would settle.
 *
 * <p><b>Model.</b> The doubt is the sum of {@code p_i·p_j} over pairs of candidates; a measurement settles the pairs that it tells apart (UNB-7).
 */
final class NextMeasurements {
    private static final double LINE_APART = 0.04;
    private static final double DEGREES_APART = 15.0;
    private static final int MOST = 3;

    private NextMeasurements() {}

    private interface Apart {
        boolean tells(Candidate a, Candidate b);
    }

    private record Option(String text, double settled) {}

    static List<String> of(Bank bank, List<Candidate> candidates, Sighting sighting, Protection protection) {
        List<Option> options = new ArrayList<>();
        if (sighting.lineAmperes().size() < 3) {
            options.add(option(
                    candidates,
                    Locate.WITH_THE_BANK_ON + "the current in lines A, B and C of " + protection.stage()
                            + " at one moment (" + lines(candidates) + ").",
                    NextMeasurements::linesApart));
        }
        if (sighting.degrees().isEmpty()) {
            options.add(option(
                    candidates,
                    "The angle of the sensor against phase A, from the relay or its record.",
                    (a, b) -> Math.abs(angle(a.sensor(), b.sensor())) > DEGREES_APART));
        }
        options.add(option(
                candidates,
                "Look at the unit fuses of " + legs(candidates) + " from outside, before anything is opened.",
                (a, b) -> outside(a) != outside(b) || (outside(a) && !places(a).equals(places(b)))));
        // Measuring every unit of the suspected legs tells everything apart, at the price of taking the bank out.
        options.add(new Option(
                "Out of service, proved dead, discharged and shorted: the capacitance of every unit of "
                        + legs(candidates) + ", in this order.",
                0.5 * doubt(candidates, (a, b) -> true)));
        return options.stream()
                .filter(o -> o.settled() > 1e-6 || candidates.size() < 2)
                .sorted(Comparator.comparingDouble(o -> -Math.rint(1e6 * o.settled())))
                .limit(MOST)
                .map(Option::text)
                .toList();
    }

    private static Option option(List<Candidate> candidates, String text, Apart apart) {
        return new Option(text, doubt(candidates, apart));
    }

    private static double doubt(List<Candidate> candidates, Apart apart) {
        double sum = 0.0;
        for (int i = 0; i < candidates.size(); i++) {
            for (int j = i + 1; j < candidates.size(); j++) {
                if (apart.tells(candidates.get(i), candidates.get(j))) {
                    sum += candidates.get(i).probability() * candidates.get(j).probability();
                }
            }
        }
        return sum;
    }

    private static boolean linesApart(Candidate a, Candidate b) {
        for (int p = 0; p < 3; p++) {
            double first = a.lines().get(p);
            double second = b.lines().get(p);
            if (Math.abs(first - second) > LINE_APART * Math.max(first, second)) {
                return true;
            }
        }
        return false;
    }

    private static double angle(Complex a, Complex b) {
        return a.magnitude() > 0.0 && b.magnitude() > 0.0 ? a.dividedBy(b).degrees() : 0.0;
    }

    private static boolean outside(Candidate candidate) {
        return candidate.parts().stream().anyMatch(p -> p.kind().equals("unit-out"));
    }

    private static List<String> places(Candidate candidate) {
        return List.copyOf(new LinkedHashSet<>(
                candidate.parts().stream().map(Candidate.Part::place).toList()));
    }

    /** Legs by probability. */
    private static String legs(List<Candidate> candidates) {
        Map<String, Double> probability = new LinkedHashMap<>();
        for (Candidate candidate : candidates) {
            places(candidate).forEach(p -> probability.merge(p, candidate.probability(), Double::sum));
        }
        List<String> ordered = probability.entrySet().stream()
                .sorted(Comparator.comparingDouble(e -> -Math.rint(1e6 * e.getValue())))
                .limit(4)
                .map(Map.Entry::getKey)
                .toList();
        return ordered.isEmpty() ? "every leg" : String.join(", ", ordered);
    }

    private static String lines(List<Candidate> candidates) {
        List<String> texts = new ArrayList<>();
        for (Candidate candidate : candidates.subList(0, Math.min(2, candidates.size()))) {
            List<String> amperes =
                    candidate.lines().stream().map(Dimension.CURRENT::format).toList();
            texts.add((texts.isEmpty() ? "likeliest: " : "next: ") + String.join(", ", amperes));
        }
        return String.join("; ", texts);
    }
}
