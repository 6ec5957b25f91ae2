package org.varwright.resonance;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.varwright.bank.Harmonic;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/** Harmonics as typed: {@code "5: 3 %"} a voltage as a part of nominal voltage, {@code "7: 14 A"} a current. */
public final class Spectrum {
    private static final int HIGHEST = 50;

    private Spectrum() {}

    /**
     * Harmonics typed one by one, by rising order; a voltage and a current of one order go together.
     *
     * @param where what they were typed for, such as {@code --harmonic}
     * @param typed such as {@code 5: 3 %}
     * @throws VarwrightException {@code HARMONIC_SYNTAX}, {@code HARMONIC_ORDER}, {@code HARMONIC_VALUE}, {@code HARMONIC_TYPED_TWICE}
     */
    public static List<Harmonic> parse(String where, List<String> typed) {
        Place place = new Place("", 0, 0, where);
        Map<Integer, Harmonic> byOrder = new TreeMap<>();
        for (String text : typed) {
            Harmonic one = parse(place, text);
            Harmonic before = byOrder.get(one.order());
            byOrder.put(one.order(), before == null ? one : merged(place, before, one));
        }
        return new ArrayList<>(byOrder.values());
    }

    private static Harmonic parse(Place place, String text) {
        int colon = text.indexOf(':');
        if (colon < 0 || !text.substring(0, colon).strip().matches("[0-9]{1,3}")) {
            throw new VarwrightException(Message.HARMONIC_SYNTAX, place, text);
        }
        int order = Integer.parseInt(text.substring(0, colon).strip());
        if (order < 2 || order > HIGHEST) {
            throw new VarwrightException(Message.HARMONIC_ORDER, place, String.valueOf(order));
        }
        String value = text.substring(colon + 1);
        if (Dimension.FRACTION.parse(value) instanceof Reading.Value(double part)) {
            require(part >= 0.0 && part <= 1.0, place, value);
            return new Harmonic(order, OptionalDouble.of(part), OptionalDouble.empty());
        }
        if (Dimension.CURRENT.parse(value) instanceof Reading.Value(double amperes)) {
            require(amperes >= 0.0, place, value);
            return new Harmonic(order, OptionalDouble.empty(), OptionalDouble.of(amperes));
        }
        throw new VarwrightException(Message.HARMONIC_SYNTAX, place, text);
    }

    private static void require(boolean good, Place place, String value) {
        if (!good) {
            throw new VarwrightException(Message.HARMONIC_VALUE, place, value.strip());
        }
    }

    private static Harmonic merged(Place place, Harmonic a, Harmonic b) {
        if ((a.voltageFraction().isPresent() && b.voltageFraction().isPresent())
                || (a.currentAmperes().isPresent() && b.currentAmperes().isPresent())) {
            throw new VarwrightException(Message.HARMONIC_TYPED_TWICE, place, String.valueOf(a.order()));
        }
        return new Harmonic(
                a.order(),
                a.voltageFraction().isPresent() ? a.voltageFraction() : b.voltageFraction(),
                a.currentAmperes().isPresent() ? a.currentAmperes() : b.currentAmperes());
    }
}
