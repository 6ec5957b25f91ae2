package org.varwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;

/**
 * The legs of one stage as capacitances only: what the search needs, thousands of times cheaper than the network. {@code FitNetworkOracleTest} holds both
 * together.
 *
 * <p>Groups are numbered leg by leg, string by string; a three-phase can belongs to one group that feeds three legs.
 */
final class StageModel {
    /** Cosine and sine of 0°, −120°, +120°. */
    static final double[] COS = {1.0, -0.5, -0.5};

    static final double[] SIN = {0.0, -Math.sqrt(3.0) / 2.0, Math.sqrt(3.0) / 2.0};

    final Stage stage;
    final Connection connection;
    final List<UnbalanceSignal> signals;
    final int legCount;
    final int groupCount;
    /** [string] its groups. */
    final int[][] groupsOfString;
    /** [group] its string. */
    final int[] stringOfGroup;
    /** [leg] its strings. */
    final int[][] stringsOfLeg;
    /** [string] the legs that it feeds. */
    final int[][] legsOfString;
    /** [leg] how many groups of its first string lie above the tap. */
    final int[] groupsAboveTap;
    /** Rated voltage of a unit over the system's voltage to neutral, at the highest voltage of the system. */
    final double ratedPerPhaseVolts;
    /** Voltage across the capacitors over that without the reactor, every unit as on its nameplate (FIT-2). */
    final double reactorRise;
    /** Highest system voltage over nominal. */
    final double highestPerNominal;

    final double nameplateLegFarads;
    /** Whether no fitting at all can keep the voltage limit: then it doesn't steer the search. */
    final boolean voltageIsHopeless;

    private StageModel(Bank bank, Stage stage) {
        this.stage = stage;
        this.connection = stage.connection();
        this.signals = UnbalanceSignal.of(bank, stage);
        this.legCount = stage.legs().size();
        this.nameplateLegFarads = nameplateLegFarads(stage);
        this.highestPerNominal =
                bank.system().maximumVolts().orElse(bank.system().nominalVolts())
                        / bank.system().nominalVolts();
        this.reactorRise = reactorRise(bank, stage);
        this.ratedPerPhaseVolts =
                stage.unit().legVolts() / (bank.system().phaseVolts() * highestPerNominal * reactorRise);
        this.groupsAboveTap = new int[legCount];
        List<int[]> strings = new ArrayList<>();
        List<int[]> feeds = new ArrayList<>();
        List<List<Integer>> ofLeg = new ArrayList<>();
        IntStream.range(0, legCount).forEach(l -> ofLeg.add(new ArrayList<>()));
        int groups = 0;
        int columns = stage.hasThreePhaseUnits() ? 1 : legCount;
        for (int column = 0; column < columns; column++) {
            LegLayout layout = stage.layoutOf(stage.legs().get(column));
            int[] legs =
                    stage.hasThreePhaseUnits() ? IntStream.range(0, legCount).toArray() : new int[] {column};
            for (int leg : legs) {
                groupsAboveTap[leg] = (layout.groups() + 1) / 2;
            }
            for (int s = 0; s < layout.strings(); s++) {
                int first = groups;
                groups += layout.groups();
                for (int leg : legs) {
                    ofLeg.get(leg).add(strings.size());
                }
                strings.add(IntStream.range(first, groups).toArray());
                feeds.add(legs);
            }
        }
        this.groupCount = groups;
        this.groupsOfString = strings.toArray(int[][]::new);
        this.legsOfString = feeds.toArray(int[][]::new);
        this.stringsOfLeg = ofLeg.stream()
                .map(l -> l.stream().mapToInt(Integer::intValue).toArray())
                .toArray(int[][]::new);
        this.stringOfGroup = new int[groups];
        for (int s = 0; s < groupsOfString.length; s++) {
            for (int g : groupsOfString[s]) {
                stringOfGroup[g] = s;
            }
        }
        this.voltageIsHopeless = leastUnitPerRated() > FitLimits.VOLTS_PER_RATED * (1.0 + 1e-9);
    }

