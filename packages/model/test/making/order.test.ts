import { describe, expect, test } from 'vitest';
import {
  amountText,
  type CutPlan,
  cautions,
  hardwareList,
  makingOrder,
  measuredAdvice,
  partsOf,
  type Step,
  screwSchedule,
  solve,
} from '../../src/index.ts';
import { trialBend } from '../../src/making/trial.ts';
import { inches, jobOf, panelOf } from '../support.ts';
import { place, said, stepsOf } from './steps.ts';

describe('makingOrder', () => {
  const steps = stepsOf({});

  test('steps are numbered from 1 and say something', () => {
    expect(steps.map(({ n }) => n)).toEqual(steps.map((_, i) => i + 1));
    for (const step of steps) expect(step.text.length).toBeGreaterThan(0);
  });

  test('the trade’s order: the stack is measured before stiles and staves are cut, the top rail tried before weaving', () => {
    const order = [
      /Choose/,
      /Rip/,
      /Crosscut/,
      /measure the stack/,
      /Cut stiles and staves/,
      /grooves/,
      /^Ease and sand/,
      /sticks/,
      /^Bore/,
      /Dry fit/,
      /^Coat end grain/,
      /bottom rail/,
      /Set the staves/,
      /cover strips/,
      /^Weave/,
      /top rail$/,
      /Square/,
      /^Finish/,
      /Fix the screen/,
    ].map((title) => place(steps, title));
    expect(order).toEqual(steps.map((_, i) => i));
  });

  test('a film finish goes on before weaving, a thin one on ends before and the rest after, none nowhere', () => {
    const film = stepsOf({}, { finish: { kind: 'film' } });
    expect(place(film, /Finish/)).toBeLessThan(place(film, /^Weave/));
    expect(place(steps, /^Finish/)).toBeGreaterThan(place(steps, /^Weave/));
    expect(place(steps, /^Coat end grain/)).toBeLessThan(place(steps, /bottom rail/));
    expect(place(film, /^Coat end grain/)).toBe(-1);
    expect(place(stepsOf({}, { finish: { kind: 'none' } }), /Finish|Coat/)).toBe(-1);
  });

  test.each([
    ['screen', /Fix the screen/],
    ['guard', /between its posts/],
    ['divider', /divider/],
    ['gate', /Hang the gate/],
  ] as const)('a %s ends with its own step', (use, title) => {
    expect(stepsOf({ use }).at(-1)?.title).toMatch(title);
  });

  test('cautions on thin strips stand in the step that rips them, on short parts in the step that cuts them', () => {
    const blocks = stepsOf({ screen: { mounting: 'blocks' } });
    expect(blocks[place(blocks, /^Rip/)]?.cautions.join()).toMatch(/Parts D, E are thinner than 3\/8 in/);
    expect(blocks[place(blocks, /^Crosscut/)]?.cautions.join()).toMatch(/F is short/);
    const thick = stepsOf({ slat: { thickness: '3/8' }, top: { cover: 0 } });
    expect(thick[place(thick, /^Rip/)]?.cautions.join()).not.toMatch(/thinner/);
  });

  test('stiles and staves are not cut before the stack is measured', () => {
    const crosscut = said(steps[place(steps, /^Crosscut/)] as Step);
    expect(crosscut).not.toMatch(/, stile|, stave/);
    const after = said(steps[place(steps, /Cut stiles/)] as Step);
    expect(after).toMatch(/B, stile 2, 49 in/);
    expect(after).toMatch(/C, stave 5, 50 in/);
  });

  test('stiles and staves are cut long first, by what the job says', () => {
    const job = jobOf({ size: { width: '44 1/2', height: 52 } }, { saw: { long: '1 1/2' } });
    const panels = solve(job);
    const long = makingOrder(job, { panels, parts: partsOf(panels, job) });
    expect(said(long[place(long, /^Crosscut/)] as Step)).toMatch(/B, stile 2, cut 50 1\/2 in, which is 1 1\/2 in over/);
    expect(said(long[place(long, /Cut stiles/)] as Step)).toMatch(/B, stile 2, 49 in/);
  });

  test('figures that differ from panel to panel name their panels; those alike do not', () => {
    const two = stepsOf(
      {},
      {
        panels: [
          { name: 'A', size: { width: 44, height: 52 } },
          { name: 'B', size: { width: 30, height: 52 } },
        ],
      },
    );
    const figures = two[place(two, /Square/)]?.figures ?? [];
    expect(figures.filter(({ what }) => what.startsWith('diagonals')).map(({ where }) => where)).toEqual(['A', 'B']);
    const weave = two[place(two, /^Weave/)]?.figures ?? [];
    expect(weave.find(({ what }) => what === 'courses')?.where).toBe('');
  });

  test('figures are in the job’s unit', () => {
    const metric = stepsOf({ size: { width: 1100, height: 1300 } }, { unit: 'mm' });
    expect(metric.map(said).join(' ')).toMatch(/1099 mm|1100 mm/);
    expect(metric.map(said).join(' ')).not.toMatch(/\d in(,|;| x| by)/);
  });

  test('dust, an escape window and a wrongly measured page are warned of before the step, not after', () => {
    expect(steps[0]?.cautions.join()).toMatch(/asthma/);
    const bedroom = stepsOf({ screen: { bedroom: true } });
    expect(bedroom.at(-1)?.cautions.join()).toMatch(/escape/);
    expect(steps[place(steps, /sticks/)]?.cautions.join()).toMatch(/check bar/);
  });
});

