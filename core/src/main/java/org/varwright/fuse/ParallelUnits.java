package org.varwright.fuse;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;

/**
 * Units that lie in parallel with a unit and so discharge into it when it shorts, counted with it.
 *
 * @param ownLeg units of its own leg (of its own group where groups are in series)
 * @param ownStage those of the whole stage
 * @param wholeBank those of every stage, all switched on, as if they were units of this stage's type: by capacitance
 * @param throughBus whether units of other stages are among them
 */
public record ParallelUnits(int ownLeg, int ownStage, double wholeBank, boolean throughBus) {
    /**
     * The units in parallel with those of a leg.
     *
     * <p><b>Model.</b> Two units are in parallel where both ends are joined by conductors: units of a group; where a leg has one group only also its strings, the
     * other wye's leg of that phase, the other half of a bridge (through its sensor), and, with the far end on ground or in delta, the same legs of other
     * such stages through the bus.
     */
    static ParallelUnits of(Bank bank, Stage stage, String leg) {
        if (stage.unit()
                .threePhase()
                .filter(c -> c == InternalConnection.WYE_UNGROUNDED)
                .isPresent()) {
            return new ParallelUnits(1, 1, 1.0, false);
        }
        LegLayout layout = stage.layoutOf(leg);
        if (layout.groups() > 1) {
            return new ParallelUnits(layout.units(), layout.units(), layout.units(), false);
        }
        int own = units(layout);
        int whole = inStage(stage, leg);
        double bankWide = whole;
        boolean throughBus = false;
        if (sharesBus(stage)) {
            for (Stage other : bank.stages()) {
                if (!other.name().equals(stage.name())
                        && sharesBus(other)
                        && stage.connection().isGrounded() == other.connection().isGrounded()) {
                    String same = sameLeg(other, leg);
                    if (other.layoutOf(same).groups() == 1) {
                        double ratio =
                                other.unit().capacitanceFarads() / stage.unit().capacitanceFarads();
                        bankWide += inStage(other, same) * ratio;
                        throughBus = true;
                    }
                }
            }
        }
        return new ParallelUnits(own, whole, bankWide, throughBus);
    }

    /** Legs of a bridge have two quarters in series: the line's ends are not a unit's ends. */
    private static boolean sharesBus(Stage stage) {
        return switch (stage.connection()) {
            case WYE_GROUNDED, DOUBLE_WYE_GROUNDED, DELTA -> true;
            case WYE_UNGROUNDED, DOUBLE_WYE_UNGROUNDED, BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> false;
        };
    }

    private static int inStage(Stage stage, String leg) {
        return partners(stage.connection(), leg).stream()
                .map(stage::layoutOf)
                .filter(l -> l.groups() == 1)
                .mapToInt(ParallelUnits::units)
                .sum();
    }

    /** Legs whose two ends are those of the leg, itself among them. */
    private static List<String> partners(Connection connection, String leg) {
        if (connection.isDoubleWye()) {
            String phase = leg.substring(0, 1);
            return List.of(phase + "1", phase + "2");
        }
        if (connection.isBridge()) {
            String phase = leg.substring(0, 1);
            String level = leg.substring(leg.length() - 1);
            return List.of(phase + "-u" + level, phase + "-l" + level);
        }
        return List.of(leg);
    }

    private static String sameLeg(Stage other, String leg) {
        String phase = leg.substring(0, 1);
        return other.legs().stream()
                .filter(l -> l.startsWith(phase))
                .findFirst()
                .orElseThrow();
    }

    private static int units(LegLayout layout) {
        return layout.strings() * layout.units();
    }
}
