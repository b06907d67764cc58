import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains, crossesBox, grown, overlaps, segmentsCross } from '../../src/layout/clearance.ts';
import { leader, type NoteTarget, placeNotes } from '../../src/layout/notes.ts';
import { textBox } from '../../src/lettering.ts';
import { faultsOf, segmentsOf, textsOf } from './faults.ts';

const around = { u0: 0, v0: 0, u1: 120, v1: 100 };
const seeded = { seed: 20261124, numRuns: 150 };

/** The leaders among some marks: lines of just two points. */
const leadersOf = (marks: Parameters<typeof segmentsOf>[0]): ReturnType<typeof segmentsOf> =>
  segmentsOf(marks.filter((mark) => mark.kind === 'path' && mark.path.length === 2));

describe('placeNotes', () => {
  it('puts each note beside the nearer side, level with its target where there is room', () => {
    const { marks } = placeNotes({
      around,
      targets: [
        { at: [20, 30], text: 'Stile' },
        { at: [110, 70], text: 'Slat' },
      ],
    });
    const [left, right] = textsOf(marks);
    expect(left?.anchor).toBe('end');
    expect(left?.at[0]).toBeLessThan(0);
    expect(right?.at[0]).toBeGreaterThan(120);
    expect(leadersOf(marks).every(([a, b]) => a[1] === b[1])).toBe(true);
  });

  it('keeps to the sides allowed', () => {
    const { marks } = placeNotes({ around, sides: ['right'], targets: [{ at: [5, 5], text: 'Stile' }] });
    expect(textsOf(marks)[0]?.at[0]).toBeGreaterThan(120);
  });

  it('a balloon is a letter of 3.5 mm in a circle whose edge the leader meets', () => {
    const { marks } = placeNotes({ around, targets: [{ at: [100, 50], text: 'B', kind: 'balloon', of: 'stave' }] });
    expect(textsOf(marks)[0]).toMatchObject({ text: 'B', height: 3.5, of: 'stave', anchor: 'middle' });
    expect(faultsOf(marks)).toEqual([]);
  });

  it('wraps a long note without breaking a size', () => {
    const text = 'Top rail, planed all round to 3 1⁄2, grooved along its inner edge 1 1⁄2 deep';
    const { marks } = placeNotes({ around, targets: [{ at: [100, 50], text }], width: 30 });
    const lines = textsOf(marks).map((line) => line.text.replaceAll('\u00a0', ' '));
    expect(lines.length).toBeGreaterThan(1);
    expect(lines.join(' ')).toBe(text);
    expect(lines.some((line) => /\d$/.test(line) && !/⁄\d+$/.test(line))).toBe(false);
  });

  it('notes and leaders keep out of the boxes given', () => {
    const keepOut = [{ u0: 125, v0: 40, u1: 200, v1: 60 }];
    const { marks } = placeNotes({ around, keepOut, targets: [{ at: [110, 50], text: 'Slat' }] });
    expect(textsOf(marks).some((mark) => overlaps(textBox(mark), keepOut[0] as never))).toBe(false);
    expect(leadersOf(marks).some((line) => crossesBox(line, keepOut[0] as never))).toBe(false);
  });

  it('leader points at its target from where it is told', () => {
    const { marks, bounds } = leader({ at: [10, 10], text: 'Groove', end: 'arrow' }, [30, 0]);
    expect(leadersOf(marks)).toEqual([
      [
        [10, 10],
        [30, 0],
      ],
    ]);
    expect(contains(grown(bounds, 0.01), textBox(textsOf(marks)[0] as never))).toBe(true);
    expect(faultsOf(marks)).toEqual([]);
  });
});

describe('placeNotes laws', () => {
  const target = fc.record({
    at: fc.tuple(fc.integer({ min: 0, max: 120 }), fc.integer({ min: 0, max: 100 })),
    text: fc.constantFrom('A', 'Stave', 'Slat, woven plain, with the first course in front of the first stave'),
    kind: fc.constantFrom('note' as const, 'balloon' as const),
  });
  const targets = fc
    .uniqueArray(target, { maxLength: 14, selector: ({ at }) => at.join() })
    .map((all) => all.map((one): NoteTarget => (one.kind === 'balloon' ? { ...one, text: 'A' } : one)));

  it('no note lies on a note or on a leader, and no two leaders cross', () => {
    fc.assert(
      fc.property(targets, (all) => {
        const { marks, bounds } = placeNotes({ around, targets: all });
        expect(faultsOf(marks)).toEqual([]);
        const leaders = leadersOf(marks);
        leaders.forEach((a, i) => {
          for (const b of leaders.slice(i + 1)) expect(segmentsCross(a, b)).toBe(false);
        });
        for (const text of textsOf(marks)) expect(contains(grown(bounds, 0.01), textBox(text))).toBe(true);
      }),
      seeded,
    );
  });
});
