package org.varwright.isolation;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Lock;
import org.varwright.json.Json;

/**
 * One state of a bank that can be kept and planned from.
 *
 * @param bank name of the bank
 * @param positions device to position
 * @param openDoors compartment to whether its door is open
 * @param bolts lock, as {@link #lockName} writes it, to whether its bolt is extended
 * @param exchanges exchange to whether its keys have been given
 * @param charges stage to whether it is charged
 * @param grounds conductor to the number of portable grounds on it
 * @param shorts stage to the number of its units that are shorted
 */
public record SavedState(
        String bank,
        Map<String, String> positions,
        Map<String, Boolean> openDoors,
        Map<String, Boolean> bolts,
        Map<String, Boolean> exchanges,
        Map<String, Boolean> charges,
        Map<String, Integer> grounds,
        Map<String, Integer> shorts) {
    public SavedState {
        positions = keep(positions);
        openDoors = keep(openDoors);
        bolts = keep(bolts);
        exchanges = keep(exchanges);
        charges = keep(charges);
        grounds = keep(grounds);
        shorts = keep(shorts);
    }

    private static <V> Map<String, V> keep(Map<String, V> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }

    /** A lock's name here: what it is on, what it holds, its keys. */
    static String lockName(Lock lock) {
        return lock.on().name() + "/" + lock.holds() + "/" + String.join("+", lock.keys());
    }

    /** Whether the bolt of a lock is extended; empty where the state does not say. */
    public Optional<Boolean> bolt(Lock lock) {
        return Optional.ofNullable(bolts.get(lockName(lock)));
    }

    /** The state as JSON; {@link SavedStateReader} reads it back. */
    public Json json() {
        return Json.object()
                .put("format", SavedStateReader.FORMAT)
                .put("bank", bank)
                .put("positions", texts(positions))
                .put("openDoors", flags(openDoors))
                .put("bolts", flags(bolts))
                .put("exchanges", flags(exchanges))
                .put("charges", flags(charges))
                .put("grounds", counts(grounds))
                .put("shorts", counts(shorts))
                .build();
    }

    private static Json texts(Map<String, String> map) {
        Json.Builder json = Json.object();
        map.forEach(json::put);
        return json.build();
    }

    private static Json flags(Map<String, Boolean> map) {
        Json.Builder json = Json.object();
        map.forEach((name, value) -> json.put(name, value.booleanValue()));
        return json.build();
    }

    private static Json counts(Map<String, Integer> map) {
        Json.Builder json = Json.object();
        map.forEach((name, value) -> json.put(name, value.doubleValue()));
        return json.build();
    }
}
