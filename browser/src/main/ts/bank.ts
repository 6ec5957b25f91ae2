/** A bank as records: names are those of the bank file, numbers SI. */
import type { Json } from './tasks.js';

export type DeviceKind = 'breaker' | 'disconnector' | 'load-break-switch' | 'grounding-switch' | 'stage-switch' | 'selector';

export interface Ratio {
  readonly primary: number;
  readonly secondary: number;
}

/** The words of the bank's standard; `key` chooses the screen's own texts. */
export interface Words {
  readonly key: 'ieee' | 'iec';
  readonly ground: string;
  readonly grounded: string;
  readonly grounding: string;
  readonly ungrounded: string;
  readonly wye: string;
  readonly stage: string;
  readonly disconnector: string;
  readonly groundingSwitch: string;
}

export interface UnitType {
  readonly name: string;
  readonly label: string | null;
  readonly note: string | null;
  readonly ratedVars: number;
  readonly ratedVolts: number;
  readonly ratedHertz: number;
  /** By the nameplate; of one leg where three-phase. */
  readonly capacitanceFarads: number;
  readonly lowestFarads: number;
  readonly highestFarads: number;
  readonly tolerance: { readonly low: number; readonly high: number };
  readonly phases: 1 | 3;
  readonly internal: 'delta' | 'wye-ungrounded' | null;
  readonly sections: number | null;
  readonly elements: number | null;
  readonly elementFuses: 'none' | 'internal' | null;
  readonly discharge: { readonly resistanceOhms: number } | { readonly toVolts: number; readonly withinSeconds: number } | null;
  readonly bushings: number | null;
  readonly bilVolts: number | null;
  readonly massKilograms: number | null;
}

export interface FuseType {
  readonly name: string;
  readonly note: string | null;
  readonly kind: 'expulsion' | 'current-limiting';
  readonly link: string | null;
  readonly ratedAmperes: number | null;
  readonly ratedVolts: number | null;
  readonly maximumParallelJoules: number | null;
  readonly interruptingAmperes: number | null;
  readonly meltingAmpereSquaredSeconds: number | null;
  readonly clearingAmpereSquaredSeconds: number | null;
}

/** A place that holds one unit, and what the bank file knows of the unit. */
export interface Position {
  readonly name: string;
  readonly unit: number;
  readonly serial: string | null;
  readonly capacitanceFarads: number | null;
  readonly made: number | null;
  readonly label: string | null;
  readonly note: string | null;
}

export interface Leg {
  /** Empty for three-phase units, which are not in one leg. */
  readonly name: string;
  readonly strings: number;
  readonly groupsInSeries: number;
  readonly unitsInParallel: number;
  readonly groups: readonly { readonly string: number; readonly group: number; readonly positions: readonly Position[] }[];
}

export interface Stage {
  readonly name: string;
  readonly label: string | null;
  readonly note: string | null;
  readonly connection: string;
  readonly connectionInWords: string;
  readonly switch: string | null;
  /** Name of the unit type. */
  readonly unit: string;
  readonly units: number;
  readonly ratedVars: number;
  readonly fuse: string | null;
  readonly lineFuse: string | null;
  readonly reactor: {
    readonly henries: number;
    readonly position: 'line' | 'neutral';
    readonly purpose: 'inrush' | 'detuning' | 'filter';
    readonly resistanceOhms: number | null;
    readonly ratedAmperes: number | null;
    readonly peakAmperes: number | null;
  } | null;
  readonly busMetres: number | null;
  readonly strayHenries: number | null;
  readonly dischargePath: Json;
  readonly threePhaseUnits: boolean;
  readonly legs: readonly Leg[];
}

export interface Sensor {
  readonly stage: string;
  readonly senses: 'neutral-voltage' | 'neutral-current' | 'neutral-differential' | 'bridge-current' | 'phase-voltage';
  readonly unit: 'V' | 'A';
  readonly ratio: Ratio | null;
  readonly alarm: number | null;
  readonly trip: number | null;
  /** Whether `alarm` and `trip` are primary values. */
  readonly primary: boolean;
  readonly delaySeconds: number | null;
  readonly note: string | null;
}

