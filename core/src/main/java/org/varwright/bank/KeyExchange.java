package org.varwright.bank;

import java.util.List;
import java.util.Optional;

/**
 * A box that gives one side's keys for all of the other side's.
 *
 * @param name unique among exchanges
 * @param in keys that go in
 * @param out keys that come out
 * @param label what is written or coded on it
 * @param note free text
 */
public record KeyExchange(
        String name, List<String> in, List<String> out, Optional<String> label, Optional<String> note) {
    public KeyExchange {
        in = List.copyOf(in);
        out = List.copyOf(out);
    }
}
