// The real product behind another version of its app: files of a second version lie in front of those that it gives.
import { createHash } from 'node:crypto';
import { createServer, request, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import type { Product } from './product';

interface Listed {
  url: string;
  revision: string;
}

export class Editions {
  /** Files of the version that is published now, in front of the product's own; undefined: the product has it no more. */
  #files = new Map<string, string | undefined>();
  readonly #asked: string[] = [];

  private constructor(
    private readonly product: Product,
    private readonly server: Server,
    readonly address: string,
  ) {}

  static async before(product: Product): Promise<Editions> {
    const server = createServer();
    await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
    const editions = new Editions(product, server, `http://127.0.0.1:${(server.address() as AddressInfo).port}/`);
    server.on('request', (incoming, outgoing) => {
      const path = new URL(incoming.url ?? '/', editions.address).pathname.slice(1);
      editions.#asked.push(path);
      const named = path === '' || !path.includes('.') ? 'index.html' : path;
      if (!path.startsWith('api/') && editions.#files.has(named)) {
        const content = editions.#files.get(named);
        const type = named.endsWith('.html') ? 'text/html' : named.endsWith('.css') ? 'text/css' : 'text/javascript';
        outgoing.writeHead(content === undefined ? 404 : 200, { 'content-type': type, 'cache-control': 'no-cache' });
        outgoing.end(content ?? '');
        return;
      }
      const own = `127.0.0.1:${product.port}`;
      const headers = { ...incoming.headers, host: own, ...(incoming.headers.origin === undefined ? {} : { origin: `http://${own}` }) };
      const passed = request({ port: product.port, host: '127.0.0.1', path: incoming.url, method: incoming.method, headers }, (answer) => {
        outgoing.writeHead(answer.statusCode ?? 502, answer.headers);
        answer.pipe(outgoing);
      });
      passed.on('error', () => outgoing.destroy());
      incoming.pipe(passed);
    });
    return editions;
  }

  /** Another version: its page says so, and its sheet of styles has another content and name. The sheet of the version before is gone. */
  async publish(name: string, { cutOff = false } = {}): Promise<void> {
    const page = await this.#own('index.html');
    const sheet = /assets\/index-[\w-]+\.css/.exec(page)?.[0] ?? 'none';
    const newSheet = `assets/index-${name.padEnd(8, '0')}.css`;
    const styles = `${await this.#own(sheet)}:root{--edition:${name}}`;
    const newPage = page.replace(sheet, newSheet).replace('<html ', `<html data-edition="${name}" `);
    const worker = (await this.#own('sw.js')).replace(/\[\{[^\]]*"revision"[^\]]*\]/, (list) =>
      JSON.stringify(
        (JSON.parse(list) as Listed[]).map((file) =>
          file.url === sheet
            ? { url: newSheet, revision: hash(styles) }
            : file.url === 'index.html'
              ? { url: file.url, revision: hash(newPage) }
              : file,
        ),
      ),
    );
    if (!worker.includes(newSheet)) {
      throw new Error('the worker names no sheet of styles');
    }
    this.#files = new Map<string, string | undefined>([
      ...[...this.#files].filter(([file]) => file.endsWith('.css')).map(([file]) => [file, undefined] as const),
      [sheet, undefined],
      [newSheet, cutOff ? styles.slice(0, styles.length / 2) : styles],
      ['index.html', newPage],
      ['sw.js', worker],
    ]);
  }

  /** How often a file was asked for. */
  asked(path: string): number {
    return this.#asked.filter((each) => each === path).length;
  }

  async end(): Promise<void> {
    this.server.closeAllConnections();
    await new Promise((closed) => this.server.close(closed));
    await this.product.stop();
  }

  async #own(file: string): Promise<string> {
    return (await fetch(`${this.product.address}${file}`)).text();
  }
}

function hash(content: string): string {
  return createHash('sha256').update(content).digest('hex');
}
