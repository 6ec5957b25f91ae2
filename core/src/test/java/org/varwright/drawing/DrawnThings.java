package org.varwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Stage;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** Reads a drawing back with an XML parser and looks for the things of the bank in it. */
final class DrawnThings {
    private DrawnThings() {}

    /** Everything of the bank is drawn once and nothing twice. */
    static void check(String what, Bank bank, DrawingState state, DrawingOptions options) {
        Document document = parsed(OneLineDrawing.draw(bank, state, options));
        Isolation isolation = bank.isolation().orElseThrow();
        assertEquals(sorted(isolation.devices().stream().map(Device::name).toList()), named(document, "device"), what);
        assertEquals(
                sorted(isolation.compartments().stream().map(Compartment::name).toList()),
                named(document, "compartment"),
                what);
        assertEquals(sorted(List.copyOf(isolation.conductors())), named(document, "conductor"), what);
        assertEquals(sorted(bank.stages().stream().map(Stage::name).toList()), named(document, "stage"), what);
        assertEquals(sorted(List.copyOf(isolation.keyNames())), named(document, "key"), what);
        assertEquals(
                sorted(isolation.exchanges().stream().map(KeyExchange::name).toList()),
                named(document, "exchange"),
                what);
        assertEquals(
                sorted(isolation.sources().stream().map(EnergySource::name).toList()), named(document, "source"), what);
    }

    static Document parsed(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            factory.setNamespaceAware(true);
            DocumentBuilder builder = factory.newDocumentBuilder();
            return builder.parse(new InputSource(new StringReader(svg)));
        } catch (Exception e) {
            throw new AssertionError("the drawing is not well-formed XML", e);
        }
    }

    /** Names of the groups of a class, sorted. */
    static List<String> named(Document document, String kind) {
        List<String> names = new ArrayList<>();
        for (Element group : groups(document, kind)) {
            String title = group.getElementsByTagName("title").item(0).getTextContent();
            names.add(title.substring(kind.length() + 1));
        }
        return sorted(names);
    }

    /** All words in the group of one thing. */
    static String words(Document document, String kind, String name) {
        StringBuilder words = new StringBuilder();
        for (Element group : groups(document, kind)) {
            if (group.getElementsByTagName("title").item(0).getTextContent().equals(kind + " " + name)) {
                NodeList texts = group.getElementsByTagName("text");
                for (int i = 0; i < texts.getLength(); i++) {
                    words.append(texts.item(i).getTextContent()).append(' ');
                }
            }
        }
        return words.toString().strip();
    }

    static List<Element> groups(Document document, String kind) {
        List<Element> groups = new ArrayList<>();
        NodeList all = document.getElementsByTagName("g");
        for (int i = 0; i < all.getLength(); i++) {
            if (all.item(i) instanceof Element e && e.getAttribute("class").equals(kind)) {
                groups.add(e);
            }
        }
        return groups;
    }

    /** How many elements have each name. */
    static Map<String, Integer> elements(Document document) {
        Map<String, Integer> counts = new TreeMap<>();
        NodeList all = document.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            counts.merge(all.item(i).getNodeName(), 1, Integer::sum);
        }
        return counts;
    }

    private static List<String> sorted(List<String> names) {
        return names.stream().sorted().toList();
    }
}
