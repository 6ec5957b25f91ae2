/** What the task `record` takes and gives. Numbers are SI. */
import type { Basis } from './tasks.js';

export interface AnalogChannel {
  readonly number: number;
  readonly name: string;
  readonly phase: string;
  readonly unit: string;
  readonly side: 'primary' | 'secondary' | 'unknown';
  readonly missing: number;
  readonly min: number;
  readonly max: number;
  readonly rms: number;
}

export interface StatusChannel {
  readonly number: number;
  readonly name: string;
  /** State at the first sample. */
  readonly first: 0 | 1;
  readonly changes: number;
  readonly firstChanges: readonly { readonly seconds: number; readonly to: 0 | 1 }[];
}

export interface RecordFinding {
  readonly kind: string;
  readonly weight: 'note' | 'look' | 'failed';
  /** From the first sample. */
  readonly seconds: number;
  readonly where: string;
  readonly text: string;
  readonly evidence: readonly {
    readonly channel: string;
    readonly seconds: number;
    readonly value: number;
    readonly unit: string;
    readonly what: string;
  }[];
  readonly basis: Basis;
}

/** One channel over the stretch that was asked for, no peak lost; null where a sample is missing. */
export interface Wave {
  readonly number: number;
  readonly name: string;
  readonly unit: string;
  /** Whether its values are those of the primary side. */
  readonly primary: boolean;
  readonly seconds: readonly number[];
  readonly values: readonly (number | null)[];
}

export interface ChannelPhasor {
  readonly number: number;
  readonly name: string;
  readonly unit: string;
  readonly primary: boolean;
  readonly rms: number;
  readonly peak: number;
  /** Rms of the fundamental. */
  readonly fundamental: number;
  readonly degrees: number;
  readonly distortion: number;
  readonly harmonics: readonly { readonly order: number; readonly rms: number }[];
}

export interface PolarNumber {
  readonly magnitude: number;
  readonly degrees: number;
}

/** The cycle around a moment; `hertz` is null where there is none. */
export interface AtMoment {
  readonly seconds: number;
  readonly hertz: number | null;
  /** Channel that the angles are counted from. */
  readonly reference?: string | null;
  readonly channels: readonly ChannelPhasor[];
  readonly sequences: readonly {
    readonly where: string;
    readonly unit: string;
    readonly zero: PolarNumber;
    readonly positive: PolarNumber;
    readonly negative: PolarNumber;
  }[];
}

export interface DisturbanceRecord {
  readonly standard: string;
  readonly station: string;
  readonly device: string;
  readonly lineHertz: number | null;
  readonly start: { readonly written: string; readonly instant: string | null };
  readonly trigger: { readonly written: string; readonly instant: string | null };
  readonly triggerSeconds: number | null;
  readonly samples: number;
  readonly fromSeconds: number | null;
  readonly toSeconds: number | null;
  readonly analog: readonly AnalogChannel[];
  readonly status: readonly StatusChannel[];
  readonly remarks: readonly { readonly file: string; readonly line: number; readonly message: string }[];
  readonly frequencyHertz: number | null;
  readonly findings: readonly RecordFinding[];
  /** The findings as they go into a log. */
  readonly sentences: readonly string[];
  readonly notAnswered: readonly { readonly missing: string; readonly effect: string; readonly words: string }[];
  /** With a bank: which channel measures what there. */
  readonly matching?: {
    readonly clear: boolean;
    readonly channels: readonly { readonly number: number; readonly name: string; readonly measures: string; readonly why: readonly string[] }[];
    readonly notUsed: readonly { readonly number: number; readonly name: string; readonly why: string }[];
    readonly questions: readonly { readonly channels: readonly string[]; readonly text: string; readonly choices: readonly string[] }[];
  };
  readonly waveforms?: readonly Wave[];
  readonly at?: AtMoment;
}

/** `cff`, or `cfgBytes` and `dat`; bytes in base64. */
export interface RecordRequest {
  readonly cff?: string;
  readonly cfgBytes?: string;
  readonly dat?: string;
  readonly hdr?: string;
  readonly inf?: string;
  readonly bank?: string;
  /** What a person says about channels, `NAME=ROLE`. */
  readonly channelMap?: readonly string[];
  readonly waveforms?: { readonly channels?: readonly string[]; readonly from?: number; readonly to?: number; readonly points?: number };
  readonly at?: number;
}
