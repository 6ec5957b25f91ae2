package org.varwright.interlock;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.Lock;
import org.varwright.bank.Stage;
import org.varwright.bank.Vocabulary;

/** Looks for faults of a scheme by name, each with the shortest way to harm and the changes that are proven to close it. */
final class DesignFaults {
    private static final long TRIAL_STATES = 3_000_000;
    /** How many states one search for a key that is free with its door open may look at. */
    static final int SEARCH_STATES = 200_000;

    private static final String COUNT_PEOPLE =
            "Before the way back, look into every compartment and count people, not keys.";

    private final Bank bank;
    private final Scheme scheme;
    private final Verification verification;
    private final Vocabulary words;
    private final Trials trials;
    private final long memoryBytes;
    private final Verifier.Progress progress;
    private final int searchStates;
    private final List<DesignFault> faults = new ArrayList<>();

    private DesignFaults(
            Bank bank,
            Scheme scheme,
            Verification verification,
            Trials trials,
            long memoryBytes,
            Verifier.Progress progress,
            int searchStates) {
        this.bank = bank;
        this.scheme = scheme;
        this.verification = verification;
        this.trials = trials;
        this.memoryBytes = memoryBytes;
        this.progress = progress;
        this.searchStates = searchStates;
        words = bank.words();
    }

    static List<DesignFault> of(
            Bank bank, Scheme scheme, Verification verification, long memoryBytes, Verifier.Progress progress) {
        return of(bank, scheme, verification, memoryBytes, progress, SEARCH_STATES);
    }

    /** With searches for keys that look at so many states at most. */
    static List<DesignFault> of(
            Bank bank,
            Scheme scheme,
            Verification verification,
            long memoryBytes,
            Verifier.Progress progress,
            int searchStates) {
        Trials trials = new Trials(scheme, verification, memoryBytes, progress, TRIAL_STATES);
        DesignFaults all = new DesignFaults(bank, scheme, verification, trials, memoryBytes, progress, searchStates);
        all.brokenProperties();
        all.copies();
        all.doorsWithoutLock();
        if (verification.complete()) {
            all.doorsThatNeverOpen();
        }
        all.stagesBehindOpenSwitches();
        all.floatingNeutrals();
        return all.faults.stream()
                .sorted(Comparator.comparing(DesignFault::kind))
                .toList();
    }

    /** One fault a property and kind of change that closes it. */
    private void brokenProperties() {
        for (Property property : Property.values()) {
            if (!(verification.outcome(property) instanceof Verification.Outcome.NotEnforced broken)) {
                continue;
            }
            Map<DesignFault.Kind, List<DesignFault.Remedy>> byKind = new EnumMap<>(DesignFault.Kind.class);
            for (Trials.Proven proven : trials.closing(property, Changes.of(scheme, property))) {
                byKind.computeIfAbsent(proven.change().fault(), k -> new ArrayList<>())
                        .add(proven.remedy());
            }
            if (property == Property.KEY_STRANDED) {
                List<DesignFault.Remedy> any =
                        byKind.values().stream().flatMap(List::stream).toList();
                byKind.clear();
                byKind.put(DesignFault.Kind.KEY_STRANDED, any);
            }
            byKind.forEach((kind, remedies) -> faults.add(new DesignFault(
                    kind, what(kind, property), broken.path(), remedies, rule(property, broken.path()))));
        }
    }

    private String rule(Property property, List<Step> path) {
        return PersonalRule.of(scheme, words, property, path);
    }

    private String what(DesignFault.Kind kind, Property property) {
        String harm = " This breaks " + property.id() + ": " + property.claim(words) + ".";
        return switch (kind) {
            case SECOND_COPY ->
                "There is more than one copy of a key, so it can be trapped and in a hand at once." + harm;
            case DOOR_WITHOUT_LOCK -> "A door has no lock, so it opens whatever is behind it." + harm;
            case WRONG_POSITION ->
                "A lock gives its key in a position that does not make safe what the key leads to." + harm;
            case SOURCE_LEFT_OUT -> "A source can stay on: no key has to come from what cuts it off." + harm;
            case MISSING_DELAY -> "Nothing waits for the discharge time." + harm;
            case MISSING_INTERLOCK -> "Nothing ties these devices to each other." + harm;
            case KEY_STRANDED -> "Moves that the locks allow lead where the keys never come home from." + harm;
            case SHARED_KEY, KEY_FREE_DOOR_OPEN, KEY_LOOP, STAGE_NOT_GROUNDED, FLOATING_NEUTRAL -> harm.strip();
        };
    }

