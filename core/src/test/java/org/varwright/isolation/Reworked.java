package org.varwright.isolation;

import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;

/** A bank with one thing about its isolation changed, for tests. */
final class Reworked {
    private Reworked() {}

    static Bank with(Bank bank, UnaryOperator<Isolation> change) {
        return bank.with(change.apply(bank.isolation().orElseThrow()));
    }

    static Isolation devices(Isolation i, List<Device> devices) {
        return new Isolation(
                i.sources(),
                devices,
                i.compartments(),
                i.locks(),
                i.keys(),
                i.exchanges(),
                i.interlocks(),
                i.delays(),
                i.start());
    }

    static Isolation compartments(Isolation i, List<Compartment> compartments) {
        return new Isolation(
                i.sources(),
                i.devices(),
                compartments,
                i.locks(),
                i.keys(),
                i.exchanges(),
                i.interlocks(),
                i.delays(),
                i.start());
    }

    /** The device with nothing to see its blades through. */
    static Bank withoutWindow(Bank bank, String device) {
        return with(
                bank,
                i -> devices(
                        i,
                        i.devices().stream()
                                .map(d -> d.name().equals(device) ? blind(d) : d)
                                .toList()));
    }

    static Device blind(Device d) {
        return new Device(
                d.name(),
                d.kind(),
                d.positions(),
                d.between(),
                d.withdrawable(),
                d.remote(),
                d.indicates(),
                Optional.empty(),
                d.label(),
                d.note());
    }
}
