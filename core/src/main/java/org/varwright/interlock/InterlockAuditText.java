package org.varwright.interlock;

import java.util.List;
import org.varwright.page.Page;

/** {@link InterlockAudit} as a list to walk with a pencil: 100 columns, a box for everything to try. */
public final class InterlockAuditText {
    private static final String BOX = "    [ ] ";

    private InterlockAuditText() {}

    public static String of(InterlockAudit audit) {
        Page page = new Page();
        page.heading("Audit of the interlocking  " + audit.bank().name());
        page.text("Try each with the bank isolated, " + audit.bank().words().grounded()
                + " and proven dead as its order of work says, unless the line says otherwise."
                + " Tick what is refused as it must be; anything else: stop, and don't rely on the lock.");
        page.heading("Keys");
        for (InterlockAudit.KeyItem key : audit.keys()) {
            page.item(
                    BOX,
                    key.key() + ": count " + key.copies() + (key.copies() == 1 ? " key" : " keys")
                            + ", no more; in service " + Words.list(key.inService()) + ". Fits "
                            + Words.list(key.places()) + ".");
        }
        page.heading("Locks");
        for (InterlockAudit.LockItem lock : audit.locks()) {
            page.item("  ", Words.lock(lock.lock()) + ": " + lock.traps());
            lock.tries().forEach(t -> page.item(BOX, t));
            page.item("        ", "protects: " + protects(lock.protects()));
        }
        if (!audit.interlocks().isEmpty()) {
            page.heading("Interlocks and delays");
            for (InterlockAudit.BlockItem block : audit.interlocks()) {
                page.item("  ", block.what());
                block.tries().forEach(t -> page.item(BOX, t));
                page.item("        ", "protects: " + protects(block.protects()));
            }
        }
        page.blank();
        page.text("Date ____________  By ______________________  Witness ______________________");
        return page.print();
    }

    private static String protects(InterlockAudit.Protects protects) {
        return switch (protects) {
            case InterlockAudit.Protects.These these -> {
                List<String> ids =
                        these.properties().stream().map(Property::id).sorted().toList();
                yield ids.isEmpty() ? "nothing alone; others do its work too" : Words.list(ids);
            }
            case InterlockAudit.Protects.NotKnown unknown -> "not known (" + unknown.why() + "); count it as vital";
        };
    }
}