    static StageModel of(Bank bank, Stage stage) {
        return new StageModel(bank, stage);
    }

    /** What a reactor makes of a signal: once where legs share its voltage, squared where it magnifies their difference too (FIT-2). */
    double rise(UnbalanceSignal.Kind kind) {
        boolean inLeg = stage.reactor()
                .filter(r -> r.position() == Reactor.Position.NEUTRAL)
                .isPresent();
        return switch (kind) {
            case LEG_DEVIATION -> 1.0;
            case NEUTRAL_VOLTS, BRIDGE, TAP -> reactorRise;
            case BETWEEN_NEUTRALS, DIFFERENTIAL -> inLeg ? reactorRise * reactorRise : reactorRise;
            case NEUTRAL_AMPERES -> reactorRise * reactorRise;
        };
    }

    /**
     * Least that the most stressed unit can bear over its rated voltage, however well everything is balanced, at the highest voltage of the system: some phase
     * always bears the full voltage to neutral, and some group of it at least an equal share.
     */
    double leastUnitPerRated() {
        int groups = stage.legs().stream()
                .mapToInt(l -> stage.layoutOf(l).groups())
                .min()
                .orElse(1);
        double leg = switch (connection) {
            case WYE_GROUNDED, WYE_UNGROUNDED, DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> 1.0;
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> 0.5;
            case DELTA -> Math.sqrt(3.0);
        };
        return leg / groups / ratedPerPhaseVolts;
    }

    /** Square of the first signal at which its alarm is broken by {@code excess}, with room for rounding; the largest number where there is no alarm. */
    double squaredAtExcess(double excess) {
        UnbalanceSignal signal = signals.getFirst();
        if (!Double.isFinite(signal.alarmPerUnit())) {
            return Double.MAX_VALUE;
        }
        double seen = (1.0 + excess) * (1.0 + 1e-8) * signal.alarmPerUnit() / (highestPerNominal * rise(signal.kind()));
        return seen * seen;
    }

    /** Capacitance of a leg by the nameplates [F]. */
    static double nameplateLegFarads(Stage stage) {
        LegLayout layout = stage.layoutOf(stage.legs().getFirst());
        return stage.unit().capacitanceFarads() * layout.units() * layout.strings() / layout.groups();
    }

    /**
     * Rise {@code 1/(1 − ω²·L·C)} of all voltages and currents by a reactor in each phase, with {@code C} as that phase sees it.
     *
     * <p><b>Accuracy.</b> Exact for legs as on the nameplates; the network gives the values shown.
     */
    private static double reactorRise(Bank bank, Stage stage) {
        if (stage.reactor().isEmpty()) {
            return 1.0;
        }
        double leg = nameplateLegFarads(stage);
        boolean inLeg = stage.reactor().get().position() == Reactor.Position.NEUTRAL;
        double phase = switch (stage.connection()) {
            case WYE_GROUNDED, WYE_UNGROUNDED, BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> leg;
            case DELTA -> inLeg ? leg : 3.0 * leg;
            case DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> inLeg ? leg : 2.0 * leg;
        };
        double omega = bank.system().angularFrequency();
        return 1.0 / Math.abs(1.0 - omega * omega * stage.reactor().get().henries() * phase);
    }

    /** Number of the group that a position of this stage belongs to. */
    int groupOf(UnitPosition position) {
        int before = 0;
        for (String leg : stage.legs()) {
            LegLayout layout = stage.layoutOf(leg);
            if (stage.hasThreePhaseUnits() || leg.equals(position.leg())) {
                return before + (position.string() - 1) * layout.groups() + position.group() - 1;
            }
            before += layout.strings() * layout.groups();
        }
        throw new IllegalArgumentException(position.name() + " is not in stage " + stage.name());
    }

    /** 0, 1, 2 for the phase that the leg hangs on; of a delta, the phase of its first letter. */
    int phaseOf(int leg) {
        return connection.isBridge() ? leg / 4 : leg % 3;
    }
}
