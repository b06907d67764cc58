import { formatLength, type Panel, type Part, type RowBehaviour, sampleSlat, weaveDepth } from '@wattlewright/model';
import type { NoteTarget } from '../layout/notes.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line } from '../path.ts';
import type { Extent, Scale } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import type { View } from '../view.ts';
import { backingPlan } from './backing.ts';
import { freeCircle } from './detailcircle.ts';
import {
  boxOfInk,
  dimensioned,
  planFacing,
  planFacingOver,
  type StatedOptions,
  said,
  saidFine,
  stated,
  type ToDimension,
} from './detaildrawing.ts';
import { cutName, cutPlanes, detailLetters } from './detailkey.ts';
import { breakLine } from './grain.ts';
import type { Stretch } from './passes.ts';
import { planView, weaveInk } from './weavesectionink.ts';

/** What the section views take. */
export interface SectionOptions {
  readonly scale: Scale;
  /** The parts list, whose letters the ink carries; none unless given. */
  readonly parts?: readonly Part[];
  /** The panels that a section in plan holds for, to stand in its title where others on the sheet have one of their own. */
  readonly named?: string;
}

/** Real size of `weaveSection`, mm. */
export function weaveSectionExtent({ outside }: Panel): Extent {
  return { width: outside.width, height: outside.depth };
}

/** The section in plan: the whole width, looking down from the middle of a course; the front is at the bottom. */
export function weaveSection(panel: Panel, { scale, parts = [], named }: SectionOptions): Drawing {
  const { outside, clear, staves, display } = panel;
  const s = scale.ratio;
  const plan = planView(s);
  const across: StatedOptions = { display, along: (x) => x * s };
  const planes = cutPlanes(panel);
  const end = detailLetters(panel).find(({ subject }) => subject === 'slat end');
  const radius = end ? Math.max(end.radius * s, 4) : 0;
  const backing = backingPlan({ panel, parts, plan, scale: s, y: planes.down.y });
  const ink = [...backing.marks, ...weaveInk({ panel, parts, scale: s })];
  const circles = end ? freeCircle(ink, { at: plan(end.at.x, end.at.z), radius, letter: end.letter }) : [];
  const cut = [...ink, ...circles];
  const [first, second] = staves.centres as [number, number];
  return dimensioned({
    name: 'weave-section',
    title: `Section ${cutName(planes.down)}${ofText(named)}, looking down, through course ${planes.down.course + 1}`,
    alt: `Section of ${panel.name} looking down, cut through course ${planes.down.course + 1}: ${staves.count} staves between the stiles and the slat bent round them.`,
    scale,
    // Clear of leaders to what lies behind.
    ink: [...cut, ...planFacing([boxOfInk(cut).u1, backing.marks.length > 0 ? 2.5 : 0])],
    outline: boxOfInk(cut),
    notes: [...backing.notes],
    sizes: {
      above: stated(first, second, across),
      below: [
        ...stated(0, clear.left, across),
        ...stated(clear.left, clear.left + clear.width, across),
        ...stated(clear.left + clear.width, outside.width, across),
        ...stated(0, outside.width, { ...across, total: true }),
      ],
    },
  });
}

/**
 * From where to where the bay is drawn, mm from the panel's left edge: as much of the stile as a stave is wide, and past the
 * second stave as far as notes need. What is left out would only make the scale smaller.
 */
export function bayStretch({ staves, clear, outside }: Panel): Stretch {
  if (staves.count === 2) return [0, outside.width];
  const second = (staves.lefts[1] as number) + staves.width;
  return [Math.max(0, clear.left - staves.width), second + Math.min(staves.bay / 2, staves.width * 1.25)];
}

/** Real size of `weaveBay`, mm. */
export function weaveBayExtent(panel: Panel): Extent {
  const [from, to] = bayStretch(panel);
  return { width: to - from, height: panel.outside.depth };
}

/**
 * The first bay of the section in plan by itself: the stile's inner edge, the bay and the start of the next, with the slat's
 * true bend, its contact with the arrises of the staves, its square end at the stile, and what the bend asks of the wood.
 */
export function weaveBay(panel: Panel, { scale, parts = [], named }: SectionOptions): Drawing {
  const s = scale.ratio;
  const plan = planView(s);
  const stretch = bayStretch(panel);
  const course = cutPlanes(panel).down.course;
  const row = panel.rows[panel.weave.rowOfCourse[course] as number] as RowBehaviour;
  const depth = Math.max(panel.outside.depth, weaveDepth(panel)) / 2;
  const breaks = stretch.filter((x) => x > 1e-6 && x < panel.outside.width - 1e-6);
  const ink: Mark[] = [
    ...weaveInk({ panel, parts, scale: s, stretch }),
    stroke('centre', line(plan(stretch[0], 0), plan(stretch[1], 0))),
    ...breaks.map((x) => breakLine(plan(x, -depth), plan(x, depth))),
  ];
  return dimensioned({
    name: 'weave-bay',
    title: `First bay of section ${cutName(cutPlanes(panel).down)}${ofText(named)}, course ${course + 1}`,
    alt: `The first bay of section ${cutName(cutPlanes(panel).down)} of ${panel.name}, beside the left stile, and the bend of the slat in course ${course + 1}.`,
    scale,
    ink,
    outline: boxOfInk(ink),
    words: planFacingOver(
      boxOfInk(ink),
      bayMiddles(panel).map((x) => x * s),
    ),
    sizes: baySizes(panel, s),
    notes: bayNotes(panel, row, { plan, stretch }),
    noteWidth: 60,
  });
}

