package org.varwright.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Standard output that remembers whether all of it got there: the JDK's own says nothing of a full disk. */
final class StandardOutput extends OutputStream {
    private final OutputStream out = new FileOutputStream(FileDescriptor.out);
    private @Nullable IOException failure;

    @Override
    public void write(int single) {
        write(new byte[] {(byte) single}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int count) {
        if (failure != null) {
            return;
        }
        try {
            out.write(bytes, from, count);
        } catch (IOException e) {
            failure = e;
        }
    }

    /** Why not all of it got there; empty where it did, or where the reader had enough and went away. */
    Optional<String> lost() {
        return Optional.ofNullable(failure)
                .map(e -> String.valueOf(e.getMessage()))
                .filter(why -> !why.contains("Broken pipe"));
    }
}
