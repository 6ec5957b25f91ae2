package org.varwright.isolation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.SupplySystem;

/** Approach distances against 29 CFR 1910.269 table R-6 (up to 900 m), row by row: phase to ground, phase to phase [m]. */
class CautionsReferenceTest {
    private static Bank at(double volts) {
        Bank bank = Banks.tamarack();
        SupplySystem s = bank.system();
        return new Bank(
                bank.name(),
                bank.site(),
                bank.standard(),
                new SupplySystem(
                        volts,
                        OptionalDouble.empty(),
                        s.frequencyHertz(),
                        s.shortCircuitVoltAmperes(),
                        s.xOverR(),
                        s.grounding()),
                bank.unitTypes(),
                bank.fuseTypes(),
                bank.stages(),
                bank.protection(),
                bank.control(),
                bank.isolation(),
                bank.units(),
                bank.spares(),
                bank.label(),
                bank.note());
    }

    @Test
    void approachDistancesAreThoseOfTableR6() {
        double[][] rows = {
            {480, 0.33, 0.33},
            {4_160, 0.63, 0.63},
            {13_800, 0.65, 0.68},
            {15_000, 0.65, 0.68},
            {34_500, 0.77, 0.89},
            {46_000, 0.84, 0.98},
            {69_000, 1.00, 1.20}
        };
        for (double[] row : rows) {
            Cautions.Approach approach = Cautions.approach(at(row[0])).orElseThrow();
            assertEquals(row[1], approach.phaseToGroundMetres(), row[0] + " V");
            assertEquals(row[2], approach.phaseToPhaseMetres(), row[0] + " V");
        }
        assertEquals(Optional.empty(), Cautions.approach(at(138_000)));
        assertEquals(Optional.empty(), Cautions.approach(at(240)));
    }

    /** 40 CFR 761.2(a)(4): made before 2 July 1979 and content unknown is taken to hold PCB. */
    @Test
    void pcbIsNamedWhereAYearIsMissing() {
        assertTrue(Cautions.of(Banks.tamarack()).stream().anyMatch(c -> c.startsWith("PCB")));
        assertTrue(Cautions.of(Banks.demo("corbel-reach-3")).stream().noneMatch(c -> c.startsWith("PCB")));
    }
}
