package org.varwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;

/** Invented units and spares for the banks of {@code network.Banks}. */
final class FitBanks {
    private FitBanks() {}

    static Fitted fitted(UnitPosition at, double farads, Fitted.Role role) {
        return new Fitted(at, Optional.of("N-" + at.name()), farads, Fitted.From.MEASURED, role, "");
    }

    static Spare spare(String serial, UnitType type, double farads) {
        return new Spare(serial, type, OptionalDouble.of(farads), Optional.empty());
    }

    static FitInput input(Bank bank, List<Fitted> units, List<Spare> spares, FitOptions options) {
        return new FitInput(bank, units, spares, options, List.of(), List.of());
    }

    /** Every unit 0 to {@code spread} above its nameplate, some of them condemned, with spares of the same make. */
    static FitInput random(Bank bank, Random random, int condemned, int spares, double spread, FitOptions options) {
        List<UnitPosition> positions = bank.positions();
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < positions.size(); i++) {
            order.add(random.nextInt(order.size() + 1), i);
        }
        List<Fitted> units = new ArrayList<>();
        UnitType type = bank.stages().getFirst().unit();
        for (int i = 0; i < positions.size(); i++) {
            boolean bad = order.indexOf(i) < condemned;
            double farads = type.capacitanceFarads() * (1.0 + spread * random.nextDouble());
            units.add(fitted(
                    positions.get(i), bad ? farads * 1.2 : farads, bad ? Fitted.Role.CONDEMNED : Fitted.Role.KEPT));
        }
        List<Spare> shelf = new ArrayList<>();
        for (int i = 0; i < spares; i++) {
            shelf.add(spare("S" + i, type, type.capacitanceFarads() * (1.0 + spread * random.nextDouble())));
        }
        return input(bank, units, shelf, options);
    }

    static Bank withAlarm(Bank bank, double primary) {
        Protection p = bank.protection().getFirst();
        return new Bank(
                bank.name(),
                bank.site(),
                bank.standard(),
                bank.system(),
                bank.unitTypes(),
                bank.fuseTypes(),
                bank.stages(),
                List.of(new Protection(
                        p.stage(),
                        p.senses(),
                        p.ratio(),
                        OptionalDouble.of(primary),
                        OptionalDouble.empty(),
                        true,
                        OptionalDouble.empty(),
                        Optional.empty())),
                bank.control(),
                bank.isolation(),
                bank.units(),
                bank.spares(),
                bank.label(),
                bank.note());
    }
}
