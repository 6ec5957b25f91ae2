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
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Check;
import org.varwright.basis.Unanswered;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

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
        List<FuseStudy> studies = new ArrayList<>();
        List<Stage> unfused = new ArrayList<>();
        Set<Unanswered> missing = new LinkedHashSet<>();
        for (Stage stage : stages(bank, options)) {
            Stage asked =
                    options.link().isPresent() ? withLink(stage, options.link().get()) : stage;
            if (asked.fuse().isEmpty() && asked.lineFuse().isEmpty()) {
                unfused.add(asked);
            } else {
                studies.addAll(study(bank, asked, options, missing));
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

    private static List<FuseStudy> study(Bank bank, Stage stage, FuseOptions options, Set<Unanswered> missing) {
        UnitPosition at = stage.positions().getFirst();
        FullShort.Result fault = FullShort.of(bank, stage, at);
        List<FuseStudy> studies = new ArrayList<>();
        stage.fuse()
                .ifPresent(f -> studies.add(study(
                        Demand.of(bank, stage, FusePlace.UNIT, fault),
                        f,
                        Optional.of(ParallelEnergy.of(bank, stage, at.leg(), options)),
                        Optional.empty(),
                        missing)));
        Optional<FuseStudy> unit = studies.stream().findFirst();
        stage.lineFuse()
                .ifPresent(f -> studies.add(study(
                        Demand.of(bank, stage, FusePlace.LINE, fault),
                        f,
                        Optional.empty(),
                        unit.map(FuseStudy::curve),
                        missing)));
        if (studies.size() == 2) {
            coordinate(studies, missing);
        }
        return studies;
    }

    /** Adds to the unit fuse's checks whether it clears before the line fuse melts. */
    private static void coordinate(List<FuseStudy> studies, Set<Unanswered> missing) {
        FuseStudy unit = studies.getFirst();
        FuseStudy line = studies.getLast();
        if (unit.faultAmperes().isEmpty() || line.faultAmperes().isEmpty()) {
            return;
        }
        Coordination.of(
                        unit.curve(),
                        unit.faultAmperes().getAsDouble(),
                        line.curve(),
                        line.faultAmperes().getAsDouble())
                .ifPresentOrElse(
                        c -> studies.set(
                                0, unit.with(c.check(unit.name(), line.fuse().name()))),
                        () -> missing.add(new Unanswered(
                                "a clearing time of unit fuse " + unit.fuse().name()
                                        + " and a melting time of line fuse "
                                        + line.fuse().name()
                                        + " at the current of a shorted unit",
                                "whether the unit fuse clears first")));
    }

    private static FuseStudy study(
            Demand demand,
            FuseType fuse,
            Optional<ParallelEnergy> energy,
            Optional<FuseCurve> behind,
            Set<Unanswered> missing) {
        Optional<Link> link = fuse.link().flatMap(LinkTable::named);
        FuseCurve curve = curve(demand.bank(), fuse, link);
        OptionalDouble carries = fuse.ratedAmperes().isPresent()
                ? OptionalDouble.of(fuse.ratedAmperes().getAsDouble() * (link.isPresent() ? Link.CARRIES : 1.0))
                : link.map(l -> OptionalDouble.of(l.carriesAmperes())).orElse(OptionalDouble.empty());
        FuseStudy study = new FuseStudy(
                demand.stage(),
                demand.place(),
                fuse,
                link,
                curve,
                demand.rule(),
                carries,
                demand.service(),
                demand.fault(),
                energy,
                List.of(),
                fuse.kind() == FuseType.Kind.EXPULSION ? Proposer.propose(demand, behind) : List.of());
        FuseJudge judge = new FuseJudge(demand, fuse, link, carries, study.name());
        judge.judge(energy);
        SpeedJudge speed = new SpeedJudge(demand, curve, study.name());
        speed.judge();
        List<Check> checks = new ArrayList<>(judge.checks());
        checks.addAll(speed.checks());
        missing.addAll(judge.missing());
        missing.addAll(speed.missing());
        SurgeJudge surge = new SurgeJudge(fuse, link, study.name());
        energy.ifPresent(e -> surge.outrush(e.outrush()));
        checks.addAll(surge.checks());
        missing.addAll(surge.missing());
        return study.with(checks);
    }

    private static FuseCurve curve(Bank bank, FuseType fuse, Optional<Link> link) {
        if (link.isPresent()) {
            return new FuseCurve.OfLink(link.get(), bank.system().frequencyHertz(), fuse.meltingAmpereSquaredSeconds());
        }
        if (fuse.meltingAmpereSquaredSeconds().isPresent()
                || fuse.clearingAmpereSquaredSeconds().isPresent()) {
            return new FuseCurve.OfI2t(fuse.meltingAmpereSquaredSeconds(), fuse.clearingAmpereSquaredSeconds());
        }
        return new FuseCurve.NotKnown(
                fuse.link().isPresent()
                        ? "a curve of link \"" + fuse.link().get()
                                + "\" (the table has K and T links from 6 A to 200 A)"
                        : "link of fuse type " + fuse.name());
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
