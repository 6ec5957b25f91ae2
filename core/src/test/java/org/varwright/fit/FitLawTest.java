package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Spare;
import org.varwright.network.Banks;

/** Laws of the fit on seeded random banks. A failure prints its seed. */
class FitLawTest {
    private interface Law {
        void holds(FitInput input, FitResult result, Random random, String what);
    }

    private static void everywhere(FitOptions options, Law law) {
        long seed = 0;
        for (Connection connection : Connection.values()) {
            for (int round = 0; round < 4; round++) {
                seed++;
                Random random = new Random(seed);
                Bank bank = Banks.plan(connection, 1, 1 + round % 2, connection.isBridge() ? 2 : 3)
                        .bank();
                FitInput input = FitBanks.random(bank, random, 1 + round % 3, 4, 0.08, options);
                law.holds(input, Fit.plan(input), random, connection + " seed " + seed);
            }
        }
    }

    /** Other serial numbers: the same lifts in number, the same unbalance. */
    @Test
    void namesDontChangeTheValue() {
        everywhere(FitOptions.USUAL, (input, result, random, what) -> {
            List<Spare> renamed = new ArrayList<>();
            for (Spare spare : input.spares()) {
                renamed.add(random.nextInt(renamed.size() + 1), spare);
            }
            List<Spare> others = new ArrayList<>();
            for (int i = 0; i < renamed.size(); i++) {
                Spare s = renamed.get(i);
                others.add(new Spare("Z" + i, s.unit(), s.capacitanceFarads(), Optional.empty()));
            }
            FitResult other = Fit.plan(FitBanks.input(input.bank(), input.units(), others, input.options()));
            assertEquals(result.unbalance(), other.unbalance(), 1e-8, what);
            assertEquals(result.moves().size(), other.moves().size(), what);
        });
    }

    /** One spare more never makes it worse. */
    @Test
    void oneSpareMoreIsNeverWorse() {
        everywhere(FitOptions.USUAL, (input, result, random, what) -> {
            List<Spare> more = new ArrayList<>(input.spares());
            double nameplate = input.bank().stages().getFirst().unit().capacitanceFarads();
            more.add(FitBanks.spare(
                    "T", input.spares().getFirst().unit(), nameplate * (1.0 + 0.08 * random.nextDouble())));
            FitResult other = Fit.plan(FitBanks.input(input.bank(), input.units(), more, input.options()));
            assertTrue(other.unbalance() <= result.unbalance() + 1e-9, what);
        });
    }

    /** The moves, made one after the other, lead from what is there to what the result says; nothing is put where something still is. */
    @Test
    void movesCanBeMade() {
        FitOptions restless = new FitOptions(List.of(), List.of(), List.of(), FitOptions.Aim.LEAST_UNBALANCE, 2);
        int[] moved = {0};
        everywhere(restless, (input, result, random, what) -> {
            Map<String, String> at = new HashMap<>();
            Map<String, Double> farads = new HashMap<>();
            for (Fitted unit : input.units()) {
                at.put(unit.at().name(), unit.name());
                farads.put(unit.name(), unit.capacitanceFarads());
            }
            input.spares()
                    .forEach(s -> farads.put(s.serial(), s.capacitanceFarads().orElseThrow()));
            Map<String, String> floor = new HashMap<>();
            for (Move move : result.moves()) {
                if (!move.from().equals(Move.SPARES)) {
                    assertEquals(move.serial(), at.remove(move.from()), what + " " + move);
                }
                if (move.setDown()) {
                    floor.put(move.to(), move.serial());
                } else if (!move.to().equals(Move.OUT) && !move.to().equals(Move.ASIDE)) {
                    assertTrue(!at.containsKey(move.to()), what + " occupied: " + move);
                    at.put(move.to(), move.serial());
                }
            }
            floor.forEach((position, serial) -> {
                assertTrue(!at.containsKey(position), what + " occupied: " + position);
                at.put(position, serial);
            });
            moved[0] += floor.size();
            assertEquals(input.units().size(), at.size(), what + " every position filled");
            double sum = 0.0;
            for (Balance.LegReading leg : result.after().legs()) {
                double expected = 0.0;
                Map<Integer, Double> groups = new HashMap<>();
                for (Fitted unit : input.units()) {
                    if (unit.at().leg().equals(leg.leg())) {
                        groups.merge(
                                unit.at().group(),
                                Optional.ofNullable(farads.get(at.get(unit.at().name())))
                                        .orElseThrow(),
                                Double::sum);
                    }
                }
                for (double c : groups.values()) {
                    expected += 1.0 / c;
                }
                assertEquals(1.0 / expected, leg.capacitanceFarads(), 1e-15, what + " leg " + leg.leg());
                sum += leg.capacitanceFarads();
            }
            assertTrue(sum > 0.0, what);
        });
        assertTrue(moved[0] > 0, "some plan exchanged two units");
    }

    /** The same input gives the same result, and what is asked to stay stays. */
    @Test
    void sameInputSameResultAndKeptStays() {
        everywhere(FitOptions.USUAL, (input, result, random, what) -> {
            assertEquals(FitJson.of(result).print(), FitJson.of(Fit.plan(input)).print(), what);
            List<String> keep = input.units().stream()
                    .filter(u -> u.role() == Fitted.Role.KEPT)
                    .map(u -> u.at().name())
                    .toList();
            FitOptions all = new FitOptions(keep, List.of(), List.of(), FitOptions.Aim.LEAST_UNBALANCE, 2);
            FitResult still = Fit.plan(FitBanks.input(input.bank(), input.units(), input.spares(), all));
            assertTrue(still.moves().stream().allMatch(m -> m.kind() != Move.Kind.RELOCATE), what);
        });
    }
}
