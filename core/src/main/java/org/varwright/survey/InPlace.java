package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.varwright.bank.UnitPosition;

/**
 * Single units from readings of units together: nothing was disconnected (SRV-14).
 *
 * <p><b>Model.</b> A reading of units in parallel is their sum. A reading of a leg of groups in series gives the sum of the one group that is not known from
 * other readings: {@code 1/C_g = 1/C_leg − Σ 1/C_other}. Each group is solved by {@link GroupSolution}.
 * <p><b>Not modelled.</b> What else is joined to the leads: the rest of the bank must not be in parallel with what is read. Legs of several strings in parallel
 * are judged, not solved.
 * <p><b>Source.</b> First principles.
 */
final class InPlace {
    /** A unit's own reading counts in the equations where it is within this of its nameplate: others are slips and say nothing of the sum. */
    private static final double LEAST_PART = 0.5;

    private static final double MOST_PART = 2.0;

    /** From this many standard uncertainties on, readings of a group contradict each other. */
    private static final double CONTRADICT = 4.0;

    private final Map<String, List<UnitPosition>> groups = new LinkedHashMap<>();
    private final Map<String, GroupSolution> solutions = new LinkedHashMap<>();
    private final Map<UnitPosition, Gathered> byPosition = new LinkedHashMap<>();
    private final List<GroupReading> readings;

    private InPlace(List<Gathered> all, List<GroupReading> readings) {
        this.readings = readings;
        all.forEach(unit -> byPosition.put(unit.position(), unit));
        for (Gathered unit : all) {
            if (!unit.stage().hasThreePhaseUnits()) {
                groups.computeIfAbsent(Spots.groupName(unit.position()), ignored -> new ArrayList<>())
                        .add(unit.position());
            }
        }
    }

    static InPlace solve(List<Gathered> all, List<GroupReading> readings) {
        InPlace inPlace = new InPlace(all, readings);
        inPlace.groups.keySet().forEach(group -> inPlace.solve(group, Optional.empty()));
        for (GroupReading leg : readings) {
            inPlace.fromLeg(leg);
        }
        return inPlace;
    }

    /** Every unit, with what the readings together say of it where it was not read alone. */
    List<Gathered> units() {
        List<Gathered> all = new ArrayList<>();
        for (Gathered unit : byPosition.values()) {
            GroupSolution solution = solutions.get(Spots.groupName(unit.position()));
            int index = groups.getOrDefault(Spots.groupName(unit.position()), List.of())
                    .indexOf(unit.position());
            boolean usable = solution != null
                    && unit.takes().isEmpty()
                    && solution.worst() <= CONTRADICT
                    && solution.units().get(index).determined();
            all.add(
                    usable && solution != null
                            ? unit.with(List.of(take(unit, solution.units().get(index))))
                            : unit);
        }
        return all;
    }

    private Gathered.Take take(Gathered unit, GroupSolution.UnitValue value) {
        String rows = String.join(
                ", ",
                readings.stream()
                        .filter(reading -> reading.units().contains(unit.position()))
                        .map(reading -> String.valueOf(reading.row()))
                        .toList());
        return new Gathered.Take(
                "",
                0,
                new Measured.Value(Math.max(0.0, value.farads()), "solved from rows " + rows),
                true,
                Optional.empty(),
                value.sigmaFarads());
    }

    /** Whether readings of the units' group contradict each other. */
    boolean contradicts(GroupReading reading) {
        return reading.units().stream()
                .map(unit -> solutions.get(Spots.groupName(unit)))
                .anyMatch(solution -> solution != null && solution.worst() > CONTRADICT);
    }

    /** Bounds of the units of a reading that are not determined. */
    List<GroupSurvey.Bounds> bounds(GroupReading reading) {
        List<GroupSurvey.Bounds> bounds = new ArrayList<>();
        for (UnitPosition unit : reading.units()) {
            GroupSolution solution = solutions.get(Spots.groupName(unit));
            int index = groups.getOrDefault(Spots.groupName(unit), List.of()).indexOf(unit);
            if (solution != null && !solution.units().get(index).determined()) {
                GroupSolution.UnitValue value = solution.units().get(index);
                bounds.add(new GroupSurvey.Bounds(unit.name(), value.low(), value.high()));
            }
        }
        return bounds;
    }

    /** The fewest single units to read so that every unit of the reading's groups is known. */
    List<String> next(GroupReading reading) {
        List<String> next = new ArrayList<>();
        for (String group : groupsOf(reading)) {
            GroupSolution solution = solutions.get(group);
            List<UnitPosition> units = groups.getOrDefault(group, List.of());
            if (solution != null) {
                solution.next().forEach(index -> next.add(units.get(index).name()));
            } else {
                // nothing was read of this group together: only units without a reading of their own are open
                units.stream().filter(this::isUnread).forEach(unit -> next.add(unit.name()));
            }
        }
        return next;
    }

