import { type Panel, type RowBehaviour, sampleSlat, weaveDepth } from '@wattlewright/model';
import { lines } from '../layout/lines.ts';
import type { NoteTarget } from '../layout/notes.ts';
import { LINE_STEP, TEXT } from '../layout/style.ts';
import { dot } from '../layout/terminator.ts';
import type { Box, Drawing, Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line } from '../path.ts';
import type { Extent } from '../scale.ts';
import type { View } from '../view.ts';
import { backingPlan } from './backing.ts';
import { boxOfInk, dimensioned, planFacingOver, type StatedOptions, said, saidFine, stated } from './detaildrawing.ts';
import { cutPlanes, type DetailLetter } from './detailkey.ts';
import { screwName, screwSide, screwsOf } from './detailscrew.ts';
import { slatEnds } from './detailslat.ts';
import { breakLine } from './grain.ts';
import { partOf } from './partof.ts';
import type { Stretch } from './passes.ts';
import type { SectionOptions } from './weavesection.ts';
import { planView, rowBeneath, stopBox, weaveInk } from './weavesectionink.ts';

/** From where to where a detail of the frame's left or right edge reaches into the first bay, mm along the panel. */
export function edgeStretch({ outside, stile, staves }: Panel, side: 'left' | 'right'): Stretch {
  const reach = stile.width + staves.width + Math.min(staves.bay * 0.75, stile.width * 0.8);
  return side === 'left' ? [0, reach] : [outside.width - reach, outside.width];
}

/** Real size of the detail, mm. */
export function slatEndExtent(panel: Panel): Extent {
  const [from, to] = edgeStretch(panel, 'left');
  return { width: to - from, height: panel.outside.depth };
}

/**
 * The left end of a slat beside its stile, looking down, in the course where it lies farthest off mid-depth; the screw that
 * holds the end stave to the stile, and the stops that hold the slats.
 */
export function slatEnd(
  panel: Panel,
  key: DetailLetter,
  { scale, parts = [], alike = [] }: SectionOptions & { readonly alike?: readonly Panel[] },
): Drawing {
  const { staves, stile, display, outside } = panel;
  const s = scale.ratio;
  const plan = planView(s);
  const stretch = edgeStretch(panel, 'left');
  const { course, y } = cutPlanes(panel).down;
  const row = panel.rows[panel.weave.rowOfCourse[course] as number] as RowBehaviour;
  const half = Math.max(outside.depth, weaveDepth(panel)) / 2;
  const along: StatedOptions = { display, along: (x) => x * s };
  const through: StatedOptions = { display, along: (z) => z * s };
  const screws = screwsOf(panel, 'end stave to stile');
  const stops = stopBox(panel, partOf(parts, panel, 'stop'));
  const backing = backingPlan({ panel, parts, plan, scale: s, y, stretch, brief: true });
  const ink: Mark[] = [
    ...backing.marks,
    ...weaveInk({ panel, parts, scale: s, stretch, course }),
    ...(screws ? screwSide(screws, { from: plan(stile.width + staves.width, 0), way: [-1, 0], scale: s }) : []),
    ...(screws ? [] : [stroke('centre', line(plan(-3 / s, 0), plan(stretch[1] + 3 / s, 0)))]),
    breakLine(plan(stretch[1], -half), plan(stretch[1], half)),
  ];
  const box = boxOfInk(ink);
  return dimensioned({
    name: `detail-${key.letter.toLowerCase()}`,
    title: `Detail ${key.letter}  ${key.title}, course ${course + 1}`,
    alt: `The end of the slat of course ${course + 1} of ${panel.name} at the left stile, looking down.`,
    scale,
    ink: [...ink, ...endWords({ panel, row, plan, alike }, box)],
    outline: box,
    words: planFacingOver(box, [box.u1 - FACING_ROOM / 2, box.u1 - FACING_ROOM, (stile.width / 2) * s]),
    sizes: {
      above: [
        ...stated(0, stile.width, along),
        ...stated(stile.width, stile.width + staves.width, along),
        ...(stops ? stated(stile.width, stile.width + stops.width, along) : []),
      ],
      left: [
        ...(stops ? stated(-stops.to, -stops.from, through) : []),
        ...stated(-staves.depth / 2, staves.depth / 2, through),
        ...stated(0, row.bend.endOffsets[0], { ...through, level: 1 }),
        ...stated(-stile.depth / 2, stile.depth / 2, { ...through, total: true, level: 2 }),
      ],
    },
    notes: [
      ...backing.notes,
      ...notes({
        panel,
        row,
        plan,
        alike,
        beneath: rowBeneath(panel, course)[0],
        stops,
      }),
    ],
    noteWidth: 42,
  });
}

interface NotesOf {
  readonly panel: Panel;
  readonly row: RowBehaviour;
  readonly plan: View;
  /** Panels that the detail stands for too. */
  readonly alike: readonly Panel[];
  /** The row of the course drawn in outline beneath. */
  readonly beneath: number | undefined;
  readonly stops: ReturnType<typeof stopBox>;
}

