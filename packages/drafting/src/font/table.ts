/** Bytes of a run of 16-bit numbers, high byte first; negative numbers as two's complement. */
export function words(...numbers: readonly number[]): Uint8Array {
  const out = new Uint8Array(numbers.length * 2);
  const view = new DataView(out.buffer);
  numbers.forEach((n, i) => {
    view.setUint16(i * 2, n & 0xffff);
  });
  return out;
}

/** A 32-bit number as two 16-bit ones. */
export function long(n: number): readonly [number, number] {
  return [Math.floor(n / 0x10000) & 0xffff, n & 0xffff];
}

/** A four-letter tag as two 16-bit numbers. */
export function tag(name: string): readonly [number, number] {
  const c = (i: number): number => name.charCodeAt(i);
  return [c(0) * 256 + c(1), c(2) * 256 + c(3)];
}

/** Some runs of bytes one after another. */
export function joined(parts: readonly Uint8Array[]): Uint8Array {
  const out = new Uint8Array(parts.reduce((n, part) => n + part.length, 0));
  let at = 0;
  for (const part of parts) {
    out.set(part, at);
    at += part.length;
  }
  return out;
}

/** Search fields of a sorted list in a font table: the largest power of two, as bytes, its exponent, and the rest. */
export function search(count: number, size: number): readonly [number, number, number] {
  const exponent = Math.floor(Math.log2(Math.max(1, count)));
  const range = 2 ** exponent * size;
  return [range, exponent, count * size - range];
}

/** The tables of a font file by tag. Source of the layout: OpenType specification, "OpenType font file". */
export function readTables(file: Uint8Array): Map<string, Uint8Array> {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const tables = new Map<string, Uint8Array>();
  for (let i = 0; i < view.getUint16(4); i++) {
    const at = 12 + 16 * i;
    const name = String.fromCharCode(...file.subarray(at, at + 4));
    const offset = view.getUint32(at + 8);
    tables.set(name, file.slice(offset, offset + view.getUint32(at + 12)));
  }
  return tables;
}

/** A font file made of tables. Source of the layout and the checksums: OpenType specification, "OpenType font file". */
export function writeTables(tables: ReadonlyMap<string, Uint8Array>): Uint8Array {
  const names = [...tables.keys()].sort();
  const head = tables.get('head');
  if (head) new DataView(head.buffer, head.byteOffset).setUint32(8, 0);
  const directory: number[] = [0x0001, 0x0000, names.length, ...search(names.length, 16)];
  const bodies: Uint8Array[] = [];
  let offset = 12 + 16 * names.length;
  for (const name of names) {
    const table = tables.get(name) as Uint8Array;
    const padded = joined([table, new Uint8Array((4 - (table.length % 4)) % 4)]);
    directory.push(...tag(name), ...long(checksum(padded)), ...long(offset), ...long(table.length));
    bodies.push(padded);
    offset += padded.length;
  }
  const file = joined([words(...directory), ...bodies]);
  const headAt = new DataView(file.buffer).getUint32(12 + 16 * names.indexOf('head') + 8);
  new DataView(file.buffer).setUint32(headAt + 8, (0xb1b0afba - checksum(file)) >>> 0);
  return file;
}

function checksum(padded: Uint8Array): number {
  const view = new DataView(padded.buffer, padded.byteOffset, padded.byteLength);
  let sum = 0;
  for (let at = 0; at + 3 < padded.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0;
  return sum;
}
