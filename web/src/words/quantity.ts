/** Values with their unit, in the size in which people read them. */
import { figures, words } from './words.svelte';

const PREFIXES = [
  [1e9, 'G'],
  [1e6, 'M'],
  [1e3, 'k'],
  [1, ''],
  [1e-3, 'm'],
  [1e-6, 'µ'],
  [1e-9, 'n'],
  [1e-12, 'p'],
] as const;

/** Such as `10.42 µF` of 1.042e-5 and `F`. */
export function quantity(value: number, unit: string, digits = 4): string {
  if (!Number.isFinite(value)) {
    return '∞';
  }
  const size = Math.abs(value);
  // A value that is rounded up to a thousand belongs to the next prefix.
  const [factor, prefix] = PREFIXES.find(([f]) => size >= f * (1 - 0.5 * 10 ** -digits)) ?? [1, ''];
  return size === 0 || unit === '' ? `${figures(value, digits)} ${unit}`.trim() : `${figures(value / factor, digits)} ${prefix}${unit}`;
}

/** How far a value is off, such as `+1.30 %` of 0.013; `× 998` where a percentage says nothing any more. */
export function percent(part: number): string {
  if (part >= 10) {
    return `× ${figures(1 + part, 3)}`;
  }
  const text = new Intl.NumberFormat(words.language, { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(Math.abs(100 * part));
  return `${part > 0 ? '+' : part < 0 ? '−' : ''}${text} %`;
}

/** Such as `7200:120`, of a transformer. */
export function ratio(of: { readonly primary: number; readonly secondary: number }): string {
  return `${figures(of.primary)}:${figures(of.secondary)}`;
}
