package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Vocabulary;

/** What a person must do by rule where no lock does it, said for the way that breaks a property. */
final class PersonalRule {
    private final Scheme scheme;
    private final Vocabulary words;
    private final List<Step> path;
    private final State before;
    private final State last;

    private PersonalRule(Scheme scheme, Vocabulary words, List<Step> path) {
        this.scheme = scheme;
        this.words = words;
        this.path = path;
        last = path.isEmpty() ? scheme.start() : path.getLast().after();
        before = path.size() < 2 ? scheme.start() : path.get(path.size() - 2).after();
    }

    static String of(Scheme scheme, Vocabulary words, Property property, List<Step> path) {
        return new PersonalRule(scheme, words, path).text(property);
    }

    private String text(Property property) {
        return switch (property) {
            case EXPOSED_LIVE -> {
                Exposure at = exposure(ConductorState.LIVE);
                yield "No lock keeps the door of " + at.doors() + " shut while " + at.conductors()
                        + " is live. By rule: before that door is opened, cut " + at.conductors() + " off from "
                        + sources(at.conductorNames(), false)
                        + ", lock the point of isolation off, prove dead; else the door stays shut.";
            }
            case EXPOSED_LOW_VOLTAGE -> {
                Exposure at = exposure(ConductorState.LIVE_LOW_VOLTAGE);
                yield "Behind the door of " + at.doors() + ", " + at.conductors() + " stays live at low voltage from "
                        + sources(at.conductorNames(), true)
                        + ". By rule: switch it off and lock it off before work in there, or treat it as live: cover it, insulated tools.";
            }
            case EXPOSED_CHARGED -> {
                Exposure at = exposure(ConductorState.CHARGED);
                yield "No lock keeps the door of " + at.doors() + " shut while " + at.conductors()
                        + " is charged. By rule: wait out the discharge time of " + chargedStages(last)
                        + " with the door shut, prove dead, then discharge with the stick.";
            }
            case CLOSED_TO_GROUND ->
                "No lock keeps a source off " + words.ground() + ". By rule: before " + lastWhat()
                        + " is moved, prove dead on the side that it joins to; never close a "
                        + words.groundingSwitch() + " on what is not proven dead.";
            case LOAD_BREAK ->
                "No lock keeps " + lastWhat() + " from being moved under load. By rule: before it is moved, open "
                        + loadSwitches() + " and check on the ammeter that no current flows.";
            case RECHARGE ->
                "No lock keeps " + Words.list(rejoined(true))
                        + " from being switched on again while charged. By rule: wait out the discharge time of "
                        + Words.list(rejoined(true)) + " after opening before " + lastWhat() + " is closed.";
            case GROUNDED_CHARGED ->
                "No lock keeps " + Words.list(rejoined(false)) + " from being " + words.grounded()
                        + " while charged. By rule: wait out its discharge time before " + lastWhat()
                        + " is closed; a " + words.groundingSwitch() + " is not a discharge device.";
            case UNGROUNDED_ENTRY -> {
                Exposure at = ungrounded();
                yield "Behind the door of " + at.doors() + ", no lock sees to it that " + at.conductors() + " is "
                        + words.grounded() + ". By rule: before a hand goes in, prove dead and fit portable "
                        + (words == Vocabulary.IEC ? "earths" : "grounds") + " on " + at.conductors()
                        + "; count them on and off.";
            }
            case KEY_STRANDED ->
                "From here the bank can't be brought back into service by the locks alone: " + stranded()
                        + ". By rule: don't go this way; " + lastText() + " only with a way back agreed beforehand.";
        };
    }

    /** Doors and what they expose. */
    private record Exposure(List<String> doorNames, List<String> conductorNames) {
        String doors() {
            return Words.list(doorNames);
        }

        String conductors() {
            return Words.list(conductorNames);
        }
    }

    private Exposure exposure(ConductorState wanted) {
        Map<String, ConductorState> conductors = scheme.conductors(last);
        return exposed(conductor -> conductors.get(conductor) == wanted);
    }

    private Exposure ungrounded() {
        Map<String, ConductorState> conductors = scheme.conductors(last);
        Map<String, String> positions = scheme.positions(last);
        return exposed(conductor -> {
            boolean behindOpenSwitch = scheme.stages().stream()
                    .anyMatch(s -> s.name().equals(conductor)
                            && s.switchName()
                                    .filter(w -> !Device.CLOSED.equals(positions.get(w)))
                                    .isPresent());
            ConductorState state = conductors.get(conductor);
            return state != ConductorState.GROUNDED && state != ConductorState.LIVE_LOW_VOLTAGE && !behindOpenSwitch;
        });
    }

    private Exposure exposed(java.util.function.Predicate<String> dangerous) {
        Map<String, Boolean> doors = scheme.doors(last);
        List<String> doorNames = new ArrayList<>();
        List<String> conductorNames = new ArrayList<>();
        for (Compartment compartment : scheme.isolation().compartments()) {
            List<String> there =
                    compartment.exposes().stream().filter(dangerous).toList();
            if (doors.getOrDefault(compartment.name(), false) && !there.isEmpty()) {
                doorNames.add(compartment.name());
                there.stream().filter(c -> !conductorNames.contains(c)).forEach(conductorNames::add);
            }
        }
        return new Exposure(doorNames, conductorNames);
    }

    private String sources(List<String> conductorNames, boolean low) {
        List<String> names = scheme.isolation().sources().stream()
                .filter(s -> s.isLowVoltage() == low)
                .filter(s -> !low || conductorNames.contains(s.at()))
                .map(EnergySource::name)
                .toList();
        return names.isEmpty() ? "its source" : Words.list(names);
    }

    private String chargedStages(State state) {
        return Words.list(scheme.charges(state).entrySet().stream()
                .filter(Map.Entry::getValue)
                .map(Map.Entry::getKey)
                .toList());
    }

    /** Stages that were charged and apart before the last move and are joined to a source (or to ground) after it. */
    private List<String> rejoined(boolean toSource) {
        Circuit was = scheme.circuit(before);
        Circuit is = scheme.circuit(last);
        long joined = toSource ? is.liveStages & ~was.liveStages : is.groundJoinedStages & ~was.groundJoinedStages;
        long charged = scheme.chargedBits(before) & joined;
        return scheme.stages().stream()
                .filter(s -> (charged & scheme.layout().chargeMask(s)) != 0)
                .map(StagePoint::name)
                .toList();
    }

    private String loadSwitches() {
        Map<String, String> positions = scheme.positions(before);
        List<String> closed = scheme.isolation().devices().stream()
                .filter(d -> d.kind() == Device.Kind.BREAKER
                        || d.kind() == Device.Kind.STAGE_SWITCH
                        || d.kind() == Device.Kind.LOAD_BREAK_SWITCH)
                .map(Device::name)
                .filter(d -> Device.CLOSED.equals(positions.get(d)))
                .toList();
        return closed.isEmpty() ? "what carries the load" : Words.list(closed, "or");
    }

    private String stranded() {
        List<String> trapped = new ArrayList<>();
        scheme.keys(last).forEach((key, places) -> {
            if (places.stream().noneMatch(p -> p instanceof KeyPlace.Free)) {
                trapped.add(key + " in " + SchemeCheck.phrase(places.getFirst()));
            }
        });
        return trapped.isEmpty() ? "no key is trapped, but no order of moves leads back" : Words.list(trapped);
    }

    private String lastWhat() {
        return path.isEmpty() ? "anything" : path.getLast().move().what();
    }

    private String lastText() {
        return path.isEmpty() ? "start" : path.getLast().move().text();
    }
}
