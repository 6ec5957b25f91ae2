package org.varwright.comtrade;

import java.util.Arrays;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** The lines of a text one after the other, whatever their line ends, of which one is kept. */
final class TextRows {
    private static final int BUFFER_BYTES = 1 << 16;

    private final Source source;
    private final int longest;
    private byte[] buffer = new byte[BUFFER_BYTES];
    private int held;
    private long readUpTo;
    private int following;
    private boolean afterReturn;
    private int start;
    private int end;
    private int commas;
    private int line;
    private boolean ended;

    /**
     * Lines of a text.
     *
     * @param longest no line of it has more bytes
     */
    TextRows(Source source, int longest) {
        this.source = source;
        this.longest = longest;
    }

    void rewind() {
        held = 0;
        readUpTo = 0;
        following = 0;
        afterReturn = false;
        line = 0;
    }

    /**
     * Goes to the next line; false where there is none.
     *
     * @throws VarwrightException {@code RECORD_ROW_TOO_LONG}
     */
    boolean next() {
        if (afterReturn) {
            afterReturn = false;
            if (following == held) {
                more();
            }
            following += following < held && buffer[following] == '\n' ? 1 : 0;
        }
        line++;
        commas = 0;
        int at = following;
        while (true) {
            byte[] bytes = buffer;
            int last = held;
            int found = 0;
            while (at < last) {
                byte b = bytes[at];
                // commas are counted without a branch, which no processor could foresee
                found += b == ',' ? 1 : 0;
                if (b <= '\r' && (b == '\n' || b == '\r')) {
                    break;
                }
                at++;
            }
            commas += found;
            if (at < last) {
                afterReturn = bytes[at] == '\r';
                return row(at, true);
            }
            int kept = held - following;
            if (kept > longest) {
                throw new VarwrightException(
                        Message.RECORD_ROW_TOO_LONG, source.at(line, 1), Integer.toString(longest));
            }
            if (!more()) {
                return kept > 0 && row(held, false);
            }
            at = kept;
        }
    }

    private boolean row(int at, boolean isEnded) {
        start = following;
        end = at;
        ended = isEnded;
        following = isEnded ? at + 1 : at;
        while (end > start && NumberScanner.isBlank(buffer[end - 1])) {
            end--;
        }
        while (start < end && NumberScanner.isBlank(buffer[start])) {
            start++;
        }
        return true;
    }

    /** Puts what is not yet used to the front and reads on; false at the end. */
    private boolean more() {
        int kept = held - following;
        if (kept == buffer.length) {
            buffer = Arrays.copyOf(buffer, 2 * buffer.length);
        } else if (following > 0) {
            System.arraycopy(buffer, following, buffer, 0, kept);
        }
        following = 0;
        held = kept;
        int read = source.bytes().read(readUpTo, buffer, held, buffer.length - held);
        if (read <= 0) {
            return false;
        }
        readUpTo += read;
        held += read;
        return true;
    }

    /** First byte behind the line and its end, in the source. */
    long offset() {
        return readUpTo - held + following;
    }

    byte[] buffer() {
        return buffer;
    }

    /** First byte of the line in the buffer, blanks left out. */
    int start() {
        return start;
    }

    /** Behind its last byte, blanks and end-of-file marks left out. */
    int end() {
        return end;
    }

    boolean isBlank() {
        return start == end;
    }

    int commas() {
        return commas;
    }

    /** From 1. */
    int line() {
        return line;
    }

    /** Whether it ends with a carriage return, which may have a line feed behind it. */
    boolean isReturn() {
        return afterReturn;
    }

    /** Whether a line end follows. */
    boolean isEnded() {
        return ended;
    }
}
