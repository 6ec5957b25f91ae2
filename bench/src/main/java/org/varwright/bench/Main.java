package org.varwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.varwright.survey.SurveyConfusion;

/**
 * Measures every section in one run, prints it and writes it to the document. Started by {@code ./varwright-bench} in the checkout's folder. With names of
 * sections only these are measured and printed; the document stays as it is, or with {@code --write} gets them with a word on when they were measured.
 */
final class Main {
    private static final String WRITE = "--write";
    private static final Path DOCUMENT = Path.of("docs", "performance.md");

    /** In the order of the document. */
    private static final List<Section> SECTIONS = List.of(
            new Section("interlock", "Interlocking: ours and SPIN's verifier", InterlockBench::ofAll),
            new Section("unbalance", "Unbalance: ours and ngspice", UnbalanceBench::text),
            new Section("inrush", "Inrush in time: ours and ngspice", InrushBench::text),
            new Section("fit", "Fit: ours and CP-SAT", FitBench::text),
            new Section(
                    "survey",
                    "Survey: what it says of units whose truth is known",
                    () -> SurveyConfusion.of(1000).text()),
            new Section("record", "Records: decoding, reading and the JDK's parsing", RecordBench::text),
            new Section("kernels", "Kernels: the small works that the rest is made of", KernelBench::text),
            new Section("growth", "Growth: what more of it costs", GrowthBench::text),
            new Section("start", "Start of small commands", StartBench::text));

    private Main() {}

    public static void main(String[] args) throws IOException {
        boolean isWritten = List.of(args).contains(WRITE);
        List<String> wanted =
                List.of(args).stream().filter(a -> !a.equals(WRITE)).toList();
        List<String> names = SECTIONS.stream().map(Section::name).toList();
        if (!names.containsAll(wanted)) {
            System.err.println("varwright-bench: the sections are " + String.join(", ", names)
                    + "; name some of them, or none to measure all");
            System.exit(2);
        }
        if (wanted.isEmpty()) {
            String text = document();
            System.out.println(text);
            Files.writeString(DOCUMENT, text);
            return;
        }
        for (Section section : SECTIONS) {
            if (wanted.contains(section.name())) {
                String text = section.text();
                System.out.println(text);
                if (isWritten) {
                    Files.writeString(DOCUMENT, replaced(Files.readString(DOCUMENT), section, text));
                }
            }
        }
    }

    /** The document with one section measured apart from the others. */
    private static String replaced(String document, Section section, String text) {
        String head = "## " + section.heading() + "\n";
        String apart = head + "Measured apart from the others: " + Machine.date() + " at commit "
                + System.getProperty("varwright.commit", "not known") + ", programs that wanted a core "
                + Machine.load() + ".\n\n" + text.substring(head.length()).strip() + "\n";
        int from = document.indexOf(head);
        if (from >= 0) {
            int next = document.indexOf("\n## ", from);
            return document.substring(0, from) + apart + (next < 0 ? "" : document.substring(next));
        }
        for (Section later : SECTIONS.subList(SECTIONS.indexOf(section) + 1, SECTIONS.size())) {
            int at = document.indexOf("## " + later.heading() + "\n");
            if (at >= 0) {
                return document.substring(0, at) + apart + "\n" + document.substring(at);
            }
        }
        return document + "\n" + apart;
    }

    private static String document() throws IOException {
        String loadBefore = Machine.load();
        List<String> sections = new ArrayList<>();
        for (Section section : SECTIONS) {
            System.err.println("varwright-bench: measuring " + section.name() + " …");
            sections.add(section.text());
        }
        return """
                # Performance

                Written by `./varwright-bench`; run it to measure again (about ten minutes; it needs Maven, the Debian packages spin, gcc and ngspice, and an idle
                machine), or `./varwright-bench NAME…` to print some sections: %s. No test depends on a time.

                Measured %s at commit %s on %s.
                Programs that wanted a core (means of 1 / 5 / 15 minutes): %s before, %s after. This run itself wants one; more means that others
                ran beside it, and then the clock's times say little and the processor's are longer than on an idle machine.

                """.formatted(
                        String.join(", ", SECTIONS.stream().map(Section::name).toList()),
                        Machine.date(),
                        System.getProperty("varwright.commit", "not known"),
                        Machine.text(),
                        loadBefore,
                        Machine.load())
                + String.join("\n", sections);
    }
}
