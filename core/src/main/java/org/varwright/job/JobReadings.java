package org.varwright.job;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.survey.Readings;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.SparesFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;

/**
 * What was read in a job, judged by the limits of error that its log states.
 *
 * @param found readings up to the first lift, imported tables too: what was found; empty where nothing was read
 * @param after what was typed after the first lift: of the bank as fitted; empty where nothing was
 * @param spares from the tables of spares in the log, else those of the bank file
 * @param tables every table that was read, in order
 * @param remarks tables that can't be used and why, one sentence each
 */
public record JobReadings(
        Optional<Survey> found, Optional<Survey> after, List<Spare> spares, List<Table> tables, List<String> remarks) {
    /**
     * A table of the log.
     *
     * @param what {@code readings} or {@code spares}
     */
    public record Table(String what, String name, String text) {}

    public JobReadings {
        spares = List.copyOf(spares);
        tables = List.copyOf(tables);
        remarks = List.copyOf(remarks);
    }

    /**
     * Reads and judges everything.
     *
     * @throws VarwrightException {@code JOB_NOT_OPEN} where the log does not say which bank it is
     */
    public static JobReadings of(Job job) {
        Bank bank = job.bank()
                .orElseThrow(() -> new VarwrightException(
                        Message.JOB_NOT_OPEN, new Place(job.log().job(), 0, 0, "")));
        return new Reader(job, bank).read();
    }

    /** What becomes of the tables of one job. */
    private static final class Reader {
        private final Job job;
        private final Bank bank;
        private final SurveySettings settings;
        private final List<Table> tables = new ArrayList<>();
        private final List<String> remarks = new ArrayList<>();

        Reader(Job job, Bank bank) {
            this.job = job;
            this.bank = bank;
            settings = job.meterLimits().settings(bank.standard());
        }

        JobReadings read() {
            List<Counted<Fact.ReadingTaken>> typed = job.counted(Fact.ReadingTaken.class);
            List<Counted<Fact.ReadingTaken>> before = beforeTheFirstLift(typed);
            Set<Counted<Fact.ReadingTaken>> known = new LinkedHashSet<>(before);
            Optional<Survey> found = found(before);
            List<Spare> spares = spares();
            Optional<Survey> after = ReadingsTable.of(
                            typed.stream().filter(r -> !known.contains(r)).toList())
                    .flatMap(text -> readings("readings typed after the lifts", text))
                    .map(r -> Survey.of(bank, r, settings));
            return new JobReadings(found, after, spares, tables, remarks);
        }

        private List<Counted<Fact.ReadingTaken>> beforeTheFirstLift(List<Counted<Fact.ReadingTaken>> typed) {
            List<Counted<Fact.UnitMoved>> lifts = job.counted(Fact.UnitMoved.class);
            return typed.stream()
                    .filter(r -> lifts.isEmpty()
                            || r.event()
                                            .clock()
                                            .compareTo(lifts.getFirst().event().clock())
                                    < 0)
                    .toList();
        }

        private Optional<Survey> found(List<Counted<Fact.ReadingTaken>> typed) {
            List<Readings> read = new ArrayList<>();
            for (Counted<Fact.ReadingsImported> table : job.counted(Fact.ReadingsImported.class)) {
                readings(table.fact().fileName(), table.fact().text()).ifPresent(read::add);
            }
            ReadingsTable.of(typed)
                    .flatMap(text -> readings("readings typed in the job", text))
                    .ifPresent(read::add);
            return read.isEmpty() ? Optional.empty() : Optional.of(Survey.of(bank, together(read), settings));
        }

        private Optional<Readings> readings(String name, String text) {
            tables.add(new Table("readings", name, text));
            try {
                return Optional.of(ReadingsFile.read(bank, name, text.getBytes(StandardCharsets.UTF_8)));
            } catch (VarwrightException e) {
                notUsed("Readings", name, e);
                return Optional.empty();
            }
        }

        /** One table of all rows: imported tables in their order, then what was typed. */
        private static Readings together(List<Readings> tables) {
            if (tables.size() == 1) {
                return tables.getFirst();
            }
            return new Readings(
                    String.join(" + ", tables.stream().map(Readings::file).toList()),
                    tables.stream().flatMap(t -> t.rows().stream()).toList(),
                    tables.stream().flatMap(t -> t.spots().stream()).toList(),
                    tables.stream().flatMap(t -> t.understood().stream()).toList(),
                    tables.stream().flatMap(t -> t.notices().stream()).toList(),
                    tables.stream().flatMap(t -> t.problems().stream()).toList());
        }

        private List<Spare> spares() {
            List<Spare> spares = new ArrayList<>();
            for (Counted<Fact.SparesImported> table : job.counted(Fact.SparesImported.class)) {
                String name = table.fact().fileName();
                String text = table.fact().text();
                tables.add(new Table("spares", name, text));
                try {
                    spares.addAll(SparesFile.read(bank, name, text.getBytes(StandardCharsets.UTF_8))
                            .spares());
                } catch (VarwrightException e) {
                    notUsed("Spares", name, e);
                }
            }
            return spares.isEmpty() ? bank.spares() : spares;
        }

        private void notUsed(String what, String name, VarwrightException e) {
            remarks.add(what + " “" + name + "” are not used: "
                    + e.problems().stream().map(Problem::text).limit(3).collect(Collectors.joining("; ")) + ".");
        }
    }
}
