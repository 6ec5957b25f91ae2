package org.varwright.record;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.bankfile.BankFile;
import org.varwright.comtrade.DataFormat;
import org.varwright.comtrade.Instant;
import org.varwright.comtrade.Ratio;
import org.varwright.comtrade.RecordDraft;
import org.varwright.comtrade.RecordWriter;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.Revision;
import org.varwright.network.Capacitances;
import org.varwright.network.UnitBranch;
import org.varwright.transients.Act;
import org.varwright.transients.Branch;
import org.varwright.transients.Emf;
import org.varwright.transients.Outcome;
import org.varwright.transients.Probe;
import org.varwright.transients.Setting;
import org.varwright.transients.SwitchedCircuit;
import org.varwright.transients.Transient;
import org.varwright.transients.Wave;

/**
 * The invented trip of the demo's stage 3, by our own simulation: one of four sections of B/u2 is shorted, its fuse operates 0.15 s into the record, and half a
 * second later the stage trips.
 *
 * <pre>
 *   (e)─R─L── bus ──[pole]─R─L── top ─┬─[fuse]─C─┬── star          stages 1, 2 and 3; stage 4 is off
 *                                     └─[fuse]─C─┘
 * </pre>
 */
final class DemoTrip {
    static final Path BANK = Path.of("../examples/demo/corbel-reach-3.bank.yaml");
    static final Path FILE = Path.of("../examples/demo/corbel-reach-3.trip.cff");
    static final double FUSE_SECONDS = 0.15;
    static final double PARTING_SECONDS = 0.69;
    private static final double SECONDS = 0.85;
    private static final double RATE = 1920.0;
    private static final double HERTZ = 59.98;
    private static final double LINE_VOLTS = 12_400.0;
    private static final String FAILED = "stage 3/B/u2";
    private static final int STAGES = 3;

    private final Bank bank;
    private final List<Branch> branches = new ArrayList<>();
    private final int[][] poles = new int[STAGES][3];
    private int fuse = -1;
    private int nodes = 4;
    private int star3;

    private DemoTrip(Bank bank) {
        this.bank = bank;
    }

    static Bank bank() throws Exception {
        return BankFile.read(BANK.toString(), Files.readAllBytes(BANK)).requireBank();
    }

    static Recording make() throws Exception {
        return new DemoTrip(bank()).run();
    }

    /** The bytes of the demo's file. */
    static byte[] file() throws Exception {
        return RecordWriter.write(make(), Revision.C2013, DataFormat.BINARY).combined();
    }

    private int add(Branch branch) {
        branches.add(branch);
        return branches.size() - 1;
    }

