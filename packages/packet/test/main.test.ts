import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readJob } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { STATUS } from '../src/index.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** The real command, run from its source in a process of its own. */
function command(args: readonly string[], input = '') {
  const call = ['--import', 'tsx', '--conditions=@wattlewright/source', 'packages/packet/src/main.ts', ...args];
  const { status, stdout, stderr } = spawnSync(process.execPath, call, { cwd: root, input, encoding: 'utf8' });
  return { status, stdout, stderr };
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
    const { status } = command(['start', '--out', out], `${answers.join('\n')}\n`);
    expect(status).toBe(STATUS.fine);
    expect(readJob(readFileSync(out, 'utf8')).panels[0]?.name).toBe('Screen');
  });
  test('start whose answers end early says so and writes nothing', () => {
    const out = file();
    const { status, stderr } = command(['start', '--out', out], 'Shed\nin\n');
    expect(status).toBe(STATUS.unreadable);
    expect(stderr).toContain('no more answers came; nothing is written');
    expect(existsSync(out)).toBe(false);
  });
});
