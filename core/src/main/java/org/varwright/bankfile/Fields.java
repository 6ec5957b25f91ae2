package org.varwright.bankfile;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.varwright.bank.TransformerRatio;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.quantity.Dimension;

/**
 * Reads the keys of one mapping. A value that is missing or wrong is reported and replaced by a stand-in, so that reading goes on and every fault is
 * found in one run; {@link #finish} then gives nothing, so that no stand-in ever gets out.
 */
final class Fields {
    private static final int LONGEST_NOTE = 4000;

    private final Section section;
    private final Tree.Mapping mapping;
    private final String path;
    private final Findings findings;
    private final Values values;
    private final int errorsBefore;
    private final Set<String> read = new HashSet<>();

    private Fields(Section section, Tree.Mapping mapping, String path, Findings findings) {
        this.section = section;
        this.mapping = mapping;
        this.path = path;
        this.findings = findings;
        this.values = new Values(section, findings);
        this.errorsBefore = findings.errorCount();
        findings.put(path, mapping.place());
    }

    /** The fields of a tree that should be a mapping; nothing where it isn't, which is then reported. */
    static Optional<Fields> of(Tree tree, Section section, String path, Findings findings) {
        if (tree instanceof Tree.Mapping mapping) {
            return Optional.of(new Fields(section, mapping, path, findings));
        }
        if (!(tree instanceof Tree.Unreadable)) {
            findings.error(Message.EXPECTED_MAPPING, tree.place(), tree.describe(), Shown.words(section.keys()));
        }
        return Optional.empty();
    }

    String path() {
        return path;
    }

    /** The path of one key in here. */
    String path(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }

    Place place(String key) {
        return findings.place(path(key));
    }

    boolean has(String key) {
        return entry(key).isPresent();
    }

    void error(Message message, String key, String... arguments) {
        findings.error(message, place(key), arguments);
    }

    /** What was made of the fields, once every key is known and nothing in here was wrong. */
    <T> Optional<T> finish(Supplier<T> result) {
        for (Tree.Entry entry : mapping.entries()) {
            if (!section.readableKeys().contains(entry.key().strip())) {
                findings.error(
                        Message.UNKNOWN_KEY,
                        entry.keyPlace(),
                        Shown.of(entry.key()),
                        Nearest.hint(entry.key(), section.readableKeys()),
                        Shown.words(section.keys()));
            } else if (!read.contains(ieeeKey(entry.key().strip()))) {
                throw new IllegalStateException(section.name() + " never reads " + entry.key());
            }
        }
        return findings.errorCount() == errorsBefore && !hasUnreadable(mapping)
                ? Optional.of(result.get())
                : Optional.empty();
    }

    /** Whether a fault in here was found before this reading began. */
    private static boolean hasUnreadable(Tree tree) {
        return switch (tree) {
            case Tree.Scalar s -> false;
            case Tree.Unreadable u -> true;
            case Tree.Sequence s -> s.items().stream().anyMatch(Fields::hasUnreadable);
            case Tree.Mapping m -> m.entries().stream().anyMatch(e -> hasUnreadable(e.value()));
        };
    }

    // ---- single values

    String name(String key) {
        return text(key, Values.LONGEST_NAME, true).orElse("");
    }

    Optional<String> optionalName(String key) {
        return has(key) ? text(key, Values.LONGEST_NAME, true) : none(key);
    }

    String word(String key) {
        return text(key, Values.LONGEST_NAME, false).orElse("");
    }

    Optional<String> optionalWord(String key) {
        return has(key) ? text(key, Values.LONGEST_NAME, false) : none(key);
    }

    Optional<String> optionalText(String key) {
        return has(key) ? text(key, LONGEST_NOTE, false) : none(key);
    }

    double quantity(String key, Dimension dimension, double low, double high) {
        return scalar(key)
                .map(s -> Quantities.read(s, dimension, low, high, findings))
                .orElse(Double.NaN);
    }

    OptionalDouble optionalQuantity(String key, Dimension dimension, double low, double high) {
        return has(key) ? OptionalDouble.of(quantity(key, dimension, low, high)) : noNumber(key);
    }

