package org.varwright.server;

import io.javalin.http.Context;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Tags of versions: ETag, If-None-Match. */
final class Tags {
    private Tags() {}

    /** Whether {@code If-None-Match} names that tag, weak or strong. */
    static boolean names(@Nullable String ifNoneMatch, String tag) {
        return ifNoneMatch != null
                && Arrays.stream(ifNoneMatch.split(",", -1))
                        .map(t -> t.strip().replaceFirst("^W/", ""))
                        .anyMatch(t -> t.equals(tag) || t.equals("*"));
    }

    /** Tags the answer with a hash; true where who asks has that version already, and 304 is the whole answer. */
    static boolean isHeldAlready(Context context, String hash) {
        String tag = '"' + hash + '"';
        context.header("ETag", tag);
        if (names(context.header("If-None-Match"), tag)) {
            context.status(304);
            return true;
        }
        return false;
    }
}
