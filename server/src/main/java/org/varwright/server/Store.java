package org.varwright.server;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.flywaydb.core.Flyway;
import org.jdbi.v3.core.Jdbi;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;
import org.varwright.job.LoggedEvent;
import org.varwright.job.Sha256;

/** Bank files and the lines of jobs, in one SQLite file. What a method has written is on disk when it returns. */
final class Store {
    private static final int BUSY_MILLIS = 10_000;

    private final Jdbi jdbi;

    private Store(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** Opens the file, and brings its tables up to date. */
    static Store open(Path file) {
        SQLiteConfig config = new SQLiteConfig();
        config.setJournalMode(SQLiteConfig.JournalMode.WAL);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.setBusyTimeout(BUSY_MILLIS);
        config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
        SQLiteDataSource source = new SQLiteDataSource(config);
        source.setUrl("jdbc:sqlite:" + file);
        Flyway.configure()
                .dataSource(source)
                .locations("classpath:org/varwright/server/db")
                .load()
                .migrate();
        return new Store(Jdbi.create(source));
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
