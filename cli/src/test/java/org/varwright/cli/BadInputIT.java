package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Input that can't be used ends with exit 2, names the place and what to do, and never with a stack trace. */
class BadInputIT {
    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    static Stream<Arguments> bankFiles() throws IOException {
        String good = Files.readString(Session.EXAMPLES.resolve("tamarack-flats-2.bank.yaml"));
        return Stream.of(
                bad("empty", "", "empty"),
                bad("wrong unit", good.replace("rating: 300 kvar", "rating: 300 kV"), "300 kV"),
                bad("no unit", good.replace("rating: 300 kvar", "rating: 300"), "no unit"),
                bad("not a number", good.replace("rating: 300 kvar", "rating: NaN kvar"), "NaN"),
                bad("decimal comma", good.replace("voltage: 13.8 kV", "voltage: 13,8 kV"), "13.8 kV"),
                bad("unknown key", good.replace("short-circuit:", "short-circut:"), "short-circuit"),
                bad("tab", good.replace("  frequency: 60 Hz", "\tfrequency: 60 Hz"), "tab"),
                bad("duplicate name", good.replace("name: stage 2", "name: stage 1"), "stage 1"),
                bad("key without a lock", good.replace("key: TF-4", "key: TF-44"), "TF-4"),
                bad(
                        "lock on an unknown device",
                        good.replace("{device: 57-2, key: TF-3", "{device: 57-3, key: TF-3"),
                        "57-3"),
                bad("alias bomb", bomb(), "alias"),
                bad("nested without end", "a: " + "[".repeat(50_000), ""),
                bad(
                        "position that does not exist",
                        good.replace("at: stage 2/A/u1", "at: stage 2/A/u7"),
                        "stage 2/A/u7"),
                bad("binary", "\u0000\u0001\u0002PK", ""));
    }

    private static Arguments bad(String what, String text, String named) {
        return Arguments.of(what, text, named);
    }

    /** Ten levels of ten aliases each: a hundred million items when expanded. */
    private static String bomb() {
        StringBuilder text = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 10; i++) {
            text.append("a").append(i).append(": &a").append(i).append(" [");
            text.append(("*a" + (i - 1) + ", ").repeat(10)).append("]\n");
        }
        return text.toString();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("bankFiles")
    void everyCommandRefusesABadBankFile(String what, String text, String named) throws IOException {
        Path file = Files.writeString(folder.resolve("bad.bank.yaml"), text);
        assertRefused(Session.run("interlock", file.toString()), named);
        assertRefused(Session.run("discharge", file.toString()), named);
        assertRefused(Session.run("fuses", file.toString()), named);
        Session check = Session.run("check", file.toString());
        assertEquals(2, check.code(), check.out());
        // The page breaks lines at blanks.
        assertTrue(check.out().replaceAll("\\s+", " ").contains(named), check.out());
        assertTrue(Session.run("check", "--json", file.toString()).out().contains("\"ok\": false"));
    }

    private static void assertRefused(Session session, String named) {
        assertSaid(session, named);
        assertTrue(session.err().contains("bad.bank.yaml"), session.err());
    }

    private static void assertSaid(Session session, String named) {
        assertEquals(2, session.code(), session.err());
        assertTrue(session.err().startsWith("varwright: "), session.err());
        assertTrue(session.err().contains(named), session.err());
        assertFalse(session.err().contains("\tat "), session.err());
        assertEquals("", session.out());
    }

    @Test
    void aByteOrderMarkIsReadAndWindows1252IsNamed() throws IOException {
        String good = Files.readString(Session.EXAMPLES.resolve("tamarack-flats-2.bank.yaml"));
        Path marked = Files.writeString(folder.resolve("marked.bank.yaml"), "\ufeff" + good);
        assertEquals(0, Session.run("check", marked.toString()).code());

        Path windows = folder.resolve("windows.bank.yaml");
        Files.write(windows, good.replace("12.71 uF", "12.71 µF").getBytes(Charset.forName("windows-1252")));
        Session session = Session.run("check", windows.toString());
        assertEquals(2, session.code());
        assertTrue(session.out().contains("Windows-1252"), session.out());
    }