    /** A key with several copies, whether or not a property shows it; and such a key free while its door is open. */
    private void copies() {
        for (KeyCopies key : scheme.isolation().keys()) {
            if (key.copies() < 2) {
                continue;
            }
            if (!proposed(DesignFault.Kind.SECOND_COPY, Changes.oneCopyOf(key.name()))) {
                faults.add(new DesignFault(
                        DesignFault.Kind.SECOND_COPY,
                        "There are " + key.copies() + " copies of key " + key.name()
                                + ". No property that is verified here comes to depend on it, but what a lock says of this key is only true of one copy.",
                        List.of(),
                        List.of(),
                        "Keep the other copies of key " + key.name()
                                + " under seal, away from the bank, and write down who breaks it."));
            }
            List<String> doors = scheme.isolation().locks().stream()
                    .filter(l -> l.on() instanceof Lock.On.OfDoor && l.keys().contains(key.name()))
                    .map(l -> l.on().name())
                    .toList();
            Predicate<State> keyOut =
                    state -> doors.stream().anyMatch(d -> scheme.doors(state).getOrDefault(d, false))
                            && scheme.keys(state).getOrDefault(key.name(), List.of()).stream()
                                    .anyMatch(p -> p instanceof KeyPlace.Free);
            Search.Result keyOutOrNot = search(scheme, keyOut);
            if (keyOutOrNot instanceof Search.Result.Undecided) {
                faults.add(new DesignFault(
                        DesignFault.Kind.KEY_FREE_DOOR_OPEN,
                        "Whether key " + key.name() + " can be in a hand while the door of " + Words.list(doors)
                                + " that it belongs to stands open is undecided: count it as so.",
                        List.of(),
                        List.of(),
                        COUNT_PEOPLE));
            }
            if (keyOutOrNot instanceof Search.Result.Found found) {
                Scheme single = Scheme.of(Changed.copies(scheme.isolation(), key.name(), 1), scheme.stages());
                List<DesignFault.Remedy> remedies = new ArrayList<>();
                if (search(single, singleOut(single, doors, key.name())) instanceof Search.Result.None none) {
                    remedies.add(new DesignFault.Remedy(
                            "leave one copy of key " + key.name()
                                    + ": then it stays trapped as long as the door is open",
                            java.util.Set.of(),
                            none.explored()));
                }
                faults.add(new DesignFault(
                        DesignFault.Kind.KEY_FREE_DOOR_OPEN,
                        "Key " + key.name() + " can be in a hand while the door of " + Words.list(doors)
                                + " that it belongs to stands open, so the way back can be unlocked with people inside.",
                        found.path(),
                        remedies,
                        COUNT_PEOPLE));
            }
        }
    }

    private static Predicate<State> singleOut(Scheme single, List<String> doors, String key) {
        return state -> doors.stream().anyMatch(d -> single.doors(state).getOrDefault(d, false))
                && single.keys(state).getOrDefault(key, List.of()).stream().anyMatch(p -> p instanceof KeyPlace.Free);
    }

    private Search.Result search(Scheme among, Predicate<State> goal) {
        return Search.cheapest(among, among.start(), goal, (before, move, after) -> true, m -> 1, searchStates);
    }

    /** Whether a fault of this kind was found whose remedy begins with these words. */
    private boolean proposed(DesignFault.Kind kind, String words) {
        return faults.stream()
                .filter(f -> f.kind() == kind)
                .flatMap(f -> f.remedies().stream())
                .anyMatch(r -> r.text().startsWith(words));
    }

    private void doorsWithoutLock() {
        for (Compartment compartment : scheme.isolation().compartments()) {
            Lock.On door = new Lock.On.OfDoor(compartment.name());
            boolean onlyLowVoltage = compartment.exposes().stream().allMatch(this::isAuxiliary);
            boolean locked = scheme.isolation().locks().stream().anyMatch(l -> l.on().equals(door));
            boolean known = proposed(DesignFault.Kind.DOOR_WITHOUT_LOCK, Changes.lockOnDoor(compartment.name()));
            if (!locked && !onlyLowVoltage && !known) {
                faults.add(new DesignFault(
                        DesignFault.Kind.DOOR_WITHOUT_LOCK,
                        "The door of " + compartment.name() + " has no lock, though "
                                + Words.list(compartment.exposes())
                                + (compartment.exposes().size() == 1 ? " is" : " are")
                                + " behind it.",
                        List.of(),
                        List.of(),
                        "Keep that door shut by padlock and rule until " + Words.list(compartment.exposes())
                                + " is proven dead."));
            }
        }
    }

