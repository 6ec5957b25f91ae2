/** What the task `fit` takes and gives. Numbers are SI. */
import type { SurveyRequest, TableProblem } from './survey.js';
import type { Basis, Check } from './tasks.js';

export interface Spare {
  readonly serial: string;
  /** Name of the unit type. */
  readonly unit: string;
  readonly capacitanceFarads: number | null;
  readonly note: string | null;
}

export interface SpareList {
  readonly spares: readonly Spare[];
  readonly columns: readonly string[];
  readonly notices: readonly TableProblem[];
  readonly problems: readonly TableProblem[];
}

export interface FitMove {
  readonly n: number;
  readonly serial: string;
  /** A position, or `spares`. */
  readonly from: string;
  /** A position, `out` for a condemned unit, or `set aside` for a good one. */
  readonly to: string;
  /** Whether it waits on the floor until its place is free. */
  readonly setDown: boolean;
  readonly why: string;
}

export interface Balance {
  readonly sensors: readonly {
    readonly name: string;
    readonly stage: string;
    readonly senses: string;
    readonly unit: string;
    readonly primary: number;
    readonly secondary: number | null;
    readonly angleDegrees: number;
    readonly alarmPrimary: number | null;
  }[];
  readonly legs: readonly {
    readonly stage: string;
    readonly leg: string;
    readonly capacitanceFarads: number;
    readonly deviation: number;
    readonly amperes: number;
  }[];
  readonly highestUnitVoltagePerRated: number;
  readonly highestUnit: string | null;
  readonly unsolved: readonly string[];
}

export interface RunOnOption {
  readonly title: string;
  readonly empty: readonly string[];
  readonly moves: readonly FitMove[];
  readonly varsLost: number;
  readonly limitsKept: boolean;
  readonly highestUnitVoltagePerRated: number;
  readonly signal: string;
  readonly signalPrimary: number;
  readonly settings: {
    readonly alarmPrimary: number | null;
    readonly tripPrimary: number | null;
    readonly alarmSecondary: number | null;
    readonly tripSecondary: number | null;
    readonly presentAlarmSuits: boolean;
    readonly unseen: readonly string[];
    readonly untripped: readonly string[];
  } | null;
}

export interface Fit {
  readonly outcome: 'complete' | 'limit-broken' | 'spares-missing';
  readonly moves: readonly FitMove[];
  readonly lifts: number;
  readonly before: Balance;
  readonly after: Balance;
  readonly unbalancePerUnit: number;
  readonly provenBest: boolean;
  readonly proof: string;
  readonly provisional: readonly string[];
  readonly plansExamined: number;
  readonly alternatives: readonly {
    readonly extraLifts: number;
    readonly moves: readonly FitMove[];
    readonly after: Balance;
    readonly unbalancePerUnit: number;
  }[];
  readonly rejected: readonly { readonly serial: string; readonly reason: string }[];
  readonly unused: readonly string[];
  readonly runOn: readonly {
    readonly stage: string;
    readonly missing: number;
    readonly recommended: number;
    readonly search: string;
    readonly options: readonly RunOnOption[];
  }[];
  readonly checks: readonly Check[];
  readonly basis: readonly Basis[];
  readonly notes: readonly string[];
}

export interface FitRequest extends SurveyRequest {
  /** Text of a table of spares. */
  readonly spares: string;
  /** Serials that stay where they are. */
  readonly keep?: readonly string[];
  /** Serials or positions to be exchanged, `A=B`. */
  readonly swap?: readonly string[];
  /** Spares that are not to be used. */
  readonly without?: readonly string[];
  readonly leastUnbalance?: boolean;
}