    @Test
    void aFileOf50MegabytesIsRefusedUnread() throws IOException {
        Path huge = folder.resolve("huge.bank.yaml");
        byte[] line = "# nothing but comments\n".getBytes(StandardCharsets.UTF_8);
        try (var out = Files.newOutputStream(huge)) {
            byte[] block = new byte[line.length * 1000];
            for (int i = 0; i < 1000; i++) {
                System.arraycopy(line, 0, block, i * line.length, line.length);
            }
            for (int i = 0; i < 50_000_000 / block.length + 1; i++) {
                out.write(block);
            }
        }
        Session session = Session.run("check", huge.toString());
        assertEquals(2, session.code());
        assertTrue(session.err().contains("MB"), session.err());
    }

    @Test
    void harmonicsAndOvervoltagesThatCannotBeRead() {
        String bank = Session.EXAMPLES.resolve("tamarack-flats-2.bank.yaml").toString();
        assertNamed(Session.run("resonance", bank, "--harmonic", "5 3 %"), "5: 3 %");
        assertNamed(Session.run("resonance", bank, "--harmonic", "77: 3 %"), "2 to 50");
        assertNamed(Session.run("resonance", bank, "--stages", "stage 9"), "stage 4");
        assertNamed(Session.run("resonance", bank, "--bus", "0 kV"), "above zero");
        assertNamed(Session.run("duty", bank, "--measured", "5: 3 A"), "5: 3 %");
        assertNamed(Session.run("duty", bank, "--overvoltage", "1.4"), "--for");
        assertNamed(Session.run("duty", bank, "--overvoltage", "high", "--for", "10s"), "17kV");
        assertNamed(Session.run("duty", bank, "--overvoltage", "1.4", "--for", "10"), "no unit");
        assertNamed(Session.run("duty", bank, "--ct-entered", "100"), "7200:120");
        assertNamed(Session.run("duty", bank, "--at-frequency", "50 V"), "Hz");
        assertNamed(Session.run("duty", bank, "--spares", "no-such.csv"), "no such file");
    }

    private static void assertNamed(Session session, String named) {
        assertEquals(2, session.code(), session.err());
        assertTrue(session.err().startsWith("varwright: ") && session.err().contains(named), session.err());
        assertFalse(session.err().contains("\tat "), session.err());
        assertEquals("", session.out());
    }

    @Test
    void wrongUseIsNamedWithAWayOn() {
        Session missing = Session.run("check", "no-such-file.bank.yaml");
        assertEquals(2, missing.code());
        assertTrue(missing.err().contains("no such file"), missing.err());
        assertEquals(2, Session.run("check", folder.toString()).code());
        assertEquals(2, Session.run().code());
        assertEquals(2, Session.run("chekc").code());
        Session unit = Session.run(
                "energize",
                Session.EXAMPLES.resolve("tamarack-flats-2.bank.yaml").toString(),
                "--bus",
                "13.8");
        assertEquals(2, unit.code());
        assertTrue(unit.err().contains("no unit"), unit.err());
        String bank = Session.EXAMPLES.resolve("tamarack-flats-2.bank.yaml").toString();
        Session link = Session.run("fuses", bank, "--link", "45T");
        assertEquals(2, link.code());
        assertTrue(link.err().contains("\"45T\"") && link.err().contains("6, 8, 10"), link.err());
        Session stage = Session.run("fuses", bank, "--stage", "stage 9");
        assertEquals(2, stage.code());
        assertTrue(stage.err().contains("stages are stage 1"), stage.err());
        assertEquals(2, Session.run("fuses", bank, "--fuse-resistance", "0 ohm").code());
        assertEquals(2, Session.run("fuses", bank, "--fuse-resistance", "4").code());
    }

