package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.page.Enumeration;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;
import org.varwright.switching.Closing;
import org.varwright.switching.Inrush;
import org.varwright.switching.InrushCase;
import org.varwright.switching.InrushPicture;

/** What happens at the next switching: peaks and frequencies, the hardest closing as a waveform, the inductance that would help. */
final class SwitchingSection {
    private static final String TITLE = "Switching";

    private SwitchingSection() {}

    static Section of(Inrush inrush) {
        Bank bank = inrush.bank();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Table(
                "Closing on discharged capacitors, the worst angles",
                List.of(
                        Column.left("Closes", 16),
                        Column.left("Already on", 32),
                        Column.right("By formula", 20),
                        Column.right("In time, together", 20),
                        Column.right("Voltage, × peak", 12)),
                inrush.cases().stream().map(SwitchingSection::row).toList()));
        InrushPicture.hardest(inrush)
                .flatMap(c -> InrushPicture.svg(inrush, c, Width.PAGE)
                        .map(svg -> new Block.Figure(
                                svg, "the hardest closing of " + bank.name() + ": " + c.title() + ", poles together")))
                .ifPresent(blocks::add);
        if (!inrush.remedies().isEmpty()) {
            blocks.add(new Block.Subheading("What would bring it inside"));
            blocks.add(new Block.Bullets(inrush.remedies().stream()
                    .map(r -> r.title() + ": " + Dimension.INDUCTANCE.format(r.totalHenries(), 3)
                            + " in each phase, " + Dimension.INDUCTANCE.format(r.addedHenries(), 3)
                            + " more than now; then " + Dimension.CURRENT.format(r.peakAmperes(), 3) + " at "
                            + Dimension.FREQUENCY.format(r.hertz(), 3) + ".")
                    .toList()));
        }
        if (!inrush.gaps().isEmpty()) {
            blocks.add(new Block.Subheading("Not in the bank file"));
            blocks.add(new Block.Bullets(inrush.gaps().stream()
                    .map(g ->
                            Enumeration.of(g.subjects()) + ": " + g.missing() + ". " + Values.capital(g.effect()) + ".")
                    .toList()));
        }
        return new Section(TITLE, Section.PageStart.RUN_ON, blocks);
    }

    private static Row row(InrushCase of) {
        Optional<Closing> main = of.main();
        return new Row(List.of(
                new Cell.Text(of.stage()),
                new Cell.Text(of.alreadyOn().isEmpty() ? "none" : Enumeration.of(of.alreadyOn())),
                new Cell.Text(
                        of.formula().map(f -> ring(f.peakAmperes(), f.hertz())).orElse("not known")),
                new Cell.Text(main.map(m -> ring(m.peakAmperes(), m.hertz())).orElse("not known")),
                new Cell.Text(main.map(m -> Dimension.digits(m.legPerPeak(), 3)).orElse("not known"))));
    }

    private static String ring(double amperes, double hertz) {
        return Dimension.CURRENT.format(amperes, 3) + ", " + Dimension.FREQUENCY.format(hertz, 3);
    }
}
