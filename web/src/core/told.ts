/** What a person is told of something that went wrong. */
import { Refused, type Problem } from './core';

/** Faults of what was given, each with its place; or one failure of the app's own parts. */
export interface Told {
  readonly problems: readonly Problem[];
  readonly failure: string;
}

/** The reason in one text. */
export function reason(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

export function told(error: unknown): Told {
  return error instanceof Refused ? { problems: error.problems, failure: '' } : { problems: [], failure: reason(error) };
}
