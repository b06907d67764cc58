import type { Panel } from '@wattlewright/model';
import type { NoteTarget } from '../layout/notes.ts';
import { isBehind } from './elevationink.ts';
import { braceOutline, fittings } from './fittings.ts';
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
  const places = [...frameAndWeave(front), ...strips(front), ...fitted(front, detail)];
  // In words, two of one kind would be the same word twice.
  const named =
    detail === 'shop' ? places : places.filter(({ name }, i) => places.findIndex((one) => one.name === name) === i);
  return named.flatMap(({ x, y, name, letter, end }): NoteTarget[] => {
    const target = { at: front.at(x, y), ...(end && { end }), ...(letter !== undefined && { of: letter }) };
    if (detail === 'shop' && letter !== undefined) return [{ ...target, text: letter, kind: 'balloon' }];
    return [{ ...target, text: name, kind: 'note' }];
  });
}

function frameAndWeave(front: Front): Place[] {
  const { panel } = front;
  const { outside, clear, rail, stile, staves, courses } = panel;
  const slats = new Map(panel.rows.map((row, r) => [letterOf(front, 'slat', row.cutLength), r]));
  const stave = Math.max(0, staves.count - 2);
  const seen = bareStave(panel, stave);
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
}

/** A bare piece of a stave low on the panel, clear of the slivers at its ends: the leader of what lies over it runs above. */
function bareStave(panel: Panel, stave: number): readonly [number, number] | undefined {
  const { clear, courses } = panel;
  const runs = staveSeen(panel, stave);
  const whole = runs.filter(([from, to]) => to - from > courses.height * 0.7);
  const wanted = clear.bottom + clear.height * 0.3;
  const off = ([from, to]: readonly [number, number]): number => Math.abs((from + to) / 2 - wanted);
  return (whole.length > 0 ? whole : runs).toSorted((a, b) => off(a) - off(b))[0];
}

/** A face lower than this on paper, mm, has no room for the dot of a leader. */
const DOT_ROOM = 1.8;

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
            // A dot would fill a thin strip and not be seen.
            ...(cover.height * front.ratio < DOT_ROOM && { end: 'arrow' as const }),
          },
        ]
      : []),
    ...(stop
      ? [{ x: right - stop.width / 2, y: clear.bottom + clear.height * 0.55, name: 'stop strip', letter: stop.letter }]
      : []),
  ];
}

/** One place for each kind of fitting, the rightmost and lowest, and one on a brace. Hardware at the left goes unnamed. */
function fitted(front: Front, detail: 'shop' | 'client'): Place[] {
  const { panel } = front;
  const found = new Map<string, Place>();
  for (const fitting of fittings(panel)) {
    const { what, role, from, to } = fitting;
    const letter = role && letterOf(front, role);
    const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
    const x = what === 'cap rail' ? panel.outside.width * 0.94 : middle.x;
    // Blocks behind the frame are named on the back view.
    if ((detail === 'client' || what === 'stand-off block') && isBehind(front, fitting)) continue;
    if (role === undefined && middle.x < panel.outside.width / 2) continue;
    const known = found.get(what);
    if (!known || x > known.x + 1 || (x > known.x - 1 && middle.y < known.y)) {
      found.set(what, { x, y: middle.y, name: what, letter });
    }
  }
  const brace = detail === 'shop' ? braceOutline(panel) : undefined;
  return [...found.values(), ...(brace ? [bracePlace(brace, brace.role && letterOf(front, brace.role))] : [])];
}

/** On the longest line of the brace's outline, nearer its right end. */
function bracePlace(
  { what, outline }: NonNullable<ReturnType<typeof braceOutline>>,
  letter: string | undefined,
): Place {
  const sides = outline.map((a, i) => ({ a, b: outline[(i + 1) % outline.length] as typeof a }));
  const lengths = sides.map(({ a, b }) => Math.hypot(b[0] - a[0], b[1] - a[1]));
  const { a, b } = sides[lengths.indexOf(Math.max(...lengths))] as (typeof sides)[number];
  const share = a[0] < b[0] ? 0.8 : 0.2;
  return { x: a[0] + (b[0] - a[0]) * share, y: a[1] + (b[1] - a[1]) * share, name: what, letter, end: 'arrow' };
}
