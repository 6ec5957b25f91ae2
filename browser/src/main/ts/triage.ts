/** From a symptom to likely causes and first checks. */
import type { Located } from './tasks.js';

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
