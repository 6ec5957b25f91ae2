/** What can be read on a unit, and how it is typed. */
import type { JobState } from '../../../core/core';

export const QUANTITIES = {
  capacitance: ['µF', 'nF', 'mF'],
  resistance: ['MΩ', 'kΩ', 'GΩ'],
  insulation: ['GΩ', 'MΩ', 'TΩ'],
  fuse: ['mΩ', 'Ω'],
  temperature: ['°C'],
} as const;

export type QuantityName = keyof typeof QUANTITIES;
export const QUANTITY_NAMES = Object.keys(QUANTITIES) as readonly QuantityName[];

/** What is typed and not yet kept, of one unit. */
export interface Typed {
  readonly capacitance?: string;
  readonly resistance?: string;
  readonly insulation?: string;
  readonly fuse?: string;
  readonly temperature?: string;
  readonly serial?: string;
  readonly note?: string;
  readonly terminals?: string;
}

export interface ReadingsDraft {
  readonly unit: string;
  readonly typed: Readonly<Record<string, Typed>>;
  readonly units: Readonly<Partial<Record<QuantityName, string>>>;
  readonly instrument: string;
  /** Limits of error of the meter in percent, as typed and not yet stated in the job. */
  readonly meterPercent: string;
  /** Readings taken beside the capacitance. */
  readonly also: readonly QuantityName[];
}

export const EMPTY_DRAFT: ReadingsDraft = {
  unit: '',
  typed: {},
  units: {},
  instrument: '',
  meterPercent: '',
  also: ['resistance', 'fuse', 'temperature'],
};

/** Limits of error as a part of the reading; undefined where `core` would refuse it. */
export function meterLimit(percent: string): number | undefined {
  const text = percent.trim().replace(',', '.').replace(/\s*%$/, '');
  const limit = text === '' ? Number.NaN : Number(text) / 100;
  return limit > 0 && limit < 0.2 ? limit : undefined;
}

/** Limits that are typed on this device and judge nothing yet, as a part of the reading; undefined where there are none. */
export function notStated(state: JobState, draft: ReadingsDraft): number | undefined {
  const typed = meterLimit(draft.meterPercent);
  const judges = state.meterLimits.instruments[draft.instrument.trim().toLowerCase()] ?? state.meterLimits.limit;
  return typed === undefined || Math.abs(typed - judges) < 1e-9 ? undefined : typed;
}

/** By what the readings of a job are judged: what its log states, the same on every device. */
export function limitsOf(state: JobState): { readonly meterLimit: number; readonly meterLimits: Readonly<Record<string, number>> } {
  return { meterLimit: state.meterLimits.limit, meterLimits: state.meterLimits.instruments };
}

const COMMA = /^([<>≤≥]?\s*[+\-−]?\d*),(\d+)(\D.*)?$/;

function plain(text: string): string {
  return text.trim().replace(/[\u00a0\u202f]/g, ' ');
}

/** Whether a comma may as well group thousands: `10,350` is 10.35 to one person and ten thousand to another. */
export function unclear(text: string): boolean {
  const parts = COMMA.exec(plain(text));
  return parts !== null && /[1-9]\d{0,2}$/.test(parts[1] ?? '') && parts[2]?.length === 3;
}

/** What goes into the log of a value: as typed, with the unit that the person chose beside it, and a decimal comma as a point. */
export function asWritten(text: string, unit: string): string {
  const trimmed = plain(text);
  const parts = unclear(trimmed) ? null : COMMA.exec(trimmed);
  const pointed = parts === null ? trimmed : `${parts[1]}.${parts[2]}${parts[3] ?? ''}`;
  return /\d$/.test(pointed) ? `${pointed} ${unit}` : pointed;
}

/** The columns of a readings table of what was typed; empty ones are left out. */
export function values(typed: Typed, draft: ReadingsDraft): Record<string, string> {
  const made: Record<string, string> = {};
  for (const name of QUANTITY_NAMES) {
    const text = name === 'capacitance' || draft.also.includes(name) ? (typed[name] ?? '') : '';
    if (text.trim() !== '') {
      made[name] = asWritten(text, draft.units[name] ?? QUANTITIES[name][0]);
    }
  }
  for (const name of ['terminals', 'serial', 'note'] as const) {
    const text = (typed[name] ?? '').trim();
    if (text !== '') {
      made[name] = text;
    }
  }
  return made;
}

/** The wall clock here as ISO 8601 without a zone, as spreadsheets have it. */
export function takenNow(now = new Date()): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}T${two(now.getHours())}:${two(now.getMinutes())}`;
}
