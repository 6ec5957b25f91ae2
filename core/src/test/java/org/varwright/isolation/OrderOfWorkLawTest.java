package org.varwright.isolation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyCopies;
import org.varwright.problem.VarwrightException;

/** Whatever is broken about a scheme: what is planned stands up to the plain simulator, and everything else is refused or undecided. */
class OrderOfWorkLawTest {
    private static final int ROUNDS = 100;
    private static final int LIMIT = 12_000;

    @Test
    void aDamagedSchemeGivesAProvenPlanOrNone() {
        int planned = 0;
        int refused = 0;
        List<Bank> banks = Banks.all();
        for (int round = 0; round < ROUNDS; round++) {
            long seed = 20_260_500L + round;
            Random random = new Random(seed);
            Bank bank = damaged(banks.get(random.nextInt(banks.size())), random);
            List<String> doors = bank.isolation().orElseThrow().compartments().stream()
                    .map(c -> c.name())
                    .toList();
            String door = doors.get(random.nextInt(doors.size()));
            PlanRequest request = new PlanRequest(List.of(door), new PlanRequest.Start.AsInFile(), Set.of(), LIMIT);
            Plan plan;
            try {
                plan = Access.plan(bank, request);
            } catch (VarwrightException e) {
                assertFalse(e.problems().isEmpty());
                continue;
            }
            String where = "seed " + seed + " " + bank.name() + " " + door;
            switch (plan) {
                case Plan.Planned found -> {
                    planned++;
                    try {
                        OrderOfWorkTraceTest.replay(found.order());
                    } catch (AssertionError e) {
                        throw new AssertionError(where, e);
                    }
                    assertTrue(found.order().faults().stream().noneMatch(Fault::isHole), where);
                    assertEquals(plan, Access.plan(bank, request), where);
                }
                case Plan.Refused none -> {
                    refused++;
                    assertFalse(none.reason().isBlank(), where);
                }
                case Plan.Undecided given -> assertTrue(given.limit() <= LIMIT, where);
            }
        }
        assertTrue(planned >= 20 && refused >= 1, planned + " planned, " + refused + " refused");
    }

    /** Some locks, delays, interlocks, windows or sources gone or changed. */
    private static Bank damaged(Bank bank, Random random) {
        return Reworked.with(bank, i -> {
            Isolation changed = new Isolation(
                    sources(i, random),
                    devices(i, random),
                    i.compartments(),
                    some(i.locks(), random),
                    keys(i, random),
                    i.exchanges(),
                    some(i.interlocks(), random),
                    random.nextInt(3) == 0 ? List.of() : i.delays(),
                    i.start());
            return new Isolation(
                    changed.sources(),
                    changed.devices(),
                    changed.compartments(),
                    changed.locks(),
                    changed.keys(),
                    changed.exchanges(),
                    changed.interlocks(),
                    changed.delays().stream().filter(d -> stands(d, changed)).toList(),
                    changed.start());
        });
    }

    /** A delay whose lock went with the damage goes too. */
    private static boolean stands(org.varwright.bank.Delay delay, Isolation isolation) {
        return !(delay.of() instanceof org.varwright.bank.Delay.Of.Bolt bolt)
                || isolation.locks().stream()
                        .anyMatch(l -> l.on().equals(bolt.on()) && l.keys().contains(bolt.key()));
    }

    private static <T> List<T> some(List<T> all, Random random) {
        List<T> kept = new ArrayList<>(all);
        for (int n = random.nextInt(3); n > 0 && !kept.isEmpty(); n--) {
            kept.remove(random.nextInt(kept.size()));
        }
        return kept;
    }

    private static List<EnergySource> sources(Isolation i, Random random) {
        List<EnergySource> all = new ArrayList<>(i.sources());
        if (random.nextInt(6) == 0) {
            List<String> conductors = List.copyOf(i.conductors());
            all.add(new EnergySource(
                    "tie",
                    conductors.get(random.nextInt(conductors.size())),
                    java.util.OptionalDouble.empty(),
                    Optional.empty()));
        }
        return all;
    }

    private static List<Device> devices(Isolation i, Random random) {
        List<Device> all = new ArrayList<>();
        for (Device device : i.devices()) {
            all.add(random.nextInt(4) == 0 ? Reworked.blind(device) : device);
        }
        return all;
    }

    private static List<KeyCopies> keys(Isolation i, Random random) {
        List<KeyCopies> all = new ArrayList<>();
        for (String key : i.keyNames()) {
            if (random.nextInt(12) == 0) {
                all.add(new KeyCopies(key, 2, Optional.empty()));
            }
        }
        return all;
    }
}
