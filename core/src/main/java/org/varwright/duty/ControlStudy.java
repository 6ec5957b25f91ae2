package org.varwright.duty;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Control;
import org.varwright.bank.Load;
import org.varwright.bank.TransformerRatio;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.quantity.Dimension;

/** The control against the bank's own steps (DUT-8). */
final class ControlStudy {
    /** A kvar control commonly switches at this part of a stage. Common practice, no source. */
    private static final double KVAR_THRESHOLD = 0.65;

    private static final Source HUNTING = Source.commonPractice("a band of at least 1.5 steps");

    private final Bank bank;
    private final Control control;
    private final List<VoltageRise> rises;
    private final DutyQuestion.EnteredRatios entered;
    private final List<Unanswered> unanswered;
    private final List<String> lines = new ArrayList<>();
    private final List<Check> checks = new ArrayList<>();
    private final List<String> symptoms = new ArrayList<>();

    ControlStudy(
            Bank bank,
            Control control,
            List<VoltageRise> rises,
            DutyQuestion.EnteredRatios entered,
            List<Unanswered> unanswered) {
        this.bank = bank;
        this.control = control;
        this.rises = rises;
        this.entered = entered;
        this.unanswered = unanswered;
    }

    ControlAnswer answer() {
        if (control.senses().isEmpty()) {
            unanswered.add(new Unanswered("control.senses", "whether the control hunts can't be said"));
            return ControlAnswer.EMPTY;
        }
        switch (control.senses().get()) {
            case VOLTAGE -> voltage();
            case KVAR -> kvar();
            case POWER_FACTOR -> powerFactor();
            case CURRENT -> current();
            case TIME ->
                lines.add("The control switches by the clock: it can't hunt, and it can't see light load either.");
        }
        return new ControlAnswer(lines, checks, symptoms);
    }

    private boolean hasThresholds() {
        if (control.on().isEmpty()) {
            unanswered.add(new Unanswered("control.on", "whether the control hunts can't be said"));
        }
        if (control.off().isEmpty()) {
            unanswered.add(new Unanswered("control.off", "whether the control hunts can't be said"));
        }
        return control.on().isPresent() && control.off().isPresent();
    }

    private void voltage() {
        if (control.ratio().isEmpty()) {
            unanswered.add(
                    new Unanswered("control.ratio", "what the control's thresholds are at the bus can't be said"));
        }
        if (!hasThresholds() || control.ratio().isEmpty()) {
            return;
        }
        TransformerRatio ratio = control.ratio().get();
        double on = control.on().orElseThrow();
        double off = control.off().orElseThrow();
        double line = bank.system().nominalVolts() * ratio.factor();
        double phase = bank.system().phaseVolts() * ratio.factor();
        double middle = 0.5 * (on + off);
        boolean toNeutral = Math.abs(Math.log(phase / middle)) <= Math.abs(Math.log(line / middle));
        double seen = toNeutral ? phase : line;
        lines.add("Switches on below " + volts(on / ratio.factor()) + ", off above " + volts(off / ratio.factor())
                + (toNeutral ? " to neutral" : " line to line") + " at the bus; at nominal voltage it sees "
                + volts(seen) + ", its band is " + volts(off - on) + ".");
        for (VoltageRise rise : rises) {
            checks.add(step(
                    rise.name(),
                    seen * rise.exact(),
                    off - on,
                    "V",
                    List.of(
                            new Term("V_seen", "at nominal voltage", seen, "V"),
                            new Term("ΔV/V", "rise that it makes", rise.exact(), ""))));
        }
        checks.add(new Check(
                "control: voltage seen at nominal against its thresholds",
                seen,
                seen < on ? on : off,
                "V",
                seen < 0.95 * on || seen > 1.05 * off ? Verdict.WARN : Verdict.PASS,
                new Basis(
                        "DUT-8",
                        "0.95·V_on ≤ V_seen ≤ 1.05·V_off",
                        List.of(new Term("V_on", "threshold", on, "V"), new Term("V_off", "threshold", off, "V")),
                        Source.commonPractice("a ratio that is not the transformer's is off by more"))));
        entered.voltage().ifPresent(e -> {
            double shown = DeadBand.seen(1.0, ratio, e);
            lines.add("With the ratio " + ratio(e) + " entered where " + ratio(ratio)
                    + " is fitted the control takes the bus for " + Dimension.digits(shown, 4) + " times what it is: "
                    + consequence(shown));
        });
        symptoms.add(
                "Sees half of what it should (ratio of double the voltage entered or fitted): everything goes on and stays on.");
        symptoms.add(
                "Sees √3 too much or too little: connected line to line where to neutral is meant, or the other way round.");
        symptoms.add("Sees double: nothing ever goes on.");
    }

    private static String consequence(double shown) {
        if (shown < 0.97) {
            return "everything goes on and nothing comes off.";
        }
        return shown > 1.03 ? "nothing goes on." : "little changes.";
    }

