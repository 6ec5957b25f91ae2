package org.varwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.isolation.Access;
import org.varwright.isolation.Plan;
import org.varwright.isolation.PlanRequest;

/** Makes orders of work. The same bank and request always give the same plan, so a caller may keep plans. */
@FunctionalInterface
public interface Planner {
    /** Plans anew each time. */
    Planner ANEW = Access::plan;

    /** Plans a request once and keeps the latest few plans, for one thread: telling a job asks for every order twice, and again with each event more. */
    static Planner keeping() {
        int most = 8;
        Map<Object, Plan> plans = new LinkedHashMap<>(most, 0.75f, true) {
            private static final long serialVersionUID = 1L;

            @Override
            protected boolean removeEldestEntry(Map.Entry<Object, Plan> eldest) {
                return size() > most;
            }
        };
        return (bank, request) -> plans.computeIfAbsent(List.of(bank, request), k -> Access.plan(bank, request));
    }

    Plan plan(Bank bank, PlanRequest request);
}
