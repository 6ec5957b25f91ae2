package org.varwright.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.network.Solution;
import org.varwright.plot.Circle;
import org.varwright.plot.Dash;
import org.varwright.plot.Dial;
import org.varwright.plot.Phasor;
import org.varwright.quantity.Complex;
import org.varwright.quantity.Dimension;

/** Dials that several pictures have in common. */
final class Phasors {
    static final String AGAINST = "Angles against the voltage of phase A, counter-clockwise.";

    /** What is below this part of the rest of a dial is rounding. */
    private static final double ROUNDING = 1e-9;

    private Phasors() {}

    /** Zero where it is rounding beside {@code scale}. */
    static Complex clean(Complex value, double scale) {
        return value.magnitude() <= ROUNDING * scale ? Complex.ZERO : value;
    }

    /**
     * Voltages across the legs, healthy and with a failure, between the moved neutral and the terminals; of a double wye the side that is named.
     *
     * @param side {@code 1} or {@code 2} of a double wye; empty for others
     * @return empty for bridges, whose quarters of one phase lie in one line
     */
    static Optional<Dial> legs(Stage stage, String side, Solution.Solved healthy, Solution.Solved failed) {
        if (stage.connection().isBridge()) {
            return Optional.empty();
        }
        Dial dial =
                Dial.of("Leg voltages, " + stage.name() + (side.isEmpty() ? "" : ", wye " + side), Dimension.VOLTAGE);
        List<Phasor> before = new ArrayList<>();
        List<Phasor> now = new ArrayList<>();
        double largest = 0.0;
        for (Solution.LegValue leg : failed.legs()) {
            largest = Math.max(largest, leg.volts().magnitude());
        }
        int number = side.equals("2") ? 2 : 1;
        Complex neutral = clean(neutral(failed, stage, number), largest);
        Complex rest = clean(neutral(healthy, stage, number), largest);
        for (Solution.LegValue leg : failed.legs()) {
            if (leg.stage().equals(stage.name()) && leg.leg().endsWith(side)) {
                healthy.leg(stage.name(), leg.leg())
                        .ifPresent(h -> before.add(Phasor.of(leg.leg() + " healthy", h.volts())
                                .from(rest)
                                .with(Dash.DASHED)));
                now.add(Phasor.of(leg.leg(), clean(leg.volts(), largest)).from(neutral));
            }
        }
        for (int i = 0; i < now.size(); i++) {
            dial = i < before.size() ? dial.with(before.get(i)) : dial;
            dial = dial.with(now.get(i));
        }
        return Optional.of(
                neutral.equals(Complex.ZERO)
                        ? dial
                        : dial.with(Phasor.of("neutral", neutral).with(Dash.DOTTED)));
    }

    private static Complex neutral(Solution.Solved solved, Stage stage, int number) {
        return solved.neutrals().stream()
                .filter(n -> n.stage().equals(stage.name()) && n.number() == number)
                .map(Solution.NeutralValue::volts)
                .findFirst()
                .orElse(Complex.ZERO);
    }

    /** A dial with the settings of a sensor as circles, where they are known as primary values. */
    static Dial settings(Dial dial, Bank bank, String stage, Protection.Senses senses) {
        Dial all = dial;
        for (Protection p : bank.protection()) {
            if (p.stage().equals(stage) && p.senses() == senses) {
                for (Setting set : Setting.of(p)) {
                    all = all.with(Circle.limit(set.primary(), set.words()));
                }
            }
        }
        return all;
    }
}
