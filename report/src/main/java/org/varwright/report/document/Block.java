package org.varwright.report.document;

import java.util.Arrays;
import java.util.List;

/** One piece of a section. */
public sealed interface Block {
    /** A heading inside a section. */
    record Subheading(String text) implements Block {}

    /** Running text. */
    record Paragraph(String text) implements Block {}

    /** Points of equal rank. */
    record Bullets(List<String> points) implements Block {
        public Bullets {
            points = List.copyOf(points);
        }
    }

    /**
     * Text in a frame.
     *
     * @param weight how hard it must strike the eye
     * @param title first words
     * @param points one paragraph each
     */
    record Notice(Weight weight, String title, List<String> points) implements Block {
        public Notice {
            points = List.copyOf(points);
        }

        /** Weight of a notice, told by the frame and the first word, never by colour. */
        public enum Weight {
            CAUTION,
            NOTE
        }
    }

    /** Names and values. */
    record Facts(List<Fact> facts) implements Block {
        public Facts {
            facts = List.copyOf(facts);
        }

        /** A name with its value. */
        public record Fact(String name, String value) {}
    }

    /**
     * Columns and rows; the head is repeated on every page, a row is never split.
     *
     * @param caption what the table holds, for those who hear it read; empty where the heading says it
     * @param columns at least one
     * @param rows each with as many cells as there are columns
     */
    record Table(String caption, List<Column> columns, List<Row> rows) implements Block {
        public Table {
            columns = List.copyOf(columns);
            rows = List.copyOf(rows);
            for (Row row : rows) {
                if (row.cells().size() != columns.size()) {
                    throw new IllegalArgumentException(
                            "a row of " + row.cells().size() + " cells under " + columns.size() + " columns");
                }
            }
        }

        /**
         * A column.
         *
         * @param title head
         * @param percent width in percent of the line
         * @param align where cells stand
         */
        public record Column(String title, int percent, Align align) {
            public static Column left(String title, int percent) {
                return new Column(title, percent, Align.LEFT);
            }

            public static Column right(String title, int percent) {
                return new Column(title, percent, Align.RIGHT);
            }
        }

        /** Where the text of a column stands. */
        public enum Align {
            LEFT,
            RIGHT
        }

        /** One line of cells. */
        public record Row(List<Cell> cells) {
            public Row {
                cells = List.copyOf(cells);
            }

            /** A row of plain cells. */
            public static Row of(String... texts) {
                return new Row(List.of(texts).stream().<Cell>map(Cell.Text::new).toList());
            }
        }

        /** What stands in a cell. */
        public sealed interface Cell {
            /** Plain text. */
            record Text(String text) implements Cell {}

            /** Text that matters more than its row. */
            record Strong(String text) implements Cell {}

            /** A text with lines of reasons under it. */
            record Explained(String text, List<String> reasons) implements Cell {
                public Explained {
                    reasons = List.copyOf(reasons);
                }
            }

            /** Nothing yet: a place to write in, high enough for a hand. */
            record ToFillIn() implements Cell {}

            /** A box to tick. */
            record ToTick() implements Cell {}
        }
    }

    /** The steps of an order of work, each to be ticked and signed. */
    record Steps(List<StepLine> steps) implements Block {
        public Steps {
            steps = List.copyOf(steps);
        }
    }

    /** Lines to tick: a box and what it stands for, each with room for a name and a time. */
    record Ticks(List<String> lines) implements Block {
        public Ticks {
            lines = List.copyOf(lines);
        }
    }

    /** A line to sign for each of these. */
    record Signatures(List<String> roles) implements Block {
        public Signatures {
            roles = List.copyOf(roles);
        }
    }

    /**
     * A drawing.
     *
     * @param svg well-formed SVG without scripts or outside references
     * @param description what it shows, for those who can't see it
     */
    record Figure(String svg, String description) implements Block {}

    /**
     * A photograph.
     *
     * @param jpeg the picture as JPEG in sRGB
     * @param width in pixels
     * @param height in pixels
     * @param description what it is of
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared; copied by nobody
    record Photograph(byte[] jpeg, int width, int height, String description) implements Block {
        /** Told by what is in it: the same document has the same text on every run. */
        @Override
        public String toString() {
            return "Photograph[" + Arrays.hashCode(jpeg) + ", " + width + ", " + height + ", " + description + "]";
        }
    }
}
