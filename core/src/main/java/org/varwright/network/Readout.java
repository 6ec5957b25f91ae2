package org.varwright.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.quantity.Complex;

/** Turns unknowns into voltages and currents of things that have names. */
final class Readout {
    private final Circuit circuit;
    private final Assembly assembly;
    private final List<Sensor> sensors;

    /** For each leg, the branches of the first group of each of its strings. */
    private final List<List<Integer>> heads = new ArrayList<>();

    Readout(Bank bank, Circuit circuit, Assembly assembly) {
        this.circuit = circuit;
        this.assembly = assembly;
        this.sensors = Sensor.of(bank, circuit);
        for (Circuit.StagePlaces places : circuit.stages()) {
            for (Circuit.Leg leg : places.legs()) {
                heads.add(heads(places.stage(), leg.name()));
            }
        }
    }

    Solution.Solved read(
            double[] x,
            Map<Integer, Complex> shortCurrents,
            Network.Changes changes,
            Complex[] siemens,
            double[] farads,
            double[] healthy) {
        List<Solution.UnitValue> units = units(x, shortCurrents, changes, siemens, farads);
        List<Solution.LegValue> legs = legs(units, x);
        List<Solution.LineValue> lines = new ArrayList<>();
        List<Solution.NeutralValue> neutrals = new ArrayList<>();
        List<Solution.StageValue> stages = new ArrayList<>();
        for (Circuit.StagePlaces places : circuit.stages()) {
            String name = places.stage().name();
            double vars = 0.0;
            for (int p = 0; p < 3; p++) {
                int pole = places.poles().get(p);
                Complex amperes = current(x, pole);
                Circuit.Link link = circuit.links().get(pole);
                vars -= volts(x, link.from()).times(amperes.conjugate()).im();
                lines.add(new Solution.LineValue(name, Circuit.PHASES.get(p), amperes, volts(x, link.to())));
            }
            for (int w = 0; w < places.neutrals().size(); w++) {
                Complex amperes = w < places.neutralLinks().size()
                        ? current(x, places.neutralLinks().get(w))
                        : Complex.ZERO;
                neutrals.add(new Solution.NeutralValue(
                        name, w + 1, volts(x, places.neutrals().get(w)), amperes));
            }
            stages.add(new Solution.StageValue(name, vars));
        }
        return new Solution.Solved(
                units, groups(units, x, healthy), legs, lines, neutrals, stages, sensorValues(primaries(x)));
    }

    private List<Solution.UnitValue> units(
            double[] x,
            Map<Integer, Complex> shortCurrents,
            Network.Changes changes,
            Complex[] siemens,
            double[] farads) {
        List<Solution.UnitValue> units = new ArrayList<>();
        for (int b = 0; b < circuit.branches().size(); b++) {
            Circuit.Branch branch = circuit.branches().get(b);
            UnitState state = changes.states().getOrDefault(b, UnitState.HEALTHY);
            boolean shorted = state.shorted() && !state.out();
            Complex volts = between(x, branch.from(), branch.to());
            double factor = shorted
                    ? 1.0
                    : state.capacitanceFactor(branch.stage().unit().construction());
            Complex amperes = volts.times(siemens[b]).times(factor);
            if (shorted) {
                amperes = Optional.ofNullable(shortCurrents.remove(branch.group()))
                        .orElse(Complex.ZERO);
            }
            double perRated = volts.magnitude() / branch.stage().unit().legVolts();
            units.add(new Solution.UnitValue(
                    branch.unit(),
                    volts,
                    amperes,
                    farads[b] * factor,
                    perRated,
                    perRated * state.sectionFactor(branch.stage().unit().construction()),
                    !state.out() && !state.shorted()));
        }
        return units;
    }

    private List<Solution.GroupValue> groups(List<Solution.UnitValue> units, double[] x, double[] healthy) {
        boolean[] inService = new boolean[circuit.groups().size()];
        for (int b = 0; b < units.size(); b++) {
            inService[circuit.branches().get(b).group()] |= units.get(b).inService();
        }
        List<Solution.GroupValue> groups = new ArrayList<>();
        for (int g = 0; g < circuit.groups().size(); g++) {
            Circuit.Group group = circuit.groups().get(g);
            Complex volts = between(x, group.from(), group.to());
            double before = between(healthy, group.from(), group.to()).magnitude();
            groups.add(new Solution.GroupValue(
                    group.stage().name(),
                    group.leg(),
                    group.string(),
                    group.group(),
                    volts,
                    before > 0.0 ? volts.magnitude() / before : 1.0,
                    volts.magnitude() / group.stage().unit().legVolts(),
                    inService[g]));
        }
        return groups;
    }

    /** A leg's current is what enters the first group of each of its strings. */
    private List<Solution.LegValue> legs(List<Solution.UnitValue> units, double[] x) {
        List<Solution.LegValue> legs = new ArrayList<>();
        int at = 0;
        for (Circuit.StagePlaces places : circuit.stages()) {
            for (Circuit.Leg leg : places.legs()) {
                Complex amperes = Complex.ZERO;
                for (int branch : heads.get(at)) {
                    amperes = amperes.plus(units.get(branch).amperes());
                }
                at++;
                legs.add(new Solution.LegValue(
                        places.stage().name(), leg.name(), between(x, leg.top(), leg.end()), amperes));
            }
        }
        return legs;
    }

    private List<Integer> heads(Stage stage, String leg) {
        List<Integer> branches = new ArrayList<>();
        for (int b = 0; b < circuit.branches().size(); b++) {
            Circuit.Group group = circuit.groups().get(circuit.branches().get(b).group());
            if (group.group() == 1
                    && group.leg().equals(leg)
                    && group.stage().name().equals(stage.name())) {
                branches.add(b);
            }
        }
        return List.copyOf(branches);
    }

    List<Sensor> sensors() {
        return sensors;
    }

    /** For each leg, the branches of the first group of each of its strings. */
    List<List<Integer>> heads() {
        return heads;
    }

    /** Every sensor with its primary value. */
    List<Solution.SensorValue> sensorValues(List<Complex> primaries) {
        List<Solution.SensorValue> values = new ArrayList<>();
        for (int s = 0; s < sensors.size(); s++) {
            Protection protection = sensors.get(s).protection();
            Complex primary = primaries.get(s);
            values.add(new Solution.SensorValue(
                    protection.stage(),
                    protection.senses(),
                    sensors.get(s).place(),
                    primary,
                    protection.ratio().map(r -> primary.times(r.factor()))));
        }
        return values;
    }

    private List<Complex> primaries(double[] x) {
        List<Complex> values = new ArrayList<>();
        for (Sensor sensor : sensors) {
            Complex primary = Complex.ZERO;
            for (Sensor.Part part : sensor.parts()) {
                Complex value = switch (part) {
                    case Sensor.Part.Volts v -> volts(x, v.node());
                    case Sensor.Part.Amperes a -> current(x, a.link());
                };
                primary = primary.plus(value.times(part.weight()));
            }
            values.add(primary);
        }
        return values;
    }

    private Complex between(double[] x, int from, int to) {
        return volts(x, from).minus(volts(x, to));
    }

    private Complex volts(double[] x, int node) {
        return node == Circuit.GROUND
                ? Complex.ZERO
                : new Complex(x[2 * node], x[2 * node + 1]).times(assembly.baseVolts());
    }

    private Complex current(double[] x, int link) {
        int at = 2 * (assembly.nodes() + link);
        return new Complex(x[at], x[at + 1]).times(assembly.baseAmperes());
    }
}
