package org.varwright.report.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;

/** Markup that can't be broken by what stands in it. */
class MarkupTest {
    @Test
    void everyTextAndAttributeIsEscaped() {
        Markup markup = new Markup(UnaryOperator.identity());
        markup.open("p", "title", "\"><script>'").text("</p>&amp;<b>").close();
        assertEquals("<p title=\"&quot;&gt;&lt;script&gt;&#39;\">&lt;/p&gt;&amp;amp;&lt;b&gt;</p>", markup.finish());
    }

    @Test
    void whatIsNotClosedIsAFault() {
        Markup markup = new Markup(UnaryOperator.identity());
        markup.open("p");
        assertThrows(IllegalStateException.class, markup::finish);
    }

    @Test
    void whatCannotBePrintedIsSpelled() {
        assertEquals(
                "a [U+4E2D][U+0000]b [U+1F50C] \u00a0c",
                Fonts.loaded().printable("a\t\u4e2d\u0000b\n\ud83d\udd0c \u00a0c"));
    }
}
