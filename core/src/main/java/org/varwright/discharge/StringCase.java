package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.UnitPosition;

/**
 * Units in series that don't discharge alike: they hold voltage against each other while the ends of their string read 0 V.
 *
 * @param oneOpen one discharge resistor is open, at the worst place
 * @param unlike no resistor is open, but one is at the upper and all others at the lower end of ±10 %
 */
public record StringCase(Case oneOpen, Case unlike) {
    /** How far discharge resistances may be from their nominal value, either way; common practice. */
    static final double SPREAD = 0.10;

    private static final int SAMPLES = 120;

    /**
     * One string over time.
     *
     * @param at a unit of the group that is slower than its mates
     * @param unitsInGroup that share its voltage
     * @param slowVolts on that group at the end of the wait, poles open, nothing joined [V]
     * @param mateVolts on the most different of its mates then [V]
     * @param endsVolts between the ends of the string then [V]
     * @param joinedSlowVolts on the slow group right after the ends are joined at the end of the wait: the conductors read 0 V [V]
     * @param joinedMateVolts on a mate then, of the other sign [V]
     * @param worstJoinedVolts the most that any of its groups holds against the others when the ends are joined earlier or later, up to an hour [V]
     * @param joinedSecondsToSafe from joining at the end of the wait until every unit of the string is below the safe voltage [s]; empty where never
     * @param samples over time: open until the end of the wait, joined after it
     */
    public record Case(
            UnitPosition at,
            int unitsInGroup,
            double slowVolts,
            double mateVolts,
            double endsVolts,
            double joinedSlowVolts,
            double joinedMateVolts,
            double worstJoinedVolts,
            OptionalDouble joinedSecondsToSafe,
            List<Sample> samples) {
        public Case {
            samples = List.copyOf(samples);
        }

        /** Highest voltage on a unit while the conductors read 0 V, joined at the end of the wait [V]. */
        public double hiddenVolts() {
            return Math.max(Math.abs(joinedSlowVolts), Math.abs(joinedMateVolts));
        }
    }

    /**
     * One moment.
     *
     * @param seconds after opening [s]
     * @param slowVolts on the slow group [V]
     * @param mateVolts on the most different of its mates [V]
     * @param endsVolts between the ends of the string [V]
     */
    public record Sample(double seconds, double slowVolts, double mateVolts, double endsVolts) {}

    /** What a string needs to be worked out. */
    private record Setting(
            StageCircuit circuit,
            List<PoleOpening> openings,
            double initialVolts,
            double waitSeconds,
            double safeVolts) {}

    /**
     * The worst string of a stage.
     *
     * <p><b>Model.</b> The network of the whole stage by modes (DIS-12), first with all poles open, then with all lines and the neutral joined (DIS-8); the
     * other strings are lumped to one capacitance with one resistance each.
     * <p><b>Not modelled.</b> Unlike units in those other strings.
     * <p><b>Source.</b> First principles.
     *
     * @param circuit of the stage, with a conductance on every group
     * @param openings with every pole the first to clear
     * @param initialVolts highest voltage of a unit at opening [V]: the string is scaled up to it
     * @param waitSeconds least wait [s]
     * @param safeVolts [V]
     */
    static StringCase of(
            StageCircuit circuit,
            List<PoleOpening> openings,
            double initialVolts,
            double waitSeconds,
            double safeVolts) {
        Setting setting = new Setting(circuit, openings, initialVolts, waitSeconds, safeVolts);
        UnaryOperator<StageCircuit.Group> same = UnaryOperator.identity();
        UnaryOperator<StageCircuit.Group> quick = group -> group.withSiemens(group.siemens() / (1.0 - SPREAD));
        return new StringCase(
                worst(setting, group -> group.open(1), same),
                worst(setting, group -> group.withSiemens(group.siemens() / (1.0 + SPREAD)), quick));
    }

