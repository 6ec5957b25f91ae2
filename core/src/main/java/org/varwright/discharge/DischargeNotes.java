package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.varwright.bank.Bank;
import org.varwright.bank.DischargePath;
import org.varwright.bank.Vocabulary;
import org.varwright.quantity.Dimension;

/** What a person must bear in mind about a discharge, in words. */
final class DischargeNotes {
    static final String NOT_KNOWN = "not known: treat as charged; discharge by stick";
    static final String OVER = "minimum wait over: now prove dead";

    private DischargeNotes() {}

    static List<String> of(Bank bank, StageDischarge stage) {
        Vocabulary words = bank.words();
        List<String> notes = new ArrayList<>();
        if (!stage.isKnown()) {
            notes.add("Discharge resistance of " + stage.stage().unit().name() + " " + NOT_KNOWN
                    + ". The wait is only the standard's; the units may hold "
                    + volts(stage.opening().initialVolts()) + " each when it is over.");
        } else {
            notes.add(
                    "At the end of the wait a unit may hold " + volts(stage.endVolts()) + ", and two conductors of the "
                            + words.stage() + " " + volts(stage.betweenConductorsVolts()) + " between them.");
            stage.shortedSectionSeconds()
                    .ifPresent(seconds -> notes.add(
                            "A unit with one section shorted needs " + Dimension.TIME.format(Math.ceil(seconds))
                                    + " to " + volts(stage.chosen().volts()) + "."));
        }
        notes.add("An open discharge resistor makes any waiting time worthless: such a unit holds up to "
                + volts(stage.openResistorVolts()) + " and " + Dimension.ENERGY.format(stage.unitPeakJoules(), 3)
                + " for days.");
        if (stage.stage().fuse().isPresent()) {
            notes.add("A unit behind an operated fuse is cut off: if its resistor is open as well it stays charged"
                    + " whatever else is " + words.grounded() + ". Every unit gets the stick.");
        }
        stage.hiddenVolts()
                .ifPresent(hidden -> notes.add("With one open or slow resistor in a string, a unit may hold "
                        + volts(hidden) + " while the conductors at the string's ends read 0 V."));
        if (stage.stage().connection().hasFloatingNeutral()) {
            notes.add("The neutral floats: a three-pole " + words.groundingSwitch()
                    + " does not reach it. Test, discharge and " + (words == Vocabulary.IEC ? "earth" : "ground")
                    + " it as a fourth conductor.");
        }
        notes.add("After a discharge 0.05 to 0.10 % of the voltage may come back by itself (dielectric absorption), "
                + volts(Discharge.LEAST_ABSORPTION * stage.openResistorVolts()) + " to "
                + volts(stage.absorptionVolts()) + ": the short stays on.");
        notes.add("M" + OVER.substring(1) + ".");
        return notes;
    }

    static List<String> cautions(Bank bank, List<StageDischarge> stages) {
        Vocabulary words = bank.words();
        List<String> cautions = new ArrayList<>();
        cautions.add(
                "The end of a wait is no permission to touch: prove dead first, then discharge every unit terminal to"
                        + " terminal and terminals to case, then short and "
                        + (words == Vocabulary.IEC ? "earth" : "ground")
                        + ".");
        cautions.add("Discharge resistors do not replace shorting and " + words.grounding()
                + " (California Title 8 §2893(c)).");
        cautions.add("\"Five time constants\" is not enough at medium voltage: they leave 0.67 % of the peak, "
                + volts(stages.stream()
                                .mapToDouble(s -> s.opening().initialVolts())
                                .max()
                                .orElse(0.0)
                        * Math.exp(-5.0))
                + " here.");
        if (stages.stream()
                        .map(s -> s.stage().unit().name())
                        .collect(Collectors.toSet())
                        .size()
                > 1) {
            cautions.add("Units of different types stand here: the slowest rules where they share a space.");
        }
        if (stages.stream().anyMatch(s -> !s.isKnown())) {
            cautions.add("Discharge resistance " + NOT_KNOWN + ": see the " + words.stage() + " marked so.");
        }
        cautions.add("Local codes, the owner's rules, the maker's instructions and the judgement of a licensed or"
                + " authorised person come first.");
        return cautions;
    }

    /** What can't be answered, and what is missing for it. */
    static List<String> unanswered(Bank bank, List<StageDischarge> stages) {
        List<String> unanswered = new ArrayList<>();
        for (StageDischarge stage : stages) {
            String name = stage.stage().name();
            if (!stage.isKnown()) {
                unanswered.add(name + ": decay, "
                        + "strings and switching on again, without discharge-resistance or discharge of unit type "
                        + stage.stage().unit().name());
            }
            stage.stage().dischargePath().ifPresent(path -> {
                if (path.henries().isEmpty()) {
                    unanswered.add(name + ": time and swinging of the discharge path, without its inductance");
                }
                if (path.between() == DischargePath.Between.LINE_TO_NEUTRAL
                        && stage.stage().isDelta()) {
                    unanswered.add(name + ": discharge path from line to neutral, since a delta has no neutral: is it"
                            + " between lines?");
                }
            });
        }
        if (bank.control()
                .flatMap(c -> c.recloseDelaySeconds().isPresent() ? Optional.of(c) : Optional.empty())
                .isEmpty()) {
            unanswered.add("whether the control waits long enough before it switches on again, without"
                    + " control.reclose-delay");
        }
        return unanswered;
    }

    static String volts(double volts) {
        return Dimension.VOLTAGE.format(volts, 3);
    }
}
