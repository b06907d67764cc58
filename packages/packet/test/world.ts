import { readFile } from 'node:fs/promises';
import type { World } from '../src/index.ts';

/** A world in memory: files by name, answers in order, and everything that was said and written. */
export function worldOf(
  args: readonly string[],
  { files = {}, answers = [] }: { files?: Readonly<Record<string, string>>; answers?: readonly string[] } = {},
): World & { readonly said: string[]; readonly written: () => string } {
  const said: string[] = [];
  const outputs: (string | Uint8Array)[] = [];
  const left = [...answers];
  return {
    args,
    out: (content) => outputs.push(content),
    say: (line) => said.push(line),
    watched: false,
    progress: () => {},
    readText: (path) => {
      const held = files[path];
      return held === undefined ? readFile(path, 'utf8') : Promise.resolve(held);
    },
    today: () => '2026-04-18',
    ask: () => Promise.resolve(left.shift() ?? ''),
    interrupted: new AbortController().signal,
    said,
    written: () =>
      outputs
        .map((content) => (typeof content === 'string' ? content : Buffer.from(content).toString('latin1')))
        .join(''),
  };
}