    OptionalDouble optionalNumber(String key, double low, double high) {
        return has(key)
                ? OptionalDouble.of(scalar(key)
                        .map(s -> Quantities.readPlain(s, section.example(key), low, high, findings))
                        .orElse(Double.NaN))
                : noNumber(key);
    }

    int count(String key, int low, int high) {
        return scalar(key)
                .map(s -> Quantities.readCount(s, low, high, findings))
                .orElse(low);
    }

    int count(String key, int low, int high, int otherwise) {
        return optionalCount(key, low, high).orElse(otherwise);
    }

    OptionalInt optionalCount(String key, int low, int high) {
        if (!has(key)) {
            read.add(key);
            return OptionalInt.empty();
        }
        return OptionalInt.of(count(key, low, high));
    }

    <E> E choice(String key, Map<String, E> words) {
        E standIn = words.values().iterator().next();
        Optional<Tree.Scalar> scalar = scalar(key);
        if (scalar.isEmpty()) {
            return standIn;
        }
        String written = scalar.get().text();
        Optional<E> found = Words.find(words, written);
        if (found.isEmpty()) {
            findings.error(
                    Message.NOT_A_CHOICE,
                    scalar.get().place(),
                    Shown.of(written),
                    Nearest.hint(Words.ieee(written), words.keySet()),
                    Shown.words(List.copyOf(words.keySet())));
        }
        return found.orElse(standIn);
    }

    <E> Optional<E> optionalChoice(String key, Map<String, E> words) {
        return has(key) ? Optional.of(choice(key, words)) : none(key);
    }

    boolean flag(String key) {
        return this.<Boolean>optionalChoice(key, Words.TRUTHS).orElse(false);
    }

    /** A name that must be one of {@code known}; {@code kind} says in words of what. */
    String reference(String key, String kind, Set<String> known) {
        Optional<Tree.Scalar> scalar = scalar(key);
        return scalar.map(s -> values.known(s, s.text().strip(), kind, known)).orElse("");
    }

    Optional<String> optionalReference(String key, String kind, Set<String> known) {
        return has(key) ? Optional.of(reference(key, kind, known)) : none(key);
    }

    // ---- lists and mappings

    /** Names in a list, a single one being read as a list of one. */
    List<String> names(String key, int atLeast) {
        return names(key, atLeast, UnaryOperator.identity(), "", Set.of());
    }

    /** Names in a list that must be among {@code known}. */
    List<String> references(String key, int atLeast, UnaryOperator<String> normal, String kind, Set<String> known) {
        return names(key, atLeast, normal, kind, known);
    }

    private List<String> names(String key, int atLeast, UnaryOperator<String> normal, String kind, Set<String> known) {
        Optional<Tree> tree = required(key);
        if (tree.isEmpty()) {
            return List.of();
        }
        return values.names(tree.get(), path(key), key, atLeast, normal, kind, known);
    }

    /** A mapping from names to lists of names, such as positions by device. */
    Map<String, List<String>> namesByName(String key, int atLeast, String kind, Set<String> known) {
        return required(key)
                .map(tree -> values.namesByName(tree, path(key), key, atLeast, kind, known))
                .orElse(Map.of());
    }

    /** A mapping from names to single values, in the order of the file; empty where the key is not there. */
    Map<String, Tree.Scalar> scalarsByName(String key) {
        return has(key)
                ? required(key)
                        .map(tree -> values.scalarsByName(tree, path(key), key))
                        .orElse(Map.of())
                : Map.of();
    }

    /** The items of a list that are right; a single mapping is read as a list of one. */
    <T> List<Item<T>> each(String key, Section inner, Function<Fields, Optional<T>> reader) {
        Optional<Tree> tree = entry(key).flatMap(e -> required(key));
        read.add(key);
        if (tree.isEmpty()) {
            return List.of();
        }
        if (tree.get() instanceof Tree.Scalar) {
            findings.error(Message.EXPECTED_LIST, tree.get().place(), tree.get().describe());
            return List.of();
        }
        List<Tree> items = tree.get() instanceof Tree.Sequence s ? s.items() : List.of(tree.get());
        List<Item<T>> results = new ArrayList<>();
        for (int i = 0; i < items.size(); i++) {
            String itemPath = path(key) + "[" + i + "]";
            of(items.get(i), inner, itemPath, findings)
                    .flatMap(reader)
                    .ifPresent(value -> results.add(new Item<>(itemPath, value)));
        }
        return results;
    }

