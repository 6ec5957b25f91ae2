package org.varwright.comtrade;

import java.util.List;
import java.util.Optional;

/**
 * What is wanted of a record.
 *
 * @param channels names or numbers of analog channels; all where empty
 * @param fromSeconds first time wanted, from the record's first sample [s]
 * @param toSeconds last time wanted [s]
 * @param valuesAtMost so many values may be kept, eight bytes each, times included
 * @param codePage of the names; found out where empty
 * @param codePages that are known beside the reader's own
 */
public record ReadOptions(
        List<String> channels,
        double fromSeconds,
        double toSeconds,
        long valuesAtMost,
        Optional<String> codePage,
        CodePages codePages) {
    /** Everything, up to 20 million values. */
    public static final ReadOptions ALL = new ReadOptions(
            List.of(),
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY,
            20_000_000L,
            Optional.empty(),
            CodePages.NONE);

    public ReadOptions {
        channels = List.copyOf(channels);
    }

    public ReadOptions channels(List<String> wanted) {
        return new ReadOptions(wanted, fromSeconds, toSeconds, valuesAtMost, codePage, codePages);
    }

    public ReadOptions window(double from, double to) {
        return new ReadOptions(channels, from, to, valuesAtMost, codePage, codePages);
    }

    public ReadOptions atMost(long values) {
        return new ReadOptions(channels, fromSeconds, toSeconds, values, codePage, codePages);
    }

    public ReadOptions codePage(Optional<String> name, CodePages known) {
        return new ReadOptions(channels, fromSeconds, toSeconds, valuesAtMost, name, known);
    }

    boolean isWindow() {
        return fromSeconds > Double.NEGATIVE_INFINITY || toSeconds < Double.POSITIVE_INFINITY;
    }
}
