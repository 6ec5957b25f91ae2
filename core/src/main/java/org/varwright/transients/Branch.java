package org.varwright.transients;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * R, L, C and source in series between two nodes; any of them may be missing. A switch pole is a branch that can be open.
 *
 * <pre>
 *   from ──R──L──┤├──(e)── to      v_from − v_to = R·i + L·di/dt + u − e
 * </pre>
 *
 * @param name for messages
 * @param from node; 0 is ground
 * @param to node
 * @param ohms [Ω], 0 or more
 * @param henries [H], 0 or more
 * @param farads [F], above 0; empty where there is no capacitor
 * @param emf the source; empty where there is none
 */
public record Branch(
        String name, int from, int to, double ohms, double henries, OptionalDouble farads, Optional<Emf> emf) {
    /** Resistance and inductance alone. */
    public static Branch line(String name, int from, int to, double ohms, double henries) {
        return new Branch(name, from, to, ohms, henries, OptionalDouble.empty(), Optional.empty());
    }

    /** A source behind resistance and inductance, from ground. */
    public static Branch source(String name, int to, double ohms, double henries, Emf emf) {
        return new Branch(name, 0, to, ohms, henries, OptionalDouble.empty(), Optional.of(emf));
    }

    /** A capacitor with what stands in series to it. */
    public static Branch capacitor(String name, int from, int to, double ohms, double henries, double farads) {
        return new Branch(name, from, to, ohms, henries, OptionalDouble.of(farads), Optional.empty());
    }
}
