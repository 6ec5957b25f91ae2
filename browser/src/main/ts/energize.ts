/** What the task `energize` takes and gives. Numbers are SI. */
import type { Basis, Check } from "./tasks.js";

export interface Band {
  readonly expected: number;
  readonly low: number;
  readonly high: number;
}

export interface Energize {
  readonly bus: {
    readonly ab: number;
    readonly bc: number;
    readonly ca: number;
    readonly mean: number;
  };
  /** Where the capacitance that each unit counts with comes from. */
  readonly units: readonly {
    readonly position: string;
    readonly from: "reading" | "bank file" | "nameplate";
  }[];
  readonly legs: readonly {
    readonly leg: string;
    /** Whether it is the current of a line rather than of one leg of several. */
    readonly line: boolean;
    readonly expectedAmperes: number;
    readonly low: number;
    readonly high: number;
    readonly ratedAmperes: number;
    readonly basis: Basis;
  }[];
  readonly sensors: readonly {
    readonly name: string;
    readonly unit: string;
    readonly primary: Band;
    readonly secondary: Band | null;
    readonly angleDegrees: number;
    readonly basis: Basis;
  }[];
  readonly comparison: readonly {
    readonly leg: string;
    readonly measured: number;
    readonly expected: number;
    readonly low: number;
    readonly high: number;
    readonly unit: string;
    readonly verdict: "pass" | "warn" | "fail";
    readonly words: string;
  }[];
  readonly explanations: readonly {
    readonly stage: string;
    readonly sentence: string;
    readonly basis: Basis | null;
  }[];
  readonly checks: readonly Check[];
  readonly after15Minutes: readonly string[];
  readonly after8Hours: readonly string[];
  readonly cautions: readonly string[];
}
