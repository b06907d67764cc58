import { fineMarks, formatLength, type Panel, sideAt } from '@wattlewright/model';
import { ASCENT, DESCENT, LINE_STEP, TEXT, TEXT_LARGE } from '../layout/style.ts';
import { originCircle } from '../layout/terminator.ts';
import { textWidth } from '../lettering.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, polyline, rectangle } from '../path.ts';
import { standardScale } from '../scale.ts';
import { partOf } from './partof.ts';
import { paragraph, STICK_TICK, type StickOptions } from './stick.ts';
import { heightMarks, heightPlaces, heightWords, type StileHeight, stileHeights, TRACK } from './stickheights.ts';
import { SKETCH, stickSketch } from './sticksketch.ts';
import { unitName } from './template.ts';

/** Places across the stick, mm from its left edge: the box of the numbers, start of the distances, of the sides, end of the lines. */
const BOX = { from: TRACK + 1, to: TRACK + 10 } as const;
const DISTANCE: number = BOX.to + 3;
const SIDE: number = DISTANCE + 20;
const LINES: number = SIDE + 14;

/** Width of the course stick across, mm: its columns, and at the right one for the heights of screws and hardware. */
const WIDTH: number = LINES + 2 + TRACK;

/** From a course's lower edge up to the baseline of its texts, mm. */
const LIFT = 1;

/** Courses this far apart, mm, have room for the larger lettering. */
const ROOMY = LIFT + ASCENT * TEXT_LARGE + 1;

/** Every fifth course stands out. */
const FIFTH = 5;

/** What the marks of a course stick depict. */
interface Letters {
  readonly stile?: string | undefined;
  readonly slat?: string | undefined;
}

/**
 * The course stick, full size: stood beside a stile, foot to foot, it marks the lower edge of every course with its
 * number, its distance from the stile's foot, rounded once, and the side on which it passes the first stave; then the top
 * of the stack, the room over it and the stile's top. Its right edge serves the left stile, its left edge the right one,
 * seen from the front. Courses are never less than 5 mm apart, so every one is figured. One drawing however long.
 */
export function courseStick(panel: Panel, { parts = [], named = panel.name }: StickOptions = {}): Drawing {
  const letters: Letters = {
    stile: partOf(parts, panel, 'stile')?.letter,
    slat: partOf(parts, panel, 'slat')?.letter,
  };
  const top = -panel.stile.length;
  const heights = stileHeights(panel);
  const head = header(panel, { top, heights, named });
  return {
    name: 'course-stick',
    title: `Course stick: ${named}`,
    scale: 1,
    scaleText: standardScale(1, panel.display.unit).text,
    marks: [
      ...head.marks,
      stroke('tick', rectangle({ u0: 0, v0: top, u1: WIDTH, v1: 0 }), letters.stile),
      ...panel.courses.bottoms.flatMap((_, course) => courseMarks(panel, course, { letters, heights })),
      ...stackTop(panel, top, letters),
      ...heightMarks(heights, { panel, width: WIDTH, of: letters.stile }),
      ...foot(panel, heights),
    ],
    bounds: { u0: 0, v0: top - head.height, u1: WIDTH, v1: 1 },
    alt: `Full-size stick up the stiles of ${named}: the lower edges of ${panel.courses.count} courses, each with its distance from the stile's foot.`,
  };
}

