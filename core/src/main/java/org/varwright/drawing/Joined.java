package org.varwright.drawing;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;

/** Which conductors closed devices join, and what each is for it: live before grounded before charged before floating. */
final class Joined {
    private final Isolation isolation;
    private final Map<String, String> parent = new LinkedHashMap<>();
    private final Map<String, String> parentMaybe = new LinkedHashMap<>();

    private Joined(Isolation isolation) {
        this.isolation = isolation;
    }

    /** A device with an unknown position joins for what may be live, and not for what is grounded. */
    static Joined of(Isolation isolation, Map<String, String> positions) {
        Joined joined = new Joined(isolation);
        for (Device device : isolation.devices()) {
            if (device.between().isEmpty()) {
                continue;
            }
            Device.Between between = device.between().get();
            String position = positions.getOrDefault(device.name(), "");
            if (position.equals(Device.CLOSED)) {
                join(joined.parent, between);
                join(joined.parentMaybe, between);
            } else if (!position.equals(Device.OPEN) && !position.equals(Device.WITHDRAWN)) {
                join(joined.parentMaybe, between);
            }
        }
        return joined;
    }

    Map<String, ConductorState> states(Set<String> charged) {
        Map<String, ConductorState> states = new LinkedHashMap<>();
        for (String conductor : isolation.conductors()) {
            states.put(conductor, state(conductor, charged));
        }
        return states;
    }

    private ConductorState state(String conductor, Set<String> charged) {
        String net = root(parent, conductor);
        boolean grounded = net.equals(root(parent, Isolation.GROUND));
        boolean low = false;
        for (EnergySource source : isolation.sources()) {
            if (net.equals(root(parent, source.at()))) {
                if (!source.isLowVoltage()) {
                    return ConductorState.LIVE;
                }
                low = true;
            }
        }
        if (mayBeLive(conductor)) {
            return ConductorState.UNKNOWN;
        }
        if (low) {
            return ConductorState.LIVE_LOW_VOLTAGE;
        }
        if (grounded) {
            return ConductorState.GROUNDED;
        }
        return charged.stream().anyMatch(s -> net.equals(root(parent, s)))
                ? ConductorState.CHARGED
                : ConductorState.FLOATING;
    }

    private boolean mayBeLive(String conductor) {
        String net = root(parentMaybe, conductor);
        return isolation.sources().stream()
                .anyMatch(s -> net.equals(root(parentMaybe, s.at()))
                        && !root(parent, conductor).equals(root(parent, s.at())));
    }

    private static void join(Map<String, String> parent, Device.Between between) {
        String first = root(parent, between.first());
        String second = root(parent, between.second());
        if (!first.equals(second)) {
            parent.put(first, second);
        }
    }

    private static String root(Map<String, String> parent, String of) {
        String at = of;
        String up = parent.get(at);
        while (up != null) {
            at = up;
            up = parent.get(at);
        }
        return at;
    }
}