    private static Case worst(
            Setting setting, UnaryOperator<StageCircuit.Group> slow, UnaryOperator<StageCircuit.Group> mates) {
        @Nullable Run worst = null;
        for (int l = 0; l < setting.circuit.legs().size(); l++) {
            List<List<StageCircuit.Group>> strings =
                    setting.circuit.legs().get(l).strings();
            for (int s = 0; s < strings.size(); s++) {
                for (int g = 0; g < strings.get(s).size(); g++) {
                    Run run = new Run(setting, l, s, g, slow, mates);
                    if (worst == null || run.hiddenVolts > worst.hiddenVolts * (1.0 + 1e-9)) {
                        worst = run;
                    }
                }
            }
        }
        return Objects.requireNonNull(worst).result();
    }

    /** One string with one slow group. */
    private static final class Run {
        private final Setting setting;
        private final StageCircuit.Group slow;
        private final int slowIndex;
        private final int size;
        private final RcNetwork joined;
        private final RcNetwork.Course open;

        /** The most on any unit of the string once its ends are joined at the end of the wait [V]. */
        private final double hiddenVolts;

        Run(
                Setting setting,
                int leg,
                int string,
                int group,
                UnaryOperator<StageCircuit.Group> slowed,
                UnaryOperator<StageCircuit.Group> mates) {
            this.setting = setting;
            List<StageCircuit.Leg> legs = setting.circuit.legs();
            List<Integer> chain = chain(setting.circuit, leg);
            PoleOpening worst = setting.openings.getFirst();
            for (PoleOpening each : setting.openings) {
                if (Math.abs(each.legs().get(leg).volts())
                        > Math.abs(worst.legs().get(leg).volts()) * (1.0 + 1e-9)) {
                    worst = each;
                }
            }
            List<RcNetwork.Branch> branches = new ArrayList<>();
            List<Double> volts = new ArrayList<>();
            int nodes = setting.circuit.nodes().size();
            StageCircuit.@Nullable Group slowest = null;
            for (int l : chain) {
                List<StageCircuit.Group> ofLeg = legs.get(l).strings().get(string);
                double whole = StageCircuit.farads(ofLeg);
                int from = legs.get(l).from();
                for (int g = 0; g < ofLeg.size(); g++) {
                    boolean isSlow = l == leg && g == group;
                    StageCircuit.Group each = (isSlow ? slowed : mates).apply(ofLeg.get(g));
                    slowest = isSlow ? each : slowest;
                    int to = g == ofLeg.size() - 1 ? legs.get(l).to() : nodes++;
                    branches.add(new RcNetwork.Branch(from, to, each.farads(), each.siemens()));
                    volts.add(worst.legs().get(l).volts() * whole / each.farads());
                    from = to;
                }
            }
            slow = Objects.requireNonNull(slowest);
            slowIndex = group + (chain.getFirst() == leg ? 0 : branches.size() / 2);
            size = branches.size();
            double legVolts = worst.legs().get(leg).volts();
            for (int l = 0; l < legs.size(); l++) {
                StageCircuit.Leg other = legs.get(l);
                for (int s = 0; s < other.strings().size(); s++) {
                    if (!chain.contains(l) || s != string) {
                        List<StageCircuit.Group> lumped =
                                other.strings().get(s).stream().map(mates).toList();
                        branches.add(new RcNetwork.Branch(
                                other.from(), other.to(), StageCircuit.farads(lumped), StageCircuit.siemens(lumped)));
                        volts.add(worst.legs().get(l).volts());
                    }
                }
            }
            double highest =
                    volts.subList(0, size).stream().mapToDouble(Math::abs).max().orElseThrow();
            double sign = legVolts < 0.0 ? -1.0 : 1.0;
            double scale = sign * Math.max(1.0, setting.initialVolts / highest);
            double[] start = volts.stream().mapToDouble(v -> v * scale).toArray();
            open = new RcNetwork(nodes, branches).from(start);
            joined = joined(setting.circuit, branches);
            hiddenVolts =
                    highest(joined.from(open.voltsAfter(setting.waitSeconds)).voltsAfter(0.0));
        }

