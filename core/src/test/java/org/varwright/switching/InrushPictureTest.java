package org.varwright.switching;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;

class InrushPictureTest {
    private final Bank bank = tamarack();

    private static Bank tamarack() {
        try {
            return BankFile.read(
                            "tamarack", Files.readAllBytes(Path.of("..", "examples", "tamarack-flats-2.bank.yaml")))
                    .requireBank();
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    private Inrush asked(List<Double> degrees) {
        return Inrush.of(
                bank,
                new InrushRequest(
                        Optional.of("stage 1"),
                        Optional.of(List.of("stage 2", "stage 3", "stage 4")),
                        Map.of(),
                        Optional.of(degrees),
                        false,
                        Map.of()));
    }

    /** Six curves, the peak of the closing itself, and the angles that were asked for. */
    @Test
    void showsEveryPoleAndLegAndThePeak() {
        Inrush inrush = asked(List.of(90.0, 95.0, 100.0));
        InrushCase hardest = InrushPicture.hardest(inrush).orElseThrow();
        String svg = InrushPicture.svg(inrush, hardest, Width.PAGE).orElseThrow();
        for (String label : List.of("pole A", "pole B", "pole C", "leg A", "leg B", "leg C")) {
            assertTrue(svg.contains(label), label);
        }
        assertTrue(svg.contains("A 90°, B 95°, C 100°"), "angles");
        double peak = hardest.main().orElseThrow().peakAmperes();
        assertTrue(svg.contains("peak " + Dimension.CURRENT.format(peak, 3)), "peak");
        assertEquals(svg, InrushPicture.svg(inrush, hardest, Width.PAGE).orElseThrow(), "the same again");
    }

    /** The waveform that is drawn is the one that was judged: its largest sample is the peak to the step of the simulation. */
    @Test
    void drawsTheClosingThatIsJudged() {
        Inrush inrush = asked(List.of(90.0, 90.0, 90.0));
        Closing closing = inrush.cases().getFirst().main().orElseThrow();
        double largest = 0.0;
        for (int p = 0; p < 3; p++) {
            for (double value : closing.recorded().orElseThrow().wave().values()[p]) {
                largest = Math.max(largest, Math.abs(value));
            }
        }
        assertEquals(closing.peakAmperes(), largest, 2e-3 * closing.peakAmperes());
    }
}
