import { describe, expect, test } from 'vitest';
import { type Step, screwSchedule } from '../../src/index.ts';
import { inches, panelOf } from '../support.ts';
import { place, said, stepsOf } from './steps.ts';

describe('makingOrder, what the bench asks', () => {
  const text = (steps: readonly Step[], title: RegExp) => said(steps[place(steps, title)] as Step);
  const outdoors = { site: { where: 'outdoors' }, finish: { kind: 'penetrating' } };

  test('corner holes stay dry: they open into glued faces', () => {
    expect(text(stepsOf({}, outdoors), /^Coat end grain/)).toContain('Leave the corner holes dry');
  });

  test('slats are smoothed before they are measured, and not again', () => {
    const steps = stepsOf({});
    expect(text(steps, /measure the stack/)).toMatch(/First smooth the slats/);
    expect(text(steps, /^Ease and sand/)).not.toMatch(/saw marks/);
  });

  test('the check bar is told of before the first step that uses a template', () => {
    expect(text(stepsOf({}), /grooves/)).toMatch(/check bar of every stick and template/);
  });

  test('the stave’s own holes: heights in the frame less the bed of the groove', () => {
    const panel = panelOf({ size: { width: '44 1/2', height: 52 } });
    const row = screwSchedule(panel).find(({ joint }) => joint === 'end stave to stile');
    const least = Math.min(...(row?.places ?? []).map(({ y }) => y)) - panel.rail.height + panel.groove.depth;
    const shown = /from its own foot, which stands in the groove ([\d ]+(?:\/\d+)?)/.exec(
      text(stepsOf({}), /Dry fit/),
    )?.[1];
    const [whole = 0, part = '0/1'] = [Number(shown?.trim().split(' ')[0]), shown?.trim().split(' ')[1]];
    const [over, under] = part.split('/').map(Number) as [number, number];
    expect(inches(whole + over / under)).toBeCloseTo(least, 0);
  });

  test('the wire of a square leaf only takes up slack; the lift is for one that has sagged', () => {
    const gate = stepsOf({ use: 'gate', size: { width: 36, height: 48 } });
    expect(text(gate, /Hang the gate/)).toMatch(/only takes up slack.*only for a leaf that has sagged a lift of/);
  });

  test('a guard tells how far the floor may fall: 101.6 less 80 stays under the ball at 21', () => {
    const guard = stepsOf(
      { use: 'guard', size: { width: 1400, height: 900 }, guard: { floor: 80 } },
      { unit: 'mm', mark: 1 },
    );
    expect(text(guard, /between its posts/)).toMatch(
      /fall of the floor under it, at most.* 21 mm.*post behind the back face.* 45 mm/,
    );
  });

  test('felts end with the feet', () => {
    const divider = stepsOf({ use: 'divider', size: { width: 40, height: 60 } });
    expect(text(divider, /Set up the divider/)).toMatch(/flush with their ends.*foot beyond the frame/);
  });

  test('each percent of moisture moves the room as the stack’s wood moves', () => {
    const { movement } = panelOf({ size: { width: '44 1/2', height: 52 } });
    const each = movement.swell / (movement.wettest - movement.built);
    const shown = /for each percent drier than \S+ % (\d+)\/(\d+) in more/.exec(text(stepsOf({}), /Choose/));
    expect(Math.abs(inches(Number(shown?.[1]) / Number(shown?.[2])) - each)).toBeLessThan(inches(1 / 64));
  });

  test('where gaps are planned they take up the swelling, not a room over the stack', () => {
    const gaps = text(stepsOf({ fit: { vary: 'gaps' } }), /Choose/);
    expect(gaps).toMatch(/gaps between courses, all together, for each percent/);
    expect(gaps).not.toMatch(/room over the stack, for/);
  });

  test('tips of a screen’s screws are told beside the glass', () => {
    expect(text(stepsOf({ screen: { glass: 3 } }), /Fix the screen/)).toMatch(
      /tips of the screws.*glass planned at 3 in/,
    );
  });
});
