package org.varwright.triage;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.varwright.network.Supply;
import org.varwright.unbalance.Assumptions;
import org.varwright.unbalance.Candidate;
import org.varwright.unbalance.FailureRow;
import org.varwright.unbalance.Locate;
import org.varwright.unbalance.RunVerdict;
import org.varwright.unbalance.Unbalance;
import org.varwright.unbalance.VoltageLimit;

/**
 * Whether the bank may stay or go back in service (TRI-1).
 *
 * <p><b>Model.</b> Of all failures that explain the reading, the likelier first until those left out are together less likely than one in twenty, the worst counts; a
 * failure that the table does not hold, or many that are each too unlikely to be worked out, leave it undecided. Without a reading nothing is known of the voltages left, so an alarm is undecided; after a trip, or with a can that has failed to the eye, it is no.
 * <p><b>Source.</b> The limit by the bank's standard; the rest common practice.
 */
final class RunOnRule {
    private static final double COUNTS_FROM = 0.05;

    private final Scene scene;
    private final Supply supply;
    private final Optional<Locate> located;

    RunOnRule(Scene scene, Supply supply, Optional<Locate> located) {
        this.scene = scene;
        this.supply = supply;
        this.located = located;
    }

    RunOn of(Symptom symptom) {
        return switch (symptom) {
            case UNBALANCE_ALARM -> alarm();
            case BLOWN_FUSE, FUSE_INDICATOR -> fuse();
            case UNBALANCE_TRIP ->
                no(
                        "It stays out: what tripped it is still there, and the units that are left may have borne too much.");
            case OVERCURRENT_TRIP -> no("It stays out until the fault is found: closing onto it may tear a can.");
            case OVERVOLTAGE ->
                undecided(
                        "It depends on how high and for how long; the command duty with --overvoltage and --seconds judges it.",
                        "short-time overvoltage tables of the standards, by duration");
            case UNDERVOLTAGE, LOSS_OF_VOLTAGE ->
                yes(
                        "It may go back when the voltage has come back and stays.",
                        reclosing(),
                        "the voltage is back in all three phases and steady, said by those who operate the supply",
                        "nothing else was found: no target, no operated fuse, no smell");
            case STAGE_WONT_CLOSE ->
                yes(
                        "The other stages may run on; this one stays off.",
                        "no phase of the stage draws current, read at an instrument: a half-closed switch is no open switch",
                        "nobody tries to close it again before the cause is known");
            case STAGE_WONT_OPEN ->
                no(
                        "A switch that does not open is not tried again: what feeds it is opened ahead of it, by those who operate that.");
            case LOW_POWER_FACTOR ->
                yes("Nothing is endangered by it.", "no alarm, no trip and no operated fuse stands with it");
            case HUNTING ->
                yes(
                        "It may run on with its stages held, so that it stops switching.",
                        "the voltage stays within its limits with the stages that are held on: light load too",
                        "whoever takes it out of automatic writes down that it must go back");
            case HOT_UNIT ->
                undecided(
                        "It depends on how hot against its neighbours, and on what the relay reads; give the reading. A can that is bulged as well: no.",
                        "the makers' limits of case temperature were not at hand");
            case BULGED_UNIT ->
                no("A bulged can may tear at any time: out of service, everybody away from it, then the wait.");
            case LEAKING_UNIT ->
                no("A leaking unit goes on failing and spills: out of service, and what it holds may be poisonous.");
            case NOISE ->
                undecided(
                        "It depends on what makes it; until that is known nobody stays near. Cracking from a can: no.",
                        "no published measure");
            case CONTROL_FUSE, CONTROLLER_DARK, CONTROL_TRANSFORMER ->
                undecided(
                        "First find out whether the unbalance trip still has its supply: without protection, no.",
                        "a bank whose protection is dead is not protected");
            case SELECTOR_IN_MANUAL ->
                yes(
                        "It may run on as it stands.",
                        "whoever left it so was asked why",
                        "the stages that are on suit the load at night too");
            case SWITCH_FAULT ->
                no(
                        "The switch is not operated again before it was examined: the next operation may be the one that fails.");
            case VOLTAGE_TRANSFORMER_FUSE ->
                undecided(
                        "It depends on whether the unbalance trip needs that transformer: if it does, no.",
                        "a sensor that has lost its voltage does not trip");
            case RESTRIKE ->
                no(
                        "The switch is not operated again before it and every unit were examined: a restrike leaves more voltage than they are made for.");
        };
    }

    private String reclosing() {
        return scene.bank()
                .control()
                .flatMap(c -> c.recloseDelaySeconds().isPresent()
                        ? Optional.of(String.format(
                                Locale.ROOT,
                                "at least %.0f s have passed since it opened (reclosing delay of the bank file)",
                                c.recloseDelaySeconds().getAsDouble()))
                        : Optional.empty())
                .orElse("the reclosing delay has passed; the bank file does not give it");
    }

    /** One fuse: the first failure of a unit out, the worst place counts. */
    private RunOn fuse() {
        if (located.isPresent()) {
            return alarm();
        }
        if (!scene.hasUnitFuses()) {
            return undecided(
                    "The bank file names no fuse of single units here: give the relay reading.",
                    "nothing to work it out from");
        }
        return judged(
                table().stream()
                        .filter(r -> r.kind().equals("unit-out") && r.count() == 1)
                        .toList(),
                "with one unit out and no more",
                List.of("the relay reading fits one unit out: it was read and given"));
    }

