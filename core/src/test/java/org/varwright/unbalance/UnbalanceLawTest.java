package org.varwright.unbalance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.json.Json;
import org.varwright.network.Banks;
import org.varwright.network.Capacitances;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;

/** Laws of the failure table and of settings on every kind of bank. */
class UnbalanceLawTest {
    private static final Supply SUPPLY = new Supply.Thevenin(13800.0, 280e6, 11.0);

    /** Below rated, so that some failures may run on. */
    private static Unbalance low(Bank bank) {
        return Unbalance.of(bank, Map.of(), new Supply.Balanced(13000.0), Assumptions.USUAL);
    }

    private static Unbalance of(Bank bank, Map<UnitPosition, Double> readings) {
        return Unbalance.of(bank, readings, SUPPLY, Assumptions.USUAL);
    }

    /** Every row is what a new factorization of the network gives. */
    @Test
    void rowsAreTheNetwork() {
        int rows = 0;
        for (Banks.Plan plan : Banks.everyKind()) {
            Bank bank = plan.bank();
            Network network = Network.of(bank, bank.stages().getFirst(), Capacitances.nameplate(bank), SUPPLY);
            for (FailureRow row : of(bank, Map.of()).failures()) {
                if (row.effect().isPresent()) {
                    Solution.Solved solved = assertInstanceOf(
                            Solution.Solved.class, network.solveAfresh(row.failures()), row.toString());
                    Effect effect = row.effect().get();
                    assertEquals(solved.highestUnitPerRated(), effect.highestUnitPerRated(), 1e-8, row.toString());
                    assertEquals(
                            solved.highestSectionPerRated(), effect.highestSectionPerRated(), 1e-8, row.toString());
                    for (int s = 0; s < effect.sensors().size(); s++) {
                        assertEquals(
                                solved.sensors().get(s).primary().magnitude(),
                                effect.sensors().get(s).primary().magnitude(),
                                1e-5,
                                row.toString());
                    }
                    rows++;
                }
            }
        }
        assertTrue(rows > 1000, "rows: " + rows);
    }

    /** Every position is in the table and every count up to total loss of its group. */
    @Test
    void theTableIsWhole() {
        for (Banks.Plan plan : Banks.everyKind()) {
            Bank bank = plan.bank();
            Set<UnitPosition> seen = new HashSet<>();
            for (FailureRow row : of(bank, Map.of()).failures()) {
                seen.addAll(row.positions());
            }
            assertEquals(new HashSet<>(bank.positions()), seen, plan.toString());
        }
    }

    /** With more units out of one group the rest of it bears more, and the verdict never gets milder. */
    @Test
    void moreIsWorse() {
        for (Connection connection : Connection.values()) {
            List<FailureRow> rows =
                    of(Banks.plan(connection, 1, 2, 6).bank(), Map.of()).failures();
            for (int i = 1; i < rows.size(); i++) {
                FailureRow before = rows.get(i - 1);
                FailureRow now = rows.get(i);
                if (now.count() == before.count() + 1 && now.kind().equals(before.kind())) {
                    assertTrue(now.verdict().compareTo(before.verdict()) >= 0, before + " " + now);
                    boolean groupLost = now.kind().equals("unit-out") && now.count() == 6;
                    if (!groupLost) {
                        assertTrue(
                                now.effect().orElseThrow().highestSectionPerRated()
                                        >= before.effect().orElseThrow().highestSectionPerRated() - 1e-9,
                                before + " " + now);
                    }
                }
            }
        }
    }

    /** A verdict follows from its numbers. */
    @Test
    void verdictsKeepTheLimit() {
        for (Banks.Plan plan : Banks.everyKind()) {
            for (FailureRow row : of(plan.bank(), Map.of()).failures()) {
                boolean over = row.effect().isEmpty()
                        || row.effect().get().legLost()
                        || row.effect().get().highestPerRated() > 1.10 * (1.0 + 1e-9);
                assertEquals(over, row.verdict() == RunVerdict.TAKE_OUT, row.toString());
            }
        }
    }

