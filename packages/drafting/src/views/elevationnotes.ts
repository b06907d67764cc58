import type { NoteTarget } from '../layout/notes.ts';
import { fittings } from './fittings.ts';
import { type Front, letterOf } from './front.ts';
import { partOf } from './partof.ts';
import { staveSeen } from './passes.ts';

/** A place in the panel to be named: panel frame, mm. */
interface Place {
  readonly x: number;
  readonly y: number;
  readonly name: string;
  readonly letter: string | undefined;
  readonly end?: 'dot' | 'arrow';
}

/** What is named beside the elevation: parts by balloons with their letters, or in words for the client. */
export function elevationTargets(front: Front, detail: 'shop' | 'client'): NoteTarget[] {
  return [...frameAndWeave(front), ...strips(front), ...fitted(front)].flatMap(
    ({ x, y, name, letter, end }): NoteTarget[] => {
      const target = { at: front.at(x, y), ...(end && { end }), ...(letter !== undefined && { of: letter }) };
      if (detail === 'shop' && letter !== undefined) return [{ ...target, text: letter, kind: 'balloon' }];
      return [{ ...target, text: name, kind: 'note' }];
    },
  );
}

function frameAndWeave(front: Front): Place[] {
  const { panel } = front;
  const { outside, clear, rail, stile, staves, courses } = panel;
  const slats = new Map(panel.rows.map((row, r) => [letterOf(front, 'slat', row.cutLength), r]));
  const stave = Math.max(0, staves.count - 2);
  const seen = staveSeen(panel, stave).toSorted((a, b) => b[1] - b[0] - (a[1] - a[0]) || near(a) - near(b))[0];
  const inLastBay = (staves.lefts.at(-1) as number) - staves.bay / 2;
  return [
    {
      x: outside.width - stile.width / 2,
      y: outside.height - rail.height / 2,
      name: 'rail',
      letter: letterOf(front, 'rail'),
    },
    {
      x: outside.width - stile.width / 2,
      y: clear.bottom + clear.height * 0.7,
      name: 'stile',
      letter: letterOf(front, 'stile'),
    },
    ...(seen
      ? [
          {
            x: staves.centres[stave] as number,
            y: (seen[0] + seen[1]) / 2,
            name: 'stave',
            letter: letterOf(front, 'stave'),
          },
        ]
      : []),
    ...[...slats].flatMap(([letter, row], i): Place[] => {
      const own = panel.weave.rowOfCourse.flatMap((of, c) => (of === row ? [c] : []));
      const course = own[Math.floor(own.length * Math.max(0.1, 0.85 - 0.12 * i))];
      if (course === undefined) return [];
      return [{ x: inLastBay, y: (courses.bottoms[course] as number) + courses.height / 2, name: 'slat', letter }];
    }),
  ];

  function near([from, to]: readonly [number, number]): number {
    return Math.abs((from + to) / 2 - (clear.bottom + clear.height * 0.3));
  }
}

function strips(front: Front): Place[] {
  const { panel, parts } = front;
  const { clear, cover } = panel;
  const [right, top] = [clear.left + clear.width, clear.bottom + clear.height];
  const stop = partOf(parts, panel, 'stop');
  return [
    ...(cover.height > 0
      ? [
          {
            x: right - panel.staves.pitch / 3,
            y: top - cover.height / 2,
            name: 'cover strip',
            letter: letterOf(front, 'cover strip'),
          },
        ]
      : []),
    ...(stop
      ? [{ x: right - stop.width / 2, y: clear.bottom + clear.height * 0.55, name: 'stop strip', letter: stop.letter }]
      : []),
  ];
}

/** One place for each kind of fitting: its rightmost, in its middle, or on its line. */
function fitted(front: Front): Place[] {
  const found = new Map<string, Place>();
  for (const { what, shown, outline, role } of fittings(front.panel)) {
    const xs = outline.map(([x]) => x);
    const ys = outline.map(([, y]) => y);
    const letter = role && letterOf(front, role);
    const middle = { x: (Math.min(...xs) + Math.max(...xs)) / 2, y: (Math.min(...ys) + Math.max(...ys)) / 2 };
    const [a, b] = [outline[0] as readonly [number, number], outline[1] as readonly [number, number]];
    const onLine = { x: a[0] + (b[0] - a[0]) * share(a, b), y: a[1] + (b[1] - a[1]) * share(a, b) };
    const place = shown === 'hidden' ? { ...onLine, end: 'arrow' as const } : middle;
    found.set(what, { ...place, name: what, letter });
  }
  return [...found.values()];

  /** Nearer the line's right end. */
  function share(a: readonly [number, number], b: readonly [number, number]): number {
    return a[0] < b[0] ? 0.8 : 0.2;
  }
}
