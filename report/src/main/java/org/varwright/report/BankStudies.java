package org.varwright.report;

import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.duty.Duty;
import org.varwright.fuse.FuseOptions;
import org.varwright.fuse.Fuses;
import org.varwright.network.Supply;
import org.varwright.switching.Inrush;
import org.varwright.switching.InrushRequest;
import org.varwright.unbalance.Assumptions;
import org.varwright.unbalance.Unbalance;

/** What the bank file alone answers, worked out once a report. */
record BankStudies(Duty duty, Inrush inrush, Fuses fuses, Unbalance unbalance) {
    static BankStudies of(Bank bank) {
        Inrush inrush = Inrush.of(bank, InrushRequest.EVERYTHING);
        Supply supply = new Supply.Balanced(bank.system().nominalVolts());
        return new BankStudies(
                DutySection.duty(bank),
                inrush,
                Fuses.of(bank, FuseOptions.AS_FILED, inrush),
                Unbalance.of(bank, Map.of(), supply, Assumptions.USUAL));
    }
}
