package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.json.Json;

/** The JSON fields and exit codes that others rely on, command by command, on the demonstration banks. */
class ContractIT {
    private static final String BANK =
            Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
    private static final String READINGS =
            Session.DEMO.resolve("corbel-reach-3.readings.csv").toString();
    private static final String SPARES =
            Session.DEMO.resolve("corbel-reach-3.spares.csv").toString();
    private static final String TAMARACK =
            Session.EXAMPLES.resolve("tamarack-flats-2.bank.yaml").toString();

    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    @Test
    void check() {
        Json.Obj json = json(0, "check", BANK);
        assertHas(json, "ok", "errors", "warnings", "summary");
        assertHas(
                first(json.get("summary"), "stages"),
                "name",
                "ratedKvar",
                "capacitanceFaradsPerLeg",
                "legCurrentAmperes");
    }

    @Test
    void triage() {
        Json.Obj json = json(3, "triage", BANK, "--symptom", "unbalance-alarm");
        assertHas(json, "symptom", "stages", "causes", "firstChecks", "runOn", "bring", "access", "fetch", "unknown");
        assertHas(first(json, "causes"), "id", "text", "rank", "for", "against", "checks");
        assertHas((Json.Obj) json.get("runOn"), "answer", "text", "conditions", "basis");
        assertEquals(1, Session.run("triage", BANK, "--symptom", "bulged-unit").code());
        assertEquals(
                0,
                Session.run("triage", BANK, "--symptom", "selector-in-manual").code());
        Json.Obj read =
                json(1, "triage", BANK, "--symptom", "unbalance-alarm", "--reading", "stage 1 neutral-voltage=60V");
        assertTrue(!read.get("located").equals(Json.none()));
    }

    @Test
    void interlockOfTheExampleExploresWhatTwoOtherEnginesExplore() {
        // 6122 states and 58228 moves: two independent engines agree on this file.
        Json.Obj json = json(1, "interlock", TAMARACK);
        assertEquals(new Json.Num(6122), json.get("states"));
        assertEquals(new Json.Num(58228), json.get("moves"));
        assertEquals(new Json.Bool(true), json.get("complete"));
        for (Json item : array(json, "properties")) {
            Json.Obj property = (Json.Obj) item;
            String id = ((Json.Str) property.get("id")).value();
            int shortest = switch (id) {
                case "exposed-low-voltage" -> 1;
                case "recharge" -> 2;
                case "ungrounded-entry" -> 22;
                default -> 0;
            };
            assertEquals(new Json.Bool(shortest == 0), property.get("enforced"), id);
            if (shortest > 0) {
                List<Json> path = array(property, "counterexample");
                assertEquals(shortest, path.size(), id);
                assertHas((Json.Obj) path.getFirst(), "do", "what");
                assertTrue(property.get("rule") instanceof Json.Str, id);
            } else {
                assertEquals(Json.none(), property.get("counterexample"), id);
            }
        }
    }

    @Test
    void aDoorThatKeysCanNeverOpenIsANo() throws Exception {
        // Every property of the rack holds; only the north gate never opens: it wants two keys, and one is given for
        // the other.
        String rack = Files.readString(Session.DEMO.resolve("lantern-mesa-1.bank.yaml"));
        String gate = "{door: north gate, key: LM-4}";
        String exchanges = "  exchanges:\n";
        assertTrue(rack.contains(gate) && rack.contains(exchanges));
        Path sound = Files.writeString(folder.resolve("sound.bank.yaml"), rack);
        Path loop = Files.writeString(
                folder.resolve("loop.bank.yaml"),
                rack.replace(gate, "{door: north gate, keys: [LM-4, LM-6]}")
                        .replace(exchanges, exchanges + "    - {name: second exchange, in: [LM-4], out: [LM-6]}\n"));
        assertEquals(0, Session.run("interlock", sound.toString()).code());
        Session session = Session.run("interlock", loop.toString());
        assertEquals(1, session.code(), session.err());
        assertTrue(session.out().contains("Key loop that can never start"), session.out());
        int line = 1
                + Files.readAllLines(loop).stream()
                        .map(String::strip)
                        .toList()
                        .indexOf("- {door: north gate, keys: [LM-4, LM-6]}");
        assertTrue(
                session.out().lines().anyMatch(l -> l.matches("  isolation\\.locks\\[[0-9]+] +line " + line)),
                session.out());
        assertEquals(
                1,
                Session.run("isolate", loop.toString(), "--access", "north gate")
                        .code());
    }

