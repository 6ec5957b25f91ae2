package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.varwright.bank.Device;
import org.varwright.problem.VarwrightException;

/** A small scheme drawn from a seed: sensible parts put together without sense, so that much is broken. */
final class RandomScheme {
    private RandomScheme() {}

    /** Draws schemes until one compiles; the seed decides all. */
    static Schemes of(long seed) {
        Random random = new Random(seed);
        Schemes drawn = draw(random);
        while (!compiles(drawn)) {
            drawn = draw(random);
        }
        return drawn;
    }

    /** Not where a key would be trapped too often at the start. */
    private static boolean compiles(Schemes drawn) {
        try {
            drawn.scheme();
            return true;
        } catch (VarwrightException contradiction) {
            return false;
        }
    }

    private static Schemes draw(Random random) {
        Schemes s = new Schemes();
        s.source("feeder", "line");
        if (random.nextInt(3) == 0) {
            s.source("tie", random.nextBoolean() ? "bus" : "cable");
        }
        if (random.nextInt(3) == 0) {
            s.lowVoltage("heater", random.nextBoolean() ? "panel" : "cable");
        }
        List<String> devices = new ArrayList<>(List.of("B", "D", "G"));
        if (random.nextBoolean()) {
            s.withdrawable("B", "line", "cable");
        } else {
            s.device("B", Device.Kind.BREAKER, "line", "cable");
        }
        s.device(
                "D", random.nextInt(4) == 0 ? Device.Kind.LOAD_BREAK_SWITCH : Device.Kind.DISCONNECTOR, "cable", "bus");
        s.device("G", Device.Kind.GROUNDING_SWITCH, random.nextInt(4) == 0 ? "cable" : "bus", "ground");
        int stages = 1 + random.nextInt(2);
        for (int i = 1; i <= stages; i++) {
            if (random.nextInt(4) == 0) {
                s.stage("bus", "");
                break;
            }
            devices.add("S" + i);
            s.device("S" + i, Device.Kind.STAGE_SWITCH, "bus", "stage " + i).stage("stage " + i, "S" + i);
        }
        boolean selector = random.nextBoolean();
        if (selector) {
            s.selector("M", "off", "hand", "auto");
        }
        s.compartment("one", random.nextInt(4) == 0 ? new String[0] : new String[] {"bus", "stage 1"});
        s.compartment(
                "two",
                List.of(List.of("cable"), List.of("panel"), List.<String>of())
                        .get(random.nextInt(3))
                        .toArray(String[]::new));
        List<String> keys = List.of("K1", "K2", "K3", "K4");
        int locks = 2 + random.nextInt(4);
        for (int i = 0; i < locks; i++) {
            String key = keys.get(random.nextInt(keys.size()));
            if (random.nextInt(3) == 0) {
                s.doorLock(random.nextBoolean() ? "one" : "two", key);
            } else if (selector && random.nextInt(4) == 0) {
                s.lock("M", List.of("off", "hand", "auto").get(random.nextInt(3)), key);
            } else {
                s.lock(devices.get(random.nextInt(devices.size())), random.nextBoolean() ? "open" : "closed", key);
            }
        }
        if (random.nextInt(3) == 0) {
            s.copies(keys.get(random.nextInt(keys.size())), 2);
        }
        if (random.nextBoolean()) {
            s.exchange("X", List.of(keys.get(random.nextInt(2))), List.of(keys.get(2 + random.nextInt(2)), "K5"));
            s.doorLock("one", "K5");
        }
        if (random.nextBoolean()) {
            s.interlock("G", "closed", "D", "open");
        }
        if (random.nextInt(3) == 0) {
            s.interlock("B", "closed", random.nextBoolean() ? "one" : "G", "closed", "open");
        }
        if (selector && random.nextBoolean()) {
            s.interlock("D", "open", "M", "off", "hand");
        }
        if (random.nextBoolean()) {
            s.delayMove("G", "closed", random.nextBoolean() ? "D" : "B");
        }
        if (random.nextInt(4) == 0) {
            s.startAt("D", "open");
        }
        return s;
    }
}
