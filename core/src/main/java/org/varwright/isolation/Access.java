package org.varwright.isolation;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.bank.Isolation;
import org.varwright.bankfile.Nearest;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.GuidedSearch;
import org.varwright.interlock.Move;
import org.varwright.interlock.Needs;
import org.varwright.interlock.Property;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.Search;
import org.varwright.interlock.StartState;
import org.varwright.interlock.State;
import org.varwright.interlock.Step;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/**
 * Plans access to compartments of a bank.
 *
 * <p><b>Model.</b> The cheapest way over states and moves that the locks allow and that break no property, made into steps; every single fault replayed on it
 * ({@code docs/theory/isolation.md}, ISO-1 to ISO-7).
 * <p><b>Not modelled.</b> Two faults at once, people who do something else than the sheet says.
 */
public final class Access {
    private static final int FILLING_ROUNDS = 40;

    private final Bank bank;
    private final PlanRequest request;
    private final Scheme scheme;
    private final WaySearch search;
    private final Site site;

    private Access(Bank bank, PlanRequest request) {
        this.bank = bank;
        this.request = request;
        scheme = Scheme.of(bank);
        requireNames();
        search = new WaySearch(scheme, new Exposure(scheme), request);
        site = new Site(scheme, request.compartments());
    }

    /**
     * An order of work in and back, or why there is none.
     *
     * @throws VarwrightException where a compartment, device or position doesn't exist, with what does; or where the bank has no isolation part
     */
    public static Plan plan(Bank bank, PlanRequest request) {
        return new Access(bank, request).plan();
    }

    private void requireNames() {
        Isolation isolation = scheme.isolation();
        List<String> compartments =
                isolation.compartments().stream().map(c -> c.name()).toList();
        List<String> devices = isolation.devices().stream().map(d -> d.name()).toList();
        List<Problem> problems = new ArrayList<>();
        Place place = new Place("", 0, 0, "");
        if (request.compartments().isEmpty()) {
            problems.add(Problem.of(Message.ISOLATION_NO_COMPARTMENT, place, String.join(", ", compartments)));
        }
        for (String name : request.compartments()) {
            if (!compartments.contains(name)) {
                problems.add(Problem.of(
                        Message.ISOLATION_UNKNOWN_COMPARTMENT,
                        place,
                        name,
                        Nearest.hint(name, compartments),
                        String.join(", ", compartments)));
            }
        }
        Set<String> named = new LinkedHashSet<>(request.devicesNotToUse());
        if (request.start() instanceof PlanRequest.Start.Positions given) {
            named.addAll(given.positions().keySet());
            given.positions()
                    .forEach((name, position) -> isolation
                            .device(name)
                            .filter(d -> !d.positions().contains(position))
                            .ifPresent(d -> problems.add(Problem.of(
                                    Message.ISOLATION_UNKNOWN_POSITION,
                                    place,
                                    name,
                                    position,
                                    String.join(", ", d.positions())))));
            requireKnown(given.grounds(), groundable(isolation), "a conductor to ground", problems);
            requireKnown(
                    given.shorts(),
                    bank.stages().stream().map(stage -> stage.name()).toList(),
                    "a stage whose units are shorted",
                    problems);
            for (String door : given.openDoors()) {
                if (!compartments.contains(door)) {
                    problems.add(Problem.of(
                            Message.ISOLATION_UNKNOWN_COMPARTMENT,
                            place,
                            door,
                            Nearest.hint(door, compartments),
                            String.join(", ", compartments)));
                }
            }
        }
        for (String name : named) {
            if (!devices.contains(name)) {
                problems.add(Problem.of(
                        Message.ISOLATION_UNKNOWN_DEVICE,
                        place,
                        name,
                        Nearest.hint(name, devices),
                        String.join(", ", devices)));
            }
        }
        if (!problems.isEmpty()) {
            throw new VarwrightException(problems);
        }
    }

    /** Conductors that can carry portable grounds: those of the file, and the neutral of each stage. */
    private List<String> groundable(Isolation isolation) {
        List<String> names = new ArrayList<>(isolation.conductors());
        bank.stages().forEach(stage -> names.add(Phrases.neutralOf(stage.name())));
        return names;
    }

    private static void requireKnown(
            Map<String, Integer> counts, List<String> known, String what, List<Problem> problems) {
        for (String name : counts.keySet()) {
            if (!known.contains(name)) {
                problems.add(Problem.of(
                        Message.ISOLATION_UNKNOWN_COUNTED,
                        Place.NOWHERE,
                        what,
                        name,
                        Nearest.hint(name, known),
                        String.join(", ", known)));
            }
        }
    }