    /** The items of a list that must be there and not empty. */
    <T> List<Item<T>> eachRequired(String key, Section inner, Function<Fields, Optional<T>> reader) {
        required(key).ifPresent(tree -> {
            if (tree instanceof Tree.Sequence s && s.items().isEmpty()) {
                findings.error(Message.EMPTY_LIST, tree.place(), "one entry", section.example(key));
            }
        });
        return each(key, inner, reader);
    }

    Optional<Fields> optionalChild(String key, Section inner) {
        return has(key) ? child(key, inner) : none(key);
    }

    Optional<Fields> child(String key, Section inner) {
        return required(key).flatMap(tree -> of(tree, inner, path(key), findings));
    }

    /** The list of a key that must be there, at most a single value being read as a list of one. */
    Optional<List<Tree>> pair(String key) {
        return required(key).flatMap(tree -> {
            if (tree instanceof Tree.Sequence s && s.items().size() == 2) {
                return Optional.of(s.items());
            }
            if (!(tree instanceof Tree.Unreadable)) {
                findings.error(Message.EXPECTED_PAIR, tree.place(), tree.describe(), section.example(key));
            }
            return Optional.empty();
        });
    }

    /** The single value of a key that must be there. */
    Optional<Tree.Scalar> scalar(String key) {
        return required(key).flatMap(tree -> values.single(tree, key));
    }

    Optional<Tree.Scalar> optionalScalar(String key) {
        return has(key) ? scalar(key) : none(key);
    }

    /** A transformer's ratio such as {@code "8400:120"}. */
    Optional<TransformerRatio> optionalRatio(String key) {
        return optionalScalar(key).flatMap(s -> Quantities.readRatio(s, findings));
    }

    /** Says of two keys, one of which is there, that the other is missing. */
    void together(String one, String other) {
        if (has(one) && !has(other)) {
            error(Message.KEYS_TOGETHER, one, one, other);
        } else if (has(other) && !has(one)) {
            error(Message.KEYS_TOGETHER, other, other, one);
        }
    }

    Findings findings() {
        return findings;
    }

    // ---- inside

    private Optional<String> text(String key, int longest, boolean isName) {
        return scalar(key).map(s -> {
            String text = s.text().strip();
            Names.check(s, text, longest, isName, findings);
            return text;
        });
    }

    private Optional<Tree> required(String key) {
        Optional<Tree.Entry> entry = entry(key);
        if (entry.isEmpty()) {
            findings.error(
                    Message.MISSING_KEY,
                    new Place(
                            findings.file(),
                            mapping.place().line(),
                            mapping.place().column(),
                            path(key)),
                    key,
                    section.example(key));
        }
        return entry.map(Tree.Entry::value);
    }

    private Optional<Tree.Entry> entry(String key) {
        section.example(key);
        read.add(key);
        List<Tree.Entry> found = mapping.entries().stream()
                .filter(e -> ieeeKey(e.key().strip()).equals(key))
                .toList();
        if (found.size() > 1) {
            findings.error(
                    Message.EITHER_KEY,
                    found.get(1).keyPlace(),
                    "\"" + found.get(0).key() + "\" and \"" + found.get(1).key() + "\"");
        }
        if (!found.isEmpty()) {
            findings.put(path(key), found.getFirst().value().place());
        }
        return found.stream().findFirst();
    }

    /** The IEEE key, where an IEC one is written that this section knows. */
    private String ieeeKey(String written) {
        if (!section.examples().containsKey(written)) {
            for (Map.Entry<String, String> pair : Words.IEC_KEYS.entrySet()) {
                if (pair.getValue().equals(written) && section.examples().containsKey(pair.getKey())) {
                    return pair.getKey();
                }
            }
        }
        return written;
    }

    private <T> Optional<T> none(String key) {
        read.add(key);
        return Optional.empty();
    }

    private OptionalDouble noNumber(String key) {
        read.add(key);
        return OptionalDouble.empty();
    }
}
