package org.varwright.bankfile;

import static org.varwright.bankfile.JsonValues.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.DischargePath;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.TransformerRatio;
import org.varwright.json.Json;

/**
 * Everything that could make a conductor live, to be listed and crossed off: the sources that the file names, and every voltage transformer that its protection,
 * its control or a discharge path has, because one that is fed from its secondary makes its primary live.
 */
final class FeedJson {
    private final List<Json> feeds = new ArrayList<>();

    private FeedJson() {}

    static Json of(Bank bank) {
        FeedJson json = new FeedJson();
        boolean main = true;
        for (EnergySource source : bank.isolation().map(Isolation::sources).orElse(List.of())) {
            json.source(source, bank, source.isLowVoltage() ? "control" : main ? "main" : "second");
            main &= source.isLowVoltage();
        }
        bank.protection().forEach(json::sensor);
        bank.control()
                .flatMap(c -> c.ratio())
                .ifPresent(ratio ->
                        json.transformer("voltage transformer of the control", Optional.empty(), Optional.of(ratio)));
        for (Stage stage : bank.stages()) {
            if (stage.dischargePath()
                    .filter(p -> p.kind() == DischargePath.Kind.TRANSFORMER)
                    .isPresent()) {
                json.transformer(
                        "discharge transformer of " + stage.name(), Optional.of(stage.name()), Optional.empty());
            }
        }
        return Json.of(json.feeds);
    }

    private void source(EnergySource source, Bank bank, String kind) {
        feeds.add(Json.object()
                .put("name", source.name())
                .put("kind", kind)
                .put("at", source.at())
                .put("volts", source.volts().orElse(bank.system().nominalVolts()))
                .put("note", text(source.note()))
                .build());
    }

    private void sensor(Protection p) {
        if (p.senses().unit().equals("V")) {
            transformer(
                    "voltage transformer of the " + p.senses().code().replace('-', ' ') + " sensor of " + p.stage(),
                    Optional.of(p.stage()),
                    p.ratio());
        }
    }

    /** The file names no conductor for a transformer's primary: {@code at} is the stage that it serves, or null. */
    private void transformer(String name, Optional<String> at, Optional<TransformerRatio> ratio) {
        OptionalDouble volts = ratio.map(r -> OptionalDouble.of(r.primary())).orElse(OptionalDouble.empty());
        feeds.add(Json.object()
                .put("name", name)
                .put("kind", "voltage-transformer")
                .put("at", text(at))
                .put("volts", JsonValues.number(volts))
                .put("note", "its secondary is opened and locked: fed from there, its primary is live")
                .build());
    }
}
