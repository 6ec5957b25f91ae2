package org.varwright.server;

import io.javalin.http.Context;
import java.io.IOException;
import org.varwright.archive.JobArchive;
import org.varwright.job.JobLog;

/** A whole job as one file. */
final class ArchiveRoutes {
    private final ToldJobs jobs;
    private final Attachments attachments;

    ArchiveRoutes(ToldJobs jobs, Attachments attachments) {
        this.jobs = jobs;
        this.attachments = attachments;
    }

    /** Streamed: attachments never lie in memory. One that no device has sent yet is left out; the archive's reader names it. */
    void get(Context context) throws IOException {
        String name = Bodies.name(context, "job");
        JobLog log = jobs.log(name);
        context.disableCompression();
        context.contentType("application/zip");
        context.header("Content-Disposition", "attachment; filename=\"" + name + ".zip\"");
        JobArchive.write(log, attachments::find, context.outputStream());
    }
}
