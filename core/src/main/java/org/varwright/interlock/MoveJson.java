package org.varwright.interlock;

import java.util.List;
import org.varwright.bank.Lock;
import org.varwright.json.Json;

/** {@link Move} as JSON: {@code do}, {@code what}, {@code to} or {@code keys}, and the move in words. */
public final class MoveJson {
    private MoveJson() {}

    public static Json of(Move move) {
        Json.Builder json = Json.object().put("do", move.action()).put("what", move.what());
        move.to().ifPresent(to -> json.put("to", to));
        if (!move.keys().isEmpty()) {
            json.put("keys", Json.strings(move.keys()));
        }
        switch (move) {
            case Move.Withdraw withdraw -> lock(json, withdraw.lock());
            case Move.Extend extend -> lock(json, extend.lock());
            case Move.Operate ignored -> {}
            case Move.OpenDoor ignored -> {}
            case Move.CloseDoor ignored -> {}
            case Move.Give ignored -> {}
            case Move.Return ignored -> {}
            case Move.Wait ignored -> {}
        }
        return json.put("text", move.text()).build();
    }

    private static void lock(Json.Builder json, Lock lock) {
        json.put("on", lock.on() instanceof Lock.On.OfDoor ? "door" : "device").put("holds", lock.holds());
    }

    public static Json of(List<Step> path) {
        return Json.of(path.stream().map(s -> of(s.move())).toList());
    }
}
