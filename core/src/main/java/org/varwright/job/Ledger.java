package org.varwright.job;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.function.Function;
import org.varwright.bank.Bank;

/** What stands in a job after the events counted so far. Only {@link Replay} writes it; {@link JobRules} and {@link Job} read it. */
final class Ledger {
    /** Where a device's waiting time began, by its own clock. */
    record HoldRun(JobEvent event, Fact.HoldStarted fact, long fromMillis) {}

    /** A person at work on the bank. */
    record Person(String name, Optional<String> lock, JobEvent event) {}

    Optional<Fact.Opened> opened = Optional.empty();
    Optional<Bank> bank = Optional.empty();
    String bankText = "";
    String bankHash = "";
    Optional<Fact.Closed> closed = Optional.empty();
    /** Stops that nobody has lifted who knew of them, by event. */
    final Map<String, Fact.Stopped> stops = new LinkedHashMap<>();

    final List<Order> orders = new ArrayList<>();
    /** Who is on the bank, or not known to be off it. */
    final Map<String, Person> people = new LinkedHashMap<>();
    /** How each person was signed on last. */
    final Map<String, Person> lastOn = new HashMap<>();
    /** Event with which each person was signed off last. */
    final Map<String, String> lastOff = new HashMap<>();
    /** Device to its running hold. */
    final Map<String, HoldRun> holds = new HashMap<>();

    final List<Counted<Fact.ReadingTaken>> readings = new ArrayList<>();
    final List<Counted<Fact.ReadingsImported>> readingTables = new ArrayList<>();
    final List<Counted<Fact.SparesImported>> spareTables = new ArrayList<>();
    final List<Counted<Fact.UnitMoved>> unitMoves = new ArrayList<>();
    final List<Counted<Fact.Measured>> measured = new ArrayList<>();
    final List<Counted<Fact.AsLeft>> asLeft = new ArrayList<>();
    final List<Counted<Fact.Noted>> notes = new ArrayList<>();
    final List<Counted<Fact.Attached>> attachments = new ArrayList<>();
    final List<Counted<Fact.RecordRead>> records = new ArrayList<>();
    final List<Counted<Fact.VisitAgreed>> visits = new ArrayList<>();
    final List<Counted<Fact.MeterStated>> meters = new ArrayList<>();
    final List<Counted<Fact.Signed>> signatures = new ArrayList<>();
    final List<Counted<Fact.Settled>> settled = new ArrayList<>();
    final List<Conflict> stepConflicts = new ArrayList<>();

    /** Every event counted so far, by id. */
    final Map<String, JobEvent> counted = new LinkedHashMap<>();
    /** Ids of events taken back by a correction. */
    final Set<String> withdrawn = new LinkedHashSet<>();

    /** The latest order, whether it may be worked on or not. */
    Optional<Order> order() {
        return orders.isEmpty() ? Optional.empty() : Optional.of(orders.getLast());
    }

    /** The latest order, where it may be worked on. */
    Optional<Order> currentOrder() {
        return order().filter(o -> o.standing() == Order.Standing.CURRENT);
    }

    /** Why work is stopped, the latest reason; empty where it is not. */
    Optional<String> stopped() {
        return stops.values().stream().reduce((first, last) -> last).map(Fact.Stopped::reason);
    }

    void replaceOrder(Order order) {
        orders.set(orders.size() - 1, order);
    }

    /** Whether what the latest order begins with rests on the steps of this one: it is the same, or goes on from it, directly or over others. */
    boolean restsOn(String id) {
        for (Order order : orders.reversed()) {
            if (order.id().equals(id)) {
                return true;
            }
            if (!order.goesOn()) {
                return false;
            }
        }
        return false;
    }

    void signOn(Person person) {
        people.put(person.name(), person);
        lastOn.put(person.name(), person);
    }

    void signOff(String person, String event) {
        people.remove(person);
        lastOff.put(person, event);
    }

    /** Who was signed off counts as on again. */
    void notOff(String person) {
        Person last = lastOn.get(person);
        if (last != null) {
            people.put(person, last);
        }
    }

    /** Events that disagree and of which no person has said yet which holds. */
    List<Conflict> conflicts() {
        List<Conflict> conflicts = new ArrayList<>(stepConflicts);
        Map<String, List<Counted<Fact.ReadingTaken>>> byPlace = new LinkedHashMap<>();
        for (Counted<Fact.ReadingTaken> reading : readings) {
            reading.fact()
                    .values()
                    .keySet()
                    .forEach(column -> byPlace.computeIfAbsent(
                                    reading.fact().position() + ", " + column, p -> new ArrayList<>())
                            .add(reading));
        }
        byPlace.forEach((place, all) -> {
            String column = place.substring(place.lastIndexOf(", ") + 2);
            boolean differ = QUANTITIES.contains(column)
                    && all.stream()
                            .anyMatch(a -> all.stream()
                                    .anyMatch(b ->
                                            !a.event().device().equals(b.event().device())
                                                    && !Objects.equals(
                                                            a.fact().values().get(column),
                                                            b.fact().values().get(column))));
            if (differ) {
                conflicts.add(new Conflict(
                        "readings of " + place,
                        all.stream().map(a -> a.event().id()).toList()));
            }
        });
        List<Conflict> open =
                new ArrayList<>(conflicts.stream().filter(c -> !isSettled(c)).toList());
        List<Counted<Fact.VisitAgreed>> next = nextVisits();
        if (next.size() > 1) {
            open.add(new Conflict(
                    "the next visit", next.stream().map(v -> v.event().id()).toList()));
        }
        open.addAll(meterLimits().conflicts());
        return open;
    }

    /** The visits agreed of which no other takes the place: more than one where devices disagree. */
    List<Counted<Fact.VisitAgreed>> nextVisits() {
        return standing(visits, Fact.VisitAgreed::replaces, Fact.VisitAgreed::saysAs);
    }

    /** By which limits of error readings are judged. */
    MeterLimits meterLimits() {
        Map<String, List<Counted<Fact.MeterStated>>> byMeter = new LinkedHashMap<>();
        meters.forEach(m -> byMeter.computeIfAbsent(MeterLimits.key(m.fact()), k -> new ArrayList<>())
                .add(m));
        List<Counted<Fact.MeterStated>> stand = new ArrayList<>();
        byMeter.forEach(
                (meter, all) -> stand.addAll(standing(all, Fact.MeterStated::replaces, MeterLimits::sayTheSame)));
        return new MeterLimits(stand);
    }

    /** Of what devices say of one thing, the words of which no later ones take the place: each device's last, unless it is named as replaced or said again. */
    private static <F extends Fact> List<Counted<F>> standing(
            List<Counted<F>> said, Function<F, List<String>> replaces, BiPredicate<F, F> sayTheSame) {
        List<Counted<F>> standing = new ArrayList<>();
        for (Counted<F> later : said) {
            standing.removeIf(s -> s.event().device().equals(later.event().device())
                    || replaces.apply(later.fact()).contains(s.event().id())
                    || sayTheSame.test(s.fact(), later.fact()));
            standing.add(later);
        }
        return standing;
    }

    private boolean isSettled(Conflict conflict) {
        return settled.stream()
                .anyMatch(s -> conflict.events().contains(s.fact().event()));
    }

    /** Columns of a readings table that hold what was measured. */
    static final Set<String> QUANTITIES = Set.of("capacitance", "resistance", "insulation", "fuse");
}
