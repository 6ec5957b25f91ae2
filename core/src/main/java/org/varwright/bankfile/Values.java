package org.varwright.bankfile;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.varwright.problem.Message;

/** Reads single values, lists of names and mappings by name out of a tree; {@link Fields} finds the tree. */
final class Values {
    static final int LONGEST_NAME = 120;

    private final Section section;
    private final Findings findings;

    Values(Section section, Findings findings) {
        this.section = section;
        this.findings = findings;
    }

    /** The one value that should stand there; a list of one is read as its only item. */
    Optional<Tree.Scalar> single(Tree tree, String key) {
        if (tree instanceof Tree.Scalar scalar) {
            if (!scalar.isNothing()) {
                return Optional.of(scalar);
            }
            findings.error(Message.NO_VALUE, tree.place(), key, section.example(key));
        } else if (tree instanceof Tree.Sequence sequence && sequence.items().size() == 1) {
            return single(sequence.items().getFirst(), key);
        } else if (!(tree instanceof Tree.Unreadable)) {
            findings.error(Message.EXPECTED_TEXT, tree.place(), tree.describe(), section.example(key));
        }
        return Optional.empty();
    }

    /** A name, which is reported where it is not among {@code known}. */
    String known(Tree.Scalar scalar, String name, String kind, Set<String> known) {
        if (!known.contains(name)) {
            findings.error(
                    Message.UNKNOWN_NAME,
                    scalar.place(),
                    kind,
                    Shown.of(name),
                    Nearest.hint(name, known),
                    Shown.list(known));
        }
        return name;
    }

    /** Names in a list, a single one being read as a list of one; with a {@code kind} they must be among {@code known}. */
    List<String> names(
            Tree tree,
            String listPath,
            String key,
            int atLeast,
            UnaryOperator<String> normal,
            String kind,
            Set<String> known) {
        List<Tree> items = tree instanceof Tree.Sequence s ? s.items() : List.of(tree);
        Set<String> names = new LinkedHashSet<>();
        for (int i = 0; i < items.size(); i++) {
            Tree item = items.get(i);
            findings.put(tree instanceof Tree.Sequence ? listPath + "[" + i + "]" : listPath, item.place());
            Optional<Tree.Scalar> scalar = single(item, key);
            if (scalar.isEmpty()) {
                continue;
            }
            String name = normal.apply(scalar.get().text().strip());
            if (!kind.isEmpty()) {
                known(scalar.get(), name, kind, known);
            }
            if (Names.check(scalar.get(), name, LONGEST_NAME, true, findings) && !names.add(name)) {
                findings.error(Message.REPEATED_ENTRY, scalar.get().place(), Shown.of(name));
            }
        }
        if (items.size() < atLeast && !(tree instanceof Tree.Unreadable)) {
            findings.error(
                    Message.EMPTY_LIST,
                    tree.place(),
                    atLeast == 1 ? "one entry" : atLeast + " entries",
                    section.example(key));
        }
        return List.copyOf(names);
    }

    Map<String, List<String>> namesByName(
            Tree tree, String path, String key, int atLeast, String kind, Set<String> known) {
        Map<String, List<String>> result = new LinkedHashMap<>();
        for (Tree.Entry entry : entries(tree, key)) {
            String name = known(
                    new Tree.Scalar(entry.key(), false, entry.keyPlace()),
                    entry.key().strip(),
                    kind,
                    known);
            String entryPath = path + "." + name;
            findings.put(entryPath, entry.keyPlace());
            result.put(name, names(entry.value(), entryPath, key, atLeast, UnaryOperator.identity(), "", Set.of()));
        }
        if (tree instanceof Tree.Mapping && result.isEmpty()) {
            findings.error(Message.EMPTY_LIST, tree.place(), "one entry", section.example(key));
        }
        return result;
    }

    Map<String, Tree.Scalar> scalarsByName(Tree tree, String path, String key) {
        Map<String, Tree.Scalar> result = new LinkedHashMap<>();
        for (Tree.Entry entry : entries(tree, key)) {
            String name = entry.key().strip();
            findings.put(path + "." + name, entry.keyPlace());
            single(entry.value(), key).ifPresent(value -> result.put(name, value));
        }
        return result;
    }

    private List<Tree.Entry> entries(Tree tree, String key) {
        if (tree instanceof Tree.Mapping mapping) {
            return mapping.entries();
        }
        if (!(tree instanceof Tree.Unreadable)) {
            findings.error(
                    Message.EXPECTED_MAPPING, tree.place(), tree.describe(), "names, as in " + section.example(key));
        }
        return List.of();
    }
}
