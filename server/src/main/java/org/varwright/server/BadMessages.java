package org.varwright.server;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.server.handler.ErrorHandler;

/** Answers to heads that never become a request, such as a path with a zero byte in it: the same problem details and headers as every refusal. */
final class BadMessages extends ErrorHandler {
    @Override
    public ByteBuffer badMessageError(int status, String reason, HttpFields.Mutable fields) {
        Guard.HARDENING.forEach(fields::put);
        fields.put("Content-Type", Refusal.MEDIA_TYPE);
        return ByteBuffer.wrap(Refusal.of(
                        status,
                        "this is no request that can be read; see what a program or an address bar has put into it")
                .json()
                .getBytes(StandardCharsets.UTF_8));
    }
}
