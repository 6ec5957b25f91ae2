package org.varwright.energize;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.network.Capacitances;
import org.varwright.network.LegModel;
import org.varwright.network.LegState;
import org.varwright.network.Supply;
import org.varwright.network.UnitBranch;
import org.varwright.quantity.Complex;

/**
 * What one stage should draw and show.
 *
 * <p><b>Model.</b> Expected value: the network at the measured voltage with the capacitances as fitted (ENG-1). Band (ENG-2): each independent input is
 * moved to its limits in the network; upward and downward changes are each added as root of the sum of squares. Independent inputs are: each of the three
 * voltages, each measured unit, the nameplate units of one leg together (one batch), the reading instrument. A sensor's band adds the magnitudes of the
 * changes of its phasor, whatever their direction.
 *
 * <p><b>Not modelled.</b> Harmonics, a shift of the system's neutral, temperature of units after the readings.
 *
 * <p><b>Source.</b> First principles; combination of independent parts as in the ISO/IEC Guide 98-3.
 */
final class StagePrediction {
    private static final Source SOURCE =
            Source.published("first principles; parts combined as in ISO/IEC Guide 98-3 (GUM)");

    private final Bank bank;
    private final Stage stage;
    private final Fitted fitted;
    private final BusVolts bus;
    private final Uncertainty uncertainty;
    private final LegModel model;
    private final double[][] farads;
    private final LegState expected;
    /** A sensor value below this [V] or [A] is rounding of the solution: no instrument shows it. */
    private static final double ROUNDING = 1e-9;

    private final List<LegState> voltsMoved = new ArrayList<>();
    private final List<LegState> faradsMoved = new ArrayList<>();

    StagePrediction(Bank bank, Stage stage, Fitted fitted, BusVolts bus, Uncertainty uncertainty) {
        this.bank = bank;
        this.stage = stage;
        this.fitted = fitted;
        this.bus = bus;
        this.uncertainty = uncertainty;
        this.model = LegModel.of(bank, stage, bus.supply());
        this.farads = model.groupFarads(fitted.capacitances());
        this.expected = model.evaluate(farads);
        moveVolts();
        moveFarads();
    }

    /** Highest voltage of any unit as a multiple of rated. */
    double highestUnitPerRated() {
        return expected.highestGroupPerRated();
    }

    private void moveVolts() {
        for (int which = 0; which < 3; which++) {
            for (double factor : new double[] {1.0 + uncertainty.busVolts(), 1.0 - uncertainty.busVolts()}) {
                voltsMoved.add(
                        LegModel.of(bank, stage, bus.scaled(which, factor).supply())
                                .evaluate(farads));
            }
        }
    }

    /** One pair of states, up and down, for each measured unit and for the nameplate units of each leg. */
    private void moveFarads() {
        Map<String, Map<UnitBranch, Double>> up = new HashMap<>();
        Map<String, Map<UnitBranch, Double>> down = new HashMap<>();
        List<String> order = new ArrayList<>();
        for (UnitPosition position : stage.positions()) {
            boolean nameplate = fitted.origin(position) == Origin.NAMEPLATE;
            String part = nameplate ? "leg " + position.leg() : position.name();
            double more = nameplate ? stage.unit().tolerance().high() : uncertainty.capacitance();
            double less = nameplate ? -stage.unit().tolerance().low() : uncertainty.capacitance();
            if (!up.containsKey(part)) {
                order.add(part);
            }
            for (UnitBranch branch : branches(position)) {
                double value = fitted.capacitances().farads(branch);
                up.computeIfAbsent(part, p -> new HashMap<>()).put(branch, value * more);
                down.computeIfAbsent(part, p -> new HashMap<>()).put(branch, -value * less);
            }
        }
        for (String part : order) {
            faradsMoved.add(model.evaluate(moved(up.getOrDefault(part, Map.of()))));
            faradsMoved.add(model.evaluate(moved(down.getOrDefault(part, Map.of()))));
        }
    }

    private List<UnitBranch> branches(UnitPosition position) {
        return stage.hasThreePhaseUnits()
                ? stage.legs().stream()
                        .map(leg -> new UnitBranch(position, leg))
                        .toList()
                : List.of(UnitBranch.of(position));
    }

    private double[][] moved(Map<UnitBranch, Double> changes) {
        double[][] copy = new double[farads.length][];
        for (int l = 0; l < farads.length; l++) {
            copy[l] = farads[l].clone();
        }
        changes.forEach(
                (branch, change) -> copy[stage.legs().indexOf(branch.stageLeg())][model.slot(branch.at())] += change);
        return copy;
    }

