package org.varwright.cli;

/** What the process says when it ends. */
enum ExitCode {
    /** Done; the answer, where there is one, is yes. */
    DONE(0),
    /** The answer is no: a limit is broken, a property is not enforced, a plan is refused. */
    NO(1),
    /** Wrong use or input that can't be read. */
    BAD_INPUT(2),
    /** Undecided within the memory or time given. */
    UNDECIDED(3),
    /** A fault of the program itself. */
    INTERNAL(70);

    private final int code;

    ExitCode(int code) {
        this.code = code;
    }

    int code() {
        return code;
    }
}