    /** UNB-4, UNB-5: the proposed alarm comes at the first failure, the trip after the last that may run on and before the first that may not. */
    @Test
    void proposalsSeparate() {
        int both = 0;
        for (Connection connection : Connection.values()) {
            for (int units = 2; units <= 14; units += 3) {
                for (SettingStudy study : low(FusedBanks.fused(
                                connection, units, OptionalDouble.empty(), OptionalDouble.empty()))
                        .settings()) {
                    if (study.alarm().isPresent()) {
                        assertTrue(study.alarm().getAsDouble() < study.firstSignal());
                    }
                    if (study.trip().isPresent()) {
                        double trip = study.trip().getAsDouble();
                        assertTrue(trip < study.firstForbidden().orElseThrow(), study.toString());
                        boolean separable = study.lastAllowed().orElse(0.0)
                                < study.firstForbidden().getAsDouble();
                        assertTrue(!separable || trip > study.lastAllowed().orElse(0.0), study.toString());
                        both += study.alarm().isPresent() && separable ? 1 : 0;
                    } else {
                        assertTrue(study.forbiddenCount().isEmpty() || study.firstSignal() < 1e-6, study.toString());
                    }
                    boolean hasOwnStage = study.forbiddenCount().orElse(0) != 1 && study.firstSignal() > 0.0;
                    boolean isForAnotherKind = study.alarmBasis().id().equals("UNB-8");
                    assertEquals(hasOwnStage || isForAnotherKind, study.alarm().isPresent(), study.toString());
                }
            }
        }
        assertTrue(both > 10, "sensors with alarm and trip: " + both);
    }

    /** The settings that are proposed pass the judgement (of other kinds of failures {@link FaintFailureTest} tells); a trip above the first forbidden signal fails it, an alarm above the first signal too. */
    @Test
    void judgementAgreesWithTheProposal() {
        SettingStudy study = low(FusedBanks.fused(
                        Connection.WYE_UNGROUNDED, 10, OptionalDouble.empty(), OptionalDouble.empty()))
                .settings()
                .getFirst();
        double factor = 120.0 / 8400.0;
        double alarm = study.alarm().orElseThrow() * factor;
        double trip = study.trip().orElseThrow() * factor;
        assertEquals(Set.of(Verdict.PASS), verdicts(alarm, trip));
        assertTrue(verdicts(alarm, study.firstForbidden().orElseThrow() * factor * 1.01)
                .contains(Verdict.FAIL));
        assertTrue(verdicts(study.firstSignal() * factor * 1.01, trip).contains(Verdict.FAIL));
        assertTrue(verdicts(alarm, study.lastAllowed().orElseThrow() * factor * 0.99)
                .contains(Verdict.WARN));
        assertTrue(verdicts(study.error().total() * factor * 0.99, trip).contains(Verdict.WARN));
    }

    private static Set<Verdict> verdicts(double alarm, double trip) {
        Set<Verdict> verdicts = new HashSet<>();
        Bank bank = FusedBanks.fused(Connection.WYE_UNGROUNDED, 10, OptionalDouble.of(alarm), OptionalDouble.of(trip));
        for (Check check : low(bank).settings().getFirst().checks()) {
            if (!check.basis().id().equals("UNB-8")) {
                verdicts.add(check.verdict());
            }
        }
        return verdicts;
    }

    /** Inherent unbalance: with every unit measured, the budget is what the network shows with those capacitances. */
    @Test
    void inherentUnbalanceIsMeasured() {
        Bank bank =
                FusedBanks.fused(Connection.DOUBLE_WYE_UNGROUNDED, 8, OptionalDouble.empty(), OptionalDouble.empty());
        Random random = new Random(5);
        Map<UnitPosition, Double> readings = new HashMap<>();
        double rated = bank.unitTypes().getFirst().capacitanceFarads();
        bank.positions().forEach(p -> readings.put(p, rated * (1.0 + 0.02 * random.nextDouble())));
        Unbalance unbalance = of(bank, readings);
        SettingStudy study = unbalance.settings().stream()
                .filter(s -> s.protection().senses() == Protection.Senses.NEUTRAL_CURRENT)
                .findFirst()
                .orElseThrow();
        double shown = unbalance.healthy().stream()
                .filter(v -> v.senses() == Protection.Senses.NEUTRAL_CURRENT)
                .findFirst()
                .orElseThrow()
                .primary()
                .magnitude();
        assertTrue(study.error().bankIsMeasured());
        assertEquals(shown, study.error().bank(), 1e-9);
        assertTrue(shown > 0.0);
    }

    @Test
    void printsOnThePageAndAsJson() {
        for (Banks.Plan plan : Banks.everyKind()) {
            Unbalance unbalance = of(plan.bank(), Map.of());
            UnbalanceText.of(unbalance)
                    .lines()
                    .forEach(line ->
                            assertTrue(line.length() <= 100 || !line.strip().contains(" "), line));
            Json.Obj json = (Json.Obj) UnbalanceJson.of(unbalance);
            assertEquals(
                    unbalance.failures().size(),
                    ((Json.Arr) json.get("failures")).items().size());
            Json.Obj row = (Json.Obj) ((Json.Arr) json.get("failures")).items().getFirst();
            for (String field : List.of(
                    "positions",
                    "kind",
                    "count",
                    "sensors",
                    "highestUnitVoltagePerRated",
                    "highestGroupVoltagePerHealthy",
                    "verdict")) {
                assertTrue(row.members().containsKey(field), field);
            }
            assertEquals(json.print(), Json.parse(json.print()).print());
        }
    }
}
