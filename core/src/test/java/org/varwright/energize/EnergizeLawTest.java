package org.varwright.energize;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Source;
import org.varwright.basis.Verdict;
import org.varwright.network.Banks;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.LegModel;
import org.varwright.network.LegState;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.network.UnitBranch;
import org.varwright.quantity.Dimension;

/** Laws of bands and explanations on seeded random banks. A failure prints its seed. */
class EnergizeLawTest {
    private static final Source NONE = Source.commonPractice("test");

    private interface Law {
        void holds(Bank bank, Map<UnitPosition, Double> readings, Random random, String what);
    }

    private static void everywhere(int rounds, Law law) {
        for (int round = 0; round < rounds; round++) {
            List<Banks.Plan> plans = Banks.everyKind();
            for (int k = 0; k < plans.size(); k++) {
                long seed = 500L * round + k;
                Random random = new Random(seed);
                Bank bank = plans.get(k).bank();
                Map<UnitPosition, Double> readings = new HashMap<>();
                bank.positions()
                        .forEach(p -> readings.put(
                                p,
                                bank.unitTypes().getFirst().capacitanceFarads() * (0.97 + 0.06 * random.nextDouble())));
                law.holds(bank, readings, random, plans.get(k) + " seed " + seed);
            }
        }
    }

    /** Currents grow with the bus voltage, band and all; in per cent the band stays. */
    @Test
    void everythingScalesWithVoltage() {
        everywhere(1, (bank, readings, random, what) -> {
            Energize one = Energize.of(bank, readings, BusVolts.of(13800, 13700, 13900), Uncertainty.USUAL, List.of());
            Energize two = Energize.of(bank, readings, BusVolts.of(27600, 27400, 27800), Uncertainty.USUAL, List.of());
            for (int i = 0; i < one.currents().size(); i++) {
                Band a = one.currents().get(i).amperes();
                Band b = two.currents().get(i).amperes();
                assertEquals(2.0 * a.expected(), b.expected(), 1e-8 * b.expected(), what);
                assertEquals(2.0 * a.low(), b.low(), 1e-8 * b.expected(), what);
                assertEquals(2.0 * a.high(), b.high(), 1e-8 * b.expected(), what);
            }
        });
    }

    /** ENG-2: with the ammeter alone uncertain, the band is the ammeter's. */
    @Test
    void oneUncertaintyAlone() {
        everywhere(1, (bank, readings, random, what) -> {
            Uncertainty ammeter = new Uncertainty(0.0, 0.02, 0.0, 0.0, NONE);
            for (ExpectedCurrent c : Energize.of(bank, readings, BusVolts.balanced(13800), ammeter, List.of())
                    .currents()) {
                assertEquals(
                        0.98 * c.amperes().expected(),
                        c.amperes().low(),
                        1e-7 * c.amperes().expected(),
                        what);
                assertEquals(
                        1.02 * c.amperes().expected(),
                        c.amperes().high(),
                        1e-7 * c.amperes().expected(),
                        what);
            }
        });
    }

    /** ENG-2: with every unit's reading uncertain by u, the band holds what the network gives with the units of a leg moved by u/√n each at random signs. */
    @Test
    void theBandIsARootOfSumOfSquares() {
        everywhere(1, (bank, readings, random, what) -> {
            Stage stage = bank.stages().getFirst();
            Uncertainty capacitance = new Uncertainty(0.0, 0.0, 0.01, 0.0, NONE);
            Energize energize = Energize.of(bank, readings, BusVolts.balanced(13800), capacitance, List.of());
            LegModel model = LegModel.of(bank, stage, new Supply.Balanced(13800.0));
            double expected = energize.currents().getFirst().amperes().expected();
            double sum = 0.0;
            for (UnitPosition position : stage.positions()) {
                Map<UnitPosition, Double> moved = new HashMap<>(readings);
                moved.computeIfPresent(position, (p, c) -> c * 1.01);
                LegState state = model.evaluate(Capacitances.nameplate(bank).with(moved));
                double change = state.lineAmperes().getFirst().magnitude() - expected;
                sum += change * change;
            }
            // Upward and downward changes differ only in second order.
            double reach = energize.currents().getFirst().amperes().high() - expected;
            assertEquals(Math.sqrt(sum), reach, 0.02 * Math.sqrt(sum) + 1e-9, what);
        });
    }

