import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { bracePlates, gateDetails, membersOf, type Panel, panelCentre, readJob, solve } from '../../src/index.ts';
import { inches, panelOf } from '../support.ts';

const gate = (own: object = {}, panel: object = {}) =>
  panelOf({ use: 'gate', size: { width: 34, height: 60 }, fit: { vary: 'outside' }, gate: own, ...panel });
const brace = (panel: Panel) => gateDetails(panel).brace ?? never();

describe('gateDetails', () => {
  test('the brace runs from where stile and rail meet to where they meet across, and its force is statics by hand', () => {
    const panel = gate({ load: 180 });
    const details = gateDetails(panel);
    const [run, drop] = [panel.outside.width - panel.stile.width, panel.outside.height - 2 * panel.rail.height];
    const length = Math.hypot(run, drop);
    const weight = details.mass * 9.80665;
    expect(details.brace?.length).toBeCloseTo(length, 9);
    expect(details.brace?.force).toBeCloseTo((weight * details.centre * length) / (run * drop), 6);
    expect(details.brace?.forceLoaded).toBeCloseTo(
      ((weight * details.centre + 180 * panel.outside.width) * length) / (run * drop),
      6,
    );
    expect(details.centre).toBeCloseTo(panel.outside.width / 2, 6);
  });

  test('hinges 7 in from each end pull with the moment over their distance, and each may bear the whole weight', () => {
    const panel = gate({ hinges: { inset: 7 }, load: 0 });
    const { hingeForces, mass, centre } = gateDetails(panel);
    const apart = panel.outside.height - inches(14);
    expect(hingeForces?.own.pull).toBeCloseTo((mass * 9.80665 * centre) / apart, 6);
    expect(hingeForces?.loaded.vertical).toBeCloseTo(mass * 9.80665, 6);
  });

  test.each([
    ['cable', 'hinge top', true],
    ['cable', 'hinge bottom', false],
    ['strut', 'hinge bottom', true],
    ['strut', 'hinge top', false],
  ] as const)('a %s from the %s is right: %s; a cable then pulls, a strut pushes', (kind, from, right) => {
    const found = brace(gate({ brace: { kind, from } }));
    expect(found.right).toBe(right);
    expect(found.force > 0).toBe((kind === 'cable') === right);
  });

  test('a gate hung on the right is the mirror of one hung on the left', () => {
    const [left, right] = [gateDetails(gate({ hinge: 'left' })), gateDetails(gate({ hinge: 'right' }))];
    expect(right.brace?.force).toBeCloseTo(left.brace?.force ?? 0, 9);
    expect(right.brace?.hinge.x).toBeCloseTo(inches(34) - (left.brace?.hinge.x ?? 0), 9);
    expect(right.latch.x).toBe(0);
    expect(right.hinges[0]?.x).toBeCloseTo(inches(34), 9);
  });

  test('the opening is the leaf and its clearances; three hinges stand at equal steps', () => {
    const details = gateDetails(
      gate({ clear: { hinge: '3/8', latch: '1/2', ground: 2 }, hinges: { count: 3, inset: 7 } }),
    );
    expect(details.opening.width).toBeCloseTo(inches(34 + 0.375 + 0.5), 9);
    const [top = 0, middle = 0, low = 0] = details.hinges.map(({ y }) => y);
    expect(top - middle).toBeCloseTo(middle - low, 9);
    expect(low).toBeCloseTo(inches(7), 9);
  });

  test('a strut of a third of its buckling load: π² E I / l² / 3 about its thin side', () => {
    const panel = gate({ brace: { kind: 'strut' } }, { stile: { width: 2.5 } });
    const found = brace(panel);
    const second = (panel.stile.width * inches(0.75) ** 3) / 12;
    const euler = (Math.PI ** 2 * panel.spec.wood.rail.wood.modulus * second) / found.length ** 2;
    expect(found.most).toBeCloseTo(euler / 3, 6);
  });

  test('a strut is listed an inch or 25 mm over, on the mark, for the cuts that make its ends flush', () => {
    for (const [unit, over, mark] of [
      ['in', 25.4, 25.4 / 16],
      ['mm', 25, 1],
    ] as const) {
      const size = unit === 'in' ? { width: 48, height: 66 } : { width: 1200, height: 1700 };
      const panel = panelOf({ use: 'gate', size, gate: { brace: { kind: 'strut' } } }, { unit });
      const strut = membersOf(panel).find(({ role }) => role === 'strut');
      const more = (strut?.length ?? 0) - (brace(panel).length + panel.stile.width);
      expect(more).toBeGreaterThanOrEqual(over - 1e-6);
      expect(more).toBeLessThan(over + mark);
    }
  });

  test('arbitrary gates: the post’s moment is weight times its distance and the load times the width', () => {
    fc.assert(
      fc.property(arbitraryJob({ use: 'gate', panels: 1 }), (file) => {
        for (const panel of solve(readJob(JSON.stringify(file)))) {
          const { post, centre, mass } = gateDetails(panel);
          const load = panel.details.use === 'gate' ? panel.details.load : 0;
          expect(post.moment).toBeCloseTo(mass * 9.80665 * centre + load * panel.outside.width, 3);
          expect(centre).toBeGreaterThan(0);
          expect(centre).toBeLessThan(panel.outside.width);
          expect(panelCentre(panel).mass).toBe(mass);
        }
      }),
      { seed: 20261124, numRuns: 40 },
    );
  });

  test('the turnbuckle’s turns are its take-up over two pitches, up to the next quarter', () => {
    const { takeUp, turns } = brace(gate());
    // 5/16 in, 18 threads to the inch, both ends: 1/9 in a turn.
    expect(turns - takeUp / (25.4 / 9)).toBeGreaterThanOrEqual(-1e-9);
    expect(turns - takeUp / (25.4 / 9)).toBeLessThan(0.25);
    expect((turns * 4) % 1).toBe(0);
  });

  test('plates of a cable lie over the joint of rail and stile and hold both their screws', () => {
    const panel = gate();
    const plates = bracePlates(panel);
    expect(plates).toHaveLength(2);
    for (const { eye, screws, from, to } of plates) {
      expect(screws).toHaveLength(2);
      const joint = eye.y < panel.outside.height / 2 ? panel.rail.height : panel.outside.height - panel.rail.height;
      expect(from.y).toBeLessThan(joint);
      expect(to.y).toBeGreaterThan(joint);
      for (const { x, y } of [eye, ...screws]) {
        expect(Math.abs(x - (from.x + to.x) / 2)).toBeLessThan((to.x - from.x) / 2);
        expect(Math.abs(y - (from.y + to.y) / 2)).toBeLessThan((to.y - from.y) / 2);
      }
    }
    expect(bracePlates(gate({ brace: { kind: 'strut' } }))).toEqual([]);
  });

  test.each([
    // Hand height and 7 in where the leaf lets; half a low leaf's top, and 0.22 of its height.
    [60, 40, 7],
    [36, 33.5, 7],
    [12, 9.5, 2.625],
  ])(
    'a leaf %d in high has its latch %d in above the ground and its hinges %d in from the ends',
    (height, up, inset) => {
      const panel = gate({}, { size: { width: 34, height }, fit: { vary: 'slats', from: 0.8, to: 2.5 } });
      const { latch, hinges, clear } = gateDetails(panel);
      expect(latch.y + clear.ground).toBeCloseTo(inches(up), 6);
      expect(latch.inside).toBe(true);
      expect(hinges.at(-1)?.y).toBeCloseTo(inches(inset), 6);
      const apart = (hinges[0]?.y ?? 0) - (hinges.at(-1)?.y ?? 0);
      expect(apart).toBeGreaterThanOrEqual(panel.outside.height / 2);
    },
  );

  test('hinges stand further in over a high rail', () => {
    const panel = gate({}, { rail: { height: 3.5 } });
    expect(gateDetails(panel).hinges.at(-1)?.y).toBeCloseTo(inches(7.5), 6);
  });

  test('gateDetails of a screen is refused', () => {
    expect(() => gateDetails(panelOf({ size: { width: 34, height: 60 } }))).toThrow(/expected gate/);
  });
});

function never(): never {
  throw new Error('no brace');
}
