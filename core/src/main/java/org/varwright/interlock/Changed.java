package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;

/** Copies of an isolation with one thing different. */
final class Changed {
    private Changed() {}

    static Isolation locks(Isolation from, List<Lock> locks) {
        return of(from, from.devices(), locks, from.keys(), from.exchanges(), from.interlocks(), from.delays());
    }

    static Isolation keys(Isolation from, List<KeyCopies> keys) {
        return of(from, from.devices(), from.locks(), keys, from.exchanges(), from.interlocks(), from.delays());
    }

    static Isolation exchanges(Isolation from, List<KeyExchange> exchanges) {
        return of(from, from.devices(), from.locks(), from.keys(), exchanges, from.interlocks(), from.delays());
    }

    static Isolation interlocks(Isolation from, List<Interlock> more) {
        List<Interlock> all = plus(from.interlocks(), more);
        return of(from, from.devices(), from.locks(), from.keys(), from.exchanges(), all, from.delays());
    }

    static Isolation delays(Isolation from, List<Delay> more) {
        List<Delay> all = plus(from.delays(), more);
        return of(from, from.devices(), from.locks(), from.keys(), from.exchanges(), from.interlocks(), all);
    }

    static Isolation devices(Isolation from, List<Device> more) {
        List<Device> all = plus(from.devices(), more);
        return of(from, all, from.locks(), from.keys(), from.exchanges(), from.interlocks(), from.delays());
    }

    private static Isolation of(
            Isolation from,
            List<Device> devices,
            List<Lock> locks,
            List<KeyCopies> keys,
            List<KeyExchange> exchanges,
            List<Interlock> interlocks,
            List<Delay> delays) {
        return new Isolation(
                from.sources(), devices, from.compartments(), locks, keys, exchanges, interlocks, delays, from.start());
    }

    /** So many copies of a key. */
    static Isolation copies(Isolation from, String key, int copies) {
        List<KeyCopies> keys = new ArrayList<>(
                from.keys().stream().filter(k -> !k.name().equals(key)).toList());
        keys.add(new KeyCopies(key, copies, Optional.empty()));
        return keys(from, keys);
    }

    static Isolation lock(Isolation from, int index, Lock lock) {
        List<Lock> locks = new ArrayList<>(from.locks());
        locks.set(index, lock);
        return locks(from, locks);
    }

    static Isolation moreLocks(Isolation from, Lock... more) {
        return locks(from, plus(from.locks(), List.of(more)));
    }

    static Isolation exchange(Isolation from, int index, List<String> moreIn, List<String> moreOut) {
        List<KeyExchange> exchanges = new ArrayList<>(from.exchanges());
        KeyExchange old = exchanges.get(index);
        exchanges.set(
                index,
                new KeyExchange(old.name(), plus(old.in(), moreIn), plus(old.out(), moreOut), old.label(), old.note()));
        return exchanges(from, exchanges);
    }

    static Lock lock(Lock.On on, String holds, String... keys) {
        return new Lock(on, List.of(keys), holds, Optional.empty());
    }

    static Interlock interlock(String device, String to, String required, List<String> positions) {
        return new Interlock(device, to, Map.of(required, positions), Optional.empty());
    }

    static <T> List<T> plus(List<T> some, List<T> more) {
        List<T> all = new ArrayList<>(some);
        all.addAll(more);
        return List.copyOf(all);
    }
}
