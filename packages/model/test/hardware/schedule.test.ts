import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { corners } from '../../src/hardware/corner.ts';
import { hingePlate } from '../../src/hardware/hingeplate.ts';
import {
  amountText,
  hardwareList,
  membersOf,
  metalFor,
  readJob,
  screwSchedule,
  shareText,
  solve,
} from '../../src/index.ts';
import { inches, jobOf, panelOf } from '../support.ts';

const settings = { seed: 20261124, numRuns: 80 };

describe('screwSchedule', () => {
  const panel = panelOf({ size: { width: 44, height: 52 } });
  const corner = screwSchedule(panel).find(({ joint }) => joint === 'rail to stile');

  test('two screws at each corner, eight in all, 3 1/2 in No. 8 in 1 1/2 in rails', () => {
    expect(corner?.count).toBe(8);
    expect(corner?.name).toBe('No. 8 x 3 1/2 in');
    expect(corner?.grain).toBe('end');
  });

  test('corner screws lie within the stile, and mirror from left to right', () => {
    for (const { x, y, z } of corner?.places ?? []) {
      expect([0, panel.outside.height]).toContain(y);
      expect(Math.min(x, panel.outside.width - x)).toBeLessThan(panel.stile.width);
      expect(Math.abs(z)).toBeLessThan(panel.stile.depth / 2);
      const mirror = corner?.places.find(
        (other) => Math.abs(other.x + x - panel.outside.width) < 1e-9 && other.y === y,
      );
      expect(mirror?.z).toBeCloseTo(-z, 9);
    }
  });

  test('end staves are screwed from their bay faces at mid-depth', () => {
    const row = screwSchedule(panel).find(({ joint }) => joint === 'end stave to stile');
    const left = panel.clear.left + panel.staves.width;
    const right = panel.clear.left + panel.clear.width - panel.staves.width;
    for (const { x, z } of row?.places ?? []) {
      expect(z).toBe(0);
      expect(Math.min(Math.abs(x - left), Math.abs(x - right))).toBeLessThan(1e-9);
    }
  });

  test('every screw of any job ends inside what it bites, and its places are within the panel', () => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1 }), (file) => {
        for (const each of solve(readJob(JSON.stringify(file))))
          for (const { fastener, places, count, edge, end } of screwSchedule(each)) {
            expect(count).toBeGreaterThanOrEqual(places.length);
            expect(fastener.length - fastener.through).toBeGreaterThanOrEqual(fastener.penetration - 1e-9);
            expect(Math.min(edge.found, end.found)).toBeGreaterThanOrEqual(0);
            for (const { x } of places) {
              expect(x).toBeGreaterThanOrEqual(-1e-9);
              expect(x).toBeLessThanOrEqual(each.outside.width + 1e-9);
            }
          }
      }),
      settings,
    );
  });
});

describe('screws that cross in a stile', () => {
  const settings40 = { seed: 20261124, numRuns: 40 };

  test('fixings stand clear of the tips of the corner screws by 20 mm, where the height lets them', () => {
    const panel = panelOf({ size: { width: 44, height: 52 } });
    const rows = screwSchedule(panel);
    // 1 1/2 in of rail, 2 in of thread and 20 mm are 4.287 in; the next quarter inch is 4 1/2.
    const ys = rows.find(({ joint }) => joint === 'mounting')?.places.map(({ y }) => y) ?? [];
    expect(Math.min(...ys)).toBeCloseTo(inches(4.5), 9);
    expect(Math.max(...ys)).toBeCloseTo(panel.outside.height - inches(4.5), 9);
  });

  test.each(['screen', 'guard', 'gate'] as const)(
    'end staves of any %s have their screws an inch or more from fixings and hinges',
    (use) => {
      fc.assert(
        fc.property(arbitraryJob({ use, panels: 1 }), (file) => {
          for (const panel of solve(readJob(JSON.stringify(file)))) {
            if (panel.clear.height < 400) continue;
            const ys = (of: string) =>
              screwSchedule(panel)
                .filter(({ joint }) => joint === of)
                .flatMap(({ places }) => places.map(({ y }) => y));
            const others = [...ys('mounting'), ...ys('hinge to stile')];
            for (const y of ys('end stave to stile'))
              for (const other of others) expect(Math.abs(y - other)).toBeGreaterThanOrEqual(25.4 - 1e-6);
          }
        }),
        settings40,
      );
    },
  );

  test('corner screws stand on the job’s marks, so that every sheet prints the same figure', () => {
    const { display, rail, ...panel } = panelOf({ size: { width: 44, height: 52 }, stile: { width: 2 } });
    const places = screwSchedule({ display, rail, ...panel })[0]?.places ?? [];
    for (const { x, z } of places)
      for (const size of [Math.min(x, panel.outside.width - x), rail.depth / 2 - z])
        expect(Math.abs(size / display.mark - Math.round(size / display.mark))).toBeLessThan(1e-6);
  });
});

