package org.varwright.switching;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Reactor;
import org.varwright.discharge.Ngspice;
import org.varwright.network.Capacitances;

/**
 * The same closing by ours and by ngspice: one stage onto three, each behind its reactor, all poles at 90°, one cycle.
 *
 * <pre>
 *   ~ ──R─L── bus ─┬─[poles]─L─┤├─    closes
 *                  ├─────────L─┤├─    is on, three times
 * </pre>
 */
public final class InrushDuel {
    private static final double RAMP_SECONDS = 0.04;
    private static final double HERTZ = 60.0;

    private final Bank bank;

    private InrushDuel(Bank bank) {
        this.bank = bank;
    }

    public static InrushDuel ofFourStages() {
        TestBank made = new TestBank(13.8e3, HERTZ).source(250e6, 12.0);
        for (int i = 1; i <= 4; i++) {
            made.stage(
                    "s" + i,
                    TestBank.Plan.of(Connection.WYE_UNGROUNDED, 600e3 * i)
                            .reactor(60e-6, 0.01, Reactor.Position.LINE, 0.0));
        }
        return new InrushDuel(made.build());
    }

    /** Largest current of all poles of the stage that closes, by the product [A]. */
    public double ours() {
        List<SwitchedStage> stages = new ArrayList<>();
        bank.stages().forEach(stage -> stages.add(SwitchedStage.of(stage, Capacitances.known(bank))));
        Closing closing = new ClosingStudy(
                        Source.of(bank.system()),
                        stages.getFirst(),
                        stages.subList(1, stages.size()),
                        Path.LEAST_PER_METRE,
                        Map.of())
                .at(List.of(90.0, 90.0, 90.0), false);
        return closing.peakAmperes();
    }

    /** The netlist of the same closing. */
    public String deck(double stepSeconds) {
        SpiceBank deck = new SpiceBank(bank, 90.0, RAMP_SECONDS).switched(0, new double[3], new double[3]);
        for (int i = 1; i < bank.stages().size(); i++) {
            deck.on(i);
        }
        for (int p = 0; p < 3; p++) {
            deck.peak("i" + p, SpiceBank.pole(0, p));
        }
        return deck.deck(1.0 / HERTZ, stepSeconds);
    }

    /** Largest current of all poles, by ngspice [A]. */
    public double spice(double stepSeconds) throws IOException, InterruptedException {
        Ngspice.Measured measured = Ngspice.measure(deck(stepSeconds));
        double largest = 0.0;
        for (int p = 0; p < 3; p++) {
            largest = Math.max(largest, SpiceBank.magnitude(measured, "i" + p));
        }
        return largest;
    }
}
