package org.varwright.server;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;

/** Answers to what never becomes a request, such as a path with a zero byte in it: the same problem details and headers as every refusal. */
final class BadMessages extends ErrorHandler {
    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        Guard.HARDENING.forEach((name, value) -> response.getHeaders().put(name, value));
        response.getHeaders().put("Content-Type", Refusal.MEDIA_TYPE);
        byte[] problem = Refusal.of(
                        response.getStatus(),
                        "this is no request that can be read; see what a program or an address bar has put into it")
                .json()
                .getBytes(StandardCharsets.UTF_8);
        response.write(true, ByteBuffer.wrap(problem), callback);
        return true;
    }
}
