/**
 * The HTTP server of one person, on loopback: banks, jobs and attachments on disk, under an API that {@code openapi.yaml} describes.
 *
 * <pre>
 *   app ──HTTP──▶ Guard ──▶ BankRoutes, JobRoutes, AttachmentRoutes ──▶ Store (SQLite), Attachments (files)
 *                                         └──▶ core: BankFile, JobLog, Job
 * </pre>
 */
@NullMarked
package org.varwright.server;

import org.jspecify.annotations.NullMarked;
