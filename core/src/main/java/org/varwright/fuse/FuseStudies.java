package org.varwright.fuse;

import java.util.ArrayList;
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

/** Looks at the fuses of one stage after another, and gathers what is missing. */
final class FuseStudies {
    private final Bank bank;
    private final FuseOptions options;
    private final HarmonicShare harmonics;
    private final InrushShare inrush;
    private final Set<Unanswered> missing;

    FuseStudies(Bank bank, FuseOptions options, HarmonicShare harmonics, InrushShare inrush, Set<Unanswered> missing) {
        this.bank = bank;
        this.options = options;
        this.harmonics = harmonics;
        this.inrush = inrush;
        this.missing = missing;
    }

    /** The unit fuses of a stage, then its line fuses. */
    List<FuseStudy> of(Stage stage) {
        harmonics.missing().ifPresent(missing::add);
        inrush.missing().ifPresent(missing::add);
        UnitPosition at = stage.positions().getFirst();
        FullShort.Result fault = FullShort.of(bank, stage, at);
        List<FuseStudy> studies = new ArrayList<>();
        stage.fuse()
                .ifPresent(f -> studies.add(study(
                        Demand.of(bank, stage, FusePlace.UNIT, fault, harmonics),
                        f,
                        Optional.of(ParallelEnergy.of(bank, stage, fullestLeg(stage), options)),
                        Optional.empty())));
        Optional<FuseStudy> unit = studies.stream().findFirst();
        stage.lineFuse()
                .ifPresent(f -> studies.add(study(
                        Demand.of(bank, stage, FusePlace.LINE, fault, harmonics),
                        f,
                        Optional.empty(),
                        unit.map(FuseStudy::curve))));
        if (studies.size() == 2) {
            coordinate(studies);
        }
        return studies;
    }

    /** A leg with the most units in parallel: the wyes of a double wye need not be alike. */
    private String fullestLeg(Stage stage) {
        String fullest = stage.positions().getFirst().leg();
        if (stage.hasThreePhaseUnits()) {
            return fullest;
        }
        double most = 0.0;
        for (String leg : stage.legs()) {
            double units = ParallelUnits.of(bank, stage, leg).wholeBank();
            if (units > most * (1.0 + 1e-9)) {
                most = units;
                fullest = leg;
            }
        }
        return fullest;
    }

    /** Adds to the unit fuse's checks whether it clears before the line fuse melts. */
    private void coordinate(List<FuseStudy> studies) {
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

    private FuseStudy study(Demand demand, FuseType fuse, Optional<ParallelEnergy> energy, Optional<FuseCurve> behind) {
        Optional<Link> link = fuse.link().flatMap(LinkTable::named);
        FuseCurve curve = curve(fuse, link);
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
                inrush.of(demand.stage(), demand.place()),
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
        inrush.of(demand.stage(), demand.place()).ifPresent(surge::inrush);
        checks.addAll(surge.checks());
        missing.addAll(surge.missing());
        return study.with(checks);
    }

    private FuseCurve curve(FuseType fuse, Optional<Link> link) {
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
}
