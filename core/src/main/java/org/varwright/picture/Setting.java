package org.varwright.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.varwright.bank.Protection;

/**
 * A setting of a sensor as a primary value.
 *
 * @param words such as {@code alarm 420 V}
 */
record Setting(double primary, String words) {
    /** Alarm and trip, as far as they are set and known as primary values. */
    static List<Setting> of(Protection protection) {
        List<Setting> settings = new ArrayList<>();
        add(settings, protection, protection.alarm(), "alarm");
        add(settings, protection, protection.trip(), "trip");
        return settings;
    }

    private static void add(List<Setting> settings, Protection protection, OptionalDouble set, String word) {
        if (set.isPresent()
                && (protection.settingsArePrimary() || protection.ratio().isPresent())) {
            double primary = protection.settingsArePrimary()
                    ? set.getAsDouble()
                    : set.getAsDouble() / protection.ratio().orElseThrow().factor();
            settings.add(new Setting(
                    primary, word + " " + protection.senses().dimension().format(primary, 3)));
        }
    }
}
