/** The face of `core` for the app: tasks in, typed answers out, in a Web Worker. */
import type { Engine, FromWorker, ToWorker } from './protocol.js';
import type { Requests, Results, TaskName } from './tasks.js';

export type { Engine } from './protocol.js';
export type * from './tasks.js';

/** One thing that is wrong with an input. */
export interface Problem {
  readonly code: string;
  readonly file: string;
  /** From 1; 0 where it is not known. */
  readonly line: number;
  readonly column: number;
  readonly path: string;
  readonly message: string;
}

/** What comes of a task: its result, or everything that is wrong with its input. */
export type Answer<T> =
  | { readonly ok: true; readonly result: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** `core` itself failed, or was stopped; never the fault of the input. */
export class CoreFailure extends Error {}

interface Waiting {
  readonly resolve: (answer: string) => void;
  readonly reject: (why: CoreFailure) => void;
}

export class Core {
  readonly #worker: Worker;
  readonly #waiting = new Map<number, Waiting>();
  #next = 1;
  #stopped: CoreFailure | undefined;

  private constructor(
    worker: Worker,
    readonly engine: Engine,
    /** How long loading took [ms]. */
    readonly milliseconds: number,
  ) {
    this.#worker = worker;
  }

  /**
   * Loads `core` in a worker of its own.
   *
   * @param base folder of the engines' files, ended by a slash
   * @param worker made from `worker.js`; who bundles it knows where it lies
   * @throws CoreFailure where neither engine can be loaded
   */
  static async start(base: string, worker: Worker, engine?: Engine): Promise<Core> {
    const ready = await new Promise<FromWorker & { kind: 'ready' }>((resolve, reject) => {
      worker.onmessage = (event: MessageEvent<FromWorker>) => {
        const message = event.data;
        if (message.kind === 'ready') {
          resolve(message);
        } else {
          reject(new CoreFailure(message.kind === 'unusable' ? message.why : `unexpected ${message.kind}`));
        }
      };
      worker.onerror = (event) => reject(new CoreFailure(event.message || 'its worker could not be loaded'));
      const start: ToWorker = engine === undefined ? { kind: 'start', base } : { kind: 'start', base, engine };
      worker.postMessage(start);
    });
    const core = new Core(worker, ready.engine, ready.milliseconds);
    worker.onmessage = (event: MessageEvent<FromWorker>) => core.#heard(event.data);
    worker.onerror = (event) => core.#fail(new CoreFailure(event.message || 'its worker died'));
    return core;
  }

  /**
   * Runs one task.
   *
   * @throws CoreFailure where `core` itself fails or is stopped while the task runs
   */
  async run<T extends TaskName>(task: T, request: Requests[T]): Promise<Answer<Results[T]>> {
    return JSON.parse(await this.ask(JSON.stringify({ task, ...request }))) as Answer<Results[T]>;
  }

  /** The same with JSON text in and out. */
  ask(request: string): Promise<string> {
    if (this.#stopped !== undefined) {
      return Promise.reject(this.#stopped);
    }
    const id = this.#next++;
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve, reject });
      const ask: ToWorker = { kind: 'ask', id, request };
      this.#worker.postMessage(ask);
    });
  }

  /** Whether its worker has died or was ended. */
  get isStopped(): boolean {
    return this.#stopped !== undefined;
  }

  /** Ends the worker, and with it every task that still runs. Start a new one to go on. */
  stop(): void {
    this.#fail(new CoreFailure('stopped'));
  }

  #heard(message: FromWorker): void {
    if (message.kind !== 'answer' && message.kind !== 'broken') {
      return;
    }
    const waiting = this.#waiting.get(message.id);
    this.#waiting.delete(message.id);
    if (message.kind === 'answer') {
      waiting?.resolve(message.answer);
    } else {
      waiting?.reject(new CoreFailure(message.why));
    }
  }

  #fail(why: CoreFailure): void {
    this.#stopped = why;
    this.#worker.terminate();
    for (const waiting of this.#waiting.values()) {
      waiting.reject(why);
    }
    this.#waiting.clear();
  }
}
