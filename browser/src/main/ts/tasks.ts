/** The tasks of `core` and the members of their answers that the app relies on. Numbers are SI; names are those of the bank file. */

import type { Energize } from './energize.js';
import type { Fit, FitRequest, SpareList } from './fit.js';
import type { DisturbanceRecord, RecordRequest } from './record.js';
import type { Survey, SurveyRequest } from './survey.js';

export type * from './energize.js';
export type * from './fit.js';
export type * from './record.js';
export type * from './survey.js';

export type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };

export interface Check {
  readonly subject: string;
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  readonly verdict: 'pass' | 'warn' | 'fail';
  readonly basis: Basis;
}

export interface Basis {
  readonly id: string;
  readonly formula: string;
  readonly terms: readonly { readonly symbol: string; readonly meaning: string; readonly value: number; readonly unit: string }[];
  readonly source: string;
}

/** A bank file's finding with its place. */
export interface Finding {
  readonly line: number;
  readonly column: number;
  readonly path: string;
  readonly message: string;
}

export type ConductorState = 'live' | 'charged' | 'grounded' | 'floating';

/** One move of the interlocking. */
export interface Move {
  readonly do: string;
  readonly what: string;
  readonly to?: string;
  readonly keys?: readonly string[];
}

export interface Step {
  readonly n: number;
  readonly kind:
    | 'move'
    | 'look'
    | 'hold'
    | 'test'
    | 'discharge'
    | 'short'
    | 'ground'
    | 'unground'
    | 'lock-on'
    | 'lock-off'
    | 'count'
    | 'energize'
    | 'confirm';
  readonly move: Move | null;
  readonly moves: readonly Move[];
  readonly text: string;
  readonly where: string;
  readonly seconds: number | null;
  readonly state: { readonly conductors: Readonly<Record<string, ConductorState>>; readonly lowVoltage: readonly string[] };
  readonly enforcedBy: 'lock' | 'rule';
  readonly why: string;
  readonly keys: readonly { readonly key: string; readonly from: string; readonly to: string }[];
  readonly expected: string;
  readonly ifNot: string;
  readonly secondPerson: boolean;
  readonly holdPoint: boolean;
  readonly items: readonly string[];
  /** What must be written down with the confirmation. */
  readonly asks: 'label' | 'reading' | 'count' | null;
  readonly challenge: { readonly say: string; readonly answer: string } | null;
  readonly basis: Basis | null;
}

export interface Refusal {
  readonly reason: string;
  readonly harm: string | null;
  readonly wayToHarm: readonly Move[];
}

export interface Fault {
  readonly fault: string;
  readonly kind: string;
  readonly what: string;
  readonly caughtAtStep: number | null;
  readonly how: string;
  readonly harms: string;
}

/** An order of work; `refused` and `undecided` are null where there is one. */
export interface OrderOfWork {
  readonly access: readonly string[];
  readonly refused: Refusal | null;
  readonly undecided: { readonly statesExplored: number } | null;
  readonly in: readonly Step[];
  readonly back: readonly Step[];
  readonly faults: readonly Fault[];
  readonly cautions: readonly string[];
  readonly responsibilities?: readonly { readonly property: string | null; readonly text: string }[];
}

/** A step as it was confirmed. */
export interface Confirmed {
  readonly step: number;
  readonly id: string;
  readonly by: string;
  readonly second: string | null;
  readonly reading: string | null;
  /** Wall clock of the device that confirmed it [ms]. */
  readonly at: number;
}

/** Something that counts, with who said it and when. */
export interface Counted<B> {
  readonly id: string;
  readonly by: string;
  readonly at: number;
  readonly body: B;
}

export interface JobOrder {
  readonly id: string;
  readonly standing: 'current' | 'replaced' | 'ended';
  readonly why: string | null;
  readonly phase: 'way-in' | 'work' | 'way-back' | 'in-service';
  readonly next: number | null;
  readonly confirmed: readonly Confirmed[];
  readonly work: OrderOfWork;
}

