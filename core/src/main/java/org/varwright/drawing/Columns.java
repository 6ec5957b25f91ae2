package org.varwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;

/**
 * The columns of the drawing from left to right. The columns of all that hangs on a conductor lie side by side; its feeder comes down in the first one,
 * its head.
 *
 * @param all from left to right
 * @param heads conductor to the index of its head column
 */
record Columns(List<Column> all, Map<String, Integer> heads) {
    static Columns of(Bank bank, Feeding feeding, Claims claims) {
        Walk walk = new Walk(bank, feeding, claims);
        feeding.roots().forEach(walk::block);
        return new Columns(List.copyOf(walk.all), walk.heads);
    }

    int head(String conductor) {
        return heads.getOrDefault(conductor, 0);
    }

    private static final class Walk {
        private final Bank bank;
        private final Feeding feeding;
        private final Claims claims;
        private final List<Column> all = new ArrayList<>();
        private final Map<String, Integer> heads = new LinkedHashMap<>();
        private final Set<Feeding.Extra> placed = new LinkedHashSet<>();

        Walk(Bank bank, Feeding feeding, Claims claims) {
            this.bank = bank;
            this.feeding = feeding;
            this.claims = claims;
        }

        void block(String conductor) {
            int head = all.size();
            heads.put(conductor, head);
            bank.stage(conductor).ifPresent(s -> add(conductor, new Column.Hangs.Legs(s)));
            for (Device device : feeding.toGround().getOrDefault(conductor, List.of())) {
                add(conductor, new Column.Hangs.ToGround(device));
            }
            sources(conductor).stream().skip(1).forEach(s -> {
                if (all.size() == head) {
                    add(conductor, new Column.Hangs.Nothing());
                }
                add(conductor, new Column.Hangs.Source(s));
            });
            for (Compartment visitor : claims.visits().getOrDefault(conductor, List.of())) {
                if (all.size() == head && claims.conductors().containsKey(conductor)) {
                    add(conductor, new Column.Hangs.Nothing());
                }
                add(conductor, new Column.Hangs.Visit(visitor));
            }
            List<String> children = feeding.children(conductor);
            if (all.size() == head && needsOwnHead(conductor, children)) {
                add(conductor, new Column.Hangs.Nothing());
            }
            for (String child : children) {
                block(child);
                for (Feeding.Extra extra : feeding.extras()) {
                    if (extra.upper().equals(conductor) && extra.lower().equals(child)) {
                        place(extra, conductor);
                    }
                }
            }
            for (Feeding.Extra extra : feeding.extras()) {
                boolean level = feeding.layer(extra.upper()) == feeding.layer(extra.lower());
                if (extra.upper().equals(conductor) || (level && extra.lower().equals(conductor))) {
                    place(extra, conductor);
                }
            }
            if (all.size() == head) {
                add(conductor, new Column.Hangs.Nothing());
            }
        }

        private void place(Feeding.Extra extra, String at) {
            if (!placed.add(extra)) {
                return;
            }
            String to = extra.upper().equals(at) ? extra.lower() : extra.upper();
            boolean level = feeding.layer(at) == feeding.layer(to) && !at.equals(to);
            if (level && all.size() == heads.getOrDefault(at, 0)) {
                add(at, new Column.Hangs.Nothing());
            }
            add(at, level ? new Column.Hangs.Tie(extra.device(), to) : new Column.Hangs.Bond(extra.device(), to));
        }

        private List<EnergySource> sources(String conductor) {
            return bank.isolation().map(Isolation::sources).orElse(List.of()).stream()
                    .filter(s -> s.at().equals(conductor))
                    .toList();
        }

        /** Where the outline around the first child would take in the conductor's head, which lies in another outline. */
        private boolean needsOwnHead(String conductor, List<String> children) {
            if (children.isEmpty()) {
                return false;
            }
            Optional<String> own = Optional.ofNullable(claims.conductors().get(conductor));
            Feeding.Feeder feeder = feeding.feeders().get(children.getFirst());
            Optional<String> first = Optional.ofNullable(
                    feeder == null ? null : claims.devices().get(feeder.device().name()));
            return first.isPresent() && own.isPresent() && !first.equals(own);
        }

        private void add(String conductor, Column.Hangs hangs) {
            all.add(new Column(conductor, hangs));
        }
    }
}
