package org.varwright.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import javax.xml.parsers.DocumentBuilderFactory;
import org.varwright.svg.Box;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;

/** What must hold of every picture. */
final class Drawings {
    private static final Set<String> KNOWN =
            Set.of("svg", "title", "desc", "style", "rect", "g", "path", "circle", "text");

    private Drawings() {}

    /** Well-formed, of known elements, no words over words, nothing off the sheet, and the same when drawn again. */
    static void check(String about, Drawn drawn, Drawn again) {
        assertEquals(drawn.svg(), again.svg(), about);
        Set<String> unknown = new TreeSet<>(elements(parsed(drawn.svg())));
        unknown.removeAll(KNOWN);
        assertEquals(Set.of(), unknown, about);
        assertEquals(List.of(), overlaps(drawn), about);
    }

    static List<String> overlaps(Drawn drawn) {
        List<Box> words = drawn.sheet().words();
        Box sheet = new Box(0.0, 0.0, drawn.width().units(), drawn.height());
        List<String> found = new ArrayList<>();
        for (int i = 0; i < words.size(); i++) {
            Box box = words.get(i).grown(-0.05);
            if (!sheet.holds(box)) {
                found.add(box + " is off the sheet " + sheet);
            }
            for (int j = i + 1; j < words.size(); j++) {
                if (box.overlaps(words.get(j).grown(-0.05))) {
                    found.add(box + " lies over " + words.get(j));
                }
            }
        }
        return found;
    }

    static Document parsed(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            factory.setNamespaceAware(true);
            return factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
        } catch (Exception e) {
            throw new AssertionError("the picture is not well-formed XML", e);
        }
    }

    static List<String> texts(Document document) {
        List<String> texts = new ArrayList<>();
        NodeList all = document.getElementsByTagName("text");
        for (int i = 0; i < all.getLength(); i++) {
            texts.add(all.item(i).getTextContent());
        }
        return texts;
    }

    private static List<String> elements(Document document) {
        List<String> names = new ArrayList<>();
        NodeList all = document.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            names.add(all.item(i).getNodeName());
        }
        return names;
    }
}
