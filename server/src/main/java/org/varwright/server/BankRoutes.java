package org.varwright.server;

import io.javalin.http.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.job.Sha256;
import org.varwright.json.Json;
import org.varwright.problem.VarwrightException;

/** Bank files. */
final class BankRoutes {
    private final Store store;

    BankRoutes(Store store) {
        this.store = store;
    }

    void list(Context context) {
        List<Json> banks = new ArrayList<>();
        List<Store.StoredBank> stored = store.banks();
        if (Tags.isHeldAlready(
                context,
                Sha256.of(stored.stream().map(b -> b.id() + " " + b.sha256()).collect(Collectors.joining("\n"))))) {
            return;
        }
        for (Store.StoredBank each : stored) {
            Bank bank = BankFile.read(each.id(), each.text().getBytes(StandardCharsets.UTF_8))
                    .requireBank();
            banks.add(Json.object()
                    .put("id", each.id())
                    .put("name", bank.name())
                    .put("site", bank.site().map(Json::of).orElse(Json.none()))
                    .put("sha256", each.sha256())
                    .build());
        }
        Answers.json(context, Json.object().put("banks", Json.of(banks)).build());
    }

    void get(Context context) {
        Store.StoredBank bank =
                store.bank(Bodies.name(context, "bank")).orElseThrow(() -> Refusal.of(404, "there is no such bank"));
        if (Tags.isHeldAlready(context, bank.sha256())) {
            return;
        }
        context.contentType("application/yaml; charset=utf-8").result(bank.text());
    }

    void put(Context context) throws IOException {
        String id = Bodies.name(context, "bank");
        String text = Bodies.text(context, BankFile.MAXIMUM_BYTES, "a bank file");
        requireReadable(id, text);
        Store.StoredBank bank = new Store.StoredBank(id, text, Sha256.of(text));
        String match = context.header("If-Match");
        if ("*".equals(context.header("If-None-Match"))) {
            if (!store.addBank(bank)) {
                throw Refusal.of(
                        412, "there is a bank \"" + id + "\" already; read it, and send If-Match with its ETag");
            }
            context.header("ETag", tag(bank.sha256())).status(201);
        } else if (match != null) {
            if (!store.replaceBank(bank, match.replace("\"", ""))) {
                throw Refusal.of(
                        412,
                        "the bank \"" + id
                                + "\" is another one by now, or is not there; read it again, bring both together, and send it again");
            }
            context.header("ETag", tag(bank.sha256())).status(204);
        } else {
            throw Refusal.of(
                    428,
                    "send If-None-Match: * for a new bank, or If-Match with the ETag of the version that was edited");
        }
    }

    private static void requireReadable(String id, String text) {
        try {
            BankFile.read(id, text.getBytes(StandardCharsets.UTF_8)).requireBank();
        } catch (VarwrightException e) {
            throw Refusal.unusable(e);
        }
    }

    private static String tag(String sha256) {
        return '"' + sha256 + '"';
    }
}
