package org.varwright.comtrade;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;

/** Collects what was forgiven; of many alike it keeps the first few and counts the rest. */
final class Remarks {
    private static final int ALIKE = 3;

    private final Map<Message, List<Problem>> kept = new LinkedHashMap<>();
    private final Map<Message, Long> counts = new LinkedHashMap<>();

    void add(Message message, Place place, String... arguments) {
        List<Problem> alike = kept.computeIfAbsent(message, m -> new ArrayList<>());
        if (alike.size() < ALIKE) {
            alike.add(Problem.of(message, place, arguments));
        }
        counts.merge(message, 1L, Long::sum);
    }

    List<Problem> list() {
        List<Problem> all = new ArrayList<>();
        kept.forEach((message, alike) -> {
            all.addAll(alike);
            long more = counts.getOrDefault(message, 0L) - alike.size();
            if (more > 0L) {
                Place place = alike.get(0).place();
                all.add(Problem.of(Message.RECORD_MORE_ALIKE, new Place(place.file(), 0, 0, ""), Long.toString(more)));
            }
        });
        return all;
    }
}
