package org.varwright.bankfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.varwright.jobsheet.JobSheet;
import org.varwright.jobsheet.PaperSize;
import org.varwright.problem.Message;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/** Job sheets ({@code .job.yaml}): what belongs to one job, read with the manners of a bank file. */
public final class JobSheetFile {
    static final String FORMAT = "varwright-job/1";
    static final Section JOB = new Section(
            "job",
            ordered(
                    "format", FORMAT,
                    "number", "J-17",
                    "bank", "north-yard-1.bank.yaml",
                    "readings", "north-yard-1.readings.csv",
                    "spares", "north-yard-1.spares.csv",
                    "record", "north-yard-1.trip.cff",
                    "alarm", "neutral voltage alarm",
                    "reason", "find and replace failed units",
                    "date", "2026-05-04",
                    "people", "[{name: Ida Quill, role: in charge}]",
                    "access", "[bay 1]",
                    "start", "{24-1: open}",
                    "bus", "13.8 kV",
                    "measured", "{stage 1/A: 12.5 A}",
                    "paper", "A4"));
    static final Section PERSON = new Section("person", ordered("name", "Ida Quill", "role", "in charge"));

    private static final Map<String, PaperSize> PAPERS = papers();
    private static final Pattern DAY = Pattern.compile("([0-9]{4})-([0-9]{2})-([0-9]{2})");

    private JobSheetFile() {}

    /**
     * Reads a job sheet and finds every fault in it in one run. Names of compartments, devices and legs are held against the bank by
     * {@link JobSheetReading#requireFor}.
     *
     * @param fileName as the person gave it, for messages
     * @param content of the file
     */
    public static JobSheetReading read(String fileName, byte[] content) {
        Findings findings = new Findings(fileName);
        Optional<JobSheet> job = FileText.decode(content, findings)
                .flatMap(text -> TreeReader.read(text, findings))
                .flatMap(tree -> Fields.of(tree, JOB, "", findings))
                .flatMap(JobSheetFile::read);
        boolean clean = findings.errorCount() == 0;
        return new JobSheetReading(fileName, clean ? job : Optional.empty(), findings.errors(), findings.places());
    }

    private static Optional<JobSheet> read(Fields f) {
        String format = f.word("format");
        if (!format.isEmpty() && !format.equals(FORMAT)) {
            f.error(Message.NOT_A_CHOICE, "format", Shown.of(format), "", FORMAT);
        }
        Optional<String> number = f.optionalText("number");
        String bank = f.word("bank");
        Optional<String> readings = f.optionalWord("readings");
        Optional<String> spares = f.optionalWord("spares");
        Optional<String> record = f.optionalWord("record");
        Optional<String> alarm = f.optionalText("alarm");
        Optional<String> reason = f.optionalText("reason");
        Optional<String> date = f.optionalScalar("date").flatMap(s -> day(s, f.findings()));
        List<JobSheet.Person> people = new ArrayList<>();
        f.each("people", PERSON, JobSheetFile::person).forEach(item -> people.add(item.value()));
        List<String> access = f.has("access") ? f.names("access", 1) : List.of();
        Map<String, String> start = new LinkedHashMap<>();
        f.scalarsByName("start")
                .forEach((device, position) -> start.put(device, position.text().strip()));
        OptionalDouble bus = f.optionalQuantity("bus", Dimension.VOLTAGE, 100.0, 1.5e6);
        Map<String, JobSheet.Measured> measured = new LinkedHashMap<>();
        f.scalarsByName("measured").forEach((place, value) -> measured.put(place, measured(value, f.findings())));
        Optional<PaperSize> paper = f.optionalChoice("paper", PAPERS);
        return f.finish(() -> new JobSheet(
                bank, readings, spares, record, access, bus, measured, number, alarm, reason, date, people, paper,
                start));
    }

    private static Optional<JobSheet.Person> person(Fields f) {
        String name = f.word("name");
        Optional<String> role = f.optionalText("role");
        return f.finish(() -> new JobSheet.Person(name, role));
    }

    /** A voltage where it has the unit of one, else a current. */
    private static JobSheet.Measured measured(Tree.Scalar scalar, Findings findings) {
        Dimension dimension =
                Dimension.VOLTAGE.parse(scalar.text()) instanceof Reading.Value ? Dimension.VOLTAGE : Dimension.CURRENT;
        return new JobSheet.Measured(Quantities.read(scalar, dimension, 0.0, 1e6, findings), dimension);
    }

    /** A day that the calendar has. */
    private static Optional<String> day(Tree.Scalar scalar, Findings findings) {
        String text = scalar.text().strip();
        var matcher = DAY.matcher(text);
        if (matcher.matches()) {
            int year = Integer.parseInt(matcher.group(1));
            int month = Integer.parseInt(matcher.group(2));
            int day = Integer.parseInt(matcher.group(3));
            if (month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month)) {
                return Optional.of(text);
            }
        }
        findings.error(Message.NOT_A_DAY, scalar.place(), Shown.of(text));
        return Optional.empty();
    }

    private static int daysIn(int year, int month) {
        return switch (month) {
            case 2 -> year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) ? 29 : 28;
            case 4, 6, 9, 11 -> 30;
            default -> 31;
        };
    }

    private static Map<String, PaperSize> papers() {
        Map<String, PaperSize> papers = new LinkedHashMap<>();
        for (PaperSize paper : PaperSize.values()) {
            papers.put(paper.code(), paper);
        }
        return papers;
    }

    private static Map<String, String> ordered(String... pairs) {
        Map<String, String> map = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            map.put(pairs[i], pairs[i + 1]);
        }
        return map;
    }
}
