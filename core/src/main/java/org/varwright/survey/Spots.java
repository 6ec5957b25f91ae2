package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;

/** Finds the place that a cell names where that is not a single unit: {@code stage/A/g1}, {@code stage/A/u1+u2}, {@code stage/A}, {@code switch/A}. */
final class Spots {
    private static final List<String> PHASES = List.of("A", "B", "C");

    private final Bank bank;

    Spots(Bank bank) {
        this.bank = bank;
    }

    /** Places of this kind that the text may mean; empty where it means none. */
    Optional<Spot> find(String written, SpotRow.Kind kind) {
        return switch (kind) {
            case CAPACITANCE -> together(written).or(() -> leg(written));
            case INDUCTANCE -> phase(written);
            case CURRENT -> leg(written).or(() -> phase(written));
            case CONTACT -> pole(written);
        };
    }

    /** Whether the text names any such place. */
    boolean isKnown(String written) {
        for (SpotRow.Kind kind : SpotRow.Kind.values()) {
            if (find(written, kind).isPresent()) {
                return true;
            }
        }
        return false;
    }

    /** Units with a plus between them, or a group by its name; only units of one group are in parallel. */
    private Optional<Spot> together(String written) {
        List<UnitPosition> units = new ArrayList<>();
        if (written.indexOf('+') >= 0) {
            String before = "";
            for (String part : written.split("\\+", -1)) {
                String name = part.strip();
                // "stage/A/u1+u2": the second one stands in the place of the first
                Optional<UnitPosition> unit = bank.position(name).or(() -> bank.position(beside(units, name)));
                if (unit.isEmpty() || units.contains(unit.get())) {
                    return Optional.empty();
                }
                units.add(unit.get());
                before = name;
            }
            if (before.isEmpty()) {
                return Optional.empty();
            }
        } else {
            bank.stages().stream()
                    .filter(stage -> !stage.hasThreePhaseUnits())
                    .flatMap(stage -> stage.positions().stream())
                    .filter(position -> normal(groupName(position)).equals(normal(written)))
                    .forEach(units::add);
        }
        boolean oneGroup = units.size() > 1
                && units.stream().allMatch(unit -> groupName(unit).equals(groupName(units.getFirst())));
        return oneGroup
                ? Optional.of(new Spot.Together(units.getFirst().stage(), units, name(units)))
                : Optional.empty();
    }

    private static String beside(List<UnitPosition> units, String name) {
        if (units.isEmpty()) {
            return name;
        }
        String first = units.getFirst().name();
        String group = first.replaceFirst("u[0-9]+$", "");
        return name.matches("[sS][0-9].*|[gG][0-9].*")
                ? first.substring(0, first.lastIndexOf('/') + 1) + name
                : group + name;
    }

    private String name(List<UnitPosition> units) {
        UnitPosition first = units.getFirst();
        LegLayout layout = bank.stage(first.stage()).orElseThrow().layoutOf(first.leg());
        if (units.size() == layout.units()) {
            return groupName(first);
        }
        StringBuilder name = new StringBuilder(first.name());
        units.subList(1, units.size()).forEach(unit -> name.append("+u").append(unit.unit()));
        return name.toString();
    }

    /** The group that a unit stands in, as printed. */
    static String groupName(UnitPosition position) {
        return position.name().replaceFirst("/?u[0-9]+$", "");
    }

    private Optional<Spot> leg(String written) {
        for (Stage stage : bank.stages()) {
            for (String leg : stage.legs()) {
                String name = stage.name() + "/" + leg;
                if (!stage.hasThreePhaseUnits() && normal(name).equals(normal(written))) {
                    return Optional.of(new Spot.Leg(stage.name(), leg, name));
                }
            }
        }
        return Optional.empty();
    }

    private Optional<Spot> phase(String written) {
        for (Stage stage : bank.stages()) {
            for (String phase : PHASES) {
                String name = stage.name() + "/" + phase;
                if (normal(name).equals(normal(written))) {
                    return Optional.of(new Spot.Phase(stage.name(), phase, name));
                }
            }
        }
        return Optional.empty();
    }

    private Optional<Spot> pole(String written) {
        for (Device device : bank.isolation().map(Isolation::devices).orElse(List.of())) {
            for (String pole : PHASES) {
                String name = device.name() + "/" + pole;
                if (normal(name).equals(normal(written))) {
                    return Optional.of(new Spot.Pole(device.name(), pole, name));
                }
            }
        }
        return Optional.empty();
    }

    private static String normal(String written) {
        return written.strip().replaceAll("\\s*/\\s*", "/").toLowerCase(Locale.ROOT);
    }
}
