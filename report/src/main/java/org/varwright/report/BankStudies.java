package org.varwright.report;

import org.varwright.bank.Bank;
import org.varwright.duty.Duty;
import org.varwright.fuse.FuseOptions;
import org.varwright.fuse.Fuses;
import org.varwright.switching.Inrush;
import org.varwright.switching.InrushRequest;

/** What the bank file alone answers, worked out once a report. */
record BankStudies(Duty duty, Inrush inrush, Fuses fuses) {
    static BankStudies of(Bank bank) {
        Inrush inrush = Inrush.of(bank, InrushRequest.EVERYTHING);
        return new BankStudies(DutySection.duty(bank), inrush, Fuses.of(bank, FuseOptions.AS_FILED, inrush));
    }
}
