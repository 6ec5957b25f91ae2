package org.varwright.task;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Harmonic;
import org.varwright.bankfile.BankCheck;
import org.varwright.bankfile.BankCheckJson;
import org.varwright.bankfile.BankFile;
import org.varwright.bankfile.BankJson;
import org.varwright.bankfile.BankReading;
import org.varwright.discharge.Discharge;
import org.varwright.discharge.DischargeJson;
import org.varwright.discharge.Question;
import org.varwright.discharge.Stick;
import org.varwright.drawing.DrawingOptions;
import org.varwright.drawing.DrawingState;
import org.varwright.drawing.OneLineDrawing;
import org.varwright.duty.Duty;
import org.varwright.duty.DutyJson;
import org.varwright.duty.DutyQuestion;
import org.varwright.energize.BusVolts;
import org.varwright.energize.Energize;
import org.varwright.energize.EnergizeJson;
import org.varwright.energize.MeasuredValue;
import org.varwright.energize.Uncertainty;
import org.varwright.fit.AsRead;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitJson;
import org.varwright.fit.FitOptions;
import org.varwright.fuse.FuseOptions;
import org.varwright.fuse.Fuses;
import org.varwright.fuse.FusesJson;
import org.varwright.fuse.LinkTable;
import org.varwright.interlock.InterlockJson;
import org.varwright.interlock.Interlocking;
import org.varwright.interlock.Verifier;
import org.varwright.isolation.Access;
import org.varwright.isolation.IsolationJson;
import org.varwright.isolation.PlanRequest;
import org.varwright.json.Json;
import org.varwright.network.Supply;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.resonance.Resonance;
import org.varwright.resonance.ResonanceJson;
import org.varwright.resonance.ResonanceQuestion;
import org.varwright.resonance.Spectrum;
import org.varwright.survey.Readings;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.SparesFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveyJson;
import org.varwright.survey.SurveySettings;
import org.varwright.switching.Inrush;
import org.varwright.switching.InrushJson;
import org.varwright.switching.InrushRequestReader;
import org.varwright.triage.TriageJson;
import org.varwright.unbalance.Assumptions;
import org.varwright.unbalance.LocateJson;
import org.varwright.unbalance.Locator;
import org.varwright.unbalance.Sighting;
import org.varwright.unbalance.SightingReader;
import org.varwright.unbalance.Unbalance;
import org.varwright.unbalance.UnbalanceJson;

/** Runs tasks given as JSON. */
public final class Tasks {
    private Tasks() {}

    /**
     * Runs one task.
     *
     * @param request {@code {"task": NAME, "bank": TEXT OF THE BANK FILE, …}}
     * @return {@code {"ok": true, "result": …}} with the fields of the command of the same name, or {@code {"ok": false, "problems": [{"code", "file",
     *     "line", "column", "path", "message"}]}}
     */
    public static String run(String request) {
        try {
            return Json.object()
                    .put("ok", true)
                    .put("result", result(new Request(Json.parse(request))))
                    .build()
                    .print();
        } catch (VarwrightException e) {
            return Json.object()
                    .put("ok", false)
                    .put(
                            "problems",
                            Json.of(e.problems().stream().map(Tasks::json).toList()))
                    .build()
                    .print();
        }
    }

    private static Json result(Request request) {
        String task = request.text("task");
        return switch (task) {
            case "check" -> BankCheckJson.of(BankCheck.of(reading(request)));
            case "bank" -> BankJson.of(bank(request));
            case "draw" -> draw(request);
            case "interlock" ->
                InterlockJson.of(Interlocking.examine(bank(request), memory(request), Verifier.Progress.SILENT));
            case "isolate" -> isolate(request);
            case "discharge" -> discharge(request);
            case "unbalance" -> unbalance(bank(request));
            case "survey" -> SurveyJson.of(survey(request));
            case "spares" -> SparesTask.list(bank(request), request.optionalTexts("tables"));
            case "fit" -> fit(request);
            case "energize" -> energize(request);
            case "locate" -> locate(request);
            case "fuses" -> fuses(request);
            case "job" -> JobTask.show(request);
            case "job-propose" -> JobTask.propose(request);
            case "job-draw" -> JobTask.draw(request);
            case "why" -> why(request);
            case "duty" -> duty(request);
            case "resonance" -> resonance(request);
            case "inrush" -> inrush(request);
            case "triage" -> TriageTask.answer(bank(request), request);
            case "symptoms" -> TriageJson.symptoms();
            case "record" -> RecordTask.read(request);
            default ->
                throw new VarwrightException(
                        Message.TASK_UNKNOWN,
                        new Place("", 0, 0, "task"),
                        task,
                        "check, bank, draw, interlock, isolate, discharge, unbalance, survey, spares, fit, energize, locate, fuses, duty, resonance, inrush, record, triage, symptoms, job, job-propose, job-draw, why");
        };
    }

