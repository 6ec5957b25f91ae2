package org.varwright.duty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.SwitchType;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.resonance.FundamentalDuty;

/**
 * What the conductors of a stage must carry.
 *
 * @param stage its name
 * @param ratedAmperes line current at the units' rated voltage and frequency [A]
 * @param requiredAmperes 135 % of it [A]
 * @param checks reactor and switch against what they must carry, where the bank file gives their ratings
 */
public record ConductorDuty(String stage, double ratedAmperes, double requiredAmperes, List<Check> checks) {
    /** Conductors carry at least this multiple of rated capacitor current. */
    public static final double AMPACITY = 1.35;

    static final Source SOURCE = Source.published("TM 5-683 / NAVFAC MO-116 ch. 2; NEC 460.8: at least 135 %");

    public ConductorDuty {
        checks = List.copyOf(checks);
    }

    /** The conductors of one stage. */
    static ConductorDuty of(Bank bank, Stage stage, double rmsAmperes) {
        double rated = ratedLineAmperes(stage);
        List<Check> checks = new ArrayList<>();
        stage.reactor()
                .flatMap(r -> r.ratedAmperes().isPresent()
                        ? Optional.of(r.ratedAmperes().getAsDouble())
                        : Optional.empty())
                .ifPresent(limit -> checks.add(new Check(
                        stage.name() + ": highest rms line current against the reactor's rating",
                        rmsAmperes,
                        limit,
                        "A",
                        rmsAmperes <= limit * (1.0 + 1e-9) ? Verdict.PASS : Verdict.FAIL,
                        new Basis(
                                "DUT-5",
                                "I_line ≤ I_reactor",
                                List.of(new Term(
                                        "I_line", "worst case looked at, harmonics included", rmsAmperes, "A")),
                                Source.commonPractice("the reactor's nameplate")))));
        bank.switchOf(stage)
                .flatMap(d -> d.type())
                .filter(t -> t.ratedAmperes().isPresent())
                .ifPresent(t -> checks.add(ofSwitch(stage, t, rated)));
        return new ConductorDuty(stage.name(), rated, AMPACITY * rated, checks);
    }

    private static Check ofSwitch(Stage stage, SwitchType type, double rated) {
        double limit = type.ratedAmperes().orElseThrow();
        double needed = AMPACITY * rated;
        return new Check(
                stage.name() + ": 135 % of rated line current against the continuous current of " + type.name(),
                needed,
                limit,
                "A",
                needed <= limit * (1.0 + 1e-9) ? Verdict.PASS : Verdict.FAIL,
                new Basis(
                        "DUT-5",
                        "1.35·I_rated ≤ I_switch",
                        List.of(new Term("I_rated", "line current at rated voltage and frequency", rated, "A")),
                        Source.commonPractice("as for conductors")));
    }

    /**
     * Line current of a stage when its units stand at rated voltage and frequency [A]: {@code Q_rated/(3·V_rated)} a phase (DUT-5).
     *
     * <p><b>Source.</b> First principles.
     */
    static double ratedLineAmperes(Stage stage) {
        double unit = FundamentalDuty.legRatedAmperes(stage.unit());
        double leg = unit * parallel(stage.layout());
        return switch (stage.connection()) {
            case WYE_GROUNDED, WYE_UNGROUNDED -> leg;
            case DELTA -> Math.sqrt(3.0) * leg;
            case DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED ->
                leg + unit * parallel(stage.second().orElse(stage.layout()));
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> 2.0 * leg;
        };
    }

    private static double parallel(LegLayout layout) {
        return (double) layout.strings() * layout.units();
    }
}
