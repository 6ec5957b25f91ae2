package org.varwright.cli;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongFunction;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.JobLog;
import org.varwright.job.Order;
import org.varwright.quantity.CalendarDate;
import org.varwright.sheet.TableFile;
import org.varwright.survey.CellTable;

/** Jobs under way, invented, as a crew's tablets would have written them up to now. */
final class DemoJobs {
    private static final long MINUTE = 60_000;
    private static final long DAY = 24 * 60 * MINUTE;

    private final long nowMillis;
    private final String suffix;

    /**
     * Jobs as they stand at that time.
     *
     * @param nowMillis the wall clock [ms]
     * @param suffix ends their names: a browser that was here before may hold earlier ones
     */
    DemoJobs(long nowMillis, String suffix) {
        this.nowMillis = nowMillis;
        this.suffix = suffix;
    }

    List<JobLog> all() {
        return List.of(
                ending(nowMillis - 2 * MINUTE, this::waiting).log(),
                ending(nowMillis - MINUTE, this::measuring).log(),
                ending(nowMillis - 190 * DAY, this::finished).log());
    }

    /** The story told so that it ends at that time: once from anywhere to learn how long it lasts, and then in its place. */
    private static Job ending(long endMillis, LongFunction<CrewTablet> story) {
        return story.apply(endMillis - (story.apply(endMillis).nowMillis() - endMillis))
                .job();
    }

    /** An alarm, an order of work, the way in up to a wait that runs. */
    private CrewTablet waiting(long startMillis) {
        CrewTablet tablet =
                new CrewTablet("corbel-reach-3-" + suffix, "crew-tablet", "R. Imhof", "Dana Okafor-Lind", startMillis);
        tablet.write(new Fact.Opened(
                "Neutral voltage alarm on stage 3",
                DemoFiles.text("corbel-reach-3.bank.yaml"),
                Optional.of("CR-2026-014"),
                Optional.of("find and replace failed units in stages 3 and 4, prove the bank good, put it back"),
                Optional.of("neutral voltage alarm on stage 3, 5.6 V at the relay")));
        tablet.pass(5 * 60);
        tablet.write(new Fact.Noted("A unit in bay 3 looks bulged through the window; keep clear of it."));
        tablet.pass(4 * 60);
        tablet.write(new Fact.OrderMade(
                List.of("bay 3", "bay 4"),
                Fact.Origin.AsFound.inService(),
                Optional.empty(),
                "units of stages 3 and 4 to be measured"));
        tablet.stepsToHold(75);
        tablet.pass(10);
        tablet.startHold();
        return tablet;
    }

    /** The way in is done, two people are signed on, half of the units are measured. */
    private CrewTablet measuring(long startMillis) {
        CrewTablet tablet = new CrewTablet(
                "lantern-mesa-1-" + suffix, "rack-tablet", "Marisol Quintana Peña", "T. Ashdown", startMillis);
        tablet.write(new Fact.Opened(
                "Neutral current trip, one fuse hanging",
                DemoFiles.text("lantern-mesa-1.bank.yaml"),
                Optional.of("LM-26-031"),
                Optional.of("survey of the whole rack, replace what failed"),
                Optional.of("neutral current trip, 0.93 A at the relay")));
        tablet.pass(6 * 60);
        tablet.write(new Fact.OrderMade(
                List.of("north gate"), Fact.Origin.AsFound.inService(), Optional.empty(), "whole rack to be measured"));
        tablet.stepsTo(Order.Phase.WORK, 70);
        tablet.pass(60);
        tablet.write(new Fact.SignedOn("Marisol Quintana Peña", Optional.of("red 4")));
        tablet.pass(20);
        tablet.write(new Fact.SignedOn("T. Ashdown", Optional.of("red 7")));
        tablet.write(new Fact.SparesImported("lantern-mesa-1.spares.csv", DemoFiles.text("lantern-mesa-1.spares.csv")));
        List<Map<String, String>> rows = readings();
        for (Map<String, String> row : rows.subList(0, rows.size() / 2)) {
            tablet.pass(45);
            Map<String, String> values = new LinkedHashMap<>(row);
            String position = String.valueOf(values.remove("position"));
            tablet.write(new Fact.ReadingTaken(position, values));
        }
        return tablet;
    }

