package org.varwright.bankfile;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.quantity.Dimension;

/** Looks up where the units stand and whether their capacitances can be right. */
final class PositionCheck {
    /** A reading below this share of the nameplate's capacitance is taken for a slip of the pen (common practice, no source). */
    private static final double LEAST_SHARE = 0.8;

    /** And one above this. One of four sections shorted gives 1.33. */
    private static final double MOST_SHARE = 1.4;

    private PositionCheck() {}

    static List<KnownUnit> check(Draft draft, Findings findings) {
        Map<String, UnitPosition> positions = new HashMap<>();
        Map<String, UnitType> typeAt = new HashMap<>();
        List<String> names = new ArrayList<>();
        for (Item<Stage> stage : draft.stages()) {
            for (UnitPosition position : stage.value().positions()) {
                positions.put(normal(position.name()), position);
                typeAt.put(position.name(), stage.value().unit());
                names.add(position.name());
            }
        }
        Map<String, Place> taken = new HashMap<>();
        Map<String, Place> serials = new HashMap<>();
        List<KnownUnit> known = new ArrayList<>();
        for (Item<Draft.UnitNote> item : draft.units()) {
            Draft.UnitNote unit = item.value();
            unit.serial().ifPresent(s -> serial(s, item.path(), serials, findings));
            UnitPosition at = positions.get(normal(unit.at()));
            if (at == null) {
                unknown(unit.at(), item.path(), draft, names, findings);
                continue;
            }
            Place place = findings.place(item.path() + ".at");
            Place first = taken.putIfAbsent(at.name(), place);
            if (first != null) {
                findings.error(Message.POSITION_TWICE, place, at.name(), String.valueOf(first.line()));
                continue;
            }
            UnitType type = typeAt.get(at.name());
            if (type != null) {
                unit.capacitanceFarads()
                        .ifPresent(c -> capacitance(c, type, findings.place(item.path() + ".capacitance"), findings));
            }
            known.add(
                    new KnownUnit(at, unit.serial(), unit.capacitanceFarads(), unit.made(), unit.label(), unit.note()));
        }
        for (Item<Spare> item : draft.spares()) {
            Spare spare = item.value();
            serial(spare.serial(), item.path(), serials, findings);
            spare.capacitanceFarads()
                    .ifPresent(
                            c -> capacitance(c, spare.unit(), findings.place(item.path() + ".capacitance"), findings));
        }
        return known;
    }

    private static void unknown(String at, String path, Draft draft, List<String> names, Findings findings) {
        String stage = at.contains("/") ? at.substring(0, at.indexOf('/')).strip() : at.strip();
        if (draft.declared().stages().contains(stage) && draft.stage(stage).isEmpty()) {
            return; // that stage has faults of its own, which are reported
        }
        String hint = Nearest.hint(at, names);
        String range = draft.stage(stage)
                .map(s -> "positions of \"" + stage + "\" run from \""
                        + s.value().positions().getFirst().name() + "\" to \""
                        + s.value().positions().getLast().name() + "\"")
                .orElse("stages are " + Shown.list(draft.declared().stages()));
        findings.error(Message.UNKNOWN_POSITION, findings.place(path + ".at"), Shown.of(at), hint, range);
    }

    private static void serial(String serial, String path, Map<String, Place> serials, Findings findings) {
        Place place = findings.place(path + ".serial");
        Place first = serials.putIfAbsent(serial, place);
        if (first != null) {
            findings.error(Message.SERIAL_TWICE, place, Shown.of(serial), String.valueOf(first.line()));
        }
    }

    /** Holds a capacitance against the nameplate: {@code C = Q/(2πfV²)} (NET-1). */
    private static void capacitance(double farads, UnitType type, Place place, Findings findings) {
        double nameplate = type.capacitanceFarads();
        double share = farads / nameplate;
        Tolerance tolerance = type.tolerance();
        if (share < LEAST_SHARE || share > MOST_SHARE) {
            findings.error(
                    Message.CAPACITANCE_IMPOSSIBLE,
                    place,
                    Dimension.CAPACITANCE.format(farads),
                    Dimension.digits(share, 3),
                    Dimension.CAPACITANCE.format(nameplate),
                    type.name(),
                    slip(share));
        } else if (share < 1.0 + tolerance.low() - 1e-9 || share > 1.0 + tolerance.high() + 1e-9) {
            findings.warning(
                    Message.CAPACITANCE_OUT_OF_TOLERANCE,
                    place,
                    Dimension.CAPACITANCE.format(farads),
                    signed(share - 1.0),
                    Dimension.CAPACITANCE.format(nameplate),
                    type.name(),
                    signed(tolerance.low()),
                    signed(tolerance.high()));
        }
    }

    private static String slip(double share) {
        double[] factors = {1e-3, 1e3, 1e-6, 1e6, 10.0, 0.1};
        String[] words = {
            "µF and nF are easily mistaken",
            "nF and µF are easily mistaken",
            "µF and pF are easily mistaken",
            "pF and µF are easily mistaken",
            "look at the decimal point",
            "look at the decimal point"
        };
        for (int i = 0; i < factors.length; i++) {
            if (share > factors[i] * LEAST_SHARE && share < factors[i] * MOST_SHARE) {
                return words[i];
            }
        }
        return "look at the nameplate and at the unit of the capacitance";
    }

    private static String signed(double part) {
        return (part > 0.0 ? "+" : "") + Dimension.digits(100.0 * part, 3);
    }

    private static String normal(String name) {
        return name.strip().replaceAll("\\s*/\\s*", "/").toLowerCase(Locale.ROOT);
    }
}