/** A course's lower edge at both sides of the stick, its number, distance and starting side. */
function courseMarks(
  panel: Panel,
  course: number,
  { letters: { slat }, heights }: { readonly letters: Letters; readonly heights: readonly StileHeight[] },
): Mark[] {
  const { courses, clear, display } = panel;
  const y = (courses.bottoms[course] as number) - clear.bottom;
  const fifth = (course + 1) % FIFTH === 0;
  const height = courses.pitch >= ROOMY ? TEXT_LARGE : TEXT;
  const of = slat === undefined ? {} : { of: slat };
  const front = sideAt(panel, course, 0) > 0;
  const text = formatLength(y, display, { fractions: 'stacked' });
  const base = -y - LIFT;
  return [
    ...(course === 0 ? [] : edgeTicks(y, STICK_TICK, 'tick', slat)),
    ...(courses.gap > 0 ? edgeTicks(y + courses.height, STICK_TICK / 2, 'tick', slat) : []),
    ...courseLine(y, heights).map(([from, to]) =>
      stroke(fifth ? 'dimension' : 'grid', line([from, -y], [to, -y]), slat),
    ),
    stroke('dimension', rectangle({ u0: BOX.from, v0: base - height - 0.6, u1: BOX.to, v1: base + 0.6 }), slat),
    write(fifth ? 'title' : 'label', `${course + 1}`, [(BOX.from + BOX.to) / 2, base], {
      height,
      anchor: 'middle',
      ...of,
    }),
    ...(course === 0 ? [] : [write('label', text, [DISTANCE, base], { height, ...of })]),
    write('note', front ? '+ front' : '− behind', [SIDE, base], { height: TEXT, ...of }),
  ];
}

/** Where a course's line runs from its tick to its words: not through the name or the leader of a height beside it. */
function courseLine(y: number, heights: readonly StileHeight[]): readonly (readonly [number, number])[] {
  const isNear = heightPlaces(heights, 'left').some(
    ({ one, at }) => y > Math.min(one.y, at - NEAR) - 0.1 && y < Math.max(one.y, at + NEAR) + 0.1,
  );
  return isNear ? [[TRACK, LINES]] : [[STICK_TICK, LINES]];
}

/** Half the room up the stick that a name and its triangle take, mm. */
const NEAR: number = ((ASCENT + DESCENT) * TEXT) / 2;

function edgeTicks(y: number, long: number, role: 'tick', of: string | undefined): Mark[] {
  return [stroke(role, line([0, -y], [long, -y]), of), stroke(role, line([WIDTH, -y], [WIDTH - long, -y]), of)];
}

/** The top of the stack, led to its distance over the stile's top, where there is always room. */
function stackTop({ courses, display }: Panel, top: number, { slat }: Letters): Mark[] {
  const text = `Top of stack ${formatLength(courses.stack, fineMarks(display), { fractions: 'stacked' })}`;
  return [
    stroke('tick', line([0, -courses.stack], [WIDTH, -courses.stack]), slat),
    led(-courses.stack, top - ROWS.stack, LEADS.stack),
    write('label', text, [LEADS.text, top - ROWS.stack], {
      height: TEXT_LARGE,
      ...(slat === undefined ? {} : { of: slat }),
    }),
  ];
}

/** From the stile's top up to the baselines of its three heights, which stand over each other as in the panel, mm. */
const ROWS = { stack: 2.5, room: 2.5 + LINE_STEP * TEXT_LARGE, stile: 2.5 + 2 * LINE_STEP * TEXT_LARGE } as const;

/** Where the heights at the top are led up, and where their texts begin, mm from the stick's left edge. */
const LEADS = { stile: 15, stack: 19, text: 21.5 } as const;

/** A line from a height up to the text that tells it. */
function led(from: number, base: number, u: number): Mark {
  return stroke(
    'dimension',
    polyline([
      [u, from],
      [u, base - TEXT_LARGE / 2],
      [LEADS.text - 0.8, base - TEXT_LARGE / 2],
    ]),
  );
}

/** How far apart the names of the edges come again, mm. */
const NAMES_EVERY = 250;

