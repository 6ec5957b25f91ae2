package org.varwright.bench;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/** Reads a file past the system's cache (O_DIRECT), in blocks of 1 MiB, nothing done with it. */
final class DirectRead {
    private static final int BLOCK_BYTES = 1 << 20;
    private static final int RUNS = 5;

    private DirectRead() {}

    /** Median time of the clock [s]; empty where the file system can't read so, as one in memory. */
    static OptionalDouble seconds(Path file) throws IOException {
        List<Double> seconds = new ArrayList<>();
        long size = Files.size(file);
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ, direct())) {
            int alignment = (int) Files.getFileStore(file).getBlockSize();
            ByteBuffer block =
                    ByteBuffer.allocateDirect(BLOCK_BYTES + alignment).alignedSlice(alignment);
            for (int i = 0; i < RUNS; i++) {
                long from = System.nanoTime();
                long read = whole(channel, block);
                seconds.add((System.nanoTime() - from) * 1e-9);
                if (read != size) {
                    throw new IllegalStateException(read + " bytes were read of " + size);
                }
            }
        } catch (IOException | UnsupportedOperationException | ReflectiveOperationException e) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(Times.median(seconds.stream().sorted().toList()));
    }

    /** By its name, because the compiler warns of an option that every JDK has and none must have. */
    private static OpenOption direct() throws ReflectiveOperationException {
        Object option = Class.forName("com.sun.nio.file.ExtendedOpenOption")
                .getField("DIRECT")
                .get(null);
        return (OpenOption) Objects.requireNonNull(option);
    }

    private static long whole(FileChannel channel, ByteBuffer block) throws IOException {
        long at = 0;
        while (true) {
            block.clear().limit(BLOCK_BYTES);
            int read = channel.read(block, at);
            at += Math.max(0, read);
            // The last block; what begins at an odd place can't be asked for.
            if (read < BLOCK_BYTES) {
                return at;
            }
        }
    }
}
