package org.varwright.job;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.varwright.bank.Bank;
import org.varwright.bank.Isolation;
import org.varwright.drawing.ConductorState;
import org.varwright.drawing.DrawingState;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.SavedState;

/** The bank of a job as its confirmed steps leave it, to be drawn. */
public final class JobDrawing {
    private JobDrawing() {}

    /**
     * What is where after the last confirmed step. An order that has ended, by a deviation or otherwise, leaves nothing known: all of it is drawn as unknown, which counts as live.
     *
     * @return empty before the job is opened
     */
    public static Optional<DrawingState> of(Job job) {
        return job.bank().map(bank -> {
            Optional<Order> latest = job.orders().isEmpty()
                    ? Optional.empty()
                    : Optional.of(job.orders().getLast());
            if (latest.isEmpty()) {
                return DrawingState.atStart(bank);
            }
            return latest.get().standing() == Order.Standing.CURRENT
                    ? after(bank, latest.get())
                    : new DrawingState(
                            "not known: count it as live", Map.of(), Map.of(), Map.of(), List.of(), Map.of(), Map.of());
        });
    }

    private static DrawingState after(Bank bank, Order order) {
        int done = order.confirmed().size();
        SavedState saved = order.work().stateAfter(done);
        String name = done == 0 ? "before step 1" : "after step " + done;
        DrawingState drawn = DrawingState.of(
                bank,
                name,
                saved.positions(),
                whereTrue(saved.openDoors()),
                bolts(bank, saved),
                whereTrue(saved.exchanges()),
                whereTrue(saved.charges()));
        if (done == 0) {
            return drawn;
        }
        // Portable grounds are in the step's own list, and in no position of a device.
        Map<String, ConductorState> conductors = new LinkedHashMap<>(drawn.conductors());
        OrderStep last = order.work().steps().get(done - 1);
        last.conductors().forEach((conductor, is) -> conductors.put(conductor, drawn(is)));
        return new DrawingState(
                name, drawn.positions(), drawn.doors(), conductors, drawn.bolts(), drawn.exchanges(), drawn.keys());
    }

    private static Set<String> whereTrue(Map<String, Boolean> flags) {
        return flags.entrySet().stream()
                .filter(Map.Entry::getValue)
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
    }

    private static List<DrawingState.Bolt> bolts(Bank bank, SavedState saved) {
        return bank.isolation().map(Isolation::locks).orElse(List.of()).stream()
                .map(lock -> saved.bolt(lock)
                        .map(out -> out ? DrawingState.Bolt.EXTENDED : DrawingState.Bolt.WITHDRAWN)
                        .orElse(DrawingState.Bolt.UNKNOWN))
                .toList();
    }

    private static ConductorState drawn(org.varwright.interlock.ConductorState state) {
        return switch (state) {
            case LIVE -> ConductorState.LIVE;
            case LIVE_LOW_VOLTAGE -> ConductorState.LIVE_LOW_VOLTAGE;
            case GROUNDED -> ConductorState.GROUNDED;
            case CHARGED -> ConductorState.CHARGED;
            case FLOATING -> ConductorState.FLOATING;
        };
    }
}
