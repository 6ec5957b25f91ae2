/** The bank of a file as records; worked out once a file. */
import { result, type Bank } from './core';

const known = new Map<string, Promise<Bank>>();
const KEPT = 4;

export function bankOf(text: string): Promise<Bank> {
  let bank = known.get(text);
  if (bank === undefined) {
    bank = result('bank', { bank: text });
    bank.catch(() => known.delete(text));
    known.set(text, bank);
    if (known.size > KEPT) {
      known.delete(known.keys().next().value ?? '');
    }
  }
  return bank;
}
