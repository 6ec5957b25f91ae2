package org.varwright.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.page.Enumeration;
import org.varwright.quantity.Dimension;
import org.varwright.waveform.Cycles;
import org.varwright.waveform.Signal;

/**
 * Matches channels to what they measure at a bank: by name, unit, size and physics.
 *
 * <p>A name that says phase and stage is believed unless size or angle speak against it; a name that doesn't is completed by size where only one place has
 * that size. Everything else is asked for.
 */
final class ChannelMatcher {
    /** Part by which a current or voltage in good order may be off its calculated value. */
    private static final double FITS = 0.12;

    /** Below this part of what a place carries a channel counts as dead there. */
    private static final double DEAD = 0.03;

    /** A named channel outside these parts of what its place carries in any steady stretch has a wrong scale or a wrong name. */
    private static final double LEAST = 0.3;

    private static final double MOST = 3.6;

    private final Bank bank;
    private final Cycles cycles;
    private final List<Steady> steadies;
    private final Expected expected;
    private final Map<Integer, ChannelMap.Given> given;
    private final List<ChannelMatching.Assignment> assignments = new ArrayList<>();
    private final List<ChannelMatching.Unused> unused = new ArrayList<>();
    private final List<ChannelMatching.Question> questions = new ArrayList<>();

    ChannelMatcher(
            Bank bank, Cycles cycles, List<Steady> steadies, Expected expected, Map<Integer, ChannelMap.Given> given) {
        this.bank = bank;
        this.cycles = cycles;
        this.steadies = steadies;
        this.expected = expected;
        this.given = given;
    }

    ChannelMatching match(List<Channel> channels) {
        for (Channel channel : channels) {
            ChannelMap.Given said = given.get(channel.number());
            if (said != null) {
                take(channel, said);
            } else {
                byName(channel);
            }
        }
        doubles();
        new MatchPhysics(bank, steadies, given.keySet(), assignments, questions).check();
        assignments.sort(Comparator.comparingInt(a -> a.channel().number()));
        return questions.isEmpty()
                ? new ChannelMatching.Matched(assignments, unused)
                : new ChannelMatching.Unclear(assignments, unused, questions);
    }

    private void take(Channel channel, ChannelMap.Given said) {
        if (said.role() instanceof Role.None) {
            unused.add(new ChannelMatching.Unused(channel, "said to be of no use"));
            return;
        }
        Channel.Side side = said.side().orElse(channel.side());
        Channel as = new Channel(
                channel.number(),
                channel.name(),
                channel.phase(),
                channel.component(),
                channel.unit(),
                channel.quantity(),
                side,
                channel.signal());
        if (said.side().isPresent()) {
            assign(channel, said.role(), as.primary(), "as said");
        } else {
            scaled(channel, said.role(), "as said");
        }
    }

    private void byName(Channel channel) {
        ChannelName name = ChannelName.of(channel, bank);
        switch (channel.quantity()) {
            case OTHER -> unused.add(new ChannelMatching.Unused(channel, "neither volts nor amperes"));
            case VOLTS -> volts(channel, name);
            case AMPERES -> amperes(channel, name);
        }
    }

    private void volts(Channel channel, ChannelName name) {
        String phase = name.phase().orElse("");
        if (phase.equals("N")) {
            sensor(channel, name, Channel.Quantity.VOLTS);
        } else if (Role.PAIRS.contains(phase)) {
            if (name.stages().isEmpty()) {
                scaled(channel, new Role.BusLineVolts(phase), "by its name");
            } else {
                unused.add(new ChannelMatching.Unused(
                        channel, "line-to-line voltage behind a switch is not used; voltages to ground are"));
            }
        } else if (Role.PHASES.contains(phase)) {
            if (name.stages().size() == 1) {
                scaled(channel, new Role.StageVolts(name.stages().getFirst(), phase), "by its name");
            } else if (name.stages().isEmpty()) {
                scaled(channel, new Role.BusVolts(phase), "by its name");
            } else {
                ask(
                        List.of(channel),
                        channel.title() + " names more than one " + bank.words().stage(),
                        name.stages().stream()
                                .map(s -> new Role.StageVolts(s, phase).text())
                                .toList());
            }
        } else if (largest(channel.primary()) > DEAD * bank.system().phaseVolts()) {
            ask(
                    List.of(channel),
                    channel.title() + " shows a voltage of "
                            + Dimension.VOLTAGE.format(largest(channel.primary()), 3)
                            + "; its name doesn't say of which phase",
                    Role.PHASES.stream().map(p -> new Role.BusVolts(p).text()).toList());
        } else {
            unused.add(new ChannelMatching.Unused(channel, "its name says no phase, and it shows next to nothing"));
        }
    }

