package org.varwright.bench;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;
import org.varwright.fit.CpSatFit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitOptions;
import org.varwright.fit.Fitted;
import org.varwright.network.Banks;

/** Large fits: 144 positions of a wye, 3 units condemned, 8 spares, up to two extra lifts, least unbalance. Capacitances are whole nanofarads. */
final class FitSubject {
    private static final long SEED = 144;
    static final int EXTRA_LIFTS = 2;
    /** [F] */
    static final double STEP = 1e-9;

    private static final int CONDEMNED = 3;
    private static final int SPARES = 8;
    /** Units lie between their nameplate and this part above it. */
    private static final double SPREAD = 0.08;

    private FitSubject() {}

    /** Grounded, 48 units in parallel a leg: the neutral current is linear in the capacitances. */
    static FitInput linear() {
        return linear(48);
    }

    /** Grounded, so many units in parallel a leg. */
    static FitInput linear(int parallel) {
        return input(Banks.plan(Connection.WYE_GROUNDED, 1, 1, parallel)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_CURRENT, 100.0, 5.0))
                .bank());
    }

    /** Ungrounded, each leg four groups of twelve units in series. */
    static FitInput inSeries() {
        return input(Banks.plan(Connection.WYE_UNGROUNDED, 1, 4, 12)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_VOLTAGE, 8400.0, 120.0))
                .bank());
    }

    private static FitInput input(Bank bank) {
        Random random = new Random(SEED);
        UnitType type = bank.stages().getFirst().unit();
        List<UnitPosition> shuffled = new ArrayList<>(bank.positions());
        Collections.shuffle(shuffled, random);
        List<UnitPosition> condemned = shuffled.subList(0, CONDEMNED);
        List<Fitted> units = new ArrayList<>();
        for (UnitPosition position : bank.positions()) {
            boolean bad = condemned.contains(position);
            units.add(new Fitted(
                    position,
                    Optional.of("N-" + position.name()),
                    farads(type, random) * (bad ? 1.2 : 1.0),
                    Fitted.From.MEASURED,
                    bad ? Fitted.Role.CONDEMNED : Fitted.Role.KEPT,
                    ""));
        }
        List<Spare> spares = new ArrayList<>();
        for (int i = 1; i <= SPARES; i++) {
            spares.add(new Spare("S-" + i, type, OptionalDouble.of(farads(type, random)), Optional.empty()));
        }
        FitOptions options =
                new FitOptions(List.of(), List.of(), List.of(), FitOptions.Aim.LEAST_UNBALANCE, EXTRA_LIFTS);
        return CpSatFit.rounded(new FitInput(bank, units, spares, options, List.of(), List.of()), STEP);
    }

    private static double farads(UnitType type, Random random) {
        return type.capacitanceFarads() * (1.0 + SPREAD * random.nextDouble());
    }
}
