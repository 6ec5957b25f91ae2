package org.varwright.interlock;

import org.varwright.json.Json;

/** {@link InterlockAudit} as JSON. */
public final class InterlockAuditJson {
    private InterlockAuditJson() {}

    public static Json of(InterlockAudit audit) {
        return Json.object()
                .put("bank", audit.bank().name())
                .put(
                        "locks",
                        Json.of(audit.locks().stream()
                                .map(InterlockAuditJson::lock)
                                .toList()))
                .put(
                        "keys",
                        Json.of(audit.keys().stream()
                                .map(InterlockAuditJson::key)
                                .toList()))
                .put(
                        "interlocks",
                        Json.of(audit.interlocks().stream()
                                .map(InterlockAuditJson::block)
                                .toList()))
                .build();
    }

    private static Json lock(InterlockAudit.LockItem item) {
        return Json.object()
                .put("on", item.lock().on().name())
                .put("holds", item.lock().holds())
                .put("keys", Json.strings(item.lock().keys()))
                .put("text", item.traps())
                .put("tries", Json.strings(item.tries()))
                .put("protects", protects(item.protects()))
                .build();
    }

    private static Json key(InterlockAudit.KeyItem item) {
        return Json.object()
                .put("key", item.key())
                .put("copies", item.copies())
                .put("inService", Json.strings(item.inService()))
                .put("places", Json.strings(item.places()))
                .build();
    }

    private static Json block(InterlockAudit.BlockItem item) {
        return Json.object()
                .put("text", item.what())
                .put("tries", Json.strings(item.tries()))
                .put("protects", protects(item.protects()))
                .build();
    }

    /** Property ids; null where it is not known. */
    private static Json protects(InterlockAudit.Protects protects) {
        return switch (protects) {
            case InterlockAudit.Protects.These these ->
                Json.strings(
                        these.properties().stream().map(Property::id).sorted().toList());
            case InterlockAudit.Protects.NotKnown ignored -> Json.none();
        };
    }
}
