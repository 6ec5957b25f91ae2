package org.varwright.server;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.FlywayException;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import org.sqlite.SQLiteJDBCLoader;
import org.sqlite.SQLiteOpenMode;
import org.varwright.job.LoggedEvent;
import org.varwright.job.Sha256;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** Bank files and the lines of jobs, in one SQLite file. What a method has written is on disk when it returns. */
final class Store implements AutoCloseable {
    private static final System.Logger LOG = System.getLogger(Store.class.getName());
    private static final int BUSY_MILLIS = 5_000;

    private final Jdbi jdbi;
    /** Held open so that the write-ahead log stays: on a full disk it could not be made again, and nothing could even be read. */
    private final Connection anchor;

    private Store(Jdbi jdbi, Connection anchor) {
        this.jdbi = jdbi;
        this.anchor = anchor;
    }

    /**
     * Opens the file, looks whether it is whole, and brings its tables up to date. A file that is damaged is left as it is.
     *
     * @throws VarwrightException {@code SERVER_STORE_…}, {@code SERVER_FOLDER}, {@code SERVER_NO_ROOM_TO_START}
     */
    static Store open(Path file) {
        Place place = new Place(file.toString(), 0, 0, "");
        requireDriver(place);
        try {
            if (Files.exists(file)) {
                requireWhole(file, place);
            }
            SQLiteDataSource source = source(file, true);
            Flyway.configure()
                    .dataSource(source)
                    .locations("classpath:org/varwright/server/db")
                    .ignoreMigrationPatterns(new String[0])
                    .load()
                    .migrate();
            // A file that is taken away while the server runs is not made anew, empty, without a word.
            SQLiteDataSource existing = source(file, false);
            Connection anchor = existing.getConnection();
            try (Statement statement = anchor.createStatement()) {
                statement.execute("SELECT count(*) FROM bank");
            }
            return new Store(Jdbi.create(existing), anchor);
        } catch (SQLException e) {
            throw StorageFault.atStart(place, e);
        } catch (FlywayException e) {
            throw StorageFault.atStart(place, e);
        }
    }

    /** SQLite's machine code is unpacked at each start. Where that fails, nothing is known of the file, and it must not be called damaged. */
    private static void requireDriver(Place place) {
        try {
            if (SQLiteJDBCLoader.initialize()) {
                return;
            }
        } catch (Exception e) {
            LOG.log(System.Logger.Level.DEBUG, "SQLite's library", e);
        }
        throw new VarwrightException(Message.SERVER_NO_ROOM_TO_START, place, System.getProperty("java.io.tmpdir", ""));
    }

    private static SQLiteDataSource source(Path file, boolean mayCreate) {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setBusyTimeout(BUSY_MILLIS);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        if (!mayCreate) {
            config.resetOpenMode(SQLiteOpenMode.CREATE);
        }
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file);
        return source;
    }

    private static void requireWhole(Path file, Place place) throws SQLException {
        try (Connection connection = source(file, false).getConnection();
                Statement statement = connection.createStatement();
                ResultSet found = statement.executeQuery("PRAGMA quick_check(1)")) {
            if (found.next() && !"ok".equals(found.getString(1))) {
                throw new VarwrightException(Message.SERVER_STORE_DAMAGED, place, found.getString(1));
            }
        }
    }

    @Override
    public void close() {
        try {
            anchor.close();
        } catch (SQLException e) {
            throw new UncheckedIOException(new IOException(e));
        }
    }

    /** A bank file as it was put. */
    record StoredBank(String id, String text, String sha256) {}

    List<StoredBank> banks() {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT id, text, sha256 FROM bank ORDER BY id")
                .map((row, context) -> new StoredBank(row.getString(1), row.getString(2), row.getString(3)))
                .list());
    }

    Optional<StoredBank> bank(String id) {
        return jdbi.withHandle(handle -> handle.createQuery("SELECT id, text, sha256 FROM bank WHERE id = :id")
                .bind("id", id)
                .map((row, context) -> new StoredBank(row.getString(1), row.getString(2), row.getString(3)))
                .findOne());
    }

    /** Adds a bank; false where there is one of that id. */
    boolean addBank(StoredBank bank) {
        return jdbi.inTransaction(handle -> handle.createUpdate(
                                "INSERT INTO bank (id, text, sha256) VALUES (:id, :text, :sha256) ON CONFLICT (id) DO NOTHING")
                        .bind("id", bank.id())
                        .bind("text", bank.text())
                        .bind("sha256", bank.sha256())
                        .execute()
                == 1);
    }

    /** Replaces the version with that hash; false where the bank stands at another one. */
    boolean replaceBank(StoredBank bank, String expectedSha256) {
        return jdbi.inTransaction(handle -> handle.createUpdate(
                                "UPDATE bank SET text = :text, sha256 = :sha256 WHERE id = :id AND sha256 = :expected")
                        .bind("id", bank.id())
                        .bind("text", bank.text())
                        .bind("sha256", bank.sha256())
                        .bind("expected", expectedSha256)
                        .execute()
                == 1);
    }

    /**
     * The lines of one job, as a set.
     *
     * @param events how many
     * @param hash {@link org.varwright.job.JobLog#hash} of them
     */
    record LineSet(String job, int events, String hash) {}

    /** Every job, by name. */
    List<LineSet> jobs() {
        Map<String, List<String>> hashes = new LinkedHashMap<>();
        jdbi.useHandle(handle -> handle.createQuery("SELECT job, hash FROM event ORDER BY job, hash")
                .map((row, context) -> Map.entry(row.getString(1), row.getString(2)))
                .forEach(e -> hashes.computeIfAbsent(e.getKey(), j -> new ArrayList<>())
                        .add(e.getValue())));
        return hashes.entrySet().stream()
                .map(e -> setOf(e.getKey(), e.getValue()))
                .toList();
    }

    /** One job; empty where there is none of that name. */
    Optional<LineSet> setOf(String job) {
        List<String> hashes =
                jdbi.withHandle(handle -> handle.createQuery("SELECT hash FROM event WHERE job = :job ORDER BY hash")
                        .bind("job", job)
                        .mapTo(String.class)
                        .list());
        return hashes.isEmpty() ? Optional.empty() : Optional.of(setOf(job, hashes));
    }

    private static LineSet setOf(String job, List<String> sortedHashes) {
        return new LineSet(job, sortedHashes.size(), Sha256.of(String.join("\n", sortedHashes)));
    }

    /** Every line of a job; by device and number. */
    List<String> lines(String job) {
        return jdbi.withHandle(
                handle -> handle.createQuery("SELECT line FROM event WHERE job = :job ORDER BY device, seq, hash")
                        .bind("job", job)
                        .mapTo(String.class)
                        .list());
    }

    /** Adds the lines that are not there yet, all or none; how many those were. */
    int add(List<LoggedEvent> events) {
        return jdbi.inTransaction(handle -> {
            int added = 0;
            for (LoggedEvent event : events) {
                added += handle.createUpdate("INSERT INTO event (hash, job, device, seq, line)"
                                + " VALUES (:hash, :job, :device, :seq, :line) ON CONFLICT (hash) DO NOTHING")
                        .bind("hash", event.hash())
                        .bind("job", event.event().job())
                        .bind("device", event.event().device())
                        .bind("seq", event.event().seq())
                        .bind("line", event.line())
                        .execute();
            }
            return added;
        });
    }
}
