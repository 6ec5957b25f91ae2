package org.varwright.fit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;

/**
 * Some stages of a bank as a {@link Puzzle}, and the way back from numbers to names.
 *
 * @param puzzle the numbers
 * @param start what is where before the search
 * @param openPositions [group] positions to be filled, in order
 */
record Board(Puzzle puzzle, Arrangement start, List<List<UnitPosition>> openPositions) {

    /**
     * Sets the board up.
     *
     * @param bank the bank
     * @param stages in play
     * @param start what is where; the contents of {@code open} are ignored
     * @param open positions to be filled
     * @param fixed positions that are not touched
     * @param spares that may be used
     */
    static Board of(
            Bank bank,
            List<Stage> stages,
            Arrangement start,
            Set<UnitPosition> open,
            Set<UnitPosition> fixed,
            List<Spare> spares) {
        List<StageModel> models = new ArrayList<>();
        List<Integer> stageOf = new ArrayList<>();
        List<Integer> localOf = new ArrayList<>();
        Map<UnitPosition, Integer> groupOf = new LinkedHashMap<>();
        for (Stage stage : stages) {
            StageModel model = StageModel.of(bank, stage);
            int first = stageOf.size();
            for (int g = 0; g < model.groupCount; g++) {
                stageOf.add(models.size());
                localOf.add(g);
            }
            models.add(model);
            stage.positions().forEach(p -> groupOf.put(p, first + model.groupOf(p)));
        }
        double[] kept = new double[stageOf.size()];
        int[] openCount = new int[kept.length];
        List<List<UnitPosition>> openPositions = new ArrayList<>();
        IntStream.range(0, kept.length).forEach(g -> openPositions.add(new ArrayList<>()));
        Map<String, List<Fitted>> classes = new LinkedHashMap<>();
        groupOf.forEach((position, group) -> {
            if (open.contains(position)) {
                openCount[group]++;
                openPositions.get(group).add(position);
                return;
            }
            kept[group] += start.farads(position);
            if (!fixed.contains(position)
                    && start.at(position) instanceof Content.InPlace u
                    && u.unit().role() == Fitted.Role.KEPT
                    && u.unit().capacitanceFarads() > 0.0) {
                classes.computeIfAbsent(group + " " + u.unit().capacitanceFarads(), k -> new ArrayList<>())
                        .add(u.unit());
            }
        });
        List<Puzzle.Movable> movables = new ArrayList<>();
        for (List<Fitted> members : classes.values()) {
            UnitPosition at = members.getFirst().at();
            Integer group = groupOf.get(at);
            UnitType type = bank.stage(at.stage()).orElseThrow().unit();
            if (group != null) {
                movables.add(new Puzzle.Movable(
                        group, members.getFirst().capacitanceFarads(), members, fits(bank, stages, type)));
            }
        }
        return new Board(
                new Puzzle(
                        models,
                        stageOf.stream().mapToInt(Integer::intValue).toArray(),
                        localOf.stream().mapToInt(Integer::intValue).toArray(),
                        kept,
                        openCount,
                        movables,
                        shelf(bank, stages, spares)),
                start,
                openPositions);
    }

    /** Units of a stage fit that stage always, other stages by their type. */
    private static boolean[] fits(Bank bank, List<Stage> stages, UnitType type) {
        boolean[] fits = new boolean[stages.size()];
        for (int s = 0; s < fits.length; s++) {
            fits[s] = Compatibility.typeReason(bank, stages.get(s), type).isEmpty();
        }
        return fits;
    }

    private static List<Puzzle.Shelf> shelf(Bank bank, List<Stage> stages, List<Spare> spares) {
        Map<String, List<Spare>> classes = new LinkedHashMap<>();
        spares.stream()
                .sorted(Comparator.comparing(Spare::serial))
                .forEach(s -> classes.computeIfAbsent(
                                s.unit().name() + " " + new Content.FromStock(s).farads(), k -> new ArrayList<>())
                        .add(s));
        List<Puzzle.Shelf> shelf = new ArrayList<>();
        for (List<Spare> members : classes.values()) {
            Spare first = members.getFirst();
            boolean[] fits = new boolean[stages.size()];
            boolean any = false;
            for (int s = 0; s < fits.length; s++) {
                fits[s] = Compatibility.reason(bank, stages.get(s), first).isEmpty();
                any |= fits[s];
            }
            if (any) {
                shelf.add(new Puzzle.Shelf(new Content.FromStock(first).farads(), members, fits));
            }
        }
        return shelf;
    }

    /** The plan with names: of equal units the first by name. */
    Arrangement realise(Found found) {
        Map<UnitPosition, Content> changes = new HashMap<>();
        List<List<UnitPosition>> free = new ArrayList<>();
        openPositions.forEach(p -> free.add(new ArrayList<>(p)));
        List<List<Content>> arriving = new ArrayList<>();
        IntStream.range(0, puzzle.groupCount()).forEach(g -> arriving.add(new ArrayList<>()));
        int[] taken = new int[puzzle.movables().size()];
        for (int i = 0; i < found.picked().length; i++) {
            int k = found.picked()[i];
            Puzzle.Movable unit = puzzle.movables().get(k);
            Fitted member = unit.members().get(taken[k]++);
            free.get(unit.group()).add(member.at());
            if (found.goesTo()[i] != Found.OUT) {
                arriving.get(found.goesTo()[i]).add(new Content.InPlace(member));
            }
        }
        int[] used = new int[puzzle.shelf().size()];
        for (int i = 0; i < found.slotGroup().length; i++) {
            int s = found.slotShelf()[i];
            arriving.get(found.slotGroup()[i])
                    .add(new Content.FromStock(puzzle.shelf().get(s).members().get(used[s]++)));
        }
        List<UnitPosition> order = new ArrayList<>(start.contents().keySet());
        for (int g = 0; g < free.size(); g++) {
            List<UnitPosition> places = free.get(g);
            places.sort(Comparator.comparingInt(order::indexOf));
            for (int i = 0; i < places.size(); i++) {
                changes.put(
                        places.get(i),
                        i < arriving.get(g).size() ? arriving.get(g).get(i) : new Content.Nothing());
            }
        }
        return start.with(changes);
    }
}