/** The datum, and what each edge is laid on. */
function foot(panel: Panel, heights: readonly StileHeight[]): Mark[] {
  const { courses } = panel;
  const edge = (text: string, u: number, y: number): Mark =>
    write('note', text, [u, -y], { height: TEXT, angle: 90, anchor: 'middle' });
  const names: Mark[] = [];
  // The words stand on end between the ticks, again and again, as far as the courses are tall enough for them.
  const ways = ['this edge: right stile, inner edge', 'right stile, inner edge', 'right stile'];
  const words = ways.find((one) => textWidth(one, TEXT) + 3 <= courses.height);
  let next = 0;
  for (let course = 0; words !== undefined && course < courses.count; course += 1) {
    const [from, room] = [course * courses.pitch, courses.height];
    if (from < next || heights.some(({ y }) => y > from - 3 && y < from + room + 3)) continue;
    names.push(edge(words, 5, from + room / 2), edge(words.replace('right', 'left'), WIDTH - 3, from + room / 2));
    next = from + NAMES_EVERY;
  }
  return [
    originCircle([DISTANCE + 1, 0]),
    write('label', '0 foot', [DISTANCE + 3.5, -LIFT], { height: courses.pitch >= ROOMY ? TEXT_LARGE : TEXT }),
    ...names,
  ];
}

/** Over the stile's top: its distance, room over the stack, what the frame's foot adds, how to use the stick. Upwards. */
function header(
  panel: Panel,
  { top, heights, named }: { readonly top: number; readonly heights: readonly StileHeight[]; readonly named: string },
): { readonly marks: Mark[]; readonly height: number } {
  const { clear, courses, stile, display, asBuilt } = panel;
  const show = (length: number): string => formatLength(length, display, { fractions: 'stacked' });
  const room = formatLength(courses.allowance, fineMarks(display), { fractions: 'stacked' });
  // The stile stands on the bottom rail, while the making order counts from the rail's outer edge.
  const excess = formatLength(clear.bottom, display, { fractions: 'stacked', named: true });
  const datum = `From the foot of the frame: ${excess} more`;
  const first = `Print, check both bars, cut out; where it has several pages, join them first. Lay it as sketched on the front face of a stile, foot flush with foot: the right edge of the stick along the inner edge of the left stile, the left edge along the inner edge of the right one. Or clamp the stiles side by side, front faces up and feet flush, and square every mark across both.`;
  const more = [
    `Each line is the lower edge of a course; distances from the stile’s foot, ${unitName(panel)}, each rounded by itself.`,
    `+\u00a0front, −\u00a0behind: how the course passes the left-hand stave.${courses.gap > 0 ? ' Short ticks: upper edges of the slats.' : ''}`,
    heightWords(panel, heights),
    asBuilt
      ? 'From the measured slats.'
      : 'From planned slats: where the cut stack measures otherwise, the making order says how marks move.',
  ]
    .filter(Boolean)
    .join(' ');
  const width = WIDTH - 4;
  const heading = `${named}: course stick`;
  const large = { height: TEXT_LARGE };
  const narrow = width - SKETCH.width - 6;
  const datumTop = top - ROWS.stile - LINE_STEP * TEXT_LARGE - paragraph(datum, [0, 0], width, large).height - 1;
  const moreTop = datumTop - paragraph(more, [0, 0], width).height - 2;
  const firstTop = moreTop - Math.max(SKETCH.height, paragraph(first, [0, 0], narrow).height);
  const titleTop = firstTop - paragraph(heading, [0, 0], width, { ...large, role: 'title' }).height - 1;
  return {
    marks: [
      led(top, top - ROWS.stile, LEADS.stile),
      write('label', `Stile top ${show(stile.length)}`, [LEADS.text, top - ROWS.stile], large),
      write('label', `Room above the stack ${room}`, [LEADS.text, top - ROWS.room], large),
      ...paragraph(datum, [2, datumTop], width, large).marks,
      ...paragraph(heading, [2, titleTop], width, { ...large, role: 'title' }).marks,
      ...paragraph(first, [2, firstTop], narrow).marks,
      ...stickSketch([WIDTH - 2 - SKETCH.width, firstTop]),
      ...paragraph(more, [2, moreTop], width).marks,
    ],
    height: top - titleTop + 2,
  };
}
