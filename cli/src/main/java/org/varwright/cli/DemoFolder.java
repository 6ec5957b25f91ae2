package org.varwright.cli;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.DirectoryNotEmptyException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.varwright.disk.DiskTrouble;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** The folder with the demo's data: a mark in it says that the demo made it, and nothing without that mark is touched. */
final class DemoFolder {
    private static final String MARK = "made-by-varwright-demo.txt";
    private static final String BEGUN = "The demo is putting its data into this folder.\n";
    private static final String FILLED = "The demo made the data in this folder; \"demo --fresh\" deletes them.\n";

    /** Names that the server gives, and no others. */
    private static final Pattern OWN =
            Pattern.compile("varwright\\.sqlite(?:-wal|-shm)?|attachments/(?:part-\\d+|[0-9a-f]{2}/[0-9a-f]{64})");

    private final Path folder;

    DemoFolder(Path folder) {
        this.folder = folder;
    }

    /**
     * Takes the folder for the demo; true where its data are not (all) in it yet.
     *
     * @throws VarwrightException {@code DEMO_FOLDER} where it holds data that the demo did not make
     */
    boolean claim() {
        try {
            Path mark = folder.resolve(MARK);
            if (Files.exists(mark)) {
                return !Files.readString(mark).equals(FILLED);
            }
            if (Files.exists(folder.resolve("varwright.sqlite"))) {
                throw new VarwrightException(Message.DEMO_FOLDER, place());
            }
            Files.createDirectories(folder);
            Files.writeString(mark, BEGUN);
            return true;
        } catch (IOException e) {
            throw unusable(e);
        }
    }

    /** All of the demo's data are in. */
    void filled() {
        try {
            Files.writeString(folder.resolve(MARK), FILLED);
        } catch (IOException e) {
            throw unusable(e);
        }
    }

    /**
     * Deletes the demo's data; anything else in the folder stays.
     *
     * @throws VarwrightException {@code DEMO_FOLDER} where there are data without the demo's mark, {@code SERVER_IN_USE} where a server has them
     */
    void clear() {
        if (!Files.exists(folder.resolve("varwright.sqlite")) && !Files.exists(folder.resolve(MARK))) {
            return;
        }
        if (!Files.exists(folder.resolve(MARK))) {
            throw new VarwrightException(Message.DEMO_FOLDER, place());
        }
        try (FileChannel lock =
                FileChannel.open(folder.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
            if (!isFree(lock)) {
                throw new VarwrightException(Message.SERVER_IN_USE, place());
            }
            for (Path file : files()) {
                if (OWN.matcher(folder.relativize(file).toString().replace('\\', '/'))
                        .matches()) {
                    Files.delete(file);
                }
            }
            Files.delete(folder.resolve(MARK));
            dropEmptyFolders();
        } catch (IOException e) {
            throw unusable(e);
        }
    }

    private List<Path> files() throws IOException {
        try (Stream<Path> all = Files.walk(folder, 3)) {
            return all.filter(Files::isRegularFile).toList();
        }
    }

    private void dropEmptyFolders() throws IOException {
        Path attachments = folder.resolve("attachments");
        if (!Files.isDirectory(attachments)) {
            return;
        }
        try (Stream<Path> all = Files.walk(attachments, 1)) {
            for (Path each : all.sorted(Comparator.reverseOrder())
                    .filter(Files::isDirectory)
                    .toList()) {
                try {
                    Files.delete(each);
                } catch (DirectoryNotEmptyException e) {
                    // Something lies in it that the demo did not make: it stays.
                }
            }
        }
    }

    private static boolean isFree(FileChannel lock) throws IOException {
        try {
            return lock.tryLock() != null;
        } catch (OverlappingFileLockException e) {
            return false;
        }
    }

    private Place place() {
        return new Place(folder.toString(), 0, 0, "");
    }

    private VarwrightException unusable(IOException e) {
        return new VarwrightException(Message.SERVER_FOLDER, place(), DiskTrouble.of(e));
    }
}
