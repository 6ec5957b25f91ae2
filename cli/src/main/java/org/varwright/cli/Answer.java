package org.varwright.cli;

import org.varwright.json.Json;

/**
 * What a command found.
 *
 * @param text for a person, laid out for printing
 * @param json for a machine
 * @param code what the process says
 */
record Answer(String text, Json json, ExitCode code) {}
