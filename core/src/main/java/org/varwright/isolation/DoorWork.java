package org.varwright.isolation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.bank.Isolation;
import org.varwright.bank.Stage;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.Vocabulary;
import org.varwright.discharge.Discharge;
import org.varwright.discharge.StageDischarge;
import org.varwright.interlock.ConductorState;
import org.varwright.quantity.Dimension;

/** Writes what people do at the open doors: test, discharge, short, ground, count. */
final class DoorWork {
    private final Bank bank;
    private final Isolation isolation;
    private final Draft draft;
    private final Phrases phrases;
    private final Vocabulary words;
    private final List<String> access;
    private final Site site;
    private final Fillings fillings;

    DoorWork(Bank bank, Draft draft, List<String> access, Site site, Fillings fillings) {
        this.bank = bank;
        this.isolation = draft.scheme.isolation();
        this.draft = draft;
        this.phrases = draft.phrases;
        this.words = bank.words();
        this.access = access;
        this.site = site;
        this.fillings = fillings;
    }

    void write() {
        access.forEach(this::test);
        List<Stage> stages = WayIn.stagesAt(bank, isolation, access);
        // what is shorted from before stays so
        List<Stage> bare =
                stages.stream().filter(s -> !draft.shorts.containsKey(s.name())).toList();
        bare.forEach(this::discharge);
        bare.forEach(this::shorts);
        grounds(stages);
        countOn();
        begin();
    }

    private void test(String compartment) {
        prove(compartment, false);
        for (String conductor : isolation.compartment(compartment).orElseThrow().exposes()) {
            testConductor(compartment, conductor);
        }
        prove(compartment, true);
    }

    private void prove(String compartment, boolean again) {
        draft.line(
                        OrderStep.Kind.TEST,
                        new Task.TesterProved(again),
                        phrases.inside(compartment),
                        again
                                ? "Prove the tester again on the same known live source."
                                : "Prove the tester on a known live source or its proving unit, on the range that will be used.")
                .why(
                        again
                                ? "a tester that died in between has shown nothing"
                                : "a dead tester shows dead everywhere (UFC 3-560-01 §6-2.1; DOE-HDBK-1092 §2.13)")
                .expect(
                        "it shows live",
                        again
                                ? "every test since the last proof counts for nothing: start again"
                                : "take another tester")
                .secondPerson()
                .add();
    }

    private void testConductor(String compartment, String conductor) {
        ConductorState is = draft.scheme.conductors(draft.state()).getOrDefault(conductor, ConductorState.FLOATING);
        List<String> items = new ArrayList<>();
        boolean low = isolation.sources().stream().anyMatch(s -> s.isLowVoltage() && s.at().equals(conductor))
                || WayIn.isLow(is);
        if (low) {
            items.add("each conductor to " + words.ground());
            items.add("each conductor to each other");
        } else {
            for (String phase : List.of("A", "B", "C")) {
                items.add(conductor + " phase " + phase + " to " + words.ground());
            }
            items.add(conductor + " A to B, B to C, C to A");
        }
        bank.stage(conductor).ifPresent(stage -> {
            int neutrals = Phrases.neutrals(stage);
            for (int i = 1; i <= neutrals; i++) {
                items.add("neutral" + (neutrals > 1 ? " " + i : "") + " of " + conductor + " to " + words.ground()
                        + " (a fourth conductor)");
            }
            items.add("terminals of every unit of " + conductor + " in reach");
        });
        draft.line(
                        OrderStep.Kind.TEST,
                        new Task.TestedDead(compartment, conductor),
                        phrases.inside(compartment),
                        "Test " + conductor
                                + " for absence of voltage, phase by phase, with the tester on its insulated stick,"
                                + " before anything is touched. Test for direct voltage too: trapped charge is direct voltage.")
                .why("only this test, or a gap that was seen, says that it is dead; it does not say that every unit is"
                        + " discharged")
                .expect("no voltage at any of these", "close the door and go clear: it is live or charged; plan anew")
                .items(items)
                .secondPerson()
                .add();
    }

