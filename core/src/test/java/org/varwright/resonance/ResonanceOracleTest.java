package org.varwright.resonance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Harmonic;
import org.varwright.discharge.Ngspice;

/** Impedance seen from the bus and harmonic currents against ngspice, which sees all three phases and every unit. */
class ResonanceOracleTest {
    /** ngspice prints six or more digits; its matrix is solved in double precision. */
    private static final double TOLERANCE = 2e-5;

    /** A detuned wye, a filter with its reactor at the neutral, a bare delta and a double wye with reactors at its neutrals, with load. */
    private static final Bank MIXED = BankText.bank(BankText.system("13.8", "280", ", x-over-r: 11"), """
            unit-types:
              - {name: U, rating: 300 kvar, voltage: 8.32 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
              - {name: D, rating: 100 kvar, voltage: 13.8 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
              - {name: H, rating: 150 kvar, voltage: 4.16 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
            stages:
              - {name: detuned, connection: wye-ungrounded, groups: 1, units: 2, unit: U, reactor: {inductance: 18 mH, position: line, purpose: detuning, resistance: 0.11 Ω}}
              - {name: filter, connection: wye-grounded, groups: 2, units: 3, unit: H, reactor: {inductance: 14.2 mH, position: neutral, purpose: filter, resistance: 0.09 Ω}}
              - {name: delta, connection: delta, groups: 1, units: 2, unit: D}
              - {name: double, connection: double-wye-ungrounded, groups: 2, units: 2, second: {groups: 2, units: 3}, unit: H, reactor: {inductance: 0.9 mH, position: neutral, purpose: inrush, resistance: 20 mΩ}}
            load: {power: 6 MW, reactive: 4 Mvar}
            """);

    /** Three grounded and bridged stages without any reactor resistance or load. */
    private static final Bank BRIDGED = BankText.bank(
            "standard: IEC\nsystem: {voltage: 33 kV, frequency: 50 Hz, short-circuit: 900 MVA, x-over-r: 12, earthing: resistance}",
            """
            unit-types:
              - {name: N, rating: 400 kvar, voltage: 10.5 kV, frequency: 50 Hz, tolerance: [-5 %, +10 %]}
            stages:
              - {name: bridge, connection: bridge-ungrounded, groups: 1, units: 2, unit: N, reactor: {inductance: 0.5 mH, position: line, purpose: inrush, resistance: 25 mΩ}}
              - {name: strings, connection: wye-grounded, groups: 2, units: 1, strings: 3, unit: N}
            """);

    @Test
    void scanAgreesWithNgspice() throws Exception {
        scan(MIXED);
        scan(BRIDGED);
    }

    private static void scan(Bank bank) throws Exception {
        SourceImpedance source = SourceImpedance.of(bank.system()).orElseThrow();
        List<Double> orders = new ArrayList<>();
        for (int i = 0; i <= 120; i++) {
            orders.add(1.0 + 0.2 * i);
        }
        for (LoadCase load : LoadCase.of(bank)) {
            Ngspice.Measured measured = Ngspice.measure(new HarmonicDeck(bank, source).text(load, 0.0, 1.0, orders));
            BusModel bus = bus(bank, source, load);
            for (int i = 0; i < orders.size(); i++) {
                double ohms = bus.ohms(orders.get(i));
                assertEquals(
                        measured.get("v" + i), ohms, TOLERANCE * ohms + 1e-9, load.name() + ", order " + orders.get(i));
            }
        }
    }

    @Test
    void flowAgreesWithNgspice() throws Exception {
        SourceImpedance source = SourceImpedance.of(MIXED.system()).orElseThrow();
        double phase = MIXED.system().phaseVolts();
        List<Double> orders = List.of(5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0);
        LoadCase load = LoadCase.of(MIXED).getLast();
        flow(source, load, orders, 0.02 * phase, 0.0, harmonics(0.02, 0.0));
        flow(source, load, orders, 0.0, 25.0, harmonics(0.0, 25.0));
    }

    private static List<Harmonic> harmonics(double fraction, double amperes) {
        List<Harmonic> all = new ArrayList<>();
        for (int h = 5; h <= 11; h++) {
            all.add(new Harmonic(h, OptionalDouble.of(fraction), OptionalDouble.of(amperes)));
        }
        return all;
    }

    private static void flow(
            SourceImpedance source,
            LoadCase load,
            List<Double> orders,
            double background,
            double injected,
            List<Harmonic> harmonics)
            throws Exception {
        Ngspice.Measured measured =
                Ngspice.measure(new HarmonicDeck(MIXED, source).text(load, background, injected, orders));
        HarmonicFlow flow = HarmonicFlow.of(
                bus(MIXED, source, load), harmonics, MIXED.system().phaseVolts());
        for (int i = 0; i < orders.size(); i++) {
            HarmonicFlow.Order order = flow.orders().get(i);
            double volts = measured.get("v" + i);
            assertEquals(volts, order.busVolts(), TOLERANCE * volts, "bus, order " + order.order());
            for (int s = 0; s < order.stages().size(); s++) {
                double amperes = measured.get("i" + i + "_" + s);
                assertEquals(
                        amperes,
                        order.stages().get(s).amperes(),
                        TOLERANCE * amperes,
                        order.stages().get(s).stage() + ", order " + order.order());
            }
        }
    }

    private static BusModel bus(Bank bank, SourceImpedance source, LoadCase load) {
        return new BusModel(
                source,
                load,
                StageModel.of(bank),
                bank.system().angularFrequency(),
                SourceImpedance.ResistanceLaw.CONSTANT);
    }
}
