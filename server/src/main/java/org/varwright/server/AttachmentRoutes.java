package org.varwright.server;

import io.javalin.http.Context;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Attachments. */
final class AttachmentRoutes {
    private final Attachments attachments;

    AttachmentRoutes(Attachments attachments) {
        this.attachments = attachments;
    }

    /** The bytes as a download, never as a page: what was uploaded must not run here. */
    void get(Context context) throws IOException {
        Path file = attachments
                .find(context.pathParam("sha256"))
                .orElseThrow(() -> Refusal.of(404, "there is no such attachment"));
        context.header("Content-Disposition", "attachment");
        context.contentType("application/octet-stream").result(Files.newInputStream(file));
    }

    void put(Context context) throws IOException {
        try {
            boolean isNew = attachments.keep(context.pathParam("sha256"), context.bodyInputStream());
            context.status(isNew ? 201 : 204);
        } catch (EOFException e) {
            throw Bodies.cutOff();
        }
    }
}
