package org.varwright.interlock;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Visits every state that any order of moves can reach, and says of every property whether one of them breaks it.
 *
 * <p><b>Model.</b> Breadth first over packed states, so that the first way found to a broken property is a shortest one; getting home is an induction over depth
 * with sweeps over what it leaves open (ILK-4, ILK-5, ILK-7).
 */
public final class Verifier {
    private static final int REPORT_EVERY = 1 << 16;

    private final Scheme scheme;
    private final Symmetry symmetry;
    private final long memoryBytes;
    private final Progress progress;
    private final int unlessBroken;
    /** Rules that applied somewhere. */
    private final boolean[] used;

    private final Numbering numbering;
    private final Expansion expansion;
    private final StateTable table = new StateTable();
    private final Map<Property, Witness> witnesses = new EnumMap<>(Property.class);
    private final LongList pending = new LongList();
    private final LongList pendingDepth = new LongList();
    private LongList level = new LongList();
    private LongList nextLevel = new LongList();
    private long moves;
    /** States looked at, those included that others stand for. */
    private long expanded;

    private int depth;
    /** Bits of the properties that nothing has broken so far. */
    private int unbroken;

    private long peakBytes;
    private Optional<String> stopped = Optional.empty();
    private Optional<Predicate<State>> watched = Optional.empty();
    private Optional<Witness> fitting = Optional.empty();

    /**
     * The first way found to break a property.
     *
     * @param before the state in which it is broken, or out of which the breaking move leads
     * @param depth of that state
     * @param byMove whether a move out of it breaks it, not the state itself
     */
    private record Witness(long before, int depth, boolean byMove) {}

    /** Told now and then how far the search is. */
    public interface Progress {
        /** Says nothing and never stops. */
        Progress SILENT = (states, moves, depth) -> true;

        /** Whether to go on; where not, what is open stays undecided. */
        boolean goOn(long states, long moves, int depth);
    }

    /** Verifies without making use of stages that are alike. */
    static Verification verifyOneByOne(Scheme scheme, long memoryBytes, Progress progress) {
        return new Verifier(scheme, Symmetry.none(), memoryBytes, progress, 0).run();
    }

    /**
     * The shortest way to a state that fits, visiting alike stages once.
     *
     * @param fits must not tell stages that are alike from one another
     */
    static Search.Result shortestTo(Scheme scheme, Predicate<State> fits, long memoryBytes, Progress progress) {
        Verifier verifier = new Verifier(scheme, Symmetry.of(scheme), memoryBytes, progress, 0);
        verifier.watched = Optional.of(fits);
        verifier.explore();
        if (verifier.fitting.isPresent()) {
            List<Step> path = verifier.path(verifier.fitting.get());
            return new Search.Result.Found(path, path.size(), verifier.table.size());
        }
        return verifier.stopped.isPresent()
                ? new Search.Result.Undecided(verifier.table.size())
                : new Search.Result.None(verifier.table.size());
    }

    private Verifier(Scheme scheme, Symmetry symmetry, long memoryBytes, Progress progress, int unlessBroken) {
        this.scheme = scheme;
        this.symmetry = symmetry;
        this.memoryBytes = memoryBytes;
        this.progress = progress;
        this.unlessBroken = unlessBroken;
        used = new boolean[scheme.rules().size()];
        numbering = new Numbering(scheme.layout().isNarrow());
        expansion = new Expansion(scheme, numbering, symmetry);
    }

    /**
     * Verifies every property.
     *
     * @param memoryBytes what the search may hold at most [B]
     */
    public static Verification verify(Scheme scheme, long memoryBytes, Progress progress) {
        return verify(scheme, memoryBytes, progress, 0);
    }

    /** Verifies, but gives up as soon as one of these properties ({@link Property#bit()}) is broken. */
    static Verification verify(Scheme scheme, long memoryBytes, Progress progress, int unlessBroken) {
        return new Verifier(scheme, Symmetry.of(scheme), memoryBytes, progress, unlessBroken).run();
    }

    private Verification run() {
        for (Property property : Property.values()) {
            unbroken |= property.bit();
        }
        explore();
        if (stopped.isEmpty()) {
            bringHome();
        }
        if (stopped.isEmpty() && pending.size() > 0) {
            witnesses.put(Property.KEY_STRANDED, new Witness(pending.get(0), (int) pendingDepth.get(0), false));
        }
        measure();
        return new Verification(
                expanded,
                moves,
                table.size(),
                stopped.isEmpty(),
                depth,
                peakBytes,
                heldBytes(),
                possible(),
                outcomes());
    }

    private void explore() {
        long home = expansion.number(scheme.inService());
        long start = expansion.number(scheme.start());
        table.add(start, 0);
        level.add(start);
        while (level.size() > 0 && stopped.isEmpty()) {
            expandLevel(home);
            LongList done = level;
            level = nextLevel;
            nextLevel = done;
            nextLevel.truncate(0);
            depth += level.size() > 0 && stopped.isEmpty() ? 1 : 0;
        }
    }