export interface JobState {
  readonly job: string;
  readonly title: string | null;
  readonly number: string | null;
  readonly reason: string | null;
  readonly alarm: string | null;
  readonly bank: string | null;
  /** The bank file of this job; empty before it is opened. */
  readonly bankText: string;
  readonly stopped: string | null;
  readonly closed: string | null;
  readonly events: number;
  readonly hash: string;
  readonly order: JobOrder | null;
  readonly orders: readonly {
    readonly id: string;
    readonly standing: string;
    readonly why: string | null;
    readonly access: readonly string[];
    readonly stepsConfirmed: number;
  }[];
  readonly people: readonly { readonly person: string; readonly lock: string | null; readonly since: number }[];
  readonly holds: readonly { readonly device: string; readonly order: string; readonly step: number; readonly from: number }[];
  readonly readings: readonly Counted<{ readonly position: string; readonly values: Readonly<Record<string, string>> }>[];
  readonly readingTables: readonly Counted<{ readonly file: string; readonly text: string }>[];
  readonly spareTables: readonly Counted<{ readonly file: string; readonly text: string }>[];
  readonly readingsCsv: string | null;
  readonly unitMoves: readonly Counted<{ readonly serial: string; readonly from: string; readonly to: string }>[];
  readonly measured: readonly Counted<{ readonly place: string; readonly value: string }>[];
  readonly asLeft: readonly Counted<{ readonly selector: string; readonly position: string }>[];
  readonly notes: readonly Counted<{ readonly text: string }>[];
  readonly attachments: readonly Counted<{ readonly name: string; readonly mediaType: string; readonly sha256: string; readonly bytes: number }>[];
  readonly records: readonly Counted<{ readonly name: string; readonly sha256: string; readonly findings: readonly string[] }>[];
  readonly signatures: readonly Counted<{ readonly role: string; readonly logHash: string }>[];
  readonly conflicts: readonly { readonly about: string; readonly events: readonly string[] }[];
  readonly notCounted: readonly { readonly id: string; readonly type: string; readonly by: string; readonly reasons: readonly string[] }[];
  readonly withdrawn: readonly string[];
  readonly findings: readonly string[];
}

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

/** What the checks of a bank have in common. */
export interface Study {
  readonly checks: readonly Check[];
  readonly cautions?: readonly string[];
  /** What can't be answered, and what is missing for it. */
  readonly unanswered?: readonly Json[];
  readonly notAnswered?: readonly Json[];
  readonly missing?: readonly Json[];
  readonly notes?: readonly string[];
}

/** What the interlocking enforces. */
export interface Proofs {
  readonly states: number;
  readonly moves: number;
  readonly complete: boolean;
  readonly properties: readonly {
    readonly id: string;
    readonly claim: string;
    readonly enforced: boolean;
    readonly outcome: 'enforced' | 'not-enforced' | 'undecided';
    readonly counterexample: readonly (Move & { readonly text: string })[] | null;
    readonly rule: string | null;
  }[];
}

/** Failures that would explain a reading, likeliest first. */
export interface Located {
  readonly sensor: string;
  /** False where no failure comes near the reading: undecided. */
  readonly explained: boolean;
  readonly candidates: readonly {
    readonly failures: readonly { readonly group: string; readonly kind: string; readonly count: number }[];
    readonly words: string;
    readonly probability: number;
    readonly sensor: { readonly magnitude: number; readonly primary: number; readonly angleDegrees: number };
  }[];
  readonly nextMeasurements: readonly string[];
  readonly notes: readonly string[];
  readonly basis: Basis;
}

export type Page = 'landscape' | 'portrait' | 'a3';

/** What a conductor is joined to, and through what. */
export interface Connections {
  readonly conductor: string;
  readonly paths: readonly {
    readonly to: 'source' | 'low-voltage-source' | 'stage' | 'ground';
    readonly name: string;
    /** Whether the position of every device on it is known. */
    readonly certain: boolean;
    readonly hops: readonly { readonly device: string; readonly known: boolean; readonly to: string }[];
  }[];
  readonly gaps: readonly { readonly device: string; readonly position: string; readonly beyond: string }[];
  readonly text: readonly string[];
}

export type Symptom =
  | 'unbalance-alarm'
  | 'unbalance-trip'
  | 'overcurrent-trip'
  | 'overvoltage'
  | 'undervoltage'
  | 'loss-of-voltage'
  | 'blown-fuse'
  | 'fuse-indicator'
  | 'wont-close'
  | 'wont-open'
  | 'low-power-factor'
  | 'switching-too-often'
  | 'hot-unit'
  | 'bulged-unit'
  | 'leaking-unit'
  | 'noise'
  | 'control-fuse'
  | 'controller-dark'
  | 'selector-in-manual'
  | 'switch-fault'
  | 'control-transformer'
  | 'voltage-transformer-fuse'
  | 'restrike';

/** Something that the bank file names. */
export interface Thing {
  readonly kind: 'stage' | 'device' | 'compartment' | 'sensor' | 'source' | 'unit-type' | 'fuse-type' | 'spare' | 'key';
  readonly name: string;
}

/** A sentence and where it comes from. */
export interface Statement {
  readonly text: string;
  readonly source: string;
}