    /** ENG-2: nothing measured means the nameplate's tolerance: of 0…+10 % all upward in the own leg. */
    @Test
    void nameplateToleranceMakesALopsidedBand() {
        Bank bank =
                Banks.plan(org.varwright.bank.Connection.WYE_GROUNDED, 1, 1, 3).bank();
        Uncertainty none = new Uncertainty(0.0, 0.0, 0.0, 0.0, NONE);
        Band band = Energize.of(bank, Map.of(), BusVolts.balanced(13800), none, List.of())
                .currents()
                .getFirst()
                .amperes();
        assertEquals(band.expected(), band.low(), 1e-9);
        assertEquals(1.10 * band.expected(), band.high(), 1e-9 * band.expected());
    }

    /** A healthy stage read exactly is in every band and nothing is explained. */
    @Test
    void whatIsExpectedPasses() {
        everywhere(1, (bank, readings, random, what) -> {
            Energize before = Energize.of(bank, readings, BusVolts.balanced(13800), Uncertainty.USUAL, List.of());
            List<MeasuredValue> measured = new ArrayList<>();
            before.currents()
                    .forEach(c ->
                            measured.add(new MeasuredValue(c.name(), c.amperes().expected(), Dimension.CURRENT)));
            before.sensors()
                    .forEach(s -> measured.add(new MeasuredValue(
                            s.name(),
                            s.read().expected(),
                            s.senses().unit().equals("V") ? Dimension.VOLTAGE : Dimension.CURRENT)));
            Energize after = Energize.of(bank, readings, BusVolts.balanced(13800), Uncertainty.USUAL, measured);
            assertTrue(after.comparison().stream().allMatch(c -> c.verdict() == Verdict.PASS), what);
            assertEquals(List.of(), after.explanations(), what);
        });
    }

    /** ENG-4: a single failure whose currents and sensors are typed in is among the explanations. */
    @Test
    void aSingleFailureIsFound() {
        int[] found = {0};
        everywhere(3, (bank, readings, random, what) -> {
            Stage stage = bank.stages().getFirst();
            Network network =
                    Network.of(bank, stage, Capacitances.nameplate(bank).with(readings), new Supply.Balanced(13800.0));
            List<UnitBranch> firsts =
                    network.branches().stream().filter(b -> b.at().unit() == 1).toList();
            UnitBranch at = firsts.get(random.nextInt(firsts.size()));
            Failure failure = switch (random.nextInt(4)) {
                case 0 -> new Failure.UnitOut(at);
                case 1 -> new Failure.SectionsShorted(at, 1 + random.nextInt(3));
                case 2 -> new Failure.UnitShorted(at);
                default -> new Failure.PhaseOpen(stage.name(), "B");
            };
            if (!(network.solve(List.of(failure)) instanceof Solution.Solved solved)) {
                return;
            }
            List<MeasuredValue> measured = new ArrayList<>();
            solved.lines()
                    .forEach(l -> measured.add(new MeasuredValue(
                            l.stage() + "/" + l.phase(), l.amperes().magnitude(), Dimension.CURRENT)));
            solved.sensors()
                    .forEach(s -> measured.add(new MeasuredValue(
                            s.name(),
                            s.secondary().orElseThrow().magnitude(),
                            s.senses().unit().equals("V") ? Dimension.VOLTAGE : Dimension.CURRENT)));
            Energize energize = Energize.of(bank, readings, BusVolts.balanced(13800), Uncertainty.USUAL, measured);
            if (energize.comparison().stream().allMatch(c -> c.verdict() == Verdict.PASS)) {
                return;
            }
            Explanation explanation = energize.explanations().getFirst();
            assertInstanceOf(Explanation.class, explanation);
            assertTrue(explanation.best().contains(failure), what + " " + failure + ": " + explanation);
            found[0]++;
        });
        assertTrue(found[0] > 60, "failures found: " + found[0]);
    }
}