    private RunOn alarm() {
        if (located.isEmpty()) {
            return undecided(
                    "Without the relay reading nobody knows what the units that are left bear: read it and give it.",
                    "the voltage on the rest of a group follows from how many are out");
        }
        Locate locate = located.get();
        if (!locate.isExplained()) {
            return undecided(
                    "The reading fits no single or double failure: something else is wrong, and what the units bear is not known.",
                    "no failure comes within three standard deviations");
        }
        List<FailureRow> table = table();
        List<FailureRow> rows = new ArrayList<>();
        List<String> notInTable = new ArrayList<>();
        double left = 1.0;
        for (Candidate candidate : locate.candidates()) {
            if (left < COUNTS_FROM) {
                break;
            }
            left -= candidate.probability();
            if (candidate.parts().isEmpty()) {
                continue;
            }
            Candidate.Part part = candidate.parts().getFirst();
            List<FailureRow> alike = table.stream()
                    .filter(r -> r.kind().equals(part.kind()) && r.count() == part.count())
                    .toList();
            if (candidate.parts().size() > 1 || alike.isEmpty()) {
                notInTable.add(candidate.words());
            } else {
                rows.addAll(alike);
            }
        }
        if (rows.stream().anyMatch(r -> r.verdict() == RunVerdict.TAKE_OUT)) {
            return judged(rows, "with the failures that explain the reading", List.of());
        }
        if (!notInTable.isEmpty()) {
            return undecided(
                    "One of the failures that explain the reading is not in the table of single failures: "
                            + notInTable.getFirst() + ".",
                    "what the units bear with several failures at once is not worked out here");
        }
        if (left >= COUNTS_FROM) {
            return undecided(
                    String.format(
                            Locale.ROOT,
                            "Failures of which each explains the reading less than 1 in 100 are together %.0f in 100: what the units bear is not known.",
                            100.0 * left),
                    "only what explains the reading 1 in 100 or more is worked out one by one");
        }
        if (rows.isEmpty()) {
            return undecided(
                    "The reading fits a bank in which nothing failed, or a sensor that is wrong; which of them, a second instrument tells.",
                    "a sensor that is wrong does not protect");
        }
        return judged(rows, "with the failures that explain the reading", List.of());
    }

    private RunOn judged(List<FailureRow> rows, String with, List<String> more) {
        Optional<FailureRow> worst = rows.stream().reduce((a, b) -> height(a) >= height(b) ? a : b);
        if (worst.isEmpty()) {
            return undecided("The table of failures has no such row.", "nothing to work it out from");
        }
        FailureRow row = worst.get();
        VoltageLimit limit = VoltageLimit.of(scene.bank().standard());
        Statement basis = new Statement(
                String.format(
                        Locale.ROOT,
                        "TRI-1: highest voltage on a unit or section %s: %s of rated, limit %.2f (%s)",
                        with,
                        Double.isFinite(height(row))
                                ? String.format(Locale.ROOT, "%.3f", height(row))
                                : "a short circuit",
                        limit.multiple(),
                        row.reason()),
                limit.source());
        boolean out = rows.stream().anyMatch(r -> r.verdict() == RunVerdict.TAKE_OUT);
        if (out) {
            return new RunOn(
                    RunOn.Answer.NO, "What is left bears more than it is made for.", List.of(), List.of(basis));
        }
        List<String> conditions = new ArrayList<>(more);
        conditions.add(
                "the trip of " + Scene.named(scene.sensorThings(), "the unbalance protection") + " is in service");
        conditions.add("the reading is read again within hours and does not rise; a rise is the next failure: out");
        conditions.add("nothing bulged, leaking or hot was seen from outside");
        conditions.add("a day for the repair is set");
        return new RunOn(
                RunOn.Answer.YES_WITH,
                rows.stream().anyMatch(r -> r.verdict() == RunVerdict.ALARM)
                        ? "It may run on for the time being; one more failure in the same place would be too much."
                        : "It may run on for the time being.",
                conditions,
                List.of(basis));
    }

    private static double height(FailureRow row) {
        return row.effect().map(e -> e.highestPerRated()).orElse(Double.POSITIVE_INFINITY);
    }

    private List<FailureRow> table() {
        List<String> stages = scene.stageNames();
        return Unbalance.of(scene.bank(), Map.of(), supply, Assumptions.USUAL).failures().stream()
                .filter(r -> stages.contains(r.stage()))
                .toList();
    }

    private static RunOn no(String text) {
        return new RunOn(
                RunOn.Answer.NO,
                text,
                List.of(),
                List.of(Statement.practice("what is wrong is still there, and it can get worse in a moment")));
    }

    private static RunOn undecided(String text, String why) {
        return new RunOn(RunOn.Answer.UNDECIDED, text, List.of(), List.of(Statement.practice(why)));
    }

    private static RunOn yes(String text, String... conditions) {
        return new RunOn(
                RunOn.Answer.YES_WITH,
                text,
                List.of(conditions),
                List.of(Statement.practice("nothing in it makes the units bear more than in service")));
    }
}
