package org.varwright.isolation;

import java.util.List;
import org.varwright.bank.Lock;
import org.varwright.interlock.KeyPlace;

/** Where keys are, in words. */
final class KeyPlaces {
    private KeyPlaces() {}

    static String words(List<KeyPlace> places) {
        return Phrases.list(places.stream().map(KeyPlaces::word).toList());
    }

    private static String word(KeyPlace place) {
        return switch (place) {
            case KeyPlace.InLock in ->
                switch (in.lock().on()) {
                    case Lock.On.OfDevice on ->
                        "trapped at " + on.name() + " (lock that holds it "
                                + in.lock().holds() + ")";
                    case Lock.On.OfDoor on -> "trapped at the door of " + on.name();
                };
            case KeyPlace.InExchange in -> "trapped in " + in.exchange();
            case KeyPlace.Free ignored -> "in hand, kept by the person in charge";
        };
    }
}
