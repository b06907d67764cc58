import { existsSync } from 'node:fs';
import { mkdtemp, readdir, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readJob } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { run, STATUS } from '../src/index.ts';
import { runOf } from './sheets/settled.ts';
import { worldOf } from './world.ts';

const SMALL = `job: Shed
unit: mm
panels:
  - { name: Light, size: { width: 620, height: 420 }, stave: { count: 3 } }
saw: { narrowest: 0, shortest: 0 }
`;
const files = { 'job.yaml': SMALL };

async function call(args: string[], more: Parameters<typeof worldOf>[1] = { files }) {
  const world = worldOf(args, more);
  return { status: await run(world), said: world.said.join('\n'), out: world.written() };
}

const folder = () => mkdtemp(join(tmpdir(), 'wattlewright-'));

describe('run: help and calls that cannot be followed', () => {
  test('--help tells every command and ends with 0', async () => {
    const { status, out } = await call(['--help']);
    expect(status).toBe(STATUS.fine);
    for (const name of ['start', 'packet', 'check', 'plan', 'sticks', 'draw', 'woods', 'schema'])
      expect(out).toContain(`wattlewright ${name}`);
  });
  test('no command prints the help and ends with 2', async () => {
    expect((await call([])).status).toBe(STATUS.unreadable);
  });
  test.each([
    [['pack'], 'no command "pack"; try one of packet'],
    [['check'], 'name a job file'],
    [['check', 'job.yaml', '--jsn'], "Unknown option '--jsn'"],
    [['packet', 'job.yaml'], 'say where to write with --out'],
    [['draw', 'job.yaml', 'elevatoin'], 'no view "elevatoin" of this job; there are elevation'],
  ])('%j says what would do and ends with 2', async (args, says) => {
    const { status, said } = await call(args);
    expect(status).toBe(STATUS.unreadable);
    expect(said).toContain(says);
  });
  test('a job file that is not there ends with 2 and names it', async () => {
    const { status, said } = await call(['check', 'gone.yaml'], {});
    expect(status).toBe(STATUS.unreadable);
    expect(said).toContain('there is no file gone.yaml; give the path of a job file');
  });
  test('every problem of a job comes with file, line and column, and nothing is written', async () => {
    const out = join(await folder(), 'packet');
    const bad = SMALL.replace('height: 420', 'hight: 420').replace('count: 3', 'count: 1');
    const { status, said } = await call(['packet', 'job.yaml', '--out', out], { files: { 'job.yaml': bad } });
    expect(status).toBe(STATUS.unreadable);
    expect(said).toMatch(/^job\.yaml:4:\d+ panels\[0\]\.size\.height: missing/m);
    expect(said).toMatch(/^job\.yaml:4:\d+ panels\[0\]\.size\.hight: unknown key; did you mean "height"/m);
    expect(said).toMatch(/^job\.yaml:4:\d+ panels\[0\]\.stave\.count/m);
    expect(existsSync(out)).toBe(false);
  });
  test('what fits no paper is a problem of the job at its line, ends with 2, and nothing is written', async () => {
    const out = join(await folder(), 'packet');
    const job = JSON.stringify(runOf(40, 'A4')).replace('"paper"', '\n"paper"');
    const { status, said } = await call(['packet', 'job.yaml', '--out', out], { files: { 'job.yaml': job } });
    expect(status).toBe(STATUS.unreadable);
    expect(said).toMatch(/^job\.yaml:2:\d+ paper\.sheets: .* fits no paper up to A2 .* would do \(found A4\)$/m);
    expect(existsSync(out)).toBe(false);
  });
  test('a fit that cannot close is put on its line', async () => {
    const odd = SMALL.replace('stave:', 'fit: { vary: slats, from: 199, to: 200, prefer: 200 }, stave:');
    const { status, said } = await call(['check', 'job.yaml'], { files: { 'job.yaml': odd } });
    expect(status).toBe(STATUS.unreadable);
    expect(said).toMatch(/^job\.yaml:4:\d+ panels\[0\]\.fit: .*nearest outside heights that work/m);
  });
});

describe('run: results', () => {
  test('check prints findings, --json the same as data, and a stop ends with 1', async () => {
    const broken = SMALL.replace('stave:', 'slat: { thickness: 18 }, stave:');
    const text = await call(['check', 'job.yaml'], { files: { 'job.yaml': broken } });
    expect(text.status).toBe(STATUS.stop);
    expect(text.out).toContain('[slat-strength]');
    const { out } = await call(['check', 'job.yaml', '--json'], { files: { 'job.yaml': broken } });
    expect(JSON.parse(out)[0]).toMatchObject({ level: 'stop' });
  });
  test('plan says what to buy and how good the plan is', async () => {
    const { status, out } = await call(['plan', 'job.yaml']);
    expect(status).toBe(STATUS.fine);
    expect(out).toMatch(/parts \d+ %/);
    expect(JSON.parse((await call(['plan', 'job.yaml', '--json'])).out).boards.length).toBeGreaterThan(0);
  });
  test('woods lists the wood of the job among all others', async () => {
    const { out } = await call(['woods', 'job.yaml']);
    expect(out).toContain('* western redcedar');
    expect(out.split('\n').length).toBeGreaterThan(30);
  });
  test('schema is JSON Schema', async () => {
    expect(JSON.parse((await call(['schema'])).out).properties.panels).toBeDefined();
  });
  test('draw lists the views, and draws one as SVG or PDF', async () => {
    const names = (await call(['draw', 'job.yaml'])).out.trim().split('\n');
    expect(names).toEqual(
      expect.arrayContaining(['elevation', 'weave-section', 'stave-stick', 'course-stick', 'weave-chart']),
    );
    expect((await call(['draw', 'job.yaml', 'elevation'])).out).toMatch(/^(<\?xml[^>]*>\s*)?<svg/);
    expect((await call(['draw', 'job.yaml', 'stave-stick', '--pdf'])).out).toMatch(/^%PDF-1\.\d/);
  });
  test('packet writes its folder and sticks its file', async () => {
    const out = await folder();
    const { status } = await call(['packet', 'job.yaml', '--out', join(out, 'p')]);
    expect([STATUS.fine, STATUS.stop]).toContain(status);
    expect(await readdir(join(out, 'p'))).toEqual(
      expect.arrayContaining([
        'README.txt',
        'packet.pdf',
        'sticks.pdf',
        'parts.csv',
        'cuts.csv',
        'job.json',
        'drawings',
      ]),
    );
    await call(['sticks', 'job.yaml', '--out', join(out, 's.pdf')]);
    expect((await readFile(join(out, 's.pdf'))).subarray(0, 5).toString()).toBe('%PDF-');
  });
  test('packet into a folder that it did not make is refused with 3', async () => {
    const { status, said } = await call(['packet', 'job.yaml', '--out', new URL('../src', import.meta.url).pathname]);
    expect(status).toBe(STATUS.machine);
    expect(said).toContain('did not make');
  });
});

describe('run: start', () => {
  test('a few answers make a job file that reads, and a wrong answer is asked again', async () => {
    const file = join(await folder(), 'job.yaml');
    const answers = ['Shed', 'feet', 'in', 'Light', 'screen', 'opening', 'wide', '44 1/2', '52', 'oak?', ''];
    const { status, said } = await call(['start', '--out', file], { answers });
    expect(status).toBe(STATUS.fine);
    expect(said).toContain('in or mm, please');
    const job = readJob(await readFile(file, 'utf8'));
    expect(job.panels[0]?.opening?.width).toBeCloseTo(44.5 * 25.4, 9);
    expect(job.date).toBe('2026-04-18');
  });
});
