package org.varwright.task;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bankfile.BankFile;
import org.varwright.comtrade.Bytes;
import org.varwright.comtrade.CodePages;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.RecordFiles;
import org.varwright.comtrade.RecordReader;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.RecordingJson;
import org.varwright.comtrade.Source;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.record.RecordInput;
import org.varwright.record.RecordStudy;
import org.varwright.record.RecordStudyJson;
import org.varwright.record.RecordView;

/** Disturbance records, handed over as text or base64. */
final class RecordTask {
    /** Points of a waveform where none are asked for: about those of a screen. */
    private static final int USUAL_POINTS = 2000;

    private RecordTask() {}

    /**
     * {@code {"cfg": TEXT, "dat": BASE64}}, or {@code {"cff": BASE64}}, to {@link RecordingJson}. May have {@code hdr} and {@code inf} (texts); {@code
     * cfgBytes} (base64) instead of {@code cfg}, where its code page is not UTF-8; {@code channels}, {@code from}, {@code to}, {@code codePage}; with {@code
     * samples} true also {@code data}, the samples. With {@code bank} (text of the bank file) and {@code channelMap} what happened at that bank. With {@code
     * waveforms} ({@code channels}, {@code from}, {@code to}, {@code points}, each of which may be missing) waveforms for a screen, with {@code at} [s] the
     * phasors there.
     */
    static Json read(Request request) {
        Recording recording = recording(request);
        Json.Builder json = RecordingJson.of(recording);
        if (request.flag("samples")) {
            json.put("data", RecordingJson.samples(recording));
        }
        RecordInput input = RecordInput.of(recording);
        RecordStudy study = request.optionalText("bank").isPresent()
                ? RecordStudy.of(
                        input,
                        BankFile.read("bank", request.text("bank").getBytes(StandardCharsets.UTF_8))
                                .requireBank(),
                        request.optionalTexts("channelMap"))
                : RecordStudy.of(input);
        RecordStudyJson.put(json, study);
        if (request.has("waveforms")) {
            Request wanted = new Request(request.object("waveforms"));
            json.put(
                    "waveforms",
                    RecordView.waveforms(
                            study,
                            wanted.optionalTexts("channels"),
                            wanted.optionalNumber("from").orElse(input.base().first()),
                            wanted.optionalNumber("to").orElse(input.base().last()),
                            (int) wanted.optionalNumber("points").orElse(USUAL_POINTS)));
        }
        OptionalDouble at = request.optionalNumber("at");
        if (at.isPresent()) {
            json.put("at", RecordView.at(study, at.getAsDouble()));
        }
        return json.build();
    }

    private static Recording recording(Request request) {
        ReadOptions options = ReadOptions.ALL
                .channels(request.optionalTexts("channels"))
                .window(
                        request.optionalNumber("from").orElse(Double.NEGATIVE_INFINITY),
                        request.optionalNumber("to").orElse(Double.POSITIVE_INFINITY))
                .codePage(request.optionalText("codePage"), CodePages.NONE);
        Optional<String> combined = request.optionalText("cff");
        if (combined.isPresent()) {
            return RecordReader.readCombined(Source.of("cff", decoded("cff", combined.get())), options);
        }
        Bytes configuration = request.optionalText("cfgBytes")
                .map(text -> decoded("cfgBytes", text))
                .orElseGet(() -> Bytes.of(request.text("cfg").getBytes(StandardCharsets.UTF_8)));
        RecordFiles files =
                RecordFiles.of(Source.of("cfg", configuration), Source.of("dat", decoded("dat", request.text("dat"))));
        Optional<String> header = request.optionalText("hdr");
        if (header.isPresent()) {
            files = files.withHeader(text("hdr", header.get()));
        }
        Optional<String> information = request.optionalText("inf");
        if (information.isPresent()) {
            files = files.withInformation(text("inf", information.get()));
        }
        return RecordReader.read(files, options);
    }

    private static Source text(String name, String text) {
        return Source.of(name, Bytes.of(text.getBytes(StandardCharsets.UTF_8)));
    }

    private static Bytes decoded(String name, String base64) {
        return Base64.decode(base64)
                .map(Bytes::of)
                .orElseThrow(() ->
                        new VarwrightException(Message.REQUEST_MEMBER, new Place("", 0, 0, name), "bytes in base64"));
    }
}
