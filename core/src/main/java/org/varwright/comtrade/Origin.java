package org.varwright.comtrade;

/**
 * How a record is written.
 *
 * @param revision by which its lines were read
 * @param year as written; empty where it has none
 * @param format of its samples
 * @param codePage of its names
 * @param samples in its data, of which a part may have been read
 */
public record Origin(Revision revision, String year, DataFormat format, String codePage, long samples) {}
