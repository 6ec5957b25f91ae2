package org.varwright.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** What an option says of several things, {@code NAME=VALUE} each: of no thing twice, for one of two would be wrong. */
final class NamedValues {
    private NamedValues() {}

    /**
     * Names with their values, in the order in which they were typed.
     *
     * @throws VarwrightException {@code OPTION_PAIR}, {@code OPTION_TWICE}, naming the option
     */
    static Map<String, String> of(String option, List<String> typed) {
        Place place = new Place("", 0, 0, option);
        Map<String, String> values = new LinkedHashMap<>();
        for (String pair : typed) {
            int at = pair.indexOf('=');
            if (at < 1 || at == pair.length() - 1) {
                throw new VarwrightException(Message.OPTION_PAIR, place, pair);
            }
            String value = pair.substring(at + 1);
            String earlier = values.putIfAbsent(pair.substring(0, at), value);
            if (earlier != null) {
                throw new VarwrightException(Message.OPTION_TWICE, place, pair.substring(0, at), earlier, value);
            }
        }
        return values;
    }
}