    private void kvar() {
        double smallest = rises.stream().mapToDouble(VoltageRise::vars).min().orElse(0.0);
        if (hasThresholds()) {
            double on = control.on().orElseThrow();
            double off = control.off().orElseThrow();
            lines.add("Switches on when the load draws " + vars(on) + ", off at " + vars(off) + "; its band is "
                    + vars(on - off) + ".");
            for (VoltageRise rise : rises) {
                checks.add(step(
                        rise.name(),
                        rise.vars(),
                        on - off,
                        "var",
                        List.of(new Term("Q_on", "threshold", on, "var"), new Term("Q_off", "threshold", off, "var"))));
            }
        }
        if (control.currentRatio().isEmpty()) {
            unanswered.add(new Unanswered(
                    "control.current-ratio", "what a wrong ratio would do to the control can't be said"));
            return;
        }
        TransformerRatio fitted = control.currentRatio().get();
        double threshold = control.on().orElse(KVAR_THRESHOLD * smallest);
        entered.current().ifPresent(e -> {
            double shown = DeadBand.seen(1.0, fitted, e);
            lines.add("With " + ratio(e) + " entered where " + ratio(fitted) + " is fitted the control sees "
                    + Dimension.digits(shown, 4) + " times the true reactive power: it switches first at a true "
                    + vars(threshold / shown) + " instead of " + vars(threshold) + "."
                    + bank.load()
                            .map(l -> " The full load of " + vars(l.vars()) + " looks like " + vars(l.vars() * shown)
                                    + (l.vars() * shown >= threshold ? "." : ": nothing ever goes on."))
                            .orElse(""));
        });
        symptoms.add("Current transformer larger than entered: sees too little, switches late or never.");
        symptoms.add("Current transformer smaller than entered: sees too much, over-corrects and hunts.");
        symptoms.add(
                "Current transformer reversed or in another phase: power factor shown makes no sense, switching on at no load.");
    }

    private void powerFactor() {
        if (bank.load().isEmpty()) {
            unanswered.add(new Unanswered("load", "whether a power-factor control hunts depends on the load"));
        }
        if (!hasThresholds() || bank.load().isEmpty()) {
            return;
        }
        double on = control.on().orElseThrow();
        double off = control.off().orElseThrow();
        Load load = bank.load().get();
        lines.add("Switches on below power factor " + Dimension.digits(on, 3) + ", off above "
                + Dimension.digits(off, 3) + ".");
        powerFactorSteps("full load", load.watts(), on, off);
        load.lightWatts().ifPresent(w -> powerFactorSteps("light load", w, on, off));
    }

    private void powerFactorSteps(String name, double watts, double on, double off) {
        double band = watts * (PowerFactor.tangent(on) - PowerFactor.tangent(off));
        for (VoltageRise rise : rises) {
            checks.add(step(
                    rise.name() + " at " + name,
                    rise.vars(),
                    band,
                    "var",
                    List.of(
                            new Term("P", name, watts, "W"),
                            new Term("pf_on", "threshold", on, ""),
                            new Term("pf_off", "threshold", off, ""))));
        }
    }

    private void current() {
        if (control.currentRatio().isEmpty()) {
            unanswered.add(new Unanswered(
                    "control.current-ratio", "what the control's thresholds are in the line can't be said"));
        }
        if (bank.load().isEmpty()) {
            unanswered.add(
                    new Unanswered("load", "whether a current control hunts depends on the load's power factor"));
        }
        if (!hasThresholds() || control.currentRatio().isEmpty() || bank.load().isEmpty()) {
            return;
        }
        double factor = control.currentRatio().get().factor();
        double on = control.on().orElseThrow() / factor;
        double off = control.off().orElseThrow() / factor;
        Load load = bank.load().get();
        double cosine = PowerFactor.of(load.watts(), load.vars());
        double reactive = on * Math.sqrt(1.0 - cosine * cosine);
        lines.add("Switches on above " + Dimension.CURRENT.format(on) + ", off below " + Dimension.CURRENT.format(off)
                + " in the line, if its transformer sees the load less the bank.");
        for (VoltageRise rise : rises) {
            double amperes = rise.vars() / (Math.sqrt(3.0) * bank.system().nominalVolts());
            double after = Math.hypot(on * cosine, reactive - amperes);
            checks.add(step(
                    rise.name(),
                    on - after,
                    on - off,
                    "A",
                    List.of(
                            new Term("I_on", "threshold", on, "A"),
                            new Term("I_off", "threshold", off, "A"),
                            new Term("cos φ", "of the full load", cosine, ""))));
        }
    }

    private static Check step(String name, double step, double band, String unit, List<Term> terms) {
        return new Check(
                "control: the step of " + name + " against the dead band",
                step,
                band,
                unit,
                DeadBand.judge(step, band),
                new Basis("DUT-8", "step < band, or the control hunts", terms, HUNTING));
    }

    private static String volts(double value) {
        return Dimension.VOLTAGE.format(value);
    }

    private static String vars(double value) {
        return Dimension.REACTIVE_POWER.format(value);
    }

    private static String ratio(TransformerRatio ratio) {
        return Dimension.digits(ratio.primary(), 6) + ":" + Dimension.digits(ratio.secondary(), 4);
    }

    static ControlAnswer of(
            Bank bank, List<VoltageRise> rises, DutyQuestion.EnteredRatios entered, List<Unanswered> unanswered) {
        Optional<Control> control = bank.control();
        if (control.isEmpty()) {
            unanswered.add(new Unanswered("control", "whether the bank's own steps make a control hunt can't be said"));
            return ControlAnswer.EMPTY;
        }
        return new ControlStudy(bank, control.get(), rises, entered, unanswered).answer();
    }
}
