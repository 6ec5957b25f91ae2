package org.varwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.varwright.plot.Width;
import picocli.CommandLine.Option;

/** Where a command's picture goes; shared by the commands that have one. */
final class PictureOption {
    @Option(names = "-o", paramLabel = "FILE.svg", description = "Draw it as well, into this file.")
    private @Nullable Path file;

    @Option(names = "--narrow", description = "Lay the picture out for a phone.")
    private boolean narrow;

    Width width() {
        return narrow ? Width.PHONE : Width.PAGE;
    }

    /** Draws and writes where a file was named. */
    void write(Function<Width, String> picture) {
        write(file, picture);
    }

    /** Likewise for a second picture of the same command. */
    void write(@Nullable Path other, Function<Width, String> picture) {
        if (other != null) {
            OutputFile.write(other, picture.apply(width()).getBytes(StandardCharsets.UTF_8));
        }
    }
}
