package org.varwright.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The documents say what is there: formulas, tests, links and the map. */
class DocumentsTest {
    private static final Path ROOT = Path.of("..");
    private static final Set<String> NOT_OURS = Set.of("target", "node_modules", ".git");
    private static final Pattern FORMULA = Pattern.compile("\\b(?!SHA|UTF|MTS)([A-Z]{3})-([0-9]{1,2})\\b");
    private static final Pattern SPAN = Pattern.compile("\\b([A-Z]{3})-([0-9]+) to \\1-([0-9]+)\\b");
    private static final Pattern HEADING =
            Pattern.compile("^## ((?:[A-Z]{3}-[0-9]+(?:, )?)+).*?(?=^## |\\z)", Pattern.MULTILINE | Pattern.DOTALL);
    private static final Pattern TEST = Pattern.compile("`(?:\\w+/)?([A-Z]\\w*(?:Test|IT))(?:\\.(\\w+))?`");
    private static final Pattern LINK = Pattern.compile("\\]\\(([^)#\\s]+)(?:#[^)]*)?\\)");

    private static final List<Path> FILES = files();

    private static List<Path> files() {
        List<Path> found = new ArrayList<>();
        walk(ROOT, found);
        return found;
    }

    private static void walk(Path folder, List<Path> found) {
        try (Stream<Path> entries = Files.list(folder)) {
            entries.sorted()
                    .filter(e -> !NOT_OURS.contains(e.getFileName().toString()))
                    .forEach(entry -> {
                        if (Files.isDirectory(entry)) {
                            walk(entry, found);
                        } else {
                            found.add(entry);
                        }
                    });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Path> ending(String part, String ending) {
        return FILES.stream()
                .filter(f -> f.toString().contains(part) && f.toString().endsWith(ending))
                .toList();
    }

    /** Formulas named in a text; "ILK-1 to ILK-5" names all five. */
    private static Set<String> formulas(String text) {
        Set<String> ids = new TreeSet<>();
        FORMULA.matcher(text).results().map(MatchResult::group).forEach(ids::add);
        SPAN.matcher(text).results().forEach(span -> {
            for (int n = Integer.parseInt(span.group(2)); n <= Integer.parseInt(span.group(3)); n++) {
                ids.add(span.group(1) + "-" + n);
            }
        });
        return ids;
    }

    /** Sections of docs/theory by formula. */
    private static Map<String, String> sections() {
        Map<String, String> sections = new LinkedHashMap<>();
        for (Path file : ending("docs/theory", ".md")) {
            Matcher heading = HEADING.matcher(text(file));
            while (heading.find()) {
                for (String id : formulas(heading.group(1))) {
                    assertFalse(sections.containsKey(id), id + " has two sections");
                    sections.put(id, heading.group());
                }
            }
        }
        return sections;
    }

    private static Set<String> formulasOf(String part) {
        return ending(part, ".java").stream()
                .flatMap(f -> formulas(text(f)).stream())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void everyFormulaOfTheCodeHasItsSection() {
        Set<String> missing = formulasOf("src/main/java");
        missing.removeAll(sections().keySet());
        assertEquals(Set.of(), missing, "named in the code, without a section in docs/theory");
    }

    @Test
    void everySectionHasItsCode() {
        Set<String> unused = new TreeSet<>(sections().keySet());
        unused.removeAll(formulasOf("src/main/java"));
        unused.removeAll(formulasOf("src/test/java"));
        assertEquals(Set.of(), unused, "a section in docs/theory that no code names");
    }

    @Test
    void everyFormulaNamesItsTest() {
        Set<String> bare = new TreeSet<>();
        sections().forEach((id, section) -> {
            if (!TEST.matcher(section).find()) {
                bare.add(id);
            }
        });
        assertEquals(Set.of(), bare, "a section in docs/theory that names no test");
    }

    @Test
    void everyTestThatADocumentNamesIsThere() {
        Map<String, String> tests = ending("src/test/java", ".java").stream()
                .collect(Collectors.toMap(
                        f -> f.getFileName().toString().replace(".java", ""), DocumentsTest::text, (a, b) -> a + b));
        List<String> wrong = new ArrayList<>();
        for (Path document : ending("", ".md")) {
            TEST.matcher(text(document)).results().forEach(named -> {
                String source = tests.get(named.group(1));
                if (source == null || (named.group(2) != null && !source.contains(" " + named.group(2) + "("))) {
                    wrong.add(document + ": " + named.group());
                }
            });
        }
        assertEquals(List.of(), wrong);
    }

    @Test
    void everyDecisionIsListedAndSaysWhatConfirmsIt() {
        String list = text(ROOT.resolve("docs/decisions/README.md"));
        List<Path> decisions = ending("docs/decisions", ".md").stream()
                .filter(f -> !f.endsWith("README.md"))
                .toList();
        assertFalse(decisions.isEmpty());
        for (Path decision : decisions) {
            String name = decision.getFileName().toString();
            assertEquals(true, list.contains("(" + name + ")"), name + " stands in the list");
            assertEquals(true, text(decision).contains("**Confirmation.**"), name + " says what confirms it");
        }
    }

    @Test
    void everyLinkLeadsSomewhere() {
        List<String> wrong = new ArrayList<>();
        for (Path document : ending("", ".md")) {
            LINK.matcher(text(document))
                    .results()
                    .map(l -> l.group(1))
                    .filter(l -> !l.contains("://"))
                    .forEach(link -> {
                        if (!Files.exists(document.resolveSibling(link))) {
                            wrong.add(document + ": " + link);
                        }
                    });
        }
        assertEquals(List.of(), wrong);
    }

    /** The first cell of a table's row. */
    private static String cell(String row) {
        return row.substring(1, row.indexOf('|', 1)).strip();
    }

    /** The table of packages is the list that {@link ArchitectureTest} holds the imports against. */
    @Test
    void theMapIsTheOneThatTheImportsAreHeldAgainst() {
        String map = text(ROOT.resolve("ARCHITECTURE.md"));
        String table = map.substring(map.indexOf("| package |"));
        List<List<String>> rows = table.lines()
                .skip(2)
                .takeWhile(line -> line.startsWith("|"))
                .map(line -> Pattern.compile("`(\\w+)`")
                        .matcher(cell(line))
                        .results()
                        .map(r -> r.group(1))
                        .toList())
                .toList();
        assertEquals(ArchitectureTest.ROWS, rows);
    }

    @Test
    void theGlossaryHasOneRowForAWord() {
        List<String> words = text(ROOT.resolve("docs/glossary.md"))
                .lines()
                .filter(line -> line.startsWith("| ") && !line.startsWith("| word") && !line.startsWith("| ---"))
                .flatMap(line -> Stream.of(cell(line).split(", ", -1)))
                .toList();
        List<String> twice = words.stream()
                .filter(word -> words.indexOf(word) != words.lastIndexOf(word))
                .distinct()
                .toList();
        assertEquals(List.of(), twice);
    }
}
