package org.varwright.fuse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.FuseType;
import org.varwright.bank.Harmonic;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.basis.Check;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

class FusesTest {
    private static final FuseType BARE = new FuseType(
            "F",
            FuseType.Kind.CURRENT_LIMITING,
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty());

    /** 12.47 kV, 200 kvar 7.2 kV units, so many in parallel. */
    private static Stage stage(Connection connection, int units, Optional<FuseType> fuse, Optional<FuseType> line) {
        double volts = connection == Connection.DELTA ? 12.47e3 : 7200.0;
        return FuseBanks.stage(
                "s", connection, new LegLayout(1, 1, units), FuseBanks.unit(200e3, volts, 60.0), fuse, line);
    }

    private static Bank bank(Stage stage) {
        return FuseBanks.bank(Standard.IEEE, FuseBanks.stiff(12.47e3, 60.0), stage);
    }

    private static Fuses fuses(Stage stage) {
        return Fuses.of(bank(stage), FuseOptions.AS_FILED);
    }

    private static Check check(Fuses fuses, String id) {
        return fuses.checks().stream()
                .filter(c -> c.basis().id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatIsMissingIsNamedOneByOne() {
        Fuses fuses = fuses(stage(Connection.WYE_GROUNDED, 3, Optional.of(BARE), Optional.empty()));
        String missing = fuses.notAnswered().stream().map(Unanswered::print).collect(Collectors.joining("\n"));
        for (String expected : List.of(
                "rating of fuse type F is not given: whether it carries",
                "voltage of fuse type F is",
                "maximum-parallel-energy of fuse type F is",
                "interrupting of fuse type F is",
                "system.short-circuit is not given: the current into a shorted unit",
                "resistance of one unit's fuse and leads (--fuse-resistance)",
                "case-rupture curve")) {
            assertTrue(missing.contains(expected), expected + " in\n" + missing);
        }
        assertTrue(fuses.checks().isEmpty());
        assertTrue(fuses.studies().getFirst().proposals().isEmpty(), "no expulsion link for a current-limiting fuse");
    }

    /** An older 65 A link behind a lone unit: three times its current need not melt it. */
    @Test
    void aLinkTooLargeForALoneUnitFailsAndTheTableSaysWhy() {
        Fuses fuses = fuses(stage(Connection.WYE_UNGROUNDED, 1, Optional.of(FuseBanks.link("40T")), Optional.empty()));
        Check check = check(fuses, "FUS-12");
        assertEquals(Verdict.FAIL, check.verdict());
        assertEquals(0.95 * 3.0 * 27.78, check.value(), 0.05);
        assertEquals(96.0, check.limit());
        Proposal slow = fuses.studies().getFirst().proposals().getLast();
        assertEquals("30T", slow.link().orElseThrow().name());
        assertTrue(slow.notSmaller().orElseThrow().contains("25T stands exactly at the edge"), slow.toString());
        assertTrue(slow.notLarger().orElseThrow().contains("40T is too large"), slow.toString());
    }

    @Test
    void asAskedAnotherLinkIsJudged() {
        Stage stage = stage(Connection.WYE_UNGROUNDED, 1, Optional.of(FuseBanks.link("40T")), Optional.empty());
        FuseOptions with = new FuseOptions(
                Optional.of("s"), LinkTable.named("15K"), OptionalDouble.empty(), OptionalDouble.empty());
        Fuses fuses = Fuses.of(bank(stage), with);
        assertEquals("15K", fuses.studies().getFirst().link().orElseThrow().name());
        assertEquals(Verdict.FAIL, check(fuses, "FUS-5").verdict());
        assertEquals(22.5, check(fuses, "FUS-5").value());
    }

    @Test
    void anUnknownStageIsNamed() {
        Stage stage = stage(Connection.WYE_UNGROUNDED, 1, Optional.of(BARE), Optional.empty());
        FuseOptions with =
                new FuseOptions(Optional.of("t"), Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty());
        VarwrightException e = assertThrows(VarwrightException.class, () -> Fuses.of(bank(stage), with));
        assertEquals(Message.FUSE_STAGE_UNKNOWN, e.problems().getFirst().message());
    }

    /** The unit fuse of a lone unit and the line fuse ahead of it carry the same current. */
    @Test
    void aUnitFuseClearsBeforeALargeLineFuseAndNotBeforeASmallOne() {
        Optional<FuseType> unit = Optional.of(FuseBanks.link("25K"));
        Fuses large = fuses(stage(Connection.WYE_UNGROUNDED, 3, unit, Optional.of(FuseBanks.link("100T"))));
        assertEquals(Verdict.PASS, check(large, "FUS-16").verdict());
        Fuses small = fuses(stage(Connection.WYE_UNGROUNDED, 3, unit, Optional.of(FuseBanks.link("25K"))));
        assertEquals(Verdict.FAIL, check(small, "FUS-16").verdict());
    }

    @Test
    void aLineFuseBehindUnitFusesBacksUpAndOnlyWarns() {
        Fuses fuses = fuses(stage(
                Connection.WYE_UNGROUNDED, 1, Optional.of(FuseBanks.link("30T")), Optional.of(FuseBanks.link("100T"))));
        Check backup = fuses.studies().getLast().checks().stream()
                .filter(c -> c.basis().id().equals("FUS-12"))
                .findFirst()
                .orElseThrow();
        assertEquals(Verdict.WARN, backup.verdict());
        assertTrue(backup.subject().contains("backs up"));
    }

    /** Lone unit shorted: the others bear √3; IEEE Std 1036 allows 1.73 for 15 cycles by the stricter row. */
    @Test
    void theBanksTripEndsAnOvervoltageThatTheFuseDoesNot() {
        Stage stage = stage(Connection.WYE_UNGROUNDED, 1, Optional.of(FuseBanks.link("30T")), Optional.empty());
        SupplySystem system = FuseBanks.stiff(12.47e3, 60.0);
        Fuses none = Fuses.of(FuseBanks.bank(Standard.IEEE, system, stage), FuseOptions.AS_FILED);
        assertEquals(Verdict.FAIL, check(none, "FUS-13").verdict());
        Fuses quick = trip(system, stage, 0.2);
        assertEquals(Verdict.WARN, check(quick, "FUS-13").verdict());
        assertEquals(0.2, check(quick, "FUS-13").value());
        assertEquals(0.25, check(quick, "FUS-13").limit());
        // between two rows of the table
        assertEquals(Verdict.WARN, check(trip(system, stage, 0.5), "FUS-13").verdict());
        assertEquals(Verdict.FAIL, check(trip(system, stage, 2.0), "FUS-13").verdict());
        assertEquals(Verdict.WARN, check(trip(system, stage, 2.0), "FUS-17").verdict());
        assertEquals(
                Verdict.PASS,
                check(trip(system, stage, 400.0), "FUS-17").verdict(),
                "30T has cleared 79 A within 4 minutes");
    }

    private static Fuses trip(SupplySystem system, Stage stage, double delay) {
        Bank bank = FuseBanks.bank(Standard.IEEE, system, List.of(FuseBanks.neutralVoltage("s", 20.0, delay)), stage);
        return Fuses.of(bank, FuseOptions.AS_FILED);
    }

    @Test
    void aFuseMustHoldOffOneAndAHalfTimesPhaseVoltageWhereALoneUnitIsGone() {
        Fuses fuses = fuses(stage(Connection.WYE_UNGROUNDED, 1, Optional.of(FuseBanks.link("30T")), Optional.empty()));
        assertEquals(1.5 * 12.47e3 / Math.sqrt(3.0), check(fuses, "FUS-8").limit(), 1.0);
        Fuses line = fuses(stage(Connection.DELTA, 1, Optional.empty(), Optional.of(FuseBanks.link("40T"))));
        assertEquals(12.47e3, check(line, "FUS-8").limit(), 1e-6);
    }

    /**
     * <pre>
     *   A ──┬── stage s ──┐      grounded single groups of every stage are in parallel through the bus,
     *       └── stage t ──┴─     ungrounded ones are not
     * </pre>
     */
    @Test
    void otherStagesDischargeIntoAShortedUnitWhereBothEndsAreShared() {
        for (Connection connection : List.of(Connection.WYE_GROUNDED, Connection.WYE_UNGROUNDED, Connection.DELTA)) {
            Stage s = stage(connection, 4, Optional.of(FuseBanks.link("50T")), Optional.empty());
            Stage t = FuseBanks.stage("t", connection, new LegLayout(2, 1, 3), s.unit(), s.fuse(), Optional.empty());
            Bank bank = FuseBanks.bank(Standard.IEEE, FuseBanks.stiff(12.47e3, 60.0), s, t);
            ParallelUnits units = ParallelUnits.of(bank, s, s.legs().getFirst());
            assertEquals(4, units.ownLeg());
            assertEquals(4, units.ownStage());
            assertEquals(connection == Connection.WYE_UNGROUNDED ? 4.0 : 10.0, units.wholeBank(), 1e-12);
        }
        Stage twin = stage(Connection.DOUBLE_WYE_UNGROUNDED, 4, Optional.of(FuseBanks.link("50T")), Optional.empty());
        assertEquals(8, ParallelUnits.of(bank(twin), twin, "A2").ownStage());
        Stage bridge = stage(Connection.BRIDGE_UNGROUNDED, 4, Optional.of(FuseBanks.link("50T")), Optional.empty());
        assertEquals(8, ParallelUnits.of(bank(bridge), bridge, "B-ll").ownStage());
        Stage series = FuseBanks.stage(
                "s",
                Connection.WYE_GROUNDED,
                new LegLayout(2, 2, 5),
                FuseBanks.unit(200e3, 3600, 60.0),
                Optional.of(FuseBanks.link("80T")),
                Optional.empty());
        assertEquals(5, ParallelUnits.of(bank(series), series, "A").ownStage());
    }

    @Test
    void whereTheSystemIsNotSolidlyGroundedItsGroundFaultCurrentIsMissing() {
        Stage stage = stage(Connection.WYE_GROUNDED, 2, Optional.of(FuseBanks.link("40T")), Optional.empty());
        SupplySystem resistance = new SupplySystem(
                12.47e3,
                OptionalDouble.empty(),
                60.0,
                OptionalDouble.of(210e6),
                OptionalDouble.of(9.0),
                SystemGrounding.RESISTANCE);
        Fuses fuses = Fuses.of(FuseBanks.bank(Standard.IEEE, resistance, stage), FuseOptions.AS_FILED);
        assertTrue(fuses.studies().getFirst().faultAmperes().isEmpty());
        assertTrue(fuses.notAnswered().stream().anyMatch(u -> u.missing().contains("ground-fault current")));
    }

    /** 9 neighbours, 4 mΩ a branch: 120 kA²s a neighbour; the table's 40T melts at 0.1 s with 108 kA²s, so it melts for certain. */
    @Test
    void outrushIsHeldAgainstTheFilesI2tElseAgainstWhatTheTableBounds() {
        Optional<FuseType> fuse = Optional.of(FuseBanks.link("40T"));
        Stage stage = stage(Connection.WYE_UNGROUNDED, 2, fuse, Optional.empty());
        FuseOptions low =
                new FuseOptions(Optional.empty(), Optional.empty(), OptionalDouble.of(1e-3), OptionalDouble.empty());
        assertEquals(Verdict.FAIL, check(Fuses.of(bank(stage), low), "FUS-14").verdict());
        FuseOptions high =
                new FuseOptions(Optional.empty(), Optional.empty(), OptionalDouble.of(50e-3), OptionalDouble.empty());
        Fuses undecided = Fuses.of(bank(stage), high);
        assertFalse(undecided.checks().stream().anyMatch(c -> c.basis().id().equals("FUS-14")));
        assertTrue(undecided.notAnswered().stream()
                .anyMatch(
                        u -> u.missing().startsWith("melting-i2t") && u.effect().contains("outrush")));
    }

    @Test
    void internallyFusedUnitsNeedNoFuseAndSayWhereToLook() {
        Stage stage = stage(Connection.WYE_UNGROUNDED, 2, Optional.empty(), Optional.empty());
        Fuses fuses = fuses(stage);
        assertFalse(fuses.allInside());
        assertTrue(FusesText.of(fuses).contains("no fuse in the bank file"));
        assertEquals(List.of(stage), fuses.unfused());
    }

    /** 5 % of the fifth behind 210 MVA: more current than without, and beyond what units carry the units are named, not a larger fuse. */
    @Test
    void harmonicsOfTheFileRaiseTheCurrentOfService() {
        Stage stage = stage(Connection.WYE_UNGROUNDED, 1, Optional.of(FuseBanks.link("30T")), Optional.empty());
        FuseStudy plain = harmonics(stage, List.of());
        FuseStudy some = harmonics(stage, List.of(new Harmonic(5, OptionalDouble.of(0.05), OptionalDouble.empty())));
        ServiceCurrent without = plain.service().orElseThrow();
        ServiceCurrent with = some.service().orElseThrow();
        assertEquals(1.0, without.harmonicFactor());
        // resonance at √(210/0.6) = 18.7: the fifth is raised by 1/(1 − (5/18.7)²)
        double fifth = 5 * 0.05 / (1.0 - 25.0 / (210.0 / 0.6));
        assertEquals(Math.sqrt(1.0 + fifth * fifth), with.harmonicFactor(), 2e-3);
        assertEquals(without.worstAmperes() * with.harmonicFactor(), with.worstAmperes(), 1e-9);
        FuseStudy much = harmonics(stage, List.of(new Harmonic(17, OptionalDouble.of(0.05), OptionalDouble.empty())));
        assertEquals(
                plain.proposals().getLast().link(), much.proposals().getLast().link());
        assertTrue(much.proposals().getLast().left().getFirst().contains("more than the units may carry"));
    }

    private static FuseStudy harmonics(Stage stage, List<Harmonic> harmonics) {
        SupplySystem system = new SupplySystem(
                12.47e3,
                OptionalDouble.empty(),
                60.0,
                OptionalDouble.of(210e6),
                OptionalDouble.of(9.0),
                SystemGrounding.SOLID,
                harmonics);
        Fuses fuses = Fuses.of(FuseBanks.bank(Standard.IEEE, system, stage), FuseOptions.AS_FILED);
        assertEquals(
                harmonics.isEmpty(),
                fuses.notAnswered().stream().anyMatch(u -> u.missing().equals("system.harmonics")));
        return fuses.studies().getFirst();
    }

    /** Behind 210 MVA, alone: Î = √2·√(I_sc·I_1), all of ½CV² lost in the source's resistance; the file's melting I²t decides. */
    @Test
    void inrushIsHeldAgainstTheFilesI2t() {
        InrushShare share = InrushShare.of(inrushBank(1e9));
        Stage stage = inrushBank(1e9).stages().getFirst();
        double line = share.of(stage, FusePlace.LINE).orElseThrow();
        double unit = share.of(stage, FusePlace.UNIT).orElseThrow();
        // two units in parallel share the current of their line: a quarter of its I²t each
        assertEquals(line / 4.0, unit, 1e-6 * line);
        double sourceOhms = 12.47e3 * 12.47e3 / 210e6 / Math.sqrt(1.0 + 81.0);
        double farads = 2.0 * stage.unit().capacitanceFarads();
        double stored = 0.5 * farads * 2.0 * 7200.0 * 7200.0;
        assertTrue(line > 0.2 * stored / sourceOhms && line < 4.0 * stored / sourceOhms, line + " A²s");
        assertEquals(
                Verdict.PASS,
                check(Fuses.of(inrushBank(2.0 * unit), FuseOptions.AS_FILED), "FUS-15")
                        .verdict());
        assertEquals(
                Verdict.FAIL,
                check(Fuses.of(inrushBank(0.5 * unit), FuseOptions.AS_FILED), "FUS-15")
                        .verdict());
    }

    private static Bank inrushBank(double meltingI2t) {
        FuseType fuse = new FuseType(
                "F",
                FuseType.Kind.EXPULSION,
                Optional.of("40T"),
                OptionalDouble.of(40),
                OptionalDouble.of(15e3),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(meltingI2t),
                OptionalDouble.empty(),
                Optional.empty());
        return FuseBanks.bank(
                Standard.IEEE,
                FuseBanks.behind(12.47e3, 60.0, 210e6, 9.0),
                stage(Connection.WYE_UNGROUNDED, 2, Optional.of(fuse), Optional.empty()));
    }

    /**
     * 100 MVA at 12.47 kV: 4630 A at the bus by {@code S/(√3·V)}; into a shorted lone unit of a grounded wye goes the same current.
     *
     * <pre>
     *   bus ──▬──┬──▬── ‖ ──┐
     *         line  unit    ⏚
     * </pre>
     */
    @Test
    void aFuseMustInterruptWhatAShortDrives() {
        for (FusePlace place : FusePlace.values()) {
            assertEquals(Verdict.PASS, interrupting(place, 4631.0).verdict(), place.toString());
            Check check = interrupting(place, 4629.0);
            assertEquals(Verdict.FAIL, check.verdict(), place.toString());
            assertEquals(4629.9, check.limit(), 0.1);
        }
    }

    private static Check interrupting(FusePlace place, double amperes) {
        FuseType fuse = new FuseType(
                "F",
                FuseType.Kind.EXPULSION,
                Optional.of("25T"),
                OptionalDouble.of(25.0),
                OptionalDouble.of(100e3),
                OptionalDouble.empty(),
                OptionalDouble.of(amperes),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
        boolean line = place == FusePlace.LINE;
        Stage stage = stage(
                Connection.WYE_GROUNDED,
                1,
                line ? Optional.empty() : Optional.of(fuse),
                line ? Optional.of(fuse) : Optional.empty());
        SupplySystem system = FuseBanks.behind(12.47e3, 60.0, 100e6, 10.0);
        return check(Fuses.of(FuseBanks.bank(Standard.IEEE, system, stage), FuseOptions.AS_FILED), "FUS-11");
    }
}