export interface Inspection {
  readonly text: string;
  /** `inside` only by an order of work, to `compartments`. */
  readonly from: 'desk' | 'outside' | 'inside';
  readonly things: readonly Thing[];
  readonly compartments: readonly string[];
  readonly source: string;
}

export interface Triage {
  readonly symptom: Symptom;
  readonly words: string;
  readonly stages: readonly string[];
  /** The likelier first. */
  readonly causes: readonly {
    readonly id: string;
    readonly text: string;
    readonly rank: 'likely' | 'possible' | 'rare';
    readonly for: readonly Statement[];
    readonly against: readonly Statement[];
    readonly checks: readonly Inspection[];
  }[];
  /** From the desk, then from outside, then what needs an order of work. */
  readonly firstChecks: readonly Inspection[];
  readonly runOn: {
    readonly answer: 'yes-with' | 'no' | 'undecided';
    readonly text: string;
    readonly conditions: readonly string[];
    readonly basis: readonly Statement[];
  };
  readonly bring: readonly { readonly text: string; readonly things: readonly Thing[] }[];
  /** Compartments to suggest for the order of work. */
  readonly access: readonly string[];
  readonly fetch: readonly string[];
  readonly located: Located | null;
  readonly unknown: readonly string[];
}

interface OfBank {
  /** The text of the bank file. */
  readonly bank: string;
}

/** What each task takes. */
export interface Requests {
  check: OfBank;
  bank: OfBank;
  draw: OfBank & { readonly page?: Page };
  interlock: OfBank & { readonly memoryBytes: number };
  isolate: OfBank & { readonly access: readonly string[] };
  discharge: OfBank;
  unbalance: OfBank;
  inrush: OfBank;
  duty: OfBank;
  resonance: OfBank;
  fuses: OfBank;
  locate: OfBank & {
    /** As the relay shows it, such as `1.9 V`. */
    readonly reading: string;
    readonly primary?: boolean;
    readonly degrees?: number;
    /** Of the reading, as a part of it. */
    readonly uncertainty: number;
    /** What the relay showed while all was well. */
    readonly healthy?: string;
    /** Bus voltage, line to line [V]. */
    readonly bus: number;
  };
  triage: OfBank & {
    readonly symptom: Symptom;
    readonly stage?: string;
    /** As the relay shows it, with the sensor's name where the bank has several: `stage 3 neutral-voltage=5.6 V`. */
    readonly reading?: string;
    readonly primary?: boolean;
    readonly degrees?: number;
    readonly uncertainty?: number;
    readonly healthy?: string;
    /** Bus voltage, line to line [V]. */
    readonly bus?: number;
  };
  symptoms: Record<string, never>;
  survey: SurveyRequest;
  spares: OfBank & { readonly tables?: readonly string[] };
  fit: FitRequest;
  energize: OfBank & {
    readonly busVolts: number;
    readonly measured: readonly string[];
    /** Table of the units as they read now; then `meterLimit` is needed too. */
    readonly readings?: string;
    readonly meterLimit?: number;
  };
  record: RecordRequest;
  job: { readonly log: string };
  'job-draw': { readonly log: string; readonly page?: Page };
  /** Of a job as confirmed steps leave it, or of a bank as its file says that it starts. */
  why: ({ readonly log: string } | OfBank) & { readonly conductor: string };
  'job-propose': {
    readonly job: string;
    readonly log: string;
    readonly device: string;
    readonly by: string;
    /** What the device's clock shows [ms since 1970-01-01T00:00Z]. */
    readonly now: number;
    readonly type: string;
    readonly body: { readonly [name: string]: Json };
  };
}

/** What each task gives. */
export interface Results {
  check: { readonly ok: boolean; readonly errors: readonly Finding[]; readonly warnings: readonly Finding[]; readonly summary: Json };
  bank: Bank;
  draw: { readonly svg: string };
  interlock: Proofs;
  isolate: OrderOfWork;
  discharge: Study;
  unbalance: Study;
  inrush: Study;
  duty: Study;
  resonance: Study;
  fuses: Study;
  locate: Located;
  triage: Triage;
  symptoms: readonly { readonly code: Symptom; readonly words: string }[];
  survey: Survey;
  spares: SpareList;
  fit: Fit;
  energize: Energize;
  record: DisturbanceRecord;
  job: JobState;
  'job-draw': { readonly state: string; readonly svg: string };
  why: Connections;
  'job-propose': { readonly line: string; readonly hash: string; readonly job: JobState };
}

export type TaskName = keyof Requests & keyof Results;
