/** What passes between the page and the worker. */

/** How `core` runs: WebAssembly with the browser's garbage collector, or plain JavaScript. The answers are the same. */
export type Engine = 'wasm' | 'js';

/** From the page: start with these files. */
export interface Start {
  readonly kind: 'start';
  /** Folder, ended by a slash, that holds the files of both engines. */
  readonly base: string;
  /** The engine wanted; without it, WebAssembly where the browser can, else JavaScript. */
  readonly engine?: Engine;
}

/** From the page: one request, as the JSON text that `core` takes. */
export interface Ask {
  readonly kind: 'ask';
  readonly id: number;
  readonly request: string;
}

export type ToWorker = Start | Ask;

/** From the worker. */
export type FromWorker =
  | { readonly kind: 'ready'; readonly engine: Engine; readonly milliseconds: number }
  | { readonly kind: 'unusable'; readonly why: string }
  | { readonly kind: 'answer'; readonly id: number; readonly answer: string }
  | { readonly kind: 'broken'; readonly id: number; readonly why: string };
