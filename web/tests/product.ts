// Starts the product as a person would, on a folder of its own, and tells its address.
import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const checkout = fileURLToPath(new URL('../../', import.meta.url));

export function demoFile(name: string): string {
  return readFileSync(join(checkout, 'examples', 'demo', name), 'utf8');
}

export class Product {
  private constructor(
    private readonly process: ChildProcess,
    readonly address: string,
    readonly data: string,
    readonly port: number,
  ) {}

  static async serve(data = mkdtempSync(join(tmpdir(), 'varwright-app-')), port = 0): Promise<Product> {
    return Product.start(['serve', '--data', data, '--port', String(port)], data);
  }

  static async start(args: readonly string[], data: string): Promise<Product> {
    const child = spawn(join(checkout, 'varwright'), args, { stdio: ['ignore', 'pipe', 'pipe'] });
    let heard = '';
    const address = await new Promise<string>((resolve, reject) => {
      const listen = (chunk: Buffer) => {
        heard += chunk.toString();
        const found = /http:\/\/127\.0\.0\.1:(\d+)\//.exec(heard);
        if (found !== null) {
          resolve(found[0]);
        }
      };
      child.stdout.on('data', listen);
      child.stderr.on('data', listen);
      child.on('exit', (code) => reject(new Error(`ended with ${code}: ${heard}`)));
    });
    return new Product(child, address, data, Number(new URL(address).port));
  }

  /** Lets it make no file longer than that, as on a full disk; without a number there is room again. */
  roomFor(bytes?: number): void {
    execFileSync('prlimit', ['--pid', String(this.process.pid), `--fsize=${bytes ?? 'unlimited'}:unlimited`]);
  }

  /** Ends it at once, as a power cut would. */
  async kill(): Promise<void> {
    await this.#end('SIGKILL');
  }

  async stop(): Promise<void> {
    await this.#end('SIGTERM');
  }

  async #end(signal: NodeJS.Signals): Promise<void> {
    if (this.process.exitCode !== null || this.process.signalCode !== null) {
      return;
    }
    const ended = new Promise((resolve) => this.process.once('exit', resolve));
    this.process.kill(signal);
    await ended;
  }
}
