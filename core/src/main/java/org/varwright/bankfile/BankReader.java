package org.varwright.bankfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Control;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.FuseType;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.Load;
import org.varwright.bank.Protection;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SwitchType;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;

/** A document tree into a bank. */
final class BankReader {
    static final String FORMAT = "varwright/1";
    private static final int MOST_UNITS = 20000;

    private BankReader() {}

    static Optional<Bank> read(Tree root, Findings findings) {
        return Fields.of(root, Section.BANK, "", findings)
                .flatMap(fields -> read(fields, Declared.in((Tree.Mapping) root), findings));
    }

    private static Optional<Bank> read(Fields f, Declared declared, Findings findings) {
        String format = f.word("format");
        if (!format.isEmpty() && !format.equals(FORMAT)) {
            f.error(Message.NOT_A_CHOICE, "format", Shown.of(format), "", FORMAT);
        }
        String name = f.name("name");
        Optional<String> label = f.optionalText("label");
        Optional<String> site = f.optionalText("site");
        Optional<String> note = f.optionalText("note");
        Standard standard = f.choice("standard", Words.STANDARDS);
        Optional<SupplySystem> system = f.child("system", Section.SYSTEM).flatMap(SupplyReader::system);
        List<Item<UnitType>> unitTypes = f.eachRequired("unit-types", Section.UNIT_TYPE, TypeReader::unitType);
        List<Item<FuseType>> fuseTypes = f.each("fuse-types", Section.FUSE_TYPE, TypeReader::fuseType);
        List<Item<SwitchType>> switchTypes = f.each("switch-types", Section.SWITCH_TYPE, TypeReader::switchType);
        StageReader stageReader = new StageReader(declared, unitTypes, fuseTypes);
        List<Item<Stage>> stages = f.eachRequired("stages", Section.STAGE, stageReader::stage);
        List<Item<Protection>> protection = f.each("protection", Section.PROTECTION, stageReader::protection);
        Optional<Control> control = f.optionalChild("control", Section.CONTROL).flatMap(SupplyReader::control);
        Optional<Load> load = f.optionalChild("load", Section.LOAD).flatMap(SupplyReader::load);
        Optional<Draft.IsolationDraft> isolation = f.optionalChild("isolation", Section.ISOLATION)
                .flatMap(new IsolationReader(declared, switchTypes)::read);
        List<Item<Draft.UnitNote>> units = f.each("positions", Section.POSITION, TypeReader::position);
        List<Item<Spare>> spares = f.each("spares", Section.SPARE, s -> TypeReader.spare(s, declared, unitTypes));
        Draft draft = new Draft(
                declared,
                standard,
                system,
                unitTypes,
                fuseTypes,
                switchTypes,
                stages,
                protection,
                control,
                load,
                isolation,
                units,
                spares);
        long count = stages.stream().mapToLong(s -> units(s.value())).sum();
        if (count > MOST_UNITS) {
            f.error(Message.TOO_MANY_UNITS, "stages", String.valueOf(MOST_UNITS));
            f.finish(() -> draft);
            return Optional.empty();
        }
        List<KnownUnit> known = PositionCheck.check(draft, findings);
        uniqueNames(draft, findings);
        ElectricalCheck.check(draft, findings);
        WiringCheck.check(draft, findings);
        ProtectionCheck.check(draft, findings);
        IsolationCheck.check(draft, findings);
        CompletenessCheck.check(draft, findings);
        return f.finish(() -> new Bank(
                name,
                site,
                standard,
                system.orElseThrow(),
                values(unitTypes),
                values(fuseTypes),
                values(switchTypes),
                values(stages),
                values(protection),
                control,
                load,
                isolation.map(BankReader::isolation),
                known,
                values(spares),
                label,
                note));
    }

    private static void uniqueNames(Draft draft, Findings findings) {
        Names.unique(draft.unitTypes(), "name", "unit type", UnitType::name, findings);
        Names.unique(draft.fuseTypes(), "name", "fuse type", FuseType::name, findings);
        Names.unique(draft.switchTypes(), "name", "switch type", SwitchType::name, findings);
        Names.unique(draft.stages(), "name", "stage", Stage::name, findings);
        draft.isolation().ifPresent(i -> {
            Names.unique(i.sources(), "name", "source", EnergySource::name, findings);
            Names.unique(i.devices(), "name", "device", Device::name, findings);
            Names.unique(i.compartments(), "name", "compartment", Compartment::name, findings);
            Names.unique(i.keys(), "name", "key", KeyCopies::name, findings);
            Names.unique(i.exchanges(), "name", "exchange", KeyExchange::name, findings);
        });
    }

    private static long units(Stage stage) {
        return stage.legs().stream()
                .map(stage::layoutOf)
                .mapToLong(l -> (long) l.strings() * l.groups() * l.units())
                .sum();
    }

    private static Isolation isolation(Draft.IsolationDraft draft) {
        return new Isolation(
                values(draft.sources()),
                values(draft.devices()),
                values(draft.compartments()),
                values(draft.locks()),
                values(draft.keys()),
                values(draft.exchanges()),
                values(draft.interlocks()),
                values(draft.delays()),
                draft.start());
    }

    private static <T> List<T> values(List<Item<T>> items) {
        List<T> values = new ArrayList<>();
        items.forEach(item -> values.add(item.value()));
        return values;
    }
}