    @Test
    void interlockWithTooLittleMemoryIsUndecidedAndNeverEnforced() {
        Session session = Session.run(
                "interlock",
                "--json",
                "--memory",
                "1",
                Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString());
        Json.Obj json = (Json.Obj) Json.parse(session.out());
        if (json.get("complete").equals(new Json.Bool(false))) {
            assertTrue(session.code() == 3 || session.code() == 1);
            for (Json item : array(json, "properties")) {
                assertTrue(!((Json.Obj) item).get("enforced").equals(new Json.Bool(true)), item.print());
            }
        } else {
            assertEquals(1, session.code());
        }
    }

    @Test
    void isolate() {
        Json.Obj json = json(0, "isolate", BANK, "--access", "bay 2");
        assertHas(json, "access", "refused", "in", "back", "faults", "cautions");
        assertHas(first(json, "in"), "n", "kind", "move", "text", "where", "seconds", "state", "enforcedBy", "why");
        assertHas(first(json, "faults"), "fault", "caughtAtStep");
        assertEquals(2, Session.run("isolate", BANK, "--access", "bay 9").code());
        assertTrue(Session.run("isolate", BANK, "--access", "bay 2", "--card")
                .out()
                .startsWith("SEQUENCE CARD"));
    }

    @Test
    void isolateFromWhereTheScopeChanged() throws IOException {
        Session half = Session.run("isolate", BANK, "--access", "bay 2", "--state-after", "30");
        assertEquals(0, half.code(), half.err());
        Path state = folder.resolve("half.json");
        Files.writeString(state, half.out());
        Json.Obj json = json(0, "isolate", BANK, "--access", "bay 2", "bay 3", "--from", state.toString());
        assertTrue(array(json, "in").size() > 5);
        assertEquals(
                2,
                Session.run("isolate", BANK, "--access", "bay 2", "--state-after", "999")
                        .code());
    }

    @Test
    void aScopeThatChangesHalfWayMakesANewOrderFromThere() throws Exception {
        Session state = Session.run("isolate", BANK, "--access", "bay 2", "--state-after", "20");
        assertEquals(0, state.code(), state.err());
        Path saved = Files.writeString(folder.resolve("state.json"), state.out());
        Json.Obj json = json(0, "isolate", BANK, "--access", "bay 2", "--access", "bay 3", "--from", saved.toString());
        Json.Obj whole = json(0, "isolate", BANK, "--access", "bay 2", "--access", "bay 3");
        assertTrue(array(json, "in").size() < array(whole, "in").size());
        assertEquals(
                2,
                Session.run("isolate", BANK, "--access", "bay 2", "--state-after", "2000")
                        .code());
    }

    @Test
    void theSequenceCardIsDrawn() throws Exception {
        Path card = folder.resolve("card.svg");
        assertEquals(
                0,
                Session.run("isolate", BANK, "--access", "bay 2", "--card-drawing", card.toString())
                        .code());
        assertTrue(Files.readString(card).contains("CR-5"));
    }

    @Test
    void aKeySharedWithAnotherBankIsAFault() throws Exception {
        Path other = Files.writeString(
                folder.resolve("other.bank.yaml"),
                Files.readString(Path.of(TAMARACK))
                        .replace("TF-3", "CR-3")
                        .replace("Tamarack Flats bank 2", "Other bank"));
        Session alone = Session.run("interlock", BANK);
        Session together = Session.run("interlock", BANK, "--with", other.toString());
        assertTrue(!alone.out().contains("Other bank"), alone.out());
        assertTrue(together.out().contains("CR-3") && together.out().contains("Other bank"), together.out());
    }

