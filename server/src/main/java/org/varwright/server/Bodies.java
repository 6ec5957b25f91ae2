package org.varwright.server;

import io.javalin.http.Context;
import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import org.varwright.job.JobEvent;

/** Bodies of requests, in bounded memory. */
final class Bodies {
    private Bodies() {}

    /**
     * The body's bytes.
     *
     * @throws Refusal 413 where it is longer than {@code most}, 400 where it ends before its length
     */
    static byte[] bytes(Context context, int most, String what) throws IOException {
        byte[] bytes;
        try {
            bytes = context.bodyInputStream().readNBytes(most + 1);
        } catch (EOFException e) {
            throw cutOff();
        }
        if (bytes.length > most) {
            throw Refusal.of(413, what + " has at most " + most + " bytes; is it the right file?");
        }
        return bytes;
    }

    /** What who sent it is told where the line broke. */
    static Refusal cutOff() {
        return Refusal.of(400, "what was sent ended too early; nothing of it was taken in, send it again");
    }

    /**
     * The body as text.
     *
     * @throws Refusal 413 as above, 422 where it is not UTF-8
     */
    static String text(Context context, int most, String what) throws IOException {
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(bytes(context, most, what)))
                    .toString();
        } catch (CharacterCodingException e) {
            throw Refusal.of(422, what + " is not UTF-8 text");
        }
    }

    /**
     * A name out of the path.
     *
     * @throws Refusal 404 where it can't be one
     */
    static String name(Context context, String parameter) {
        String name = context.pathParam(parameter);
        if (!JobEvent.isName(name)) {
            throw Refusal.of(404, "\"" + parameter + "\" is named with small letters, digits and hyphens, at most 40");
        }
        return name;
    }
}