    @Test
    void aSwitchingThatCannotBeIsRefused() {
        String bank = Session.EXAMPLES.resolve("tamarack-flats-2.bank.yaml").toString();
        refuses("stages are", "inrush", bank, "--stage", "stage 9");
        refuses("--stage", "inrush", bank, "--trapped", "A=1");
        refuses("A=90,B=95,C=100", "inrush", bank, "--stage", "stage 1", "--angles", "A=90");
        refuses("out of range", "inrush", bank, "--stage", "stage 1", "--trapped", "A=1e9");
        refuses("not a number", "inrush", bank, "--stage", "stage 1", "--trapped", "A=NaN");
        refuses("opens or closes", "inrush", bank, "--stage", "stage 1", "--opening", "--trapped", "A=1");
    }

    private static void refuses(String named, String... arguments) {
        Session session = Session.run(arguments);
        assertEquals(2, session.code(), session.err());
        assertTrue(session.err().replaceAll("\\s+", " ").contains(named), session.err());
        assertEquals("", session.out());
    }

    @Test
    void whatADischargeIsAskedForIsHeldAgainstWhatIsAllowed() {
        String bank = Session.EXAMPLES.resolve("tamarack-flats-2.bank.yaml").toString();
        for (String[] bad : new String[][] {
            {"--after", "3", "no unit"},
            {"--after=-3 min", "", "0 or more"},
            {"--time-constants", "none", "above 0"},
            {"--time-constants", "0", "above 0"},
            {"--stick-energy", "2kJ", "--stick"},
            {"--stick", "0 ohm", "not above zero"},
            {"--opening", "nowhere=x.svg", "stage 1"}
        }) {
            Session session = bad[1].isEmpty()
                    ? Session.run("discharge", bank, bad[0])
                    : Session.run("discharge", bank, bad[0], bad[1]);
            assertEquals(2, session.code(), bad[0] + session.err());
            assertTrue(session.err().contains(bad[2]), session.err());
            assertEquals("", session.out());
        }
    }

    @Test
    void workbooksThatAreNoneAreNamed() throws IOException {
        String bank = Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
        String readings = Session.DEMO.resolve("corbel-reach-3.readings.csv").toString();
        Path old = Files.write(
                folder.resolve("old.xlsx"),
                new byte[] {(byte) 0xd0, (byte) 0xcf, 0x11, (byte) 0xe0, (byte) 0xa1, (byte) 0xb1, 0x1a, (byte) 0xe1});
        refusedReadings("old workbook (.xls)", bank, old);
        refusedReadings("damaged", bank, Files.write(folder.resolve("cut.xlsx"), new byte[] {'P', 'K', 3, 4, 20, 0}));
        refusedReadings(
                "web page", bank, Files.writeString(folder.resolve("page.xls"), "<html><table></table></html>"));
        // text under the name of a workbook is text
        Path text = Files.copy(Path.of(readings), folder.resolve("text.xlsx"));
        assertEquals(1, Session.run("survey", bank, text.toString()).code());
        Session sheet = Session.run("survey", bank, text.toString(), "--sheet", "May");
        assertEquals(2, sheet.code());
        assertTrue(sheet.err().contains("no sheets"), sheet.err());
        Session meter = Session.run("survey", bank, readings, "--meter", "LC-4=50 %");
        assertEquals(2, meter.code());
        assertTrue(meter.err().contains("50 %"), meter.err());
        assertEquals(
                2,
                Session.run("survey", bank, readings, "--earlier", "nowhere.csv")
                        .code());
    }

    private static void refusedReadings(String named, String bank, Path file) {
        Session session = Session.run("survey", bank, file.toString());
        assertEquals(2, session.code(), session.err());
        assertTrue(session.err().contains(named), session.err());
        assertTrue(session.err().contains(file.getFileName().toString()), session.err());
        assertFalse(session.err().contains("\tat "), session.err());
    }