    @Test
    void dischargeUnbalanceAndEnergize() {
        Json.Obj discharge = json(0, "discharge", BANK);
        assertHas(
                first(discharge, "units"),
                "type",
                "capacitanceFarads",
                "resistanceOhms",
                "initialVolts",
                "secondsToSafe",
                "safeVolts",
                "waitSeconds",
                "energyJoules");
        Json.Obj check = first(discharge, "checks");
        assertHas(check, "subject", "value", "limit", "unit", "verdict", "basis");
        assertHas((Json.Obj) check.get("basis"), "formula", "terms", "source");
        Json.Obj unbalance = json(0, "unbalance", BANK);
        assertHas(unbalance, "healthy", "failures", "settings");
        assertHas(
                first(unbalance, "failures"),
                "positions",
                "kind",
                "count",
                "sensors",
                "highestUnitVoltagePerRated",
                "highestGroupVoltagePerHealthy",
                "verdict");
        Json.Obj energize = json(0, "energize", BANK, "--bus", "12.4kV");
        assertHas(energize, "bus", "legs", "sensors", "comparison");
        assertHas(first(energize, "legs"), "leg", "expectedAmperes", "low", "high");
        assertEquals(
                1,
                Session.run("energize", BANK, "--bus", "12.4kV", "--measured", "stage 1/A=2 A")
                        .code());
    }

    @Test
    void fuses() {
        Json.Obj fuses = json(1, "fuses", BANK);
        assertHas(fuses, "fuses", "unfused", "checks", "notAnswered", "cautions");
        Json.Obj fuse = first(fuses, "fuses");
        assertHas(
                fuse,
                "stage",
                "place",
                "type",
                "link",
                "carriesAmperes",
                "neededAmperes",
                "unitShorted",
                "parallelEnergy",
                "proposals");
        assertHas((Json.Obj) fuse.get("unitShorted"), "amperes", "melting", "clearing", "highestUnitVoltagePerRated");
        assertHas(first(fuse, "proposals"), "type", "link", "recommended", "verdict", "why", "notSmaller", "notLarger");
        assertHas(first(fuses, "notAnswered"), "missing", "effect");
        // a bank whose units have element fuses inside has nothing to judge outside
        String inside = Session.DEMO.resolve("hallin-moor-2.bank.yaml").toString();
        assertEquals(0, Session.run("fuses", inside).code());
        assertTrue(Session.run("fuses", BANK, "--stage", "stage 1", "--link", "30T", "--explain")
                .out()
                .contains("FUS-12"));
    }

    @Test
    void dutyAndResonance() throws Exception {
        // The control hunts at light load. No limit of a unit is broken, but five combinations are to be avoided.
        Json.Obj duty = json(
                1, "duty", BANK, "--overvoltage", "1.4", "--for", "10s", "--at", "12.47kV", "--at-frequency", "50Hz");
        assertHas(
                duty,
                "stages",
                "conductors",
                "overvoltages",
                "elsewhere",
                "wrongSpares",
                "voltageRises",
                "control",
                "loads",
                "checks",
                "unanswered");
        assertHas(first(duty, "stages"), "stage", "busVolts", "harmonics", "stress", "unitAmperes");
        assertHas(first(duty, "overvoltages"), "multiple", "seconds", "allowedSeconds", "verdict");
        assertEquals(new Json.Num(15.0), first(duty, "overvoltages").get("allowedSeconds"));
        assertHas(first(duty, "voltageRises"), "name", "vars", "byRule", "exact");
        assertHas(first(duty, "wrongSpares"), "serial", "type", "stage", "vars", "wantedVars");
        assertHas(first(duty, "loads"), "load", "wantedVars", "leading", "use", "clear");
        Path scan = folder.resolve("scan.svg");
        Json.Obj resonance = json(0, "resonance", BANK, "-o", scan.toString());
        assertHas(
                resonance, "source", "harmonics", "combinations", "avoid", "clear", "tunings", "checks", "unanswered");
        assertHas(
                first(resonance, "combinations"),
                "name",
                "stages",
                "vars",
                "peaks",
                "amplifications",
                "duty",
                "verdict",
                "reasons");
        assertEquals(8, array(resonance, "combinations").size());
        assertEquals(5, array(resonance, "avoid").size());
        // Much of the 5th behind the source breaks the limits of the units.
        json(1, "resonance", BANK, "--harmonic", "5: 12 %");
        assertTrue(Files.readString(scan).contains("<svg")
                && Files.readString(scan).contains("Impedance scan"));
        Json.Obj one = json(0, "resonance", BANK, "--stages", "stage 3,stage 4", "--harmonic", "5: 1 %");
        assertEquals(1, array(one, "combinations").size());
        // Without the short-circuit level nothing is decided.
        Path unknown = Files.writeString(
                folder.resolve("unknown.bank.yaml"),
                Files.readString(Path.of(BANK)).replace("  short-circuit: 210 MVA\n", ""));
        assertEquals(3, Session.run("resonance", unknown.toString()).code());
        assertTrue(Session.run("duty", BANK, "--explain").out().contains("DUT-1"));
    }

