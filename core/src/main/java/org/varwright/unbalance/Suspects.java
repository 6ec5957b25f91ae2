package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Construction;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Failure;
import org.varwright.network.Network;
import org.varwright.network.Sweep;
import org.varwright.network.UnitBranch;
import org.varwright.quantity.Complex;

/**
 * Everything single that may have failed in a stage, leg by leg, with how likely it is before anything was read.
 *
 * <p>Groups of one leg that move the sensor alike can't be told apart by it, so one of them stands for all. Weights are common practice, no source: they only order what
 * the reading leaves open.
 */
final class Suspects {
    /**
     * One suspect.
     *
     * @param part what it is
     * @param weight relative, number of units that it may be counted in
     * @param twin the same in another group of the leg; empty where there is none
     */
    record Suspect(Candidate.Part part, double weight, List<Failure> twin) {}

    private static final double AGAIN_IN_GROUP = 0.15;
    private static final double AGAIN_IN_UNIT = 0.4;
    private static final double RARE = 0.03;
    private static final double ONE_POLE_OPEN = 0.15;
    private static final double TWO_POLES_OPEN = 0.03;

    private Suspects() {}

    /** Changes of the sensor that differ by less than this part are alike. */
    private static final double ALIKE = 0.03;

    /**
     * Groups of one leg that move the sensor alike.
     *
     * @param change what one unit out moves it by
     * @param groups units of each group
     */
    private record Alike(Complex change, List<List<UnitBranch>> groups) {}

    static List<Suspect> of(Stage stage, Network network, Sweep sweep, int sensor) {
        Map<String, List<UnitBranch>> legs = new LinkedHashMap<>();
        network.branches()
                .forEach(b -> legs.computeIfAbsent(b.stageLeg(), l -> new ArrayList<>())
                        .add(b));
        List<Suspect> suspects = new ArrayList<>();
        legs.forEach((leg, units) -> {
            List<Alike> classes = classes(stage, leg, units, sweep, sensor);
            classes.forEach(c -> addClass(stage, leg, c.groups(), classes.size() > 1, suspects));
        });
        double total = suspects.stream().mapToDouble(Suspect::weight).sum();
        List<String> phases = List.of("A", "B", "C");
        for (int p = 0; p < 3; p++) {
            suspects.add(open(stage, List.of(phases.get(p)), ONE_POLE_OPEN * total / 3.0));
        }
        for (int p = 0; p < 3; p++) {
            suspects.add(open(
                    stage, List.of(phases.get((p + 1) % 3), phases.get((p + 2) % 3)), TWO_POLES_OPEN * total / 3.0));
        }
        return suspects;
    }

    private static Suspect open(Stage stage, List<String> phases, double weight) {
        List<Failure> failures = phases.stream()
                .<Failure>map(p -> new Failure.PhaseOpen(stage.name(), p))
                .toList();
        String place = stage.name() + (phases.size() == 1 ? " phase " : " phases ") + String.join(" and ", phases);
        return new Suspect(new Candidate.Part(place, "phase-open", phases.size(), 0, 0, failures), weight, List.of());
    }

    private static List<Alike> classes(Stage stage, String leg, List<UnitBranch> units, Sweep sweep, int sensor) {
        Complex none = sweep.set(sweep.fault(List.of())) ? sweep.sensor(sensor) : Complex.ZERO;
        int inGroup = stage.hasThreePhaseUnits() ? 1 : stage.layoutOf(leg).units();
        List<Alike> classes = new ArrayList<>();
        for (int at = 0; at < units.size(); at += inGroup) {
            List<UnitBranch> group = units.subList(at, at + inGroup);
            List<Failure> out = List.of(new Failure.UnitOut(group.getFirst()));
            Complex change = sweep.set(sweep.fault(out)) ? sweep.sensor(sensor).minus(none) : Complex.ZERO;
            classes.stream()
                    .filter(c -> c.change().minus(change).magnitude()
                            <= ALIKE * Math.max(c.change().magnitude(), change.magnitude()) + 1e-9)
                    .findFirst()
                    .ifPresentOrElse(
                            c -> c.groups().add(group),
                            () -> classes.add(new Alike(change, new ArrayList<>(List.of(group)))));
        }
        return classes;
    }

    private static void addClass(
            Stage stage, String leg, List<List<UnitBranch>> alike, boolean named, List<Suspect> suspects) {
        int groups = alike.size();
        int inGroup = alike.getFirst().size();
        List<UnitBranch> first = alike.getFirst();
        List<UnitBranch> other = groups > 1 ? alike.get(1) : List.of();
        int units = groups * inGroup;
        String place = stage.name() + "/" + leg + (named ? " (" + names(alike) + ")" : "");
        String main = Unbalance.mainKind(stage);
        double out = main.equals("unit-out") ? 1.0 : 2.0 * RARE;
        for (int n = 1; n <= inGroup; n++) {
            int count = n;
            add(
                    suspects,
                    place,
                    "unit-out",
                    n,
                    groups,
                    units,
                    out * units * Math.pow(AGAIN_IN_GROUP, n - 1.0),
                    out(first, n),
                    n == 1 && !other.isEmpty() ? out(other, count) : List.of());
        }
        int most = stage.unit().construction().map(c -> inside(c)).orElse(0);
        for (int k = 1; k <= most; k++) {
            double base = main.equals("unit-out") ? 0.3 : 1.0;
            add(
                    suspects,
                    place,
                    main.equals("elements-out") ? main : "sections-shorted",
                    k,
                    groups,
                    units,
                    base * units * Math.pow(AGAIN_IN_UNIT, k - 1.0),
                    damaged(main, first.getFirst(), k),
                    other.isEmpty() ? List.of() : damaged(main, other.getFirst(), k));
        }
        add(
                suspects,
                place,
                "unit-shorted",
                1,
                groups,
                units,
                RARE * units,
                List.of(new Failure.UnitShorted(first.getFirst())),
                List.of());
    }

    /** Such as {@code s1g2}, at most three of them. */
    private static String names(List<List<UnitBranch>> alike) {
        List<String> names = new ArrayList<>();
        for (List<UnitBranch> group : alike.subList(0, Math.min(3, alike.size()))) {
            UnitPosition at = group.getFirst().at();
            names.add("s" + at.string() + "g" + at.group());
        }
        return String.join(", ", names) + (alike.size() > 3 ? " …" : "");
    }

    private static int inside(Construction construction) {
        return construction.internallyFused() ? construction.elements() - 1 : construction.sections() - 1;
    }

    private static List<Failure> out(List<UnitBranch> group, int count) {
        return group.subList(0, count).stream()
                .<Failure>map(Failure.UnitOut::new)
                .toList();
    }

    private static List<Failure> damaged(String main, UnitBranch at, int count) {
        return List.of(
                main.equals("elements-out")
                        ? new Failure.ElementsOut(at, count)
                        : new Failure.SectionsShorted(at, count));
    }

    private static void add(
            List<Suspect> suspects,
            String place,
            String kind,
            int count,
            int groups,
            int units,
            double weight,
            List<Failure> standIn,
            List<Failure> twin) {
        suspects.add(new Suspect(new Candidate.Part(place, kind, count, groups, units, standIn), weight, twin));
    }
}
