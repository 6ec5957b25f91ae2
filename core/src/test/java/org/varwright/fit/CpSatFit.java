package org.varwright.fit;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;

/**
 * The fit of one stage of single-phase units as an integer programme for CP-SAT (OR-Tools). It shares nothing with our search but the definition of a lift.
 *
 * <p><b>Model.</b> Every unit ends in one leg or out; every leg is full; a kept unit that changes its leg costs one lift beyond the replacements, one that goes
 * out two. Minimised is {@code 2·|N|² = (a−b)² + (b−c)² + (c−a)²} with {@code a, b, c} what each phase weighs at the sensor, linear in the capacitances: with
 * one group a leg that is exact for the currents of grounded neutrals, else the first order about a bank with the mean capacitance in every position, at which
 * all groups of a leg weigh alike. Weights are whole multiples of {@code step}.
 */
public final class CpSatFit {
    static {
        Loader.loadNativeLibraries();
    }

    /** A leg: its phase, what one farad more in any of its groups changes the phase's weight by, and its number of positions. */
    private record Leg(int phase, double perFarad, int positions) {}

    /** A unit that may be placed: the leg it is in now, −1 for a spare. */
    private record Unit(double farads, int own) {}

    /**
     * What came of it.
     *
     * @param isProven whether it is proven best
     * @param squares {@code 2·|N|²} in squares of the step
     * @param bound what no plan can be below
     * @param seconds on the wall
     */
    public record Answer(boolean isProven, long squares, double bound, double seconds) {}

    private final FitInput input;
    private final double step;
    private final List<Leg> legs = new ArrayList<>();
    private final List<String> names;
    private final double[] phaseAtMiddle = new double[3];
    private final double middle;

    private CpSatFit(FitInput input, double step) {
        this.input = input;
        this.step = step;
        Stage stage = input.bank().stages().getFirst();
        names = stage.legs();
        middle = input.units().stream()
                .filter(u -> u.role() == Fitted.Role.KEPT)
                .mapToDouble(Fitted::capacitanceFarads)
                .average()
                .orElseThrow();
        for (String name : names) {
            LegLayout layout = stage.layoutOf(name);
            double weight = weight(stage, name);
            int phase = "ABC".indexOf(name.charAt(0));
            // A string of S equal groups: C_group/S, and one farad more in one group is 1/S² more in the string.
            double groups = layout.groups();
            phaseAtMiddle[phase] += weight * layout.strings() * layout.units() * middle / groups;
            legs.add(new Leg(phase, weight / (groups * groups), layout.strings() * layout.groups() * layout.units()));
        }
    }

    /**
     * The programme of a bank with one stage whose sensor watches a neutral.
     *
     * @param step that weights are rounded to [F]
     */
    public static CpSatFit of(FitInput input, double step) {
        return new CpSatFit(input, step);
    }

    /** The same with every capacitance rounded to whole steps: then the programme loses nothing by rounding. */
    public static FitInput rounded(FitInput input, double step) {
        return new FitInput(
                input.bank(),
                input.units().stream()
                        .map(u -> new Fitted(
                                u.at(),
                                u.serial(),
                                step * Math.rint(u.capacitanceFarads() / step),
                                u.from(),
                                u.role(),
                                u.why()))
                        .toList(),
                input.spares().stream().map(s -> rounded(s, s.unit(), step)).toList(),
                input.options(),
                input.provisional(),
                input.remarks());
    }

    private static Spare rounded(Spare spare, UnitType type, double step) {
        double farads = step * Math.rint(spare.capacitanceFarads().orElseThrow() / step);
        return new Spare(spare.serial(), type, OptionalDouble.of(farads), spare.note());
    }

    /** How a leg counts at the sensor. */
    private static double weight(Stage stage, String leg) {
        boolean second = leg.endsWith("2");
        return switch (stage.connection()) {
            case WYE_GROUNDED, WYE_UNGROUNDED -> 1.0;
            case DOUBLE_WYE_GROUNDED -> second ? -1.0 : 1.0;
            case DOUBLE_WYE_UNGROUNDED -> second ? -0.5 : 0.5;
            case DELTA, BRIDGE_GROUNDED, BRIDGE_UNGROUNDED ->
                throw new IllegalArgumentException("no sensor of a neutral on " + stage.connection());
        };
    }

    private long steps(Leg leg, double farads) {
        return Math.round(leg.perFarad() * (farads - middle) / step);
    }

