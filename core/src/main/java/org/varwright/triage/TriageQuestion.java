package org.varwright.triage;

import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.unbalance.Sighting;

/**
 * What is known when the telephone rings.
 *
 * @param symptom what was reported
 * @param stage which it is about; empty where nobody says, then all are
 * @param sighting what the relay shows; empty where nobody read it
 * @param busVolts line to line when it was read [V]; the nominal voltage where empty
 */
public record TriageQuestion(
        Symptom symptom, Optional<String> stage, Optional<Sighting> sighting, OptionalDouble busVolts) {}
