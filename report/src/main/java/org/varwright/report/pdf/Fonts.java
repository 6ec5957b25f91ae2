package org.varwright.report.pdf;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import org.apache.fontbox.FontBoxFont;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.font.CIDFontMapping;
import org.apache.pdfbox.pdmodel.font.FontMapper;
import org.apache.pdfbox.pdmodel.font.FontMapping;
import org.apache.pdfbox.pdmodel.font.PDCIDSystemInfo;
import org.apache.pdfbox.pdmodel.font.PDFontDescriptor;

/** The typefaces of a report, which go into every PDF, and what they can print. */
final class Fonts implements FontMapper {
    /** Name by which the style sheet and drawings know them. */
    static final String FAMILY = "Report Sans";

    private static final Fonts LOADED = load();

    private final byte[] regular;
    private final byte[] bold;
    private final TrueTypeFont parsed;
    private final CmapLookup glyphs;

    private Fonts(byte[] regular, byte[] bold, TrueTypeFont parsed, CmapLookup glyphs) {
        this.regular = regular;
        this.bold = bold;
        this.parsed = parsed;
        this.glyphs = glyphs;
    }

    static Fonts loaded() {
        return LOADED;
    }

    InputStream regular() {
        return new ByteArrayInputStream(regular);
    }

    InputStream bold() {
        return new ByteArrayInputStream(bold);
    }

    /**
     * The text with what can't be printed made visible: a character without a glyph becomes its code, such as {@code [U+4E2D]}, a control character a
     * blank. Nothing is dropped unseen.
     */
    String printable(String text) {
        StringBuilder out = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            if (c == '\n' || c == '\t' || Character.isSpaceChar(c)) {
                out.append(c == 0xA0 || c == 0x202F ? '\u00a0' : ' ');
            } else if (c == '\r' || c == 0xAD || c == 0x200B) {
                return;
            } else if (Character.isISOControl(c) || glyphs.getGlyphId(c) == 0) {
                out.append(String.format("[U+%04X]", c));
            } else {
                out.appendCodePoint(c);
            }
        });
        return out.toString();
    }

    @Override
    public FontMapping<TrueTypeFont> getTrueTypeFont(String baseFont, PDFontDescriptor descriptor) {
        return new FontMapping<>(parsed, true);
    }

    @Override
    public FontMapping<FontBoxFont> getFontBoxFont(String baseFont, PDFontDescriptor descriptor) {
        return new FontMapping<>(parsed, true);
    }

    @Override
    public CIDFontMapping getCIDFont(String baseFont, PDFontDescriptor descriptor, PDCIDSystemInfo system) {
        return new CIDFontMapping(null, parsed, true);
    }

    private static Fonts load() {
        byte[] regular = Resources.bytes("DejaVuSansCondensed.ttf");
        byte[] bold = Resources.bytes("DejaVuSansCondensed-Bold.ttf");
        try {
            TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(regular));
            return new Fonts(regular, bold, font, font.getUnicodeCmapLookup());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
