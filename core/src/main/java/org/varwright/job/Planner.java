package org.varwright.job;

import org.varwright.bank.Bank;
import org.varwright.isolation.Access;
import org.varwright.isolation.Plan;
import org.varwright.isolation.PlanRequest;

/** Makes orders of work. The same bank and request always give the same plan, so a caller may keep plans. */
@FunctionalInterface
public interface Planner {
    /** Plans anew each time. */
    Planner ANEW = Access::plan;

    Plan plan(Bank bank, PlanRequest request);
}
