package org.varwright.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * The lines of one job, from every device that took part. Merging is set union over lines: in any order and any number of times it gives the same log.
 *
 * @param job which job
 * @param events in the order of their clocks; devices in alphabetical order where clocks are equal
 * @param unreadable lines that can't be read, as they are
 * @param findings what the chains of hashes show
 */
public record JobLog(String job, List<LoggedEvent> events, List<String> unreadable, List<LogFinding> findings) {
    private static final Comparator<LoggedEvent> ORDER = Comparator.comparing(
                    (LoggedEvent e) -> e.event().clock())
            .thenComparing(e -> e.event().device())
            .thenComparingInt(e -> e.event().seq())
            .thenComparing(LoggedEvent::hash);

    public JobLog {
        events = List.copyOf(events);
        unreadable = List.copyOf(unreadable);
        findings = List.copyOf(findings);
    }

    /** A log in which nothing stands yet. */
    public static JobLog empty(String job) {
        return of(job, List.of(), List.of(), List.of());
    }

    /**
     * The log that a text holds, one event a line. A line that can't be read is kept and reported, never dropped.
     *
     * @param file for messages
     * @throws VarwrightException {@code JOB_EMPTY} where no line can be read, {@code JOB_MIXED} where lines belong to different jobs
     */
    public static JobLog read(String file, String text) {
        List<LoggedEvent> events = new ArrayList<>();
        List<String> unreadable = new ArrayList<>();
        List<LogFinding> problems = new ArrayList<>();
        List<String> lines = List.of(text.split("\r?\n"));
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (line.isBlank()) {
                continue;
            }
            try {
                events.add(LoggedEvent.parse(file, i + 1, line));
            } catch (VarwrightException e) {
                unreadable.add(line);
                boolean torn = i == lines.size() - 1 && !text.endsWith("\n");
                problems.add(
                        torn
                                ? new LogFinding.TornLine(i + 1)
                                : new LogFinding.UnreadableLine(
                                        i + 1, e.problems().getFirst().text()));
            }
        }
        if (events.isEmpty()) {
            throw new VarwrightException(Message.JOB_EMPTY, new Place(file, 0, 0, ""));
        }
        String job = events.getFirst().event().job();
        for (LoggedEvent event : events) {
            requireSameJob(file, job, event.event().job());
        }
        return of(job, events, unreadable, problems);
    }

    /** This log and one line more. */
    public JobLog with(LoggedEvent event) {
        requireSameJob("", job, event.event().job());
        List<LoggedEvent> all = new ArrayList<>(events);
        all.add(event);
        return of(job, all, unreadable, unread());
    }

    /**
     * Both logs.
     *
     * @throws VarwrightException {@code JOB_MIXED} where the other is of another job
     */
    public JobLog merge(JobLog other) {
        requireSameJob("", job, other.job);
        List<LoggedEvent> all = new ArrayList<>(events);
        all.addAll(other.events);
        List<String> bad = new ArrayList<>(unreadable);
        other.unreadable.stream().filter(line -> !bad.contains(line)).forEach(bad::add);
        List<LogFinding> problems = new ArrayList<>(unread());
        other.unread().stream().filter(f -> !problems.contains(f)).forEach(problems::add);
        return of(job, all, bad, problems);
    }

    /** Every line, each ended by a newline; unreadable ones last. */
    public String text() {
        StringBuilder text = new StringBuilder();
        events.forEach(e -> text.append(e.line()).append('\n'));
        unreadable.forEach(line -> text.append(line).append('\n'));
        return text.toString();
    }

    /** One hash over all events: the same on every device that holds the same lines. */
    public String hash() {
        return Sha256.of(events.stream().map(LoggedEvent::hash).sorted().collect(Collectors.joining("\n")));
    }

    /** The latest time in the log. */
    JobClock lastClock() {
        return events.isEmpty() ? JobClock.ZERO : events.getLast().event().clock();
    }

    /** The last line of a device; its next one chains to it. */
    Optional<LoggedEvent> lastOf(String device) {
        return events.stream()
                .filter(e -> e.event().device().equals(device))
                .max(Comparator.comparingInt(e -> e.event().seq()));
    }

    private static JobLog of(String job, List<LoggedEvent> events, List<String> unreadable, List<LogFinding> unread) {
        Map<String, LoggedEvent> byHash = new LinkedHashMap<>();
        events.forEach(e -> byHash.putIfAbsent(e.hash(), e));
        List<LoggedEvent> ordered = byHash.values().stream().sorted(ORDER).toList();
        List<LogFinding> findings = new ArrayList<>(unread);
        findings.addAll(chains(ordered));
        return new JobLog(job, ordered, unreadable, findings);
    }

    private List<LogFinding> unread() {
        return findings.stream()
                .filter(f -> f instanceof LogFinding.TornLine || f instanceof LogFinding.UnreadableLine)
                .toList();
    }

    private static List<LogFinding> chains(List<LoggedEvent> events) {
        Map<String, TreeMap<Integer, List<LoggedEvent>>> devices = new TreeMap<>();
        for (LoggedEvent event : events) {
            devices.computeIfAbsent(event.event().device(), d -> new TreeMap<>())
                    .computeIfAbsent(event.event().seq(), s -> new ArrayList<>())
                    .add(event);
        }
        List<LogFinding> findings = new ArrayList<>();
        devices.forEach((device, bySeq) -> findings.addAll(chain(device, bySeq)));
        return findings;
    }

    private static List<LogFinding> chain(String device, TreeMap<Integer, List<LoggedEvent>> bySeq) {
        List<LogFinding> findings = new ArrayList<>();
        List<LoggedEvent> before = List.of();
        int expected = 1;
        for (Map.Entry<Integer, List<LoggedEvent>> entry : bySeq.entrySet()) {
            int seq = entry.getKey();
            List<LoggedEvent> here = entry.getValue();
            boolean gap = seq > expected;
            if (gap) {
                findings.add(new LogFinding.Missing(device, expected, seq - 1));
            }
            if (here.size() > 1) {
                findings.add(new LogFinding.Forked(device + ":" + seq));
            }
            for (LoggedEvent event : here) {
                if (!gap && !follows(event, before)) {
                    findings.add(new LogFinding.BrokenChain(event.event().id()));
                }
                if (!before.isEmpty()
                        && event.event()
                                        .clock()
                                        .compareTo(before.getFirst().event().clock())
                                <= 0) {
                    findings.add(new LogFinding.ClockBackwards(event.event().id()));
                }
            }
            before = here;
            expected = seq + 1;
        }
        return findings;
    }

    private static boolean follows(LoggedEvent event, List<LoggedEvent> before) {
        String previous = event.event().previous();
        return before.isEmpty()
                ? previous.isEmpty()
                : before.stream().anyMatch(b -> b.hash().equals(previous));
    }

    private static void requireSameJob(String file, String job, String other) {
        if (!other.equals(job)) {
            throw new VarwrightException(Message.JOB_MIXED, new Place(file, 0, 0, ""), job, other);
        }
    }
}
