package org.varwright.bankfile;

import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.varwright.bank.FuseType;
import org.varwright.bank.Stage;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SwitchType;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;
import org.varwright.problem.Place;

/** Says of each part that the format leaves free what can't be answered without it, and which types nobody uses. */
final class CompletenessCheck {
    private final Findings findings;

    private CompletenessCheck(Findings findings) {
        this.findings = findings;
    }

    static void check(Draft draft, Findings findings) {
        CompletenessCheck check = new CompletenessCheck(findings);
        draft.system().ifPresent(check::system);
        Set<String> unitsUsed = Stream.concat(
                        draft.stages().stream().map(s -> s.value().unit().name()),
                        draft.spares().stream().map(s -> s.value().unit().name()))
                .collect(Collectors.toSet());
        Set<String> unitFuses = names(draft, Stage::fuse);
        Set<String> lineFuses = names(draft, Stage::lineFuse);
        Set<String> switchesUsed = draft.isolation().stream()
                .flatMap(i -> i.devices().stream())
                .flatMap(d -> d.value().type().stream())
                .map(SwitchType::name)
                .collect(Collectors.toSet());
        boolean whole = findings.errorCount() == 0;
        for (Item<UnitType> item : draft.unitTypes()) {
            check.unitType(item.path(), item.value());
            if (whole && !unitsUsed.contains(item.value().name())) {
                check.unused(item.path(), "unit type", item.value().name());
            }
        }
        for (Item<FuseType> item : draft.fuseTypes()) {
            String name = item.value().name();
            check.fuseType(item.path(), item.value());
            check.fuseType(item.path(), item.value(), lineFuses.contains(name), unitFuses.contains(name));
            if (whole && !unitFuses.contains(name) && !lineFuses.contains(name)) {
                check.unused(item.path(), "fuse type", name);
            }
        }
        for (Item<SwitchType> item : draft.switchTypes()) {
            check.switchType(item.path(), item.value());
            if (whole && !switchesUsed.contains(item.value().name())) {
                findings.warning(
                        Message.UNUSED_SWITCH_TYPE,
                        findings.place(item.path() + ".name"),
                        Shown.of(item.value().name()));
            }
        }
        if (whole && draft.protection().isEmpty()) {
            check.missing(true, "", "protection", "no relay value can be explained and no setting judged");
        }
        check.missing(
                !draft.declared().hasIsolation(),
                "",
                "isolation",
                "nothing is proven about keys and locks and no order of work can be planned");
    }

    private void system(SupplySystem system) {
        missing(
                system.shortCircuitVoltAmperes().isEmpty(),
                "system",
                "short-circuit",
                "inrush, voltage rise and resonance can't be computed");
        missing(
                system.shortCircuitVoltAmperes().isPresent() && system.xOverR().isEmpty(),
                "system",
                "x-over-r",
                "the damping of switching transients by the source can't be computed");
        missing(
                system.maximumVolts().isEmpty(),
                "system",
                "maximum-voltage",
                "limits can be held against nominal or measured voltage only");
    }

    private void unitType(String path, UnitType unit) {
        missing(
                unit.construction().isEmpty(),
                path,
                "sections",
                "shorted sections and operated element fuses can't be told from a reading");
        missing(
                unit.discharge().isEmpty(),
                path,
                "discharge-resistance",
                "no discharge time can be computed and none is promised");
        missing(unit.bushings().isEmpty(), path, "bushings", "whether a spare's bushings match can't be said");
        missing(unit.bilVolts().isEmpty(), path, "bil", "whether a spare's insulation level matches can't be said");
        missing(unit.massKilograms().isEmpty(), path, "mass", "lifts are planned without a weight");
    }

    private void fuseType(String path, FuseType fuse) {
        missing(
                fuse.ratedAmperes().isEmpty(),
                path,
                "rating",
                "whether the fuse carries the unit's current can't be said");
        missing(
                fuse.ratedVolts().isEmpty(),
                path,
                "voltage",
                "whether the fuse can interrupt at the unit's voltage can't be said");
    }

    private void fuseType(String path, FuseType fuse, boolean line, boolean unit) {
        missing(
                fuse.maximumParallelJoules().isEmpty() && (unit || !line),
                path,
                "maximum-parallel-energy",
                "whether the fuse stands the energy of the units beside can't be said");
        missing(
                fuse.interruptingAmperes().isEmpty() && line,
                path,
                "interrupting",
                "whether the line fuse interrupts the fault current of the bus can't be said");
    }

    private void switchType(String path, SwitchType type) {
        missing(
                type.ratedVolts().isEmpty(),
                path,
                "voltage",
                "whether the switch suits the system's voltage can't be said");
        missing(type.ratedAmperes().isEmpty(), path, "current", "whether the switch carries the stage can't be said");
        missing(
                type.inrushPeakAmperes().isEmpty(),
                path,
                "inrush-peak",
                "whether the switch may make the inrush can't be said");
        missing(
                type.outrushAmpereHertz().isEmpty(),
                path,
                "outrush-product",
                "whether the switch bears the outrush into a fault close by can't be said");
    }

    private static Set<String> names(Draft draft, Function<Stage, Optional<FuseType>> fuse) {
        return draft.stages().stream()
                .flatMap(s -> fuse.apply(s.value()).stream())
                .map(FuseType::name)
                .collect(Collectors.toSet());
    }

    private void unused(String path, String kind, String name) {
        findings.warning(Message.UNUSED_TYPE, findings.place(path + ".name"), kind, Shown.of(name));
    }

    private void missing(boolean isMissing, String path, String key, String effect) {
        if (isMissing) {
            Place around = findings.place(path);
            String full = path.isEmpty() ? key : path + "." + key;
            findings.warning(
                    Message.NOT_GIVEN, new Place(findings.file(), around.line(), around.column(), full), key, effect);
        }
    }
}
