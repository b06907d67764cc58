import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type CutPlan, partsOf, planCutsQuick, readJob, solve } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { cutsCsv } from '../src/cuts.ts';
import { partsCsv } from '../src/tables.ts';

const examples = ['tern-hollow-window', 'larch-deck-guard', 'wash-house-gate', 'studio-divider'];

function planned(name: string) {
  const path = fileURLToPath(new URL(`../../../examples/${name}.yaml`, import.meta.url));
  const job = readJob(readFileSync(path, 'utf8'), name);
  const parts = partsOf(solve(job), job);
  return { job, parts, plan: planCutsQuick({ ...job, parts }) };
}

/** Rows by the names of their columns; no cell of these jobs holds a comma or a quote. */
function rowsOf(csv: string): Record<string, string>[] {
  const [head = '', ...lines] = csv.trimEnd().split('\r\n');
  const names = head.split(',');
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [names[i] as string, cell])));
}

/** How often a name comes off or remains at the end, all boards alike counted. */
function freed(rows: readonly Record<string, string>[], name: string): number {
  const alike = (row: Record<string, string>): number => Number(row['boards alike']);
  return rows.reduce(
    (sum, row) => sum + alike(row) * [row['comes off'], row.remains].filter((one) => one === name).length,
    0,
  );
}

describe('cutsCsv', () => {
  test.each(examples)('of %s has every piece of every part, and cuts no piece before it is freed', (name) => {
    const { job, parts, plan } = planned(name);
    const rows = rowsOf(cutsCsv(plan, job).replaceAll(/"[^"]*"/g, 'stock'));
    for (const { letter, count, spare } of parts) expect(freed(rows, letter)).toBe(count + spare);
    const known = new Set<string>(plan.boards.map((_, i) => `board ${i + 1}`));
    for (const { piece = '', board, 'comes off': off = '', remains = '' } of rows) {
      const whole = piece === `length 1 of board ${board}` && plan.boards[Number(board) - 1]?.tree;
      expect(known.has(piece) || (whole && 'cut' in whole && whole.cut === 'rip')).toBe(true);
      known.add(off).add(remains);
    }
  });

  test.each(examples)('of %s has as many crosscuts and rips as the plan, rips by setting', (name) => {
    const { job, plan } = planned(name);
    const rows = rowsOf(cutsCsv(plan, job).replaceAll(/"[^"]*"/g, 'stock'));
    const count = (is: (stage: string) => boolean): number =>
      rows.reduce((sum, row) => sum + (is(row.stage ?? '') ? Number(row['boards alike']) : 0), 0);
    expect(count((stage) => stage === 'rip')).toBe(plan.rips);
    expect(count((stage) => stage.startsWith('crosscut'))).toBe(plan.crosscuts);
    const settings = rows.filter(({ stage }) => stage === 'rip').map(({ setting }) => Number(setting));
    expect(settings).toEqual([...settings].sort((a, b) => a - b));
    expect(new Set(settings).size).toBe(plan.fences.length);
  });

  test('a board that is a part as it is has a row without a cut', () => {
    const { job, plan } = planned('tern-hollow-window');
    const [board] = plan.boards;
    const bare = { ...plan, boards: [{ ...board, name: 'lath', count: 2, tree: { part: 'A' } }] } as CutPlan;
    expect(rowsOf(cutsCsv(bare, job))).toMatchObject([{ stage: 'no cut', 'boards alike': '2', 'comes off': 'A' }]);
  });

  test('what is set stands off the finished size by what is planed', () => {
    const { job, plan } = planned('tern-hollow-window');
    const saw = { ...job.saw, planing: 25.4 / 64 };
    const rip = rowsOf(cutsCsv(plan, { ...job, saw })).find(
      ({ stage, 'cut at': at }) => stage === 'rip' && at === '3/16',
    );
    expect(rip?.['fence or stop']).toBe('13/64');
  });
});

describe('partsCsv', () => {
  test('gives finished lengths, and apart from them what stiles and staves are cut long', () => {
    const { job, parts } = planned('tern-hollow-window');
    const rows = rowsOf(partsCsv(parts, job).replaceAll(/"[^"]*"/g, 'text'));
    expect(rows.map(({ name, 'cut long by': long }) => [name, long])).toEqual(
      parts.map(({ role, name }) => [name, role === 'stile' || role === 'stave' ? '1' : '0']),
    );
  });
});