    @Test
    void recordsThatCannotBeReadAreNamed() throws IOException {
        String trip = Session.DEMO.resolve("corbel-reach-3.trip.cff").toString();
        assertSaid(Session.run("record", "no-such.cfg"), "no such file");
        assertSaid(Session.run("record", folder.toString()), "folder");
        assertSaid(Session.run("record", trip, "--channel", "no such channel"), "no such channel");
        assertSaid(Session.run("record", trip, "--from", "9s", "--to", "1s"), "write the earlier one first");
        assertSaid(Session.run("record", trip, "--from", "900s"), "no sample lies from");
        assertSaid(Session.run("record", trip, "--from", "9"), "no unit");
        Path alone = Files.writeString(folder.resolve("alone.dat"), "1,0,1\n");
        assertSaid(Session.run("record", alone.toString()), "there is no .cfg");
        Path text = Files.writeString(folder.resolve("notes.txt"), "hello");
        assertSaid(Session.run("record", text.toString()), ".cff");
        Path cut = folder.resolve("cut.cff");
        Files.write(cut, Arrays.copyOf(Files.readAllBytes(Path.of(trip)), 200));
        assertSaid(Session.run("record", cut.toString()), "cut.cff");
        Files.write(folder.resolve("noise.cfg"), new byte[] {(byte) 0x89, 'P', 'N', 'G', 13, 10, 26, 10, 0, 0});
        Path noise = Files.write(folder.resolve("noise.dat"), new byte[1000]);
        assertSaid(Session.run("record", noise.toString()), "noise.cfg");
        assertSaid(Session.run("record", trip, "--code-page", "no-such-page"), "no-such-page");
        assertSaid(Session.run("record", trip, "--channel-map", "VA=bus A"), "name its bank file");
        String bank = Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
        assertSaid(Session.run("record", trip, bank, "--channel-map", "VA"), "name, equals sign and place");
        assertSaid(Session.run("record", trip, bank, "--channel-map", "V9=bus A"), "no channel \"V9\"");
        assertSaid(Session.run("record", trip, bank, "--channel-map", "VA=stage 9/A"), "no place \"stage 9/A\"");
        assertSaid(Session.run("record", trip, bank, "--channel-map", "VA=stage 3/A"), "can't be stage 3/A");
        assertSaid(Session.run("record", trip, trip), "corbel-reach-3.trip.cff");
    }

    /** Of two words for one thing the later won without a word: a device that stands open was taken for closed. */
    @Test
    void whatIsSaidTwiceIsRefused() throws IOException {
        String bank = Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
        String svg = folder.resolve("x.svg").toString();
        String twice = "\"52\" is given twice, as \"open\" and as \"closed\"";
        assertSaid(
                Session.run("isolate", bank, "--access", "bay 2", "--start", "52=open", "--start", "52=closed"), twice);
        assertSaid(Session.run("draw", bank, "-o", svg, "--state", "52=open", "--state", "52=closed"), twice);
        assertFalse(Files.exists(Path.of(svg)));
        for (String pair : new String[] {"52", "=open", "52="}) {
            assertSaid(Session.run("isolate", bank, "--access", "bay 2", "--start", pair), "write NAME=VALUE");
        }
        Session half = Session.run("isolate", bank, "--access", "bay 2", "--state-after", "5");
        Path state = Files.writeString(folder.resolve("half.json"), half.out());
        for (String[] more : new String[][] {{"--start", "52=open"}, {"--open", "bay 2"}}) {
            assertSaid(
                    Session.run("isolate", bank, "--access", "bay 2", "--from", state.toString(), more[0], more[1]),
                    "half.json\" says where everything stands");
        }
    }

    @Test
    void aStateThatIsNoneIsRefusedByItsName() throws IOException {
        String bank = Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
        for (String content : new String[] {"", "{", "[]", "{\"format\": \"varwright-state/1\"}", "\u0000PK"}) {
            Path state = Files.writeString(folder.resolve("bad.json"), content);
            assertSaid(Session.run("isolate", bank, "--access", "bay 2", "--from", state.toString()), "bad.json");
        }
        assertSaid(Session.run("isolate", bank, "--access", "bay 2", "--from", bank), "not JSON");
    }