    @Test
    void recordAtItsBank() {
        String trip = Session.DEMO.resolve("corbel-reach-3.trip.cff").toString();
        Json.Obj record = json(1, "record", trip, BANK);
        assertHas(record, "frequencyHertz", "matching", "findings", "located", "sentences", "notAnswered");
        assertHas(first(record, "findings"), "kind", "weight", "seconds", "where", "text", "evidence", "basis");
        assertHas(first(record, "located"), "sensor", "channel", "fromSeconds", "toSeconds", "locate");
        Path waves = folder.resolve("trip.svg");
        Session text = Session.run("record", trip, BANK, "--explain", "-o", waves.toString());
        assertEquals(1, text.code());
        assertTrue(text.out().contains("a unit out (fuse operated) in stage 3/B"), text.out());
        assertTrue(text.out().contains("REC-16") && text.out().contains("UNB-6"), text.out());
        assertTrue(Files.exists(waves));
        // of a channel that is said to be of no use nothing is told: without the sensor nothing is located
        Json.Obj without = json(1, "record", trip, BANK, "--channel-map", "VN S3=none");
        assertEquals(List.of(), array(without, "located"));
        // without the second voltage the record can't tell the angle of nothing, but it asks for what is exchanged
        Json.Obj unclear = json(3, "record", trip, BANK, "--channel-map", "VA=bus B", "--channel-map", "VB=none");
        assertTrue(!array((Json.Obj) unclear.get("matching"), "questions").isEmpty(), unclear.print());
    }

    @Test
    void record() throws Exception {
        String trip = Session.DEMO.resolve("corbel-reach-3.trip.cff").toString();
        Json.Obj record = json(0, "record", trip);
        assertHas(
                record,
                "standard",
                "revision",
                "station",
                "device",
                "start",
                "trigger",
                "rates",
                "analog",
                "status",
                "findings",
                "remarks");
        Json.Obj first = first(record, "analog");
        assertHas(first, "name", "unit", "side", "samples", "missing", "min", "max", "rms");
        String name = ((Json.Str) first.get("name")).value();
        Path waves = folder.resolve("waves.svg");
        Session part = Session.run(
                "record",
                trip,
                "--channel",
                name,
                "--from",
                "0.02s",
                "--to",
                "40ms",
                "--explain",
                "-o",
                waves.toString());
        assertEquals(0, part.code(), part.err());
        assertTrue(part.out().contains("ANALOG CHANNELS (1)"), part.out());
        assertTrue(part.out().contains("HOW IT WAS READ"), part.out());
        assertTrue(Files.readString(waves).contains("time after the first sample"));
        Json.Obj samples =
                (Json.Obj) json(0, "record", trip, "--samples", "--to", "5ms").get("data");
        assertHas(samples, "seconds", "analog", "status");
    }