    /** May have {@code page}: {@code landscape}, {@code portrait} or {@code a3}. */
    private static Json draw(Request request) {
        Bank bank = bank(request);
        String svg = OneLineDrawing.draw(bank, DrawingState.atStart(bank), page(request));
        return Json.object().put("svg", svg).build();
    }

    /** Of a job's log; of a bank alone as its file says that it starts. */
    private static Json why(Request request) {
        if (request.optionalText("log").isPresent()) {
            return JobTask.why(request);
        }
        Bank bank = bank(request);
        return JobTask.why(bank, DrawingState.atStart(bank), request);
    }

    static DrawingOptions page(Request request) {
        DrawingOptions.Page page = switch (request.optionalText("page").orElse("landscape")) {
            case "landscape" -> DrawingOptions.Page.A4_LANDSCAPE;
            case "portrait" -> DrawingOptions.Page.A4_PORTRAIT;
            case "a3" -> DrawingOptions.Page.A3_LANDSCAPE;
            default ->
                throw new VarwrightException(
                        Message.REQUEST_MEMBER, new Place("", 0, 0, "page"), "landscape, portrait or a3");
        };
        return new DrawingOptions(page, DrawingOptions.Colours.COLOUR);
    }

    private static Json isolate(Request request) {
        List<String> access = request.texts("access");
        return IsolationJson.of(access, Access.plan(bank(request), PlanRequest.to(access)));
    }

    /** May have {@code afterSeconds}, {@code timeConstants}, {@code stickOhms} with {@code stickJoules}. */
    private static Json discharge(Request request) {
        Question question = Question.NOTHING_MORE;
        OptionalDouble after = request.optionalNumber("afterSeconds");
        if (after.isPresent()) {
            requireNumber(after.getAsDouble() >= 0.0, "afterSeconds", "a number, 0 or more");
            question = question.after(after.getAsDouble());
        }
        OptionalDouble constants = request.optionalNumber("timeConstants");
        if (constants.isPresent()) {
            requireNumber(constants.getAsDouble() > 0.0, "timeConstants", "a number above 0");
            question = question.timeConstants(constants.getAsDouble());
        }
        OptionalDouble ohms = request.optionalNumber("stickOhms");
        if (ohms.isPresent()) {
            requireNumber(ohms.getAsDouble() > 0.0, "stickOhms", "a number above 0");
            question = question.with(Optional.of(new Stick(ohms.getAsDouble(), request.optionalNumber("stickJoules"))));
        }
        return DischargeJson.of(Discharge.of(bank(request), question));
    }

    private static void requireNumber(boolean allowed, String name, String wanted) {
        if (!allowed) {
            throw new VarwrightException(Message.REQUEST_MEMBER, new Place("", 0, 0, name), wanted);
        }
    }

    private static Json unbalance(Bank bank) {
        return UnbalanceJson.of(Unbalance.of(bank, Map.of(), Supply.nominal(bank.system()), Assumptions.USUAL));
    }

    /** May have {@code stage}, {@code onto}, {@code trapped}, {@code angles}, {@code opening}, {@code restrike}, as the command has them. */
    private static Json inrush(Request request) {
        Bank bank = bank(request);
        return InrushJson.of(Inrush.of(
                bank,
                new InrushRequestReader(bank)
                        .read(
                                request.optionalText("stage"),
                                request.optionalTexts("onto"),
                                request.optionalText("trapped"),
                                request.optionalText("angles"),
                                request.flag("opening"),
                                request.optionalText("restrike"))));
    }

    /** May have {@code readings} with {@code meterLimit} and {@code meterLimits}: a unit that was measured counts as it reads, all others as the bank file has them. */
    private static Json energize(Request request) {
        List<MeasuredValue> measured =
                request.texts("measured").stream().map(MeasuredValue::parse).toList();
        BusVolts bus = BusVolts.balanced(request.number("busVolts"));
        if (request.optionalText("readings").isEmpty()) {
            return EnergizeJson.of(Energize.of(bank(request), Map.of(), bus, Uncertainty.USUAL, measured));
        }
        Survey survey = survey(request);
        AsRead asRead = AsRead.of(survey);
        Uncertainty uncertainty = Uncertainty.USUAL.withMeter(survey.largestMeterLimit());
        return EnergizeJson.of(Energize.of(survey.bank(), asRead.farads(), bus, uncertainty, measured)
                .warned(asRead.warnings()));
    }

    /** May have {@code meterLimits}, those of single instruments by name, and {@code earlier}, texts of tables of earlier visits, oldest first. */
    private static Survey survey(Request request) {
        Bank bank = bank(request);
        byte[] table = request.text("readings").getBytes(StandardCharsets.UTF_8);
        SurveySettings settings = SurveySettings.of(
                bank.standard(), request.number("meterLimit"), request.optionalNumbers("meterLimits"));
        List<Readings> earlier = new ArrayList<>();
        for (String visit : request.optionalTexts("earlier")) {
            earlier.add(ReadingsFile.read(
                    bank, "earlier readings " + (earlier.size() + 1), visit.getBytes(StandardCharsets.UTF_8)));
        }
        return Survey.of(bank, ReadingsFile.read(bank, "readings", table), settings, earlier);
    }