    private static Map<String, Integer> without0(Map<String, Integer> counts) {
        Map<String, Integer> some = new LinkedHashMap<>(counts);
        some.values().removeIf(count -> count <= 0);
        return some;
    }

    private Plan plan() {
        Map<String, Integer> grounds = Map.of();
        Map<String, Integer> shorts = Map.of();
        State start;
        switch (request.start()) {
            case PlanRequest.Start.AsInFile ignored -> start = scheme.start();
            case PlanRequest.Start.Positions given -> {
                switch (StartState.of(scheme, given.positions(), given.openDoors(), request.limit())) {
                    case StartState.Reachable reachable -> {
                        start = reachable.state();
                        grounds = without0(given.grounds());
                        shorts = without0(given.shorts());
                    }
                    case StartState.Refused refused -> {
                        return Plan.Refused.because("the start is refused: " + String.join("; ", refused.reasons()));
                    }
                    case StartState.Undecided undecided -> {
                        return new Plan.Undecided(undecided.limit());
                    }
                }
            }
            case PlanRequest.Start.Saved saved -> {
                start = States.load(scheme, bank.name(), saved.state());
                grounds = saved.state().grounds();
                shorts = saved.state().shorts();
                State wanted = start;
                Search.Result reached = GuidedSearch.cheapest(
                        scheme,
                        scheme.start(),
                        Needs.everythingOf(scheme, start),
                        wanted::equals,
                        (before, move, after) -> true,
                        move -> 1,
                        request.limit());
                if (reached instanceof Search.Result.Undecided undecided) {
                    return new Plan.Undecided(undecided.limit());
                }
                if (reached instanceof Search.Result.None) {
                    return Plan.Refused.because(
                            "the saved state is refused: no sequence of moves from service leads there, so the locks don't"
                                    + " allow it; look again, and if it is really so, a lock is defeated");
                }
            }
        }
        List<String> impossible = onLive(start, grounds.keySet(), shorts.keySet());
        if (!impossible.isEmpty()) {
            return Plan.Refused.because("the start is refused: " + Phrases.list(impossible)
                    + "; look again, and go clear until it is known which of both is so");
        }
        Set<Property> broken = EnumSet.noneOf(Property.class);
        broken.addAll(scheme.broken(start));
        broken.retainAll(Exposure.NEVER);
        if (!broken.isEmpty()) {
            Property first = broken.iterator().next();
            return Plan.Refused.because("the start itself is not safe: it breaks " + first.id() + " (" + first.claim()
                    + "). Go clear and make it safe first");
        }
        return plan(start, grounds, shorts);
    }

    /** What can't be: a portable ground or a short on something that is live with the devices as they are said to stand. */
    private List<String> onLive(State start, Set<String> grounds, Set<String> shorts) {
        Map<String, ConductorState> conductors = scheme.conductors(start);
        List<String> impossible = new ArrayList<>();
        for (String name : grounds) {
            String conductor = bank.stages().stream()
                    .map(stage -> stage.name())
                    .filter(stage -> Phrases.neutralOf(stage).equals(name))
                    .findFirst()
                    .orElse(name);
            if (isLive(conductors.get(conductor))) {
                impossible.add("portable " + bank.words().ground() + "s are said to be on " + name
                        + ", which is live with the devices as they stand");
            }
        }
        for (String stage : shorts) {
            if (isLive(conductors.get(stage))) {
                impossible.add(
                        "units of " + stage + " are said to be shorted, which is live with the devices as they stand");
            }
        }
        return impossible;
    }

    private static boolean isLive(@Nullable ConductorState state) {
        return state == ConductorState.LIVE || state == ConductorState.LIVE_LOW_VOLTAGE;
    }

    private Plan plan(State start, Map<String, Integer> grounds, Map<String, Integer> shorts) {
        return switch (search.in(start)) {
            case WaySearch.Way.Undecided undecided -> new Plan.Undecided(undecided.limit());
            case WaySearch.Way.None ignored -> noWay(start);
            case WaySearch.Way.Found in -> planBack(start, grounds, shorts, in);
        };
    }