describe('makingOrder, sizes of the steps', () => {
  const all = (steps: readonly Step[], title: RegExp) => said(steps[place(steps, title)] as Step);

  test('corner screws: half with the bottom rail, half with the top; sunk heads are bored and plugged', () => {
    const high = stepsOf({ rail: { height: '2 1/2' } });
    for (const title of [/bottom rail/, /top rail$/]) expect(all(high, title)).toMatch(/4 of No. 8 x 3 1\/2 in/);
    expect(all(high, /^Bore/)).toMatch(/hole 11\/64 in for No. 8 x 3 1\/2 in; head sunk 1 in in a 3\/8 in hole/);
    // The head lies 1 in under the face, and so does the foot of its pilot.
    expect(all(high, /Dry fit/)).toMatch(/rail to stile, pilot .* in, 4 1\/2 in deep from the face/);
    expect(all(high, /top rail$/)).toMatch(/the other way round/);
    expect(all(stepsOf({}), /^Bore/)).toMatch(/rail to stile, hole .*countersunk 21\/64 in wide/);
    expect(all(stepsOf({}), /^Bore/)).not.toMatch(/plug/);
  });

  test('stile and stave by hand: the stack and its room; the stile, both grooves, less the clearance', () => {
    const text = all(stepsOf({}), /measure the stack/);
    const [panel] = solve(jobOf({ size: { width: '44 1/2', height: 52 } }));
    const { courses, stile, staves, groove, spec } = panel ?? never();
    expect(stile.length).toBeCloseTo(courses.stack + courses.allowance, 9);
    expect(staves.length).toBeCloseTo(stile.length + 2 * groove.depth - spec.stave.clearance, 9);
    expect(text).toMatch(
      /stile, wood at \d+ % when woven \(as planned\) slats pressed together \+ .* in.*; planned 49 in/,
    );
    expect(text).toMatch(/stave stile \+ 2 x 1\/2 in \(grooves\); planned 50 in/);
    expect(all(stepsOf({ stave: { clearance: '1/8' } }), /measure the stack/)).toMatch(
      /\(grooves\) - 1\/8 in \(room at the top\); planned 49 7\/8 in/,
    );
  });

  test('the finish that the last step asks for is the one on the shopping list', () => {
    for (const width of [20, 33, 44, 71]) {
      const job = jobOf({ size: { width, height: 52 }, count: 2 });
      const tin = hardwareList(job, solve(job)).find(({ kind }) => kind === 'finish') ?? never();
      expect(all(stepsOf({ size: { width, height: 52 }, count: 2 }), /^Finish/)).toContain(amountText(tin, job));
    }
  });

  test('heights of screws are from the foot of the frame, in the step that bores for them', () => {
    const job = jobOf({ size: { width: '44 1/2', height: 52 } });
    const rows = screwSchedule(solve(job)[0] ?? never());
    for (const [joint, title] of [
      ['end stave to stile', /^Bore/],
      ['mounting', /Fix the screen/],
    ] as const) {
      const { where } = rows.find((row) => row.joint === joint) ?? never();
      expect(where).toMatch(/from the foot of the frame: /);
      expect(all(stepsOf({}), title)).toContain(where);
    }
  });

  test('the groove stops at the stiles: it is as long as the opening is wide', () => {
    expect(all(stepsOf({}), /grooves/)).toMatch(
      /stops there.*from the end of the rail 1 1\/2 in groove, its length 41 1\/2 in/,
    );
  });

  test('cover strips: their step, the parts list and the panel say one distance, and how they stand to the rail', () => {
    const job = jobOf({ size: { width: '44 1/2', height: 52 } });
    const { cover, rail } = solve(job)[0] ?? never();
    const text = all(stepsOf({}), /cover strips/);
    // 1 1/2 in deep and 3/16 in strips flush with its faces: 1 1/2 - 2 x 3/16 = 1 1/8 in.
    expect(cover.face + cover.thickness).toBeCloseTo(rail.depth / 2, 9);
    expect(text).toMatch(/between the two strips 1 1\/8 in outer face of a strip flush with the face of the rail/);
    const thin = stepsOf({ size: { width: 1000, height: 1200 }, rail: { depth: 36 } }, { unit: 'mm' });
    expect(all(thin, /cover strips/)).toMatch(/outer face of a strip flush with the face of the rail/);
    expect(all(thin, /top rail$/)).toMatch(
      /play of the top course between the strips, on either side 1(\.\d)? mm or more/,
    );
  });

  test('the course stick stands on the foot of the stile; heights from the foot of the frame are told apart', () => {
    const text = all(stepsOf({}), /sticks/);
    expect(text).toMatch(/foot of the stick flush with the foot of the stile/);
    expect(text).not.toMatch(/stick on both stiles from the foot of the frame/);
    expect(text).toMatch(
      /stands lower by the height of that rail.*from the foot of the frame to the foot of the stile 1 1\/2 in/,
    );
  });

  test('a step tells what is clear at each end of a slat: half of what its length leaves of the resting length', () => {
    const { rows } = solve(jobOf({ size: { width: 1000, height: 1200 } }, { unit: 'mm' }))[0] ?? never();
    const [{ bend, cutLength } = never()] = rows;
    const gap = ((bend.cutLength - cutLength) / 2).toFixed(1).replace('.0', '');
    const metric = stepsOf({ size: { width: 1000, height: 1200 } }, { unit: 'mm' });
    expect(all(metric, /^Weave/)).toContain(`clear at each end of a slat ${gap} mm`);
  });

  test('the chain of the stile closes as printed: slats planned and the room over them make it', () => {
    const metric = stepsOf({ size: { width: 1000, height: 1838 } }, { unit: 'mm' });
    const text = all(metric, /measure the stack/);
    const stack = Number(/slats pressed together, planned ([\d.]+) mm/.exec(text)?.[1]);
    const [, room, stile] =
      /\(as planned\) slats pressed together \+ ([\d.]+) mm(?: \(at least [\d.]+ mm\))?; planned ([\d.]+) mm/.exec(
        text,
      ) ?? [];
    expect(stack + Number(room)).toBeCloseTo(Number(stile), 9);
  });

  test('both gluings are checked by their diagonals, and plugs and last strips come after', () => {
    const high = stepsOf({ rail: { height: '2 1/2' } });
    for (const title of [/bottom rail/, /top rail$/]) {
      expect(all(high, title)).toMatch(/both diagonals/);
      expect(all(high, title)).not.toMatch(/Glue a plug/);
    }
    expect(all(high, /^Square/)).toMatch(/Glue a plug over every sunk head/);
  });

  test('a screen before a way of escape is not told to be screwed fast, nor its fixings', () => {
    const text = said(stepsOf({ screen: { bedroom: true } }).at(-1) ?? never());
    expect(text).toMatch(/Do not screw the panel fast/);
    expect(text).not.toMatch(/drive the screws|mounting/);
    expect(all(stepsOf({ screen: { bedroom: true } }), /^Bore/)).not.toMatch(/fixings|brackets/);
    expect(all(stepsOf({ screen: { bedroom: true, mounting: 'posts' } }), /^Bore/)).not.toMatch(/brackets/);
    expect(all(stepsOf({ screen: { mounting: 'posts' } }), /^Bore/)).toMatch(/brackets are drilled in the steps/);
    expect(all(stepsOf({}), /^Bore/)).toMatch(/through the stiles those of the fixings/);
  });

  test('one panel has no level line from bay to bay, and a cap only where there is one', () => {
    const one = (guard: object) => said(stepsOf({ use: 'guard', guard }).at(-1) ?? never());
    expect(one({})).not.toMatch(/from bay to bay/);
    expect(one({})).not.toMatch(/put on the cap/);
    expect(one({ cap: { height: 1, depth: 4 } })).toMatch(/put on the cap/);
    expect(said(stepsOf({ use: 'guard', count: 2 }).at(-1) ?? never())).toMatch(/from bay to bay/);
  });

  test('outdoors every part wants heartwood and the bottom groove its drains; indoors neither is told', () => {
    const outside = stepsOf({});
    expect(said(outside[0] ?? never())).toMatch(/Heartwood for every part/);
    // Five staves: four bays.
    expect(all(outside, /^Bore/)).toMatch(/drain holes of 1\/4 in, from the left end of the bottom rail 4: /);
    const inside = stepsOf({}, { site: { where: 'indoors' } });
    expect(said(inside[0] ?? never())).not.toMatch(/sapwood|Heartwood/);
    expect(all(inside, /^Bore/)).not.toMatch(/[Dd]rain/);
  });

  test('trialBend: a strip on two blocks, pressed in the middle, has curvature 12 sag / span² there', () => {
    // Two blocks 280 mm apart and a radius of 700 mm: 280²/(12 × 700) = 9.33 mm.
    const panel = solve(jobOf({ size: { width: 1000, height: 1200 } }, { unit: 'mm' }))[0] ?? never();
    const { radius, span, sag } = trialBend(panel) ?? never();
    expect(radius).toBeCloseTo(Math.min(...panel.rows.map(({ bend }) => bend.minRadius ?? Infinity)), 9);
    expect(span).toBeCloseTo(panel.staves.pitch, 9);
    expect((12 * sag) / span ** 2).toBeCloseTo(1 / radius, 12);
    expect(said(stepsOf({ size: { width: 1000, height: 1200 } }, { unit: 'mm' })[1] ?? never())).toMatch(
      /trial slat \d+ mm clear between the blocks, middle pressed down [\d.]+ mm/,
    );
  });

  test('a plan that cannot be cut is not followed', () => {
    const job = jobOf({ size: { width: '44 1/2', height: 52 } });
    const panels = solve(job);
    const plan = { status: 'impossible', boards: [], fences: [] } as unknown as CutPlan;
    const text = all(makingOrder(job, { panels, parts: partsOf(panels), plan }), /^Rip/);
    expect(text).toMatch(/There are no cut sheets/);
    expect(text).not.toMatch(/cut sheets lead/);
  });

  test('a gate tells both heights of its latch, both gaps, and what presses on the latch side', () => {
    const text = all(stepsOf({ use: 'gate', gate: { latch: 40, load: 180 } }), /Hang the gate/);
    expect(text).toMatch(/40 in above the ground, [0-9/ ]+ in from the foot of the leaf/);
    expect(text).toMatch(/gap between hinge post and leaf/);
    expect(text).toMatch(/wire to cut 7\d/);
    expect(text).toMatch(/with 40.5 lb pressing down/);
  });

  test.each([
    [{ bedroom: true }, /is an escape/],
    [{ glass: 3 }, /nobody may need it as an escape/],
  ])('a screen with %j warns of the window behind it', (own, words) => {
    expect(stepsOf({ screen: own }).at(-1)?.cautions.join()).toMatch(words);
  });
});

