package org.varwright.duty;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.limit.ShortTimeTable;
import org.varwright.quantity.Dimension;
import org.varwright.resonance.FundamentalDuty;

/**
 * A short-time overvoltage held against the table of the bank's standard.
 *
 * @param stage its name; empty where the same holds for every stage
 * @param multiple of rated unit voltage
 * @param seconds how long it stood [s]
 * @param allowance how long it may stand
 * @param highest multiple that may stand so long
 * @param check within or outside
 */
public record OvervoltageAnswer(
        String stage,
        double multiple,
        double seconds,
        ShortTimeTable.Allowance allowance,
        double highest,
        Check check) {
    static List<OvervoltageAnswer> of(Bank bank, DutyQuestion.Overvoltage asked, List<FundamentalDuty> fundamentals) {
        return switch (asked.height()) {
            case DutyQuestion.Height.PerRated(double multiple) -> List.of(of(bank, "", multiple, asked.seconds()));
            case DutyQuestion.Height.Bus(double volts) -> {
                List<OvervoltageAnswer> all = new ArrayList<>();
                for (FundamentalDuty base : fundamentals) {
                    double multiple = base.voltage() * volts / bank.system().nominalVolts();
                    all.add(of(bank, base.stage().name(), multiple, asked.seconds()));
                }
                yield List.copyOf(all);
            }
        };
    }

    private static OvervoltageAnswer of(Bank bank, String stage, double multiple, double seconds) {
        ShortTimeTable table = ShortTimeTable.of(bank.standard(), bank.system().frequencyHertz());
        double highest = table.highest(seconds);
        boolean within = table.within(multiple, seconds);
        Check check = new Check(
                (stage.isEmpty() ? "" : stage + ": ") + "overvoltage over rated for " + Dimension.TIME.format(seconds),
                multiple,
                highest,
                "",
                within ? Verdict.PASS : Verdict.FAIL,
                new Basis(
                        "DUT-4",
                        "between two rows the stricter one counts",
                        List.of(
                                new Term("t", "how long it stands", seconds, "s"),
                                new Term("V", "rms voltage of a unit over rated", multiple, "")),
                        table.source()));
        return new OvervoltageAnswer(stage, multiple, seconds, table.allowed(multiple), highest, check);
    }

    /** The answer in one sentence. */
    public String sentence() {
        String what = (stage.isEmpty() ? "" : stage + ": ") + Dimension.digits(multiple, 4)
                + " times rated voltage for " + Dimension.TIME.format(seconds);
        return switch (allowance) {
            case ShortTimeTable.Allowance.ForGood good -> what + " is within the continuous limit: no limit in time.";
            case ShortTimeTable.Allowance.AtMost(double most) ->
                what + (check.verdict() == Verdict.PASS ? " is within" : " is OUTSIDE")
                        + " the short-time table: this voltage may stand " + Dimension.TIME.format(most)
                        + " each time; for " + Dimension.TIME.format(seconds) + " at most "
                        + Dimension.digits(highest, 3) + " is allowed.";
            case ShortTimeTable.Allowance.Never never ->
                what + " is OUTSIDE the short-time table for any time: take the units out and measure them.";
        };
    }
}