    /** Capitals in names change from computer to computer, and a person may name any of the files. */
    @Test
    void theFilesOfARecordAreFoundBesideTheOneThatIsNamed() throws Exception {
        Files.writeString(folder.resolve("Trip of 9.3. (bay 2).CFG"), """
                Plover Hill,REC 1,1999
                1,1A,0D
                1,IA,A,,A,0.5,1,0,-99999,99998,600,5,S
                60
                1
                1000,2
                09/03/2024,14:05:07.025000
                09/03/2024,14:05:07.025000
                ASCII
                1
                """);
        Path data = Files.writeString(folder.resolve("trip of 9.3. (bay 2).dat"), "1,0,2\n2,1000,4\n");
        Files.writeString(folder.resolve("trip of 9.3. (bay 2).Hdr"), "what the relay said");
        Json.Obj record = json(0, "record", data.toString());
        assertEquals(new Json.Str("what the relay said"), record.get("header"));
        assertEquals(new Json.Num(3.0), first(record, "analog").get("max"));
    }

    @Test
    void inrush() throws Exception {
        Json.Obj inrush = json(
                0, "inrush", TAMARACK, "--stage", "stage 1", "--onto", "stage 2,stage 4", "--angles", "A=90,B=90,C=90");
        assertHas(inrush, "cases", "checks", "missing", "outrush", "remedies");
        Path waves = folder.resolve("inrush.svg");
        Session drawn = Session.run("inrush", TAMARACK, "--stage", "stage 1", "-o", waves.toString());
        assertTrue(drawn.code() != 2, drawn.err());
        assertTrue(Files.readString(waves).contains("time after the first pole closed"));
        Json.Obj closing = first(inrush, "cases");
        assertHas(closing, "stage", "alreadyOn", "peakAmperes", "hertz", "i2t", "method");
        assertEquals(2, array(closing, "alreadyOn").size());
        Json.Obj opening = (Json.Obj) json(0, "inrush", TAMARACK, "--stage", "stage 1", "--restrike", "A=1.3")
                .get("opening");
        assertHas(opening, "steps", "poles", "legs", "peakAmperes", "hertz");
        assertEquals(2, Session.run("inrush", TAMARACK, "--stage", "stage 7").code());
    }

    @Test
    void dischargeAtAMomentWithReadingsAndPictures() throws Exception {
        Json.Obj early = json(1, "discharge", BANK, "--after", "3 min", "--time-constants", "5");
        Json.Obj unit = first(early, "units");
        assertHas(unit, "openings", "worstFirstPole", "units", "string", "reclosing", "path", "after", "timeConstants");
        assertHas((Json.Obj) unit.get("after"), "seconds", "volts", "safeVolts", "missingSeconds", "slowest");
        assertHas(first(unit, "openings"), "firstPole", "clearings", "legs", "potentials");
        assertHas(first(unit, "units"), "position", "capacitanceFarads", "resistanceOhms", "secondsToSafe");
        assertHas((Json.Obj) unit.get("reclosing"), "rows", "shortestSeconds", "ratedSeconds", "delaySeconds");
        Session text = Session.run("discharge", BANK, "--after", "3 min");
        assertTrue(text.out().contains("STAY OUT"), text.out());
        assertTrue(!text.out().toLowerCase(java.util.Locale.ROOT).contains("safe to touch"), text.out());
        assertEquals(0, Session.run("discharge", BANK, "--after", "1 h").code());
        Path decay = folder.resolve("decay.svg");
        Path opening = folder.resolve("opening.svg");
        Session pictures = Session.run(
                "discharge", BANK, "--readings", READINGS, "-o", decay.toString(), "--opening", "stage 2=" + opening);
        assertTrue(pictures.code() <= 1, pictures.err());
        assertTrue(Files.readString(decay).contains("5 min"));
        assertTrue(Files.readString(opening).contains("opening pole by pole"));
    }

