package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.varwright.json.Json;
import org.varwright.page.Page;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** What holds of every command line, whatever was asked of whatever file. */
final class HeldSession {
    private static final Set<Integer> CODES = Set.of(0, 1, 2, 3);
    private static final Pattern FAULT = Pattern.compile(
            "\\tat |[a-z]Exception|[a-z]Error\\b|\\borg\\.varwright|\\bjava\\.|\\bOptional\\[|Optional\\.empty|@[0-9a-f]{6,8}\\b");
    private static final Pattern NO_NUMBER = Pattern.compile("\\bNaN\\b|Infinity|\\bnull\\b|\\bundefined\\b|∞");

    private HeldSession() {}

    /** Runs as text and as JSON and holds both; the text's session. */
    static Session run(AnyCommand command) throws IOException {
        List<String> arguments = command.arguments();
        Path picture = command.picture();
        Files.deleteIfExists(picture);
        Session text = Session.run(arguments.toArray(String[]::new));
        String line = String.join(" ", arguments);
        holdEither(text, line);
        if (text.code() != 2) {
            if (!command.hasLongNames()) {
                text.out()
                        .lines()
                        .forEach(each -> assertTrue(
                                each.codePointCount(0, each.length()) <= Page.COLUMNS,
                                () -> line + ": too wide: " + each));
            }
            assertFalse(NO_NUMBER.matcher(text.out()).find(), () -> line + "\n" + around(NO_NUMBER, text.out()));
        }
        if (Files.exists(picture)) {
            holdPicture(Files.readString(picture), line);
        }
        return text;
    }

    /** The same with {@code --json}: the same verdict, in JSON. */
    static Json json(List<String> arguments, Session text) {
        List<String> more = new ArrayList<>(arguments);
        more.add("--json");
        Session json = Session.run(more.toArray(String[]::new));
        String line = String.join(" ", more);
        holdEither(json, line);
        assertEquals(text.code(), json.code(), line + ": text and JSON end alike\n" + text.err() + json.err());
        if (json.code() == 2 && json.out().isEmpty()) {
            return Json.none();
        }
        return Json.parse(json.out());
    }

    static void holdEither(Session session, String line) {
        assertTrue(CODES.contains(session.code()), () -> line + ": exit " + session.code() + "\n" + session.err());
        assertFalse(
                FAULT.matcher(session.out() + session.err()).find(),
                () -> line + "\n" + around(FAULT, session.out() + session.err()));
        if (session.code() == 2 && session.out().isEmpty()) {
            assertTrue(session.err().startsWith("varwright: "), () -> line + "\n" + session.err());
            String first = session.err().lines().findFirst().orElse("");
            assertTrue(first.length() > 25, () -> line + ": says too little: " + first);
        }
        if (session.code() != 2) {
            assertFalse(session.out().isBlank(), line + ": says nothing");
        }
        for (String each : session.err().lines().toList()) {
            assertFalse(each.contains("\u0000"), line);
        }
    }

    private static String around(Pattern what, String text) {
        var found = what.matcher(text);
        return found.find()
                ? text.substring(Math.max(0, found.start() - 120), Math.min(text.length(), found.end() + 120))
                : "";
    }

    static void holdPicture(String svg, String line) throws IOException {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            factory.setNamespaceAware(true);
            var builder = factory.newDocumentBuilder();
            builder.setErrorHandler(null);
            NodeList all = builder.parse(new InputSource(new StringReader(svg))).getElementsByTagName("*");
            for (int i = 0; i < all.getLength(); i++) {
                Element element = (Element) all.item(i);
                String name = element.getTagName().toLowerCase(Locale.ROOT);
                assertFalse(
                        Set.of("script", "foreignobject", "iframe", "image").contains(name), line + ": <" + name + ">");
                for (int a = 0; a < element.getAttributes().getLength(); a++) {
                    String attribute =
                            element.getAttributes().item(a).getNodeName().toLowerCase(Locale.ROOT);
                    String value = element.getAttributes().item(a).getNodeValue();
                    assertFalse(attribute.startsWith("on"), line + ": " + attribute);
                    assertFalse(attribute.endsWith("href") && !value.startsWith("#"), line + ": " + value);
                    boolean isWords =
                            attribute.startsWith("aria-") || attribute.startsWith("data-") || attribute.equals("id");
                    assertFalse(!isWords && NO_NUMBER.matcher(value).find(), line + ": " + attribute + "=" + value);
                }
            }
        } catch (ParserConfigurationException | SAXException e) {
            throw new AssertionError(line + ": the picture is no XML: " + e.getMessage(), e);
        }
    }
}
