package org.varwright.report.document;

import java.util.List;

/**
 * A part of a report with a heading of its own.
 *
 * @param title heading
 * @param page whether it begins a page
 * @param blocks in reading order
 */
public record Section(String title, PageStart page, List<Block> blocks) {
    public Section {
        blocks = List.copyOf(blocks);
    }

    /** Where a section begins. */
    public enum PageStart {
        /** After the section before it. */
        RUN_ON,
        /** At the top of a page: a sheet that may be handed to someone on its own. */
        NEW_PAGE
    }

    /** A section that runs on after the one before it. */
    public static Section of(String title, Block... blocks) {
        return new Section(title, PageStart.RUN_ON, List.of(blocks));
    }

    /** A section that is not part of this job, which one line says. */
    public static Section absent(String title, String why) {
        return of(title, new Block.Paragraph(why));
    }
}