    /** "No key is shared" was the silent answer for a bank of which no key is known. */
    @Test
    void neighboursWhoseKeysAreNotKnownAreRefused() throws IOException {
        Path bank = Session.EXAMPLES.resolve("tamarack-flats-2.bank.yaml");
        String text = Files.readString(bank).replace("Tamarack Flats bank 2", "Tamarack Flats bank 3");
        Path bare = Files.writeString(
                folder.resolve("bare.bank.yaml"), text.substring(0, text.indexOf("\nisolation:") + 1));
        assertSaid(Session.run("interlock", bank.toString(), "--with", bare.toString()), "has no isolation part");
        assertSaid(Session.run("interlock", bank.toString(), "--with", bare.toString()), "bare.bank.yaml");
        assertSaid(Session.run("interlock", bank.toString(), "--with", bank.toString()), "is named twice");
    }

    @Test
    void aSymptomThatIsNoneIsNamedWithThoseThereAre() {
        String bank = Session.DEMO.resolve("lantern-mesa-1.bank.yaml").toString();
        assertSaid(Session.run("triage", bank, "--symptom", "smoke"), "unbalance-alarm");
        assertSaid(Session.run("triage", bank, "--symptom", "noise", "--stage", "stage 9"), "the bank has rack");
        assertSaid(Session.run("triage", bank, "--symptom", "unbalance-alarm", "--reading", "12"), "unit");
    }

    @Test
    void everyCommandHasHelp() {
        Session help = Session.run("--help");
        assertEquals(0, help.code());
        for (String command :
                new picocli.CommandLine(new VarwrightCommand()).getSubcommands().keySet()) {
            Session own = Session.run(command, "--help");
            assertEquals(0, own.code(), command);
            assertTrue(own.out().contains("Usage: varwright " + command), own.out());
            own.out().lines().forEach(line -> assertTrue(line.length() <= 100, command + ": " + line));
        }
    }

    @Test
    void aPictureThatCannotBeDrawnOrWrittenIsRefused() {
        String bank = Session.DEMO.resolve("corbel-reach-3.bank.yaml").toString();
        String file = folder.resolve("x.svg").toString();
        assertSaid(Session.run("unbalance", bank, "--stage", "stage 9", "-o", file), "it has stage 1, stage 2");
        assertSaid(Session.run("unbalance", bank, "-o", folder.toString()), "folder");
    }

    /** Files of the wrong kind under the commands of jobs. */
    @Test
    void aFileThatIsNoJobIsRefused() throws IOException {
        Path bank = Session.EXAMPLES.resolve("tamarack-flats-2.bank.yaml");
        for (String content : new String[] {"", "{\"id\":", "\u0000\u0001PK", "[]\n", "{\"id\":\"a:1\"}\n"}) {
            Path file = Files.writeString(folder.resolve("bad.job.jsonl"), content);
            String target = folder.resolve("out.pdf").toString();
            for (Session session : new Session[] {
                Session.run("report", file.toString(), "-o", target),
                Session.run("job", "show", file.toString()),
                Session.run("survey", file.toString()),
                Session.run("job", "meter", file.toString(), "--by", "R. Imhof", "--limit", "1 %"),
                Session.run("job", "export", file.toString(), "-o", target),
                Session.run("job", "import", file.toString(), "-o", target)
            }) {
                assertSaid(session, "bad.job.jsonl");
            }
            assertFalse(Files.exists(folder.resolve("out.pdf")), "nothing is written");
        }
        assertSaid(Session.run("job", "import", bank.toString(), "-o", "x.job.jsonl"), "no job archive");
        assertSaid(Session.run("job", "list", bank.toString()), "no such folder");
        assertSaid(Session.run("job", "due", bank.toString(), "--on", "2027-05-12"), "no such folder");
        assertSaid(Session.run("job", "due", folder.toString(), "--on", "12.5.2027"), "write year, month and day");
    }
}
