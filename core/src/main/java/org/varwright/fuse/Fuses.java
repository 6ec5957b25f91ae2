package org.varwright.fuse;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.FuseType;
import org.varwright.bank.Stage;
import org.varwright.basis.Check;
import org.varwright.basis.Unanswered;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.switching.Inrush;

/**
 * Whether every fuse of a bank suits its place, and which standard link would.
 *
 * @param bank the bank
 * @param studies one a fuse position, unit fuse before line fuse, in the order of the stages
 * @param unfused stages without any fuse of their own
 * @param notAnswered what is missing, one by one, with what can't be said without it
 */
public record Fuses(Bank bank, List<FuseStudy> studies, List<Stage> unfused, List<Unanswered> notAnswered) {
    public Fuses {
        studies = List.copyOf(studies);
        unfused = List.copyOf(unfused);
        notAnswered = List.copyOf(notAnswered);
    }

    /**
     * Looks at the fuses of a bank.
     *
     * @throws VarwrightException {@code FUSE_STAGE_UNKNOWN}, {@code FUSE_NONE}
     */
    public static Fuses of(Bank bank, FuseOptions options) {
        return of(bank, options, InrushShare.of(bank));
    }

    /** The same with every closing simulated already. */
    public static Fuses of(Bank bank, FuseOptions options, Inrush inrush) {
        return of(bank, options, InrushShare.of(inrush));
    }

    /** The same with an inrush that is known already: it does not depend on the links. */
    static Fuses of(Bank bank, FuseOptions options, InrushShare inrush) {
        List<FuseStudy> studies = new ArrayList<>();
        List<Stage> unfused = new ArrayList<>();
        Set<Unanswered> missing = new LinkedHashSet<>();
        FuseStudies maker = new FuseStudies(bank, options, HarmonicShare.of(bank), inrush, missing);
        for (Stage stage : stages(bank, options)) {
            Stage asked =
                    options.link().isPresent() ? withLink(stage, options.link().get()) : stage;
            if (asked.fuse().isEmpty() && asked.lineFuse().isEmpty()) {
                unfused.add(asked);
            } else {
                studies.addAll(maker.of(asked));
            }
        }
        if (!studies.isEmpty()) {
            missing.add(new Unanswered(
                    "the case-rupture curve of the units (a bank file has no place for it)",
                    "whether a fuse clears before the case of a failed unit opens: ask the maker of the units"));
        }
        if (bank.system().shortCircuitVoltAmperes().isPresent()
                && bank.system().xOverR().isEmpty()) {
            missing.add(new Unanswered(
                    "system.x-over-r", "the resistance of the supply: its impedance was taken as reactance alone"));
        }
        return new Fuses(bank, studies, unfused, List.copyOf(missing));
    }

    /** Values against limits, of every position in order. */
    public List<Check> checks() {
        return studies.stream().flatMap(s -> s.checks().stream()).toList();
    }

    /** Whether there is nothing to judge because every unit has its fuses inside. */
    public boolean allInside() {
        return studies.isEmpty()
                && unfused.stream()
                        .allMatch(s -> s.unit()
                                .construction()
                                .filter(c -> c.internallyFused())
                                .isPresent());
    }

    private static List<Stage> stages(Bank bank, FuseOptions options) {
        if (options.stage().isEmpty()) {
            return bank.stages();
        }
        String name = options.stage().get();
        return List.of(bank.stage(name)
                .orElseThrow(() -> new VarwrightException(
                        Message.FUSE_STAGE_UNKNOWN,
                        new Place("", 0, 0, "--stage"),
                        name,
                        String.join(
                                ", ", bank.stages().stream().map(Stage::name).toList()))));
    }

    /** The stage with another link where its units are fused, else in its lines; what the file says of the old link's I²t no longer holds. */
    private static Stage withLink(Stage stage, Link link) {
        Optional<FuseType> unit = stage.fuse().map(f -> with(f, link));
        Optional<FuseType> line =
                stage.fuse().isPresent() ? stage.lineFuse() : stage.lineFuse().map(f -> with(f, link));
        return new Stage(
                stage.name(),
                stage.connection(),
                stage.switchName(),
                stage.layout(),
                stage.second(),
                stage.unit(),
                unit,
                line,
                stage.reactor(),
                stage.busMetres(),
                stage.strayHenries(),
                stage.dischargePath(),
                stage.label(),
                stage.note());
    }

    private static FuseType with(FuseType fuse, Link link) {
        return new FuseType(
                fuse.name(),
                FuseType.Kind.EXPULSION,
                Optional.of(link.name()),
                OptionalDouble.of(link.ratedAmperes()),
                fuse.ratedVolts(),
                fuse.maximumParallelJoules(),
                fuse.interruptingAmperes(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                fuse.note());
    }
}
