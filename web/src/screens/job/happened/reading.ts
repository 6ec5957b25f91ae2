/** What a person typed of the relay, as the tasks `locate` and `triage` take it. */
import type { Bank } from '../../../core/core';
import { t } from '../../../words/words.svelte';

export type Typed = Readonly<Record<string, string>>;

export interface RelayReading {
  readonly reading: string;
  readonly uncertainty: number;
  /** Line to line [V]. */
  readonly bus: number;
  readonly primary?: boolean;
  readonly degrees?: number;
  readonly healthy?: string;
}

/** The sensors of a bank by the names under which a reading is given. */
export function sensorsOf(bank: Bank): readonly string[] {
  return bank.protection.map((p) => `${p.stage} ${p.senses}`);
}

/** Of the reading, at about 95 %: relay, transformer and wiring together. */
const UNCERTAINTY = 0.03;

/**
 * The reading as typed; undefined where none is typed.
 *
 * @throws Error in words where angle or voltage are not numbers
 */
export function relayReading(typed: Typed, bank: Bank): RelayReading | undefined {
  const text = (name: string) => (typed[name] ?? '').trim();
  const number = (name: string) => (text(name) === '' ? undefined : Number(text(name).replace(',', '.')));
  if (text('reading') === '') {
    return undefined;
  }
  const degrees = number('angle');
  const bus = number('bus');
  if ([degrees, bus].some((n) => n !== undefined && !Number.isFinite(n))) {
    throw new Error(t('locate.numbers'));
  }
  return {
    reading: `${typed['sensor'] ?? sensorsOf(bank)[0] ?? ''}=${text('reading')}`,
    uncertainty: UNCERTAINTY,
    bus: bus === undefined ? bank.system.volts : bus * 1000,
    ...(typed['primary'] === 'yes' ? { primary: true } : {}),
    ...(degrees === undefined ? {} : { degrees }),
    ...(text('healthy') === '' ? {} : { healthy: text('healthy') }),
  };
}
