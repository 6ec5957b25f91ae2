package org.varwright.triage;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.varwright.bank.FuseType;
import org.varwright.bank.Isolation;
import org.varwright.bank.Lock;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitType;
import org.varwright.quantity.Dimension;

/** What to bring, by what the bank has. */
final class BringList {
    private static final Set<Symptom> OUTSIDE_THE_UNITS = Set.of(
            Symptom.UNDERVOLTAGE,
            Symptom.LOSS_OF_VOLTAGE,
            Symptom.OVERVOLTAGE,
            Symptom.LOW_POWER_FACTOR,
            Symptom.HUNTING,
            Symptom.SELECTOR_IN_MANUAL);

    private final Scene scene;
    private final Set<String> access;

    BringList(Scene scene, Set<String> access) {
        this.scene = scene;
        this.access = access;
    }

    /** What the bank file does not say, so that it can't be brought. */
    List<String> missing() {
        List<String> missing = new ArrayList<>();
        for (UnitType type : unitTypes()) {
            if (spares(type).isEmpty()) {
                missing.add("spares: the bank file has none of type " + type.name());
            }
        }
        return List.copyOf(missing);
    }

    List<Bring> items(Symptom symptom) {
        List<Bring> items = new ArrayList<>();
        items.add(new Bring("drawing, bank file and settings of the relay as they should be", scene.sensorThings()));
        items.add(new Bring("camera, infrared camera, binoculars: what is seen from outside", List.of()));
        if (!access.isEmpty()) {
            double volts = scene.bank()
                    .system()
                    .maximumVolts()
                    .orElse(scene.bank().system().nominalVolts());
            items.add(new Bring(
                    "voltage tester for " + Dimension.VOLTAGE.format(volts) + " with what proves it before and after",
                    List.of()));
            items.add(
                    new Bring("discharge stick with resistor, and shorts for the units in reach", scene.stageThings()));
            items.add(new Bring(
                    "portable " + scene.words().ground() + "s for the fault current by the owner's rules, counted",
                    List.of()));
            items.add(new Bring("own locks, tags and protective equipment by your rules", List.of()));
            keys(items);
        }
        if (!access.isEmpty() && !OUTSIDE_THE_UNITS.contains(symptom)) {
            meters(items);
            spares(items);
        }
        return List.copyOf(items);
    }

    private void keys(List<Bring> items) {
        List<Thing> keys = new ArrayList<>();
        for (Lock lock : scene.isolation().map(Isolation::locks).orElse(List.of())) {
            if (lock.on() instanceof Lock.On.OfDoor door && access.contains(door.name())) {
                lock.keys().forEach(k -> keys.add(new Thing(Thing.Kind.KEY, k)));
            }
        }
        if (!keys.isEmpty()) {
            items.add(new Bring(
                    "door keys (" + Scene.named(keys, "none")
                            + ") from the interlocking, never from a cabinet: find out where each is now",
                    keys));
        }
    }

    private void meters(List<Bring> items) {
        for (UnitType type : unitTypes()) {
            double c = type.capacitanceFarads();
            items.add(new Bring(
                    "capacitance meter good for " + Dimension.CAPACITANCE.format(0.5 * c) + " to "
                            + Dimension.CAPACITANCE.format(2.0 * c) + " within 1 % (type " + type.name() + ")",
                    List.of(new Thing(Thing.Kind.UNIT_TYPE, type.name()))));
        }
        items.add(new Bring("insulation tester and a milliohm meter for fuses, contacts and clamps", List.of()));
    }

    private void spares(List<Bring> items) {
        for (UnitType type : unitTypes()) {
            List<Thing> spares = spares(type).stream()
                    .map(s -> new Thing(Thing.Kind.SPARE, s.serial()))
                    .toList();
            if (!spares.isEmpty()) {
                items.add(new Bring("spare units of type " + type.name() + ": " + Scene.named(spares, "none"), spares));
            }
        }
        Set<FuseType> fuses = new LinkedHashSet<>();
        for (Stage stage : scene.stages()) {
            stage.fuse().ifPresent(fuses::add);
            stage.lineFuse().ifPresent(fuses::add);
        }
        for (FuseType fuse : fuses) {
            String rating = fuse.link()
                    .orElse(
                            fuse.ratedAmperes().isPresent()
                                    ? Dimension.CURRENT.format(
                                            fuse.ratedAmperes().getAsDouble())
                                    : "rating not given");
            items.add(new Bring(
                    "fuses " + fuse.name() + ": " + rating
                            + (fuse.ratedVolts().isPresent()
                                    ? ", "
                                            + Dimension.VOLTAGE.format(
                                                    fuse.ratedVolts().getAsDouble())
                                    : "")
                            + ", three at least",
                    List.of(new Thing(Thing.Kind.FUSE_TYPE, fuse.name()))));
        }
    }

    private Set<UnitType> unitTypes() {
        Set<UnitType> types = new LinkedHashSet<>();
        scene.stages().forEach(s -> types.add(s.unit()));
        return types;
    }

    private List<Spare> spares(UnitType type) {
        return scene.bank().spares().stream()
                .filter(s -> s.unit().name().equals(type.name()))
                .toList();
    }
}
