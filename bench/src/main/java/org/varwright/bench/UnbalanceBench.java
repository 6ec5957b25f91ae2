package org.varwright.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Locale;
import org.varwright.bank.Bank;
import org.varwright.network.Failure;
import org.varwright.network.Network;
import org.varwright.network.NgspiceSingles;
import org.varwright.network.Solution;
import org.varwright.network.Sweep;
import org.varwright.quantity.Complex;

/** All single and double failures of a large double wye; ngspice solves the single ones. */
final class UnbalanceBench {
    private static final int NGSPICE_RUNS = 25;
    private static final int RUNS = 9;
    private static final double AGREE = 1e-9;

    private final UnbalanceCases cases = UnbalanceCases.ofUnits(12);

    private UnbalanceBench() {}

    static String text() throws IOException {
        return new UnbalanceBench().measure();
    }

    private String measure() throws IOException {
        NgspiceSingles singles = NgspiceSingles.of(cases.bank(), cases.supply(), cases.capacitances());
        int units = singles.branches().size();
        int pairs = units * (units - 1) / 2;
        try (Scratch scratch = Scratch.create()) {
            Command command = new Command(scratch.folder());
            command.write("answers.cir", singles.deck("answers.raw"));
            command.run("ngspice", "-b", "answers.cir");
            double apart =
                    furthestApart(singles, Files.readAllBytes(scratch.folder().resolve("answers.raw")));
            if (!(apart <= AGREE)) {
                throw new IllegalStateException(
                        "ngspice and ours differ by " + apart + "; figures of different answers can't be compared");
            }
            command.write("one.cir", singles.deckToTime(1));
            command.write("all.cir", singles.deckToTime(units));
            Times one = command.times(NGSPICE_RUNS, 0, "ngspice", "-b", "one.cir");
            Times every = command.times(NGSPICE_RUNS, 0, "ngspice", "-b", "all.cir");
            double perCase = (every.cpu() - one.cpu()) / (units - 1);
            Times all = Times.of(cases::sweepEverything, 3.0, RUNS);
            Times whole = Times.of(cases::solveSingles, 1.0, RUNS);
            double ours = all.cpu() / (units + pairs);
            double solved = whole.cpu() / units;
            return String.format(
                    Locale.ROOT,
                    """
                    Ungrounded double wye of %d units, four groups of twelve a leg, all of different capacitance. One process of ngspice solves every unit out (`alter`,
                    `ac`: all voltages and source currents); its time a case is that of a run with all cases less that of a run with one, over the others: without start,
                    reading the circuit and writing answers. Ours (`Sweep`, NET-9, in a warm JVM on one core) takes every unit out and every two of them: neutral current,
                    and the highest voltage on any unit left, of each; its time a case is that of the whole, building and factoring the network included, over the cases.
                    `Network.solve` gives every voltage and current of every unit.
                    All units' voltages and the neutral current of the %d single cases agree to %.1e of phase voltage and line current (allowed %.0e), or there would be
                    no figures.

                    | | cases | processor, least / median / most | a case | times faster |
                    | --- | --: | --- | --: | --: |
                    | ngspice, singles | %d | %s; of a run with one case %s | %s | 1 |
                    | ours, singles and doubles | %s | %s | %s | %.0f |
                    | ours, `Network.solve` of the singles | %s | %s | %s | %.0f |

                    The aim is a thousand times.""",
                    units,
                    units,
                    apart,
                    AGREE,
                    units,
                    every.cpuText(),
                    one.cpuText(),
                    micro(perCase),
                    grouped(units + pairs),
                    all.cpuText(),
                    micro(ours),
                    perCase / ours,
                    grouped(units),
                    whole.cpuText(),
                    micro(solved),
                    perCase / solved);
        }
    }

    /** Largest difference over the single cases, of voltages over phase voltage and of the neutral current over the line's. */
    private double furthestApart(NgspiceSingles singles, byte[] written) {
        List<NgspiceSingles.Case> answered = singles.read(written);
        if (answered.size() != singles.branches().size()) {
            throw new IllegalStateException("ngspice gave " + answered.size() + " cases");
        }
        Network network = cases.network();
        Sweep sweep = network.sweep().orElseThrow();
        double amperes = UnbalanceCases.solved(network.healthy())
                .lines()
                .getFirst()
                .amperes()
                .magnitude();
        Bank bank = cases.bank();
        double volts = bank.system().phaseVolts();
        double apart = 0.0;
        for (NgspiceSingles.Case answers : answered) {
            List<Failure> out = List.of(new Failure.UnitOut(answers.out()));
            Solution.Solved solved = UnbalanceCases.solved(network.solve(out));
            double highest = 0.0;
            for (Solution.UnitValue unit : solved.units()) {
                Complex theirs = singles.volts(answers, unit.unit());
                apart = Math.max(apart, theirs.minus(unit.volts()).magnitude() / volts);
                highest = unit.inService() ? Math.max(highest, theirs.magnitude()) : highest;
            }
            sweep.set(sweep.fault(out));
            double rated = bank.unitTypes().getFirst().ratedVolts();
            apart = Math.max(apart, Math.abs(highest / rated - sweep.highestUnitPerRated()));
            for (Complex neutral :
                    List.of(sweep.sensor(0), solved.sensors().getFirst().primary())) {
                apart = Math.max(apart, answers.neutralAmperes().minus(neutral).magnitude() / amperes);
            }
        }
        return apart;
    }

    private static String micro(double seconds) {
        return String.format(Locale.ROOT, seconds < 1e-5 ? "%.2f µs" : "%.0f µs", seconds * 1e6);
    }

    private static String grouped(int value) {
        return String.format(Locale.ROOT, "%,d", value).replace(',', ' ');
    }
}
