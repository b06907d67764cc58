import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { readJob } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { STATUS } from '../src/index.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));

const loader = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;

/** The real command, run from its source in a process of its own. */
function command(args: readonly string[], { input = '', cwd = root, env = {} }: CommandOptions = {}) {
  const main = join(root, 'packages/packet/src/main.ts');
  const call = ['--import', loader, '--conditions=@wattlewright/source', main, ...args];
  const options = { cwd, input, env: { ...process.env, ...env }, encoding: 'utf8' } as const;
  const { status, stdout, stderr } = spawnSync(process.execPath, call, options);
  return { status, stdout, stderr };
}

interface CommandOptions {
  readonly input?: string;
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
}

/** Every file of a folder by its path in it, its bytes as a hash. */
function bytesOf(folder: string): Record<string, string> {
  const entries = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = entries.map(({ parentPath, name }) => join(parentPath, name)).sort();
  return Object.fromEntries(
    paths.map((path) => [path.slice(folder.length + 1), createHash('sha256').update(readFileSync(path)).digest('hex')]),
  );
}

const answers = ['Shed', 'in', 'Screen', 'screen', 'size', '44 1/2', '52', ''];
const file = () => join(mkdtempSync(join(tmpdir(), 'wattlewright-')), 'job.yaml');

describe('wattlewright, the command itself', () => {
  test('gives results on one stream and messages on the other, with the status of the call', () => {
    const schema = command(['schema']);
    expect(schema.status).toBe(STATUS.fine);
    expect(JSON.parse(schema.stdout)).toHaveProperty('properties.panels');
    expect(schema.stderr).toBe('');
    const wrong = command(['chek']);
    expect(wrong.status).toBe(STATUS.unreadable);
    expect(wrong.stdout).toBe('');
    expect(wrong.stderr).toContain('no command "chek"');
  });
  test('start takes its answers from lines piped in, and its job file can be read', () => {
    const out = file();
    const { status } = command(['start', '--out', out], { input: `${answers.join('\n')}\n` });
    expect(status).toBe(STATUS.fine);
    expect(readJob(readFileSync(out, 'utf8')).panels[0]?.name).toBe('Screen');
  });
  test('start whose answers end early says so and writes nothing', () => {
    const out = file();
    const { status, stderr } = command(['start', '--out', out], { input: 'Shed\nin\n' });
    expect(status).toBe(STATUS.unreadable);
    expect(stderr).toContain('no more answers came; nothing is written');
    expect(existsSync(out)).toBe(false);
  });
  test('two processes in other places, hours and tongues write the same files, byte for byte', () => {
    const folder = mkdtempSync(join(tmpdir(), 'wattlewright-'));
    const board = { thickness: 38, width: 140, length: 2400, price: 9.5 };
    const panel = { name: 'Schirm Ä', size: { width: 500, height: 400 }, stave: { count: 3 } };
    const job = { job: 'Klein', unit: 'mm', panels: [panel], stock: [board], currency: 'EUR' };
    writeFileSync(join(folder, 'job.yaml'), JSON.stringify(job));
    const first = command(['packet', join(folder, 'job.yaml'), '--out', join(folder, 'a')], {
      env: { TZ: 'Pacific/Auckland', LANG: 'C', LC_ALL: 'C' },
    });
    const second = command(['packet', 'job.yaml', '--out', 'b'], {
      cwd: folder,
      env: { TZ: 'America/St_Johns', LANG: 'de_DE.UTF-8', LC_ALL: 'tr_TR.UTF-8' },
    });
    expect([first.status, second.status], first.stderr + second.stderr).toEqual([STATUS.fine, STATUS.fine]);
    const files = bytesOf(join(folder, 'a'));
    expect(Object.keys(files)).toEqual(expect.arrayContaining(['README.txt', 'job.json', 'packet.pdf', 'sticks.pdf']));
    expect(bytesOf(join(folder, 'b'))).toEqual(files);
  }, 120_000);
});
