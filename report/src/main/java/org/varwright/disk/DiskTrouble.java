package org.varwright.disk;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;

/** Why a file could not be used, in words: the exceptions of the JDK often say no more than its name. */
public final class DiskTrouble {
    private DiskTrouble() {}

    /** A few words, without the file's name. */
    public static String of(IOException e) {
        return switch (e) {
            case AccessDeniedException denied -> "permission denied";
            case NoSuchFileException gone -> "the file or its folder is not there";
            case FileAlreadyExistsException there -> "there is a file where a folder is needed";
            case NotDirectoryException file -> "there is a file where a folder is needed";
            case FileSystemException other when other.getReason() != null -> String.valueOf(other.getReason());
            default -> String.valueOf(e.getMessage());
        };
    }
}
