package org.varwright.duty;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Vocabulary;
import org.varwright.basis.Check;
import org.varwright.basis.CheckText;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.limit.ContinuousLimits;
import org.varwright.limit.ShortTimeTable;
import org.varwright.limit.Stress;
import org.varwright.page.Enumeration;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** {@link Duty} as text for people: 100 columns, to be printed and taken to site. */
public final class DutyText {
    private DutyText() {}

    public static String of(Duty duty) {
        Vocabulary words = duty.bank().words();
        Page page = new Page().heading("Duty  " + duty.bank().name());
        summary(page, duty);
        stages(page, duty, words);
        overvoltages(page, duty);
        conductors(page, duty, words);
        relocations(page, duty, words);
        spares(page, duty);
        rises(page, duty, words);
        list(page, "Control", duty.control().lines());
        list(page, "If the control's ratio is wrong", duty.control().symptoms());
        loads(page, duty, words);
        List<Check> rest = duty.otherChecks().stream()
                .filter(c -> c.verdict() != Verdict.PASS)
                .toList();
        page.heading("Other checks that don't pass");
        if (rest.isEmpty()) {
            page.text("  none of " + duty.otherChecks().size());
        }
        CheckText.add(page, rest);
        list(
                page,
                "Not answered",
                duty.unanswered().stream().map(Unanswered::print).toList());
        return page.print();
    }

    private static void summary(Page page, Duty duty) {
        List<String> over = new ArrayList<>();
        for (StageDuty s : duty.stages()) {
            if (s.checks().stream().anyMatch(c -> c.verdict() == Verdict.FAIL) && !over.contains(s.stage())) {
                over.add(s.stage());
            }
        }
        String cases = "in every case looked at";
        page.text(
                over.isEmpty()
                        ? "Every " + duty.bank().words().stage() + " keeps the continuous limits " + cases + "."
                        : "Over a continuous limit: " + Enumeration.of(over) + ". Look at the lines marked FAIL.");
        if (duty.control().checks().stream().anyMatch(c -> c.verdict() == Verdict.FAIL)) {
            page.text("The control hunts: a step of its own is as wide as its dead band. See the end of this page.");
        }
    }

    private static void stages(Page page, Duty duty, Vocabulary words) {
        page.heading("In service, hardest-worked units, multiples of rated");
        List<List<String>> rows = new ArrayList<>();
        for (StageDuty s : duty.stages()) {
            Stress stress = s.stress();
            rows.add(List.of(
                    mark(s.checks()),
                    s.stage(),
                    s.at().print(),
                    Dimension.digits(stress.voltage(), 4),
                    Dimension.digits(stress.crest(), 4),
                    Dimension.digits(stress.current(), 4),
                    Dimension.digits(stress.reactivePower(), 4),
                    Dimension.CURRENT.format(s.unitAmperes()),
                    s.harmonics()));
        }
        page.table(
                List.of("", words.stage(), "bus", "rms V", "crest", "rms I", "kvar", "unit", "harmonics"),
                rows,
                3,
                4,
                5,
                6,
                7);
        ContinuousLimits limits = ContinuousLimits.of(duty.bank().standard());
        page.text("  limits: rms V " + limits.voltage().value() + ", crest "
                + limits.crest().value() + ", rms I "
                + limits.current().value() + ", kvar " + limits.reactivePower().value()
                + ". Crest: harmonics added as if all peaked together.");
    }

    private static String mark(List<Check> checks) {
        Verdict worst = Verdict.PASS;
        for (Check check : checks) {
            if (check.verdict().compareTo(worst) > 0) {
                worst = check.verdict();
            }
        }
        return switch (worst) {
            case PASS -> "ok";
            case WARN -> "WARN";
            case FAIL -> "FAIL";
        };
    }

    private static void overvoltages(Page page, Duty duty) {
        ShortTimeTable table =
                ShortTimeTable.of(duty.bank().standard(), duty.bank().system().frequencyHertz());
        page.heading("Overvoltage for a short time");
        duty.overvoltages().forEach(o -> page.item("  - ", o.sentence()));
        List<String> rows = new ArrayList<>();
        for (ShortTimeTable.Row row : table.rows()) {
            rows.add(row.label() + " " + Dimension.digits(row.multiple(), 3));
        }
        page.text("  times rated voltage: " + String.join(", ", rows) + "; for good " + table.continuous() + "  ["
                + table.source().print() + "]");
        page.text("  How often such a voltage came before is not known here, and it counts: each one ages the units.");
    }

    private static void conductors(Page page, Duty duty, Vocabulary words) {
        page.heading("Conductors");
        List<List<String>> rows = new ArrayList<>();
        for (ConductorDuty c : duty.conductors()) {
            rows.add(List.of(
                    c.stage(),
                    Dimension.CURRENT.format(c.ratedAmperes()),
                    Dimension.CURRENT.format(c.requiredAmperes())));
        }
        page.table(List.of(words.stage(), "rated line current", "conductors carry at least"), rows, 1, 2);
        page.text("  [DUT-5; " + ConductorDuty.SOURCE.print() + "]");
    }

