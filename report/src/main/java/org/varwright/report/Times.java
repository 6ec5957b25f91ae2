package org.varwright.report;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.varwright.job.JobEvent;

/** Times of events: what the clock of the device that wrote showed, in one zone. */
public record Times(ZoneId zone) {
    private static final DateTimeFormatter MINUTES = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final DateTimeFormatter SECONDS = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm:ss", Locale.ROOT);

    public String minute(JobEvent event) {
        return MINUTES.format(at(event).atZone(zone));
    }

    public String second(JobEvent event) {
        return SECONDS.format(at(event).atZone(zone));
    }

    LocalDate day(JobEvent event) {
        return LocalDate.ofInstant(at(event), zone);
    }

    private static Instant at(JobEvent event) {
        return Instant.ofEpochMilli(event.clock().wallMillis());
    }
}
