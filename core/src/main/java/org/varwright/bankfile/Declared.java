package org.varwright.bankfile;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Isolation;

/**
 * Names that the file declares, gathered before anything else is read, so that a reference to something with a fault in it is not a second error.
 */
record Declared(
        Set<String> unitTypes,
        Set<String> fuseTypes,
        Set<String> switchTypes,
        Set<String> stages,
        Set<String> devices,
        Set<String> compartments,
        Set<String> joined,
        Set<String> fed,
        Set<String> exposed,
        boolean hasIsolation) {

    static Declared in(Tree.Mapping root) {
        Set<String> joined = new LinkedHashSet<>();
        Set<String> fed = new LinkedHashSet<>();
        Set<String> exposed = new LinkedHashSet<>();
        Optional<Tree> isolation = child(root, "isolation");
        for (Tree.Mapping device : mappings(isolation, "devices")) {
            child(device, "between").ifPresent(t -> conductors(t, joined));
        }
        for (Tree.Mapping source : mappings(isolation, "sources")) {
            child(source, "at").ifPresent(t -> conductors(t, fed));
        }
        for (Tree.Mapping compartment : mappings(isolation, "compartments")) {
            child(compartment, "exposes").ifPresent(t -> conductors(t, exposed));
        }
        Optional<Tree> document = Optional.of(root);
        return new Declared(
                names(document, "unit-types"),
                names(document, "fuse-types"),
                names(document, "switch-types"),
                names(document, "stages"),
                names(isolation, "devices"),
                names(isolation, "compartments"),
                joined,
                fed,
                exposed,
                isolation.isPresent());
    }

    /** Conductors that a compartment may expose. */
    Set<String> exposable() {
        Set<String> all = new LinkedHashSet<>(joined);
        all.addAll(fed);
        all.addAll(stages);
        all.remove(Isolation.GROUND);
        return all;
    }

    /** Conductors at which a source may stand. */
    Set<String> feedable() {
        Set<String> all = new LinkedHashSet<>(joined);
        all.addAll(exposed);
        all.remove(Isolation.GROUND);
        return all;
    }

    private static Set<String> names(Optional<Tree> within, String list) {
        Set<String> names = new LinkedHashSet<>();
        for (Tree.Mapping mapping : mappings(within, list)) {
            child(mapping, "name").flatMap(Declared::text).ifPresent(names::add);
        }
        return names;
    }

    private static void conductors(Tree tree, Set<String> into) {
        for (Tree item : tree instanceof Tree.Sequence s ? s.items() : List.of(tree)) {
            text(item).map(Words::conductor).ifPresent(into::add);
        }
    }

    private static Optional<String> text(Tree tree) {
        return tree instanceof Tree.Scalar s && !s.isNothing()
                ? Optional.of(s.text().strip())
                : Optional.empty();
    }

    private static List<Tree.Mapping> mappings(Optional<Tree> within, String list) {
        return within.flatMap(t -> child(t, list)).stream()
                .flatMap(t -> t instanceof Tree.Sequence s ? s.items().stream() : List.of(t).stream())
                .filter(Tree.Mapping.class::isInstance)
                .map(Tree.Mapping.class::cast)
                .toList();
    }

    private static Optional<Tree> child(Tree tree, String key) {
        if (!(tree instanceof Tree.Mapping mapping)) {
            return Optional.empty();
        }
        String iec = Words.IEC_KEYS.getOrDefault(key, key);
        return mapping.entries().stream()
                .filter(e -> e.key().strip().equals(key) || e.key().strip().equals(iec))
                .map(Tree.Entry::value)
                .findFirst();
    }
}
