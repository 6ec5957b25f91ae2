package org.varwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.interlock.Move;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/**
 * The drawing of the bank files in the examples.
 *
 * <pre>
 *  utility feeder 7 ▽
 *              line │
 *                52-7 (withdrawable)
 *   ┌ incoming  cable │ ┐
 *   │           89-2    │┌ bay 1 ┐┌ bay 2 ┐ …
 *   │  bus ─────┬───────┼┼──┬────┼┼──┬────┼
 *   │         57-2      ││ 24-1  ││ 24-2  │
 *   │           ⏚       ││ stage1││ stage2│
 *   └───────────────────┘└───────┘└───────┘
 * </pre>
 */
class OneLineDrawingTest {
    static final Path EXAMPLES = Path.of("..", "examples");

    static Stream<Path> examples() throws IOException {
        try (Stream<Path> files = Files.walk(EXAMPLES)) {
            return files.filter(f -> f.toString().endsWith(".bank.yaml")).sorted().toList().stream();
        }
    }

    static Bank read(Path file) {
        try {
            return BankFile.read(file.getFileName().toString(), Files.readAllBytes(file))
                    .requireBank();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Bank tamarack() {
        return read(EXAMPLES.resolve("tamarack-flats-2.bank.yaml"));
    }

    @Test
    void thereAreExamples() throws IOException {
        assertTrue(examples().count() >= 4);
    }

    @ParameterizedTest
    @MethodSource("examples")
    void everyThingIsDrawnOnceAndNoWordsLieOverAnything(Path file) {
        Bank bank = read(file);
        DrawingState state = DrawingState.inService(bank);
        for (DrawingOptions.Page page : DrawingOptions.Page.values()) {
            DrawingOptions options = new DrawingOptions(page, DrawingOptions.Colours.BLACK_AND_WHITE);
            DrawnThings.check(file + " " + page, bank, state, options);
            assertEquals(
                    List.of(),
                    Overlaps.in(OneLineDrawing.sheet(bank, state, options).marks(), page),
                    file + " " + page);
        }
    }

    @ParameterizedTest
    @MethodSource("examples")
    void nothingInItRunsOrRefersOutside(Path file) {
        Bank bank = read(file);
        String svg = OneLineDrawing.draw(bank, DrawingState.inService(bank), DrawingOptions.LANDSCAPE);
        Map<String, Integer> elements = DrawnThings.elements(DrawnThings.parsed(svg));
        assertEquals(Set.of("svg", "title", "desc", "rect", "g", "path", "circle", "text"), elements.keySet());
        assertFalse(svg.contains("href") || svg.contains("url(") || svg.contains("style="), "only plain attributes");
    }

    @Test
    void eachThingSaysWhatItIsInService() {
        Bank bank = tamarack();
        Document drawn =
                DrawnThings.parsed(OneLineDrawing.draw(bank, DrawingState.inService(bank), DrawingOptions.LANDSCAPE));
        assertEquals("52-7 CLOSED remote TF-9", words(drawn, "device", "52-7", 4));
        assertEquals("57-2 OPEN seen through window TF-2", words(drawn, "device", "57-2", 6));
        assertTrue(DrawnThings.words(drawn, "device", "57-2").contains("TF-2 bolt out, holds open TF-3 bolt in, key"));
        assertTrue(
                DrawnThings.words(drawn, "device", "43-2").startsWith("43-2 selector, at AUTO off manual auto TF-1"));
        assertEquals("bus LIVE", DrawnThings.words(drawn, "conductor", "bus"));
        assertEquals("stage 3 LIVE", DrawnThings.words(drawn, "conductor", "stage 3"));
        assertTrue(DrawnThings.words(drawn, "conductor", "control supply").contains("LIVE, LOW VOLTAGE"));
        assertTrue(DrawnThings.words(drawn, "compartment", "incoming")
                .startsWith("incoming door closed TF-8 + TF-9 bolt out, holds closed exposes cable, bus"));
        assertEquals("TF-3 trapped in lock 57-2 (closed)", DrawnThings.words(drawn, "key", "TF-3"));
        assertEquals("TF-7 in key exchange", DrawnThings.words(drawn, "key", "TF-7"));
        assertTrue(DrawnThings.words(drawn, "stage", "stage 4").contains("2.7 Mvar ungrounded wye 3 units a leg"));
        assertTrue(DrawnThings.words(drawn, "stage", "stage 4").contains("neutral voltage sensor 8400:120"));
    }

    /** Isolated, grounded, bay 2 open; the switch of stage 4 is open and stage 4 still charged. */
    @Test
    void eachStateHasItsOwnLineStyleAndWords() {
        Bank bank = tamarack();
        Map<String, String> positions =
                new LinkedHashMap<>(DrawingState.inService(bank).positions());
        positions.put("52-7", "withdrawn");
        positions.put("89-2", "open");
        positions.put("57-2", "closed");
        positions.put("24-4", "open");
        DrawingState state =
                DrawingState.of(bank, "bay 2 open", positions, Set.of("bay 2"), List.of(), Set.of(), Set.of("stage 4"));
        String svg = OneLineDrawing.draw(
                bank,
                state,
                new DrawingOptions(DrawingOptions.Page.A4_LANDSCAPE, DrawingOptions.Colours.BLACK_AND_WHITE));
        Document drawn = DrawnThings.parsed(svg);
        assertEquals("line LIVE utility feeder 7 source 13.8 kV", DrawnThings.words(drawn, "conductor", "line"));
        assertEquals("cable NOT PROVEN", DrawnThings.words(drawn, "conductor", "cable"));
        assertEquals("bus GROUNDED", DrawnThings.words(drawn, "conductor", "bus"));
        assertEquals("stage 4 CHARGED", DrawnThings.words(drawn, "conductor", "stage 4"));
        assertTrue(DrawnThings.words(drawn, "compartment", "bay 2").startsWith("bay 2 DOOR OPEN"));
        assertTrue(DrawnThings.words(drawn, "compartment", "bay 2").contains("bolt unknown"));
        assertEquals("", dashes(drawn, "line"));
        assertEquals("4 3", dashes(drawn, "cable"));
        assertEquals("9 3 2 3", dashes(drawn, "stage 4"));
        assertFalse(svg.contains("#c00000") || svg.contains("#006b2d"), "no colour in black and white");
    }

    @Test
    void anEmptyStateIsDrawnAsUnknownAndNothingAsSafe() {
        Bank bank = tamarack();
        DrawingState nothing =
                new DrawingState("nothing known", Map.of(), Map.of(), Map.of(), List.of(), Map.of(), Map.of());
        Document drawn = DrawnThings.parsed(OneLineDrawing.draw(bank, nothing, DrawingOptions.PORTRAIT));
        assertEquals("bus UNKNOWN: AS LIVE", DrawnThings.words(drawn, "conductor", "bus"));
        assertTrue(DrawnThings.words(drawn, "device", "89-2").startsWith("89-2 POSITION UNKNOWN"));
        assertTrue(DrawnThings.words(drawn, "compartment", "bay 1").contains("DOOR UNKNOWN"));
        assertEquals("TF-3 unknown", DrawnThings.words(drawn, "key", "TF-3"));
    }

    @Test
    void aBankWithoutIsolationIsItsStagesAllUnknown() {
        String whole = new String(bytes(), StandardCharsets.UTF_8);
        String cut =
                whole.replaceAll("(?s)\nisolation:.*?\n(?=positions:)", "\n").replaceAll("switch: [^,}\n]*,?", "");
        Bank bank = BankFile.read("cut.bank.yaml", cut.getBytes(StandardCharsets.UTF_8))
                .requireBank();
        assertTrue(bank.isolation().isEmpty());
        DrawingState state = DrawingState.inService(bank);
        Document drawn = DrawnThings.parsed(OneLineDrawing.draw(bank, state, DrawingOptions.LANDSCAPE));
        assertEquals(List.of("stage 1", "stage 2", "stage 3", "stage 4"), DrawnThings.named(drawn, "stage"));
        assertEquals("stage 1 UNKNOWN: AS LIVE", DrawnThings.words(drawn, "conductor", "stage 1"));
        assertTrue(drawn.getDocumentElement().getTextContent().contains("Everything counts as live"));
    }

    /** Every hundredth state of a random walk, drawn. */
    @ParameterizedTest
    @MethodSource("examples")
    void noWordsLieOverAnythingInAnyState(Path file) {
        Bank bank = read(file);
        Scheme scheme = Scheme.of(bank);
        SplittableRandom random = new SplittableRandom(3);
        State state = scheme.start();
        for (int step = 0; step < 2_000; step++) {
            if (step % 100 == 0) {
                DrawingState drawn = SchemeDrawing.state(bank, scheme, state, "step " + step);
                for (DrawingOptions options : List.of(DrawingOptions.LANDSCAPE, DrawingOptions.PORTRAIT)) {
                    assertEquals(
                            List.of(),
                            Overlaps.in(
                                    OneLineDrawing.sheet(bank, drawn, options).marks(), options.page()),
                            file + ", step " + step);
                }
            }
            List<Move> moves = scheme.moves(state);
            state = scheme.apply(state, moves.get(random.nextInt(moves.size())));
        }
    }

    @Test
    void namesAreText() {
        String evil = "<script>&\"'\u0007\u202E]]>";
        String yaml = new String(bytes(), StandardCharsets.UTF_8)
                .replace("name: utility feeder 7", "name: \"<script>&']]>\"");
        Bank bank = BankFile.read("evil.bank.yaml", yaml.getBytes(StandardCharsets.UTF_8))
                .requireBank();
        String svg = OneLineDrawing.draw(
                bank,
                new DrawingState(evil, Map.of(), Map.of(), Map.of(), List.of(), Map.of(), Map.of()),
                DrawingOptions.LANDSCAPE);
        Document drawn = DrawnThings.parsed(svg);
        assertFalse(DrawnThings.elements(drawn).containsKey("script"));
        assertEquals(List.of("<script>&']]>", "station service"), DrawnThings.named(drawn, "source"));
        assertTrue(svg.contains("&lt;script&gt;&amp;"));
        assertFalse(svg.contains("\u202E") || svg.contains("\u0007"));
    }

    private static byte[] bytes() {
        try {
            return Files.readAllBytes(EXAMPLES.resolve("tamarack-flats-2.bank.yaml"));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String words(Document drawn, String kind, String name, int count) {
        return String.join(
                " ",
                List.of(DrawnThings.words(drawn, kind, name).split(" ", -1)).subList(0, count));
    }

    private static String dashes(Document drawn, String conductor) {
        Set<String> dashes = new LinkedHashSet<>();
        for (Element wire : DrawnThings.groups(drawn, "wire")) {
            if (wire.getElementsByTagName("title").item(0).getTextContent().equals("wire " + conductor)) {
                dashes.add(((Element) wire.getElementsByTagName("path").item(0)).getAttribute("stroke-dasharray"));
            }
        }
        assertEquals(1, dashes.size(), conductor + " has one line style: " + dashes);
        return dashes.iterator().next();
    }
}
