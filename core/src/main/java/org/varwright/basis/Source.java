package org.varwright.basis;

/**
 * Where a formula or a limit comes from.
 *
 * @param text document and clause, such as {@code IEEE Std 18}, or {@code first principles}
 * @param standing how far it can be leaned on
 */
public record Source(String text, Standing standing) {
    public static final Source FIRST_PRINCIPLES = new Source("first principles", Standing.FIRST_PRINCIPLES);
    public static final Source COMMON_PRACTICE = new Source("", Standing.COMMON_PRACTICE);

    public static Source published(String text) {
        return new Source(text, Standing.PUBLISHED);
    }

    public static Source unchecked(String text) {
        return new Source(text, Standing.UNCHECKED);
    }

    public static Source commonPractice(String text) {
        return new Source(text, Standing.COMMON_PRACTICE);
    }

    /** The source with its remark, as printed everywhere. */
    public String print() {
        if (standing.remark().isEmpty()) {
            return text;
        }
        return text.isEmpty() ? standing.remark() : text + " (" + standing.remark() + ")";
    }
}
