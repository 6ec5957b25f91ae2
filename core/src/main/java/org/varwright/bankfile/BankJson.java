package org.varwright.bankfile;

import static org.varwright.bankfile.JsonValues.list;
import static org.varwright.bankfile.JsonValues.number;
import static org.varwright.bankfile.JsonValues.text;
import static org.varwright.bankfile.JsonValues.word;

import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Construction;
import org.varwright.bank.Control;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.FuseType;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Load;
import org.varwright.bank.Protection;
import org.varwright.bank.Spare;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SwitchType;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitType;
import org.varwright.bank.Vocabulary;
import org.varwright.json.Json;

/**
 * A whole bank as JSON for screens: the keys of the bank file in camel case, quantities in SI with the unit in the name. What the file does not say is null.
 */
public final class BankJson {
    private BankJson() {}

    public static Json of(Bank bank) {
        return Json.object()
                .put("name", bank.name())
                .put("label", text(bank.label()))
                .put("site", text(bank.site()))
                .put("note", text(bank.note()))
                .put("standard", Words.of(Words.STANDARDS, bank.standard()))
                .put("words", words(bank.words()))
                .put("system", system(bank.system()))
                .put("unitTypes", list(bank.unitTypes(), BankJson::unitType))
                .put("fuseTypes", list(bank.fuseTypes(), BankJson::fuseType))
                .put("switchTypes", list(bank.switchTypes(), BankJson::switchType))
                .put("stages", list(bank.stages(), stage -> new StageJson(bank, stage).write()))
                .put("protection", list(bank.protection(), BankJson::protection))
                .put(
                        "control",
                        bank.control().map(control -> control(bank, control)).orElse(Json.none()))
                .put("load", bank.load().map(BankJson::load).orElse(Json.none()))
                .put("isolation", bank.isolation().map(IsolationPartJson::of).orElse(Json.none()))
                .put("sources", FeedJson.of(bank))
                .put("spares", list(bank.spares(), BankJson::spare))
                .build();
    }

    /** {@code key} chooses a screen's own texts; the rest are the words themselves. */
    private static Json words(Vocabulary words) {
        return Json.object()
                .put(
                        "key",
                        switch (words) {
                            case IEEE -> "ieee";
                            case IEC -> "iec";
                        })
                .put("ground", words.ground())
                .put("grounded", words.grounded())
                .put("grounding", words.grounding())
                .put("ungrounded", words.ungrounded())
                .put("wye", words.wye())
                .put("stage", words.stage())
                .put("disconnector", words.disconnector())
                .put("groundingSwitch", words.groundingSwitch())
                .build();
    }

    private static Json system(SupplySystem s) {
        return Json.object()
                .put("volts", s.nominalVolts())
                .put("maximumVolts", number(s.maximumVolts()))
                .put("hertz", s.frequencyHertz())
                .put("shortCircuitVoltAmperes", number(s.shortCircuitVoltAmperes()))
                .put("xOverR", number(s.xOverR()))
                .put("grounding", Words.of(Words.GROUNDINGS, s.grounding()))
                .put("harmonics", list(s.harmonics(), BankJson::harmonic))
                .build();
    }

    private static Json harmonic(Harmonic h) {
        return Json.object()
                .put("order", h.order())
                .put("voltageFraction", number(h.voltageFraction()))
                .put("currentAmperes", number(h.currentAmperes()))
                .build();
    }

    private static Json unitType(UnitType u) {
        Optional<Construction> inside = u.construction();
        return Json.object()
                .put("name", u.name())
                .put("label", text(u.label()))
                .put("note", text(u.note()))
                .put("ratedVars", u.ratedVars())
                .put("ratedVolts", u.ratedVolts())
                .put("ratedHertz", u.ratedHertz())
                .put("capacitanceFarads", u.capacitanceFarads())
                .put(
                        "lowestFarads",
                        u.capacitanceFarads() * (1.0 + u.tolerance().low()))
                .put(
                        "highestFarads",
                        u.capacitanceFarads() * (1.0 + u.tolerance().high()))
                .put(
                        "tolerance",
                        Json.object()
                                .put("low", u.tolerance().low())
                                .put("high", u.tolerance().high())
                                .build())
                .put("phases", u.threePhase().isPresent() ? 3 : 1)
                .put("internal", word(Words.INTERNALS, u.threePhase()))
                .put("sections", inside.map(c -> Json.of(c.sections())).orElse(Json.none()))
                .put("elements", inside.map(c -> Json.of(c.elements())).orElse(Json.none()))
                .put("elementFuses", word(Words.ELEMENT_FUSES, inside.map(Construction::internallyFused)))
                .put("discharge", u.discharge().map(BankJson::discharge).orElse(Json.none()))
                .put("bushings", number(u.bushings()))
                .put("bilVolts", number(u.bilVolts()))
                .put("massKilograms", number(u.massKilograms()))
                .build();
    }

