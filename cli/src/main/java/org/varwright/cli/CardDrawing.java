package org.varwright.cli;

import java.util.ArrayList;
import java.util.List;
import org.varwright.drawing.CardMove;
import org.varwright.drawing.DrawingOptions;
import org.varwright.drawing.SequenceCard;
import org.varwright.interlock.Move;
import org.varwright.isolation.OrderOfWork;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.Task;

/** The sequence card of an order of work as a drawing: its moves as rows, its keys as lanes. */
final class CardDrawing {
    private CardDrawing() {}

    static String of(OrderOfWork order) {
        List<CardMove> rows = new ArrayList<>();
        for (OrderStep step : order.steps()) {
            for (Move move : moves(step)) {
                rows.add(CardMove.of(step.n(), move));
            }
        }
        return SequenceCard.draw(
                order.bank(), String.join(", ", order.access()) + ": in and back", rows, DrawingOptions.PORTRAIT);
    }

    private static List<Move> moves(OrderStep step) {
        if (step.task() instanceof Task.Moved moved) {
            return List.of(moved.move());
        }
        if (step.task() instanceof Task.Energized energized) {
            return List.of(energized.move());
        }
        return step.task() instanceof Task.Held held ? held.waits() : List.of();
    }
}
