package org.varwright.problem;

import java.util.List;
import java.util.stream.Collectors;

/** Input that can't be used, with every problem found in it. The only exception that bad input raises. */
public final class VarwrightException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient List<Problem> problems;

    public VarwrightException(List<Problem> problems) {
        super(problems.stream().map(Problem::print).collect(Collectors.joining("\n")));
        if (problems.isEmpty()) {
            throw new IllegalArgumentException("an exception needs at least one problem");
        }
        this.problems = List.copyOf(problems);
    }

    public VarwrightException(Message message, Place place, String... arguments) {
        this(List.of(Problem.of(message, place, arguments)));
    }

    public List<Problem> problems() {
        return problems;
    }
}
