/** The tasks of `core` and the members of their answers that the app relies on. Numbers are SI; names are those of the bank file. */

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
  readonly formula: string;
  readonly terms: Json;
  readonly source: Json;
}

/** A bank file's finding with its place. */
export interface Finding {
  readonly line: number;
  readonly column: number;
  readonly path: string;
  readonly message: string;
}

export type ConductorState = 'live' | 'charged' | 'grounded' | 'floating';

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
  readonly text: string;
  readonly where: string;
  readonly seconds: number | null;
  readonly state: { readonly conductors: Readonly<Record<string, ConductorState>>; readonly lowVoltage: readonly string[] };
  readonly enforcedBy: 'lock' | 'rule';
  readonly why: string;
  readonly expected: string;
  readonly ifNot: string;
  readonly secondPerson: boolean;
  readonly holdPoint: boolean;
  readonly items: readonly string[];
}

/** An order of work; `refused` and `undecided` are null where there is one. */
export interface OrderOfWork {
  readonly access: readonly string[];
  readonly refused: Json;
  readonly undecided: Json;
  readonly in: readonly Step[];
  readonly back: readonly Step[];
  readonly cautions: readonly string[];
}

export interface JobState {
  readonly job: string;
  readonly title: string | null;
  readonly bank: string | null;
  readonly stopped: string | null;
  readonly closed: string | null;
  readonly events: number;
  readonly hash: string;
  readonly order: {
    readonly id: string;
    readonly standing: 'current' | 'replaced' | 'ended';
    readonly why: string | null;
    readonly phase: 'way-in' | 'work' | 'way-back' | 'in-service';
    readonly next: number | null;
    readonly confirmed: readonly Json[];
    readonly work: OrderOfWork;
  } | null;
  readonly people: readonly { readonly person: string; readonly lock: string | null; readonly since: number }[];
  readonly conflicts: readonly { readonly about: string; readonly events: readonly string[] }[];
  readonly notCounted: readonly Json[];
  readonly findings: readonly string[];
}

interface OfBank {
  /** The text of the bank file. */
  readonly bank: string;
}

/** What each task takes. */
export interface Requests {
  check: OfBank;
  draw: OfBank;
  interlock: OfBank;
  isolate: OfBank & { readonly access: readonly string[] };
  discharge: OfBank;
  unbalance: OfBank;
  job: { readonly log: string };
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
  draw: { readonly svg: string };
  interlock: { readonly states: number; readonly moves: number; readonly complete: boolean; readonly properties: readonly Json[] };
  isolate: OrderOfWork;
  discharge: { readonly units: readonly Json[]; readonly checks: readonly Check[] };
  unbalance: Json;
  job: JobState;
  'job-propose': { readonly line: string; readonly hash: string; readonly job: JobState };
}

export type TaskName = keyof Requests & keyof Results;