/** What the end of the slat is like: where it lies among all ends, and how far it stands off the stile. */
function endText(panel: Panel, { bend, cutLength }: RowBehaviour, alike: readonly Panel[]): string {
  const { display, rows, weave } = panel;
  const lean = leanText(bend);
  const off = Math.abs(bend.endOffsets[0]);
  const [left, right] = [0, 1].map((end) => rows.map((one) => Math.abs(one.bend.endOffsets[end as 0 | 1]))) as [
    number[],
    number[],
  ];
  const beyond = Math.max(...right);
  const differ = Math.max(...left) - Math.min(...left) > display.mark / 2;
  const course = weave.rowOfCourse.indexOf(right.indexOf(beyond)) + 1;
  const rank =
    beyond - off > display.mark / 2
      ? `, the farthest at this stile; at the right stile course ${course} ends ${said(beyond, display)} off`
      : differ
        ? ', the farthest of all ends'
        : '';
  const room = Math.max(0, bend.cutLength - cutLength) / 2;
  const clear = room > display.mark / 16 ? `, ${saidFine(room, display)} short of the stile` : '';
  return `Square end ${said(off, display)} off mid-depth${rank}, leaning ${lean}${clear}${alikeText(off, alike)}`;
}

const leanText = ({ endSlopes }: RowBehaviour['bend']): string =>
  `${(Math.atan(Math.abs(endSlopes[0])) * (180 / Math.PI)).toFixed(1)}°`;

/** Where the same end lies in the panels that the detail stands for too, where a rule shows it. */
function alikeText(off: number, alike: readonly Panel[]): string {
  const texts = alike.flatMap((panel) => {
    const { course } = cutPlanes(panel).down;
    const { bend } = panel.rows[panel.weave.rowOfCourse[course] as number] as RowBehaviour;
    const own = Math.abs(bend.endOffsets[0]);
    return Math.abs(own - off) < panel.display.mark / 16
      ? []
      : [`${panel.name}: ${said(own, panel.display)}, ${leanText(bend)}`];
  });
  return texts.length === 0 ? '' : `. ${texts.join('; ')}`;
}

/** A text in as many lines as it needs, the lines about as long as each other: no word stands alone on the last. */
function balanced(text: string, width: number): string[] {
  const fewest = lines(text, width).length;
  let best = lines(text, width);
  for (let narrower = width - 2; narrower > width / 2; narrower -= 2) {
    const tried = lines(text, narrower);
    if (tried.length > fewest) break;
    best = tried;
  }
  return best;
}

/** Room under the plan at its right end for the word that says which side is which, mm. */
const FACING_ROOM = 14;

/** The narrowest column the words about a slat's end are set in, mm. */
const LEAST_ROOM = 40;

/** The words for a slat's end in front, under the plan: a leader to the right would run along the slat. */
function endWords(
  { panel, row, plan, alike }: Pick<NotesOf, 'panel' | 'row' | 'plan' | 'alike'>,
  { u0, u1, v1 }: Box,
): Mark[] {
  const { bend } = row;
  const z = bend.endOffsets[0];
  if (z <= 0) return [];
  const [start] = slatEnds(panel, row);
  // A little inside the end, so that the room between it and the stile stays clear.
  const inside = panel.courses.thickness / 2;
  const to = plan(panel.clear.left + start + inside, sampleSlat(bend, start + inside).z);
  const room = u1 - u0 - FACING_ROOM;
  // A narrow plan has no room beside that word: the text goes under it.
  const below = v1 + 3 + (room < LEAST_ROOM ? TEXT * LINE_STEP : 0);
  const from: Point = [to[0] - 5, below];
  const rows = balanced(endText(panel, row, alike), Math.max(room, LEAST_ROOM));
  return [
    stroke('dimension', line(from, to)),
    dot(to),
    ...rows.map((text, i) => write('note', text, [u0, below + (1 + i * LINE_STEP) * TEXT + 1.2], { height: TEXT })),
  ];
}

function notes({ panel, row, plan, stops, beneath, alike }: NotesOf): NoteTarget[] {
  const { display, clear, courses, staves } = panel;
  const { bend } = row;
  const [start] = slatEnds(panel, row);
  // Leaders end apart from each other: the slat nearer the stave, the course below nearer the break.
  const shown = edgeStretch(panel, 'left')[1] - clear.left - staves.width;
  const x = staves.width + shown * 0.4;
  const under = staves.width + shown * 0.75;
  const at = (place: number): NoteTarget['at'] => plan(clear.left + place, sampleSlat(bend, place).z);
  const screws = screwsOf(panel, 'end stave to stile');
  return [
    ...(bend.endOffsets[0] > 0 ? [] : [{ at: at(start + courses.thickness / 2), text: endText(panel, row, alike) }]),
    ...(beneath === undefined
      ? []
      : [
          {
            at: plan(clear.left + under, sampleSlat((panel.rows[beneath] as RowBehaviour).bend, under).z),
            text: 'The next course below',
          },
        ]),
    { at: at(x), text: `Slat ${said(courses.thickness, display)} thick, long grain` },
    ...(screws
      ? [
          {
            at: plan(clear.left + staves.width, 0),
            text: `End stave held to the stile by ${screwName(screws)} through the middle of its inner edge, heads flush`,
            end: 'arrow' as const,
          },
        ]
      : []),
    ...(stops
      ? [
          {
            at: plan(clear.left + stops.width * 0.7, (stops.from + stops.to) / 2),
            text: 'Stop strip, front and back',
          },
        ]
      : []),
  ];
}