    private void amperes(Channel channel, ChannelName name) {
        String phase = name.phase().orElse("");
        if (phase.equals("N")
                || (name.isUnbalance()
                        && sensors(Channel.Quantity.AMPERES, name).stream()
                                .anyMatch(s -> s.name().endsWith(" " + phase)))) {
            sensor(channel, name, Channel.Quantity.AMPERES);
            return;
        }
        if (!Role.PHASES.contains(phase)) {
            ask(
                    List.of(channel),
                    channel.title() + " is a current; its name doesn't say of which phase",
                    bank.stages().stream()
                            .map(s -> new Role.StageAmperes(s.name(), "A").text())
                            .toList());
            return;
        }
        if (name.stages().size() == 1) {
            scaled(channel, new Role.StageAmperes(name.stages().getFirst(), phase), "by its name");
        } else if (bank.stages().size() == 1) {
            scaled(channel, new Role.StageAmperes(bank.stages().getFirst().name(), phase), "by its name");
        } else {
            bySize(channel, name, phase);
        }
    }

    /** A current of a known phase; only its size can say of which stage. */
    private void bySize(Channel channel, ChannelName name, String phase) {
        List<Role> fitting = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            if (name.stages().isEmpty() || name.stages().contains(stage.name())) {
                Role role = new Role.StageAmperes(stage.name(), phase);
                if (fits(channel.primary(), expected.of(role).orElse(0.0))) {
                    fitting.add(role);
                }
            }
        }
        if (name.stages().isEmpty() && expected.isSomeOfStages(steadyMagnitudes(channel.primary()), phase, FITS)) {
            fitting.add(new Role.BankAmperes(phase));
        }
        boolean known = !(channel.side() instanceof Channel.Side.Unknown);
        if (name.isMain() && known) {
            assign(channel, new Role.BankAmperes(phase), channel.primary(), "by its name");
        } else if (fitting.size() == 1 && known) {
            assign(channel, fitting.getFirst(), channel.primary(), "by its size, which only one place has");
        } else {
            List<Role> choices = fitting.isEmpty()
                    ? bank.stages().stream()
                            .<Role>map(s -> new Role.StageAmperes(s.name(), phase))
                            .toList()
                    : fitting;
            ask(
                    List.of(channel),
                    channel.title() + " carries "
                            + Dimension.CURRENT.format(largest(channel.primary()), 3) + " of phase " + phase + "; "
                            + (fitting.size() > 1
                                    ? "by its size it may belong to any of several places"
                                    : "its name doesn't say where, and no place has that size"),
                    choices.stream().map(Role::text).toList());
        }
    }

    private List<Role.Sensor> sensors(Channel.Quantity quantity, ChannelName name) {
        return ChannelMap.rolesOf(bank).stream()
                .filter(r -> r instanceof Role.Sensor && r.quantity() == quantity)
                .map(r -> (Role.Sensor) r)
                .filter(s -> name.stages().isEmpty() || name.stages().contains(s.stage()))
                .filter(s -> !s.name().contains(Protection.Senses.PHASE_VOLTAGE.code()) || name.isUnbalance())
                .toList();
    }

    private void sensor(Channel channel, ChannelName name, Channel.Quantity quantity) {
        List<Role.Sensor> possible = sensors(quantity, name);
        Optional<String> phase = name.phase().filter(Role.PHASES::contains);
        if (phase.isPresent()) {
            possible = possible.stream()
                    .filter(s -> s.name().endsWith(" " + phase.get()))
                    .toList();
        }
        if (possible.size() == 1) {
            Role.Sensor role = possible.getFirst();
            if (channel.side() instanceof Channel.Side.Unknown && largest(channel.primary()) > 0.0) {
                ask(
                        List.of(channel),
                        "the record doesn't say whether " + channel.title()
                                + " is primary or at the relay; it shows "
                                + dimension(channel).format(largest(channel.primary()), 3),
                        List.of(role.text() + "@primary", role.text() + "@secondary"));
            } else {
                assign(channel, role, channel.primary(), "by its name, the only sensor that it can be");
            }
        } else if (possible.isEmpty()) {
            unused.add(new ChannelMatching.Unused(
                    channel,
                    "the bank file has no sensor in a neutral or bridge of that kind"
                            + (name.stages().isEmpty() ? "" : " at " + Enumeration.of(name.stages()))));
        } else {
            ask(
                    List.of(channel),
                    channel.title() + " may be any of " + possible.size() + " sensors",
                    possible.stream().map(Role.Sensor::text).toList());
        }
    }

    /** A channel whose place is known; its scale is held against what the place carries. */
    private void scaled(Channel channel, Role role, String why) {
        Optional<Double> value = expected.of(role);
        Signal primary = channel.primary();
        if (value.isEmpty()) {
            assign(channel, role, primary, why);
            return;
        }
        double part = largest(primary) / value.get();
        boolean isKnown = !(channel.side() instanceof Channel.Side.Unknown);
        if (isKnown && (part < DEAD || (part > LEAST && part < MOST))) {
            assign(channel, role, primary, why);
        } else if (fits(primary, value.get())) {
            assign(
                    channel,
                    role,
                    primary,
                    why + "; the record doesn't say of which side, its size is that of the primary");
        } else {
            ask(
                    List.of(channel),
                    channel.title() + " shows at most "
                            + dimension(channel).format(largest(primary), 3)
                            + (isKnown ? " by the record's own ratio" : ", of a side that the record doesn't give")
                            + "; "
                            + role.text() + " has " + dimension(channel).format(value.get(), 3)
                            + " in good order: say its ratio",
                    List.of(role.text() + "@PRIMARY:SECONDARY", role.text() + "@primary", "none"));
        }
    }

    /** Two channels in one place: the one that goes on after a stage has opened is the bus, the other stands behind the switch. */
    private void doubles() {
        Map<Role, List<ChannelMatching.Assignment>> byRole = new LinkedHashMap<>();
        assignments.forEach(
                a -> byRole.computeIfAbsent(a.role(), r -> new ArrayList<>()).add(a));
        byRole.forEach((role, all) -> {
            if (all.size() < 2) {
                return;
            }
            assignments.removeAll(all);
            List<String> choices = new ArrayList<>(List.of(role.text()));
            if (role instanceof Role.BusVolts bus) {
                bank.stages().forEach(s -> choices.add(new Role.StageVolts(s.name(), bus.phase()).text()));
            }
            choices.add("none");
            ask(
                    all.stream().map(ChannelMatching.Assignment::channel).toList(),
                    Enumeration.of(all.stream().map(a -> a.channel().title()).toList()) + " both look like "
                            + role.text(),
                    choices);
        });
    }

    private boolean fits(Signal primary, double value) {
        return value > 0.0
                && steadies.stream()
                        .mapToDouble(s -> s.magnitude(primary))
                        .anyMatch(m -> Math.abs(m / value - 1.0) < FITS);
    }

    private List<Double> steadyMagnitudes(Signal primary) {
        return steadies.stream().map(s -> s.magnitude(primary)).toList();
    }

    /** Largest fundamental in a steady stretch; in any cycle where there is none. */
    private double largest(Signal primary) {
        return steadies.stream()
                .mapToDouble(s -> s.magnitude(primary))
                .filter(Double::isFinite)
                .max()
                .orElseGet(() -> cycles.windows().stream()
                        .map(w -> w.phasor(primary))
                        .flatMap(Optional::stream)
                        .mapToDouble(p -> p.magnitude())
                        .max()
                        .orElse(0.0));
    }

    private static Dimension dimension(Channel channel) {
        return channel.quantity() == Channel.Quantity.VOLTS ? Dimension.VOLTAGE : Dimension.CURRENT;
    }

    private void assign(Channel channel, Role role, Signal primary, String why) {
        assignments.add(new ChannelMatching.Assignment(channel, role, primary, List.of(why)));
    }

    private void ask(List<Channel> channels, String what, List<String> choices) {
        questions.add(new ChannelMatching.Question(channels, what, choices));
    }
}
