package org.varwright.report.pdf;

import de.rototor.pdfbox.graphics2d.IPdfBoxGraphics2DFontTextDrawer;
import de.rototor.pdfbox.graphics2d.PdfBoxGraphics2D;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.text.AttributedString;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * A line drawing as lines, areas and words, ready to be drawn on a page. Words stay words: they can be searched and copied.
 *
 * @param width of the sheet in its own unit
 * @param height of the sheet
 * @param largest millimetres to which one unit may be blown up; infinite for a whole sheet
 * @param marks in drawing order
 */
record Picture(double width, double height, double largest, List<Mark> marks) {
    /** White left around it. */
    private static final double EDGE = 2.0;

    Picture {
        marks = List.copyOf(marks);
    }

    /** Something that is drawn. */
    sealed interface Mark {
        AffineTransform place();

        /** What it covers before it is placed. */
        Rectangle2D box();

        Mark moved(AffineTransform by);

        private static AffineTransform after(AffineTransform by, AffineTransform place) {
            AffineTransform both = new AffineTransform(by);
            both.concatenate(place);
            return both;
        }

        /** An outline, filled, stroked or both. */
        record Outline(AffineTransform place, Shape shape, Optional<Color> fill, Optional<Pen> pen) implements Mark {
            @Override
            public Rectangle2D box() {
                return shape.getBounds2D();
            }

            @Override
            public Mark moved(AffineTransform by) {
                return new Outline(Mark.after(by, place), shape, fill, pen);
            }
        }

        /**
         * A line of text.
         *
         * @param x left end
         * @param y base line
         * @param length that it must have; 0 where it may have its own
         */
        record Words(
                AffineTransform place,
                String text,
                double x,
                double y,
                double size,
                boolean bold,
                double length,
                Color colour)
                implements Mark {
            @Override
            public Rectangle2D box() {
                return new Rectangle2D.Double(x, y - size, Math.max(length, size), 1.3 * size);
            }

            @Override
            public Mark moved(AffineTransform by) {
                return new Words(Mark.after(by, place), text, x, y, size, bold, length, colour);
            }
        }
    }

    /** What a stroke is drawn with; {@code round} corners don't stick out; {@code dashes} is empty for a full line. */
    record Pen(Color colour, double width, boolean round, List<Double> dashes) {
        BasicStroke stroke() {
            int join = round ? BasicStroke.JOIN_ROUND : BasicStroke.JOIN_MITER;
            if (dashes.isEmpty()) {
                return new BasicStroke((float) width, BasicStroke.CAP_BUTT, join);
            }
            float[] pattern = new float[dashes.size()];
            for (int i = 0; i < pattern.length; i++) {
                pattern[i] = dashes.get(i).floatValue();
            }
            return new BasicStroke((float) width, BasicStroke.CAP_BUTT, join, 10.0f, pattern, 0.0f);
        }
    }

    /** The same without the white edge of the sheet. */
    Picture trimmed() {
        Rectangle2D used = new Rectangle2D.Double();
        List<Mark> kept = new ArrayList<>();
        for (Mark mark : marks) {
            Rectangle2D box = mark.place().createTransformedShape(mark.box()).getBounds2D();
            boolean sheet = box.getWidth() >= width && box.getHeight() >= height;
            if (!sheet) {
                used = kept.isEmpty() ? box : used.createUnion(box);
                kept.add(mark);
            }
        }
        AffineTransform edge = AffineTransform.getTranslateInstance(EDGE - used.getX(), EDGE - used.getY());
        List<Mark> moved = kept.stream().map(m -> m.moved(edge)).toList();
        return new Picture(used.getWidth() + 2.0 * EDGE, used.getHeight() + 2.0 * EDGE, largest, moved);
    }

    /** Draws the sheet into a box that starts at the origin. */
    void draw(Graphics2D graphics, double boxWidth, double boxHeight) {
        double scale = Math.min(boxWidth / width, boxHeight / height);
        AffineTransform page = graphics.getTransform();
        Writer writer = new Writer();
        if (graphics instanceof PdfBoxGraphics2D pdf) {
            pdf.setFontTextDrawer(writer);
        }
        for (Mark mark : marks) {
            AffineTransform place = new AffineTransform(page);
            place.scale(scale, scale);
            place.concatenate(mark.place());
            graphics.setTransform(place);
            switch (mark) {
                case Mark.Outline outline -> {
                    outline.fill().ifPresent(colour -> {
                        graphics.setPaint(colour);
                        graphics.fill(outline.shape());
                    });
                    outline.pen().ifPresent(pen -> {
                        graphics.setPaint(pen.colour());
                        graphics.setStroke(pen.stroke());
                        graphics.draw(outline.shape());
                    });
                }
                case Mark.Words words -> {
                    graphics.setPaint(words.colour());
                    writer.next = Optional.of(words);
                    graphics.drawString(
                            new AttributedString(words.text()).getIterator(), (float) words.x(), (float) words.y());
                }
            }
        }
        graphics.setTransform(page);
    }

    /** Puts text on the page as text, in the report's own typefaces. */
    private static final class Writer implements IPdfBoxGraphics2DFontTextDrawer {
        private final List<PDFont> fonts = new ArrayList<>();
        private Optional<Mark.Words> next = Optional.empty();

        @Override
        public boolean canDrawText(java.text.AttributedCharacterIterator text, IFontTextDrawerEnv env) {
            return next.isPresent();
        }

        @Override
        public void drawText(java.text.AttributedCharacterIterator text, IFontTextDrawerEnv env) throws IOException {
            Mark.Words words = next.orElseThrow();
            PDFont font = font(env.getDocument(), words.bold());
            double natural = font.getStringWidth(words.text()) / 1000.0 * words.size();
            double squeeze = words.length() > 0.0 && natural > 0.0 ? words.length() / natural : 1.0;
            var page = env.getContentStream();
            env.applyPaint(env.getPaint(), null);
            page.beginText();
            page.setTextMatrix(new org.apache.pdfbox.util.Matrix((float) squeeze, 0f, 0f, -1f, 0f, 0f));
            page.setFont(font, (float) words.size());
            page.showText(words.text());
            page.endText();
        }

        private PDFont font(PDDocument document, boolean bold) throws IOException {
            if (fonts.isEmpty()) {
                fonts.add(PDType0Font.load(document, Fonts.loaded().regular(), true));
                fonts.add(PDType0Font.load(document, Fonts.loaded().bold(), true));
            }
            return fonts.get(bold ? 1 : 0);
        }

        @Override
        public java.awt.FontMetrics getFontMetrics(java.awt.Font font, IFontTextDrawerEnv env) {
            return env.getCalculationGraphics().getFontMetrics(font);
        }
    }
}
