package org.varwright.report.pdf;

import java.io.IOException;
import java.io.StringReader;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** A drawing that holds shapes and text only: nothing that runs, loads or links. */
final class SafeSvg {
    private static final Set<String> ALLOWED = Set.of(
            "svg",
            "g",
            "path",
            "line",
            "polyline",
            "polygon",
            "rect",
            "circle",
            "ellipse",
            "text",
            "tspan",
            "title",
            "desc",
            "defs",
            "symbol",
            "use",
            "marker",
            "pattern",
            "clipPath",
            "style");

    private final Document document;

    private SafeSvg(Document document) {
        this.document = document;
    }

    /**
     * Parses a drawing and takes out what a drawing on paper has no use for.
     *
     * @throws IllegalArgumentException where it isn't well-formed SVG: it comes from the program, so that is a fault of the program
     */
    static SafeSvg parse(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            factory.setNamespaceAware(true);
            Document document = factory.newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
            if (!"svg".equals(document.getDocumentElement().getLocalName())) {
                throw new IllegalArgumentException("a drawing must be an svg element");
            }
            clean(document.getDocumentElement());
            return new SafeSvg(document);
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new IllegalArgumentException("a drawing must be well-formed SVG", e);
        }
    }

    private static void clean(Element element) {
        List<String> unwanted = new ArrayList<>();
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            Node attribute = element.getAttributes().item(i);
            String name = attribute.getNodeName().toLowerCase(Locale.ROOT);
            boolean link = name.endsWith("href") && !attribute.getNodeValue().startsWith("#");
            if (name.startsWith("on") || link || name.equals("font-family")) {
                unwanted.add(attribute.getNodeName());
            }
        }
        unwanted.forEach(element::removeAttribute);
        NodeList children = element.getChildNodes();
        for (int i = children.getLength() - 1; i >= 0; i--) {
            Node child = children.item(i);
            if (child instanceof Element inner) {
                if (ALLOWED.contains(inner.getLocalName())) {
                    clean(inner);
                } else {
                    element.removeChild(inner);
                }
            } else if (child.getNodeType() == Node.TEXT_NODE) {
                child.setNodeValue(Fonts.loaded().printable(child.getNodeValue()));
            } else if (child.getNodeType() != Node.CDATA_SECTION_NODE) {
                element.removeChild(child);
            }
        }
    }

    /** The drawing as markup, in the report's typeface, described for those who can't see it. */
    String print(String description) {
        Element root = document.getDocumentElement();
        root.setAttribute("font-family", Fonts.FAMILY);
        root.setAttribute("alt", description);
        try {
            Transformer transformer = TransformerFactory.newInstance().newTransformer();
            transformer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
            StringWriter text = new StringWriter();
            transformer.transform(new DOMSource(document), new StreamResult(text));
            return text.toString();
        } catch (TransformerException e) {
            throw new IllegalStateException(e);
        }
    }
}