    private Plan planBack(
            State start, Map<String, Integer> grounds, Map<String, Integer> shorts, WaySearch.Way.Found in) {
        return switch (search.back(in.end(start), scheme.start(), in.shortfall())) {
            case WaySearch.Way.Undecided undecided -> new Plan.Undecided(undecided.limit());
            case WaySearch.Way.None ignored ->
                Plan.Refused.because("there is a way in, but from there no safe way leads back to service"
                        + (request.devicesNotToUse().isEmpty()
                                ? ""
                                : " without " + Phrases.list(List.copyOf(request.devicesNotToUse()))));
            case WaySearch.Way.Found back -> write(start, grounds, shorts, in, back);
        };
    }

    private Plan write(
            State start,
            Map<String, Integer> grounds,
            Map<String, Integer> shorts,
            WaySearch.Way.Found in,
            WaySearch.Way.Found back) {
        SavedState from = States.save(scheme, bank.name(), start, grounds, shorts);
        State atWork = in.end(start);
        Fillings fillings = Fillings.NONE;
        for (int round = 0; round < FILLING_ROUNDS; round++) {
            Draft draft = new Draft(scheme, new Phrases(bank), start, grounds, shorts);
            new WayIn(bank, draft, request.compartments(), site, fillings).write(start, in.path());
            int turn = draft.size();
            SavedState working = States.save(scheme, bank.name(), atWork, draft.grounds, draft.shorts);
            new WayBack(bank, draft, request.compartments(), site.lockPoints(atWork, fillings), fillings)
                    .write(atWork, back.path(), search);
            List<OrderStep> steps = draft.from(0);
            var wrong = FaultTable.nothingWrong(bank, from, steps, site);
            if (wrong.isPresent()) {
                return Plan.Refused.because(
                        "the plan does not stand up to being replayed pole by pole: " + wrong.get());
            }
            FaultTable.Table table = FaultTable.of(bank, from, steps, site, working, fillings);
            List<Fault> holes = table.faults().stream().filter(Fault::isHole).toList();
            if (holes.isEmpty()) {
                return new Plan.Planned(new OrderOfWork(
                        bank,
                        request.compartments(),
                        from,
                        steps.subList(0, turn),
                        steps.subList(turn, steps.size()),
                        table.faults(),
                        Responsibilities.of(bank, scheme, site, atWork, in, back),
                        Cautions.of(bank),
                        in.cost(),
                        back.cost(),
                        in.explored() + back.explored()));
            }
            if (table.fillings().equals(fillings)) {
                return new Plan.Refused(
                        "one thing wrong would hurt someone and no step can be added that shows it first: "
                                + holes.getFirst().text() + "; "
                                + holes.getFirst().how(),
                        List.of(),
                        "",
                        holes);
            }
            fillings = table.fillings();
        }
        return Plan.Refused.because("the table of single faults comes to no end");
    }

    private Plan noWay(State start) {
        String without = request.devicesNotToUse().isEmpty()
                ? ""
                : " without " + Phrases.list(List.copyOf(request.devicesNotToUse()));
        return switch (search.anyWay(start)) {
            case Search.Result.Undecided undecided -> new Plan.Undecided(undecided.limit());
            case Search.Result.None ignored ->
                Plan.Refused.because("no sequence of moves opens " + Phrases.list(request.compartments()) + without
                        + ": the locks don't let it happen" + stuck(start));
            case Search.Result.Found found -> {
                Map<String, Property> harms = new LinkedHashMap<>();
                State state = start;
                List<Move> moves = new ArrayList<>();
                for (Step step : found.path()) {
                    moves.add(step.move());
                    for (Property property : search.harms(state, step.move(), step.after())) {
                        harms.putIfAbsent(step.move().text(), property);
                    }
                    if (!harms.isEmpty()) {
                        break;
                    }
                    state = step.after();
                }
                String harm = harms.entrySet().stream()
                        .map(e -> "\"" + e.getKey() + "\" breaks "
                                + e.getValue().id() + ": " + e.getValue().claim())
                        .findFirst()
                        .orElse("");
                yield new Plan.Refused(
                        "no way into " + Phrases.list(request.compartments()) + without
                                + " keeps everything that is exposed dead and discharged",
                        moves,
                        harm,
                        List.of());
            }
        };
    }

    private String stuck(State start) {
        for (String compartment : request.compartments()) {
            List<String> refusals = scheme.refusals(start, new Move.OpenDoor(compartment));
            if (!refusals.isEmpty()) {
                return "; the door of " + compartment + ": " + Phrases.list(refusals);
            }
        }
        return "";
    }
}
