package org.varwright.bankfile;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.Stage;
import org.varwright.jobsheet.JobSheet;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/**
 * What came of reading a job sheet.
 *
 * @param file name as given
 * @param job the job; present when there is no error
 * @param errors in the order of the file
 * @param places where each part stands, by its path
 */
public record JobSheetReading(String file, Optional<JobSheet> job, List<Problem> errors, Map<String, Place> places) {
    public JobSheetReading {
        errors = List.copyOf(errors);
        places = Collections.unmodifiableMap(new LinkedHashMap<>(places));
    }

    /** Where the part with this path stands; where it has no place of its own, the nearest part around it. */
    public Place place(String path) {
        return BankReading.placeIn(places, path, file);
    }

    /**
     * The job sheet as read, not yet held against its bank.
     *
     * @throws VarwrightException with every error of the file
     */
    public JobSheet requireJob() {
        return job.orElseThrow(() -> new VarwrightException(errors));
    }

    /**
     * The job sheet, every name in it being one of the bank's.
     *
     * @param bank the bank that it names
     * @throws VarwrightException with every name that the bank does not know
     */
    public JobSheet requireFor(Bank bank) {
        JobSheet sheet = requireJob();
        List<Problem> unknown = new ArrayList<>();
        Set<String> compartments = new LinkedHashSet<>();
        bank.isolation().map(Isolation::compartments).orElse(List.of()).stream()
                .map(Compartment::name)
                .forEach(compartments::add);
        for (int i = 0; i < sheet.access().size(); i++) {
            check("access[" + i + "]", "compartment", sheet.access().get(i), compartments, unknown);
        }
        sheet.start().forEach((device, position) -> start(bank, device, position, unknown));
        Set<String> measurable = measurable(bank);
        sheet.measured()
                .keySet()
                .forEach(place -> check("measured." + place, "line, leg or sensor", place, measurable, unknown));
        if (!unknown.isEmpty()) {
            throw new VarwrightException(unknown);
        }
        return sheet;
    }

    /** Lines and legs such as {@code stage 2/A}, sensors such as {@code stage 4 neutral-voltage}. */
    private static Set<String> measurable(Bank bank) {
        Set<String> names = new LinkedHashSet<>();
        for (Stage stage : bank.stages()) {
            List.of("A", "B", "C").forEach(phase -> names.add(stage.name() + "/" + phase));
            stage.legs().forEach(leg -> names.add(stage.name() + "/" + leg));
        }
        bank.protection().forEach(p -> names.add(p.stage() + " " + p.senses().code()));
        return names;
    }

    private void start(Bank bank, String name, String position, List<Problem> unknown) {
        List<Device> devices = bank.isolation().map(Isolation::devices).orElse(List.of());
        Optional<Device> device =
                devices.stream().filter(d -> d.name().equals(name)).findFirst();
        if (device.isEmpty()) {
            check(
                    "start." + name,
                    "device",
                    name,
                    devices.stream().map(Device::name).toList(),
                    unknown);
        } else if (!device.get().positions().contains(position)) {
            unknown.add(Problem.of(
                    Message.NOT_A_CHOICE,
                    place("start." + name),
                    Shown.of(position),
                    Nearest.hint(position, device.get().positions()),
                    Shown.words(device.get().positions())));
        }
    }

    private void check(String path, String kind, String name, Iterable<String> known, List<Problem> unknown) {
        for (String one : known) {
            if (one.equals(name)) {
                return;
            }
        }
        unknown.add(Problem.of(
                Message.UNKNOWN_NAME, place(path), kind, Shown.of(name), Nearest.hint(name, known), Shown.list(known)));
    }
}