    private Recording run() {
        double volts = bank.system().nominalVolts();
        double z = volts * volts / bank.system().shortCircuitVoltAmperes().orElseThrow();
        double ratio = bank.system().xOverR().orElseThrow();
        double r = z / Math.hypot(1.0, ratio);
        double l = r * ratio / bank.system().angularFrequency();
        for (int p = 0; p < 3; p++) {
            add(Branch.source("source " + p, 1 + p, r, l, new Emf(LINE_VOLTS * Math.sqrt(2.0 / 3.0), -120.0 * p)));
        }
        for (int s = 0; s < STAGES; s++) {
            stage(s);
        }
        SwitchedCircuit circuit = new SwitchedCircuit(nodes, branches, 2.0 * Math.PI * HERTZ);
        List<Act> acts = new ArrayList<>(List.of(new Act.Open(fuse, FUSE_SECONDS)));
        List<Probe> probes = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            acts.add(new Act.Open(poles[2][p], PARTING_SECONDS));
            probes.add(Probe.nodeVolts("bus " + p, 1 + p));
        }
        for (int p = 0; p < 3; p++) {
            probes.add(Probe.amperes("pole " + p, poles[2][p]));
        }
        probes.add(Probe.nodeVolts("star", star3));
        Outcome outcome =
                Transient.run(Setting.discharged(circuit, List.of()), 35.0, acts, probes, SECONDS + 0.01, true);
        return record(outcome.wave().orElseThrow());
    }

    private void stage(int s) {
        Stage stage = bank.stages().get(s);
        Capacitances known = Capacitances.known(bank);
        double henries =
                stage.reactor().orElseThrow().henries() + stage.strayHenries().orElseThrow();
        double ohms = stage.reactor().orElseThrow().resistanceOhms().orElseThrow();
        int top = nodes;
        int star = nodes + 3;
        nodes += 4;
        star3 = star;
        for (int p = 0; p < 3; p++) {
            poles[s][p] = add(Branch.line(stage.name() + " pole " + p, 1 + p, top + p, ohms, henries));
        }
        for (UnitPosition at : stage.positions()) {
            int p = at.leg().charAt(0) - 'A';
            double farads = known.farads(UnitBranch.of(at));
            boolean failed = at.name().equals(FAILED);
            int behind = nodes++;
            int link = add(Branch.line(at.name() + " fuse", top + p, behind, 2e-3, 20e-6));
            add(Branch.capacitor(at.name(), behind, star, 1e-3, 20e-6, failed ? farads * 4.0 / 3.0 : farads));
            fuse = failed ? link : fuse;
        }
    }

    /** Samples of a probe, by straight lines between the simulation's steps. */
    private static double[] sampled(Wave wave, int probe, DoubleUnaryOperator noise) {
        int count = (int) Math.round(SECONDS * RATE);
        double[] out = new double[count];
        int k = 0;
        for (int i = 0; i < count; i++) {
            double t = i / RATE;
            while (k + 1 < wave.seconds().length - 1 && wave.seconds()[k + 1] < t) {
                k++;
            }
            double length = wave.seconds()[k + 1] - wave.seconds()[k];
            double part = length > 0.0 ? Math.max(0.0, Math.min(1.0, (t - wave.seconds()[k]) / length)) : 1.0;
            double[] v = wave.values()[probe];
            out[i] = v[k] + part * (v[k + 1] - v[k]) + noise.applyAsDouble(t);
        }
        return out;
    }

    private static Recording record(Wave wave) {
        Random random = new Random(20260503);
        Ratio volts = new Ratio(Ratio.Side.PRIMARY, 7200.0, 120.0);
        Ratio amperes = new Ratio(Ratio.Side.PRIMARY, 100.0, 5.0);
        RecordDraft draft = new RecordDraft(
                        "CORBEL REACH BK 3", "BAY 3 RELAY", 60.0, RATE, new Instant(2026, 5, 3, 4, 17, 22, 518_000_000))
                .triggered(FUSE_SECONDS + 0.004);
        for (int p = 0; p < 3; p++) {
            String phase = Role.PHASES.get(p);
            draft.analog("V" + phase, phase, "V", volts, sampled(wave, p, t -> 4.0 * random.nextGaussian()));
        }
        for (int p = 0; p < 3; p++) {
            String phase = Role.PHASES.get(p);
            draft.analog(
                    "I" + phase + " S3", phase, "A", amperes, sampled(wave, 3 + p, t -> 0.03 * random.nextGaussian()));
        }
        double[] neutral = sampled(wave, 6, t -> 0.6 * random.nextGaussian());
        double opened = PARTING_SECONDS + 0.25 / HERTZ;
        double[] secondary = new double[neutral.length];
        secondary[0] = neutral[0] * 120.0 / 7200.0;
        // the iron of a voltage transformer lets no mean stand
        double keeps = Math.exp(-1.0 / (RATE * 0.2));
        for (int i = 1; i < neutral.length; i++) {
            secondary[i] = keeps * (secondary[i - 1] + (neutral[i] - neutral[i - 1]) * 120.0 / 7200.0);
        }
        draft.analog("VN S3", "N", "V", new Ratio(Ratio.Side.SECONDARY, 7200.0, 120.0), secondary);
        int count = neutral.length;
        draft.status("ALARM S3", "", states(count, 0.0, SECONDS))
                .status("TRIP S3", "", states(count, FUSE_SECONDS + 0.5, SECONDS))
                .status("24-C CLOSED", "", states(count, 0.0, opened + 0.008));
        return draft.header("Invented: no such relay, bank or trip exists.").build();
    }

    private static boolean[] states(int count, double from, double to) {
        boolean[] states = new boolean[count];
        for (int i = 0; i < count; i++) {
            states[i] = i / RATE >= from && i / RATE < to;
        }
        return states;
    }
}