    /** Needs {@code spares}, the text of a table; may have {@code keep}, {@code swap} ({@code A=B}), {@code without}, {@code leastUnbalance}. */
    private static Json fit(Request request) {
        Survey survey = survey(request);
        byte[] table = request.text("spares").getBytes(StandardCharsets.UTF_8);
        List<FitOptions.Exchange> swaps = new ArrayList<>();
        for (String pair : request.optionalTexts("swap")) {
            int at = pair.indexOf('=');
            if (at < 0) {
                throw new VarwrightException(Message.REQUEST_MEMBER, new Place("", 0, 0, "swap"), "texts such as A=B");
            }
            swaps.add(new FitOptions.Exchange(
                    pair.substring(0, at).strip(), pair.substring(at + 1).strip()));
        }
        FitOptions options = new FitOptions(
                request.optionalTexts("keep"),
                swaps,
                request.optionalTexts("without"),
                request.flag("leastUnbalance") ? FitOptions.Aim.LEAST_UNBALANCE : FitOptions.Aim.FEWEST_LIFTS,
                FitOptions.USUAL.extraLifts());
        return FitJson.of(Fit.plan(FitInput.from(
                survey, SparesFile.read(survey.bank(), "spares", table).spares(), options)));
    }

    /** May have {@code stage}, {@code link}, {@code fuseOhms}, {@code fuseHenries}. */
    private static Json fuses(Request request) {
        FuseOptions options = new FuseOptions(
                request.optionalText("stage"),
                request.optionalText("link").map(LinkTable::require),
                request.optionalNumber("fuseOhms"),
                request.optionalNumber("fuseHenries"));
        return FusesJson.of(Fuses.of(bank(request), options));
    }

    private static long memory(Request request) {
        return (long) request.number("memoryBytes");
    }

    private static Json locate(Request request) {
        Bank bank = bank(request);
        Sighting sighting = new SightingReader(bank)
                .read(
                        request.text("reading"),
                        request.flag("primary"),
                        request.optionalNumber("degrees"),
                        request.number("uncertainty"),
                        request.optionalText("healthy"),
                        request.optionalTexts("lines"));
        Supply supply = new Supply.Balanced(request.number("bus"));
        return LocateJson.of(Locator.locate(bank, Map.of(), supply, Assumptions.USUAL, sighting));
    }

    /**
     * May have {@code busVolts}, {@code harmonics}, {@code measured} (texts such as {@code 5: 3 %}), {@code overvoltage} (times rated) with {@code
     * seconds}, {@code atVolts} with {@code atHertz}.
     */
    private static Json duty(Request request) {
        OptionalDouble multiple = request.optionalNumber("overvoltage");
        OptionalDouble volts = request.optionalNumber("atVolts");
        return DutyJson.of(Duty.of(
                bank(request),
                new DutyQuestion(
                        request.optionalNumber("busVolts"),
                        harmonics(request),
                        Spectrum.parse("measured", request.optionalTexts("measured")),
                        multiple.isPresent()
                                ? Optional.of(new DutyQuestion.Overvoltage(
                                        new DutyQuestion.Height.PerRated(multiple.getAsDouble()),
                                        request.number("seconds")))
                                : Optional.empty(),
                        volts.isPresent()
                                ? Optional.of(
                                        new DutyQuestion.Elsewhere(volts.getAsDouble(), request.number("atHertz")))
                                : Optional.empty(),
                        List.of(),
                        DutyQuestion.PLAIN.entered())));
    }

    /** May have {@code busVolts}, {@code harmonics}, {@code stages}. */
    private static Json resonance(Request request) {
        List<String> stages = request.optionalTexts("stages");
        return ResonanceJson.of(Resonance.of(
                bank(request),
                new ResonanceQuestion(
                        request.optionalNumber("busVolts"),
                        harmonics(request),
                        stages.isEmpty() ? Optional.empty() : Optional.of(stages))));
    }

    private static Optional<List<Harmonic>> harmonics(Request request) {
        List<String> typed = request.optionalTexts("harmonics");
        return typed.isEmpty() ? Optional.empty() : Optional.of(Spectrum.parse("harmonics", typed));
    }

    private static Bank bank(Request request) {
        return reading(request).requireBank();
    }

    private static BankReading reading(Request request) {
        return BankFile.read("bank", request.text("bank").getBytes(StandardCharsets.UTF_8));
    }

    private static Json json(Problem problem) {
        return Json.object()
                .put("code", problem.message().name())
                .put("file", problem.place().file())
                .put("line", problem.place().line())
                .put("column", problem.place().column())
                .put("path", problem.place().path())
                .put("message", problem.text())
                .build();
    }
}
