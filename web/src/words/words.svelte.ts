/** Sentences in the person's language; the trade's words follow the bank's standard and come from `core`. */
import { keep, setting } from '../store/database';
import { enGB } from './en-GB';
import { enUS, type Key } from './en-US';
import { es } from './es';

export type { Key };

export const LANGUAGES = { 'en-US': 'English (US)', 'en-GB': 'English (UK)', es: 'Español' } as const;
export type Language = keyof typeof LANGUAGES;

const CATALOGUES: Readonly<Record<Language, Partial<Record<Key, string>>>> = { 'en-US': enUS, 'en-GB': enGB, es };

/** The best that there is for what the browser asks for. */
export function nearest(wanted: readonly string[]): Language {
  for (const tag of wanted) {
    if (tag in LANGUAGES) {
      return tag as Language;
    }
    if (tag.startsWith('es')) {
      return 'es';
    }
    if (tag.startsWith('en')) {
      return 'en-US';
    }
  }
  return 'en-US';
}

class Words {
  language = $state<Language>(nearest(navigator.languages));

  async load(): Promise<void> {
    this.#use((await setting<Language>('language')) ?? this.language);
  }

  async choose(language: Language): Promise<void> {
    this.#use(language);
    await keep('language', language);
  }

  #use(language: Language): void {
    this.language = language;
    document.documentElement.lang = language;
  }
}

export const words = new Words();

/** A sentence, with `{name}` filled in. */
export function t(key: Key, values: Readonly<Record<string, string | number>> = {}): string {
  const sentence = CATALOGUES[words.language][key] ?? enUS[key];
  return sentence.replace(/\{(\w+)\}/g, (whole, name: string) => (name in values ? String(values[name]) : whole));
}

/** A moment, as a person reads it. */
export function moment(millis: number): string {
  return new Intl.DateTimeFormat(words.language, { dateStyle: 'medium', timeStyle: 'medium', hour12: false }).format(millis);
}

/** A day of the calendar, written year-month-day, as a person reads it. */
export function day(date: string): string {
  return new Intl.DateTimeFormat(words.language, { dateStyle: 'long', timeZone: 'UTC' }).format(Date.parse(`${date}T00:00:00Z`));
}

/** A number with so many significant digits. */
export function figures(value: number, digits = 4): string {
  return new Intl.NumberFormat(words.language, { maximumSignificantDigits: digits, useGrouping: false }).format(value);
}
