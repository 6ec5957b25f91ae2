package org.varwright.switching;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One stage that closes.
 *
 * @param stage its name
 * @param alreadyOn names of the stages that are on
 * @param formula by closed form, with the inductance of the bus at the end that is worse; empty where data are missing
 * @param otherEnd the same with the inductance of the bus at its other end
 * @param simulation in time, at both ends
 */
public record InrushCase(
        String stage,
        List<String> alreadyOn,
        Optional<ClosedForm> formula,
        Optional<ClosedForm> otherEnd,
        Simulation simulation) {
    public InrushCase {
        alreadyOn = List.copyOf(alreadyOn);
    }

    /** Every closing that was simulated. */
    public List<Closing> closings() {
        return switch (simulation) {
            case Simulation.Worst w ->
                Stream.concat(
                                Stream.of(w.together(), w.togetherVolts(), w.apart(), w.apartVolts()),
                                w.lesser().stream())
                        .toList();
            case Simulation.Given g ->
                Stream.concat(Stream.of(g.closing()), g.lesser().stream()).toList();
            case Simulation.NotPossible n -> List.of();
        };
    }

    /** The closing that is judged first: poles together, or as asked for. */
    public Optional<Closing> main() {
        return switch (simulation) {
            case Simulation.Worst w -> Optional.of(w.together());
            case Simulation.Given g -> Optional.of(g.closing());
            case Simulation.NotPossible n -> Optional.empty();
        };
    }

    /** Closings with the poles as in the main one: all together, or as asked for. */
    public List<Closing> likeMain() {
        return switch (simulation) {
            case Simulation.Worst w ->
                closings().stream().filter(InrushCase::isTogether).toList();
            case Simulation.Given g -> closings();
            case Simulation.NotPossible n -> List.of();
        };
    }

    private static boolean isTogether(Closing closing) {
        return closing.degrees().stream().allMatch(closing.degrees().getFirst()::equals);
    }

    /** The closing with the largest current. */
    public Optional<Closing> largest() {
        return closings().stream().reduce((a, b) -> b.peakAmperes() > a.peakAmperes() * (1.0 + 1e-9) ? b : a);
    }

    /** Largest peak by any means; 0 where nothing could be said. */
    public double peakAmperes() {
        return Stream.concat(
                        closings().stream().map(Closing::peakAmperes),
                        closings().isEmpty() ? formula.map(ClosedForm::peakAmperes).stream() : Stream.empty())
                .mapToDouble(p -> p)
                .max()
                .orElse(0.0);
    }

    /** Such as {@code stage 2 onto stage 1 and stage 3}, or {@code stage 2 alone}. */
    public String title() {
        return stage + (alreadyOn.isEmpty() ? " alone" : " onto " + org.varwright.page.Enumeration.of(alreadyOn));
    }
}
