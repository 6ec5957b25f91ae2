package org.varwright.triage;

import java.util.ArrayList;
import java.util.List;

/** Which causes a symptom may have, the likelier first: common practice. */
final class Catalogue {
    private final Scene scene;
    private final CapacitorCauses units;
    private final SwitchCauses switches;
    private final ControlCauses control;
    private final SupplyCauses supply;

    Catalogue(Scene scene) {
        this.scene = scene;
        units = new CapacitorCauses(scene);
        switches = new SwitchCauses(scene);
        control = new ControlCauses(scene);
        supply = new SupplyCauses(scene);
    }

    List<Cause> of(Symptom symptom) {
        return switch (symptom) {
            case UNBALANCE_ALARM -> unbalance(switches.poleOpen());
            case UNBALANCE_TRIP -> unbalance(units.flashover(), switches.poleOpen());
            case OVERCURRENT_TRIP -> List.of(units.shortedUnit(), units.flashover(), supply.inrush(), units.overload());
            case OVERVOLTAGE -> List.of(supply.high(), control.voltageTransformer(), supply.ferroresonance());
            case UNDERVOLTAGE -> List.of(supply.gone(), control.voltageTransformer());
            case LOSS_OF_VOLTAGE -> List.of(supply.gone(), control.voltageTransformer());
            case BLOWN_FUSE -> fuse(units.fuseItself(), supply.inrush());
            case FUSE_INDICATOR -> fuse(units.fuseItself(), units.indicatorOnly());
            case STAGE_WONT_CLOSE ->
                List.of(switches.blocked(), control.supplyLost(), control.selectorLeft(), switches.drive());
            case STAGE_WONT_OPEN -> List.of(switches.poleStuck(), switches.drive(), control.supplyLost());
            case LOW_POWER_FACTOR ->
                List.of(control.selectorLeft(), supply.stagesMissing(), supply.loadGrew(), control.controller());
            case HUNTING -> control.hunting();
            case HOT_UNIT -> List.of(units.failedUnit(), units.connection(), units.overload(), units.resistorOrAir());
            case BULGED_UNIT -> List.of(units.gas(), units.overload());
            case LEAKING_UNIT -> List.of(units.leak(), units.gas());
            case NOISE -> units.noises();
            case CONTROL_FUSE -> List.of(control.shortInControl(), control.supplyLost());
            case CONTROLLER_DARK -> List.of(control.supplyLost(), control.controller());
            case SELECTOR_IN_MANUAL -> List.of(control.selectorLeft(), control.controller());
            case SWITCH_FAULT -> List.of(switches.worn(), switches.drive(), switches.poleStuck());
            case CONTROL_TRANSFORMER -> List.of(control.supplyLost(), control.shortInControl());
            case VOLTAGE_TRANSFORMER_FUSE ->
                List.of(control.voltageTransformer(), supply.ferroresonance(), supply.gone());
            case RESTRIKE -> List.of(switches.restriking(), switches.worn());
        };
    }

    private List<Cause> unbalance(Cause... more) {
        List<Cause> all = new ArrayList<>();
        if (scene.hasUnitFuses()) {
            all.add(units.unitFuse());
        }
        all.add(units.failedUnit());
        all.addAll(List.of(more));
        all.add(control.sensor());
        all.add(control.inherent());
        return all;
    }

    private List<Cause> fuse(Cause... more) {
        List<Cause> all = new ArrayList<>();
        all.add(units.failedUnit());
        all.addAll(List.of(more));
        return all;
    }
}