/** Where words may stand over and under the bay, mm from the panel's edge: clear of the extension lines at the staves. */
function bayMiddles({ staves }: Panel): number[] {
  const [from, to] = [(staves.lefts[0] as number) + staves.width, staves.lefts[1] as number];
  return [0.5, 0.75, 0.25].map((share) => from + (to - from) * share);
}

function baySizes(panel: Panel, s: number): ToDimension['sizes'] {
  const { staves, stile, display } = panel;
  const along: StatedOptions = { display, along: (x) => x * s };
  const through: StatedOptions = { display, along: (z) => z * s };
  const [left, next] = staves.lefts as [number, number];
  const [first, second] = staves.centres as [number, number];
  return {
    above: [
      ...stated(left, left + staves.width, along),
      ...stated(left + staves.width, next, along),
      ...stated(next, next + staves.width, along),
    ],
    below: stated(first, second, along),
    left: [
      ...stated(-staves.depth / 2, staves.depth / 2, through),
      ...stated(-stile.depth / 2, stile.depth / 2, { ...through, level: 1 }),
    ],
  };
}

/** Notes point into the right half, so that their leaders stay short. */
function bayNotes(panel: Panel, row: RowBehaviour, { plan, stretch }: BayPlace): NoteTarget[] {
  const { display, clear, staves, courses } = panel;
  const { bend } = row;
  const right = (staves.lefts[1] as number) + staves.width;
  const room = Math.min(stretch[1], clear.left + clear.width) - right;
  const onSlat = (share: number): NoteTarget['at'] => {
    const x = right + room * share;
    return plan(x, sampleSlat(bend, x - clear.left).z);
  };
  const arris: NoteTarget['at'] = plan(right, (row.sides[1] ?? 1) * (staves.depth / 2));
  const bends =
    bend.minRadius === null
      ? 'the staves do not hold it: it lies straight and loose'
      : `bends to a radius of ${said(bend.minRadius, display)} over the arrises, ${percent(bend.use)} of its bending strength${harder(panel, bend.use)}`;
  return [
    {
      at: plan(right - staves.width / 2, 0),
      text: `Stave ${size(staves.width, panel)} × ${said(staves.depth, display)}, end grain`,
    },
    ...(bend.touched.includes(2) ? [{ at: arris, text: 'The slat bears on the arris', end: 'arrow' as const }] : []),
    // One leader for both, so that no two end beside each other on the slat.
    {
      at: onSlat(0.5),
      text: `Slat ${said(courses.thickness, display)} thick, long grain: ${bends}. ${cutText(panel, row)}`,
    },
  ];
}

/** How long to cut a slat, how that differs from the clear width where a tape shows it, and the room that it leaves. */
function cutText({ clear, display }: Panel, { cutLength, bend }: RowBehaviour): string {
  const cut = `Cut ${said(cutLength, display)} long, ends square`;
  const more = cutLength - clear.width;
  const room = (bend.cutLength - cutLength) / 2;
  const left =
    room < display.mark / 16 ? 'bent, it just fits' : `bent, it is ${saidFine(room, display)} short at each end`;
  return more < display.mark / 2
    ? `${cut}: the clear width will do; ${left}`
    : `${cut}: ${said(more, display)} more than the clear width, for its bend; ${left}`;
}

/** A length without its unit, before another one that has it. */
const size = (length: number, { display }: Panel): string => formatLength(length, display, { fractions: 'stacked' });

/** A share as whole percent; what rounds to nothing is said as under one. */
const percent = (share: number): string => (share < 0.005 ? 'under 1 %' : `${Math.round(share * 100)} %`);

/** What the hardest bent row of the weave takes, where that is another. */
function harder({ rows }: Panel, use: number): string {
  const most = Math.max(...rows.map(({ bend }) => bend.use));
  return percent(most) === percent(use) ? '' : ` (${percent(most)} in the row that is bent hardest)`;
}

interface BayPlace {
  readonly plan: View;
  readonly stretch: Stretch;
}

const ofText = (named: string | undefined): string => (named === undefined ? '' : ` of ${named}`);

/** `weaveSection` for `arrange`. */
export function weaveSectionMaker(panel: Panel, parts: readonly Part[] = [], named?: string): ViewMaker {
  return {
    name: 'weave-section',
    real: weaveSectionExtent(panel),
    make: (scale) => weaveSection(panel, { scale, parts, ...(named !== undefined && { named }) }),
  };
}

/** `weaveBay` for `arrange`. */
export function weaveBayMaker(panel: Panel, parts: readonly Part[] = [], named?: string): ViewMaker {
  return {
    name: 'weave-bay',
    real: weaveBayExtent(panel),
    make: (scale) => weaveBay(panel, { scale, parts, ...(named !== undefined && { named }) }),
    atMost: 2,
  };
}
