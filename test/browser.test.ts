import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { type Browser, chromium } from 'playwright-core';
import { afterAll, describe, expect, test } from 'vitest';
import { lacking } from '../packages/drafting/test/support/outside.ts';
import { drawJob } from './support/page.ts';

const path = '/usr/bin/chromium';
const missing = lacking(path);

describe.skipIf(missing)(`model and drafting in a browser${missing ? ` (${missing})` : ''}`, () => {
  let browser: Browser | undefined;
  afterAll(async () => await browser?.close());

  test('a job read, solved, checked and drawn there gives the text that it gives here', async () => {
    const bundle = await build({
      entryPoints: [fileURLToPath(new URL('support/page.ts', import.meta.url))],
      bundle: true,
      write: false,
      platform: 'browser',
      format: 'esm',
      conditions: ['@wattlewright/source'],
      // The solver asks for these only where it finds itself in Node.
      external: ['node:*'],
    });
    browser = await chromium.launch({ executablePath: path, args: ['--no-sandbox', '--disable-gpu'] });
    const page = await browser.newPage();
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    // A page with an address, as a bundled module has one; answered here, nothing goes over any wire.
    await page.route('http://localhost/**', async (route) => {
      const script = route.request().url().endsWith('.js');
      const body = script
        ? (bundle.outputFiles[0]?.text ?? '')
        : '<!doctype html><script type="module" src="page.js"></script>';
      await route.fulfill({ contentType: script ? 'text/javascript' : 'text/html', body });
    });
    await page.goto('http://localhost/', { waitUntil: 'load' });
    expect(faults).toEqual([]);
    const job = readFileSync(new URL('../examples/tern-hollow-window.yaml', import.meta.url), 'utf8');
    const there = await page.evaluate<ReturnType<typeof drawJob>>(`drawJob(${JSON.stringify(job)})`);
    const here = drawJob(job);
    expect(farthest(JSON.parse(there.settled), JSON.parse(here.settled))).toBeLessThan(1e-9);
    expect(there.drawings.length).toBe(here.drawings.length);
    for (const [i, svg] of there.drawings.entries()) expect(plain(svg)).toBe(plain(here.drawings[i] as string));
  });
});

/** How far the numbers of two values are apart, as a share of each; anything else unlike makes it infinite. */
function farthest(a: unknown, b: unknown): number {
  // The last digit of a sine or a power is the engine's own, and engines of two years differ in it.
  if (typeof a === 'number' && typeof b === 'number') return Math.abs(a - b) / Math.max(1, Math.abs(b));
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b ? 0 : Infinity;
  const [mine, other] = [Object.entries(a), new Map(Object.entries(b))];
  if (mine.length !== other.size) return Infinity;
  return mine.reduce((most, [key, value]) => Math.max(most, farthest(value, other.get(key))), 0);
}

/** A browser writes a namespace and the order of attributes its own way: what is drawn is compared, tag by tag. */
function plain(svg: string): string {
  const tags = [...svg.matchAll(/<([\w:]+)((?:\s+[\w:-]+="[^"]*")*)\s*\/?>([^<]*)/g)];
  return tags
    .map(
      ([, name = '', attributes = '', words]) =>
        `${name} ${attributes
          .trim()
          .split(/\s+(?=[\w:-]+=")/)
          .sort()
          .join(' ')} ${words}`,
    )
    .join('\n');
}