    private boolean isUnread(UnitPosition unit) {
        Gathered gathered = byPosition.get(unit);
        return gathered == null || gathered.takes().isEmpty();
    }

    private void solve(String group, Optional<GroupSolution.Equation> more) {
        List<UnitPosition> units = groups.getOrDefault(group, List.of());
        List<GroupSolution.Equation> equations = new ArrayList<>();
        boolean together = more.isPresent();
        for (GroupReading reading : readings) {
            if (reading.isParallel()
                    && reading.measured() instanceof Measured.Value value
                    && Spots.groupName(reading.units().getFirst()).equals(group)) {
                together = true;
                double nominal = reading.perUnit() * reading.type().capacitanceFarads();
                // a slip of the range says nothing of the units
                if (value.si() < MOST_PART * nominal) {
                    equations.add(new GroupSolution.Equation(
                            reading.units().stream().map(units::indexOf).toList(),
                            value.si(),
                            Math.max(reading.sigmaFarads(), 1e-4 * nominal)));
                }
            }
        }
        if (!together) {
            return;
        }
        for (int i = 0; i < units.size(); i++) {
            Gathered unit = byPosition.get(units.get(i));
            if (unit == null || unit.takes().isEmpty()) {
                continue;
            }
            OptionalDouble own = unit.middle();
            double nominal = unit.type().capacitanceFarads();
            if (own.isPresent()
                    && own.getAsDouble() > LEAST_PART * nominal
                    && own.getAsDouble() < MOST_PART * nominal) {
                double sigma = unit.takes().getFirst().sigmaFarads();
                equations.add(
                        new GroupSolution.Equation(List.of(i), own.getAsDouble(), Math.max(sigma, 1e-4 * nominal)));
            }
        }
        more.ifPresent(equations::add);
        if (!equations.isEmpty()) {
            solutions.put(group, GroupSolution.of(units.size(), equations));
        }
    }

    /** The sum of the one group of a leg that is not known. */
    private void fromLeg(GroupReading leg) {
        if (leg.isParallel()
                || leg.layout().strings() > 1
                || !(leg.measured() instanceof Measured.Value value)
                || value.si() <= 0.0) {
            return;
        }
        double elastance = 1.0 / value.si();
        double variance = Math.pow(leg.sigmaFarads() / (value.si() * value.si()), 2.0);
        Optional<String> unknown = Optional.empty();
        for (String group : groupsOf(leg)) {
            Optional<Combined> sum = sum(group);
            if (sum.isPresent()) {
                elastance -= 1.0 / sum.get().farads();
                variance += Math.pow(
                        sum.get().sigmaFarads()
                                / (sum.get().farads() * sum.get().farads()),
                        2.0);
            } else if (unknown.isPresent()) {
                return;
            } else {
                unknown = Optional.of(group);
            }
        }
        if (unknown.isPresent() && elastance > 0.0) {
            int units = groups.getOrDefault(unknown.get(), List.of()).size();
            List<Integer> all = new ArrayList<>();
            for (int i = 0; i < units; i++) {
                all.add(i);
            }
            double farads = 1.0 / elastance;
            solve(
                    unknown.get(),
                    Optional.of(new GroupSolution.Equation(all, farads, Math.sqrt(variance) * farads * farads)));
        }
    }

    /** Names of the groups that a reading covers, each once. */
    private static Set<String> groupsOf(GroupReading reading) {
        Set<String> names = new LinkedHashSet<>();
        reading.units().forEach(unit -> names.add(Spots.groupName(unit)));
        return names;
    }

    /** The sum of a group where the readings determine it. */
    private Optional<Combined> sum(String group) {
        List<UnitPosition> units = groups.getOrDefault(group, List.of());
        for (GroupReading reading : readings) {
            if (reading.isParallel()
                    && reading.units().size() == units.size()
                    && Spots.groupName(reading.units().getFirst()).equals(group)
                    && reading.farads() > 0.0) {
                return Optional.of(new Combined(reading.farads(), reading.sigmaFarads()));
            }
        }
        double sum = 0.0;
        double variance = 0.0;
        for (UnitPosition position : units) {
            Gathered unit = byPosition.get(position);
            if (unit == null || unit.middle().isEmpty()) {
                return Optional.empty();
            }
            sum += unit.middle().getAsDouble();
            variance += Math.pow(unit.takes().getFirst().sigmaFarads(), 2.0);
        }
        return sum > 0.0 ? Optional.of(new Combined(sum, Math.sqrt(variance))) : Optional.empty();
    }
}
