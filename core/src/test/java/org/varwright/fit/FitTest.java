package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.network.Banks;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** What is asked for, and what comes out in words. */
class FitTest {
    /*
     *   A  u1 u2 u3    B  u1 u2 u3    C  u1 u2 u3      ungrounded wye, nothing but the stand-in signal
     */
    private static FitInput input(FitOptions options) {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 3).bank();
        return FitBanks.random(bank, new Random(4), 1, 3, 0.08, options);
    }

    private static FitOptions options(List<String> keep, List<FitOptions.Exchange> swaps, List<String> without) {
        return new FitOptions(keep, swaps, without, FitOptions.Aim.FEWEST_LIFTS, 2);
    }

    private static String condemned() {
        return input(FitOptions.USUAL).units().stream()
                .filter(u -> u.role() == Fitted.Role.CONDEMNED)
                .map(u -> u.at().name())
                .findFirst()
                .orElseThrow();
    }

    private static Message refused(FitOptions options) {
        FitInput input = input(options);
        return assertThrows(VarwrightException.class, () -> Fit.plan(input))
                .problems()
                .getFirst()
                .message();
    }

    @Test
    void namesThatDontExistAreRefused() {
        assertEquals(Message.FIT_PLACE_UNKNOWN, refused(options(List.of("F/D/u1"), List.of(), List.of())));
        assertEquals(Message.FIT_SPARE_UNKNOWN, refused(options(List.of(), List.of(), List.of("nobody"))));
        assertEquals(Message.FIT_KEEP_CONDEMNED, refused(options(List.of(condemned()), List.of(), List.of())));
        FitOptions twelve = new FitOptions(
                List.of(), List.of(), List.of(), FitOptions.Aim.FEWEST_LIFTS, Request.MOST_EXTRA_LIFTS + 1);
        assertEquals(Message.FIT_LIFTS_RANGE, refused(twelve));
        FitOptions.Exchange withCondemned =
                new FitOptions.Exchange(condemned(), condemned().equals("F/A/u1") ? "F/B/u1" : "F/A/u1");
        assertEquals(Message.FIT_SWAP_CONDEMNED, refused(options(List.of(), List.of(withCondemned), List.of())));
    }

    @Test
    void aForcedSpareGoesWhereItIsAskedAndAWithheldOneNowhere() {
        FitResult forced =
                Fit.plan(input(options(List.of(), List.of(new FitOptions.Exchange(condemned(), "S1")), List.of("S0"))));
        assertEquals(2, forced.moves().size());
        assertEquals("S1", forced.moves().getLast().serial());
        assertEquals(condemned(), forced.moves().getLast().to());
        assertTrue(
                forced.rejected().stream()
                        .anyMatch(r -> r.serial().equals("S0") && r.reason().equals("not to be used, as asked")),
                forced.rejected().toString());
    }

    @Test
    void aForcedExchangeIsTwoLifts() {
        FitInput asked = input(FitOptions.USUAL);
        List<String> good = asked.units().stream()
                .filter(u -> u.role() == Fitted.Role.KEPT && !u.at().leg().equals("C"))
                .map(u -> u.at().name())
                .toList();
        FitResult result = Fit.plan(input(
                options(List.of(), List.of(new FitOptions.Exchange(good.getFirst(), good.getLast())), List.of())));
        assertEquals(4, result.moves().size());
        assertEquals(1, result.moves().stream().filter(Move::setDown).count());
    }

    @Test
    void withoutSparesTheStageRunsOnOrStaysOff() {
        FitInput asked = input(FitOptions.USUAL);
        FitResult result = Fit.plan(FitBanks.input(asked.bank(), asked.units(), List.of(), FitOptions.USUAL));
        assertEquals(FitResult.Outcome.SPARES_MISSING, result.outcome());
        RunOn runOn = result.runOn().getFirst();
        assertEquals(1, runOn.missing());
        RunOn.Option balanced = runOn.options().stream()
                .filter(o -> o.title().equals("best balanced"))
                .findFirst()
                .orElseThrow();
        assertEquals(3, balanced.empty().size(), "one unit out in each leg");
        assertEquals(600e3, balanced.varsLost(), 1e-6);
        String text = FitText.of(result);
        assertTrue(text.contains("SPARES ARE MISSING"), text);
    }

    @Test
    void everyLineKeepsToThePage() {
        for (Connection connection : Connection.values()) {
            FitInput asked = FitBanks.random(
                    Banks.plan(connection, 1, 1, 2).bank(), new Random(9), 2, 3, 0.08, FitOptions.USUAL);
            UnitType other = FitReferenceTest.type(200e3, 7200.0, 60.0);
            List<Spare> spares = new ArrayList<>(asked.spares());
            spares.add(FitBanks.spare("X", other, other.capacitanceFarads()));
            FitResult result = Fit.plan(FitBanks.input(asked.bank(), asked.units(), spares, FitOptions.USUAL));
            for (String line : FitText.of(result).lines().toList()) {
                assertTrue(line.length() <= 100, connection + ": " + line);
            }
            assertEquals("X", result.rejected().getFirst().serial(), connection.code());
        }
    }

    @Test
    void jsonHasTheFieldsOfTheContract() {
        var json = FitJson.of(Fit.plan(input(FitOptions.USUAL)));
        for (String field : List.of("moves", "before", "after", "provenBest", "rejected", "checks")) {
            assertTrue(json.members().containsKey(field), field);
        }
        String text = json.print();
        for (String field : List.of("serial", "from", "to", "sensors", "legs", "highestUnitVoltagePerRated")) {
            assertTrue(text.contains("\"" + field + "\""), field);
        }
    }

    /** Units rated a fifth below what they bear: no fitting cures that, and neither plan nor run-on advice may read as good. */
    @Test
    void aLimitThatNoFittingCanKeepIsNeverCalledKept() {
        Banks.Plan plan = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 3);
        Bank bank = plan.rated(plan.unitVars(), plan.unitVolts() / 1.2).bank();
        FitInput asked = FitBanks.random(bank, new Random(4), 1, 2, 0.08, FitOptions.USUAL);
        FitResult whole = Fit.plan(asked);
        assertEquals(FitResult.Outcome.LIMIT_BROKEN, whole.outcome());
        assertTrue(FitText.of(whole).contains("NOT GOOD TO GO"), FitText.of(whole));
        assertTrue(
                whole.notes().stream().anyMatch(n -> n.contains("no fitting cures that")),
                whole.notes().toString());
        FitResult short1 = Fit.plan(FitBanks.input(bank, asked.units(), List.of(), FitOptions.USUAL));
        assertTrue(!short1.runOn().getFirst().recommended(), "nothing to recommend");
        assertTrue(
                short1.runOn().getFirst().options().stream().noneMatch(RunOn.Option::limitsKept),
                "no option keeps the limit");
        assertTrue(FitText.of(short1).contains("NOT GOOD TO GO"), FitText.of(short1));
    }

    /** Legs more than 1.08 apart are a remark, never a refusal (IEC 60871-1, from memory, unchecked); so are units outside their nameplate's tolerance. */
    @Test
    void legsApartAndUnitsOffTheirNameplateAreRemarks() {
        for (double apart : new double[] {1.079, 1.081}) {
            Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2).sensing().bank();
            UnitType type = bank.stages().getFirst().unit();
            List<Fitted> units = bank.positions().stream()
                    .map(at -> FitBanks.fitted(
                            at, type.capacitanceFarads() * (at.leg().equals("B") ? apart : 1.0), Fitted.Role.KEPT))
                    .toList();
            FitResult result = Fit.plan(FitBanks.input(bank, units, List.of(), FitOptions.USUAL));
            List<Check> checks = result.checks().stream()
                    .filter(c -> c.basis().id().equals("FIT-9"))
                    .toList();
            assertEquals(1, checks.size(), "every unit is within +10 % of its nameplate: " + checks);
            assertEquals(apart, checks.getFirst().value(), 1e-9);
            assertEquals(
                    apart < 1.08 ? Verdict.PASS : Verdict.WARN,
                    checks.getFirst().verdict());
        }
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2).sensing().bank();
        double nameplate = bank.stages().getFirst().unit().capacitanceFarads();
        UnitPosition odd = bank.positions().getFirst();
        List<Fitted> units = bank.positions().stream()
                .map(at -> FitBanks.fitted(at, nameplate * (at.equals(odd) ? 1.101 : 1.05), Fitted.Role.KEPT))
                .toList();
        Check off = Fit.plan(FitBanks.input(bank, units, List.of(), FitOptions.USUAL)).checks().stream()
                .filter(c -> c.subject().startsWith(odd.name()))
                .findFirst()
                .orElseThrow();
        assertEquals(Verdict.WARN, off.verdict());
        assertEquals(1.1 * nameplate, off.limit(), 1e-9 * nameplate);
    }
}
