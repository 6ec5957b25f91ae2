/** Writes a ZIP whose files are stored as they are, each with its size and check sum before it (APPNOTE 6.3.9, 4.3): a reader knows where each ends. */

const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) {
    rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  }
  return rest;
});

function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) {
    crc = (crc >>> 8) ^ (TABLE[(crc ^ byte) & 0xff] ?? 0);
  }
  return ~crc >>> 0;
}

interface Entry {
  readonly name: Uint8Array<ArrayBuffer>;
  readonly crc: number;
  readonly size: number;
  readonly at: number;
}

/** 1980-01-01: the same job gives the same file. */
const DATE = 0x21;
const NAMES_IN_UTF8 = 0x800;

export class StoredZip {
  readonly #parts: BlobPart[] = [];
  readonly #entries: Entry[] = [];
  #size = 0;

  async add(path: string, content: Blob): Promise<void> {
    const name = new Uint8Array(new TextEncoder().encode(path));
    const crc = crc32(new Uint8Array(await content.arrayBuffer()));
    const entry: Entry = { name, crc, size: content.size, at: this.#size };
    this.#push(header(0x04034b50, 30, entry, 4), name, content);
    this.#entries.push(entry);
  }

  end(type: string): Blob {
    const start = this.#size;
    for (const entry of this.#entries) {
      const bytes = header(0x02014b50, 46, entry, 6);
      new DataView(bytes.buffer).setUint16(4, 20, true);
      new DataView(bytes.buffer).setUint32(42, entry.at, true);
      this.#push(bytes, entry.name);
    }
    const end = new DataView(new ArrayBuffer(22));
    end.setUint32(0, 0x06054b50, true);
    end.setUint16(8, this.#entries.length, true);
    end.setUint16(10, this.#entries.length, true);
    end.setUint32(12, this.#size - start, true);
    end.setUint32(16, start, true);
    return new Blob([...this.#parts, end.buffer], { type });
  }

  #push(...parts: (Uint8Array<ArrayBuffer> | Blob)[]): void {
    for (const part of parts) {
      this.#parts.push(part);
      this.#size += part instanceof Blob ? part.size : part.length;
    }
  }
}

/** Before a file, and in the list at the end: the same members, from another place on. */
function header(signature: number, length: number, entry: Entry, from: number): Uint8Array<ArrayBuffer> {
  const view = new DataView(new ArrayBuffer(length));
  view.setUint32(0, signature, true);
  view.setUint16(from, 20, true);
  view.setUint16(from + 2, NAMES_IN_UTF8, true);
  view.setUint16(from + 8, DATE, true);
  view.setUint32(from + 10, entry.crc, true);
  view.setUint32(from + 14, entry.size, true);
  view.setUint32(from + 18, entry.size, true);
  view.setUint16(from + 22, entry.name.length, true);
  return new Uint8Array(view.buffer);
}
