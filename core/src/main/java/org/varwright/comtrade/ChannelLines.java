package org.varwright.comtrade;

import java.util.Locale;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** Reads the lines of analog and status channels. */
final class ChannelLines {
    private static final int ANALOG_1991 = 10;
    private static final int ANALOG_1999 = 13;
    private static final int ANALOG_LEAST = 7;
    private static final int STATUS_1991 = 3;
    private static final int STATUS_1999 = 5;

    private final Source source;
    private final Remarks remarks;

    ChannelLines(Source source, Remarks remarks) {
        this.source = source;
        this.remarks = remarks;
    }

    /**
     * An analog channel without values. Fields: number, id, phase, component, unit, a, b, skew, min, max; from 1999 on primary, secondary, P or S.
     *
     * @throws VarwrightException {@code RECORD_CHANNEL_LINE} where it has too few fields to be one
     */
    Analog analog(ConfigurationLine line, int number) {
        int fields = line.size();
        int surplus = Math.max(0, fields - ANALOG_1999);
        if (fields < ANALOG_LEAST) {
            throw new VarwrightException(
                    Message.RECORD_CHANNEL_LINE,
                    source.at(line.number(), 1),
                    "analog",
                    Integer.toString(number),
                    Integer.toString(fields),
                    "13 (10 in the form of 1991)");
        }
        if (surplus > 0 && isSide(line.text(ANALOG_1999 - 1)) && !isSide(line.text(fields - 1))) {
            // complete without what follows, such as a comma at the end
            surplus = 0;
            remarks.add(
                    Message.RECORD_LINE_FIELDS,
                    source.at(line.number(), line.column(ANALOG_1999)),
                    Integer.toString(fields - ANALOG_1999));
        } else if (surplus > 0) {
            remarks.add(
                    Message.RECORD_COMMA_IN_NAME, source.at(line.number(), line.column(1)), line.text(1, 1 + surplus));
        } else if (fields != ANALOG_1991 && fields != ANALOG_1999) {
            remarks.add(
                    Message.RECORD_FIELDS_MISSING,
                    source.at(line.number(), 1),
                    Integer.toString(fields),
                    "13 (10 in the form of 1991)");
        }
        String name = line.text(1, 1 + surplus);
        int at = surplus;
        Scale scale =
                new Scale(line.numberAt(at + 5), line.numberAt(at + 6), line.numberAt(at + 8), line.numberAt(at + 9));
        if (Double.isNaN(scale.multiplier()) || Double.isNaN(scale.offset())) {
            remarks.add(
                    Message.RECORD_NO_SCALE,
                    source.at(line.number(), line.column(at + 5)),
                    title(name, number),
                    line.text(at + 5),
                    line.text(at + 6));
        } else if (scale.multiplier() == 0.0) {
            remarks.add(
                    Message.RECORD_CONSTANT_CHANNEL,
                    source.at(line.number(), line.column(at + 5)),
                    title(name, number));
        }
        numberGiven(line, number);
        return new Analog(
                number,
                name,
                line.text(at + 2),
                line.text(at + 3),
                line.text(at + 4),
                scale,
                ratio(line, at, title(name, number)),
                skew(line, at, title(name, number)),
                Samples.NONE);
    }

    private double skew(ConfigurationLine line, int at, String title) {
        double micros = line.numberAt(at + 7);
        if (Double.isNaN(micros)) {
            remarks.add(Message.RECORD_SKEW, source.at(line.number(), line.column(at + 7)), title, line.text(at + 7));
            return 0.0;
        }
        return micros * 1e-6;
    }

    private Ratio ratio(ConfigurationLine line, int at, String title) {
        if (line.size() - at <= ANALOG_1991) {
            return Ratio.UNKNOWN;
        }
        String letter = line.text(at + 12);
        Ratio.Side side = switch (letter.toUpperCase(Locale.ROOT)) {
            case "P" -> Ratio.Side.PRIMARY;
            case "S" -> Ratio.Side.SECONDARY;
            default -> Ratio.Side.UNKNOWN;
        };
        Place place = source.at(line.number(), line.column(at + 10));
        if (side == Ratio.Side.UNKNOWN) {
            remarks.add(Message.RECORD_SIDE, place, title, letter);
        }
        Ratio ratio = new Ratio(side, line.numberAt(at + 10), line.numberAt(at + 11));
        if (side != Ratio.Side.UNKNOWN && Double.isNaN(ratio.toPrimary() / ratio.toSecondary())) {
            remarks.add(Message.RECORD_RATIO, place, title, line.text(at + 10), line.text(at + 11));
        } else if (side == Ratio.Side.SECONDARY && ratio.isOneToOne()) {
            remarks.add(Message.RECORD_RATIO_ONE, place, title);
        }
        return ratio;
    }

    /**
     * A status channel without states. Fields: number, id, normal state; from 1999 on number, id, phase, component, normal state.
     *
     * @throws VarwrightException {@code RECORD_CHANNEL_LINE} where it looks like an analog one
     */
    Status status(ConfigurationLine line, int number) {
        int fields = line.size();
        if ((fields >= ANALOG_1991 && !Double.isNaN(line.numberAt(fields - 5))) || fields < 2) {
            throw new VarwrightException(
                    Message.RECORD_CHANNEL_LINE,
                    source.at(line.number(), 1),
                    "status",
                    Integer.toString(number),
                    Integer.toString(fields),
                    "5 (3 in the form of 1991)");
        }
        boolean isShort = fields <= STATUS_1991 + 1;
        int surplus = Math.max(0, fields - STATUS_1999);
        if (surplus > 0) {
            remarks.add(
                    Message.RECORD_COMMA_IN_NAME, source.at(line.number(), line.column(1)), line.text(1, 1 + surplus));
        } else if (fields != STATUS_1991 && fields != STATUS_1999) {
            remarks.add(
                    Message.RECORD_FIELDS_MISSING,
                    source.at(line.number(), 1),
                    Integer.toString(fields),
                    "5 (3 in the form of 1991)");
        }
        String name = line.text(1, 1 + surplus);
        String letter = fields < STATUS_1991 ? "" : line.text(fields - 1);
        Status.Normal normal = switch (letter) {
            case "0" -> Status.Normal.ZERO;
            case "1" -> Status.Normal.ONE;
            default -> Status.Normal.UNKNOWN;
        };
        if (normal == Status.Normal.UNKNOWN) {
            remarks.add(
                    Message.RECORD_NORMAL,
                    source.at(line.number(), line.column(fields - 1)),
                    name.isBlank() ? "status channel " + number : name,
                    letter);
        }
        numberGiven(line, number);
        return new Status(
                number,
                name,
                isShort ? "" : line.text(surplus + 2),
                isShort ? "" : line.text(surplus + 3),
                normal,
                Bits.of());
    }

    private void numberGiven(ConfigurationLine line, int number) {
        if (line.numberAt(0) != number) {
            remarks.add(
                    Message.RECORD_CHANNEL_NUMBER, source.at(line.number(), 1), line.text(0), Integer.toString(number));
        }
    }

    private static boolean isSide(String text) {
        return text.equalsIgnoreCase("P") || text.equalsIgnoreCase("S");
    }

    private static String title(String name, int number) {
        return name.isBlank() ? "analog channel " + number : name;
    }
}
