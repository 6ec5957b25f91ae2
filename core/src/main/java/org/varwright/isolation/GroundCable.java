package org.varwright.isolation;

import java.util.List;
import java.util.Optional;
import org.varwright.bank.SupplySystem;

/**
 * A size of copper cable for portable grounds, with what it withstands.
 *
 * @param size AWG or kcmil
 * @param grade of ASTM F855; with an H where the source's X/R is above 1.8
 * @param amperes fault current that it withstands for {@code cycles} [A rms]; above X/R 1.8 the lower one of both grades
 * @param cycles within which the fault is cleared
 * @param xOverR highest ratio of the source for which that holds
 */
public record GroundCable(String size, String grade, double amperes, int cycles, double xOverR) {
    /** Where the withstand values come from. */
    public static final String TABLE = "ASTM F855";

    /** Where the smallest size comes from. */
    public static final String SMALLEST = "29 CFR 1910.269(n)(4): not below #2 AWG";

    private static final double LOW_RATIO = 1.8;
    private static final double HIGH_RATIO = 30.0;

    /**
     * Withstand of copper cable [kA]: 15 and 30 cycles at X/R up to 1.8, 15 cycles at X/R up to 30. Source: ASTM F855, grades 1 to 7 and 1H to 7H. 3/0 is
     * 34 kA; UFC 3-560-01 table 7-1 prints 36, a misprint. The ultimate values agree with Onderdonk's formula to 6 %.
     */
    private record Row(String size, int grade, double low15, double low30, double high15) {}

    private static final List<Row> ROWS = List.of(
            new Row("#2 AWG", 1, 14, 10, 15),
            new Row("1/0 AWG", 2, 21, 15, 25),
            new Row("2/0 AWG", 3, 27, 20, 31),
            new Row("3/0 AWG", 4, 34, 25, 39),
            new Row("4/0 AWG", 5, 43, 30, 47),
            new Row("250 kcmil", 6, 54, 39, 55),
            new Row("350 kcmil", 7, 74, 54, 68));

    /**
     * The smallest size that withstands a fault current; empty where none of the table does or the source's ratio is above its highest.
     *
     * @param amperes fault current [A rms], above 0
     * @param xOverR of the source; where nobody knows it, the table's highest
     * @param cycles 15 or 30: how fast the fault is surely cleared
     */
    public static Optional<GroundCable> smallest(double amperes, double xOverR, int cycles) {
        if (xOverR > HIGH_RATIO || cycles > 30 || (cycles > 15 && xOverR > LOW_RATIO)) {
            return Optional.empty();
        }
        return ROWS.stream()
                .map(row -> of(row, xOverR, cycles))
                .filter(cable -> cable.amperes() >= amperes)
                .findFirst();
    }

    /** The smallest size at the bank's bus for a fault cleared within 15 cycles; empty as above, or where the short-circuit level is not given. */
    public static Optional<GroundCable> smallest(SupplySystem system) {
        return system.shortCircuitVoltAmperes().isEmpty()
                ? Optional.empty()
                : smallest(faultAmperes(system), system.xOverR().orElse(HIGH_RATIO), 15);
    }

    /** Three-phase fault current at the bus [A rms]: {@code S/(√3·V)} (ISO-8); NaN where the short-circuit level is not given. */
    static double faultAmperes(SupplySystem system) {
        return system.shortCircuitVoltAmperes().orElse(Double.NaN) / (Math.sqrt(3.0) * system.nominalVolts());
    }

    private static GroundCable of(Row row, double xOverR, int cycles) {
        boolean low = xOverR <= LOW_RATIO;
        double kiloamperes;
        if (low) {
            kiloamperes = cycles <= 15 ? row.low15() : row.low30();
        } else {
            kiloamperes = Math.min(row.low15(), row.high15());
        }
        return new GroundCable(
                row.size(),
                row.grade() + (low ? "" : "H"),
                kiloamperes * 1e3,
                cycles <= 15 ? 15 : 30,
                low ? LOW_RATIO : HIGH_RATIO);
    }
}
