package org.varwright.interlock;

import java.util.ArrayList;
import java.util.List;
import org.varwright.json.Json;

/** {@link Interlocking} as JSON. */
public final class InterlockJson {
    private InterlockJson() {}

    public static Json of(Interlocking interlocking) {
        Verification verification = interlocking.verification();
        List<Json> properties = new ArrayList<>();
        for (Property property : Property.values()) {
            properties.add(property(interlocking, property));
        }
        return Json.object()
                .put("bank", interlocking.bank().name())
                .put("states", (double) verification.states())
                .put("moves", (double) verification.moves())
                .put("visited", (double) verification.visited())
                .put("complete", verification.complete())
                .put("depth", verification.depth())
                .put("properties", Json.of(properties))
                .put("findings", of(interlocking.faults()))
                .build();
    }

    /** Design faults as JSON. */
    public static Json of(List<DesignFault> faults) {
        return Json.of(faults.stream().map(InterlockJson::fault).toList());
    }

    private static Json fault(DesignFault fault) {
        return Json.object()
                .put("fault", fault.kind().id())
                .put("title", fault.kind().title())
                .put("text", fault.text())
                .put("counterexample", MoveJson.of(fault.harm()))
                .put("rule", fault.rule())
                .put(
                        "remedies",
                        Json.of(fault.remedies().stream()
                                .map(InterlockJson::remedy)
                                .toList()))
                .build();
    }

    private static Json remedy(DesignFault.Remedy remedy) {
        return Json.object()
                .put("text", remedy.text())
                .put(
                        "closes",
                        Json.strings(remedy.closes().stream()
                                .map(Property::id)
                                .sorted()
                                .toList()))
                .put("provenStates", (double) remedy.states())
                .build();
    }

    private static Json property(Interlocking interlocking, Property property) {
        Json.Builder json = Json.object().put("id", property.id()).put("claim", property.claim());
        switch (interlocking.verification().outcome(property)) {
            case Verification.Outcome.Enforced ignored ->
                json.put("enforced", true)
                        .put("outcome", "enforced")
                        .put("counterexample", Json.none())
                        .put("rule", Json.none());
            case Verification.Outcome.NotEnforced broken ->
                json.put("enforced", false)
                        .put("outcome", "not-enforced")
                        .put("counterexample", MoveJson.of(broken.path()))
                        .put("rule", interlocking.rule(property).orElse(""));
            case Verification.Outcome.Undecided undecided ->
                json.put("enforced", Json.none())
                        .put("outcome", "undecided")
                        .put("limit", undecided.limit())
                        .put("counterexample", Json.none())
                        .put("rule", Json.none());
        }
        return json.build();
    }
}
