package org.varwright.survey;

import java.util.List;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;

/**
 * What a reading at a reactor, a switch pole, a leg or a line says.
 *
 * @param name of the place
 * @param row of the table
 * @param what was read, in words
 * @param shown the value as printed
 * @param verdict what comes of it
 * @param reason one plain sentence
 * @param checks against limits
 */
public record SpotSurvey(
        String name, int row, String what, String shown, Verdict verdict, String reason, List<Check> checks) {
    public SpotSurvey {
        checks = List.copyOf(checks);
    }
}
