/** What the tasks about readings take and give. Numbers are SI. */
import type { Basis, Check } from './tasks.js';

export type UnitVerdict = 'healthy' | 'watch' | 'replace' | 'measure-again' | 'not-measured';

export interface UnitSurvey {
  readonly position: string;
  readonly serial: string | null;
  /** Rows of the table that it stands on. */
  readonly rows: readonly number[];
  readonly capacitanceFarads: number | null;
  readonly referenceFarads: number | null;
  readonly reference: string | null;
  readonly ratio: number | null;
  readonly verdict: UnitVerdict;
  readonly probability: number;
  readonly sectionsShorted: number;
  readonly elementsOut: number;
  readonly voltagePerHealthy: number;
  readonly voltagePerRated: number;
  readonly finding: string | null;
  readonly reason: string;
  readonly remarks: readonly string[];
  readonly basis: Basis;
}

/** Something that is wrong with a table, or that was assumed. */
export interface TableProblem {
  readonly place: string;
  readonly message: string;
}

export interface Survey {
  readonly units: readonly UnitSurvey[];
  readonly legs: readonly {
    readonly stage: string;
    readonly leg: string;
    readonly capacitanceFarads: number;
    readonly deviation: number;
    readonly units: number;
    readonly assumed: number;
  }[];
  readonly stages: readonly {
    readonly name: string;
    readonly ratedVars: number;
    readonly vars: number;
    readonly spread: number;
    readonly assumed: number;
  }[];
  readonly groups: readonly {
    readonly name: string;
    readonly row: number;
    readonly units: number;
    readonly capacitanceFarads: number;
    readonly referenceFarads: number;
    readonly verdict: UnitVerdict;
    readonly probability: number;
    readonly reason: string;
    readonly solved: boolean;
    readonly bounds: readonly { readonly position: string; readonly lowFarads: number; readonly highFarads: number | null }[];
    readonly next: readonly string[];
    readonly basis: Basis;
  }[];
  /** Reactors, contacts, currents. */
  readonly places: readonly {
    readonly name: string;
    readonly row: number;
    readonly what: string;
    readonly read: string;
    readonly verdict: UnitVerdict;
    readonly reason: string;
  }[];
  readonly trends: readonly { readonly position: string; readonly drifts: boolean; readonly sentence: string }[];
  readonly findings: readonly string[];
  /** Every value as it was written and as it was understood; null where it is none, such as OL. */
  readonly readings: readonly {
    readonly row: number;
    readonly at: string;
    readonly what: string;
    readonly terminals: string | null;
    readonly raw: string;
    readonly value: number | null;
  }[];
  readonly columns: readonly string[];
  readonly notices: readonly TableProblem[];
  readonly problems: readonly TableProblem[];
  readonly meterLimit: number;
  readonly meterLimits: Readonly<Record<string, number>>;
  readonly checks: readonly Check[];
}

export interface SurveyRequest {
  readonly bank: string;
  /** Text of a table of readings. */
  readonly readings: string;
  /** Limits of error of the meter, as a part of the reading. */
  readonly meterLimit: number;
  /** The same of single instruments, by their name in the readings. */
  readonly meterLimits?: Readonly<Record<string, number>>;
  /** Texts of tables of earlier visits, oldest first. */
  readonly earlier?: readonly string[];
}
