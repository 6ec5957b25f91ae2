package org.varwright.fuse;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What is asked about a bank's fuses beyond the bank file.
 *
 * @param stage the one stage to look at; empty: all
 * @param link a standard link to judge in place of the fitted ones; empty: those of the file
 * @param branchOhms resistance of one unit's fuse and leads [Ω]
 * @param branchHenries inductance of one unit's fuse and leads [H]
 */
public record FuseOptions(
        Optional<String> stage, Optional<Link> link, OptionalDouble branchOhms, OptionalDouble branchHenries) {
    /** The bank as its file describes it. */
    public static final FuseOptions AS_FILED =
            new FuseOptions(Optional.empty(), Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty());
}