    @Test
    void surveyAndFit() {
        Json.Obj survey = json(1, "survey", BANK, READINGS);
        assertHas(
                first(survey, "units"),
                "position",
                "serial",
                "capacitanceFarads",
                "referenceFarads",
                "ratio",
                "verdict",
                "probability",
                "sectionsShorted",
                "elementsOut",
                "reason");
        assertHas(survey, "legs");
        // Three units must be measured again: undecided until then.
        Json.Obj fit = json(3, "fit", BANK, READINGS, "--spares", SPARES);
        assertHas(fit, "moves", "before", "after", "provenBest");
        assertHas(first(fit, "moves"), "serial", "from", "to");
        assertHas((Json.Obj) fit.get("after"), "sensors", "legs", "highestUnitVoltagePerRated");
        assertEquals(
                1,
                Session.run("fit", BANK, READINGS, "--spares", SPARES, "--without", "CR19-0131")
                        .code());
    }

    @Test
    void theMetersOfAJob() {
        String job = folder.resolve("spring.job.jsonl").toString();
        json(0, "job", "new", job, "--bank", BANK, "--title", "alarm", "--by", "R. Imhof");
        Json.Obj said = json(0, "job", "meter", job, "--by", "R. Imhof", "--limit", "0.5 %");
        Json.Obj limits = (Json.Obj) said.get("meterLimits");
        assertHas(limits, "limit", "instruments", "words", "stated");
        assertEquals(Json.of(0.005), limits.get("limit"));
        assertHas(first(limits, "stated"), "id", "by", "at", "body");
    }

    @Test
    void picturesAreWrittenWhereTheyAreAskedFor() throws Exception {
        picture(1, "survey", BANK, READINGS);
        Path ranked = folder.resolve("ranked.svg");
        assertEquals(
                1,
                Session.run("survey", BANK, READINGS, "--narrow", "--ranked", ranked.toString())
                        .code());
        assertTrue(Files.readString(ranked).contains("viewBox=\"0 0 360 "));
        picture(3, "fit", BANK, READINGS, "--spares", SPARES);
        picture(0, "energize", BANK, "--bus", "12.4kV");
        picture(1, "unbalance", BANK, "--out", "stage 1/A");
        Path table = folder.resolve("table.svg");
        Session.run("unbalance", BANK, "--stage", "stage 3", "-o", table.toString());
        assertTrue(Files.readString(table).contains("stage 3: what failures do"));
        Path found = folder.resolve("found.svg");
        Session.run("locate", BANK, "--reading", "stage 3 neutral-voltage=15V", "-o", found.toString());
        assertTrue(Files.readString(found).contains("which failure shows this?"));
    }

    private void picture(int code, String... args) throws Exception {
        Path file = folder.resolve(args[0] + ".svg");
        List<String> all = new ArrayList<>(List.of(args));
        all.addAll(List.of("-o", file.toString()));
        Session session = Session.run(all.toArray(new String[0]));
        assertEquals(code, session.code(), session.err());
        String svg = Files.readString(file);
        assertTrue(svg.startsWith("<?xml") && svg.endsWith("</svg>\n"), args[0]);
    }

    @Test
    void surveyOfUnitsTogetherAndOfOtherPlacesAgainstAnEarlierVisit() {
        String inPlace = Session.DEMO.resolve("corbel-reach-3.in-place.csv").toString();
        Json.Obj survey = json(1, "survey", BANK, inPlace, "--earlier", READINGS, "--meter", "LCR 2=0.5 %");
        assertHas(first(survey, "groups"), "name", "verdict", "probability", "reason", "solved", "bounds", "next");
        assertHas(first(survey, "places"), "name", "what", "read", "verdict", "reason");
        assertHas(first(survey, "stages"), "stage", "vars", "ratedVars", "spread");
        assertHas(first(survey, "trends"), "position", "points", "change", "drifts", "sentence");
        assertHas(first(survey, "readings"), "row", "at", "what", "raw", "value");
        assertEquals(2, array(survey, "problems").size());
        Session text = Session.run("survey", BANK, inPlace);
        assertTrue(text.out().contains("UNITS READ TOGETHER"), text.out());
        text.out().lines().forEach(line -> assertTrue(line.length() <= 100, line));
    }

