package org.varwright.triage;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.Vocabulary;
import org.varwright.basis.Source;
import org.varwright.page.Enumeration;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** What the bank has that a symptom may be about, with its names. */
final class Scene {
    private final Bank bank;
    private final List<Stage> stages;

    private Scene(Bank bank, List<Stage> stages) {
        this.bank = bank;
        this.stages = List.copyOf(stages);
    }

    /**
     * The stage that was named, else the one whose sensor was read, else every stage.
     *
     * @throws VarwrightException {@code TRIAGE_STAGE} where the bank has no such stage
     */
    static Scene of(Bank bank, TriageQuestion question) {
        if (question.stage().isPresent()) {
            String name = question.stage().get().strip();
            Stage stage = bank.stage(name)
                    .orElseThrow(() -> new VarwrightException(
                            Message.TRIAGE_STAGE,
                            new Place("", 0, 0, "stage"),
                            name,
                            Enumeration.of(
                                    bank.stages().stream().map(Stage::name).toList())));
            return new Scene(bank, List.of(stage));
        }
        List<Stage> read = question.sighting().stream()
                .flatMap(s -> bank.stages().stream().filter(stage -> s.sensor().startsWith(stage.name() + " ")))
                .toList();
        return new Scene(bank, read.size() == 1 ? read : bank.stages());
    }

    Bank bank() {
        return bank;
    }

    Vocabulary words() {
        return bank.words();
    }

    List<Stage> stages() {
        return stages;
    }

    List<String> stageNames() {
        return stages.stream().map(Stage::name).toList();
    }

    /** The stages in a sentence. */
    String which() {
        return Enumeration.of(stageNames(), "or");
    }

    boolean hasUnitFuses() {
        return stages.stream().anyMatch(s -> s.fuse().isPresent());
    }

    boolean hasElementFuses() {
        return stages.stream()
                .anyMatch(s ->
                        s.unit().construction().filter(c -> c.internallyFused()).isPresent());
    }

    /** Compartments in which units of these stages are in reach. */
    List<String> compartments() {
        return exposing(stageNames());
    }

    /** Compartments that expose something which is fed below 1 kV. */
    List<String> controlCompartments() {
        return exposing(isolation().map(Isolation::sources).orElse(List.of()).stream()
                .filter(EnergySource::isLowVoltage)
                .map(EnergySource::at)
                .toList());
    }

    private List<String> exposing(List<String> conductors) {
        return isolation().map(Isolation::compartments).orElse(List.of()).stream()
                .filter(c -> c.exposes().stream().anyMatch(conductors::contains))
                .map(Compartment::name)
                .toList();
    }

    Optional<Isolation> isolation() {
        return bank.isolation();
    }

    List<Device> devices(Predicate<Device> which) {
        return isolation().map(Isolation::devices).orElse(List.of()).stream()
                .filter(which)
                .toList();
    }

    List<Device> selectors() {
        return devices(d -> d.kind() == Device.Kind.SELECTOR);
    }

    /** What switches these stages under load: their own switches, else breakers. */
    List<Device> switches() {
        Set<Device> own = new LinkedHashSet<>();
        stages.forEach(s -> bank.switchOf(s).ifPresent(own::add));
        return own.isEmpty() ? devices(d -> d.kind() == Device.Kind.BREAKER) : List.copyOf(own);
    }

    /** Devices whose position may be asked for by somebody at the bank, and keys that should hang where the drawing says. */
    List<Thing> things(List<Device> devices) {
        return devices.stream().map(d -> new Thing(Thing.Kind.DEVICE, d.name())).toList();
    }

    List<Thing> stageThings() {
        return stageNames().stream().map(s -> new Thing(Thing.Kind.STAGE, s)).toList();
    }

    List<Thing> compartmentThings() {
        return compartments().stream()
                .map(c -> new Thing(Thing.Kind.COMPARTMENT, c))
                .toList();
    }

    List<Protection> sensors() {
        return bank.protection().stream()
                .filter(p -> stageNames().contains(p.stage()))
                .toList();
    }

    List<Thing> sensorThings() {
        return sensors().stream()
                .map(p -> new Thing(Thing.Kind.SENSOR, sensor(p)))
                .toList();
    }

    static String sensor(Protection p) {
        return p.stage() + " " + p.senses().code();
    }

    List<Thing> sourceThings(boolean lowVoltage) {
        return isolation().map(Isolation::sources).orElse(List.of()).stream()
                .filter(s -> s.isLowVoltage() == lowVoltage)
                .map(s -> new Thing(Thing.Kind.SOURCE, s.name()))
                .toList();
    }

    /** Names in a sentence, such as {@code 24-A and 24-B}; the plain word where the file names none. */
    static String named(List<Thing> things, String otherwise) {
        return things.isEmpty()
                ? otherwise
                : Enumeration.of(things.stream().map(Thing::name).toList());
    }

    Inspection desk(String text, List<Thing> things) {
        return new Inspection(text, Inspection.From.DESK, things, List.of(), Source.COMMON_PRACTICE);
    }

    Inspection outside(String text, List<Thing> things) {
        return new Inspection(text, Inspection.From.OUTSIDE, things, List.of(), Source.COMMON_PRACTICE);
    }

    /** Under an order of work to these compartments. */
    Inspection inside(String text, List<Thing> things, List<String> compartments) {
        return new Inspection(text, Inspection.From.INSIDE, things, compartments, Source.COMMON_PRACTICE);
    }

    /** Everything that can be seen of the units without opening anything. */
    Inspection lookIn() {
        List<Thing> things = new ArrayList<>(compartmentThings());
        if (things.isEmpty()) {
            things.addAll(stageThings());
        }
        return outside(
                "Look from outside, doors shut, at " + named(things, "the bank")
                        + ": an operated fuse or its flag, a bulged can, oil, soot, a broken bushing, a loose lead. Through a window, mesh"
                        + " or fence only; an infrared camera shows what is warmer than its neighbours.",
                things);
    }

    Inspection relay() {
        List<Thing> things = sensorThings();
        return outside(
                "Read and write down, before anything is reset, what the relay of " + named(things, "the bank")
                        + " shows: value now, value when it acted, its angle, the time, every target.",
                things);
    }

    Inspection measureUnits() {
        return inside(
                "Measure the capacitance of every unit of " + which()
                        + ", none left out, and hold each against its own earlier value.",
                stageThings(),
                compartments());
    }
}
