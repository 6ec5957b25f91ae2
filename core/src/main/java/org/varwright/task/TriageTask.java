package org.varwright.task;

import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.json.Json;
import org.varwright.triage.Symptom;
import org.varwright.triage.Triage;
import org.varwright.triage.TriageJson;
import org.varwright.triage.TriageQuestion;
import org.varwright.unbalance.Sighting;
import org.varwright.unbalance.SightingReader;

/** What happened. */
final class TriageTask {
    /** Of a relay reading where nobody says better, as a part of it at about 95 %. */
    private static final double USUAL_UNCERTAINTY = 0.03;

    private TriageTask() {}

    /** Needs {@code symptom}; may have {@code stage}, {@code bus} [V], and {@code reading} with what {@code locate} takes beside it. */
    static Json answer(Bank bank, Request request) {
        Symptom symptom = Symptom.require(request.text("symptom"));
        Optional<Sighting> sighting = request.optionalText("reading")
                .map(reading -> new SightingReader(bank)
                        .read(
                                reading,
                                request.flag("primary"),
                                request.optionalNumber("degrees"),
                                request.optionalNumber("uncertainty").orElse(USUAL_UNCERTAINTY),
                                request.optionalText("healthy"),
                                request.optionalTexts("lines")));
        OptionalDouble bus = request.optionalNumber("bus");
        return TriageJson.of(
                Triage.of(bank, new TriageQuestion(symptom, request.optionalText("stage"), sighting, bus)));
    }
}
