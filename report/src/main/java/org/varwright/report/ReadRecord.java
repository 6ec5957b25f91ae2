package org.varwright.report;

import org.varwright.record.RecordStudy;

/**
 * A disturbance record that belongs to a job.
 *
 * @param name of its file
 * @param study what it says
 */
public record ReadRecord(String name, RecordStudy study) {}