    /** A job of half a year ago: two units replaced, the bank back in service, closed. */
    private CrewTablet finished(long startMillis) {
        CrewTablet tablet =
                new CrewTablet("hallin-moor-2-" + suffix, "van-tablet", "Åse Tveitdal", "Colm Brannigan", startMillis);
        tablet.write(new Fact.Opened(
                "Bridge current alarm, phase B",
                DemoFiles.text("hallin-moor-2.bank.yaml"),
                Optional.of("HM2/2026/07"),
                Optional.of("survey after alarm; replace what must be replaced"),
                Optional.of("bridge current alarm, phase B")));
        tablet.pass(8 * 60);
        tablet.write(new Fact.OrderMade(
                List.of("mesh enclosure"),
                Fact.Origin.AsFound.inService(),
                Optional.empty(),
                "every unit to be measured"));
        tablet.stepsTo(Order.Phase.WORK, 80);
        tablet.pass(30);
        tablet.write(new Fact.SignedOn("Åse Tveitdal", Optional.of("yellow 2")));
        tablet.write(new Fact.SignedOn("Colm Brannigan", Optional.of("yellow 5")));
        tablet.pass(50 * 60);
        for (String kind : List.of("readings", "spares")) {
            String name = "hallin-moor-2." + kind + ".csv";
            tablet.write(
                    kind.equals("readings")
                            ? new Fact.ReadingsImported(name, DemoFiles.text(name))
                            : new Fact.SparesImported(name, DemoFiles.text(name)));
        }
        tablet.pass(25 * 60);
        again(tablet, "capacitor/A-lr/u2", "11.60 uF");
        again(tablet, "capacitor/B-ur/u1", "11.66 uF");
        again(tablet, "capacitor/C-ll/u1", "11.58 uF");
        lift(tablet, "HM20-0311", Optional.of("capacitor/B-ll/u1"), Optional.empty());
        lift(tablet, "HM20-0322", Optional.of("capacitor/C-ur/u2"), Optional.empty());
        lift(tablet, "HM20-0332", Optional.empty(), Optional.of("capacitor/B-ll/u1"));
        lift(tablet, "HM20-0331", Optional.empty(), Optional.of("capacitor/C-ur/u2"));
        tablet.write(new Fact.Noted(
                "HM20-0322 is marked condemned: two element fuses out, 1.12 times rated on what is left at 36 kV."));
        tablet.pass(10 * 60);
        tablet.write(new Fact.SignedOff("Colm Brannigan"));
        tablet.write(new Fact.SignedOff("Åse Tveitdal"));
        tablet.stepsTo(Order.Phase.IN_SERVICE, 80);
        tablet.pass(4 * 60);
        Map<String, String> measured = new LinkedHashMap<>();
        measured.put("bus", "33.1 kV");
        measured.put("capacitor/A", "140.2 A");
        measured.put("capacitor/B", "139.5 A");
        measured.put("capacitor/C", "139.9 A");
        measured.put("capacitor bridge-current A", "55 mA");
        measured.put("capacitor bridge-current B", "48 mA");
        measured.put("capacitor bridge-current C", "9 mA");
        measured.forEach((place, value) -> tablet.write(new Fact.Measured(place, value)));
        tablet.pass(15 * 60);
        tablet.write(
                new Fact.VisitAgreed(day(startMillis + 183 * DAY), "measure the units to be watched again", List.of()));
        tablet.write(new Fact.Signed("person in charge", tablet.job().log().hash()));
        tablet.write(new Fact.Closed("two units replaced, bank back in service, currents as predicted"));
        return tablet;
    }

    private static CalendarDate day(long millis) {
        LocalDate day = LocalDate.ofEpochDay(Math.floorDiv(millis, DAY));
        return new CalendarDate(day.getYear(), day.getMonthValue(), day.getDayOfMonth());
    }

    /** Measures a unit again whose first reading can't be right. */
    private static void again(CrewTablet tablet, String position, String capacitance) {
        tablet.pass(3 * 60);
        tablet.write(new Fact.ReadingTaken(position, Map.of("capacitance", capacitance)));
    }

    private static void lift(CrewTablet tablet, String serial, Optional<String> from, Optional<String> to) {
        tablet.pass(7 * 60);
        tablet.write(new Fact.UnitMoved(serial, from, to));
    }

    /** Rows of the demo's readings of Lantern Mesa, by the column names of events. */
    private static List<Map<String, String>> readings() {
        String name = "lantern-mesa-1.readings.csv";
        CellTable table = TableFile.read(name, DemoFiles.bytes(name), Optional.empty());
        List<String> columns =
                List.of("position", "serial", "capacitance", "resistance", "fuse", "temperature", "instrument", "note");
        return table.rows().stream()
                .skip(1)
                .map(CellTable.Row::cells)
                .map(row -> {
                    Map<String, String> values = new LinkedHashMap<>();
                    for (int i = 0; i < columns.size(); i++) {
                        if (i < row.size() && !row.get(i).isBlank()) {
                            values.put(columns.get(i), row.get(i));
                        }
                    }
                    return values;
                })
                .toList();
    }
}
