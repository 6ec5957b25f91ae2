package org.varwright.fit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * What is asked, with every name resolved and forced swaps made.
 *
 * @param asFound what is where now
 * @param start what is where after the forced swaps
 * @param open positions to be filled: condemned or empty
 * @param fixed positions that are not touched
 * @param spares that may be used, without those of forced swaps
 * @param withheld spares that must not be used
 */
record Request(
        Arrangement asFound,
        Arrangement start,
        Set<UnitPosition> open,
        Set<UnitPosition> fixed,
        List<Spare> spares,
        List<Spare> withheld) {
    /** More extra lifts than this are never tried exhaustively. */
    static final int MOST_EXTRA_LIFTS = 12;

    private static final Place OPTIONS = new Place("", 0, 0, "");

    /**
     * Resolves the names.
     *
     * @throws VarwrightException {@code FIT_…}, {@code POSITION_UNKNOWN}
     */
    static Request resolve(FitInput input) {
        int extra = input.options().extraLifts();
        if (extra < 0 || extra > MOST_EXTRA_LIFTS) {
            throw new VarwrightException(
                    Message.FIT_LIFTS_RANGE, OPTIONS, String.valueOf(extra), String.valueOf(MOST_EXTRA_LIFTS));
        }
        Map<UnitPosition, Fitted> units = new HashMap<>();
        input.units().forEach(u -> units.put(u.at(), u));
        Arrangement asFound = Arrangement.asFound(input.units());
        Set<UnitPosition> open = new LinkedHashSet<>();
        Set<UnitPosition> fixed = new HashSet<>();
        for (Fitted unit : input.units()) {
            switch (unit.role()) {
                case KEPT -> {}
                case IMMOVABLE -> fixed.add(unit.at());
                case CONDEMNED, EMPTY -> open.add(unit.at());
            }
        }
        for (String name : input.options().keep()) {
            Fitted unit = require(input, "--keep", name);
            if (unit.role() == Fitted.Role.CONDEMNED) {
                throw new VarwrightException(
                        Message.FIT_KEEP_CONDEMNED, OPTIONS, unit.at().name(), because(unit));
            }
            fixed.add(unit.at());
        }
        Map<String, Spare> bySerial = new HashMap<>();
        for (Spare spare : input.spares()) {
            if (bySerial.put(spare.serial(), spare) != null) {
                throw new VarwrightException(Message.FIT_SPARE_TWICE, OPTIONS, spare.serial());
            }
        }
        Set<String> without = new HashSet<>();
        for (String serial : input.options().without()) {
            if (!bySerial.containsKey(serial)) {
                throw new VarwrightException(Message.FIT_SPARE_UNKNOWN, OPTIONS, serial, listed(bySerial.keySet()));
            }
            without.add(serial);
        }
        Set<String> used = new HashSet<>();
        Arrangement start = swap(input, asFound, bySerial, open, fixed, used);
        List<Spare> free = new ArrayList<>();
        List<Spare> withheld = new ArrayList<>();
        for (Spare spare : input.spares()) {
            if (without.contains(spare.serial())) {
                withheld.add(spare);
            } else if (!used.contains(spare.serial())) {
                free.add(spare);
            }
        }
        return new Request(asFound, start, open, fixed, free, withheld);
    }

    private static Arrangement swap(
            FitInput input,
            Arrangement asFound,
            Map<String, Spare> bySerial,
            Set<UnitPosition> open,
            Set<UnitPosition> fixed,
            Set<String> used) {
        Arrangement start = asFound;
        Set<String> named = new HashSet<>();
        for (FitOptions.Exchange exchange : input.options().swaps()) {
            Optional<Spare> spare = Optional.ofNullable(bySerial.get(exchange.second()));
            Fitted first = require(input, "--swap", exchange.first());
            once(named, first.at().name());
            if (spare.isPresent()) {
                once(named, spare.get().serial());
                requireFit(input.bank(), first.at(), spare.get());
                used.add(spare.get().serial());
                start = start.with(Map.of(first.at(), new Content.FromStock(spare.get())));
                open.remove(first.at());
                fixed.add(first.at());
                continue;
            }
            Fitted second = require(input, "--swap", exchange.second());
            once(named, second.at().name());
            requireGood(first);
            requireGood(second);
            requireFit(input.bank(), first, second.at());
            requireFit(input.bank(), second, first.at());
            start = start.with(
                    Map.of(first.at(), new Content.InPlace(second), second.at(), new Content.InPlace(first)));
            fixed.add(first.at());
            fixed.add(second.at());
        }
        return start;
    }

    private static void once(Set<String> named, String name) {
        if (!named.add(name)) {
            throw new VarwrightException(Message.FIT_SWAP_TWICE, OPTIONS, name);
        }
    }

    private static void requireGood(Fitted unit) {
        switch (unit.role()) {
            case KEPT, IMMOVABLE -> {}
            case CONDEMNED ->
                throw new VarwrightException(
                        Message.FIT_SWAP_CONDEMNED, OPTIONS, unit.at().name(), "it is condemned" + because(unit));
            case EMPTY ->
                throw new VarwrightException(
                        Message.FIT_SWAP_CONDEMNED, OPTIONS, unit.at().name(), "there is no unit in it");
        }
    }

    private static void requireFit(Bank bank, UnitPosition at, Spare spare) {
        Stage stage = bank.stage(at.stage()).orElseThrow();
        Compatibility.reason(bank, stage, spare).ifPresent(reason -> {
            throw new VarwrightException(Message.FIT_SWAP_UNFIT, OPTIONS, spare.serial(), at.name(), reason);
        });
    }

    private static void requireFit(Bank bank, Fitted unit, UnitPosition at) {
        Stage from = bank.stage(unit.at().stage()).orElseThrow();
        Stage to = bank.stage(at.stage()).orElseThrow();
        Compatibility.typeReason(bank, to, from.unit()).ifPresent(reason -> {
            throw new VarwrightException(Message.FIT_SWAP_UNFIT, OPTIONS, unit.name(), at.name(), reason);
        });
    }

    private static String because(Fitted unit) {
        return unit.why().isEmpty() ? "" : " (" + unit.why() + ")";
    }

    private static String listed(Set<String> names) {
        return names.isEmpty() ? "none" : String.join(", ", new TreeSet<>(names));
    }

    private static Fitted require(FitInput input, String option, String name) {
        Optional<UnitPosition> position = input.bank().position(name);
        List<Fitted> found = input.units().stream()
                .filter(u -> position.isPresent()
                        ? u.at().equals(position.get())
                        : u.serial().isPresent() && u.serial().get().equals(name))
                .toList();
        if (found.isEmpty()) {
            throw new VarwrightException(
                    Message.FIT_PLACE_UNKNOWN,
                    OPTIONS,
                    option,
                    name,
                    input.bank().positionHint());
        }
        if (found.size() > 1) {
            throw new VarwrightException(
                    Message.FIT_PLACE_AMBIGUOUS,
                    OPTIONS,
                    option,
                    name,
                    String.join(", ", found.stream().map(u -> u.at().name()).toList()));
        }
        return found.getFirst();
    }
}
