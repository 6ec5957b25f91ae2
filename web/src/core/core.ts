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

/** The running `core`; started by whoever asks first. A start that failed is tried anew by the next; one whose worker has died is replaced. */
export async function core(): Promise<Core> {
  const own = (starting ??= start());
  try {
    const running = await own;
    if (!running.isStopped) {
      return running;
    }
  } catch (error) {
    if (starting === own) {
      starting = undefined;
    }
    throw error;
  }
  if (starting === own) {
    starting = undefined;
  }
  return core();
}

/** Input that `core` refuses, with every reason and its place. */
export class Refused extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map((p) => p.message).join('\n'));
  }
}

/** Runs one task. */
export async function ask<T extends TaskName>(task: T, request: Requests[T]): Promise<Answer<Results[T]>> {
  const running = await core();
  try {
    return await running.run(task, request);
  } catch (error) {
    if (!running.isStopped) {
      throw error;
    }
    // Its worker died under it. A task changes nothing, so another worker may be asked the same, once.
    return (await core()).run(task, request);
  }
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

let studying: Promise<Core> | undefined;

/**
 * The result of a task that may take minutes. It has a `core` of its own: a job that is being worked on, STOP among it, never waits for a study.
 *
 * @throws Refused where the input is refused; CoreFailure where it is stopped
 */
export async function study<T extends TaskName>(task: T, request: Requests[T]): Promise<Results[T]> {
  studying ??= start();
  const own = studying;
  try {
    const answer = await (await own).run(task, request);
    if (!answer.ok) {
      throw new Refused(answer.problems);
    }
    return answer.result;
  } catch (error) {
    if (!(error instanceof Refused) && studying === own) {
      studying = undefined;
    }
    throw error;
  }
}

/** Ends the study that runs, and gives back its memory; the next one starts a `core` anew. */
export async function stopStudies(): Promise<void> {
  const running = studying;
  studying = undefined;
  // One that could not even start has said so to who asked for it.
  (await running?.catch(() => undefined))?.stop();
}
