package org.varwright.fuse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.FuseType;
import org.varwright.bank.Stage;
import org.varwright.basis.Check;

/**
 * One fuse position of one stage.
 *
 * @param stage the stage
 * @param place in series with a unit, or in a line
 * @param fuse as the bank file has it, or as it would be with the link that was asked for
 * @param link the standard link in it; empty where it has none or the table doesn't know it
 * @param curve when it melts and has cleared
 * @param rule how much it must carry
 * @param carriesAmperes what it carries for good [A]; empty where its rating isn't known
 * @param service what it carries in service; empty where the network in good order has no solution
 * @param fault one unit shorted
 * @param energy what discharges into a shorted unit; only at unit fuses
 * @param inrushAmpereSquaredSeconds I²t of inrush through it at worst; empty where it isn't known [A²s]
 * @param checks values against limits
 * @param proposals one a link type
 */
public record FuseStudy(
        Stage stage,
        FusePlace place,
        FuseType fuse,
        Optional<Link> link,
        FuseCurve curve,
        RatingRule rule,
        OptionalDouble carriesAmperes,
        Optional<ServiceCurrent> service,
        FullShort.Result fault,
        Optional<ParallelEnergy> energy,
        OptionalDouble inrushAmpereSquaredSeconds,
        List<Check> checks,
        List<Proposal> proposals) {
    public FuseStudy {
        checks = List.copyOf(checks);
        proposals = List.copyOf(proposals);
    }

    /** Such as {@code stage 1, unit fuse L40 (40T)}. */
    public String name() {
        return stage.name() + ", " + place.words() + " " + fuse.name()
                + fuse.link().map(l -> " (" + l + ")").orElse("");
    }

    FuseStudy with(List<Check> all) {
        return new FuseStudy(
                stage,
                place,
                fuse,
                link,
                curve,
                rule,
                carriesAmperes,
                service,
                fault,
                energy,
                inrushAmpereSquaredSeconds,
                all,
                proposals);
    }

    /** The same with one more check. */
    FuseStudy with(Check more) {
        List<Check> all = new ArrayList<>(checks);
        all.add(more);
        return with(all);
    }

    /** Current that the rule asks it to carry [A]; empty where the current of service isn't known. */
    public OptionalDouble neededAmperes() {
        return service.isPresent()
                ? OptionalDouble.of(rule.least() * service.get().ruleAmperes())
                : OptionalDouble.empty();
    }

    /** Current through it with a unit shorted [A]. */
    public OptionalDouble faultAmperes() {
        return switch (fault) {
            case FullShort.Result.Found(FullShort found) ->
                OptionalDouble.of(place == FusePlace.UNIT ? found.unitAmperes() : found.lineAmperes());
            case FullShort.Result.NotKnown none -> OptionalDouble.empty();
        };
    }
}
