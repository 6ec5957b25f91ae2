package org.varwright.unbalance;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.network.LegModel;
import org.varwright.network.Supply;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/** Reads what a person types about a sensor's reading. */
public final class SightingReader {
    private final Map<String, Protection> sensors = new LinkedHashMap<>();

    /** A reader for the sensors of a bank. */
    public SightingReader(Bank bank) {
        for (Stage stage : bank.stages()) {
            LegModel model = LegModel.of(bank, stage, Supply.nominal(bank.system()));
            for (int s = 0; s < model.sensorNames().size(); s++) {
                sensors.put(
                        model.sensorNames().get(s), model.sensorProtections().get(s));
            }
        }
    }

    /** Names of the bank's sensors. */
    public List<String> names() {
        return List.copyOf(sensors.keySet());
    }

    /**
     * The sighting.
     *
     * @param reading such as {@code 0.55 A}, or {@code rack neutral-current=0.55 A} where the bank has several sensors
     * @param primary whether it is a primary value; otherwise at the relay
     * @param degrees angle against phase A to ground
     * @param uncertainty as a part
     * @param healthy such as {@code 20 mA∠79} or {@code 20 mA@79}: the same sensor with nothing wrong
     * @param lines such as {@code A=326 A}
     * @throws VarwrightException naming what was typed and what is allowed
     */
    public Sighting read(
            String reading,
            boolean primary,
            OptionalDouble degrees,
            double uncertainty,
            Optional<String> healthy,
            List<String> lines) {
        int at = reading.lastIndexOf('=');
        String sensor = at < 0 ? onlySensor(reading) : named(reading.substring(0, at));
        Protection protection = Objects.requireNonNull(sensors.get(sensor), sensor);
        Dimension dimension = protection.senses().dimension();
        double magnitude = quantity(sensor, dimension, reading.substring(at + 1));
        Map<String, Double> amperes = new LinkedHashMap<>();
        for (String line : lines) {
            int equals = line.indexOf('=');
            if (equals < 0) {
                throw new VarwrightException(Message.MEASURED_SYNTAX, Place.NOWHERE, line);
            }
            String phase = line.substring(0, equals).strip().toUpperCase(java.util.Locale.ROOT);
            amperes.put(phase, quantity("line " + phase, Dimension.CURRENT, line.substring(equals + 1)));
        }
        return new Sighting(
                sensor,
                magnitude,
                primary,
                degrees,
                uncertainty,
                healthy.map(h -> phasor(sensor, dimension, h)),
                amperes);
    }

    private String onlySensor(String reading) {
        if (sensors.size() != 1) {
            throw new VarwrightException(
                    Message.SENSOR_NOT_NAMED, Place.NOWHERE, reading.strip(), known(), String.valueOf(sensors.size()));
        }
        return names().getFirst();
    }

    private String named(String written) {
        String wanted = written.strip().replaceAll("\\s+", " ");
        return sensors.keySet().stream()
                .filter(n -> n.equalsIgnoreCase(wanted))
                .findFirst()
                .orElseThrow(() -> new VarwrightException(Message.SENSOR_UNKNOWN, Place.NOWHERE, wanted, known()));
    }

    private String known() {
        return sensors.isEmpty() ? "none; the bank file has no protection" : String.join(", ", sensors.keySet());
    }

    private static Complex phasor(String sensor, Dimension dimension, String typed) {
        List<String> parts = List.of(typed.split("[∠@]", -1));
        if (parts.size() != 2) {
            throw new VarwrightException(Message.PHASOR_SYNTAX, new Place("", 0, 0, sensor), typed);
        }
        String angle = parts.get(1).strip().replace("°", "").replace('−', '-');
        double degrees;
        try {
            degrees = Double.parseDouble(angle);
        } catch (NumberFormatException e) {
            throw new VarwrightException(Message.PHASOR_SYNTAX, new Place("", 0, 0, sensor), typed);
        }
        if (!(Math.abs(degrees) <= 360.0)) {
            throw new VarwrightException(Message.PHASOR_SYNTAX, new Place("", 0, 0, sensor), typed);
        }
        return Complex.polar(quantity(sensor, dimension, parts.getFirst()), degrees);
    }

    private static double quantity(String name, Dimension dimension, String typed) {
        Place place = new Place("", 0, 0, name);
        return switch (dimension.parse(typed.strip())) {
            case Reading.Value v -> v.si();
            case Reading.NoUnit r -> throw new VarwrightException(Message.NO_UNIT, place, r.text(), example(dimension));
            case Reading.WrongUnit r ->
                throw new VarwrightException(
                        Message.WRONG_UNIT,
                        place,
                        r.text(),
                        r.unit(),
                        String.join(", ", dimension.units()),
                        example(dimension));
            case Reading.NotANumber r ->
                throw new VarwrightException(Message.NOT_A_QUANTITY, place, r.text(), example(dimension));
            case Reading.DecimalComma r ->
                throw new VarwrightException(Message.DECIMAL_COMMA, place, r.text(), r.suggestion());
        };
    }

    private static String example(Dimension dimension) {
        return dimension == Dimension.VOLTAGE ? "6.2 V" : "0.55 A";
    }
}
