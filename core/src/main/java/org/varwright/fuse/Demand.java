package org.varwright.fuse;

import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.limit.ShortTimeTable;

/**
 * What a place asks of any fuse that is put there.
 *
 * @param bank the bank
 * @param stage the stage
 * @param place in series with a unit, or in a line
 * @param rule how much it must carry
 * @param service what it carries in service; empty where the network in good order has no solution
 * @param fault one unit shorted
 * @param table how long units bear an overvoltage
 * @param overvoltage what the others bear meanwhile; empty where the fault isn't known or the table has no row so high
 * @param trip what the unbalance protection does; empty where the fault isn't known
 */
record Demand(
        Bank bank,
        Stage stage,
        FusePlace place,
        RatingRule rule,
        Optional<ServiceCurrent> service,
        FullShort.Result fault,
        ShortTimeTable table,
        Optional<Overvoltage> overvoltage,
        Optional<BankTrip> trip) {
    /** Part of the current of a full short at which a fuse must still operate. */
    static final double LOW = 0.95;

    static Demand of(Bank bank, Stage stage, FusePlace place, FullShort.Result fault, HarmonicShare harmonics) {
        RatingRule rule = place == FusePlace.UNIT
                ? RatingRule.unit(bank.standard())
                : RatingRule.line(bank.standard(), stage.connection());
        ShortTimeTable table = ShortTimeTable.of(bank.standard(), bank.system().frequencyHertz());
        Optional<FullShort> found =
                fault instanceof FullShort.Result.Found(FullShort f) ? Optional.of(f) : Optional.empty();
        double high = bank.system().maximumVolts().orElse(bank.system().nominalVolts())
                / bank.system().nominalVolts();
        return new Demand(
                bank,
                stage,
                place,
                rule,
                ServiceCurrent.of(bank, stage, place, harmonics.factor(stage)),
                fault,
                table,
                found.flatMap(f -> Overvoltage.of(table, f.highestPerRated() * high)),
                found.map(f -> BankTrip.of(bank, stage, f)));
    }

    Optional<FullShort> found() {
        return fault instanceof FullShort.Result.Found(FullShort f) ? Optional.of(f) : Optional.empty();
    }

    /** Current through it with one unit shorted [A]. */
    OptionalDouble faultAmperes() {
        return found().isPresent() ? OptionalDouble.of(through(found().get())) : OptionalDouble.empty();
    }

    private double through(FullShort found) {
        return place == FusePlace.UNIT ? found.unitAmperes() : found.lineAmperes();
    }

    /** Whether this fuse has to clear a shorted unit itself: a unit fuse, or a line fuse where units have none. */
    boolean isFirst() {
        return place == FusePlace.UNIT || stage.fuse().isEmpty();
    }

    /** Voltage of the bank's highest sustained level over nominal. */
    double highOverNominal() {
        return bank.system().maximumVolts().orElse(bank.system().nominalVolts())
                / bank.system().nominalVolts();
    }
}
