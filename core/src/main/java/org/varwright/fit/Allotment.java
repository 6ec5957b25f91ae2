package org.varwright.fit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;

/** Which stages can be made whole with the spares there are: as many as possible, those that need fewest first. */
final class Allotment {
    private Allotment() {}

    /** The stages that can be made whole together, in the order of the bank; those that need nothing are among them. */
    static List<Stage> whole(Bank bank, Set<UnitPosition> open, List<Spare> spares) {
        List<Stage> byNeed = new ArrayList<>(bank.stages());
        byNeed.sort(Comparator.comparingLong(s -> need(s, open)));
        List<Stage> whole = new ArrayList<>();
        for (Stage stage : byNeed) {
            List<Stage> trial = new ArrayList<>(whole);
            trial.add(stage);
            if (allFilled(bank, trial, open, spares)) {
                whole.add(stage);
            }
        }
        return bank.stages().stream().filter(whole::contains).toList();
    }

    static long need(Stage stage, Set<UnitPosition> open) {
        return stage.positions().stream().filter(open::contains).count();
    }

    /** Whether every open position of the stages can get a spare of its own that fits: a matching by augmenting paths. */
    private static boolean allFilled(Bank bank, List<Stage> stages, Set<UnitPosition> open, List<Spare> spares) {
        List<Stage> places = new ArrayList<>();
        for (Stage stage : stages) {
            for (long n = need(stage, open); n > 0; n--) {
                places.add(stage);
            }
        }
        int[] placeOf = new int[spares.size()];
        Arrays.fill(placeOf, -1);
        for (int p = 0; p < places.size(); p++) {
            if (!augment(bank, places, spares, p, placeOf, new boolean[spares.size()])) {
                return false;
            }
        }
        return true;
    }

    private static boolean augment(
            Bank bank, List<Stage> places, List<Spare> spares, int place, int[] placeOf, boolean[] seen) {
        for (int s = 0; s < spares.size(); s++) {
            if (seen[s]
                    || Compatibility.reason(bank, places.get(place), spares.get(s))
                            .isPresent()) {
                continue;
            }
            seen[s] = true;
            if (placeOf[s] < 0 || augment(bank, places, spares, placeOf[s], placeOf, seen)) {
                placeOf[s] = place;
                return true;
            }
        }
        return false;
    }
}
