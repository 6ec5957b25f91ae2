package org.varwright.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.varwright.bankfile.JobSheetFile;
import org.varwright.jobsheet.JobSheet;
import org.varwright.quantity.Dimension;

/** {@code demo --steps}: the whole job at the terminal, one command after another. */
final class DemoScenes {
    /**
     * One step of the demo.
     *
     * @param title what happens, in words
     * @param file where the whole answer is kept
     * @param until the terminal shows the answer up to the line that starts with this; all of it where no line does
     * @param arguments the command that gives the answer
     */
    private record Scene(String title, String file, String until, List<String> arguments) {}

    private final DemoBank bank;
    private final Path folder;
    private final PrintWriter out;

    DemoScenes(DemoBank bank, Path folder, PrintWriter out) {
        this.bank = bank;
        this.folder = folder;
        this.out = out;
    }

    /** Plays every scene. */
    int play() {
        Path own = folder.resolve(bank.file());
        List<String> kept = new ArrayList<>();
        for (String kind : List.of(".bank.yaml", ".readings.csv", ".spares.csv", ".job.yaml", ".trip.cff")) {
            if (!DemoFiles.has(bank.file() + kind)) {
                continue;
            }
            Path file = own.resolve(bank.file() + kind);
            byte[] original = DemoFiles.bytes(bank.file() + kind);
            if (!Files.exists(file)) {
                OutputFile.write(file, original);
            } else if (!Arrays.equals(InputFile.read(file), original)) {
                kept.add(file.toString());
            }
        }
        if (!kept.isEmpty()) {
            out.println("Kept as they are, because they differ from the demo's own: " + String.join(", ", kept)
                    + ". Delete them to get the demo's own back.");
        }
        out.println("An invented bank, invented readings, invented spares: nothing here is a real place.");
        int number = 0;
        for (Scene scene : scenes(own)) {
            number++;
            out.println();
            out.println("── " + number + "  " + scene.title());
            out.println("   varwright " + typed(scene.arguments()));
            out.println();
            int code = play(scene, own, out);
            if (code == ExitCode.BAD_INPUT.code() || code == ExitCode.INTERNAL.code()) {
                return code;
            }
        }
        out.println();
        out.println("Everything is in " + own
                + ": the files that went in, every answer whole, the drawing and the report.");
        return ExitCode.DONE.code();
    }

    /** The command that plans the access of the job. */
    private static List<String> isolate(String bankFile, JobSheet job, String... more) {
        List<String> arguments = new ArrayList<>(List.of("isolate", bankFile));
        job.access().forEach(compartment -> arguments.addAll(List.of("--access", compartment)));
        arguments.addAll(List.of(more));
        return arguments;
    }

    private List<Scene> scenes(Path own) {
        Path jobFile = own.resolve(bank.file() + ".job.yaml");
        JobSheet sheet =
                JobSheetFile.read(jobFile.toString(), InputFile.read(jobFile)).requireJob();
        String bus = Dimension.VOLTAGE.format(sheet.busVolts().orElseThrow());
        String bankFile = own.resolve(bank.file() + ".bank.yaml").toString();
        String readings = own.resolve(bank.file() + ".readings.csv").toString();
        String spares = own.resolve(bank.file() + ".spares.csv").toString();
        String job = jobFile.toString();
        return List.of(
                new Scene("The bank as its file describes it", "1-bank.txt", "UNIT TYPES", List.of("check", bankFile)),
                new Scene(
                        "What a failure would do, and whether the relay would see it",
                        "2-unbalance.txt",
                        "SETTINGS OF",
                        List.of("unbalance", bankFile)),
                new Scene(
                        "What the keys enforce, whatever anyone does",
                        "3-interlocking.txt",
                        "NOT ENFORCED:",
                        List.of("interlock", bankFile)),
                new Scene(
                        "The drawing",
                        "4-drawing.txt",
                        "",
                        List.of(
                                "draw",
                                bankFile,
                                "-o",
                                own.resolve("drawing.svg").toString())),
                new Scene("The order of work, in and back", "5-order-of-work.txt", "WAY IN", isolate(bankFile, sheet)),
                new Scene(
                        "Its moves and keys on one card",
                        "6-sequence-card.txt",
                        "",
                        isolate(bankFile, sheet, "--card")),
                new Scene(
                        "How long to wait, and what is left then",
                        "7-discharge.txt",
                        "CHECKS",
                        List.of("discharge", bankFile)),
                new Scene(
                        "What the readings say of every unit",
                        "8-survey.txt",
                        "EVERY UNIT",
                        List.of("survey", bankFile, readings)),
                new Scene(
                        "What to fit where",
                        "9-fit.txt",
                        "BETTER BALANCED",
                        List.of("fit", bankFile, readings, "--spares", spares)),
                new Scene(
                        "What the first energization should draw",
                        "10-energization.txt",
                        "CHECKS",
                        List.of("energize", bankFile, "--bus", bus)),
                new Scene(
                        "What happens when a switch closes",
                        "11-inrush.txt",
                        "formula: poles together",
                        List.of(
                                "inrush",
                                bankFile,
                                "-o",
                                own.resolve("inrush.svg").toString())),
                new Scene(
                        "What service asks of the units, and what the load asks of the bank",
                        "12-duty.txt",
                        "CHECKS",
                        List.of("duty", bankFile)),
                new Scene(
                        "Which combinations to avoid, because they resonate",
                        "13-resonance.txt",
                        "COMBINATIONS",
                        List.of(
                                "resonance",
                                bankFile,
                                "-o",
                                own.resolve("resonance.svg").toString())),
                new Scene("Whether the fuses suit their places", "14-fuses.txt", "CHECKS", List.of("fuses", bankFile)),
                new Scene(
                        "The report",
                        "15-report.txt",
                        "",
                        List.of("report", job, "-o", own.resolve("report.pdf").toString())));
    }

    private static int play(Scene scene, Path own, PrintWriter out) {
        StringWriter answer = new StringWriter();
        StringWriter remarks = new StringWriter();
        PrintWriter answerWriter = new PrintWriter(answer);
        PrintWriter remarkWriter = new PrintWriter(remarks);
        int code = Main.run(answerWriter, remarkWriter, scene.arguments().toArray(String[]::new));
        answerWriter.flush();
        remarkWriter.flush();
        OutputFile.write(own.resolve(scene.file()), answer.toString().getBytes(StandardCharsets.UTF_8));
        boolean cut = false;
        for (String line : answer.toString().split("\n", -1)) {
            if (!scene.until().isEmpty() && line.stripLeading().startsWith(scene.until())) {
                cut = true;
                break;
            }
            out.println(line.isEmpty() ? "" : "   " + line);
        }
        remarks.toString().lines().forEach(line -> out.println("   " + line));
        if (cut) {
            out.println("   … the rest is in " + own.resolve(scene.file()));
        }
        return code;
    }

    private static String typed(List<String> arguments) {
        return String.join(
                " ",
                arguments.stream()
                        .map(a -> a.contains(" ") ? "\"" + a + "\"" : a)
                        .toList());
    }
}
