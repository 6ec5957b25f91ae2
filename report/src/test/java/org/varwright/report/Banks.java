package org.varwright.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Construction;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.FuseType;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitType;
import org.varwright.jobsheet.JobSheet;

/** An invented bank of two stages, with names that try to be markup. */
final class Banks {
    static final String HOSTILE_NAME = "Larch <b onclick=\"x()\">Ford</b> & Sons</td></tr>";
    static final String HOSTILE_SITE = "<script src='http://127.0.0.1/x.js'></script>";

    private Banks() {}

    static Bank of(Standard standard) {
        UnitType unit = new UnitType(
                "U<300>",
                300e3,
                7960.0,
                60.0,
                new Tolerance(-0.05, 0.10),
                Optional.of(new Construction(4, 12, false)),
                Optional.of(new DischargeDevice.Rated(50.0, 300.0)),
                OptionalInt.of(2),
                OptionalDouble.of(95e3),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        FuseType fuse = new FuseType(
                "F65",
                FuseType.Kind.EXPULSION,
                Optional.of("65T"),
                OptionalDouble.of(65.0),
                OptionalDouble.of(8300.0),
                OptionalDouble.empty(),
                Optional.empty());
        return new Bank(
                HOSTILE_NAME,
                Optional.of(HOSTILE_SITE),
                standard,
                new SupplySystem(
                        13800.0,
                        OptionalDouble.of(14500.0),
                        60.0,
                        OptionalDouble.of(280e6),
                        OptionalDouble.empty(),
                        SystemGrounding.SOLID),
                List.of(unit),
                List.of(fuse),
                List.of(stage("stage 1", 1, unit, fuse), stage("stage 2", 2, unit, fuse)),
                List.of(new Protection(
                        "stage 2",
                        Protection.Senses.NEUTRAL_VOLTAGE,
                        Optional.of(new TransformerRatio(8400.0, 120.0)),
                        OptionalDouble.of(6.0),
                        OptionalDouble.of(15.0),
                        false,
                        OptionalDouble.of(0.5),
                        Optional.empty())),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    private static Stage stage(String name, int units, UnitType unit, FuseType fuse) {
        return new Stage(
                name,
                Connection.WYE_UNGROUNDED,
                Optional.empty(),
                new LegLayout(1, 1, units),
                Optional.empty(),
                unit,
                Optional.of(fuse),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    static JobSheet job() {
        return new JobSheet(
                "larch.bank.yaml",
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                OptionalDouble.empty(),
                Map.of(),
                Optional.of("J-17"),
                Optional.of("neutral voltage alarm, stage 2, 8.1 V"),
                Optional.of("alarm & <i>visit</i>"),
                Optional.of("2026-05-04"),
                List.of(
                        new JobSheet.Person("Ida <Quill>", Optional.of("in charge")),
                        new JobSheet.Person("Bo \u00c1vila", Optional.empty())),
                Optional.empty(),
                Map.of());
    }

    static ReportInput input(Standard standard) {
        return ReportInput.of(
                of(standard),
                job(),
                LocalDate.of(2026, 5, 4),
                List.of(InputFile.of("bank file", "larch.bank.yaml", new byte[] {1, 2, 3})));
    }
}
