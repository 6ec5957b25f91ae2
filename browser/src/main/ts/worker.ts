/** Runs `core` beside the page, so that a long search never holds up a finger on the screen. */
import type { Engine, FromWorker, Start, ToWorker } from './protocol.js';

type Run = (request: string) => string;

const scope = globalThis as unknown as {
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null;
  postMessage(message: FromWorker): void;
};

let run: Run | undefined;

async function wasm(base: string): Promise<Run> {
  const runtime = (await import(/* @vite-ignore */ `${base}wasm-gc-module-runtime.min.js`)) as {
    load(path: string): Promise<{ exports: { run: Run } }>;
  };
  return (await runtime.load(`${base}varwright-core.wasm`)).exports.run;
}

async function js(base: string): Promise<Run> {
  return ((await import(/* @vite-ignore */ `${base}varwright-core.mjs`)) as { run: Run }).run;
}

/** The engine that was asked for; without a wish, the fallback only where WebAssembly can't be loaded. */
async function load(start: Start): Promise<{ run: Run; engine: Engine }> {
  if (start.engine === 'js') {
    return { run: await js(start.base), engine: 'js' };
  }
  try {
    return { run: await wasm(start.base), engine: 'wasm' };
  } catch (error) {
    if (start.engine === 'wasm') {
      throw error;
    }
    return { run: await js(start.base), engine: 'js' };
  }
}

scope.onmessage = (event) => {
  const message = event.data;
  if (message.kind === 'start') {
    const from = performance.now();
    load(message).then(
      (loaded) => {
        run = loaded.run;
        scope.postMessage({ kind: 'ready', engine: loaded.engine, milliseconds: performance.now() - from });
      },
      (error: unknown) => scope.postMessage({ kind: 'unusable', why: String(error) }),
    );
    return;
  }
  try {
    if (run === undefined) {
      throw new Error('asked before it was ready');
    }
    scope.postMessage({ kind: 'answer', id: message.id, answer: run(message.request) });
  } catch (error) {
    scope.postMessage({ kind: 'broken', id: message.id, why: String(error) });
  }
};
