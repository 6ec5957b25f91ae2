package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.Vocabulary;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Notice.Weight;
import org.varwright.report.document.Section;

/** What must be read before anything else, and who decides. */
final class CautionSection {
    private CautionSection() {}

    static Section of(Bank bank) {
        Vocabulary words = bank.words();
        List<String> usual = new ArrayList<>();
        usual.add(
                "Treat every conductor as live and every capacitor as charged until it is proven dead, discharged and "
                        + words.grounded() + ". Not known counts as live.");
        usual.add(
                "A lever, a lamp, a colour, a fuse or another circuit proves nothing. Only a visible gap, or a test with a"
                        + " tester that was proved before and after, counts.");
        usual.add("A wait only says when you may go on to prove dead. It never says that something is dead: a discharge"
                + " resistor may be open.");
        usual.add("No " + words.groundingSwitch() + " discharges a capacitor, and " + words.grounding()
                + " the bus does not " + words.ground() + " a " + words.stage()
                + " behind an open switch. Discharge every unit terminal to terminal and terminal to case, then short it."
                + " The short stays on while anyone works: voltage comes back by itself.");
        if (bank.stages().stream().map(Stage::connection).anyMatch(c -> c.hasFloatingNeutral())) {
            usual.add("The neutral of this bank floats. Test, discharge and " + words.ground()
                    + " it as a fourth conductor; a three-pole " + words.groundingSwitch() + " does not reach it.");
        }
        usual.add(
                "A bulged, leaking or blown unit can hold its charge and can burst. Keep away until it is shorted, and"
                        + " handle its liquid as the maker says.");
        usual.add(
                "If what you find is not what this paper says, stop, leave it safe, and have the order of work made anew."
                        + " A changed scope needs a new order of work.");
        return Section.of(
                "Cautions",
                new Block.Notice(
                        Weight.CAUTION,
                        "CAUTION: who decides",
                        List.of(
                                "Local codes, the owner\u2019s rules, the maker\u2019s instructions and the judgement of a"
                                        + " licensed or authorized person come first. Where this paper differs from them, they"
                                        + " hold.",
                                "This is planning information worked out from the files named at its end. It is never a"
                                        + " permission to touch. If the files do not describe the bank as it stands, neither"
                                        + " does this paper.",
                                "Approach distances and protective equipment are the owner\u2019s to say. A published distance"
                                        + " that stands in this paper is no substitute for the owner\u2019s.")),
                new Block.Bullets(usual));
    }
}
