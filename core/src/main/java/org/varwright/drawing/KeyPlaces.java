package org.varwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;

/** Where each key is, in words, as follows from bolts and exchanges. */
final class KeyPlaces {
    private KeyPlaces() {}

    static Map<String, String> of(
            Isolation isolation, List<DrawingState.Bolt> bolts, Map<String, DrawingState.Exchange> exchanges) {
        Map<String, String> places = new LinkedHashMap<>();
        for (String key : isolation.keyNames()) {
            places.put(key, place(isolation, key, bolts, exchanges));
        }
        return places;
    }

    private static String place(
            Isolation isolation,
            String key,
            List<DrawingState.Bolt> bolts,
            Map<String, DrawingState.Exchange> exchanges) {
        List<String> traps = new ArrayList<>();
        for (int i = 0; i < isolation.locks().size(); i++) {
            Lock lock = isolation.locks().get(i);
            DrawingState.Bolt bolt = i < bolts.size() ? bolts.get(i) : DrawingState.Bolt.UNKNOWN;
            if (!lock.keys().contains(key)) {
                continue;
            }
            switch (bolt) {
                case WITHDRAWN -> traps.add("trapped in lock " + lockName(lock));
                case UNKNOWN -> traps.add("perhaps in lock " + lockName(lock));
                case EXTENDED -> {}
            }
        }
        for (KeyExchange exchange : isolation.exchanges()) {
            switch (exchanges.getOrDefault(exchange.name(), DrawingState.Exchange.UNKNOWN)) {
                case HOME -> addIf(traps, exchange.out().contains(key), "in " + exchange.name());
                case GIVEN -> addIf(traps, exchange.in().contains(key), "in " + exchange.name());
                case UNKNOWN ->
                    addIf(
                            traps,
                            exchange.out().contains(key) || exchange.in().contains(key),
                            "perhaps in " + exchange.name());
            }
        }
        int copies = isolation.keys().stream()
                .filter(k -> k.name().equals(key))
                .mapToInt(KeyCopies::copies)
                .findFirst()
                .orElse(1);
        if (traps.isEmpty()) {
            return copies == 1 ? DrawingState.FREE : "free (in hand), " + copies + " copies";
        }
        if (copies > traps.size()) {
            traps.add((copies - traps.size()) + " more free (in hand)");
        }
        return String.join("; ", traps);
    }

    static String lockName(Lock lock) {
        return switch (lock.on()) {
            case Lock.On.OfDevice device -> device.name() + " (" + lock.holds() + ")";
            case Lock.On.OfDoor door -> "door " + door.name();
        };
    }

    private static void addIf(List<String> to, boolean wanted, String text) {
        if (wanted) {
            to.add(text);
        }
    }
}