    /** A conductor that low-voltage sources feed and no device joins to anything. */
    private boolean isAuxiliary(String conductor) {
        boolean joined = scheme.isolation().devices().stream()
                .flatMap(d -> d.between().stream())
                .anyMatch(b -> b.first().equals(conductor) || b.second().equals(conductor));
        List<EnergySource> sources = scheme.isolation().sources().stream()
                .filter(s -> s.at().equals(conductor))
                .toList();
        return !joined && !sources.isEmpty() && sources.stream().allMatch(EnergySource::isLowVoltage);
    }

    private void doorsThatNeverOpen() {
        for (Compartment compartment : scheme.isolation().compartments()) {
            Move open = new Move.OpenDoor(compartment.name());
            if (!verification.possible().contains(open)) {
                faults.add(new DesignFault(
                        DesignFault.Kind.KEY_LOOP,
                        "The door of " + compartment.name() + " can never be opened by the keys. "
                                + new KeyLoop(scheme, verification).of(compartment.name()),
                        List.of(),
                        trials.allowing(open, Changes.toStart(scheme)).stream()
                                .map(Trials.Proven::remedy)
                                .toList(),
                        "Nobody gets in there by keys. Whoever does has defeated a lock: stop and ask how."));
            }
        }
    }

    private void stagesBehindOpenSwitches() {
        List<StagePoint> switched =
                scheme.stages().stream().filter(s -> s.switchName().isPresent()).toList();
        BelievedGrounded believed = new BelievedGrounded(scheme);
        Search.Result way = Verifier.shortestTo(scheme, believed, memoryBytes, progress);
        if (way instanceof Search.Result.Undecided && !switched.isEmpty()) {
            faults.add(new DesignFault(
                    DesignFault.Kind.STAGE_NOT_GROUNDED,
                    "Whether a door can be open to a " + words.stage() + " behind its open switch that is not "
                            + words.grounded() + " is undecided: count every " + words.stage()
                            + " behind an open switch as not " + words.grounded() + ".",
                    List.of(),
                    List.of(),
                    testEachStage()));
        }
        if (way instanceof Search.Result.Found found) {
            State last = found.path().isEmpty()
                    ? scheme.start()
                    : found.path().getLast().after();
            List<String> names = switched.stream()
                    .filter(s -> believed.is(last, s))
                    .map(StagePoint::name)
                    .toList();
            List<DesignFault.Remedy> remedies = StageGrounds.of(scheme, words.groundingSwitch()).stream()
                    .flatMap(change -> trials
                            .making(
                                    (changed, after) -> Verifier.shortestTo(
                                                    changed, new BelievedGrounded(changed), memoryBytes, progress)
                                            instanceof Search.Result.None,
                                    List.of(change))
                            .stream())
                    .map(Trials.Proven::remedy)
                    .toList();
            faults.add(new DesignFault(
                    DesignFault.Kind.STAGE_NOT_GROUNDED,
                    "With the door open and the conductor before its switch " + words.grounded() + ", "
                            + Words.list(names)
                            + " behind the open switch is not " + words.grounded()
                            + ": the " + words.groundingSwitch()
                            + " does not reach it. The same is true of every " + words.stage()
                            + " behind an open switch: "
                            + Words.list(switched.stream().map(StagePoint::name).toList()) + ".",
                    found.path(),
                    remedies,
                    testEachStage()));
        }
    }

    private String testEachStage() {
        return "Test each " + words.stage()
                + " for itself, discharge every unit with the stick and put a short on it that stays while people work.";
    }

    private void floatingNeutrals() {
        boolean grounds = scheme.isolation().devices().stream().anyMatch(d -> d.kind() == Device.Kind.GROUNDING_SWITCH);
        List<String> floating = bank.stages().stream()
                .filter(s -> s.connection().hasFloatingNeutral())
                .map(Stage::name)
                .toList();
        if (grounds && !floating.isEmpty()) {
            faults.add(new DesignFault(
                    DesignFault.Kind.FLOATING_NEUTRAL,
                    "The neutral of " + Words.list(floating) + " floats. A three-pole " + words.groundingSwitch()
                            + " joins the three line terminals to " + words.ground()
                            + " and leaves the neutral: with an open fuse or unequal units it keeps a voltage.",
                    List.of(),
                    List.of(),
                    "Test the neutral too, discharge each unit terminal to terminal, and join the neutral to "
                            + words.ground() + " with a lead of its own while people work."));
        }
    }
}