    /** {@code 2·|N|²} in squares of the step, with the bank as the plan leaves it. */
    public long squares(FitResult plan) {
        Map<String, Double> farads = new HashMap<>();
        Map<String, String> place = new HashMap<>();
        for (Fitted unit : input.units()) {
            farads.put(unit.name(), unit.capacitanceFarads());
            place.put(unit.name(), unit.at().name());
        }
        input.spares().forEach(s -> farads.put(s.serial(), s.capacitanceFarads().orElseThrow()));
        plan.moves().forEach(m -> place.put(m.serial(), m.to()));
        Map<String, Integer> legOf = new HashMap<>();
        for (UnitPosition position : input.bank().positions()) {
            legOf.put(position.name(), names.indexOf(position.leg()));
        }
        long[] phase = atMiddle();
        place.forEach((unit, at) -> {
            if (legOf.containsKey(at)) {
                Leg leg = legs.get(Objects.requireNonNull(legOf.get(at)));
                phase[leg.phase()] += steps(leg, Objects.requireNonNull(farads.get(unit)));
            }
        });
        long ab = phase[0] - phase[1];
        long bc = phase[1] - phase[2];
        long ca = phase[2] - phase[0];
        return ab * ab + bc * bc + ca * ca;
    }

    private long[] atMiddle() {
        long[] phase = new long[3];
        for (int p = 0; p < 3; p++) {
            phase[p] = Math.round(phaseAtMiddle[p] / step);
        }
        return phase;
    }

    /** {@code |N|} [F]: what the sensor's value is proportional to. */
    public double farads(long squares) {
        return step * Math.sqrt(0.5 * squares);
    }

    /**
     * The best plan.
     *
     * @param mostExtra lifts beyond the replacements
     * @param seconds after which the best so far counts
     * @param workers threads
     */
    public Answer solve(int mostExtra, double seconds, int workers) {
        CpModel model = new CpModel();
        LinearExprBuilder lifts = LinearExpr.newBuilder();
        List<LinearExprBuilder> fill = new ArrayList<>();
        legs.forEach(g -> fill.add(LinearExpr.newBuilder()));
        List<LinearExprBuilder> phases = new ArrayList<>();
        for (long steps : atMiddle()) {
            phases.add(LinearExpr.newBuilder().add(steps));
        }
        List<Unit> units = units();
        for (Unit unit : units) {
            List<Literal> places = new ArrayList<>();
            for (int g = 0; g < legs.size(); g++) {
                BoolVar here = model.newBoolVar("");
                places.add(here);
                fill.get(g).addTerm(here, 1);
                phases.get(legs.get(g).phase()).addTerm(here, steps(legs.get(g), unit.farads()));
                if (unit.own() >= 0 && unit.own() != g) {
                    lifts.addTerm(here, 1);
                }
            }
            BoolVar out = model.newBoolVar("");
            places.add(out);
            if (unit.own() >= 0) {
                lifts.addTerm(out, 2);
            }
            model.addExactlyOne(places);
        }
        for (int g = 0; g < legs.size(); g++) {
            model.addEquality(fill.get(g), legs.get(g).positions());
        }
        model.addLessOrEqual(lifts, mostExtra);
        model.minimize(LinearExpr.sum(squares(model, phases, units)));
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(workers).setMaxTimeInSeconds(seconds);
        CpSolverStatus status = solver.solve(model);
        if (status != CpSolverStatus.OPTIMAL && status != CpSolverStatus.FEASIBLE) {
            throw new IllegalStateException("CP-SAT: " + status + " within " + seconds + " s");
        }
        return new Answer(
                status == CpSolverStatus.OPTIMAL,
                Math.round(solver.objectiveValue()),
                solver.bestObjectiveBound(),
                solver.wallTime());
    }

    private IntVar[] squares(CpModel model, List<LinearExprBuilder> phases, List<Unit> units) {
        long most = units.stream()
                .mapToLong(u -> legs.stream()
                        .mapToLong(g -> Math.abs(steps(g, u.farads())))
                        .max()
                        .orElseThrow())
                .sum();
        IntVar[] squares = new IntVar[3];
        for (int p = 0; p < 3; p++) {
            IntVar difference = model.newIntVar(-2 * most, 2 * most, "");
            LinearExprBuilder expression = LinearExpr.newBuilder();
            expression.add(phases.get(p));
            expression.addTerm(phases.get((p + 1) % 3).build(), -1);
            model.addEquality(expression, difference);
            squares[p] = model.newIntVar(0, 4 * most * most, "");
            model.addMultiplicationEquality(squares[p], difference, difference);
        }
        return squares;
    }

    private List<Unit> units() {
        List<Unit> units = new ArrayList<>();
        for (Fitted fitted : input.units()) {
            if (fitted.role() == Fitted.Role.KEPT) {
                units.add(new Unit(
                        fitted.capacitanceFarads(), names.indexOf(fitted.at().leg())));
            }
        }
        for (Spare spare : input.spares()) {
            units.add(new Unit(spare.capacitanceFarads().orElseThrow(), -1));
        }
        return units;
    }
}
