package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.CURRENT;
import static org.varwright.quantity.Dimension.INDUCTANCE;
import static org.varwright.quantity.Dimension.LENGTH;
import static org.varwright.quantity.Dimension.RESISTANCE;
import static org.varwright.quantity.Dimension.TIME;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargePath;
import org.varwright.bank.FuseType;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Protection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;
import org.varwright.quantity.Dimension;

/** Reads stages and protection. */
final class StageReader {
    private static final int MOST = 1000;

    private final Declared declared;
    private final List<Item<UnitType>> unitTypes;
    private final List<Item<FuseType>> fuseTypes;

    StageReader(Declared declared, List<Item<UnitType>> unitTypes, List<Item<FuseType>> fuseTypes) {
        this.declared = declared;
        this.unitTypes = unitTypes;
        this.fuseTypes = fuseTypes;
    }

    Optional<Stage> stage(Fields f) {
        String name = f.name("name");
        Optional<String> label = f.optionalText("label");
        Optional<String> note = f.optionalText("note");
        Connection connection = f.choice("connection", Words.CONNECTIONS);
        Optional<String> switchName = declared.hasIsolation()
                ? f.optionalReference("switch", "device", declared.devices())
                : f.optionalName("switch");
        LegLayout layout =
                new LegLayout(f.count("strings", 1, MOST, 1), f.count("groups", 1, MOST), f.count("units", 1, MOST));
        Optional<LegLayout> second = f.optionalChild("second", Section.SECOND).flatMap(s -> {
            LegLayout own = new LegLayout(
                    s.count("strings", 1, MOST, layout.strings()),
                    s.count("groups", 1, MOST, layout.groups()),
                    s.count("units", 1, MOST, layout.units()));
            return s.finish(() -> own);
        });
        if (second.isPresent() && !connection.isDoubleWye()) {
            f.error(Message.SECOND_WITHOUT_DOUBLE_WYE, "second", connection.code());
        }
        String type = f.reference("unit", "unit type", declared.unitTypes());
        Optional<String> fuseName = f.optionalReference("fuse", "fuse type", declared.fuseTypes());
        Optional<String> lineFuseName = f.optionalReference("line-fuse", "fuse type", declared.fuseTypes());
        Optional<Reactor> reactor = f.optionalChild("reactor", Section.REACTOR).flatMap(StageReader::reactor);
        OptionalDouble busMetres = f.optionalQuantity("bus-length", LENGTH, 1e-3, 1e5);
        OptionalDouble strayHenries = f.optionalQuantity("stray-inductance", INDUCTANCE, 1e-9, 1.0);
        Optional<DischargePath> path =
                f.optionalChild("discharge-path", Section.DISCHARGE_PATH).flatMap(StageReader::dischargePath);
        Optional<UnitType> unit = unitTypes.stream()
                .map(Item::value)
                .filter(t -> t.name().equals(type))
                .findFirst();
        Optional<FuseType> fuse = fuseName.flatMap(this::fuseType);
        Optional<FuseType> lineFuse = lineFuseName.flatMap(this::fuseType);
        return f.finish(() -> unit.map(u -> new Stage(
                        name,
                        connection,
                        switchName,
                        layout,
                        second.filter(s -> !s.equals(layout)),
                        u,
                        fuse,
                        lineFuse,
                        reactor,
                        busMetres,
                        strayHenries,
                        path,
                        label,
                        note)))
                .flatMap(s -> s);
    }

    private Optional<FuseType> fuseType(String name) {
        return fuseTypes.stream()
                .map(Item::value)
                .filter(t -> t.name().equals(name))
                .findFirst();
    }

    private static Optional<Reactor> reactor(Fields f) {
        double henries = f.quantity("inductance", INDUCTANCE, 1e-9, 100.0);
        Reactor.Position position = f.choice("position", Words.REACTOR_POSITIONS);
        Reactor.Purpose purpose =
                f.optionalChoice("purpose", Words.REACTOR_PURPOSES).orElse(Reactor.Purpose.INRUSH);
        OptionalDouble ohms = f.optionalQuantity("resistance", RESISTANCE, 1e-9, 1e4);
        OptionalDouble amperes = f.optionalQuantity("current", CURRENT, 1e-3, 1e5);
        OptionalDouble peak = f.optionalQuantity("peak-current", CURRENT, 1e-3, 1e7);
        return f.finish(() -> new Reactor(henries, position, purpose, ohms, amperes, peak));
    }

    private static Optional<DischargePath> dischargePath(Fields f) {
        DischargePath.Kind kind = f.choice("kind", Words.PATH_KINDS);
        DischargePath.Between between = f.choice("between", Words.PATH_PLACES);
        double ohms = f.quantity("resistance", RESISTANCE, 1e-3, 1e9);
        OptionalDouble henries = f.optionalQuantity("inductance", INDUCTANCE, 1e-6, 1e6);
        return f.finish(() -> new DischargePath(kind, between, ohms, henries));
    }

    Optional<Protection> protection(Fields f) {
        String stage = f.reference("stage", "stage", declared.stages());
        Protection.Senses senses = f.choice("senses", Words.SENSES);
        Optional<TransformerRatio> ratio = f.optionalRatio("ratio");
        Dimension dimension = senses.dimension();
        OptionalDouble alarm = f.optionalQuantity("alarm", dimension, 1e-6, 1e6);
        OptionalDouble trip = f.optionalQuantity("trip", dimension, 1e-6, 1e6);
        boolean primary = f.flag("primary");
        OptionalDouble delay = f.optionalQuantity("delay", TIME, 0.0, 86400.0);
        Optional<String> note = f.optionalText("note");
        if (!f.has("ratio") && !primary) {
            for (String setting : List.of("alarm", "trip")) {
                if (f.has(setting)) {
                    f.error(Message.SETTING_WITHOUT_RATIO, setting);
                }
            }
        }
        return f.finish(() -> new Protection(stage, senses, ratio, alarm, trip, primary, delay, note));
    }
}
