package org.varwright.network;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * A sensor as a weighted sum of node voltages and link currents.
 *
 * @param protection of the bank file
 * @param place phase or leg; empty where there is one sensor a stage
 * @param parts what is added up
 */
record Sensor(Protection protection, String place, List<Part> parts) {
    /** One term. */
    sealed interface Part {
        double weight();

        /** Voltage of a node to ground. */
        record Volts(int node, double weight) implements Part {}

        /** Current of a link. */
        record Amperes(int link, double weight) implements Part {}
    }

    /**
     * The sensors of the circuit's stages, in the order of the file.
     *
     * @throws VarwrightException {@code SENSOR_UNSUITED} where a sensor can't stand on that connection
     */
    static List<Sensor> of(Bank bank, Circuit circuit) {
        List<Sensor> sensors = new ArrayList<>();
        for (Protection protection : bank.protection()) {
            for (Circuit.StagePlaces places : circuit.stages()) {
                if (places.stage().name().equals(protection.stage())) {
                    sensors.addAll(of(bank, circuit, protection, places));
                }
            }
        }
        return List.copyOf(sensors);
    }

    /** Whether a sensor of this kind can stand on this connection. */
    static boolean suits(Protection.Senses senses, Connection connection) {
        return switch (senses) {
            case NEUTRAL_VOLTAGE -> connection.hasFloatingNeutral();
            case NEUTRAL_CURRENT -> connection.isGrounded() || connection == Connection.DOUBLE_WYE_UNGROUNDED;
            case NEUTRAL_DIFFERENTIAL -> connection == Connection.DOUBLE_WYE_GROUNDED;
            case BRIDGE_CURRENT -> connection.isBridge();
            case PHASE_VOLTAGE -> true;
        };
    }

    private static List<Sensor> of(Bank bank, Circuit circuit, Protection protection, Circuit.StagePlaces places) {
        Connection connection = places.stage().connection();
        if (!suits(protection.senses(), connection)
                || (places.stage().hasThreePhaseUnits() && protection.senses() != Protection.Senses.PHASE_VOLTAGE)) {
            String suited = Stream.of(Connection.values())
                    .filter(c -> suits(protection.senses(), c))
                    .map(Connection::code)
                    .collect(Collectors.joining(", "));
            throw new VarwrightException(
                    Message.SENSOR_UNSUITED,
                    Place.NOWHERE,
                    protection.stage(),
                    protection.senses().code(),
                    bank.words().connection(connection)
                            + (places.stage().hasThreePhaseUnits() ? " inside three-phase units" : ""),
                    suited + " of single-phase units");
        }
        return switch (protection.senses()) {
            case NEUTRAL_VOLTAGE ->
                List.of(new Sensor(
                        protection, "", List.of(new Part.Volts(places.neutrals().getFirst(), 1.0))));
            case NEUTRAL_CURRENT -> List.of(new Sensor(protection, "", amperes(places.neutralLinks(), 1.0)));
            case NEUTRAL_DIFFERENTIAL -> List.of(new Sensor(protection, "", amperes(places.neutralLinks(), -1.0)));
            case BRIDGE_CURRENT -> bridges(protection, places);
            case PHASE_VOLTAGE -> taps(circuit, protection, places);
        };
    }

    private static List<Part> amperes(List<Integer> links, double weightOfSecond) {
        List<Part> parts = new ArrayList<>();
        for (int w = 0; w < links.size(); w++) {
            parts.add(new Part.Amperes(links.get(w), w == 0 ? 1.0 : weightOfSecond));
        }
        return List.copyOf(parts);
    }

    private static List<Sensor> bridges(Protection protection, Circuit.StagePlaces places) {
        List<Sensor> sensors = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            sensors.add(new Sensor(
                    protection,
                    Circuit.PHASES.get(p),
                    List.of(new Part.Amperes(places.bridgeLinks().get(p), 1.0))));
        }
        return sensors;
    }

    /**
     * Voltage from the tap to the leg's end, less the part of the leg's voltage that it has when every group is alike. The tap stands below half of the
     * groups of the first string (rounded up); of a bridge, in the middle of each phase.
     */
    private static List<Sensor> taps(Circuit circuit, Protection protection, Circuit.StagePlaces places) {
        List<Sensor> sensors = new ArrayList<>();
        if (places.stage().connection().isBridge()) {
            for (int p = 0; p < 3; p++) {
                Circuit.Leg upper = places.legs().get(4 * p);
                Circuit.Leg lower = places.legs().get(4 * p + 1);
                sensors.add(tap(protection, Circuit.PHASES.get(p), upper.end(), upper.top(), lower.end(), 0.5));
            }
            return sensors;
        }
        for (Circuit.Leg leg : places.legs()) {
            List<Circuit.Group> chain = circuit.groups().stream()
                    .filter(g -> g.stage().name().equals(protection.stage())
                            && g.leg().equals(leg.name())
                            && g.string() == 1)
                    .toList();
            int count = places.stage().layoutOf(leg.name()).groups();
            int above = (count + 1) / 2;
            sensors.add(tap(
                    protection,
                    leg.name(),
                    chain.get(above - 1).to(),
                    leg.top(),
                    leg.end(),
                    (count - above) / (double) count));
        }
        return sensors;
    }

    private static Sensor tap(Protection protection, String place, int tap, int top, int end, double share) {
        List<Part> parts = new ArrayList<>();
        parts.add(new Part.Volts(tap, 1.0));
        parts.add(new Part.Volts(end, share - 1.0));
        parts.add(new Part.Volts(top, -share));
        return new Sensor(protection, place, parts);
    }
}