        /** Legs that stand in series between a line and the far side: of a bridge the upper and the lower quarter of one half. */
        private static List<Integer> chain(StageCircuit circuit, int leg) {
            if (!circuit.stage().connection().isBridge()) {
                return List.of(leg);
            }
            int upper = leg - leg % 2;
            return List.of(upper, upper + 1);
        }

        /** The same with all lines and the neutral joined to node 0. */
        private static RcNetwork joined(StageCircuit circuit, List<RcNetwork.Branch> branches) {
            List<Integer> kept = new ArrayList<>(List.of(0));
            List<RcNetwork.Branch> mapped = new ArrayList<>();
            for (RcNetwork.Branch branch : branches) {
                mapped.add(new RcNetwork.Branch(
                        index(circuit, kept, branch.from()),
                        index(circuit, kept, branch.to()),
                        branch.farads(),
                        branch.siemens()));
            }
            return new RcNetwork(kept.size(), mapped);
        }

        private static int index(StageCircuit circuit, List<Integer> kept, int node) {
            if (node == 0 || circuit.terminals().contains(node)) {
                return 0;
            }
            if (!kept.contains(node)) {
                kept.add(node);
            }
            return kept.indexOf(node);
        }

        Case result() {
            double wait = setting.waitSeconds;
            double[] before = open.voltsAfter(wait);
            RcNetwork.Course after = joined.from(before);
            double[] at = after.voltsAfter(0.0);
            double worst = 0.0;
            for (int i = 0; i <= SAMPLES; i++) {
                double[] volts =
                        joined.from(open.voltsAfter(3600.0 * i / SAMPLES)).voltsAfter(0.0);
                worst = Math.max(worst, highest(volts));
            }
            List<Sample> samples = new ArrayList<>();
            for (int i = 0; i <= SAMPLES; i++) {
                double t = wait * i / SAMPLES;
                samples.add(sample(t, open.voltsAfter(t)));
            }
            for (int i = 0; i <= SAMPLES; i++) {
                double t = wait * i / SAMPLES;
                samples.add(sample(wait + t, after.voltsAfter(t)));
            }
            return new Case(
                    slow.at().getFirst(),
                    slow.at().size(),
                    before[slowIndex],
                    mate(before),
                    ends(before),
                    at[slowIndex],
                    mate(at),
                    worst,
                    secondsToSafe(after),
                    samples);
        }

        private Sample sample(double seconds, double[] volts) {
            return new Sample(seconds, volts[slowIndex], mate(volts), ends(volts));
        }

        private double highest(double[] volts) {
            double highest = 0.0;
            for (int i = 0; i < size; i++) {
                highest = Math.max(highest, Math.abs(volts[i]));
            }
            return highest;
        }

        private double ends(double[] volts) {
            double sum = 0.0;
            for (int i = 0; i < size; i++) {
                sum += volts[i];
            }
            return sum;
        }

        /** The mate in series that differs most from the slow group. */
        private double mate(double[] volts) {
            double most = volts[slowIndex == 0 ? 1 : 0];
            for (int i = 0; i < size; i++) {
                if (i != slowIndex
                        && Math.abs(volts[i] - volts[slowIndex]) > Math.abs(most - volts[slowIndex]) * (1.0 + 1e-9)) {
                    most = volts[i];
                }
            }
            return most;
        }

        private OptionalDouble secondsToSafe(RcNetwork.Course after) {
            double high = 1.0;
            while (highest(after.voltsAfter(high)) > setting.safeVolts) {
                high *= 2.0;
                if (high > 1e9) {
                    return OptionalDouble.empty();
                }
            }
            double low = 0.0;
            if (highest(after.voltsAfter(0.0)) <= setting.safeVolts && high <= 1.0) {
                return OptionalDouble.of(0.0);
            }
            for (int i = 0; i < 60; i++) {
                double middle = 0.5 * (low + high);
                if (highest(after.voltsAfter(middle)) > setting.safeVolts) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return OptionalDouble.of(high);
        }
    }
}
