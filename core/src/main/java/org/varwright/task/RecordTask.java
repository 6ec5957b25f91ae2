package org.varwright.task;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
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

/** Disturbance records, handed over as text or base64. */
final class RecordTask {
    private RecordTask() {}

    /**
     * {@code {"cfg": TEXT, "dat": BASE64}}, or {@code {"cff": BASE64}}, to {@link RecordingJson}. May have {@code hdr} and {@code inf} (texts); {@code
     * cfgBytes} (base64) instead of {@code cfg}, where its code page is not UTF-8; {@code channels}, {@code from}, {@code to}, {@code codePage}; with {@code
     * samples} true also {@code data}, the samples.
     */
    static Json read(Request request) {
        Recording recording = recording(request);
        Json.Builder json = RecordingJson.of(recording);
        if (request.flag("samples")) {
            json.put("data", RecordingJson.samples(recording));
        }
        return json.put("findings", Json.of(List.of())).build();
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