describe('plugs', () => {
  const sunk = (unit: 'in' | 'mm', height: number) =>
    screwSchedule(
      panelOf(
        { size: { width: unit === 'in' ? 44 : 1100, height: unit === 'in' ? 52 : 1300 }, rail: { height } },
        { unit },
      ),
    )[0];

  test('a rail higher than 1 1/2 in sinks the heads of its corner screws under plugs as wide as the head or wider', () => {
    // The head of a No. 8 screw is 2 x 0.164 in across: a 3/8 in or a 10 mm plug.
    expect(sunk('in', 2.5)?.plug).toEqual({
      drill: { inch: '3/8', metric: 10 },
      diameter: inches(3 / 8),
      depth: expect.closeTo(inches(1), 9),
    });
    expect(sunk('mm', 60)?.plug?.diameter).toBe(10);
    expect(sunk('in', 1.5)?.plug).toBeUndefined();
  });

  test('plugs and glue are bought: a tenth over of plugs, whole bottles', () => {
    const job = jobOf({ size: { width: 44, height: 52 }, rail: { height: 2.5 } });
    const lines = hardwareList(job, solve(job));
    const plugs = lines.find(({ kind }) => kind === 'plug');
    expect([plugs?.name, plugs?.count, plugs?.buy]).toEqual(['wooden plug 3/8 in', 8, 9]);
    const glue = lines.find(({ kind }) => kind === 'glue');
    expect(glue?.name).toMatch(/^waterproof/);
    expect(glue?.buy).toBe(1);
  });
});

describe('metalFor', () => {
  test.each([
    ['western redcedar', 'outdoors', 'stainless steel'],
    ['ponderosa pine', 'outdoors', 'stainless or hot-dip galvanized steel'],
    ['white oak', 'indoors', 'stainless steel or brass'],
    ['sugar maple', 'indoors', 'zinc-plated steel'],
  ])('metalFor(%s, %s) is %s', (wood, where, metal) => {
    expect(metalFor(panelOf({ size: { width: 44, height: 52 }, wood }, { site: { where } })).name).toBe(metal);
  });

  test('salt air or treated posts want A4 of every screw and fitting', () => {
    const job = jobOf(
      { size: { width: 44, height: 52 }, use: 'guard', wood: 'ponderosa pine' },
      { site: { salt: true } },
    );
    const metals = hardwareList(job, solve(job)).filter(
      ({ kind, name }) => kind === 'screw' || kind === 'pin' || /bracket/.test(name),
    );
    expect(metals.length).toBeGreaterThan(2);
    for (const { material } of metals) expect(material).toBe('stainless steel A4 (316)');
  });
});

describe('metalOf', () => {
  test('pins and No. 4 and 5 screws outdoors are of stainless steel, since galvanized ones are hardly sold', () => {
    const rows = screwSchedule(panelOf({ size: { width: 44, height: 52 }, wood: 'ponderosa pine' }));
    const of = (joint: string) => rows.find((row) => row.joint === joint)?.material;
    expect(of('rail to stile')).toBe('stainless or hot-dip galvanized steel');
    expect(of('end stave to stile')).toBe('stainless steel');
    expect(of('cover strip to top rail')).toBe('stainless steel');
  });
});