    private static void relocations(Page page, Duty duty, Vocabulary words) {
        duty.question().elsewhere().ifPresent(e -> {
            page.heading("On " + Dimension.VOLTAGE.format(e.volts()) + ", " + Dimension.FREQUENCY.format(e.hertz()));
            List<List<String>> rows = new ArrayList<>();
            for (Relocation r : duty.relocations()) {
                rows.add(List.of(
                        mark(r.checks()),
                        r.stage(),
                        Dimension.REACTIVE_POWER.format(r.ratedVars()),
                        Dimension.REACTIVE_POWER.format(r.varsHere()),
                        Dimension.REACTIVE_POWER.format(r.varsThere()),
                        Dimension.digits(r.stress().voltage(), 4),
                        Dimension.digits(r.stress().current(), 4)));
            }
            page.table(
                    List.of("", words.stage(), "rated", "gives here", "gives there", "V/rated", "I/rated"),
                    rows,
                    2,
                    3,
                    4,
                    5,
                    6);
        });
    }

    private static void spares(Page page, Duty duty) {
        if (duty.wrongSpares().isEmpty()) {
            return;
        }
        page.heading("Spares that mislead: the same kvar on the plate");
        for (WrongSpare w : duty.wrongSpares()) {
            String who = w.serial().isEmpty()
                    ? "type " + w.type() + " (no spare listed)"
                    : w.serial() + " (" + w.type() + ")";
            page.item(
                    "  DON'T FIT  ",
                    who + " in " + w.stage() + ": " + w.differs() + ". " + Dimension.CAPACITANCE.format(w.farads())
                            + " where " + Dimension.CAPACITANCE.format(w.wantedFarads()) + " belong; gives "
                            + Dimension.REACTIVE_POWER.format(w.vars()) + " instead of "
                            + Dimension.REACTIVE_POWER.format(w.wantedVars()) + ", at "
                            + Dimension.digits(w.voltsPerRated(), 3) + " times its rated voltage and "
                            + Dimension.digits(w.amperesPerRated(), 3) + " times its rated current."
                            + w.effect()
                                    .map(e -> " In " + e.position() + ": highest unit at "
                                            + Dimension.digits(e.highestUnitPerRated(), 4) + " of rated"
                                            + (e.sensors().isEmpty() ? "" : ", " + String.join(", ", e.sensors()))
                                            + ".")
                                    .orElse(""));
        }
    }

    private static void rises(Page page, Duty duty, Vocabulary words) {
        if (duty.rises().isEmpty()) {
            return;
        }
        page.heading("Voltage rise at the bus");
        List<List<String>> rows = new ArrayList<>();
        for (VoltageRise r : duty.rises()) {
            rows.add(List.of(
                    r.name(),
                    Dimension.REACTIVE_POWER.format(r.vars()),
                    Duty.signed(r.byRule()),
                    Duty.signed(r.exact()),
                    Dimension.VOLTAGE.format(r.exact() * duty.bank().system().nominalVolts())));
        }
        page.table(List.of(words.stage(), "gives", "Q/S_sc", "exact", "line to line"), rows, 1, 2, 3, 4);
        page.text("  [DUT-7; first principles; no load, before regulators and tap changers answer]");
    }

    private static void loads(Page page, Duty duty, Vocabulary words) {
        if (duty.loads().isEmpty()) {
            return;
        }
        page.heading("Beside the load");
        for (LoadAnswer a : duty.loads()) {
            page.item(
                    "  " + a.load() + ": ",
                    Dimension.ACTIVE_POWER.format(a.watts()) + ", " + Dimension.REACTIVE_POWER.format(a.vars())
                            + ", power factor " + Dimension.digits(a.powerFactor(), 3) + " without the bank; "
                            + wanted(a) + "every " + words.stage() + " on: "
                            + Dimension.digits(a.allOnPowerFactor(), 3)
                            + (a.isLeading() ? " LEADING, too much" : " lagging") + ".");
            a.use()
                    .ifPresent(u -> page.item(
                            "    use: ",
                            u.combination() + " (" + Dimension.REACTIVE_POWER.format(u.vars()) + "): power factor "
                                    + Dimension.digits(u.powerFactor(), 3)
                                    + (u.isEnough()
                                            ? ""
                                            : ", less than wanted: no combination reaches it without leading")
                                    + (u.isToAvoid()
                                            ? "; but resonance speaks against it, see the command \"resonance\""
                                            : "")));
            a.clear()
                    .ifPresent(u -> page.item(
                            "    clear of resonance: ",
                            u.combination() + " (" + Dimension.REACTIVE_POWER.format(u.vars()) + "): power factor "
                                    + Dimension.digits(u.powerFactor(), 3)));
        }
    }

    private static String wanted(LoadAnswer a) {
        if (a.wantedVars().isEmpty()) {
            return "";
        }
        double vars = a.wantedVars().getAsDouble();
        return vars > 0.0 ? "wanted " + Dimension.REACTIVE_POWER.format(vars) + "; " : "none wanted; ";
    }

    private static void list(Page page, String heading, List<String> items) {
        if (!items.isEmpty()) {
            page.heading(heading);
            items.forEach(item -> page.item("  - ", item));
        }
    }
}
