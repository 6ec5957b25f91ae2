package org.varwright.report.pdf;

import java.awt.Color;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.varwright.report.pdf.Picture.Mark;
import org.varwright.report.pdf.Picture.Pen;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Reads the small part of SVG 1.1 that our drawings use: {@code g}, {@code rect}, {@code circle}, {@code line}, {@code path} and {@code text}. Nothing that
 * runs, loads or links is known here, so nothing of the kind can come through.
 */
final class PictureReader {
    /** The one style rule that drawings have: other colours for dark screens, of no use on paper. It can't load anything. */
    private static final Pattern DARK_RULE = Pattern.compile(
            "@media screen and \\(prefers-color-scheme:dark\\)\\{(?:\\.v[fs]-[a-z-]+\\{(?:fill|stroke):#[0-9a-f]{6}\\})*\\}");

    private static final Pattern MILLIMETRES = Pattern.compile("([0-9.]+)mm");
    /** Width of the narrowest paper. */
    private static final double SHEET_MM = 200.0;

    private static final Pattern TRANSFORM = Pattern.compile("([a-z]+)\\(([^)]*)\\)");

    private final List<Mark> marks = new ArrayList<>();

    private PictureReader() {}

    /**
     * Reads a drawing.
     *
     * @throws IllegalArgumentException where it isn't such a drawing: it comes from the program, so that is a fault of the program
     */
    static Picture read(String svg) {
        Element root = parse(svg);
        double[] box = numbers(root.getAttribute("viewBox"));
        if (!"svg".equals(root.getLocalName()) || box.length != 4) {
            throw new IllegalArgumentException("a drawing must be an svg element with a viewBox");
        }
        PictureReader reader = new PictureReader();
        AffineTransform place = AffineTransform.getTranslateInstance(-box[0], -box[1]);
        reader.children(root, place, Style.START.under(root));
        return new Picture(box[2], box[3], largest(root.getAttribute("width"), box[2]), reader.marks).trimmed();
    }

    /** A chart is as large as it says; a drawing of a whole sheet as large as the page. */
    private static double largest(String width, double units) {
        Matcher matcher = MILLIMETRES.matcher(width);
        double millimetres = matcher.matches() ? Double.parseDouble(matcher.group(1)) : SHEET_MM;
        return millimetres < SHEET_MM ? millimetres / units : Double.POSITIVE_INFINITY;
    }

