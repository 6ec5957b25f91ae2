package org.varwright.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.Collectors;
import org.varwright.bank.Bank;

/**
 * A job as its log tells it.
 *
 * <p><b>Model.</b> The events in the order of their clocks, each counted where the rules allow it after those before it. The same lines give the same job on every device.
 */
public final class Job {
    private final JobLog log;
    private final Replay replay;

    private Job(JobLog log, Planner planner) {
        this.log = log;
        replay = new Replay(planner);
        log.events().forEach(e -> replay.take(e.event()));
    }

    /** The job that the log tells. */
    public static Job of(JobLog log, Planner planner) {
        return new Job(log, planner);
    }

    /**
     * Whether an event may be written now, and its line.
     *
     * @param device that writes it: small letters, digits and hyphens
     * @param by who
     * @param wallMillis what the device's clock shows [ms since 1970-01-01T00:00Z]
     */
    public Proposal propose(String device, String by, long wallMillis, Fact fact) {
        Optional<LoggedEvent> last = log.lastOf(device);
        Fact known = replay.rules().knowing(fact);
        JobEvent event = JobEvent.of(
                log.job(),
                device,
                last.map(e -> e.event().seq()).orElse(0) + 1,
                log.lastClock().next(wallMillis),
                by,
                known,
                last.map(LoggedEvent::hash).orElse(""));
        var refusals = replay.rules().refusals(event);
        return refusals.isEmpty() ? new Proposal.Accepted(LoggedEvent.of(event)) : new Proposal.Refused(refusals);
    }

    public JobLog log() {
        return log;
    }

    Ledger ledger() {
        return replay.ledger();
    }

    /** What the job is, in a few words; empty before it is opened. */
    public Optional<String> title() {
        return ledger().opened.map(Fact.Opened::title);
    }

    /** When it was opened, by the clock of the device that did [ms since 1970-01-01T00:00Z]; empty before. */
    public OptionalLong openedMillis() {
        return counted(Fact.Opened.class).stream()
                .mapToLong(o -> o.event().clock().wallMillis())
                .findFirst();
    }

    /** The bank as described now; empty before the job is opened. */
    public Optional<Bank> bank() {
        return ledger().bank;
    }

    /** Every order of work made, the latest last. */
    public List<Order> orders() {
        return List.copyOf(ledger().orders);
    }

    /** The order to work by; empty where there is none, or where the latest has ended. */
    public Optional<Order> currentOrder() {
        return ledger().currentOrder();
    }

    /** Who works on the bank now. */
    public List<String> peopleOn() {
        return List.copyOf(ledger().people.keySet());
    }

    /** Events that disagree, until a person settles them. */
    public List<Conflict> conflicts() {
        return ledger().conflicts();
    }

    /** Events that the rules refuse; kept, shown, without effect. */
    public List<NotCounted> notCounted() {
        return List.copyOf(replay.notCounted());
    }

    public boolean isStopped() {
        return ledger().stopped().isPresent();
    }

    public boolean isClosed() {
        return ledger().closed.isPresent();
    }

    /** Facts of one kind that count, in the order of their clocks: what was taken back, and readings that lost against another, are not among them. */
    public <F extends Fact> List<Counted<F>> counted(Class<F> kind) {
        List<Counted<F>> facts = new ArrayList<>();
        Set<String> readings =
                ledger().readings.stream().map(r -> r.event().id()).collect(Collectors.toSet());
        for (JobEvent event : ledger().counted.values()) {
            boolean lost = event.fact() instanceof Fact.ReadingTaken && !readings.contains(event.id());
            if (kind.isInstance(event.fact()) && !lost && !ledger().withdrawn.contains(event.id())) {
                facts.add(new Counted<>(event, kind.cast(event.fact())));
            }
        }
        return facts;
    }

    /** When the next visit is; empty where none is agreed, more than one where devices disagree. */
    public List<Counted<Fact.VisitAgreed>> nextVisits() {
        return ledger().nextVisits();
    }

    /** By which limits of error its readings are judged, as the log states them. */
    public MeterLimits meterLimits() {
        return ledger().meterLimits();
    }

    /** Ids of events that were taken back. */
    public List<String> withdrawn() {
        return List.copyOf(ledger().withdrawn);
    }

    /** The bank file as it counts now, whole; empty before the job is opened. */
    public String bankText() {
        return ledger().bankText;
    }

    /** The readings typed one by one, as a table that the survey reads; empty where none were. */
    public Optional<String> readingsTable() {
        return ReadingsTable.of(ledger().readings);
    }
}
