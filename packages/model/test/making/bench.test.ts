import { describe, expect, test } from 'vitest';
import { type CutPlan, makingOrder, partsOf, type Step, screwSchedule, solve, woodChange } from '../../src/index.ts';
import { openingSpare } from '../../src/making/openings.ts';
import { growthRoom, roomPerPercent, roomsByMoisture } from '../../src/making/room.ts';
import { thickerBy } from '../../src/making/trial.ts';
import { inches, jobOf, panelOf } from '../support.ts';
import { place, said, stepsOf } from './steps.ts';

describe('makingOrder, what the bench asks', () => {
  const text = (steps: readonly Step[], title: RegExp) => said(steps[place(steps, title)] as Step);
  const outdoors = { site: { where: 'outdoors' }, finish: { kind: 'penetrating' } };

  test('corner holes stay dry: they open into glued faces', () => {
    expect(text(stepsOf({}, outdoors), /^Coat end grain/)).toContain('Leave the corner holes dry');
  });

  test('slats are smoothed before they are measured, and not again', () => {
    const steps = stepsOf({});
    expect(text(steps, /measure the stack/)).toMatch(/First rub the slats/);
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
      text(stepsOf({}), /^Bore/),
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

  test('wood woven drier wants more room, by what its stack has more to swell; the cover strips stay right', () => {
    const panel = panelOf({ size: { width: '44 1/2', height: 52 } });
    const { movement, courses } = panel;
    const each = movement.swell / (movement.wettest - movement.built);
    const [planned, two, four, wetter] = roomsByMoisture(panel);
    expect([two?.moisture, four?.moisture]).toEqual([movement.built - 2, movement.built - 4]);
    expect(planned?.room).toBeCloseTo(courses.allowance, 9);
    // Percents are alike while the coefficient holds, 6 to 14 %: Wood Handbook FPL-GTR-190, ch. 13.
    expect((two?.room ?? 0) - (planned?.room ?? 0)).toBeCloseTo(2 * each, 0);
    expect((four?.least ?? 0) - (planned?.least ?? 0)).toBeCloseTo(4 * each, 0);
    expect(wetter?.moisture).toBeLessThanOrEqual(movement.wettest);
    expect(wetter?.room).toBeLessThan(planned?.room ?? 0);
    const steps = stepsOf({});
    expect(text(steps, /Choose/)).not.toMatch(/for each percent/);
    expect(text(steps, /measure the stack/)).toMatch(/stile, at \d+ % \+ /);
  });

  test('where gaps are planned stiles stay, and the gaps have a least for every moisture', () => {
    const gaps = text(stepsOf({ fit: { vary: 'gaps' } }), /measure the stack/);
    expect(gaps).toMatch(/Stiles and staves stay as they are planned.* stile as planned, 49 in/);
    expect(gaps).toMatch(/all gaps together, at least, wood at \d+ % when woven \(as planned\)/);
    expect(gaps).not.toMatch(/slats pressed together \+/);
  });

  test('how much taller a frame may come out: the gap over it but 1/16, for the one under it stays; no limit without one', () => {
    const opening = { width: 45, height: 52, gap: { top: '1/4', bottom: '1/2' } };
    const panel = panelOf({ opening });
    expect(growthRoom(panel)).toBeCloseTo(inches(1 / 4 - 1 / 16), 6);
    expect(growthRoom(panelOf({ size: { width: 44, height: 52 } }))).toBeUndefined();
  });

  test('wood beyond the table is brought to the place, or has so much more for every percent', () => {
    const job = { site: { where: 'outdoors', driest: 8, wettest: 14, built: 12 } };
    const panel = panelOf({ size: { width: '44 1/2', height: 52 } }, job);
    const told = text(stepsOf({}, job), /measure the stack/);
    expect(told).toMatch(/brought to what the place makes it first, 8 to 14 %/);
    const { below, room } = roomPerPercent(panel);
    expect(below).toBe(8);
    // 1 % of the slats' coefficient at least, and no more than a tenth over it.
    const size = panel.courses.count * panel.courses.height;
    const one = woodChange(panel.spec.wood.slat.wood, { size, from: 9, to: 10 });
    expect(room / one).toBeGreaterThan(0.95);
    expect(room / one).toBeLessThan(1.1);
    expect(told).toMatch(/stile, for every percent under 8 % [0-9/ ]+ in more/);
  });

  test('strips that end over the top course of slats woven dry are told of, with the moisture', () => {
    const site = { where: 'outdoors', driest: 12, wettest: 16.5, built: 14 };
    expect(text(stepsOf({}, { site }), /measure the stack/)).toMatch(
      /Woven at \d+ % or drier, the cover strips end above the top course at first/,
    );
    const roomy = text(stepsOf({ top: { cover: 3 } }, { site }), /measure the stack/);
    expect(roomy).not.toMatch(/end above the top course at first/);
  });

  test('what follows a trimmed height is named, and a diagonal is alike rather than a figure', () => {
    const told = text(stepsOf({ use: 'gate', gate: { brace: { kind: 'cable' } } }), /measure the stack/);
    expect(told).toMatch(/the height over all, both diagonals, .*the length of the brace and its wire follow it/);
    expect(text(stepsOf({}), /Dry fit/)).toMatch(/diagonals alike, [0-9/ ]+ in if built as planned/);
    expect(text(stepsOf({}), /measure the stack/)).not.toMatch(/brace/);
  });

  test('an opening that is not as planned: how much the gaps take up', () => {
    const opening = { width: 45, height: 52, gap: { sides: '1/4', top: '1/4', bottom: '1/2' } };
    // Both gaps less 1/16 in at each side.
    expect(openingSpare(panelOf({ opening }))).toBeCloseTo(inches(1 / 2 - 1 / 8), 6);
    const gate = { use: 'gate', gate: { clear: { hinge: '3/8', latch: '1/2', ground: 2 } } };
    const spare = openingSpare(panelOf({ size: { width: 44, height: 52 }, ...gate })) ?? Number.NaN;
    expect(spare).toBeGreaterThan(0);
    expect(spare).toBeLessThanOrEqual(inches(7 / 8 - 1 / 4));
    expect(text(stepsOf(gate), /^Choose/)).toMatch(/opening planned, its width 45 3\/8 in .*narrower or wider/);
    expect(text(stepsOf({ use: 'guard' }), /^Choose/)).toMatch(/posts apart, at least 44 5\/8 in/);
  });

  test('slats may be as much thicker as the bend still bears: 0.5 mm, less where it is nearly used up', () => {
    const size = { width: 1000, height: 1200 };
    const roomy = panelOf({ size, slat: { thickness: 3 } }, { unit: 'mm' });
    expect(thickerBy(roomy)).toBeCloseTo(0.5, 9);
    const use = (panel: typeof roomy) => Math.max(...panel.rows.map(({ bend }) => bend.use));
    const tight = [5, 6, 7, 8, 9, 10]
      .map((count) => panelOf({ size, stave: { count }, slat: { thickness: 5 } }, { unit: 'mm' }))
      .find((panel) => use(panel) > 0.5);
    if (!tight) throw new Error('no panel bends its slats so hard');
    expect(thickerBy(tight)).toBeLessThan(0.5);
    expect(thickerBy(tight)).toBeGreaterThanOrEqual(0.1);
  });

  test('a frame woven by two says so before the wood is bought', () => {
    expect(text(stepsOf({}), /^Choose/)).toMatch(/Weaving takes two/);
    expect(text(stepsOf({ size: { width: 44, height: 40 } }), /^Choose/)).not.toMatch(/Weaving takes two/);
  });

  test('wood behind a screen: how thick it has to be, and the pilot where it is hard', () => {
    const told = text(stepsOf({}), /Fix the screen/);
    expect(told).toMatch(/pilot where what is behind is hardwood [0-9/]+ in/);
    expect(told).toMatch(/wood behind at each screw, at least [0-9/ ]+ in/);
    expect(text(stepsOf({ screen: { into: 'masonry' } }), /Fix the screen/)).not.toMatch(/hardwood/);
  });

  test('fixings of brackets are carried to the back, not cut into the face', () => {
    expect(text(stepsOf({ use: 'guard' }), /^Mark/)).toMatch(/middles of the brackets, which go on the back/);
    expect(text(stepsOf({}), /^Mark/)).not.toMatch(/brackets/);
    expect(text(stepsOf({}), /^Mark/)).toMatch(/knife only what is hidden later/);
  });

  test('stand-off blocks are bevelled on the long stick, so much and that way', () => {
    const told = text(stepsOf({ screen: { mounting: 'blocks' } }), /^Crosscut/);
    // 1 1/2 in x tan 10 degrees is 0.26 in.
    expect(told).toMatch(/on the long stick, .*10° off square.*: 17\/64 in lower at one side/);
  });

  test('a gate has its stop strip told: where, and how thick', () => {
    const gate = (swing: string) => text(stepsOf({ use: 'gate', gate: { swing, clear: { latch: '1/2' } } }), /^Hang/);
    // The gap of 1/2 in and 3/8 in over the leaf.
    expect(gate('towards the front')).toMatch(/stop strip, if there is one against the back .*7\/8 in thick/);
    expect(gate('towards the back')).toMatch(/stop strip, if there is one against the front/);
    expect(gate('towards the back')).toMatch(/pilot where the post is hardwood [0-9/]+ in/);
  });

  test('sanding comes before marking, marking before boring, and pilots go through the holes bored', () => {
    const steps = stepsOf({}, outdoors);
    const order = [/^Ease/, /^Mark/, /^Bore/, /Dry fit/].map((title) => place(steps, title));
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(text(steps, /^Bore/)).toMatch(/No pilots yet/);
    expect(text(steps, /Dry fit/)).toMatch(/Drill the pilots of the corners through the holes of the rails/);
    expect(text(steps, /^Ease/)).not.toMatch(/arrises? of (?:staves and )?slats/);
  });

  test('panels alike but for places or count: what is alike is said once', () => {
    const cap = { use: 'guard', guard: { cap: { height: 1, depth: 4 } } };
    const steps = stepsOf(
      {},
      {
        panels: [
          { name: 'Long', ...cap, size: { width: 60, height: 36 } },
          { name: 'Short', ...cap, size: { width: 30, height: 36 } },
        ],
      },
    );
    const figures = steps.at(-1)?.figures.filter(({ what }) => what.startsWith('cap rail')) ?? [];
    expect(figures.map(({ what, where }) => [what.replace(/,.*/, ''), where])).toEqual([
      ['cap rail to top rail', 'Long'],
      ['cap rail to top rail', 'Short'],
      ['cap rail to top rail', ''],
      ['cap rail to top rail', 'Long'],
      ['cap rail to top rail', 'Short'],
    ]);
    expect(figures[0]?.value).toMatch(/^\d in each panel$/);
    expect(figures[2]?.value).toMatch(/^No\. .*pilot/);
    expect(figures[3]?.what).toMatch(/along the middle of the cap.*from its left end$/);
    expect(figures[3]?.value).toMatch(/^[\d /,and]+ in$/);
  });

  test('an opening is measured again before a rail is cut; a panel on its own has none', () => {
    expect(text(stepsOf({ use: 'guard' }), /^Choose/)).toMatch(/Measure every opening once more before a rail is cut/);
    expect(text(stepsOf({ use: 'divider' }), /^Choose/)).not.toMatch(/opening/);
  });

  test('a short piece is clamped, on a carrier where little of the stick is left', () => {
    const blocks = stepsOf({ screen: { mounting: 'blocks' } });
    expect(blocks[place(blocks, /^Crosscut/)]?.cautions.join()).toMatch(
      /Clamp the stick to the mitre fence.*less than 12 in of the stick.*longer carrier/,
    );
  });

  test('cut sheets that leave a part out are followed for the others', () => {
    const job = jobOf({ size: { width: '44 1/2', height: 52 } });
    const panels = solve(job);
    const parts = partsOf(panels, job);
    const tree = { part: 'A' } as const;
    const plan = { status: 'impossible', boards: [{ tree }], fences: [] } as unknown as CutPlan;
    const steps = makingOrder(job, { panels, parts, plan });
    expect(text(steps, /^Rip/)).toMatch(/The cut sheets leave out parts B, stile; C, stave; D, slat/);
    expect(text(steps, /^Rip/)).not.toMatch(/no cut sheets|A, rail/);
  });

  test('no word of strips where there are none', () => {
    const bare = stepsOf({ top: { cover: 0 } }, outdoors);
    expect(text(bare, /^Ease/)).not.toMatch(/strip/);
    expect(text(bare, /^Coat/)).not.toMatch(/strip/);
  });

  test('pins of stop strips: half with the staves, half after weaving', () => {
    const divider = {
      use: 'divider',
      size: { width: 1200, height: 1650 },
      rail: { depth: 45 },
      stile: { depth: 45 },
      slat: { thickness: 4, stop: 12 },
    };
    const stops = stepsOf(divider, { unit: 'mm' });
    const pins = (title: RegExp) => Number(/stop strip to stile (\d+) of pin/.exec(text(stops, title))?.[1]);
    const all = screwSchedule(panelOf(divider, { unit: 'mm' })).find(
      ({ joint }) => joint === 'stop strip to stile',
    )?.count;
    expect(pins(/Set the staves/) + pins(/^Square/)).toBe(all);
    expect(pins(/Set the staves/)).toBe(pins(/^Square/));
  });

  test('a bend over what a slat is held at is warned of where it is ripped and where it is woven', () => {
    const hard = stepsOf({ slat: { thickness: '5/16' }, stave: { count: 5 } });
    for (const title of [/^Rip/, /^Weave/])
      expect(hard[place(hard, title)]?.cautions.join()).toMatch(/more than the 55 % they are held at for good/);
    expect(text(stepsOf({}), /^Rip/)).not.toMatch(/held at for good/);
  });

  test('a guard whose gap lets the ball through has no fall to give away', () => {
    const guard = stepsOf({ use: 'guard', size: { width: 1400, height: 900 }, guard: { floor: 140 } }, { unit: 'mm' });
    expect(text(guard, /between its posts/)).toMatch(/passes none: it passes already/);
  });

  test('panels of several uses are named in the step that hangs them', () => {
    const two = stepsOf(
      {},
      {
        panels: [
          { name: 'Side', size: { width: 44, height: 52 } },
          { name: 'Door', use: 'gate', size: { width: 30, height: 52 } },
        ],
      },
    );
    expect(two.slice(-2).map(({ title }) => title)).toEqual(['Fix the screen: Side', 'Hang the gate: Door']);
  });

  test('tall frames are woven standing by two, low ones lying', () => {
    expect(text(stepsOf({ size: { width: 40, height: 60 } }), /Set the staves/)).toMatch(/standing, by two/);
    expect(text(stepsOf({ size: { width: 40, height: 40 } }), /Set the staves/)).toMatch(/across two trestles/);
  });

  test('tips of a screen’s screws are told beside the glass', () => {
    expect(text(stepsOf({ screen: { glass: 3 } }), /Fix the screen/)).toMatch(
      /tips of the screws.*glass planned at 3 in/,
    );
  });
});
