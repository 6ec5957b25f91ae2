/** `core`, loaded once a page, in its own worker. */
import {
  Core,
  type Answer,
  type Engine,
  type Problem,
  type Requests,
  type Results,
  type TaskName,
} from '../../../browser/src/main/ts/core';

export type { Answer, Engine, Problem, Requests, Results, TaskName };
export type * from '../../../browser/src/main/ts/tasks';

let starting: Promise<Core> | undefined;

function start(): Promise<Core> {
  const worker = new Worker(new URL('../../../browser/src/main/ts/worker.ts', import.meta.url), { type: 'module' });
  return Core.start(new URL(__CORE_BASE__, location.href).href, worker);
}

/** The running `core`; started by whoever asks first. A start that failed is tried anew by the next. */
export function core(): Promise<Core> {
  starting ??= start().catch((error: unknown) => {
    starting = undefined;
    throw error;
  });
  return starting;
}

/** Input that `core` refuses, with every reason and its place. */
export class Refused extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map((p) => p.message).join('\n'));
  }
}

/** Runs one task. */
export async function ask<T extends TaskName>(task: T, request: Requests[T]): Promise<Answer<Results[T]>> {
  return (await core()).run(task, request);
}

/**
 * The result of one task.
 *
 * @throws Refused where the input is refused
 */
export async function result<T extends TaskName>(task: T, request: Requests[T]): Promise<Results[T]> {
  const answer = await ask(task, request);
  if (!answer.ok) {
    throw new Refused(answer.problems);
  }
  return answer.result;
}

/** Ends a search that takes too long; the next task starts `core` anew. */
export async function stop(): Promise<void> {
  const running = starting;
  starting = undefined;
  (await running)?.stop();
}
