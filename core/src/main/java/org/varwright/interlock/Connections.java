package org.varwright.interlock;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;
import org.varwright.bank.Stage;

/**
 * What a conductor is joined to, and through what: why it is live.
 *
 * <p>Model: conductors joined by closed devices, one pole for all three. A device whose position is not known is taken as closed, and the path says so. Not modelled: a pole that
 * stayed behind, induction, feeds that the bank file does not know. An absent path is no proof that a conductor is dead.
 *
 * @param conductor asked about
 * @param paths shortest first from it to each source, each stage that may hold a charge, and ground
 * @param gaps devices that are open and end what it is joined to, with what lies beyond
 */
public record Connections(String conductor, List<Path> paths, List<Gap> gaps) {
    public Connections {
        paths = List.copyOf(paths);
        gaps = List.copyOf(gaps);
    }

    /** What a path ends at. */
    public enum End {
        SOURCE("source"),
        LOW_VOLTAGE_SOURCE("low-voltage-source"),
        STAGE("stage"),
        GROUND("ground");

        private final String code;

        End(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    /**
     * A way through devices that are closed, or may be.
     *
     * @param end what is at its end
     * @param name of what is at its end
     * @param hops none where it is on the conductor itself
     */
    public record Path(End end, String name, List<Hop> hops) {
        public Path {
            hops = List.copyOf(hops);
        }

        /** Whether every device on it is known to be closed. */
        public boolean isCertain() {
            return hops.stream().allMatch(Hop::known);
        }
    }

    /**
     * One device passed.
     *
     * @param known whether its position is known; one that is not counts as closed
     * @param to the conductor behind it
     */
    public record Hop(String device, boolean known, String to) {}

    /** An open device and the conductor on its other side. */
    public record Gap(String device, String position, String beyond) {}

    /**
     * What a conductor is joined to.
     *
     * @param positions device to position; one that is left out is not known
     * @param conductor of the bank's isolation
     */
    public static Connections of(Bank bank, Map<String, String> positions, String conductor) {
        Isolation isolation = bank.isolation().orElseThrow();
        Map<String, List<Hop>> reached = reach(isolation, positions, conductor);
        List<Path> paths = new ArrayList<>();
        for (EnergySource source : isolation.sources()) {
            List<Hop> hops = reached.get(source.at());
            if (hops != null) {
                paths.add(new Path(source.isLowVoltage() ? End.LOW_VOLTAGE_SOURCE : End.SOURCE, source.name(), hops));
            }
        }
        for (Stage stage : bank.stages()) {
            List<Hop> hops = reached.get(stage.name());
            if (hops != null) {
                paths.add(new Path(End.STAGE, stage.name(), hops));
            }
        }
        List<Hop> toGround = reached.get(Isolation.GROUND);
        if (toGround != null) {
            paths.add(new Path(End.GROUND, Isolation.GROUND, toGround));
        }
        return new Connections(conductor, paths, gaps(isolation, positions, reached));
    }

    /** Every conductor that is or may be joined, with the shortest way there. Nothing is joined through ground. */
    private static Map<String, List<Hop>> reach(Isolation isolation, Map<String, String> positions, String from) {
        Map<String, List<Hop>> reached = new LinkedHashMap<>();
        reached.put(from, List.of());
        Deque<String> open = new ArrayDeque<>(List.of(from));
        while (!open.isEmpty()) {
            String at = open.removeFirst();
            if (at.equals(Isolation.GROUND)) {
                continue;
            }
            for (Device device : isolation.devices()) {
                String beyond = beyond(device, at);
                String position = positions.getOrDefault(device.name(), "");
                if (!beyond.isEmpty() && !isGap(position) && !reached.containsKey(beyond)) {
                    List<Hop> hops = new ArrayList<>(reached.getOrDefault(at, List.of()));
                    hops.add(new Hop(device.name(), position.equals(Device.CLOSED), beyond));
                    reached.put(beyond, List.copyOf(hops));
                    open.addLast(beyond);
                }
            }
        }
        return reached;
    }

    private static List<Gap> gaps(Isolation isolation, Map<String, String> positions, Map<String, List<Hop>> reached) {
        List<Gap> gaps = new ArrayList<>();
        for (Device device : isolation.devices()) {
            String position = positions.getOrDefault(device.name(), "");
            if (!isGap(position)) {
                continue;
            }
            for (String at : reached.keySet()) {
                String beyond = beyond(device, at);
                if (!beyond.isEmpty() && !at.equals(Isolation.GROUND) && !reached.containsKey(beyond)) {
                    gaps.add(new Gap(device.name(), position, beyond));
                }
            }
        }
        return gaps;
    }

    private static boolean isGap(String position) {
        return position.equals(Device.OPEN) || position.equals(Device.WITHDRAWN);
    }

    /** The conductor on the other side of a device; empty where it does not lie on {@code at}. */
    private static String beyond(Device device, String at) {
        return device.between()
                .map(b -> b.first().equals(at) ? b.second() : b.second().equals(at) ? b.first() : "")
                .orElse("");
    }
}
