package org.varwright.job;

/**
 * When an event was written: the device's own wall clock, and a hybrid logical clock that never runs backwards and puts an event behind everything that its device had
 * seen.
 *
 * @param wallMillis what the device's clock showed [ms since 1970-01-01T00:00Z]; may jump either way
 * @param orderMillis the largest time seen so far, own clock included [ms]
 * @param count tells events of the same {@code orderMillis} apart
 */
public record JobClock(long wallMillis, long orderMillis, int count) implements Comparable<JobClock> {
    /** Before everything. */
    static final JobClock ZERO = new JobClock(0, 0, 0);

    /** The next time after this one, at a device whose clock shows {@code wallMillis}. */
    JobClock next(long nowMillis) {
        return nowMillis > orderMillis
                ? new JobClock(nowMillis, nowMillis, 0)
                : new JobClock(nowMillis, orderMillis, count + 1);
    }

    /** By what had been seen, never by the wall clock. */
    @Override
    public int compareTo(JobClock other) {
        int byOrder = Long.compare(orderMillis, other.orderMillis);
        return byOrder != 0 ? byOrder : Integer.compare(count, other.count);
    }
}
