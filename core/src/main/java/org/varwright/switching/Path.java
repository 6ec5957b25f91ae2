package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Connection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.basis.Term;

/**
 * Inductance and resistance of one phase from the common point to a stage's capacitors.
 *
 * @param lineHenries reactor in the line [H]
 * @param neutralHenries reactor at the neutral or inside each leg of a delta, as it counts in one phase [H]
 * @param strayHenries of the stage's own wiring [H]
 * @param busMetres of bus or cable [m]
 * @param ohms of the reactor, as it counts in one phase [Ω]
 * @param gaps what the file doesn't say
 */
record Path(
        double lineHenries, double neutralHenries, double strayHenries, double busMetres, double ohms, List<Gap> gaps) {
    /** Inductance of bus or cable, lower end of what is usual [H/m]. */
    static final double LEAST_PER_METRE = 0.65e-6;

    /** Upper end [H/m]. */
    static final double MOST_PER_METRE = 1.0e-6;

    Path {
        gaps = List.copyOf(gaps);
    }

    static Path of(Stage stage) {
        List<Gap> gaps = new ArrayList<>();
        double line = 0.0;
        double neutral = 0.0;
        double ohms = 0.0;
        if (stage.reactor().isPresent()) {
            Reactor reactor = stage.reactor().get();
            if (reactor.resistanceOhms().isEmpty()) {
                gaps.add(Gap.of(
                        stage.name(),
                        "resistance of the reactor (reactor: {resistance: …})",
                        "counted as 0 Ω: I²t and later peaks come out too high as a rule"));
            }
            double factor = reactor.position() == Reactor.Position.LINE ? 1.0 : inOnePhase(stage);
            ohms = reactor.resistanceOhms().orElse(0.0) * factor;
            line = reactor.position() == Reactor.Position.LINE ? reactor.henries() : 0.0;
            neutral = reactor.position() == Reactor.Position.NEUTRAL ? reactor.henries() * factor : 0.0;
        }
        if (stage.strayHenries().isEmpty()) {
            gaps.add(Gap.of(
                    stage.name(),
                    "inductance of its own wiring (stray-inductance)",
                    "counted as 0 H: by formula current and frequency come out too high; in time as a rule, but by some per"
                            + " cent the other way where stages of several frequencies meet"));
        }
        if (stage.busMetres().isEmpty()) {
            gaps.add(Gap.of(
                    stage.name(),
                    "length of bus from the common point (bus-length)",
                    "counted as 0 m: by formula current and frequency come out too high; in time as a rule, but by some per"
                            + " cent the other way where stages of several frequencies meet"));
        }
        return new Path(
                line,
                neutral,
                stage.strayHenries().orElse(0.0),
                stage.busMetres().orElse(0.0),
                ohms,
                gaps);
    }

    /** Two wyes carry half each; a reactor in each leg of a delta counts a third. */
    private static double inOnePhase(Stage stage) {
        if (stage.connection() == Connection.DELTA) {
            return 1.0 / 3.0;
        }
        return stage.connection().isDoubleWye() ? 0.5 : 1.0;
    }

    /** The same with more in the line. */
    Path plus(double henries) {
        return new Path(lineHenries + henries, neutralHenries, strayHenries, busMetres, ohms, gaps);
    }

    /** What stands between the bus and the stage's terminals [H]. */
    double aheadHenries(double perMetre) {
        return lineHenries + strayHenries + busMetres * perMetre;
    }

    /** The whole phase [H]. */
    double henries(double perMetre) {
        return aheadHenries(perMetre) + neutralHenries;
    }

    /** Terms for a basis; {@code which} tells stages apart. */
    List<Term> terms(String which, double perMetre) {
        List<Term> terms = new ArrayList<>();
        terms.add(new Term("L_" + which, "one phase of " + which + ", all of it", henries(perMetre), "H"));
        if (lineHenries + neutralHenries > 0.0) {
            terms.add(new Term("", "of which reactor", lineHenries + neutralHenries, "H"));
        }
        if (strayHenries > 0.0) {
            terms.add(new Term("", "of which its own wiring", strayHenries, "H"));
        }
        if (busMetres > 0.0) {
            terms.add(new Term(
                    "",
                    "of which " + busMetres + " m of bus at " + perMetre * 1e6
                            + " µH/m (0.65 to 1 is usual: common practice, no source)",
                    busMetres * perMetre,
                    "H"));
        }
        return terms;
    }
}