    private void discharge(Stage stage) {
        StageDischarge computed = Discharge.of(bank, java.util.Optional.empty()).stages().stream()
                .filter(s -> s.stage().name().equals(stage.name()))
                .findFirst()
                .orElseThrow();
        List<String> items =
                new ArrayList<>(stage.positions().stream().map(p -> p.name()).toList());
        if (stage.layout().groups() > 1) {
            items.add("every joint between groups to " + words.ground());
        }
        if (stage.connection().isBridge()) {
            items.add("both midpoints of each phase to " + words.ground());
        }
        for (int i = 1, neutrals = Phrases.neutrals(stage); i <= neutrals; i++) {
            items.add("neutral" + (neutrals > 1 ? " " + i : "") + " of " + stage.name() + " to " + words.ground());
        }
        draft.line(
                        OrderStep.Kind.DISCHARGE,
                        new Task.StickUsed(doorOf(stage), stage.name()),
                        phrases.inside(doorOf(stage)),
                        "Discharge every unit of " + stage.name()
                                + " in reach with the stick, "
                                + (stage.hasThreePhaseUnits()
                                        ? "A to B, B to C, C to A and each"
                                        : "terminal to terminal and each")
                                + " terminal to case. "
                                + (stage.fuse().isPresent() ? "Units behind operated fuses too. " : "")
                                + "Hold each contact; do it twice.")
                .why("a unit with an open resistor, or behind an operated fuse, holds up to "
                        + Dimension.VOLTAGE.format(computed.openResistorVolts(), 3)
                        + " whatever the conductors show and"
                        + " whatever else is " + words.grounded())
                .expect(
                        "no spark and no sound at any unit",
                        "a spark means an open resistor or a wait that was too short: discharge it until nothing comes, and"
                                + " mark the unit")
                .items(items)
                .secondPerson()
                .basis(computed.waitBasis())
                .add();
    }

    private void shorts(Stage stage) {
        int count = stage.positions().size();
        draft.line(
                        OrderStep.Kind.SHORT,
                        new Task.ShortsOn(doorOf(stage), stage.name(), count),
                        phrases.inside(doorOf(stage)),
                        "Short every unit of " + stage.name() + ": all terminals to each other and to its case, "
                                + count + (count == 1 ? " short" : " shorts") + ". They stay on while anybody works.")
                .why(
                        "voltage comes back by itself after a discharge (dielectric absorption), and each unit is shorted before"
                                + " it is handled, a rack on insulators bonded to " + words.ground()
                                + " (29 CFR 1910.269(w)(1)(ii))")
                .expect(count + " on", "no hand goes in before every unit has its short")
                .items(stage.positions().stream().map(p -> p.name()).toList())
                .secondPerson()
                .add();
    }

    private void grounds(List<Stage> stages) {
        Map<String, Integer> wanted = new LinkedHashMap<>();
        Map<String, String> whys = new LinkedHashMap<>();
        Map<String, ConductorState> now = draft.conductors();
        for (String conductor : site.exposed()) {
            ConductorState is = now.getOrDefault(conductor, ConductorState.FLOATING);
            boolean low = is == ConductorState.LIVE_LOW_VOLTAGE
                    || isolation.sources().stream().anyMatch(s -> s.isLowVoltage() && s.at().equals(conductor));
            if (!low && is != ConductorState.GROUNDED) {
                wanted.put(conductor, 3);
                whys.put(
                        conductor,
                        bank.stage(conductor).isPresent()
                                ? "no " + words.groundingSwitch()
                                        + " reaches it behind its open switch, whatever the bus is joined to"
                                : "no " + words.groundingSwitch() + " reaches it");
            } else if (fillings.groundsOn().contains(conductor)) {
                wanted.put(conductor, 3);
                whys.put(
                        conductor,
                        "the blades of its " + words.groundingSwitch() + " can't be seen: one may not have closed");
            }
        }
        for (Stage stage : stages) {
            int neutrals = Phrases.neutrals(stage);
            if (neutrals > 0) {
                wanted.put(Phrases.neutralOf(stage.name()), neutrals);
                whys.put(
                        Phrases.neutralOf(stage.name()),
                        "it floats: a three-pole " + words.groundingSwitch() + " does not reach it");
            }
        }
        // what is on from before stays; where it is fewer, the rest is put on
        draft.grounds.forEach((conductor, on) -> {
            if (wanted.getOrDefault(conductor, 0) > on) {
                wanted.merge(conductor, -on, Integer::sum);
                whys.merge(conductor, "; only " + on + (on == 1 ? " is" : " are") + " on from before", String::concat);
            } else {
                wanted.remove(conductor);
            }
        });
        wanted.forEach((conductor, count) -> {
            String door = access.stream()
                    .filter(a -> isolation.compartment(a).orElseThrow().exposes().stream()
                            .anyMatch(c ->
                                    c.equals(conductor) || Phrases.neutralOf(c).equals(conductor)))
                    .findFirst()
                    .orElse(access.getFirst());
            List<String> items = new ArrayList<>();
            items.add(words.ground() + " end on first, to the " + words.ground() + " bar or the frame's "
                    + words.ground() + " stud");
            if (count == 3 && !conductor.startsWith("neutral of ")) {
                List.of("A", "B", "C").forEach(p -> items.add(conductor + " phase " + p));
            } else {
                for (int i = 1; i <= count; i++) {
                    items.add(conductor + (count > 1 ? ", no. " + i : ""));
                }
            }
            draft.line(
                            OrderStep.Kind.GROUND,
                            new Task.GroundsOn(door, conductor, count),
                            phrases.inside(door),
                            "Put " + count + " portable " + words.ground() + (count == 1 ? "" : "s") + " on "
                                    + conductor + ", with the insulated stick: " + words.ground()
                                    + " end on first, then the conductor.")
                    .why(whys.getOrDefault(conductor, "") + ". " + Phrases.capital(words.ground())
                            + " end on first, off last (29 CFR 1910.269(n)(6)–(7))" + faultCurrent())
                    .expect(count + " on, clamps tight", "no hand goes in before all are on")
                    .items(items)
                    .secondPerson()
                    .add();
        });
    }

