package org.varwright.job;

import org.varwright.json.Json;

/**
 * One event.
 *
 * @param id {@code DEVICE:SEQ}
 * @param job which job
 * @param device which device wrote it
 * @param seq 1, 2, 3 … on that device in that job
 * @param clock when
 * @param by who
 * @param fact what
 * @param previous hash of this device's line before; empty for its first
 */
public record JobEvent(
        String id, String job, String device, int seq, JobClock clock, String by, Fact fact, String previous) {

    /** An event with the id that belongs to it. */
    static JobEvent of(String job, String device, int seq, JobClock clock, String by, Fact fact, String previous) {
        return new JobEvent(device + ":" + seq, job, device, seq, clock, by, fact, previous);
    }

    /** Whether a job or device may be called so: small letters, digits and hyphens, at most 40. It becomes part of ids and file names. */
    public static boolean isName(String name) {
        return EventReader.NAME.matcher(name).matches();
    }

    /** The word for what has happened, such as {@code step-confirmed}. */
    public String type() {
        return FactJson.type(fact);
    }

    /** The line to be kept. */
    String line() {
        return Json.object()
                .put("id", id)
                .put("job", job)
                .put("device", device)
                .put("seq", seq)
                .put(
                        "clock",
                        Json.object()
                                .put("wall", (double) clock.wallMillis())
                                .put("order", (double) clock.orderMillis())
                                .put("count", clock.count())
                                .build())
                .put("by", by)
                .put("type", FactJson.type(fact))
                .put("body", FactJson.body(fact))
                .put("previous", previous)
                .build()
                .printLine();
    }
}
