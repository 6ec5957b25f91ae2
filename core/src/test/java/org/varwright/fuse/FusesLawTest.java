package org.varwright.fuse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.FuseType;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;

/** Laws that hold for any fused bank; a failure prints the seed that repeats it. */
class FusesLawTest {
    private static final int CASES = 300;
    private static final int WITH_INRUSH = 10;

    private static Bank bank(SplittableRandom random, String unitLink, Optional<String> lineLink) {
        Connection[] connections = Connection.values();
        Connection connection = connections[random.nextInt(connections.length)];
        LegLayout layout = new LegLayout(random.nextInt(1, 3), random.nextInt(1, 4), random.nextInt(1, 7));
        double lineVolts = random.nextDouble(2400, 34_500);
        double legVolts = connection == Connection.DELTA ? lineVolts : lineVolts / Math.sqrt(3.0);
        double series = layout.groups() * (connection.isBridge() ? 2 : 1);
        Stage stage = FuseBanks.stage(
                "s",
                connection,
                layout,
                FuseBanks.unit(random.nextDouble(50e3, 500e3), legVolts / series * random.nextDouble(1.0, 1.1), 60.0),
                Optional.of(FuseBanks.link(unitLink)),
                lineLink.map(FuseBanks::link));
        return FuseBanks.bank(
                random.nextBoolean() ? Standard.IEEE : Standard.IEC,
                FuseBanks.behind(lineVolts, 60.0, lineVolts * 20e3, random.nextDouble(3, 15)),
                stage);
    }

    private static Fuses fuses(long seed, String unitLink) {
        return Fuses.of(
                bank(new SplittableRandom(seed), unitLink, Optional.of("100T")),
                FuseOptions.AS_FILED,
                InrushShare.notAsked());
    }

    @Test
    void everyNumberIsOne() {
        for (long seed = 1; seed <= CASES; seed++) {
            // Inrush is simulated in time: a few banks with it, all of them without.
            Fuses fuses = seed <= WITH_INRUSH
                    ? Fuses.of(bank(new SplittableRandom(seed), "25K", Optional.of("100T")), FuseOptions.AS_FILED)
                    : fuses(seed, "25K");
            String at = "seed " + seed;
            assertFalse(fuses.checks().isEmpty(), at);
            for (Check check : fuses.checks()) {
                assertTrue(Double.isFinite(check.value()) && Double.isFinite(check.limit()), at + " " + check);
                check.basis().terms().forEach(t -> assertTrue(Double.isFinite(t.value()), at + " " + check));
            }
            String json = FusesJson.of(fuses).print();
            assertFalse(json.contains("NaN") || json.contains("Infinity"), at);
            FusesText.of(fuses).lines().forEach(line -> assertTrue(line.length() <= 100, at + " " + line));
        }
    }

    /** What a shorted unit draws is the bank's affair; a larger link carries more of it and clears no sooner. */
    @Test
    void aLargerLinkCarriesMoreAndClearsNoSooner() {
        for (long seed = 1; seed <= CASES; seed++) {
            FuseStudy small = fuses(seed, "20K").studies().getFirst();
            FuseStudy large = fuses(seed, "65K").studies().getFirst();
            String at = "seed " + seed;
            double fault = small.faultAmperes().orElseThrow();
            assertEquals(fault, large.faultAmperes().orElseThrow(), 1e-9 * fault, at);
            assertTrue(
                    small.carriesAmperes().orElseThrow()
                            < large.carriesAmperes().orElseThrow(),
                    at);
            assertTrue(
                    small.curve().clearing(fault).seconds()
                            <= large.curve().clearing(fault).seconds(),
                    at);
            assertEquals(small.proposals(), large.proposals(), at);
        }
    }

    /** A proposed unit link passes its own rating check, and its next smaller neighbour does not. */
    @Test
    void aProposalPassesItsOwnChecksAndTheNextSmallerDoesNot() {
        int proposed = 0;
        for (long seed = 1; seed <= CASES; seed++) {
            Bank bank = bank(new SplittableRandom(seed), "25K", Optional.empty());
            for (Proposal proposal : Fuses.of(bank, FuseOptions.AS_FILED, InrushShare.notAsked())
                    .studies()
                    .getFirst()
                    .proposals()) {
                if (proposal.link().isEmpty()) {
                    continue;
                }
                proposed++;
                Link link = proposal.link().get();
                String at = "seed " + seed + " " + link.name();
                assertEquals(List.of(Verdict.PASS, Verdict.PASS), carrying(bank, link), at);
                List<Link> all = LinkTable.of(link.type());
                int index = all.indexOf(link);
                if (index > 0) {
                    assertTrue(carrying(bank, all.get(index - 1)).stream().anyMatch(v -> v != Verdict.PASS), at);
                    assertTrue(proposal.notSmaller().isPresent(), at);
                }
            }
        }
        assertTrue(proposed > CASES, "proposals seen: " + proposed);
    }

    private static List<Verdict> carrying(Bank bank, Link link) {
        FuseOptions with =
                new FuseOptions(Optional.empty(), Optional.of(link), OptionalDouble.empty(), OptionalDouble.empty());
        List<Verdict> verdicts = new ArrayList<>();
        for (Check check : Fuses.of(bank, with, InrushShare.notAsked())
                .studies()
                .getFirst()
                .checks()) {
            if (check.basis().id().equals("FUS-5") || check.basis().id().equals("FUS-7")) {
                verdicts.add(check.verdict());
            }
        }
        return verdicts;
    }

    /** Energy and outrush follow the number of neighbours, whatever the fuse. */
    @Test
    void outrushEnergyIsAllSpentInTheResistances() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            int n = random.nextInt(1, 30);
            double ohms = Math.exp(random.nextDouble(Math.log(1e-4), Math.log(1.0)));
            Outrush outrush = Outrush.compute(
                    n,
                    random.nextDouble(1e-6, 50e-6),
                    random.nextDouble(1e3, 20e3),
                    OptionalDouble.of(ohms),
                    OptionalDouble.of(random.nextDouble(1e-7, 1e-5)));
            double spent = ohms
                    * (outrush.failedAmpereSquaredSeconds().orElseThrow()
                            + n * outrush.neighbourAmpereSquaredSeconds().orElseThrow());
            assertEquals(outrush.joules(), spent, 1e-9 * spent, "seed " + seed);
            assertTrue(outrush.peakAmperes().orElseThrow() > 0.0, "seed " + seed);
        }
    }

    @Test
    void aFuseKindIsNoPartOfTheEnergy() {
        for (long seed = 1; seed <= 20; seed++) {
            Bank bank = bank(new SplittableRandom(seed), "25K", Optional.empty());
            FuseType fuse = bank.stages().getFirst().fuse().orElseThrow();
            assertEquals(FuseType.Kind.EXPULSION, fuse.kind());
            ParallelEnergy energy = Fuses.of(bank, FuseOptions.AS_FILED, InrushShare.notAsked())
                    .studies()
                    .getFirst()
                    .energy()
                    .orElseThrow();
            assertEquals(1.21, energy.groupJoules(1.1) / energy.groupJoules(1.0), 1e-12, "seed " + seed);
            assertTrue(energy.neighbourJoules(1.1) < energy.groupJoules(1.1), "seed " + seed);
        }
    }
}
