/** The tasks of `core` and the members of their answers that the app relies on. Numbers are SI; names are those of the bank file. */

import type { Move, OrderOfWork, JobState } from './job.js';
import type { Bank } from './bank.js';
import type { Symptom, Triage } from './triage.js';
import type { Energize } from './energize.js';
import type { Fit, FitRequest, SpareList } from './fit.js';
import type { DisturbanceRecord, RecordRequest } from './record.js';
import type { Survey, SurveyRequest } from './survey.js';

export type * from './job.js';
export type * from './bank.js';
export type * from './triage.js';
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
    readonly meterLimits?: Readonly<Record<string, number>>;
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
