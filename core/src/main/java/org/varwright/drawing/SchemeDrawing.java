package org.varwright.drawing;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;

/** Makes a state of an interlocking scheme into one that can be drawn. */
public final class SchemeDrawing {
    private SchemeDrawing() {}

    /**
     * The drawn state.
     *
     * @param bank whose scheme it is
     * @param name of the state, for the title block
     */
    public static DrawingState state(Bank bank, Scheme scheme, State state, String name) {
        List<DrawingState.Bolt> bolts = scheme.boltsExtended(state).stream()
                .map(e -> e ? DrawingState.Bolt.EXTENDED : DrawingState.Bolt.WITHDRAWN)
                .toList();
        return DrawingState.of(
                bank,
                name,
                scheme.positions(state),
                chosen(scheme.doors(state)),
                bolts,
                chosen(scheme.exchangesGiven(state)),
                chosen(scheme.charges(state)));
    }

    private static Set<String> chosen(Map<String, Boolean> all) {
        Set<String> chosen = new LinkedHashSet<>();
        all.forEach((name, is) -> {
            if (is) {
                chosen.add(name);
            }
        });
        return chosen;
    }
}
