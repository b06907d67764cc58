import { expect, test } from 'vitest';
import { screwRules } from '../../src/findings/screws.ts';
import { meetings } from '../../src/hardware/meet.ts';
import { screwSchedule } from '../../src/index.ts';
import { subjectOf } from './cases/case.ts';

const gate = (inset: number) =>
  subjectOf({ use: 'gate', size: { width: 34, height: 60 }, gate: { hinges: { inset } } });

test('hinges whose screws meet the corner’s are told where they are clear, and there they are', () => {
  const found = screwRules.find(({ code }) => code === 'screws-meet')?.judge(gate(3)) ?? [];
  const [{ mend } = { mend: '' }] = [found].flat();
  const [, whole, part] = /middles (\d+)(?: (\d\/\d))? in from the ends/.exec(mend) ?? [];
  const [over = 0, under = 1] = (part ?? '').split('/').map(Number);
  const [panel] = gate(Number(whole) + over / under).panels;
  if (!panel) throw new Error('no panel');
  expect(meetings(screwSchedule(panel), panel)).toEqual([]);
});
