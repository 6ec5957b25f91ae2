package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.network.Capacitances;
import org.varwright.network.LegModel;
import org.varwright.network.LegState;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;

/**
 * What failures do to a bank.
 *
 * @param bank the bank
 * @param supply the voltages that everything was worked out at
 * @param healthy what the sensors show with the units as they are and nothing failed: inherent unbalance
 * @param failures stage by stage, group by group
 * @param settings one study a sensor
 * @param checks values against limits
 * @param isTable whether it is the whole table; otherwise certain positions were asked for and there are no settings
 */
public record Unbalance(
        Bank bank,
        Supply supply,
        List<Solution.SensorValue> healthy,
        List<FailureRow> failures,
        List<SettingStudy> settings,
        List<Check> checks,
        boolean isTable) {
    public Unbalance {
        healthy = List.copyOf(healthy);
        failures = List.copyOf(failures);
        settings = List.copyOf(settings);
        checks = List.copyOf(checks);
    }

    /**
     * The whole failure table and the settings.
     *
     * @param bank as read
     * @param readings capacitance of units as measured [F]; else the bank file's value counts, else the nameplate's
     * @param supply the voltages at the bus
     * @param assumptions of what was not measured
     * @throws VarwrightException {@code NO_SOLUTION} where a healthy stage has none
     */
    public static Unbalance of(Bank bank, Map<UnitPosition, Double> readings, Supply supply, Assumptions assumptions) {
        Capacitances capacitances = Capacitances.known(bank).with(readings);
        List<Solution.SensorValue> healthy = new ArrayList<>();
        List<FailureRow> rows = new ArrayList<>();
        List<SettingStudy> settings = new ArrayList<>();
        List<Check> checks = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            FailureTable table = new FailureTable(bank, stage, capacitances, supply);
            List<FailureRow> own = table.rows();
            healthy.addAll(table.healthy().sensors());
            rows.addAll(own);
            firstFailure(stage, own, table.limit()).ifPresent(checks::add);
            for (Protection protection : bank.protection()) {
                if (protection.stage().equals(stage.name())) {
                    ErrorBudget error = budget(bank, stage, protection, readings, capacitances, supply, assumptions);
                    SettingStudy study =
                            new SettingsStudy(protection, own, mainKind(stage), error, table.phaseOpen()).study();
                    settings.add(study);
                    checks.addAll(study.checks());
                }
            }
        }
        return new Unbalance(bank, supply, healthy, rows, settings, checks, true);
    }

    /**
     * The effect of certain units being out together, one row a stage.
     *
     * @param out positions, one or more
     * @throws VarwrightException {@code NOTHING_OUT} where no position is given
     */
    public static Unbalance ofOut(
            Bank bank, Map<UnitPosition, Double> readings, Supply supply, List<UnitPosition> out) {
        if (out.isEmpty()) {
            throw new VarwrightException(Message.NOTHING_OUT, Place.NOWHERE, bank.positionHint());
        }
        Capacitances capacitances = Capacitances.known(bank).with(readings);
        List<Solution.SensorValue> healthy = new ArrayList<>();
        List<FailureRow> rows = new ArrayList<>();
        List<Check> checks = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            List<UnitPosition> own = new LinkedHashSet<>(out)
                    .stream().filter(p -> p.stage().equals(stage.name())).toList();
            if (own.isEmpty()) {
                continue;
            }
            FailureTable table = new FailureTable(bank, stage, capacitances, supply);
            FailureRow row = table.together(own);
            healthy.addAll(table.healthy().sensors());
            rows.add(row);
            row.effect()
                    .ifPresent(e -> checks.add(voltage(
                            stage.name() + ": highest voltage over rated with " + own.size() + " out",
                            e,
                            table.limit(),
                            row.verdict() == RunVerdict.TAKE_OUT ? Verdict.FAIL : Verdict.PASS)));
        }
        return new Unbalance(bank, supply, healthy, rows, List.of(), checks, false);
    }

    /** The failure that the protection of a stage is set for. */
    static String mainKind(Stage stage) {
        if (stage.unit().construction().filter(c -> c.internallyFused()).isPresent()) {
            return "elements-out";
        }
        boolean fuseless = stage.fuse().isEmpty()
                && stage.unit().construction().filter(c -> c.sections() > 1).isPresent();
        return fuseless ? "sections-shorted" : "unit-out";
    }

    private static Optional<Check> firstFailure(Stage stage, List<FailureRow> rows, VoltageLimit limit) {
        Optional<Effect> worst = Optional.empty();
        boolean legLost = false;
        for (FailureRow row : rows) {
            if (row.kind().equals(mainKind(stage))
                    && row.count() == 1
                    && row.effect().isPresent()) {
                Effect effect = row.effect().get();
                legLost |= effect.legLost();
                if (worst.isEmpty() || effect.highestPerRated() > worst.get().highestPerRated()) {
                    worst = Optional.of(effect);
                }
            }
        }
        boolean lost = legLost;
        return worst.map(e -> voltage(
                stage.name() + ": highest voltage over rated after the first failure (" + mainKind(stage)
                        + (lost ? "; a whole leg may then carry no current" : "") + ")",
                e,
                limit,
                limit.holds(e.highestPerRated()) && !lost ? Verdict.PASS : Verdict.WARN));
    }

    private static Check voltage(String subject, Effect effect, VoltageLimit limit, Verdict verdict) {
        return new Check(
                subject,
                effect.highestPerRated(),
                limit.multiple(),
                "",
                verdict,
                new Basis(
                        "UNB-1",
                        "highest of V_unit/V_rated and of V_section over its share, from the network",
                        List.of(
                                new Term("V_unit", "highest unit voltage over rated", effect.highestUnitPerRated(), ""),
                                new Term(
                                        "V_section",
                                        "highest section voltage over its share of rated",
                                        effect.highestSectionPerRated(),
                                        "")),
                        limit.source()));
    }

    /** What the sensor may show although nothing failed (UNB-3). */
    static ErrorBudget budget(
            Bank bank,
            Stage stage,
            Protection protection,
            Map<UnitPosition, Double> readings,
            Capacitances capacitances,
            Supply supply,
            Assumptions assumptions) {
        LegModel model = LegModel.of(bank, stage, supply);
        LegState even = model.evaluate(Capacitances.nameplate(bank));
        LegState asIs = model.evaluate(capacitances);
        boolean measured = stage.positions().stream()
                .allMatch(p -> readings.containsKey(p)
                        || bank.unitAt(p)
                                .filter(u -> u.capacitanceFarads().isPresent())
                                .isPresent());
        double inherent = largest(model, protection, asIs, Optional.empty());
        double ofSpread = 0.0;
        double[][] groups = model.groupFarads(Capacitances.nameplate(bank));
        for (int l = 0; l < groups.length; l++) {
            double[][] moved = groups.clone();
            moved[l] = groups[l].clone();
            for (int g = 0; g < moved[l].length; g++) {
                moved[l][g] *= 1.0 + assumptions.capacitanceSpread();
            }
            ofSpread = Math.max(ofSpread, largest(model, protection, model.evaluate(moved), Optional.of(even)));
        }
        double ofSystem = 0.0;
        List<Complex> volts = supply.phaseVolts();
        for (int p = 0; p < 3; p++) {
            Complex[] moved = volts.toArray(new Complex[0]);
            moved[p] = moved[p].times(1.0 + assumptions.systemUnbalance());
            LegModel uneven = LegModel.of(bank, stage, new Supply.Measured(moved[0], moved[1], moved[2]));
            LegModel plain = LegModel.of(bank, stage, new Supply.Measured(volts.get(0), volts.get(1), volts.get(2)));
            ofSystem = Math.max(
                    ofSystem,
                    largest(
                            model,
                            protection,
                            uneven.evaluate(capacitances),
                            Optional.of(plain.evaluate(capacitances))));
        }
        return ErrorBudget.of(
                inherent,
                ofSpread,
                ofSystem,
                measured,
                assumptions,
                protection.senses().unit());
    }

    private static double largest(LegModel model, Protection protection, LegState state, Optional<LegState> less) {
        double largest = 0.0;
        for (int s = 0; s < state.sensors().size(); s++) {
            if (model.sensorProtections().get(s).equals(protection)) {
                int at = s;
                Complex base = less.map(l -> l.sensors().get(at)).orElse(Complex.ZERO);
                largest = Math.max(largest, state.sensors().get(s).minus(base).magnitude());
            }
        }
        return largest;
    }
}