    List<ExpectedCurrent> currents() {
        double[] ratedLines = new double[3];
        double[] ratedLegs = new double[stage.legs().size()];
        rated(ratedLines, ratedLegs);
        List<ExpectedCurrent> currents = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            int at = p;
            currents.add(current(
                    "ABC".substring(p, p + 1), true, s -> s.lineAmperes().get(at), ratedLines[p]));
        }
        if (stage.connection() == Connection.WYE_GROUNDED || stage.connection() == Connection.WYE_UNGROUNDED) {
            return currents;
        }
        for (int l = 0; l < stage.legs().size(); l++) {
            int at = l;
            currents.add(current(stage.legs().get(l), false, s -> s.legAmperes().get(at), ratedLegs[l]));
        }
        return currents;
    }

    /** Currents at rated voltage and nameplate capacitance: those at nominal voltage, divided by the multiple of rated that it is. */
    private void rated(double[] lines, double[] legs) {
        LegState nominal =
                LegModel.of(bank, stage, Supply.nominal(bank.system())).evaluate(Capacitances.nameplate(bank));
        for (int p = 0; p < 3; p++) {
            lines[p] = nominal.lineAmperes().get(p).magnitude() / nominal.highestGroupPerRated();
        }
        for (int l = 0; l < legs.length; l++) {
            legs[l] = nominal.legAmperes().get(l).magnitude() / nominal.highestGroupPerRated();
        }
    }

    private interface Pick {
        Complex of(LegState state);
    }

    private ExpectedCurrent current(String place, boolean line, Pick pick, double ratedAmperes) {
        double value = pick.of(expected).magnitude();
        Sides volts = sides(voltsMoved, pick, value);
        Sides capacitance = sides(faradsMoved, pick, value);
        double meter = uncertainty.ammeter() * value;
        Band band = new Band(
                value,
                Math.max(0.0, value - root(volts.down(), capacitance.down(), meter)),
                value + root(volts.up(), capacitance.up(), meter));
        Basis basis = new Basis(
                "ENG-2",
                "low = I − √(U_V² + U_C−² + U_m²), high = I + √(U_V² + U_C+² + U_m²); I from the network (ENG-1)",
                List.of(
                        new Term("I", "expected current", value, "A"),
                        new Term("V_AB", "bus voltage A to B", bus.ab(), "V"),
                        new Term("V_BC", "bus voltage B to C", bus.bc(), "V"),
                        new Term("V_CA", "bus voltage C to A", bus.ca(), "V"),
                        new Term("U_V", "voltage reading, larger side", Math.max(volts.up(), volts.down()), "A"),
                        new Term("U_C+", "capacitances, upward: " + origins(), capacitance.up(), "A"),
                        new Term("U_C−", "capacitances, downward", capacitance.down(), "A"),
                        new Term("U_m", "ammeter", meter, "A")),
                SOURCE);
        return new ExpectedCurrent(
                stage.name() + "/" + place,
                stage.name(),
                place,
                line,
                band,
                pick.of(expected).degrees(),
                ratedAmperes,
                basis);
    }

    List<ExpectedSensor> sensors() {
        List<ExpectedSensor> sensors = new ArrayList<>();
        for (int s = 0; s < model.sensorNames().size(); s++) {
            int at = s;
            sensors.add(sensor(
                    model.sensorNames().get(s),
                    model.sensorProtections().get(s),
                    state -> state.sensors().get(at)));
        }
        return sensors;
    }

    private ExpectedSensor sensor(String name, Protection protection, Pick pick) {
        Complex value = pick.of(expected);
        double volts = phasorReach(voltsMoved, pick, value);
        double capacitance = phasorReach(faradsMoved, pick, value);
        double magnitude = value.magnitude() < ROUNDING ? 0.0 : value.magnitude();
        double instrument = uncertainty.sensor() * magnitude;
        double reach = root(volts, capacitance, instrument);
        Band primary = new Band(magnitude, Math.max(0.0, magnitude - reach), magnitude + reach);
        String unit = protection.senses().unit();
        Basis basis = new Basis(
                "ENG-3",
                "|S| ∓ √(U_V² + U_C² + U_m²), U from the magnitudes of the changes of the phasor S",
                List.of(
                        new Term("S", "expected primary value, from the network", magnitude, unit),
                        new Term("U_V", "voltage readings", volts, unit),
                        new Term("U_C", "capacitances: " + origins(), capacitance, unit),
                        new Term("U_m", "sensor", instrument, unit),
                        new Term(
                                "r",
                                "secondary over primary",
                                protection.ratio().map(TransformerRatio::factor).orElse(1.0),
                                "")),
                SOURCE);
        Optional<Band> secondary = protection.ratio().map(r -> primary.times(r.factor()));
        return new ExpectedSensor(
                name,
                stage.name(),
                protection.senses(),
                primary,
                secondary,
                magnitude == 0.0 ? 0.0 : value.degrees(),
                basis);
    }

    private String origins() {
        List<String> parts = new ArrayList<>();
        for (Origin origin : Origin.values()) {
            int count = fitted.count(stage, origin);
            if (count > 0) {
                parts.add(count + " by " + origin.words());
            }
        }
        return String.join(", ", parts);
    }

    /** Changes upward and downward, as roots of sums of squares over the independent inputs. */
    private record Sides(double up, double down) {}

    private static Sides sides(List<LegState> moved, Pick pick, double value) {
        double up = 0.0;
        double down = 0.0;
        for (int i = 0; i + 1 < moved.size(); i += 2) {
            double first = pick.of(moved.get(i)).magnitude() - value;
            double second = pick.of(moved.get(i + 1)).magnitude() - value;
            double above = Math.max(0.0, Math.max(first, second));
            double below = Math.max(0.0, -Math.min(first, second));
            up += above * above;
            down += below * below;
        }
        return new Sides(Math.sqrt(up), Math.sqrt(down));
    }

    private static double phasorReach(List<LegState> moved, Pick pick, Complex value) {
        double sum = 0.0;
        for (int i = 0; i + 1 < moved.size(); i += 2) {
            double first = pick.of(moved.get(i)).minus(value).magnitude();
            double second = pick.of(moved.get(i + 1)).minus(value).magnitude();
            double larger = Math.max(first, second);
            sum += larger * larger;
        }
        return Math.sqrt(sum);
    }

    private static double root(double a, double b, double c) {
        return Math.sqrt(a * a + b * b + c * c);
    }
}
