package org.varwright.isolation;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;
import org.varwright.bank.Stage;
import org.varwright.bank.Vocabulary;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;
import org.varwright.page.Enumeration;
import org.varwright.quantity.Dimension;

/** How things of one bank are called in steps. */
final class Phrases {
    private final Bank bank;
    private final Isolation isolation;
    private final Vocabulary words;

    Phrases(Bank bank) {
        this.bank = bank;
        this.isolation = bank.isolation().orElseThrow();
        this.words = bank.words();
    }

    Vocabulary words() {
        return words;
    }

    static String list(List<String> items) {
        return Enumeration.of(items);
    }

    static String keys(List<String> keys) {
        return (keys.size() == 1 ? "key " : "keys ") + list(keys);
    }

    static String time(double seconds) {
        return Dimension.TIME.format(seconds);
    }

    static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /** {@code 89-2 (labelled CR3-89)} or {@code 89-2}. */
    String labelled(String name, Optional<String> label) {
        return label.filter(l -> !l.equals(name))
                .map(l -> name + " (labelled " + l + ")")
                .orElse(name);
    }

    String bankLabel() {
        return labelled(bank.name(), bank.label());
    }

    String device(String name) {
        return labelled(name, isolation.device(name).flatMap(Device::label));
    }

    String compartment(String name) {
        return labelled(name, isolation.compartment(name).flatMap(Compartment::label));
    }

    String exchange(KeyExchange exchange) {
        return labelled(exchange.name(), exchange.label());
    }

    /** What is read aloud for a thing: its label, else its name. */
    String readAloud(String name, Optional<String> label) {
        return label.orElse(name);
    }

    /** Where personal locks go; with nothing of the bank to lock, where its supply is switched off. */
    String lockPlaces(List<String> devices) {
        return devices.isEmpty()
                ? "the point where the supply is switched off"
                : list(devices.stream().map(this::device).toList());
    }

    String kind(Device device) {
        return switch (device.kind()) {
            case BREAKER -> "breaker";
            case DISCONNECTOR -> words.disconnector();
            case LOAD_BREAK_SWITCH -> "load-break switch";
            case GROUNDING_SWITCH -> words.groundingSwitch();
            case STAGE_SWITCH -> words.stage() + " switch";
            case SELECTOR -> "selector";
        };
    }

    String at(Device device) {
        return device.remote()
                ? "away from the bank, at the control of " + device(device.name())
                : "at " + device(device.name());
    }

    String where(Move move) {
        return switch (move) {
            case Move.Withdraw withdraw -> where(withdraw.lock());
            case Move.Extend extend -> where(extend.lock());
            case Move.Operate operate -> at(isolation.device(operate.device()).orElseThrow());
            case Move.OpenDoor door -> inFrontOf(door.compartment());
            case Move.CloseDoor door -> inFrontOf(door.compartment());
            case Move.Give give -> "at " + exchange(give.exchange());
            case Move.Return back -> "at " + exchange(back.exchange());
            case Move.Wait ignored -> clear();
        };
    }

    private String where(Lock lock) {
        return switch (lock.on()) {
            case Lock.On.OfDevice on -> {
                Device device = isolation.device(on.name()).orElseThrow();
                yield device.remote() ? "at " + device(device.name()) + " itself" : at(device);
            }
            case Lock.On.OfDoor on -> inFrontOf(on.name());
        };
    }

    String inFrontOf(String compartment) {
        return "in front of " + compartment(compartment);
    }

    String inside(String compartment) {
        return "at the open door of " + compartment(compartment);
    }

    String clear() {
        return "clear of the bank";
    }

    String lock(Lock lock) {
        return switch (lock.on()) {
            case Lock.On.OfDevice on -> "the lock of " + on.name() + " that holds it " + lock.holds();
            case Lock.On.OfDoor on -> "the lock of the door of " + on.name();
        };
    }

    /** The text of a move. */
    String text(Move move) {
        return switch (move) {
            case Move.Withdraw withdraw ->
                "Put " + keys(withdraw.keys()) + " into " + lock(withdraw.lock()) + ", turn, and withdraw the bolt.";
            case Move.Extend extend ->
                "Extend the bolt of " + lock(extend.lock()) + " and take " + keys(extend.keys()) + ".";
            case Move.Operate operate -> operate(operate);
            case Move.OpenDoor door -> "Open the door of " + compartment(door.compartment()) + ".";
            case Move.CloseDoor door -> "Close the door of " + compartment(door.compartment()) + ".";
            case Move.Give give ->
                "Put " + keys(give.exchange().in()) + " into " + exchange(give.exchange()) + " and take "
                        + keys(give.exchange().out()) + ".";
            case Move.Return back ->
                "Put " + keys(back.exchange().out()) + " back into " + exchange(back.exchange()) + " and take "
                        + keys(back.exchange().in()) + ".";
            case Move.Wait wait -> "Wait for " + wait.stage() + ".";
        };
    }

