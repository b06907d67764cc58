import { drainHoles, type Panel } from '@wattlewright/model';
import { union } from '../ink.ts';
import type { NoteTarget } from '../layout/notes.ts';
import type { Size } from '../layout/rows.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line } from '../path.ts';
import type { Extent } from '../scale.ts';
import { viewBox } from '../view.ts';
import { finestMark, markUnder } from './cutsize.ts';
import { boxOfInk, dimensioned, facingFree, type StatedOptions, said, saidFine, stated } from './detaildrawing.ts';
import type { DetailLetter } from './detailkey.ts';
import { breakLine } from './grain.ts';
import { uprightInk, uprightView } from './verticalsectionink.ts';
import type { SectionOptions } from './weavesection.ts';

/** How far up the second course the detail breaks off at the least, courses. */
const LEAST_OF_COURSE = 1.25;

/** Up to which height the detail reaches, y in mm: a course and a half, as far as the rail's height makes sense of it. */
function upTo({ clear, courses, rail }: Panel): number {
  const shown = Math.min(courses.pitch * 1.5, rail.height * 1.5);
  // A sliver of the second course would be a pile of lines in the break.
  const whole =
    shown > courses.pitch && shown < courses.pitch * LEAST_OF_COURSE ? courses.pitch * LEAST_OF_COURSE : shown;
  return clear.bottom + Math.min(whole, clear.height * 0.9);
}

/** Real size of the detail, mm. */
export function staveFootExtent(panel: Panel): Extent {
  return { width: panel.rail.depth, height: upTo(panel) };
}

/** The bottom rail from front to back through a stave: the groove with its cheeks, the stave's foot, the first course. */
export function staveFoot(panel: Panel, key: DetailLetter, { scale, parts = [] }: SectionOptions): Drawing {
  const { rail, groove, staves, courses, display, outside } = panel;
  const s = scale.ratio;
  const at = uprightView(s);
  const top = upTo(panel);
  const half = outside.depth / 2;
  const up: StatedOptions = { display, along: (y) => at(0, y)[1] };
  const through: StatedOptions = { display, along: (z) => z * s };
  const first = courses.bottoms[0] as number;
  const bed = rail.height - groove.depth;
  const cut = uprightInk({ panel, parts, at, span: [-1, top] });
  return dimensioned({
    name: `detail-${key.letter.toLowerCase()}`,
    title: `Detail ${key.letter}  ${key.title}`,
    alt: `The foot of a stave of ${panel.name} in the groove of the bottom rail, cut from front to back.`,
    scale,
    ink: [...cut, ...drainInk(panel, at), breakLine(at(-half, top), at(half, top))],
    words: facingFree(
      [at(half, 0)[0], at(-half, 0)[0]],
      // Beside the solid rail, else beside the weave.
      [
        ...[0.5, 0.6, 0.4, 0.75, 0.3, 0.9, 0.2, 0.1, 0].map((share) => bed * share),
        ...[0.25, 0.5, 0.75, 1].map((share) => rail.height + (top - rail.height) * share),
      ].map((y) => at(0, y)[1]),
    ),
    // Slats that are bent hard can stand out before the frame.
    outline: union([viewBox(at, [half, 0], [-half, top]), boxOfInk(cut)]),
    sizes: {
      left: [
        ...stated(rail.height - groove.depth, rail.height, up),
        ...(courses.gap > 0 && courses.count > 1 && first + courses.pitch <= top
          ? stated(first + courses.height, first + courses.pitch, up)
          : []),
        ...(first + courses.height <= top ? stated(first, first + courses.height, { ...up, mark: courses.step }) : []),
        ...stated(0, rail.height, { ...up, level: 1 }),
      ],
      above: stated(-staves.depth / 2, staves.depth / 2, through),
      below: [...cheeks(panel, through), ...stated(-rail.depth / 2, rail.depth / 2, { ...through, total: true })],
    },
    notes: notes(panel, at, top),
    noteWidth: 42,
  });
}

/** The groove, and its cheek in front as a gauge is set: the one behind is alike. */
function cheeks({ rail, groove, display }: Panel, through: StatedOptions): Size[] {
  const [half, side] = [rail.depth / 2, groove.width / 2];
  const fine = (length: number): number => markUnder(length, display) ?? finestMark(display);
  return [
    ...stated(-half, -side, { ...through, mark: fine(half - side) }),
    ...stated(-side, side, { ...through, mark: fine(groove.width) }),
  ];
}

/** A drain hole down out of the groove, beyond the plane: half-way to the next stave. */
function drainInk(panel: Panel, at: ReturnType<typeof uprightView>): Mark[] {
  const { diameter, places } = drainHoles(panel);
  if (places.length === 0) return [];
  const bed = panel.rail.height - panel.groove.depth;
  return [
    ...[-1, 1].map((side) => stroke('hidden', line(at((side * diameter) / 2, 0), at((side * diameter) / 2, bed)))),
    stroke('centre', line(at(0, bed), at(0, -DRAIN_PAST))),
  ];
}

/** How far the centre line of a drain hole runs out under the rail, mm. */
const DRAIN_PAST = 3;

function notes(panel: Panel, at: ReturnType<typeof uprightView>, top: number): NoteTarget[] {
  const { rail, groove, staves, display, clear } = panel;
  const bed = rail.height - groove.depth;
  const drains = drainHoles(panel);
  const play =
    groove.clearance > display.mark / 8
      ? `Groove in the middle of the rail, ${saidFine(groove.clearance, display)} wider than the stave`
      : 'Groove as wide as the stave';
  return [
    { at: at(-staves.depth / 4, (clear.bottom + top) / 2), text: 'Stave, long grain' },
    {
      at: at(-groove.width / 2, rail.height - groove.depth / 2),
      text: play,
      end: 'arrow',
    },
    { at: at(0, bed + groove.depth / 4), text: 'Stave stands on the bed of the groove' },
    { at: at(-(rail.depth + groove.width) / 4, bed * 0.2), text: 'Rail, end grain' },
    ...(drains.places.length === 0
      ? []
      : [
          {
            at: at(-drains.diameter / 2, bed * 0.55),
            text: `Drain hole ${said(drains.diameter, display)}, half-way between two staves`,
            end: 'arrow' as const,
          },
        ]),
  ];
}
