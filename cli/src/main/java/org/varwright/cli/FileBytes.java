package org.varwright.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.varwright.comtrade.Bytes;
import org.varwright.disk.DiskTrouble;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** The bytes of a file on disk, read block by block where they are wanted: the file may be larger than memory. */
final class FileBytes implements Bytes, AutoCloseable {
    private final Path path;
    private final FileChannel channel;
    private final long size;

    private FileBytes(Path path, FileChannel channel, long size) {
        this.path = path;
        this.channel = channel;
        this.size = size;
    }

    /**
     * Opens a file.
     *
     * @throws VarwrightException {@code FILE_…}: missing, a folder, unreadable
     */
    static FileBytes open(Path path) {
        Place place = new Place(path.toString(), 0, 0, "");
        if (!Files.exists(path)) {
            throw new VarwrightException(Message.FILE_MISSING, place);
        }
        if (Files.isDirectory(path)) {
            throw new VarwrightException(Message.FILE_IS_A_FOLDER, place);
        }
        try {
            FileChannel channel = FileChannel.open(path, StandardOpenOption.READ);
            return new FileBytes(path, channel, channel.size());
        } catch (IOException e) {
            throw unreadable(path, e);
        }
    }

    @Override
    public long size() {
        return size;
    }

    @Override
    public int read(long from, byte[] into, int at, int count) {
        try {
            return from >= size ? 0 : Math.max(0, channel.read(ByteBuffer.wrap(into, at, count), from));
        } catch (IOException e) {
            throw unreadable(path, e);
        }
    }

    @Override
    public void close() {
        try {
            channel.close();
        } catch (IOException e) {
            throw unreadable(path, e);
        }
    }

    private static VarwrightException unreadable(Path path, IOException e) {
        return new VarwrightException(Message.FILE_UNREADABLE, new Place(path.toString(), 0, 0, ""), DiskTrouble.of(e));
    }
}
