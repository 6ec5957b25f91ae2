package org.varwright.sheet;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * The parts of a workbook that hold text, unpacked within limits: what was counted is what is read, so that no directory at the end of the file can name
 * other parts than those that were checked.
 */
final class ZipParts {
    /** Unpacked text of one workbook at most [bytes]. */
    static final int MOST_BYTES = 48_000_000;

    /** Files of readings are small; a larger one is the wrong file [bytes]. */
    static final int MOST_PACKED_BYTES = 12_000_000;

    private static final int MOST_PARTS = 2_000;

    private final Map<String, byte[]> parts;

    private ZipParts(Map<String, byte[]> parts) {
        this.parts = parts;
    }

    static boolean is(byte[] content) {
        return content.length > 3 && content[0] == 'P' && content[1] == 'K' && content[2] == 3 && content[3] == 4;
    }

    /**
     * Unpacks a workbook.
     *
     * @throws VarwrightException {@code TABLE_TOO_LARGE}, {@code WORKBOOK_…}
     */
    static ZipParts of(String file, byte[] content) {
        Place whole = new Place(file, 0, 0, "");
        if (content.length > MOST_PACKED_BYTES) {
            throw new VarwrightException(
                    Message.TABLE_TOO_LARGE, whole, String.valueOf(content.length), String.valueOf(MOST_PACKED_BYTES));
        }
        Map<String, byte[]> parts = new LinkedHashMap<>();
        try {
            unpack(content, whole, parts);
        } catch (VarwrightException e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            // a file that was cut off or damaged: the library says so in many ways
            throw broken(whole, "it ends too early or is damaged");
        }
        ZipParts unpacked = new ZipParts(parts);
        unpacked.requireWorkbook(whole);
        return unpacked;
    }

    /** By the directory at the end of the file: what stands before each part need not give its size. */
    private static void unpack(byte[] content, Place whole, Map<String, byte[]> parts) throws IOException {
        int left = MOST_BYTES;
        int count = 0;
        try (ZipFile zip = ZipFile.builder()
                .setSeekableByteChannel(new SeekableInMemoryByteChannel(content))
                .get()) {
            for (ZipArchiveEntry entry : Collections.list(zip.getEntries())) {
                if (++count > MOST_PARTS) {
                    throw new VarwrightException(Message.WORKBOOK_TOO_LARGE, whole, MOST_PARTS + " parts");
                }
                Optional<String> name = kept(entry.getName());
                if (name.isEmpty()) {
                    continue;
                }
                try (InputStream part = zip.getInputStream(entry)) {
                    byte[] bytes = part.readNBytes(left + 1);
                    left -= bytes.length;
                    if (left < 0) {
                        throw new VarwrightException(Message.WORKBOOK_TOO_LARGE, whole, MOST_BYTES / 1_000_000 + " MB");
                    }
                    parts.putIfAbsent(name.get(), bytes);
                }
            }
        }
    }

    static VarwrightException broken(Place place, String why) {
        return new VarwrightException(Message.WORKBOOK_BROKEN, place, why);
    }

    /** Name of a part that may hold cells or say what the file is; pictures and the like are left out. */
    private static Optional<String> kept(String name) {
        String plain = name.replace('\\', '/').replaceFirst("^/+", "");
        String lower = plain.toLowerCase(Locale.ROOT);
        boolean text = lower.endsWith(".xml") || lower.endsWith(".rels") || lower.equals("mimetype");
        return text || lower.endsWith("workbook.bin") ? Optional.of(plain) : Optional.empty();
    }

    private void requireWorkbook(Place whole) {
        boolean hasCells = parts.keySet().stream()
                .anyMatch(name -> name.toLowerCase(Locale.ROOT).matches("(.*/)?workbook[0-9]*\\.xml"));
        if (parts.containsKey("[Content_Types].xml") && hasCells) {
            return;
        }
        String mimetype = new String(parts.getOrDefault("mimetype", new byte[0]), StandardCharsets.UTF_8);
        boolean binary = parts.keySet().stream().anyMatch(name -> name.endsWith("workbook.bin"));
        boolean document = parts.keySet().stream().anyMatch(name -> name.startsWith("word/"));
        throw new VarwrightException(
                Message.WORKBOOK_KIND,
                whole,
                mimetype.contains("opendocument")
                        ? "an OpenDocument file (.ods)"
                        : binary
                                ? "a binary workbook (.xlsb)"
                                : document ? "a text document (.docx)" : "a zip archive and no workbook");
    }

    /** The same parts in a new file without anything else. */
    byte[] repacked() {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.setLevel(1);
            for (Map.Entry<String, byte[]> part : parts.entrySet()) {
                zip.putNextEntry(new ZipEntry(part.getKey()));
                zip.write(part.getValue());
                zip.closeEntry();
            }
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return out.toByteArray();
    }
}
