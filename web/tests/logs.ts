// Logs of jobs that are under way, written by `core` itself with the clock that a test gives it.
import { randomUUID } from 'node:crypto';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { JobState, Json, Step } from '../../browser/src/main/ts/tasks';
import { checkout, demoFile } from './product';

interface Proposed {
  readonly ok: boolean;
  readonly result: { readonly line: string; readonly job: JobState };
  readonly problems?: readonly { readonly message: string }[];
}

type Run = (request: string) => string;

async function engine(): Promise<Run> {
  const path = join(checkout, 'browser', 'target', 'js', 'varwright-core.mjs');
  return ((await import(pathToFileURL(path).href)) as { run: Run }).run;
}

/** A job that grows event by event, minute by minute. */
export class Log {
  lines = '';
  state: JobState | undefined;

  private constructor(
    private readonly run: Run,
    readonly job: string,
    private now: number,
  ) {}

  /** A job opened on a demo bank, a few hours ago. */
  static async open(bank: string): Promise<Log> {
    return Log.of(demoFile(bank));
  }

  /** A job on a bank without switches and locks: nothing has to be isolated first, and no order of work is planned. */
  static async bare(bank: string): Promise<Log> {
    return Log.of(
      demoFile(bank)
        .replace(/^isolation:\n(?:[ #].*\n)+/m, '')
        .replaceAll(/, switch: [^,}]+/g, ''),
    );
  }

  /** A job on the bank of this file. */
  static async of(bank: string, job = `job-${randomUUID().slice(0, 8)}`): Promise<Log> {
    const log = new Log(await engine(), job, Date.now() - 4 * 3_600_000);
    log.add('opened', {
      title: 'Alarm on the neutral',
      bank,
      number: 'T-17',
      reason: 'find what failed',
      alarm: 'neutral voltage, stage 3',
    });
    return log;
  }

  add(type: string, body: { readonly [name: string]: Json }, by = 'R. Imhof', device = 'desk'): JobState {
    this.now += 60_000;
    const request = { task: 'job-propose', job: this.job, log: this.lines, device, by, now: this.now, type, body };
    const answer = JSON.parse(this.run(JSON.stringify(request))) as Proposed;
    if (!answer.ok) {
      throw new Error(`${type}: ${answer.problems?.map((p) => p.message).join(' ')}`);
    }
    this.lines += `${answer.result.line}\n`;
    this.state = answer.result.job;
    return this.state;
  }

  /** Makes an order of work and confirms its way in. */
  toWork(access: readonly string[]): this {
    this.add('order-made', { access, origin: { kind: 'as-found' }, reason: 'units to be measured' });
    this.confirmWhile('way-in');
    return this;
  }

  /** Confirms the way back up to the end. */
  toService(): this {
    this.confirm();
    this.confirmWhile('way-back');
    return this;
  }

  private confirmWhile(phase: string): void {
    while (this.state?.order?.phase === phase) {
      this.confirm();
    }
  }

  private confirm(): void {
    const order = this.state?.order;
    const step = [...(order?.work.in ?? []), ...(order?.work.back ?? [])].find((s) => s.n === order?.next);
    if (order === undefined || order === null || step === undefined) {
      throw new Error('no step is next');
    }
    if (step.kind === 'hold') {
      this.add('hold-started', { order: order.id, step: step.n });
      this.now += (step.seconds ?? 0) * 1000;
    }
    const body = { order: order.id, step: step.n, ...asked(step) };
    try {
      this.add('step-confirmed', body);
    } catch (refused) {
      // What must be counted, and which label read, is not on the step's own face.
      const count = /(\d+) expected/.exec(String(refused))?.[1];
      const label = /is for "([^"]+)"/.exec(String(refused))?.[1];
      if (count === undefined && label === undefined) {
        throw refused;
      }
      this.add('step-confirmed', { ...body, ...(count === undefined ? { label: label ?? '' } : { reading: count }) });
    }
  }
}

function asked(step: Step): { readonly [name: string]: Json } {
  return {
    ticked: step.items,
    ...(step.secondPerson ? { second: 'Dana Okafor-Lind' } : {}),
    ...(step.asks === 'label' ? { label: '?' } : {}),
    ...(step.asks === 'reading' ? { reading: '0 V' } : {}),
    ...(step.asks === 'count' ? { reading: '0' } : {}),
  };
}

/** Gives a log to the server, as another device would. */
export async function upload(address: string, log: Log): Promise<void> {
  const response = await fetch(`${address}api/jobs/${log.job}/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/x-ndjson' },
    body: log.lines,
  });
  if (!response.ok) {
    throw new Error(`${response.status}: ${await response.text()}`);
  }
}
