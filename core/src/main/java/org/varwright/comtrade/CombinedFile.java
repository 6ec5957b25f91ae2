package org.varwright.comtrade;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** Cuts a combined file ({@code .cff}, 2013) into its parts, in bytes: its samples may hold anything, also what looks like a separator. */
final class CombinedFile {
    private static final int LONGEST_LINE = 1 << 20;

    private final Source file;
    private final Remarks remarks;
    private final TextRows rows;
    private Optional<Source> configuration = Optional.empty();
    private Optional<Source> header = Optional.empty();
    private Optional<Source> information = Optional.empty();
    private String open = "";
    private long openFrom;
    private int openLine;

    private CombinedFile(Source file, Remarks remarks) {
        this.file = file;
        this.remarks = remarks;
        this.rows = new TextRows(file, LONGEST_LINE);
    }

    /**
     * Its parts.
     *
     * @throws VarwrightException {@code RECORD_CFF_PART} where the configuration or the data are missing, {@code RECORD_CFF_BASE64}
     */
    static RecordFiles split(Source file, Remarks remarks) {
        return new CombinedFile(file, remarks).split();
    }

    private RecordFiles split() {
        long lineFrom = 0L;
        while (rows.next()) {
            String line = separator();
            if (!line.isEmpty()) {
                String type = type(line);
                close(lineFrom);
                if (type.startsWith("DAT")) {
                    return withData(type);
                }
                open = type.isEmpty() && configuration.isEmpty() ? "CFG" : type;
                openFrom = afterLine();
                openLine = rows.line();
            }
            lineFrom = afterLine();
        }
        throw new VarwrightException(
                Message.RECORD_CFF_PART, file.whole(), configuration.isEmpty() && !open.equals("CFG") ? "CFG" : "DAT");
    }

    /** First byte of the next line: a carriage return may have its line feed still in front. */
    private long afterLine() {
        byte[] one = new byte[1];
        long offset = rows.offset();
        boolean pair = rows.isReturn() && file.bytes().read(offset, one, 0, 1) == 1 && one[0] == '\n';
        return pair ? offset + 1 : offset;
    }

    /** The line where it is a separator; empty where it is none. */
    private String separator() {
        int start = rows.start();
        byte[] buffer = rows.buffer();
        if (rows.line() == 1 && rows.end() - start > 3 && (buffer[start] & 0xFF) == 0xEF) {
            start += 3;
            remarks.add(Message.RECORD_BOM, file.at(1, 1));
        }
        if (rows.end() - start < 5 || rows.end() - start > 200 || buffer[start] != '-' || buffer[start + 1] != '-') {
            return "";
        }
        String line = new String(buffer, start, rows.end() - start, StandardCharsets.ISO_8859_1);
        return line.toLowerCase(Locale.ROOT).contains("file type") ? line : "";
    }

    /** What a separator names, such as {@code CFG} or {@code DAT BINARY: 1234}; whatever hyphens, blanks and colons are around it. */
    private String type(String line) {
        int from = line.toLowerCase(Locale.ROOT).indexOf("file type") + "file type".length();
        int to = line.length();
        while (to > from && (line.charAt(to - 1) == '-' || line.charAt(to - 1) == ' ')) {
            to--;
        }
        while (from < to && (line.charAt(from) == ':' || line.charAt(from) == ' ')) {
            from++;
        }
        String type = line.substring(from, to).strip().toUpperCase(Locale.ROOT);
        String standard = "--- file type: " + line.substring(from, to).strip() + " ---";
        if (!line.equals(standard) || type.isEmpty()) {
            remarks.add(Message.RECORD_CFF_SEPARATOR, file.at(rows.line(), 1), line);
        }
        return type;
    }

    /** Ends the part that is open in front of a byte. */
    private void close(long to) {
        if (open.isEmpty()) {
            return;
        }
        Source part = new Source(file.name(), file.bytes().part(openFrom, to - openFrom), openLine);
        switch (open) {
            case "CFG" -> configuration = Optional.of(part);
            case "HDR" -> header = Optional.of(part);
            case "INF" -> information = Optional.of(part);
            default -> remarks.add(Message.RECORD_CFF_UNKNOWN, file.at(openLine, 1), open);
        }
        open = "";
    }

    private RecordFiles withData(String type) {
        if (configuration.isEmpty()) {
            throw new VarwrightException(Message.RECORD_CFF_PART, file.whole(), "CFG");
        }
        if (type.contains("BASE64")) {
            throw new VarwrightException(Message.RECORD_CFF_BASE64, file.at(rows.line(), 1));
        }
        int colon = type.indexOf(':');
        Optional<DataFormat> format =
                DataFormat.parse(type.substring("DAT".length(), colon < 0 ? type.length() : colon));
        long from = afterLine();
        long rest = file.bytes().size() - from;
        long length = rest;
        if (format.isEmpty()) {
            remarks.add(Message.RECORD_CFF_FORMAT, file.at(rows.line(), 1), type);
        } else if (format.get() != DataFormat.ASCII) {
            long stated = colon < 0 ? -1L : count(type.substring(colon + 1));
            if (stated < 0L) {
                remarks.add(Message.RECORD_CFF_NO_COUNT, file.at(rows.line(), 1), Long.toString(rest));
            } else if (stated > rest) {
                remarks.add(
                        Message.RECORD_CFF_CUT, file.at(rows.line(), 1), Long.toString(stated), Long.toString(rest));
            } else {
                length = stated;
            }
        }
        Source data = new Source(file.name(), file.bytes().part(from, length), rows.line());
        return new RecordFiles(configuration.get(), data, header, information, format);
    }

    /** A whole number of up to 15 digits; -1 where it is none. */
    private static long count(String text) {
        String digits = text.strip();
        if (digits.isEmpty() || digits.length() > 15) {
            return -1L;
        }
        long count = 0L;
        for (int i = 0; i < digits.length(); i++) {
            char c = digits.charAt(i);
            if (c < '0' || c > '9') {
                return -1L;
            }
            count = count * 10 + (c - '0');
        }
        return count;
    }
}
