package org.varwright.record;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.network.LegModel;
import org.varwright.network.Supply;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** What a person says about channels: {@code "NAME=ROLE"} or {@code "NAME=ROLE@SIDE"}. */
public final class ChannelMap {
    private final Bank bank;
    private final List<Role> roles;

    /**
     * What was said about one channel.
     *
     * @param role what it measures
     * @param side of its values; empty where the record's word counts
     */
    record Given(Role role, Optional<Channel.Side> side) {}

    /** A reader for the roles that a bank has. */
    public ChannelMap(Bank bank) {
        this.bank = bank;
        this.roles = rolesOf(bank);
    }

    /** Every role that a channel can have at a bank. */
    static List<Role> rolesOf(Bank bank) {
        List<Role> roles = new ArrayList<>();
        Role.PHASES.forEach(p -> roles.add(new Role.BusVolts(p)));
        Role.PAIRS.forEach(p -> roles.add(new Role.BusLineVolts(p)));
        Role.PHASES.forEach(p -> roles.add(new Role.BankAmperes(p)));
        for (Stage stage : bank.stages()) {
            Role.PHASES.forEach(p -> roles.add(new Role.StageAmperes(stage.name(), p)));
            Role.PHASES.forEach(p -> roles.add(new Role.StageVolts(stage.name(), p)));
            LegModel model = LegModel.of(bank, stage, Supply.nominal(bank.system()));
            for (int s = 0; s < model.sensorNames().size(); s++) {
                roles.add(new Role.Sensor(
                        model.sensorNames().get(s),
                        stage.name(),
                        model.sensorProtections().get(s).senses().unit().equals("V")));
            }
        }
        return List.copyOf(roles);
    }

    /**
     * The channels that were spoken of, by number.
     *
     * @param typed one text a channel
     * @param channels of the record
     * @throws VarwrightException {@code CHANNEL_MAP_…} naming what was typed and what is allowed
     */
    Map<Integer, Given> read(List<String> typed, List<Channel> channels) {
        Map<Integer, Given> given = new LinkedHashMap<>();
        for (String text : typed) {
            int at = text.lastIndexOf('=');
            if (at <= 0 || at == text.length() - 1) {
                throw new VarwrightException(Message.CHANNEL_MAP_SYNTAX, Place.NOWHERE, text);
            }
            Channel channel = channel(text.substring(0, at).strip(), channels);
            String right = text.substring(at + 1).strip();
            int sideAt = right.lastIndexOf('@');
            Role role = role((sideAt < 0 ? right : right.substring(0, sideAt)).strip());
            if (!(role instanceof Role.None) && role.quantity() != channel.quantity()) {
                throw new VarwrightException(
                        Message.CHANNEL_MAP_UNIT, Place.NOWHERE, channel.name(), channel.unit(), role.text());
            }
            if (given.containsKey(channel.number())) {
                throw new VarwrightException(Message.CHANNEL_MAP_TWICE, Place.NOWHERE, channel.name());
            }
            Optional<Channel.Side> side = sideAt < 0
                    ? Optional.empty()
                    : Optional.of(side(right.substring(sideAt + 1).strip(), role, text));
            given.put(channel.number(), new Given(role, side));
        }
        return given;
    }

    private static Channel channel(String name, List<Channel> channels) {
        List<Channel> found =
                channels.stream().filter(c -> c.name().strip().equals(name)).toList();
        if (found.isEmpty()) {
            found = channels.stream()
                    .filter(c -> c.name().strip().equalsIgnoreCase(name)
                            || String.valueOf(c.number()).equals(name))
                    .toList();
        }
        if (found.size() == 1) {
            return found.getFirst();
        }
        throw new VarwrightException(
                found.isEmpty() ? Message.CHANNEL_MAP_UNKNOWN : Message.CHANNEL_MAP_AMBIGUOUS,
                Place.NOWHERE,
                name,
                String.join(
                        ", ",
                        channels.stream()
                                .map(c -> c.number() + " " + c.name().strip())
                                .toList()));
    }

    private Role role(String text) {
        String wanted = text.replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
        if (wanted.equals("none")) {
            return new Role.None();
        }
        return roles.stream()
                .filter(r -> r.text().toLowerCase(Locale.ROOT).equals(wanted))
                .findFirst()
                .orElseThrow(() -> new VarwrightException(
                        Message.CHANNEL_MAP_ROLE,
                        Place.NOWHERE,
                        text,
                        String.join(", ", roles.stream().map(Role::text).toList()) + ", none"));
    }

    private Channel.Side side(String text, Role role, String whole) {
        if (text.equalsIgnoreCase("primary")) {
            return new Channel.Side.Primary();
        }
        if (text.equalsIgnoreCase("secondary") && role instanceof Role.Sensor sensor) {
            return ratioOf(bank, sensor)
                    .<Channel.Side>map(Channel.Side.Secondary::new)
                    .orElseThrow(() -> new VarwrightException(Message.SENSOR_RATIO, Place.NOWHERE, sensor.name()));
        }
        String[] parts = text.split(":", -1);
        if (parts.length == 2) {
            try {
                double primary = Double.parseDouble(parts[0].strip());
                double secondary = Double.parseDouble(parts[1].strip());
                if (primary > 0.0 && secondary > 0.0 && Double.isFinite(primary / secondary)) {
                    return new Channel.Side.Secondary(primary / secondary);
                }
            } catch (NumberFormatException e) {
                // said below
            }
        }
        throw new VarwrightException(Message.CHANNEL_MAP_SIDE, Place.NOWHERE, whole, text);
    }

    /** Primary over secondary of a sensor by the bank file; empty where the file doesn't say. */
    static Optional<Double> ratioOf(Bank bank, Role.Sensor sensor) {
        return bank.protection().stream()
                .filter(p ->
                        sensor.name().startsWith(p.stage() + " " + p.senses().code()))
                .findFirst()
                .flatMap(p -> p.ratio())
                .map(r -> r.primary() / r.secondary());
    }
}