describe('hardwareList', () => {
  test('screws of one name add up over panels and counts; a tenth over is bought', () => {
    const panels = [
      { name: 'A', size: { width: 44, height: 52 }, count: 2 },
      { name: 'B', size: { width: 30, height: 40 } },
    ];
    const job = jobOf({}, { panels });
    const line = hardwareList(job, solve(job)).find(({ name }) => name === 'No. 8 x 3 1/2 in');
    // Eight in the corners and six through the stiles of each panel; 42 and a tenth are 46.2.
    expect(line?.count).toBe((8 + 6) * 3);
    expect(line?.buy).toBe(47);
    expect(line?.where).toEqual([
      { panel: 'A', count: 28 },
      { panel: 'B', count: 14 },
    ]);
  });

  test('a gate lists hinges, latch, wire, turnbuckle', () => {
    const job = jobOf({ use: 'gate', size: { width: 34, height: 60 } });
    const names = hardwareList(job, solve(job)).map(({ name }) => name);
    for (const wanted of ['hinge', 'latch', 'wire rope', 'turnbuckle'])
      expect(names.some((name) => name.includes(wanted))).toBe(true);
  });

  test('finish told panel by panel adds up to what is bought', () => {
    for (const unit of ['in', 'mm'] as const) {
      const [w, h] = unit === 'in' ? [44, 52] : [1100, 1300];
      const job = jobOf(
        {},
        {
          unit,
          panels: [0, 1, 2].map((i) => ({ name: `P${i}`, size: { width: w - i * (w / 8), height: h }, count: i + 1 })),
        },
      );
      const line = hardwareList(job, solve(job)).find(({ kind }) => kind === 'finish') ?? never();
      const told = (text: string) => Number(text.split(' ')[0]);
      const sum = line.where.reduce((total, share) => total + told(shareText(share, line, job)), 0);
      expect(sum).toBeCloseTo(told(amountText(line, job)), 6);
    }
  });

  test('what no row of screws has comes with its item: latch, track, carriers; wall plugs say their screw', () => {
    const names = (panel: object) => {
      const job = jobOf(panel);
      return hardwareList(job, solve(job))
        .map(({ name }) => name)
        .join('; ');
    };
    expect(names({ use: 'gate', size: { width: 34, height: 60 } })).toMatch(
      /latch that opens from both sides with its keep and screws, for a gap of 1\/2 in .*; its keep stops the leaf/,
    );
    expect(names({ use: 'divider', size: { width: 34, height: 60 }, divider: { stand: 'track' } })).toMatch(
      /track carrier for \d+ lb or more, with its own screws, its plate no wider than 1 1\/2 in, .* its screws go no more than 7\/8 in into the rail; floor guide/,
    );
    expect(names({ size: { width: 44, height: 52 }, screen: { into: 'masonry' } })).toMatch(
      /wall plug for a No. 8 screw, 2 in/,
    );
    expect(names({ size: { width: 44, height: 52 } })).toMatch(/block for the end of a groove.* from an offcut/);
  });

  test('hinge, brackets, eye plate and turnbuckle are told by what they must measure', () => {
    const names = (panel: object, unit: string) => {
      const job = jobOf(panel, { unit });
      return hardwareList(job, solve(job))
        .map(({ name }) => name)
        .join('; ');
    };
    const gate = names({ use: 'gate', size: { width: 34, height: 60 } }, 'in');
    expect(gate).toMatch(
      /hinge for \d+ lb or more, plates about 3 in high and no wider than 1 1\/2 in, three holes in each, 1 1\/4 in apart up the stile, the middle one 1\/2 in across/,
    );
    expect(gate).toMatch(/turnbuckle with 5\/16-18 thread, .*an eye at one end .*, a jaw with pin at the other/);
    expect(gate).toMatch(/plate with an eye that stands up from it, .* 1\/8 in thick or more/);
    // 38 mm of panel, and 38.1 + 6 behind it.
    expect(names({ use: 'guard', size: { width: 1000, height: 800 } }, 'mm')).toMatch(
      /angle bracket, legs of 38 mm .* posts 83 mm deep or more where their front is level with the panel’s: 45 mm behind its back/,
    );
  });

  test('a hinge is the largest whose screws clear those of the corners', () => {
    const plate = (inset: number) => {
      const panel = panelOf({ use: 'gate', size: { width: 34, height: 60 }, gate: { hinges: { inset } } });
      return hingePlate(panel, corners(panel)).height / 25.4;
    };
    // Corner screws end 3 1/2 in up and want 0.289 in beyond: 5.039, 4.539 and 4.352 in for steps of 1 1/4, 3/4 and 9/16 in.
    expect([5.04, 5.03, 4.54, 4.53, 3].map((inset) => Math.round(10 * plate(inset)) / 10)).toEqual([3, 2, 2, 1.5, 1.5]);
  });

  test('screws of the end staves keep two inches from the middle of a latch', () => {
    for (const latch of [30, 33, 34.5, 36]) {
      const panel = panelOf({ use: 'gate', size: { width: 30, height: 36 }, gate: { latch, clear: { ground: 2 } } });
      const at = (latch - 2) * 25.4;
      const row = screwSchedule(panel).find(({ joint }) => joint === 'end stave to stile');
      for (const { y } of row?.places ?? []) expect(Math.abs(y - at)).toBeGreaterThanOrEqual(2 * 25.4 - 1e-6);
    }
  });

  test('distances wanted are those a reader reckons from the screw as it is named', () => {
    const panel = panelOf({ size: { width: 1000, height: 900 } }, { unit: 'mm' });
    for (const { name, fastener, edge, end } of screwSchedule(panel).filter(
      ({ fastener: { kind } }) => kind === 'screw',
    )) {
      const shown = Number(/\(([\d.]+) mm\)/.exec(name)?.[1]);
      expect(Math.abs(shown - fastener.diameter)).toBeLessThanOrEqual(0.05 + 1e-9);
      expect(edge.wanted).toBeCloseTo(2.5 * shown, 9);
      expect(end.wanted).toBeCloseTo(5 * shown, 9);
    }
  });

  test('amountText shows wire in the job’s unit and finish in quarts in inch work', () => {
    const job = jobOf({ use: 'gate', size: { width: 34, height: 60 } });
    const lines = hardwareList(job, solve(job));
    expect(amountText(lines.find(({ unit }) => unit === 'mm') ?? never(), job)).toMatch(/ in$/);
    expect(amountText(lines.find(({ unit }) => unit === 'litres') ?? never(), job)).toMatch(/US quarts$/);
  });

  test('stand-off blocks are parts: one behind each fixing, as deep as the stand-off', () => {
    const panel = panelOf({ size: { width: 44, height: 52 }, screen: { mounting: 'blocks', standoff: 2 } });
    const block = membersOf(panel).find(({ role }) => role === 'stand-off block');
    const mounting = screwSchedule(panel).find(({ joint }) => joint === 'mounting');
    expect(block?.count).toBe(mounting?.count);
    expect(block?.section[1]).toBeCloseTo(inches(2), 9);
  });
});

function never(): never {
  throw new Error('no such line');
}