describe('as built', () => {
  const planned = { size: { width: '44 1/2', height: 52 }, fit: { vary: 'slats', from: '1 3/8', to: '1 11/16' } };

  test('a stack that came out 3/8 in high lifts the outside height; one course fewer and a filler would hold it', () => {
    const plain = panelOf(planned);
    const stack = plain.courses.count * plain.courses.height + inches(3 / 8);
    const panel = panelOf({ ...planned, measured: { stack: stack / 25.4 } });
    const advice = measuredAdvice(panel) ?? never();
    expect(advice.off).toBeCloseTo(panel.outside.height - plain.outside.height, 9);
    expect(advice.off).toBeGreaterThan(inches(1 / 8));
    expect(advice.fewer.courses).toBe(plain.courses.count - 1);
    // Taking a course out takes its pitch off; the filler puts back what is then missing.
    expect(panel.courses.pitch - advice.off - advice.fewer.filler).toBeLessThan(panel.display.mark + 1e-9);
    expect(advice.rails).toBe(-advice.off);
  });

  test('a stack that comes out as planned needs no advice, nor does a panel not measured', () => {
    const outside = { ...planned, fit: { vary: 'outside' } };
    const plain = panelOf(outside);
    expect(measuredAdvice(plain)).toBeUndefined();
    const stack = plain.courses.count * plain.courses.height;
    const right = panelOf({ ...outside, measured: { stack: stack / 25.4 } });
    expect(right.outside.height).toBeCloseTo(plain.outside.height, 9);
    expect(measuredAdvice(right)).toBeUndefined();
  });
});

