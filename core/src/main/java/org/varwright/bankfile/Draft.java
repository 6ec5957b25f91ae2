package org.varwright.bankfile;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.varwright.bank.Compartment;
import org.varwright.bank.Control;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.FuseType;
import org.varwright.bank.Interlock;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Load;
import org.varwright.bank.Lock;
import org.varwright.bank.Protection;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SwitchType;
import org.varwright.bank.UnitType;

/** What could be read of a bank, each part with its path; parts with a fault are missing. The cross-checks work on it. */
record Draft(
        Declared declared,
        Standard standard,
        Optional<SupplySystem> system,
        List<Item<UnitType>> unitTypes,
        List<Item<FuseType>> fuseTypes,
        List<Item<SwitchType>> switchTypes,
        List<Item<Stage>> stages,
        List<Item<Protection>> protection,
        Optional<Control> control,
        Optional<Load> load,
        Optional<IsolationDraft> isolation,
        List<Item<UnitNote>> units,
        List<Item<Spare>> spares) {

    Optional<Item<Stage>> stage(String name) {
        return stages.stream().filter(s -> s.value().name().equals(name)).findFirst();
    }

    /** What the file says of a unit in place, before its position has been looked up. */
    record UnitNote(
            String at,
            Optional<String> serial,
            OptionalDouble capacitanceFarads,
            OptionalInt made,
            Optional<String> label,
            Optional<String> note) {}

    /** What could be read of the isolation; {@code complete} where every part of it could. */
    record IsolationDraft(
            List<Item<EnergySource>> sources,
            List<Item<Device>> devices,
            List<Item<Compartment>> compartments,
            List<Item<Lock>> locks,
            List<Item<KeyCopies>> keys,
            List<Item<KeyExchange>> exchanges,
            List<Item<Interlock>> interlocks,
            List<Item<Delay>> delays,
            Map<String, String> start,
            boolean complete) {

        Optional<Device> device(String name) {
            return devices.stream()
                    .map(Item::value)
                    .filter(d -> d.name().equals(name))
                    .findFirst();
        }
    }
}