    private String operate(Move.Operate move) {
        Device device = isolation.device(move.device()).orElseThrow();
        String thing = kind(device) + " " + device(device.name());
        String said = switch (move.position()) {
            case Device.OPEN -> "Open " + thing;
            case Device.CLOSED -> "Close " + thing;
            case Device.WITHDRAWN -> "Withdraw " + thing;
            default -> "Turn " + thing + " to \"" + move.position() + "\"";
        };
        return device.remote() ? said + " (the person there does it, on your word)." : said + ".";
    }

    /** What is seen, heard or felt when a move has worked. None of it proves anything dead. */
    String expected(Move move) {
        return switch (move) {
            case Move.Withdraw ignored -> "the key turns and can't be taken out again; the bolt is drawn";
            case Move.Extend extend ->
                extend.lock().on() instanceof Lock.On.OfDoor
                        ? "the bolt is fully out and the door can't be opened; the key comes out"
                        : "the bolt is fully out and the handle can't be moved; the key comes out";
            case Move.Operate operate ->
                expected(isolation.device(operate.device()).orElseThrow(), operate.position());
            case Move.OpenDoor ignored ->
                "the door opens freely; stay outside the opening, nothing in it has been tested yet";
            case Move.CloseDoor ignored -> "the door is shut all round and its latch holds";
            case Move.Give give ->
                "every key in is trapped; " + keys(give.exchange().out()) + " come free";
            case Move.Return back ->
                "every key in is trapped; " + keys(back.exchange().in()) + " come free";
            case Move.Wait ignored -> "";
        };
    }

    private String expected(Device device, String position) {
        String shown = device.indicates()
                .map(i -> "; its " + i + " shows " + position + " (which proves nothing)")
                .orElse("");
        return switch (device.kind()) {
            case SELECTOR -> "the selector clicks into \"" + position + "\" and stays there";
            case BREAKER ->
                position.equals(Device.WITHDRAWN)
                        ? "the breaker stands at its withdrawn stop" + shown
                        : position.equals(Device.OPEN) && device.withdrawable()
                                ? "the breaker is heard to operate, or is heard to reach its stop when pushed in"
                                        + shown
                                : "the breaker is heard to operate" + shown;
            case STAGE_SWITCH -> "the switch is heard to operate" + shown;
            case LOAD_BREAK_SWITCH -> "the switch is heard to operate" + shown;
            case DISCONNECTOR -> "the handle reaches its stop, with no arc heard" + shown;
            case GROUNDING_SWITCH ->
                position.equals(Device.CLOSED)
                        ? "the handle reaches its stop, with no spark and no bang" + shown
                        : "the handle reaches its stop" + shown;
        };
    }

    static String ifNot(Move move) {
        return switch (move) {
            case Move.Operate ignored -> "stop, go clear, tell the person in charge; do not force or repeat it";
            case Move.Withdraw ignored -> "stop: never force a key; find out which key or position is wrong";
            case Move.Extend ignored -> "stop: the thing is not where you believe it is";
            case Move.OpenDoor ignored -> "stop: never force a door";
            case Move.CloseDoor ignored -> "find what is in the way: a tool, a clamp, a part";
            case Move.Give ignored -> "stop: a key is missing or wrong";
            case Move.Return ignored -> "stop: a key is missing; nobody goes on until it is found";
            case Move.Wait ignored -> "";
        };
    }

    /** Ready for a sentence: {@code live: line, cable; grounded: bus; …}. */
    String state(Map<String, ConductorState> conductors) {
        StringBuilder text = new StringBuilder();
        for (ConductorState state : ConductorState.values()) {
            List<String> names = conductors.entrySet().stream()
                    .filter(e -> e.getValue() == state)
                    .map(Map.Entry::getKey)
                    .toList();
            if (!names.isEmpty()) {
                text.append(text.isEmpty() ? "" : "; ")
                        .append(word(state))
                        .append(": ")
                        .append(String.join(", ", names));
            }
        }
        return text.toString();
    }

    String word(ConductorState state) {
        return switch (state) {
            case LIVE -> "LIVE";
            case LIVE_LOW_VOLTAGE -> "LIVE, low voltage";
            case GROUNDED -> words.grounded();
            case CHARGED -> "CHARGED";
            case FLOATING -> "floating (count it as live)";
        };
    }

    /** How many neutrals of a stage can be reached and float: conductors that no three-pole switch reaches. */
    static int neutrals(Stage stage) {
        if (stage.hasThreePhaseUnits() || !stage.connection().hasFloatingNeutral()) {
            return 0;
        }
        return stage.connection().isDoubleWye() ? 2 : 1;
    }

    static String neutralOf(String stage) {
        return "neutral of " + stage;
    }
}