describe('cautions', () => {
  test('guards and gates have a group of their own; what the program does not know comes first', () => {
    const titles = (use: string) => cautions(jobOf({ use, size: { width: 44, height: 52 } })).map(({ title }) => title);
    expect(titles('screen')[0]).toMatch(/does not know/);
    expect(titles('guard')).toContain('Guards');
    expect(titles('gate')).toContain('Gates');
    expect(titles('screen')).not.toContain('Guards');
  });

  test('only lines that concern the job are said', () => {
    const said = (panel: object, rest: object = {}) =>
      cautions(jobOf({ size: { width: 44, height: 52 }, ...panel }, rest))
        .flatMap(({ lines }) => lines)
        .join('\n');
    const indoors = said({ use: 'divider' }, { site: { where: 'indoors' } });
    expect(indoors).not.toMatch(/ASCE|ball|posts|model codes|[Ss]alt/);
    expect(indoors).toMatch(/Heating/);
    const guard = said({ use: 'guard' }, { site: { wind: { speed: 40 } } });
    for (const word of [/ASCE/, /ball/, /posts/, /model codes/, /salt air/]) expect(guard).toMatch(word);
    expect(said({}, { finish: { kind: 'film' } })).not.toMatch(/rags/);
  });
});

function never(): never {
  throw new Error('missing');
}