export interface Device {
  readonly name: string;
  readonly label: string | null;
  readonly note: string | null;
  readonly kind: DeviceKind;
  /** The two conductors that it joins; empty for a selector. */
  readonly between: readonly string[];
  readonly positions: readonly string[];
  readonly inService: string;
  /** In the start state, by the bank file. */
  readonly start: string;
  readonly type: string | null;
  readonly withdrawable: boolean;
  readonly remote: boolean;
  readonly indicates: string | null;
  readonly seenThrough: string | null;
  /** Compartments that expose a conductor which it joins. */
  readonly where: readonly string[];
}

export interface Compartment {
  readonly name: string;
  readonly label: string | null;
  readonly note: string | null;
  readonly exposes: readonly string[];
  readonly keys: readonly string[];
}

export interface Lock {
  readonly on: 'device' | 'door';
  readonly name: string;
  readonly keys: readonly string[];
  readonly holds: string;
  readonly note: string | null;
}

export interface Isolation {
  readonly conductors: readonly string[];
  readonly devices: readonly Device[];
  readonly compartments: readonly Compartment[];
  readonly locks: readonly Lock[];
  readonly keys: readonly { readonly name: string; readonly copies: number }[];
  readonly exchanges: readonly {
    readonly name: string;
    readonly label: string | null;
    readonly note: string | null;
    readonly in: readonly string[];
    readonly out: readonly string[];
  }[];
  readonly interlocks: readonly {
    readonly device: string;
    readonly to: string;
    readonly requires: Readonly<Record<string, readonly string[]>>;
    readonly note: string | null;
  }[];
  readonly delays: readonly Json[];
}

/** Something that could make a conductor live, to be crossed off. */
export interface Feed {
  readonly name: string;
  readonly kind: 'main' | 'second' | 'control' | 'voltage-transformer';
  /** Conductor, or the stage that a transformer serves; null where the bank file does not say. */
  readonly at: string | null;
  readonly volts: number | null;
  readonly note: string | null;
}

export interface Bank {
  readonly name: string;
  readonly label: string | null;
  readonly site: string | null;
  readonly note: string | null;
  readonly standard: 'IEEE' | 'IEC';
  readonly words: Words;
  readonly system: {
    readonly volts: number;
    readonly maximumVolts: number | null;
    readonly hertz: number;
    readonly shortCircuitVoltAmperes: number | null;
    readonly xOverR: number | null;
    readonly grounding: 'solid' | 'resistance' | 'reactance' | 'isolated' | 'resonant';
    readonly harmonics: readonly Json[];
  };
  readonly unitTypes: readonly UnitType[];
  readonly fuseTypes: readonly FuseType[];
  readonly switchTypes: readonly Json[];
  readonly stages: readonly Stage[];
  readonly protection: readonly Sensor[];
  readonly control: {
    readonly senses: 'power-factor' | 'voltage' | 'kvar' | 'time' | 'current' | null;
    readonly ratio: Ratio | null;
    readonly currentRatio: Ratio | null;
    readonly on: number | null;
    readonly off: number | null;
    readonly recloseDelaySeconds: number | null;
    readonly note: string | null;
    readonly selectors: readonly {
      readonly name: string;
      readonly label: string | null;
      readonly positions: readonly string[];
      readonly inService: string;
    }[];
  } | null;
  readonly load: Json;
  /** Null where the bank file has no such part: then no order of work can be planned. */
  readonly isolation: Isolation | null;
  readonly sources: readonly Feed[];
  readonly spares: readonly {
    readonly serial: string;
    readonly unit: string;
    readonly capacitanceFarads: number | null;
    readonly note: string | null;
  }[];
}