    private static Json discharge(DischargeDevice device) {
        return switch (device) {
            case DischargeDevice.Resistor resistor ->
                Json.object().put("resistanceOhms", resistor.ohms()).build();
            case DischargeDevice.Rated rated ->
                Json.object()
                        .put("toVolts", rated.volts())
                        .put("withinSeconds", rated.seconds())
                        .build();
        };
    }

    private static Json fuseType(FuseType f) {
        return Json.object()
                .put("name", f.name())
                .put("note", text(f.note()))
                .put("kind", Words.of(Words.FUSE_KINDS, f.kind()))
                .put("link", text(f.link()))
                .put("ratedAmperes", number(f.ratedAmperes()))
                .put("ratedVolts", number(f.ratedVolts()))
                .put("maximumParallelJoules", number(f.maximumParallelJoules()))
                .put("interruptingAmperes", number(f.interruptingAmperes()))
                .put("meltingAmpereSquaredSeconds", number(f.meltingAmpereSquaredSeconds()))
                .put("clearingAmpereSquaredSeconds", number(f.clearingAmpereSquaredSeconds()))
                .build();
    }

    private static Json switchType(SwitchType s) {
        return Json.object()
                .put("name", s.name())
                .put("note", text(s.note()))
                .put("ratedVolts", number(s.ratedVolts()))
                .put("ratedAmperes", number(s.ratedAmperes()))
                .put("inrushPeakAmperes", number(s.inrushPeakAmperes()))
                .put("inrushHertz", number(s.inrushHertz()))
                .put("outrushAmpereHertz", number(s.outrushAmpereHertz()))
                .put("capacitiveAmperes", number(s.capacitiveAmperes()))
                .build();
    }

    private static Json protection(Protection p) {
        return Json.object()
                .put("stage", p.stage())
                .put("senses", p.senses().code())
                .put("unit", p.senses().unit())
                .put("ratio", ratio(p.ratio()))
                .put("alarm", number(p.alarm()))
                .put("trip", number(p.trip()))
                .put("primary", p.settingsArePrimary())
                .put("delaySeconds", number(p.delaySeconds()))
                .put("note", text(p.note()))
                .build();
    }

    private static Json control(Bank bank, Control c) {
        return Json.object()
                .put("senses", word(Words.CONTROLS, c.senses()))
                .put("ratio", ratio(c.ratio()))
                .put("currentRatio", ratio(c.currentRatio()))
                .put("on", number(c.on()))
                .put("off", number(c.off()))
                .put("recloseDelaySeconds", number(c.recloseDelaySeconds()))
                .put("note", text(c.note()))
                .put(
                        "selectors",
                        bank.isolation().map(IsolationPartJson::selectors).orElse(list()))
                .build();
    }

    private static Json ratio(Optional<TransformerRatio> ratio) {
        return ratio.map(r -> (Json) Json.object()
                        .put("primary", r.primary())
                        .put("secondary", r.secondary())
                        .build())
                .orElse(Json.none());
    }

    private static Json load(Load l) {
        return Json.object()
                .put("watts", l.watts())
                .put("vars", l.vars())
                .put("lightWatts", number(l.lightWatts()))
                .put("lightVars", number(l.lightVars()))
                .put("wantedPowerFactor", number(l.wantedPowerFactor()))
                .build();
    }

    private static Json spare(Spare s) {
        return Json.object()
                .put("serial", s.serial())
                .put("unit", s.unit().name())
                .put("capacitanceFarads", number(s.capacitanceFarads()))
                .put("note", text(s.note()))
                .build();
    }
}
