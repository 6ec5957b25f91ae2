package org.varwright.job;

import java.util.List;

/**
 * An event that is kept and shown but changes nothing.
 *
 * @param event which
 * @param reasons why, in words
 */
public record NotCounted(JobEvent event, List<String> reasons) {
    public NotCounted {
        reasons = List.copyOf(reasons);
    }
}
