/** What to fit where: asked of `core` anew whenever a reading, a spare or a wish changes. Nothing here is written down. */
import { told } from '../../../core/told';
import { result, type Fit, type FitMove, type JobState, type Problem, type SpareList } from '../../../core/core';
import { limitsOf } from '../readings/fields';
import { allReadings, csv, namingRows, type Reading } from '../readings/table';

export interface Wishes {
  readonly leastUnbalance: boolean;
  /** Positions whose unit stays. */
  readonly keep: readonly string[];
  /** Pairs that change places, `A=B`. */
  readonly swap: readonly string[];
  /** Serials of spares that are not used. */
  readonly without: readonly string[];
}

export const NO_WISHES: Wishes = { leastUnbalance: false, keep: [], swap: [], without: [] };

export class Plan {
  spares = $state.raw<SpareList | undefined>(undefined);
  fit = $state.raw<Fit | undefined>(undefined);
  /** What the plan would be without any wish, to compare with. */
  plain = $state.raw<Fit | undefined>(undefined);
  problems = $state.raw<readonly Problem[]>([]);
  failure = $state.raw('');
  working = $state(false);
  measured = $state(true);
  #of = '';

  async make(state: JobState, wishes: Wishes): Promise<void> {
    const of = JSON.stringify([state.hash, state.events, wishes]);
    if (of === this.#of) {
      return;
    }
    this.#of = of;
    this.working = true;
    try {
      const bank = state.bankText;
      const spares = await result('spares', { bank, tables: state.spareTables.map((table) => table.body.text) });
      const readings = await allReadings(state, 'found');
      let fit: Fit | undefined;
      let plain: Fit | undefined;
      if (readings.length > 0 && spares.spares.length > 0) {
        const request = { bank, readings: csv(readings), spares: sparesTable(spares), ...limitsOf(state) };
        fit = named(await result('fit', { ...request, ...wishes }), readings);
        plain = JSON.stringify(wishes) === JSON.stringify(NO_WISHES) ? fit : named(await result('fit', request), readings);
      }
      if (of === this.#of) {
        this.measured = readings.length > 0;
        this.spares = spares;
        this.fit = fit;
        this.plain = plain;
        this.problems = [];
        this.failure = '';
      }
    } catch (error) {
      if (of === this.#of) {
        this.fit = undefined;
        ({ problems: this.problems, failure: this.failure } = told(error));
      }
    } finally {
      if (of === this.#of) {
        this.working = false;
      }
    }
  }
}

function named(fit: Fit, readings: readonly Reading[]): Fit {
  const moves = (all: readonly FitMove[]) => all.map((m) => ({ ...m, why: namingRows(m.why, readings) }));
  return { ...fit, moves: moves(fit.moves), notes: fit.notes.map((note) => namingRows(note, readings)) };
}

/** The spares as a table again, with every unit written out. */
export function sparesTable(list: SpareList): string {
  const cell = (text: string) => `"${text.replaceAll('"', '""')}"`;
  const rows = list.spares.map((s) => [
    s.serial,
    s.unit,
    s.capacitanceFarads === null ? '' : `${Number((s.capacitanceFarads * 1e6).toPrecision(12))} µF`,
    s.note ?? '',
  ]);
  return [['serial', 'unit', 'capacitance', 'note'], ...rows].map((row) => `${row.map(cell).join(',')}\n`).join('');
}

const PLACES: ReadonlySet<string> = new Set(['spares', 'out', 'set aside']);

/** What the log says of a move: positions only; the store and the floor are no positions. */
export function moveBody(move: FitMove, serial: string): Record<string, string> {
  return {
    serial,
    ...(PLACES.has(move.from) ? {} : { from: move.from }),
    ...(PLACES.has(move.to) ? {} : { to: move.to }),
  };
}

/** The event that says that a move was made; undefined where none does. */
export function moved(state: JobState, move: FitMove): JobState['unitMoves'][number] | undefined {
  const body = moveBody(move, move.serial);
  return state.unitMoves.find(
    (m) =>
      (m.body.from ?? undefined) === body['from'] &&
      (m.body.to ?? undefined) === body['to'] &&
      (sameSerial(m.body.serial, move.serial) || move.serial === move.from),
  );
}

export function sameSerial(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}
