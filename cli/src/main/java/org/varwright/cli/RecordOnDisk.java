package org.varwright.cli;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.varwright.comtrade.CodePages;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.RecordFiles;
import org.varwright.comtrade.RecordReader;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.Source;
import org.varwright.disk.DiskTrouble;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** A record in a folder: the file that a person named and those beside it that differ by the last extension alone, in capitals or not. */
final class RecordOnDisk {
    /** Code pages that the Java runtime knows. */
    static final CodePages RUNTIME = RecordOnDisk::decode;

    private final Path named;

    RecordOnDisk(Path named) {
        this.named = named;
    }

    /**
     * Reads it.
     *
     * @throws VarwrightException where a file is missing or can't be read as a record
     */
    Recording read(ReadOptions options) {
        // a missing file is said before its partners are looked for
        FileBytes.open(named).close();
        return switch (extension(named)) {
            case "cff" -> combined(options);
            case "cfg", "dat", "hdr", "inf" -> several(options);
            default -> throw new VarwrightException(Message.RECORD_FILE_KIND, place());
        };
    }

    private Recording combined(ReadOptions options) {
        try (FileBytes bytes = FileBytes.open(named)) {
            return RecordReader.readCombined(Source.of(named.toString(), bytes), options);
        }
    }

    private Recording several(ReadOptions options) {
        try (FileBytes configuration = FileBytes.open(required("cfg"));
                FileBytes data = FileBytes.open(required("dat"))) {
            RecordFiles files = RecordFiles.of(
                    Source.of(required("cfg").toString(), configuration),
                    Source.of(required("dat").toString(), data));
            Optional<Path> header = beside("hdr");
            Optional<Path> information = beside("inf");
            try (FileBytes headerBytes = FileBytes.open(header.orElse(named));
                    FileBytes informationBytes = FileBytes.open(information.orElse(named))) {
                if (header.isPresent()) {
                    files = files.withHeader(Source.of(header.get().toString(), headerBytes));
                }
                if (information.isPresent()) {
                    files = files.withInformation(Source.of(information.get().toString(), informationBytes));
                }
                return RecordReader.read(files, options);
            }
        }
    }

    private Path required(String extension) {
        return beside(extension)
                .orElseThrow(() -> new VarwrightException(Message.RECORD_PARTNER, place(), "." + extension));
    }

    /** The file of the same name with another extension; the named one itself where it has it, else capitals don't matter. */
    private Optional<Path> beside(String extension) {
        if (extension(named).equals(extension)) {
            return Optional.of(named);
        }
        String wanted = stem(named) + "." + extension;
        List<Path> found = new ArrayList<>();
        try (Stream<Path> files = Files.list(named.toAbsolutePath().resolveSibling(""))) {
            files.filter(f -> f.getFileName().toString().equalsIgnoreCase(wanted) && Files.isRegularFile(f))
                    .forEach(found::add);
        } catch (IOException e) {
            throw new VarwrightException(Message.FILE_UNREADABLE, place(), DiskTrouble.of(e));
        }
        // of two that differ in capitals, the one written like the named one
        return found.stream()
                .map(f -> named.resolveSibling(f.getFileName()))
                .min(Comparator.comparing((Path f) -> !stem(f).equals(stem(named)))
                        .thenComparing(f -> f.getFileName().toString()));
    }

    private Place place() {
        return new Place(named.toString(), 0, 0, "");
    }

    private static String extension(Path path) {
        String name = path.getFileName().toString();
        return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
    }

    private static String stem(Path path) {
        String name = path.getFileName().toString();
        return name.substring(0, Math.max(0, name.lastIndexOf('.')));
    }

    private static Optional<String> decode(String name, byte[] bytes) {
        try {
            return Charset.isSupported(name) ? Optional.of(new String(bytes, Charset.forName(name))) : Optional.empty();
        } catch (IllegalCharsetNameException e) {
            return Optional.empty();
        }
    }
}