    private void expandLevel(long home) {
        for (int i = 0; i < level.size(); i++) {
            long state = level.get(i);
            if (watched.isPresent() && watched.get().test(expansion.state(state))) {
                fitting = Optional.of(new Witness(state, depth, false));
                stopped = Optional.of("what was looked for");
                return;
            }
            int count = expansion.of(state);
            count(count);
            int broken = expansion.brokenByState() & unbroken;
            if (broken != 0) {
                witness(broken, new Witness(state, depth, false));
            }
            boolean getsHome = state == home;
            for (int m = 0; m < count; m++) {
                used[expansion.rule[m]] = true;
                int brokenOnTheWay = expansion.brokenByMove(m) & unbroken;
                if (brokenOnTheWay != 0) {
                    witness(brokenOnTheWay, new Witness(state, depth, true));
                }
                long known = table.add(expansion.after[m], depth + 1);
                if (known == 0) {
                    nextLevel.add(expansion.after[m]);
                } else {
                    getsHome |= StateTable.isHome(known);
                }
            }
            if (getsHome) {
                table.setHome(state);
            } else {
                pending.add(state);
                pendingDepth.add(depth);
            }
            if (stopped.isPresent() || (i % REPORT_EVERY == 0 && !mayGoOn())) {
                return;
            }
        }
        mayGoOn();
    }

    /** Counts the state that was expanded last, and its moves, as often as there are states that it stands for. */
    private void count(int movesOut) {
        try {
            long standsFor = expansion.standsFor();
            expanded = Math.addExact(expanded, standsFor);
            moves = Math.addExact(moves, Math.multiplyExact(standsFor, movesOut));
        } catch (ArithmeticException overflow) {
            stopped = Optional.of("count of states past 9 quintillion");
        }
    }

    /** A broken state found now lies this deep, a broken move one deeper; a state met in the same level before stays the shorter one. */
    private void witness(int broken, Witness witness) {
        for (Property property : Property.values()) {
            if ((broken & property.bit()) != 0) {
                witnesses.put(property, witness);
            }
        }
        unbroken &= ~broken;
        if ((broken & unlessBroken) != 0) {
            stopped = Optional.of("a property that had to hold");
        }
    }

    /** Marks what gets home by way of a state that does, until nothing changes. */
    private void bringHome() {
        boolean descending = true;
        boolean changed = true;
        while (changed && pending.size() > 0) {
            changed = false;
            for (int k = 0; k < pending.size(); k++) {
                int i = descending ? pending.size() - 1 - k : k;
                long state = pending.get(i);
                int count = expansion.of(state);
                for (int m = 0; m < count; m++) {
                    if (StateTable.isHome(table.get(expansion.after[m]))) {
                        table.setHome(state);
                        changed = true;
                        break;
                    }
                }
                if (k % REPORT_EVERY == 0 && !mayGoOn()) {
                    return;
                }
            }
            dropHome();
            descending = !descending;
        }
    }

    private void dropHome() {
        int kept = 0;
        for (int i = 0; i < pending.size(); i++) {
            if (!StateTable.isHome(table.get(pending.get(i)))) {
                pending.set(kept, pending.get(i));
                pendingDepth.set(kept, pendingDepth.get(i));
                kept++;
            }
        }
        pending.truncate(kept);
        pendingDepth.truncate(kept);
    }

    private boolean mayGoOn() {
        measure();
        if (heldBytes() - table.bytes() + table.bytesToGrow() > memoryBytes) {
            stopped = Optional.of("memory of " + memoryBytes / 1_000_000 + " MB");
        } else if (numbering.isFull()) {
            stopped = Optional.of("size of the numbers of states");
        } else if (!progress.goOn(expanded, moves, depth)) {
            stopped = Optional.of("time given");
        }
        return stopped.isEmpty();
    }

    private long heldBytes() {
        return table.bytes()
                + level.bytes()
                + nextLevel.bytes()
                + pending.bytes()
                + pendingDepth.bytes()
                + numbering.bytes()
                + expansion.bytes();
    }

    private void measure() {
        peakBytes = Math.max(peakBytes, heldBytes() - table.bytes() + table.peakBytes());
    }

    private Set<Move> possible() {
        symmetry.spread(scheme, used);
        Set<Move> moves = new LinkedHashSet<>();
        for (int r = 0; r < used.length; r++) {
            if (used[r]) {
                moves.add(scheme.rules().get(r).move());
            }
        }
        return Collections.unmodifiableSet(moves);
    }

    private Map<Property, Verification.Outcome> outcomes() {
        Map<Property, Verification.Outcome> outcomes = new EnumMap<>(Property.class);
        for (Property property : Property.values()) {
            Witness witness = witnesses.get(property);
            if (witness != null) {
                outcomes.put(property, new Verification.Outcome.NotEnforced(path(property, witness)));
            } else {
                outcomes.put(
                        property,
                        stopped.<Verification.Outcome>map(Verification.Outcome.Undecided::new)
                                .orElseGet(() -> new Verification.Outcome.Enforced(expanded)));
            }
        }
        return Collections.unmodifiableMap(outcomes);
    }

    private List<Step> path(Property property, Witness witness) {
        List<Step> steps = path(witness);
        if (witness.byMove()) {
            State before = steps.isEmpty() ? scheme.start() : steps.getLast().after();
            steps.add(scheme.steps(before).stream()
                    .filter(s -> scheme.brokenBy(before, s.move()).contains(property))
                    .findFirst()
                    .orElseThrow());
        }
        return steps;
    }

    /** Real moves to a state that the witness stands for. */
    private List<Step> path(Witness witness) {
        List<Step> steps = new ArrayList<>();
        State state = scheme.start();
        for (long number : new WayBack(scheme, expansion, table).to(witness.before(), witness.depth())) {
            Step step = scheme.steps(state).stream()
                    .filter(s -> expansion.number(s.after()) == number)
                    .findFirst()
                    .orElseThrow();
            steps.add(step);
            state = step.after();
        }
        return steps;
    }
}
