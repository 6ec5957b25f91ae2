package org.varwright.survey;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.UnitPosition;

/** Holds the serial numbers that were read against those of the bank file. */
final class Serials {
    private final Map<String, KnownUnit> knownBySerial = new LinkedHashMap<>();
    private final Map<UnitPosition, Gathered> byPosition = new LinkedHashMap<>();

    Serials(Bank bank, List<Gathered> all) {
        bank.units().forEach(unit -> unit.serial().ifPresent(serial -> knownBySerial.put(plain(serial), unit)));
        all.forEach(unit -> byPosition.put(unit.position(), unit));
    }

    static boolean same(String a, String b) {
        return plain(a).equals(plain(b));
    }

    /** Letters and digits alone (by hand: the browser's regular expressions know no Unicode classes). */
    private static String plain(String serial) {
        StringBuilder plain = new StringBuilder();
        for (char c : serial.toUpperCase(Locale.ROOT).toCharArray()) {
            if (Character.isLetterOrDigit(c)) {
                plain.append(c);
            }
        }
        return plain.toString();
    }

    /** What the serial numbers say of a unit. */
    sealed interface Finding {
        /** Nothing unusual: the unit that the bank file has there. */
        record AsKnown() implements Finding {}

        /** A serial number that the bank file does not have: the unit was changed. */
        record Changed(String serial) implements Finding {}

        /** The units of two positions are exchanged. */
        record Swapped(UnitPosition with) implements Finding {}

        /** The serial number belongs elsewhere. */
        record Elsewhere(UnitPosition belongsAt) implements Finding {}

        /** The same serial number was read at another position too. */
        record Twice(UnitPosition other) implements Finding {}
    }

    Finding of(Gathered unit) {
        Optional<String> read = unit.readSerial().map(Serials::plain);
        if (read.isEmpty()) {
            return new Finding.AsKnown();
        }
        Optional<UnitPosition> twin = twin(unit, read.get());
        if (twin.isPresent()) {
            return new Finding.Twice(twin.get());
        }
        KnownUnit owner = knownBySerial.get(read.get());
        if (owner == null) {
            boolean contradicts = unit.known().flatMap(KnownUnit::serial).isPresent();
            return contradicts ? new Finding.Changed(unit.readSerial().orElse("")) : new Finding.AsKnown();
        }
        if (owner.at().equals(unit.position())) {
            return new Finding.AsKnown();
        }
        Gathered there = byPosition.get(owner.at());
        boolean crosswise = there != null
                && there.readSerial().isPresent()
                && unit.known().flatMap(KnownUnit::serial).isPresent()
                && same(
                        there.readSerial().get(),
                        unit.known().flatMap(KnownUnit::serial).get());
        return crosswise ? new Finding.Swapped(owner.at()) : new Finding.Elsewhere(owner.at());
    }

    private Optional<UnitPosition> twin(Gathered unit, String serial) {
        return byPosition.values().stream()
                .filter(other -> !other.position().equals(unit.position()))
                .filter(other -> other.readSerial()
                        .map(Serials::plain)
                        .filter(serial::equals)
                        .isPresent())
                .map(Gathered::position)
                .findFirst();
    }
}
