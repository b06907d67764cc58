import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { gateDetails, type Panel, panelCentre, readJob, solve } from '../../src/index.ts';
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

  test('gateDetails of a screen is refused', () => {
    expect(() => gateDetails(panelOf({ size: { width: 34, height: 60 } }))).toThrow(/expected gate/);
  });
});

function never(): never {
  throw new Error('no brace');
}
