package org.varwright.bankfile;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.varwright.bank.Connection;
import org.varwright.bank.Control;
import org.varwright.bank.Device;
import org.varwright.bank.DischargePath;
import org.varwright.bank.FuseType;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.Isolation;
import org.varwright.bank.Protection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Standard;
import org.varwright.bank.SystemGrounding;

/** Words of the format: what is written, in IEEE words, and what IEC words are read for the same. */
final class Words {
    /** IEC keys, by the IEEE key that they stand for. */
    static final Map<String, String> IEC_KEYS = Map.of("grounding", "earthing", "stages", "steps", "stage", "step");

    static final Map<String, Standard> STANDARDS = words(Standard.values(), s -> s == Standard.IEEE ? "IEEE" : "IEC");
    static final Map<String, SystemGrounding> GROUNDINGS = words(SystemGrounding.values(), Words::hyphened);
    static final Map<String, Connection> CONNECTIONS = words(Connection.values(), Connection::code);
    static final Map<String, InternalConnection> INTERNALS = words(InternalConnection.values(), Words::hyphened);
    static final Map<String, Boolean> ELEMENT_FUSES = ordered("none", false, "internal", true);
    static final Map<String, FuseType.Kind> FUSE_KINDS = words(FuseType.Kind.values(), Words::hyphened);
    static final Map<String, Reactor.Position> REACTOR_POSITIONS = words(Reactor.Position.values(), Words::hyphened);
    static final Map<String, Reactor.Purpose> REACTOR_PURPOSES = words(Reactor.Purpose.values(), Words::hyphened);
    static final Map<String, DischargePath.Kind> PATH_KINDS = words(DischargePath.Kind.values(), Words::hyphened);
    static final Map<String, DischargePath.Between> PATH_PLACES =
            words(DischargePath.Between.values(), Words::hyphened);
    static final Map<String, Protection.Senses> SENSES = words(Protection.Senses.values(), Protection.Senses::code);
    static final Map<String, Control.Senses> CONTROLS = words(Control.Senses.values(), Words::hyphened);
    static final Map<String, Device.Kind> DEVICE_KINDS = words(Device.Kind.values(), Device.Kind::code);
    static final Map<String, Boolean> TRUTHS = ordered("true", true, "false", false);
    static final Map<String, Integer> PHASES = ordered("1", 1, "3", 3);

    private Words() {}

    /** The IEEE form of a word that may be written in IEC words, such as {@code star-unearthed} or {@code earthing-switch}. */
    static String ieee(String written) {
        String[] parts = written.strip().toLowerCase(Locale.ROOT).split("-", -1);
        for (int i = 0; i < parts.length; i++) {
            parts[i] = switch (parts[i]) {
                case "star" -> "wye";
                case "earthed" -> "grounded";
                case "unearthed" -> "ungrounded";
                case "earthing" -> "grounding";
                case "step" -> "stage";
                default -> parts[i];
            };
        }
        return String.join("-", parts);
    }

    /** The one whose word this is, in either vocabulary and any case. */
    static <E> Optional<E> find(Map<String, E> words, String written) {
        String wanted = ieee(written);
        for (Map.Entry<String, E> entry : words.entrySet()) {
            if (entry.getKey().toLowerCase(Locale.ROOT).equals(wanted)) {
                return Optional.of(entry.getValue());
            }
        }
        return Optional.empty();
    }

    /** The word that the writer uses. */
    static <E> String of(Map<String, E> words, E value) {
        return words.entrySet().stream()
                .filter(e -> e.getValue().equals(value))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow();
    }

    /** The name of a conductor, {@code earth} and {@code ground} being one. */
    static String conductor(String written) {
        String lower = written.toLowerCase(Locale.ROOT);
        return lower.equals("earth") || lower.equals(Isolation.GROUND) ? Isolation.GROUND : written;
    }

    private static <E extends Enum<E>> String hyphened(E value) {
        return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static <E> Map<String, E> words(E[] values, Function<E, String> word) {
        Map<String, E> map = new LinkedHashMap<>();
        for (E value : List.of(values)) {
            map.put(word.apply(value), value);
        }
        return Collections.unmodifiableMap(map);
    }

    private static <E> Map<String, E> ordered(String first, E firstValue, String second, E secondValue) {
        Map<String, E> map = new LinkedHashMap<>();
        map.put(first, firstValue);
        map.put(second, secondValue);
        return Collections.unmodifiableMap(map);
    }
}
