/** A job and its order of work, as `core` tells them. */
import type { Basis } from "./tasks.js";

export type ConductorState = "live" | "charged" | "grounded" | "floating";

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
    | "move"
    | "look"
    | "hold"
    | "test"
    | "discharge"
    | "short"
    | "ground"
    | "unground"
    | "lock-on"
    | "lock-off"
    | "count"
    | "energize"
    | "confirm";
  readonly move: Move | null;
  readonly moves: readonly Move[];
  readonly text: string;
  readonly where: string;
  readonly seconds: number | null;
  readonly state: {
    readonly conductors: Readonly<Record<string, ConductorState>>;
    readonly lowVoltage: readonly string[];
  };
  readonly enforcedBy: "lock" | "rule";
  readonly why: string;
  readonly keys: readonly {
    readonly key: string;
    readonly from: string;
    readonly to: string;
  }[];
  readonly expected: string;
  readonly ifNot: string;
  readonly secondPerson: boolean;
  readonly holdPoint: boolean;
  readonly items: readonly string[];
  /** What must be written down with the confirmation. */
  readonly asks: "label" | "reading" | "count" | null;
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
  readonly responsibilities?: readonly {
    readonly property: string | null;
    readonly text: string;
  }[];
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
  readonly standing: "current" | "replaced" | "ended";
  readonly why: string | null;
  readonly phase: "way-in" | "work" | "way-back" | "in-service";
  readonly next: number | null;
  readonly confirmed: readonly Confirmed[];
  readonly work: OrderOfWork;
}

export interface JobState {
  readonly job: string;
  readonly title: string | null;
  /** When it was opened [ms]; null before. */
  readonly openedAt: number | null;
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
  readonly people: readonly {
    readonly person: string;
    readonly lock: string | null;
    readonly since: number;
  }[];
  readonly holds: readonly {
    readonly device: string;
    readonly order: string;
    readonly step: number;
    readonly from: number;
  }[];
  readonly readings: readonly Counted<{
    readonly position: string;
    readonly values: Readonly<Record<string, string>>;
  }>[];
  readonly readingTables: readonly Counted<{
    readonly file: string;
    readonly text: string;
  }>[];
  readonly spareTables: readonly Counted<{
    readonly file: string;
    readonly text: string;
  }>[];
  readonly readingsCsv: string | null;
  readonly unitMoves: readonly Counted<{
    readonly serial: string;
    readonly from: string;
    readonly to: string;
  }>[];
  readonly measured: readonly Counted<{
    readonly place: string;
    readonly value: string;
  }>[];
  readonly asLeft: readonly Counted<{
    readonly selector: string;
    readonly position: string;
  }>[];
  readonly notes: readonly Counted<{ readonly text: string }>[];
  readonly attachments: readonly Counted<{
    readonly name: string;
    readonly mediaType: string;
    readonly sha256: string;
    readonly bytes: number;
  }>[];
  readonly records: readonly Counted<{
    readonly name: string;
    readonly sha256: string;
    readonly findings: readonly string[];
  }>[];
  /** When the next visit is; none where none is agreed, several where devices disagree. */
  readonly nextVisits: readonly Counted<{
    readonly date: string;
    readonly for: string;
    readonly replaces: readonly string[];
  }>[];
  /** How far the meters may be off: by these every reading is judged. Parts of the reading. */
  readonly meterLimits: {
    /** Of every meter that is not stated by its name. */
    readonly limit: number;
    /** Of the others, by name in small letters. */
    readonly instruments: Readonly<Record<string, number>>;
    readonly words: string;
    /** What people stated and still stands; more than one of a meter where devices disagree. */
    readonly stated: readonly Counted<{
      readonly instrument?: string;
      readonly limit: string;
      readonly replaces: readonly string[];
    }>[];
  };
  readonly signatures: readonly Counted<{
    readonly role: string;
    readonly logHash: string;
  }>[];
  readonly conflicts: readonly {
    readonly about: string;
    readonly events: readonly string[];
  }[];
  readonly notCounted: readonly {
    readonly id: string;
    readonly type: string;
    readonly by: string;
    readonly reasons: readonly string[];
  }[];
  readonly withdrawn: readonly string[];
  readonly findings: readonly string[];
}
