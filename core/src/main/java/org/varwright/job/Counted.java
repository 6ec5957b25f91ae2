package org.varwright.job;

/** A fact that counts, with its event. */
public record Counted<F extends Fact>(JobEvent event, F fact) {}
