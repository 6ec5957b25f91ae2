package org.varwright.isolation;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;

/** What each phase of a stage draws by the nameplates. */
final class NominalCurrent {
    private NominalCurrent() {}

    /**
     * Line current of a stage by its nameplates and the system's nominal voltage, with its basis.
     *
     * <p><b>Model.</b> {@code I = V/X} with {@code X = 1/(ωC)}: wye and bridge {@code I = ωC·V_LL/√3}, double wye the sum of its two wyes, delta
     * {@code I = √3·ωC·V_LL} (ISO-5).
     * <p><b>Not modelled.</b> Measured capacitances, reactors, units that are out, unbalance of the bus.
     * <p><b>Accuracy.</b> That of the nameplates: up to their tolerance.
     * <p><b>Source.</b> First principles.
     *
     * @return a basis whose last term is the current [A]
     */
    static Basis of(Bank bank, Stage stage) {
        double omega = bank.system().angularFrequency();
        double volts = bank.system().nominalVolts();
        boolean delta = stage.isDelta();
        double farads = legFarads(stage, stage.layout());
        if (stage.connection().isDoubleWye()) {
            farads += legFarads(stage, stage.second().orElse(stage.layout()));
        }
        double amperes = delta ? Math.sqrt(3.0) * omega * farads * volts : omega * farads * volts / Math.sqrt(3.0);
        return new Basis(
                "ISO-5",
                delta ? "I = √3·ω·C·V" : "I = ω·C·V/√3",
                List.of(
                        new Term("C", "capacitance of a phase by the nameplates", farads, "F"),
                        new Term("ω", "angular frequency", omega, "rad/s"),
                        new Term("V", "nominal voltage, line to line", volts, "V"),
                        new Term("I", "current of a phase", amperes, "A")),
                Source.FIRST_PRINCIPLES);
    }

    static double amperes(Basis basis) {
        return basis.terms().getLast().value();
    }

    /** A bridge's phase is two quarters over two, which is one quarter. */
    private static double legFarads(Stage stage, LegLayout layout) {
        return stage.unit().capacitanceFarads() * layout.units() * layout.strings() / layout.groups();
    }
}
