package org.varwright.isolation;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Stage;
import org.varwright.bank.Vocabulary;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Property;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;

/** What no lock and no switch does on this way in, so that people must. */
final class Responsibilities {
    private Responsibilities() {}

    static List<OrderOfWork.Responsibility> of(
            Bank bank, Scheme scheme, Site site, State atWork, WaySearch.Way.Found in, WaySearch.Way.Found back) {
        Vocabulary words = bank.words();
        List<OrderOfWork.Responsibility> all = new ArrayList<>();
        var conductors = scheme.conductors(atWork);
        for (String conductor : site.exposed()) {
            ConductorState is = conductors.getOrDefault(conductor, ConductorState.FLOATING);
            if (is == ConductorState.LIVE_LOW_VOLTAGE) {
                all.add(new OrderOfWork.Responsibility(
                        Property.EXPOSED_LOW_VOLTAGE.id(),
                        "No device of this bank makes " + conductor
                                + " dead. Switch it off where it comes from, lock it there,"
                                + " test it dead, or leave it alone."));
            } else if (is != ConductorState.GROUNDED && bank.stage(conductor).isPresent()) {
                all.add(new OrderOfWork.Responsibility(
                        Property.UNGROUNDED_ENTRY.id(),
                        "The bus may be " + words.grounded() + ": " + conductor
                                + " behind its open switch is not. Only portable " + words.ground() + "s "
                                + words.ground() + " it."));
            } else if (is != ConductorState.GROUNDED) {
                all.add(new OrderOfWork.Responsibility(
                        Property.UNGROUNDED_ENTRY.id(),
                        "No " + words.groundingSwitch() + " reaches " + conductor + " here. Only portable "
                                + words.ground() + "s " + words.ground() + " it."));
            }
        }
        for (Stage stage : bank.stages()) {
            if (site.exposed().contains(stage.name()) && stage.connection().hasFloatingNeutral()) {
                all.add(new OrderOfWork.Responsibility(
                        "",
                        "The neutral of " + stage.name() + " floats; "
                                + (Phrases.neutrals(stage) == 0
                                        ? "it lies inside the cans: short all terminals of each can to each other and to its case."
                                        : "no " + words.groundingSwitch() + " reaches it. Test, discharge and "
                                                + words.ground() + " it as a fourth conductor.")));
            }
        }
        for (EnergySource source : scheme.isolation().sources()) {
            if (source.isLowVoltage()) {
                continue;
            }
            List<Device> parting = site.parting(atWork, source);
            for (Device device : parting) {
                String position = scheme.positions(atWork).getOrDefault(device.name(), Device.OPEN);
                if (!Looks.blades(device, position)) {
                    all.add(
                            new OrderOfWork.Responsibility(
                                    "",
                                    "Only " + device.name() + " parts what is opened from " + source.name()
                                            + ", and its gap can't be seen: the test for absence of voltage carries the whole burden."));
                }
            }
        }
        in.manner()
                .givenUp()
                .forEach(text -> all.add(new OrderOfWork.Responsibility("", "On the way in " + text + ".")));
        back.manner()
                .givenUp()
                .forEach(text -> all.add(new OrderOfWork.Responsibility("", "On the way back " + text + ".")));
        return all;
    }
}
