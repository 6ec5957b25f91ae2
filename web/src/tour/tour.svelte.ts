/** A newcomer's way through two jobs under way: where to go, what to look at. It writes nothing into a job. */
import { router } from '../route.svelte';
import { database, keep, setting, type JobCard } from '../store/database';
import type { Key } from '../words/words.svelte';

interface Stop {
  readonly text: Key;
  /** Path of the page; `{in}` is the job on its way in, `{work}` the one being worked on. */
  readonly path: string;
  /** What on the page is meant. */
  readonly target: string;
}

const STOPS: readonly Stop[] = [
  { text: 'tour.banks', path: '/', target: 'main h2' },
  { text: 'tour.happened', path: '/jobs/{in}/happened', target: '#said' },
  { text: 'tour.wayIn', path: '/jobs/{in}/way-in', target: 'article.card .text' },
  { text: 'tour.states', path: '/jobs/{in}/way-in', target: '#states' },
  { text: 'tour.people', path: '/jobs/{work}/people', target: '.chapter h2' },
  { text: 'tour.readings', path: '/jobs/{work}/readings', target: '.chapter h2' },
  { text: 'tour.fit', path: '/jobs/{work}/fit', target: '.chapter h2' },
  { text: 'tour.wayBack', path: '/jobs/{work}/way-back', target: '.chapter h2' },
  { text: 'tour.report', path: '/jobs/{work}/report', target: '.chapter h2' },
];

type Standing = 'unknown' | 'offered' | 'under-way' | 'left';

class Tour {
  standing = $state<Standing>('unknown');
  at = $state(0);
  jobs = $state.raw<{ readonly in: string; readonly work: string } | undefined>(undefined);

  readonly count = STOPS.length;
  readonly stop = $derived(STOPS[this.at] ?? STOPS[0]);

  async load(): Promise<void> {
    const kept = await setting<{ standing: Standing; at: number }>('tour');
    this.standing = kept?.standing ?? 'offered';
    this.at = kept?.at ?? 0;
  }

  /** The jobs that the tour needs; without both it is not offered. */
  know(cards: readonly JobCard[]): void {
    const open = cards.filter((c) => !c.closed);
    const way = open.find((c) => c.phase === 'way-in')?.job;
    const work = open.find((c) => c.phase === 'work')?.job;
    this.jobs = way === undefined || work === undefined ? undefined : { in: way, work };
  }

  async begin(): Promise<void> {
    await this.#set('under-way', 0);
  }

  async leave(): Promise<void> {
    await this.#set('left', this.at);
  }

  async resume(): Promise<void> {
    this.know(await database.cards.toArray());
    await this.#set('under-way', this.at >= STOPS.length - 1 ? 0 : this.at);
  }

  async go(by: 1 | -1): Promise<void> {
    const next = this.at + by;
    if (next < 0) {
      return;
    }
    if (next >= STOPS.length) {
      await this.#set('left', 0);
      router.go('/');
      return;
    }
    await this.#set('under-way', next);
  }

  async #set(standing: Standing, at: number): Promise<void> {
    this.standing = standing;
    this.at = at;
    await keep('tour', { standing, at });
    if (standing === 'under-way' && this.jobs !== undefined) {
      const path = this.stop?.path.replace('{in}', this.jobs.in).replace('{work}', this.jobs.work) ?? '/';
      if (location.pathname !== path) {
        router.go(path);
      }
    }
  }
}

export const tour = new Tour();
