// A browser with a profile on disk, as a tablet has one, that can be killed as an empty battery does.
import { execFileSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type BrowserContext, type Page } from '@playwright/test';

export class Tablet {
  readonly profile = mkdtempSync(join(tmpdir(), 'varwright-profile-'));
  #context: BrowserContext | undefined;

  async start(): Promise<Page> {
    this.#context = await chromium.launchPersistentContext(this.profile, {
      executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
      args: ['--no-sandbox', '--disable-background-networking', '--disable-quic'],
      viewport: { width: 1024, height: 768 },
      locale: 'en-US',
      timezoneId: 'UTC',
    });
    return this.#context.pages()[0] ?? (await this.#context.newPage());
  }

  get context(): BrowserContext {
    if (this.#context === undefined) {
      throw new Error('it is not started');
    }
    return this.#context;
  }

  /** SIGKILL to every process of this browser; none can write anything any more. */
  async kill(): Promise<void> {
    const gone = new Promise((resolve) => this.context.once('close', resolve));
    execFileSync('pkill', ['-KILL', '-f', this.profile]);
    await gone;
  }

  async stop(): Promise<void> {
    await this.context.close();
  }
}
