package org.varwright.interlock;

import java.util.Collections;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Visits every state that any order of moves can reach, and says of every property whether one of them breaks it.
 *
 * <p><b>Model.</b> Breadth first over packed states, so that the first way found to a broken property is a shortest one; getting home is an induction over depth
 * with sweeps over what it leaves open (ILK-4, ILK-5, ILK-7).
 */
public final class Verifier {
    private static final int REPORT_EVERY = 1 << 16;

    private final Scheme scheme;
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
    private int depth;
    /** Bits of the properties that nothing has broken so far. */
    private int unbroken;

    private long peakBytes;
    private Optional<String> stopped = Optional.empty();

    /**
     * The first way found to break a property.
     *
     * @param before the state in which it is broken, or out of which the breaking move leads
     * @param depth of that state
     * @param move the breaking move; empty where the state itself breaks it
     */
    private record Witness(long before, int depth, Optional<Move> move) {}

    /** Told now and then how far the search is. */
    public interface Progress {
        /** Says nothing and never stops. */
        Progress SILENT = (states, moves, depth) -> true;

        /** Whether to go on; where not, what is open stays undecided. */
        boolean goOn(long states, long moves, int depth);
    }

    private Verifier(Scheme scheme, long memoryBytes, Progress progress, int unlessBroken) {
        this.scheme = scheme;
        this.memoryBytes = memoryBytes;
        this.progress = progress;
        this.unlessBroken = unlessBroken;
        used = new boolean[scheme.rules().size()];
        numbering = new Numbering(scheme.layout().isNarrow());
        expansion = new Expansion(scheme, numbering);
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
        return new Verifier(scheme, memoryBytes, progress, unlessBroken).run();
    }

    private Verification run() {
        for (Property property : Property.values()) {
            unbroken |= property.bit();
        }
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
        if (stopped.isEmpty()) {
            bringHome();
        }
        if (stopped.isEmpty() && pending.size() > 0) {
            witnesses.put(
                    Property.KEY_STRANDED, new Witness(pending.get(0), (int) pendingDepth.get(0), Optional.empty()));
        }
        measure();
        return new Verification(
                table.size(), moves, stopped.isEmpty(), depth, peakBytes, heldBytes(), possible(), outcomes());
    }

    private void expandLevel(long home) {
        for (int i = 0; i < level.size(); i++) {
            long state = level.get(i);
            int count = expansion.of(state);
            moves += count;
            int broken = expansion.brokenByState() & unbroken;
            if (broken != 0) {
                witness(broken, new Witness(state, depth, Optional.empty()));
            }
            boolean getsHome = state == home;
            for (int m = 0; m < count; m++) {
                used[expansion.rule[m]] = true;
                int brokenOnTheWay = expansion.brokenByMove(m) & unbroken;
                if (brokenOnTheWay != 0) {
                    Move move = scheme.rules().get(expansion.rule[m]).move();
                    witness(brokenOnTheWay, new Witness(state, depth, Optional.of(move)));
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
        } else if (!progress.goOn(table.size(), moves, depth)) {
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
                outcomes.put(property, new Verification.Outcome.NotEnforced(path(witness)));
            } else {
                outcomes.put(
                        property,
                        stopped.<Verification.Outcome>map(Verification.Outcome.Undecided::new)
                                .orElseGet(() -> new Verification.Outcome.Enforced(table.size())));
            }
        }
        return Collections.unmodifiableMap(outcomes);
    }

    private List<Step> path(Witness witness) {
        List<Move> moves = new WayBack(scheme, expansion, table).from(witness.before(), witness.depth());
        witness.move().ifPresent(moves::add);
        return Steps.replay(scheme, moves);
    }
}
