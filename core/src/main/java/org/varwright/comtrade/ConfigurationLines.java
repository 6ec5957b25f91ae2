package org.varwright.comtrade;

import java.util.ArrayList;
import java.util.List;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** The lines of a configuration, whatever their line ends; blank lines and end-of-file marks left out. */
final class ConfigurationLines {
    /** Some half a million channels; the largest configurations in the field have a few thousand. */
    private static final long LARGEST_BYTES = 32L << 20;
    /** Lines take more memory than their bytes. */
    private static final int MOST_LINES = 1_000_000;

    private ConfigurationLines() {}

    /**
     * Cuts a configuration.
     *
     * @throws VarwrightException {@code RECORD_CFG_TOO_LARGE}, {@code RECORD_CFG_LINES}, {@code RECORD_UTF16}, {@code RECORD_CODE_PAGE}
     */
    static List<ConfigurationLine> of(Source source, ReadOptions options, Remarks remarks) {
        if (source.bytes().size() > LARGEST_BYTES) {
            throw new VarwrightException(
                    Message.RECORD_CFG_TOO_LARGE,
                    source.whole(),
                    Long.toString(source.bytes().size()),
                    Long.toString(LARGEST_BYTES));
        }
        byte[] bytes = source.bytes().all();
        int start = 0;
        if (bytes.length >= 2
                && (((bytes[0] & 0xFF) == 0xFF && (bytes[1] & 0xFF) == 0xFE)
                        || ((bytes[0] & 0xFF) == 0xFE && (bytes[1] & 0xFF) == 0xFF))) {
            throw new VarwrightException(Message.RECORD_UTF16, source.whole());
        }
        if (bytes.length >= 3 && (bytes[0] & 0xFF) == 0xEF && (bytes[1] & 0xFF) == 0xBB && (bytes[2] & 0xFF) == 0xBF) {
            start = 3;
            remarks.add(Message.RECORD_BOM, source.at(1, 1));
        }
        TextDecoder decoder = decoder(source, bytes, options, remarks);
        return cut(source, bytes, start, decoder, remarks);
    }

    private static TextDecoder decoder(Source source, byte[] bytes, ReadOptions options, Remarks remarks) {
        if (options.codePage().isPresent()) {
            TextDecoder chosen = TextDecoder.of(options.codePage().get(), options.codePages());
            if (!chosen.isKnown()) {
                throw new VarwrightException(
                        Message.RECORD_CODE_PAGE,
                        source.whole(),
                        options.codePage().get());
            }
            return chosen;
        }
        TextDecoder guess = TextDecoder.looksLike(bytes, options.codePages());
        if (!guess.isKnown()) {
            remarks.add(Message.RECORD_CODE_PAGE_NOT_HERE, source.whole(), guess.name());
        } else if (guess.isGuess()) {
            remarks.add(Message.RECORD_CODE_PAGE_GUESSED, source.whole(), guess.name());
        }
        return guess;
    }

    private static List<ConfigurationLine> cut(
            Source source, byte[] bytes, int from, TextDecoder decoder, Remarks remarks) {
        List<ConfigurationLine> lines = new ArrayList<>();
        int number = 1;
        int start = from;
        boolean[] ends = new boolean[3];
        int blank = 0;
        int blankBefore = 0;
        NumberScanner scanner = new NumberScanner();
        for (int i = from; i <= bytes.length; i++) {
            boolean isEnd = i == bytes.length || bytes[i] == '\n' || bytes[i] == '\r';
            if (!isEnd) {
                continue;
            }
            if (isBlank(bytes, start, i)) {
                blank++;
            } else {
                if (lines.size() == MOST_LINES) {
                    throw new VarwrightException(
                            Message.RECORD_CFG_LINES, source.at(number, 1), Integer.toString(MOST_LINES));
                }
                lines.add(ConfigurationLine.cut(bytes, start, i, number, decoder, scanner));
                blankBefore += blank;
                blank = 0;
            }
            if (i < bytes.length) {
                boolean pair = bytes[i] == '\r' && i + 1 < bytes.length && bytes[i + 1] == '\n';
                ends[pair ? 0 : bytes[i] == '\n' ? 1 : 2] = true;
                i += pair ? 1 : 0;
            }
            number++;
            start = i + 1;
        }
        if ((ends[0] ? 1 : 0) + (ends[1] ? 1 : 0) + (ends[2] ? 1 : 0) > 1) {
            remarks.add(Message.RECORD_LINE_ENDS, source.whole());
        }
        if (blankBefore > 0) {
            remarks.add(Message.RECORD_BLANK_LINES, source.whole(), Integer.toString(blankBefore));
        }
        return lines;
    }

    private static boolean isBlank(byte[] bytes, int from, int to) {
        for (int i = from; i < to; i++) {
            if (!NumberScanner.isBlank(bytes[i])) {
                return false;
            }
        }
        return true;
    }
}