    @Test
    void aJobAsAWorkbookWhoseUnitsAreReadingsAgain() throws Exception {
        String job = Session.DEMO.resolve("corbel-reach-3.job.yaml").toString();
        Path workbook = folder.resolve("report.xlsx");
        Session report = Session.run("report", job, "-o", workbook.toString());
        assertTrue(report.code() != 2, report.err());
        Session survey = Session.run("survey", BANK, workbook.toString(), "--sheet", "Units");
        assertEquals(1, survey.code(), survey.err());
        assertTrue(survey.out().contains("18 units"), survey.out());
        // the sheets are told apart by what stands in them
        Session unnamed = Session.run("survey", BANK, workbook.toString());
        assertEquals(1, unnamed.code(), unnamed.err());
        assertTrue(unnamed.out().contains("[Units]"), unnamed.out());
    }

    @Test
    void aWholeJobAsOnePdfAndAsJson() throws Exception {
        String job = Session.DEMO.resolve("hallin-moor-2.job.yaml").toString();
        Path pdf = folder.resolve("report.pdf");
        assertEquals(0, Session.run("report", job, "-o", pdf.toString()).code());
        assertTrue(Files.size(pdf) > 10_000);
        Path json = folder.resolve("report.json");
        assertEquals(0, Session.run("report", job, "-o", json.toString()).code());
        assertHas(
                (Json.Obj) Json.parse(Files.readString(json)),
                "interlock",
                "isolate",
                "discharge",
                "survey",
                "fit",
                "energize");
        assertEquals(
                2,
                Session.run("report", job, "-o", folder.resolve("report.doc").toString())
                        .code());
    }

    @Test
    void theDemoRunsEveryStepOnEveryBank() {
        for (DemoBank bank : DemoBank.values()) {
            Session session = Session.run("demo", "--steps", "--bank", bank.name(), "-o", folder.toString());
            assertEquals(0, session.code(), session.err());
            assertTrue(session.out().contains("── 15  The report"), session.out());
        }
    }

    /** What someone changed in the demo's files stays, is used, and is named. */
    @Test
    void theDemoKeepsWhatWasChanged() throws IOException {
        Path own = folder.resolve("lantern-mesa-1");
        Path bank = own.resolve("lantern-mesa-1.bank.yaml");
        Path spares = own.resolve("lantern-mesa-1.spares.csv");
        Files.createDirectories(own);
        String changed = Files.readString(Session.DEMO.resolve("lantern-mesa-1.bank.yaml"))
                .replace("Lantern Mesa bank 1", "Lantern Mesa changed");
        Files.writeString(bank, changed);
        Session session = Session.run("demo", "--steps", "--bank", "LANTERN_MESA_1", "-o", folder.toString());
        assertEquals(0, session.code(), session.err());
        assertEquals(changed, Files.readString(bank));
        assertTrue(session.out().contains("Kept as they are, because they differ from the demo's own: " + bank + "."));
        assertTrue(session.out().contains("UNBALANCE  LANTERN MESA CHANGED"), session.out());
        assertEquals(Files.readString(Session.DEMO.resolve("lantern-mesa-1.spares.csv")), Files.readString(spares));
    }

    private static Json.Obj json(int code, String... args) {
        String[] all = new String[args.length + 1];
        System.arraycopy(args, 0, all, 0, args.length);
        all[args.length] = "--json";
        Session session = Session.run(all);
        assertEquals(code, session.code(), session.err());
        return (Json.Obj) Json.parse(session.out());
    }

    private static List<Json> array(Json.Obj json, String name) {
        return ((Json.Arr) json.get(name)).items();
    }

    private static Json.Obj first(Json json, String name) {
        return (Json.Obj) array((Json.Obj) json, name).getFirst();
    }

    private static void assertHas(Json.Obj json, String... names) {
        for (String name : names) {
            assertTrue(
                    json.members().containsKey(name),
                    name + " is missing among " + json.members().keySet());
        }
    }
}