    /** Fault current that a portable ground must carry, where the file says enough. */
    private String faultCurrent() {
        SupplySystem system = bank.system();
        if (system.shortCircuitVoltAmperes().isEmpty()) {
            return "; cable and clamps for the fault current of this bus, which is not on file";
        }
        String needed =
                "; cable and clamps for at least " + Dimension.CURRENT.format(GroundCable.faultAmperes(system), 3);
        return switch (bank.standard()) {
            case IEEE ->
                needed
                        + GroundCable.smallest(system)
                                .map(DoorWork::copper)
                                .orElse(": no single cable of " + GroundCable.TABLE
                                        + " is rated for that; ask who owns the bus");
            case IEC -> needed;
        };
    }

    private static String copper(GroundCable cable) {
        return ": copper " + cable.size() + " or larger where the fault is cleared within " + cable.cycles()
                + " cycles (" + GroundCable.TABLE + " grade " + cable.grade() + ")";
    }

    private void countOn() {
        int total = draft.grounds.values().stream().mapToInt(Integer::intValue).sum()
                + draft.shorts.values().stream().mapToInt(Integer::intValue).sum();
        List<String> items = new ArrayList<>();
        draft.grounds.forEach((name, count) ->
                items.add(count + " portable " + words.ground() + (count == 1 ? "" : "s") + " on " + name));
        draft.shorts.forEach((name, count) -> items.add(count + (count == 1 ? " short" : " shorts") + " on " + name));
        draft.line(
                        OrderStep.Kind.COUNT,
                        new Task.Counted(Task.Counted.Things.SHORTS_AND_GROUNDS, total),
                        phrases.inside(access.getFirst()),
                        "Count what is on and write it on the door: " + total + " in all.")
                .why(
                        "the same number comes off on the way back; one left on is a short circuit at the first energization")
                .expect(total + " counted", "count again, by name")
                .items(items)
                .secondPerson()
                .add();
    }

    private void begin() {
        List<String> live = draft.conductors().entrySet().stream()
                .filter(e -> e.getValue() == ConductorState.LIVE
                        || (e.getValue() == ConductorState.LIVE_LOW_VOLTAGE
                                && !site.exposed().contains(e.getKey())))
                .map(Map.Entry::getKey)
                .toList();
        draft.line(
                        OrderStep.Kind.CONFIRM,
                        new Task.Confirmed(Task.Confirmed.Point.WORK_MAY_BEGIN, Phrases.list(access)),
                        phrases.inside(access.getFirst()),
                        "The person in charge says that work may begin in " + Phrases.list(access)
                                + ", and nowhere else. "
                                + (live.isEmpty()
                                        ? "Nothing of this bank is live."
                                        : "Still live: " + Phrases.list(live)
                                                + ". Show everybody where, and bar the way to it."))
                .why(
                        "adjacent live parts are the last of the five rules (EN 50110-1); a changed scope needs a new sheet")
                .expect("every step above is ticked", "go back to the first one that is not")
                .challenge(
                        "\"What is " + words.grounded() + ", what is still live, how many are on?\"",
                        "The second person answers from this sheet and points at each.")
                .secondPerson()
                .holdPoint()
                .add();
    }

    private String doorOf(Stage stage) {
        return access.stream()
                .filter(a -> isolation.compartment(a).orElseThrow().exposes().contains(stage.name()))
                .findFirst()
                .orElse(access.getFirst());
    }
}
