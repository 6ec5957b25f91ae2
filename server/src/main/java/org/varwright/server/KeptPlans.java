package org.varwright.server;

import java.util.LinkedHashMap;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.isolation.Access;
import org.varwright.isolation.Plan;
import org.varwright.isolation.PlanRequest;
import org.varwright.job.Planner;

/** Keeps the plans asked for last: a job is told anew with each line that comes in, its order of work is planned once. */
final class KeptPlans implements Planner {
    private static final int MOST = 32;

    private final Map<Wanted, Plan> plans = new LinkedHashMap<>(MOST, 0.75f, true);

    private record Wanted(Bank bank, PlanRequest request) {}

    @Override
    public Plan plan(Bank bank, PlanRequest request) {
        Wanted wanted = new Wanted(bank, request);
        synchronized (plans) {
            Plan kept = plans.get(wanted);
            if (kept != null) {
                return kept;
            }
        }
        Plan plan = Access.plan(bank, request);
        synchronized (plans) {
            plans.put(wanted, plan);
            if (plans.size() > MOST) {
                plans.remove(plans.keySet().iterator().next());
            }
        }
        return plan;
    }
}
