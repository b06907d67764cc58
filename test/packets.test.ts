import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Job, readJob } from '@wattlewright/model';
import { type PacketFile, packet } from '@wattlewright/packet';
import Papa from 'papaparse';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { SaxesParser } from 'saxes';
import { beforeAll, describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const EXAMPLES = ['tern-hollow-window', 'larch-deck-guard', 'wash-house-gate', 'studio-divider'];
const read = (name: string): Job => readJob(readFileSync(join(root, 'examples', `${name}.yaml`), 'utf8'));
const text = ({ content }: PacketFile): string =>
  typeof content === 'string' ? content : Buffer.from(content).toString('latin1');
const hash = (files: readonly PacketFile[]): string =>
  files.reduce((sum, { name, content }) => sum.update(name).update(content), createHash('sha256')).digest('hex');

async function pagesOf(content: string | Uint8Array) {
  const pdf = await getDocument({ data: Uint8Array.from(content as Uint8Array), verbosity: 0 }).promise;
  const first = await (await pdf.getPage(1)).getTextContent();
  return {
    count: pdf.numPages,
    words: first.items.map((item) => ('str' in item ? item.str : '')).join(' '),
    outline: await pdf.getOutline(),
  };
}

/** Throws for XML that is not well formed. */
function parseXml(xml: string): { readonly elements: Set<string>; readonly text: string } {
  const elements = new Set<string>();
  let words = '';
  const parser = new SaxesParser();
  parser.on('opentag', ({ name }) => elements.add(name));
  parser.on('text', (part) => {
    words += part;
  });
  parser.write(xml).close();
  return { elements, text: words };
}

describe.each(EXAMPLES)('packet(%s)', (example) => {
  const job = read(example);
  let files: PacketFile[] = [];
  const file = (name: string): PacketFile => files.find((one) => one.name === name) as PacketFile;
  beforeAll(async () => {
    files = await packet(job);
  });

  test('holds everything that a packet holds', () => {
    expect(files.map(({ name }) => name)).toEqual(
      expect.arrayContaining(['README.txt', 'packet.pdf', 'sticks.pdf', 'parts.csv', 'cuts.csv', 'job.json']),
    );
    expect(files.filter(({ name }) => /^drawings\/.*\.svg$/.test(name)).length).toBeGreaterThanOrEqual(15);
    expect(new Set(files.map(({ name }) => name)).size).toBe(files.length);
  });

  test('its PDFs open in another reader with the pages that README.txt says, bookmarks and the job’s name', async () => {
    const readme = text(file('README.txt'));
    for (const name of ['packet.pdf', 'sticks.pdf']) {
      const { count, words, outline } = await pagesOf(file(name).content);
      expect(readme).toMatch(new RegExp(`${name.replace('.', '\\.')}\\s+${count} `));
      expect(outline?.length).toBeGreaterThan(0);
      expect(words.length).toBeGreaterThan(20);
    }
  });

  test('qpdf finds no fault in its PDFs', ({ skip }) => {
    const missing = spawnSync('qpdf', ['--version']).error !== undefined;
    if (missing && process.env.CI !== 'true') skip('qpdf is not installed here; CI has it');
    const folder = mkdtempSync(join(tmpdir(), 'wattlewright-'));
    for (const name of ['packet.pdf', 'sticks.pdf']) {
      writeFileSync(join(folder, name), file(name).content);
      expect(execFileSync('qpdf', ['--check', join(folder, name)], { encoding: 'utf8' })).toContain(
        'No syntax or stream encoding errors found',
      );
    }
  });

  test('its tables parse by RFC 4180 in another parser, row by row as wide as their heads', () => {
    for (const name of ['parts.csv', 'cuts.csv']) {
      const { data, errors } = Papa.parse<string[]>(text(file(name)).trimEnd(), { newline: '\r\n' });
      expect(errors).toEqual([]);
      expect(data.length).toBeGreaterThan(4);
      for (const row of data) expect(row.length).toBe(data[0]?.length);
    }
  });

  test('job.json carries job, panels, parts, plan and findings as data', () => {
    const data = JSON.parse(text(file('job.json')));
    expect(data.panels.map(({ name }: { name: string }) => name)).toEqual(job.panels.map(({ name }) => name));
    expect(data.parts.length).toBeGreaterThan(4);
    expect(data.plan.status).toMatch(/optimal|within/);
    expect(Array.isArray(data.findings)).toBe(true);
  });

  test('every drawing is well-formed XML with title and description', () => {
    for (const one of files.filter(({ name }) => name.endsWith('.svg'))) {
      const { elements } = parseXml(text(one));
      for (const name of ['svg', 'title', 'desc']) expect(elements, one.name).toContain(name);
    }
  });

  test('the same job gives the same bytes', async () => {
    expect(hash(await packet(read(example)))).toBe(hash(files));
  });
});

describe('packet of odd words', () => {
  const NAMES = ['</text><script>alert(1)</script>', 'Ξύλινο παραπέτασμα', 'Schirm für 🌲 Straße', '=1+1', '@SUM(A1)'];
  const odd = readJob(
    JSON.stringify({
      job: NAMES[0],
      unit: 'mm',
      client: NAMES[2],
      shop: NAMES[1],
      panels: NAMES.map((name, i) => ({ name, size: { width: 620 + i, height: 420 }, stave: { count: 3 } })),
    }),
  );
  let files: PacketFile[] = [];
  beforeAll(async () => {
    files = await packet(odd);
  });

  test('stays text in every drawing: nothing is run, nothing is blank', () => {
    for (const one of files.filter(({ name }) => name.endsWith('.svg'))) {
      const { elements } = parseXml(text(one));
      expect(elements.has('script'), one.name).toBe(false);
    }
    const greek = files.find(({ name }) => /stave-stick/.test(name) && /ξύλινο/.test(name)) as PacketFile;
    expect(parseXml(text(greek)).text).toContain(NAMES[1]);
  });
  test('is disarmed where a spreadsheet would run it', () => {
    const { data } = Papa.parse<string[]>(text(files.find(({ name }) => name === 'parts.csv') as PacketFile));
    for (const cell of data.flat()) expect(cell).not.toMatch(/^[=@]/);
  });
  test('makes names of files that stay in the packet', () => {
    for (const { name } of files) expect(name).not.toMatch(/\.\.|[<>:"\\|?*]/);
  });
});
