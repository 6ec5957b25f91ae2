package org.varwright.bankfile;

import java.util.List;
import java.util.stream.Stream;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.problem.Message;
import org.varwright.quantity.Dimension;

/** Holds sensors and settings against the stage that they watch. */
final class ProtectionCheck {
    private ProtectionCheck() {}

    static void check(Draft draft, Findings findings) {
        for (Item<Protection> item : draft.protection()) {
            settings(item, findings);
            draft.stage(item.value().stage()).ifPresent(stage -> sensor(item, stage.value(), findings));
        }
    }

    private static void sensor(Item<Protection> item, Stage stage, Findings findings) {
        Protection.Senses senses = item.value().senses();
        if (!fits(senses, stage.connection())) {
            List<String> fitting = Stream.of(Protection.Senses.values())
                    .filter(s -> fits(s, stage.connection()))
                    .map(Protection.Senses::code)
                    .toList();
            findings.error(
                    Message.SENSOR_DOES_NOT_FIT,
                    findings.place(item.path() + ".senses"),
                    senses.code(),
                    stage.connection().code(),
                    fitting.isEmpty() ? "no sensor of this list fits it" : "allowed are " + Shown.words(fitting));
        } else if (senses == Protection.Senses.PHASE_VOLTAGE
                && UnitDuty.layouts(stage).stream().anyMatch(layout -> layout.groups() < 2)) {
            findings.error(
                    Message.SENSOR_DOES_NOT_FIT,
                    findings.place(item.path() + ".senses"),
                    senses.code(),
                    stage.connection().code(),
                    "a tap needs at least two groups in series");
        } else if (senses != Protection.Senses.PHASE_VOLTAGE && stage.hasThreePhaseUnits()) {
            findings.error(
                    Message.SENSOR_DOES_NOT_FIT,
                    findings.place(item.path() + ".senses"),
                    senses.code(),
                    stage.connection().code(),
                    "its three-phase units have their neutral inside, where no sensor reaches it");
        }
    }

    static boolean fits(Protection.Senses senses, Connection connection) {
        return switch (senses) {
            case NEUTRAL_VOLTAGE -> connection.hasFloatingNeutral();
            case NEUTRAL_CURRENT -> connection.isDoubleWye() || connection.isGrounded();
            case NEUTRAL_DIFFERENTIAL -> connection == Connection.DOUBLE_WYE_GROUNDED;
            case BRIDGE_CURRENT -> connection.isBridge();
            case PHASE_VOLTAGE -> connection != Connection.DELTA;
        };
    }

    private static void settings(Item<Protection> item, Findings findings) {
        Protection p = item.value();
        if (p.alarm().isEmpty() && p.trip().isEmpty()) {
            findings.warning(Message.NO_SETTINGS, findings.place(item.path()));
        }
        if (p.alarm().isEmpty() || p.trip().isEmpty()) {
            return;
        }
        double alarm = p.alarm().getAsDouble();
        double trip = p.trip().getAsDouble();
        Dimension dimension = p.senses().dimension();
        if (alarm > trip) {
            findings.error(
                    Message.ALARM_ABOVE_TRIP,
                    findings.place(item.path() + ".alarm"),
                    dimension.format(alarm),
                    dimension.format(trip));
        } else if (alarm == trip) {
            findings.warning(Message.ALARM_AT_TRIP, findings.place(item.path() + ".alarm"), dimension.format(alarm));
        }
    }
}
