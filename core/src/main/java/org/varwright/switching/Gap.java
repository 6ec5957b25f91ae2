package org.varwright.switching;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Something that the bank file doesn't say.
 *
 * @param subjects of what, such as names of stages
 * @param missing what, with the key to write
 * @param effect what can't be answered without it, or how it was counted and which way that errs
 */
public record Gap(List<String> subjects, String missing, String effect) {
    public Gap {
        subjects = List.copyOf(subjects);
    }

    static Gap of(String subject, String missing, String effect) {
        return new Gap(List.of(subject), missing, effect);
    }

    /** The same things missing of several subjects, said once. */
    static List<Gap> merged(Collection<Gap> gaps) {
        Map<Gap, Set<String>> subjects = new LinkedHashMap<>();
        for (Gap gap : gaps) {
            subjects.computeIfAbsent(new Gap(List.of(), gap.missing(), gap.effect()), k -> new LinkedHashSet<>())
                    .addAll(gap.subjects());
        }
        List<Gap> merged = new ArrayList<>();
        subjects.forEach((gap, of) -> merged.add(new Gap(List.copyOf(of), gap.missing(), gap.effect())));
        return merged;
    }
}
