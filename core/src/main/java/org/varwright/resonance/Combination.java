package org.varwright.resonance;

import java.util.ArrayList;
import java.util.List;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * Stages that are on together.
 *
 * @param name in words; where stages built alike stand for each other, such as {@code 1 of stage 1, stage 2}
 * @param stages that are on, of each set of stages built alike the first ones
 */
public record Combination(String name, List<StageModel> stages) {
    /** More combinations than this are not looked at one by one. */
    static final int MOST = 4096;

    public Combination {
        stages = List.copyOf(stages);
    }

    /** Names of the stages that are on. */
    public List<String> stageNames() {
        return stages.stream().map(s -> s.stage().name()).toList();
    }

    /** Just these stages. */
    public static Combination of(List<StageModel> stages) {
        return new Combination(
                String.join(" + ", stages.stream().map(s -> s.stage().name()).toList()), stages);
    }

    /**
     * Every combination of one or more stages; of stages built alike only how many of them are on.
     *
     * @throws VarwrightException {@code COMBINATIONS_TOO_MANY}
     */
    public static List<Combination> all(List<StageModel> models) {
        List<List<StageModel>> sets = new ArrayList<>();
        for (StageModel model : models) {
            sets.stream()
                    .filter(set -> set.getFirst().isAlike(model))
                    .findFirst()
                    .ifPresentOrElse(set -> set.add(model), () -> sets.add(new ArrayList<>(List.of(model))));
        }
        double count = 1.0;
        for (List<StageModel> set : sets) {
            count *= set.size() + 1.0;
        }
        if (count - 1.0 > MOST) {
            throw new VarwrightException(
                    Message.COMBINATIONS_TOO_MANY,
                    Place.NOWHERE,
                    String.valueOf(Math.round(count - 1.0)),
                    String.valueOf(MOST));
        }
        List<Combination> all = new ArrayList<>();
        int[] on = new int[sets.size()];
        while (next(on, sets)) {
            all.add(combination(on, sets));
        }
        return all;
    }

    private static boolean next(int[] on, List<List<StageModel>> sets) {
        for (int i = 0; i < on.length; i++) {
            if (on[i] < sets.get(i).size()) {
                on[i]++;
                return true;
            }
            on[i] = 0;
        }
        return false;
    }

    private static Combination combination(int[] on, List<List<StageModel>> sets) {
        List<String> names = new ArrayList<>();
        List<StageModel> stages = new ArrayList<>();
        for (int i = 0; i < on.length; i++) {
            List<StageModel> set = sets.get(i);
            stages.addAll(set.subList(0, on[i]));
            List<String> all = set.stream().map(s -> s.stage().name()).toList();
            if (on[i] == set.size()) {
                names.add(String.join(" + ", all));
            } else if (on[i] > 0) {
                names.add(on[i] + " of (" + String.join(", ", all) + ")");
            }
        }
        return new Combination(String.join(" + ", names), stages);
    }
}
