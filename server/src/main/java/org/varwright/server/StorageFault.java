package org.varwright.server;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import java.sql.SQLException;
import java.util.Optional;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.exception.FlywayValidateException;
import org.jdbi.v3.core.ConnectionException;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;
import org.varwright.disk.DiskTrouble;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** What the disk or the database under the server does when it fails, and what a person can do about it. */
enum StorageFault {
    FULL(
            507,
            "the disk under the server's folder has no room, or fails; nothing was taken in, and what was taken in before is safe. Make room there: devices keep what they have and send it again by themselves"),
    BUSY(
            503,
            "another program holds the server's database; nothing was taken in. Close it (a backup, a viewer of databases, a program that synchronises folders): devices send again by themselves"),
    FORBIDDEN(
            503,
            "the server may not write into its folder any more, or its folder is gone; nothing was taken in. Mend the permission, or put the folder back: devices send again by themselves"),
    DAMAGED(
            503,
            "the server's database is damaged; nothing was taken in. Stop the server, copy its folder away, and start it anew: it says what to do next. Devices keep what they have");

    private final int status;
    private final String detail;

    StorageFault(int status, String detail) {
        this.status = status;
        this.detail = detail;
    }

    Refusal refusal() {
        return Refusal.of(status, detail);
    }

    /** The fault behind an exception of the libraries; empty where it is something else. */
    static Optional<StorageFault> of(Throwable thrown) {
        Optional<SQLiteException> sqlite = sqlite(thrown);
        // Where the whole folder is gone, the driver does not even ask SQLite.
        return sqlite.isEmpty() && thrown instanceof ConnectionException
                ? Optional.of(FORBIDDEN)
                : sqlite.flatMap(StorageFault::of);
    }

    /** The fault behind a file that could not be written. */
    static StorageFault of(IOException e) {
        return switch (e) {
            case AccessDeniedException denied -> FORBIDDEN;
            case NoSuchFileException gone -> FORBIDDEN;
            case FileAlreadyExistsException file -> FORBIDDEN;
            default -> DiskTrouble.of(e).startsWith("Read-only") ? FORBIDDEN : FULL;
        };
    }

    private static Optional<StorageFault> of(SQLiteException e) {
        return switch (primary(e)) {
            case SQLITE_FULL, SQLITE_IOERR -> Optional.of(FULL);
            case SQLITE_BUSY, SQLITE_LOCKED, SQLITE_PROTOCOL -> Optional.of(BUSY);
            case SQLITE_READONLY, SQLITE_CANTOPEN, SQLITE_PERM, SQLITE_AUTH -> Optional.of(FORBIDDEN);
            case SQLITE_CORRUPT, SQLITE_NOTADB -> Optional.of(DAMAGED);
            default -> Optional.empty();
        };
    }

    /** The code without its details, which SQLite keeps in higher bits. */
    private static SQLiteErrorCode primary(SQLiteException e) {
        return SQLiteErrorCode.getErrorCode(e.getResultCode().code & 0xff);
    }

    private static Optional<SQLiteException> sqlite(Throwable thrown) {
        for (Throwable each = thrown; each != null; each = each.getCause()) {
            if (each instanceof SQLiteException found) {
                return Optional.of(found);
            }
        }
        return Optional.empty();
    }

    /** Why the database can't be opened, for who starts the server. */
    static VarwrightException atStart(Place place, SQLException e) {
        return atStart(place, (Throwable) e);
    }

    static VarwrightException atStart(Place place, FlywayException e) {
        return e instanceof FlywayValidateException
                ? new VarwrightException(Message.SERVER_STORE_NEWER, place)
                : atStart(place, (Throwable) e);
    }

    private static VarwrightException atStart(Place place, Throwable e) {
        String why = sqlite(e).map(s -> primary(s).message).orElseGet(() -> String.valueOf(e.getMessage()));
        return of(e).map(fault -> switch (fault) {
                    case BUSY -> new VarwrightException(Message.SERVER_STORE_BUSY, place);
                    case DAMAGED -> new VarwrightException(Message.SERVER_STORE_DAMAGED, place, why);
                    case FULL, FORBIDDEN -> new VarwrightException(Message.SERVER_FOLDER, place, why);
                })
                .orElseGet(() -> new VarwrightException(Message.SERVER_STORE_DAMAGED, place, why));
    }
}