    private static Element parse(String svg) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            factory.setNamespaceAware(true);
            DocumentBuilder builder = factory.newDocumentBuilder();
            // the usual one prints to the console before it throws
            builder.setErrorHandler(new DefaultHandler());
            return builder.parse(new InputSource(new StringReader(svg))).getDocumentElement();
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new IllegalArgumentException("a drawing must be well-formed SVG", e);
        }
    }

    /** Attributes that go down to what is inside. */
    private record Style(
            String fill, String stroke, double strokeWidth, String dashes, boolean round, double size, boolean bold) {
        static final Style START = new Style("#000000", "none", 1.0, "", false, 10.0, false);

        Style under(Element element) {
            return new Style(
                    or(element, "fill", fill),
                    or(element, "stroke", stroke),
                    Double.parseDouble(or(element, "stroke-width", Double.toString(strokeWidth))),
                    or(element, "stroke-dasharray", dashes),
                    or(element, "stroke-linejoin", round ? "round" : "miter").equals("round"),
                    Double.parseDouble(or(element, "font-size", Double.toString(size))),
                    or(element, "font-weight", bold ? "bold" : "normal").equals("bold"));
        }

        Optional<Color> filling() {
            return colour(fill);
        }

        Optional<Pen> pen() {
            return colour(stroke)
                    .map(c -> new Pen(
                            c,
                            strokeWidth,
                            round,
                            dashesGiven()
                                    .map(d -> Arrays.stream(numbers(d)).boxed().toList())
                                    .orElse(List.of())));
        }

        private Optional<String> dashesGiven() {
            return dashes.isEmpty() || dashes.equals("none") ? Optional.empty() : Optional.of(dashes);
        }

        private static String or(Element element, String name, String otherwise) {
            return element.hasAttribute(name) ? element.getAttribute(name) : otherwise;
        }
    }

    private void children(Element parent, AffineTransform place, Style style) {
        for (Node child = parent.getFirstChild(); child != null; child = child.getNextSibling()) {
            if (child instanceof Element element) {
                element(element, place, style.under(element));
            }
        }
    }

    private void element(Element element, AffineTransform outer, Style style) {
        AffineTransform place = new AffineTransform(outer);
        place.concatenate(transform(element.getAttribute("transform")));
        switch (element.getLocalName()) {
            case "g" -> children(element, place, style);
            case "title", "desc" -> {
                // said by the figure's legend
            }
            case "style" -> {
                if (!DARK_RULE.matcher(element.getTextContent()).matches()) {
                    throw new IllegalArgumentException("a drawing holds no style but that of dark screens");
                }
            }
            case "rect" ->
                outline(
                        new Rectangle2D.Double(
                                number(element, "x"),
                                number(element, "y"),
                                number(element, "width"),
                                number(element, "height")),
                        place,
                        style);
            case "circle" -> {
                double r = number(element, "r");
                outline(
                        new Ellipse2D.Double(number(element, "cx") - r, number(element, "cy") - r, 2.0 * r, 2.0 * r),
                        place,
                        style);
            }
            case "line" -> {
                PathReader path = new PathReader("M" + element.getAttribute("x1") + " " + element.getAttribute("y1")
                        + " L" + element.getAttribute("x2") + " " + element.getAttribute("y2"));
                outline(path.read(), place, style);
            }
            case "path" -> outline(new PathReader(element.getAttribute("d")).read(), place, style);
            case "text" -> text(element, place, style);
            default -> throw new IllegalArgumentException("a drawing holds no " + element.getLocalName());
        }
    }

    private void outline(Shape shape, AffineTransform place, Style style) {
        marks.add(new Mark.Outline(place, shape, style.filling(), style.pen()));
    }

    private void text(Element element, AffineTransform place, Style style) {
        String text = Fonts.loaded().printable(element.getTextContent()).strip();
        if (!text.isEmpty()) {
            double length = element.hasAttribute("textLength") ? number(element, "textLength") : 0.0;
            marks.add(new Mark.Words(
                    place,
                    text,
                    number(element, "x"),
                    number(element, "y"),
                    style.size(),
                    style.bold(),
                    length,
                    style.filling().orElse(Color.BLACK)));
        }
    }

    private static AffineTransform transform(String written) {
        AffineTransform transform = new AffineTransform();
        Matcher matcher = TRANSFORM.matcher(written);
        while (matcher.find()) {
            double[] n = numbers(matcher.group(2));
            switch (matcher.group(1)) {
                case "translate" -> transform.translate(n[0], n.length > 1 ? n[1] : 0.0);
                case "scale" -> transform.scale(n[0], n.length > 1 ? n[1] : n[0]);
                case "rotate" -> transform.rotate(Math.toRadians(n[0]));
                default -> throw new IllegalArgumentException("a drawing is not moved by " + matcher.group());
            }
        }
        return transform;
    }

    private static double number(Element element, String name) {
        return element.hasAttribute(name) ? Double.parseDouble(element.getAttribute(name)) : 0.0;
    }

    private static double[] numbers(String written) {
        return Arrays.stream(written.strip().split("[\\s,]+"))
                .filter(s -> !s.isEmpty())
                .mapToDouble(Double::parseDouble)
                .toArray();
    }

    private static Optional<Color> colour(String written) {
        return written.equals("none") ? Optional.empty() : Optional.of(Color.decode(written));
    }
}
