package org.varwright.unbalance;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.varwright.bank.Protection;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;

/**
 * The settings that one sensor should have, and what to think of those it has. Values are primary [V] or [A].
 *
 * @param protection the sensor in the bank file
 * @param kind the failure that it is set for
 * @param firstSignal smallest change that one failure makes anywhere
 * @param lastAllowed largest change of any number of failures that may run on; empty where none may
 * @param firstForbidden smallest change of any number of failures that may not; empty where all may
 * @param forbiddenCount how many failures in one group are the first that may not; empty where any number may
 * @param error what it may show although nothing failed
 * @param alarm proposed; empty where there is no room for an alarm without a trip
 * @param trip proposed; empty where no number of failures asks for one
 * @param compensated whether inherent unbalance must be subtracted for the proposal to hold
 * @param alarmBasis how the alarm came about
 * @param tripBasis how the trip came about
 * @param checks of the settings in the bank file
 * @param remarks in words
 */
public record SettingStudy(
        Protection protection,
        String kind,
        double firstSignal,
        OptionalDouble lastAllowed,
        OptionalDouble firstForbidden,
        OptionalInt forbiddenCount,
        ErrorBudget error,
        OptionalDouble alarm,
        OptionalDouble trip,
        boolean compensated,
        Basis alarmBasis,
        Basis tripBasis,
        List<Check> checks,
        List<String> remarks) {
    public SettingStudy {
        checks = List.copyOf(checks);
        remarks = List.copyOf(remarks);
    }

    /** Such as {@code rack neutral-current}. */
    public String name() {
        return protection.stage() + " " + protection.senses().code();
    }
}
