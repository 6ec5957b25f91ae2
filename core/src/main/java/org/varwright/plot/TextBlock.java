package org.varwright.plot;

import java.util.List;
import org.varwright.svg.Box;
import org.varwright.svg.FontWidths;
import org.varwright.svg.Lettering;
import org.varwright.svg.Sheet;

/** A text in lines. */
record TextBlock(List<String> lines, Lettering lettering) {
    TextBlock {
        lines = List.copyOf(lines);
    }

    static TextBlock of(String text, Lettering lettering, double widest) {
        return new TextBlock(FontWidths.wrap(text, lettering.size(), lettering.bold(), widest), lettering);
    }

    /** In as many lines as the width asks for, but of like length, so that no word is left alone on the last. */
    static TextBlock even(String text, Lettering lettering, double widest) {
        TextBlock first = of(text, lettering, widest);
        TextBlock best = first;
        for (double width = 0.95 * widest; width > 0.3 * widest; width -= 0.05 * widest) {
            TextBlock narrower = of(text, lettering, width);
            if (narrower.lines.size() > first.lines.size()) {
                return best;
            }
            if (!narrower.partsANumberFromItsUnit() || best.partsANumberFromItsUnit()) {
                best = narrower;
            }
        }
        return best;
    }

    /** In one line where that is not too wide, and in two narrower shapes. */
    static List<TextBlock> shapes(String text, Lettering lettering, double widest) {
        return List.of(
                even(text, lettering, widest),
                even(text, lettering, 0.6 * widest),
                even(text, lettering, 0.42 * widest));
    }

    private boolean partsANumberFromItsUnit() {
        for (int i = 0; i + 1 < lines.size(); i++) {
            char last = lines.get(i).charAt(lines.get(i).length() - 1);
            if (last >= '0' && last <= '9' && lines.get(i + 1).indexOf(' ') <= 4) {
                return true;
            }
        }
        return false;
    }

    boolean isEmpty() {
        return lines.isEmpty();
    }

    double width() {
        return lines.stream().mapToDouble(lettering::width).max().orElse(0.0);
    }

    double height() {
        return lines.size() * lettering.line();
    }

    void draw(Sheet sheet, double left, double top) {
        double baseline = top + 0.94 * lettering.size();
        for (String line : lines) {
            sheet.text(left, baseline, line, lettering);
            baseline += lettering.line();
        }
    }

    void draw(Sheet sheet, Box box) {
        draw(sheet, box.left(), box.top());
    }
}
