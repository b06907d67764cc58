import { fineMarks, formatLength, type Panel, sideAt } from '@wattlewright/model';
import { ASCENT, LINE_STEP, TEXT, TEXT_LARGE } from '../layout/style.ts';
import { originCircle } from '../layout/terminator.ts';
import { textWidth } from '../lettering.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, polyline, rectangle } from '../path.ts';
import { standardScale } from '../scale.ts';
import { partOf } from './partof.ts';
import { paragraph, STICK_TICK, STICK_WIDTH, type StickOptions } from './stick.ts';
import { heightMarks, heightWords, type StileHeight, stileHeights } from './stickheights.ts';
import { unitName } from './template.ts';

/** Width of the course stick across, mm: as any stick, and a column for the heights of screws and hardware. */
const WIDTH: number = STICK_WIDTH + 50;

/** Places across the stick, mm from its left edge: the box of the numbers, start of the distances, of the sides. */
const BOX = { from: 13, to: 22 } as const;
const DISTANCE = 25;
const SIDE = 45;

/** The column of the heights of screws and hardware, mm: the lines of the courses end before it. */
const HEIGHTS = { from: 61, to: 106 } as const;

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
      ...panel.courses.bottoms.flatMap((_, course) => courseMarks(panel, course, letters)),
      ...stackTop(panel, top, letters),
      ...heightMarks(heights, { panel, to: HEIGHTS.to, width: WIDTH, of: letters.stile }),
      ...foot(panel, heights),
    ],
    bounds: { u0: 0, v0: top - head.height, u1: WIDTH, v1: 1 },
    alt: `Full-size stick up the stiles of ${named}: the lower edges of ${panel.courses.count} courses, each with its distance from the stile's foot.`,
  };
}

/** A course's lower edge at both sides of the stick, its number, distance and starting side. */
function courseMarks(panel: Panel, course: number, { slat }: Letters): Mark[] {
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
    stroke(fifth ? 'dimension' : 'grid', line([STICK_TICK, -y], [HEIGHTS.from, -y]), slat),
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

/** The datum, and what each edge is laid on. */
function foot(panel: Panel, heights: readonly StileHeight[]): Mark[] {
  const { courses } = panel;
  const edge = (text: string, u: number, y: number): Mark =>
    write('note', text, [u, -y], { height: TEXT, angle: 90, anchor: 'middle' });
  const names: Mark[] = [];
  const wide = textWidth('this edge: right stile, inner edge', TEXT) + 3;
  // The words stand on end between the ticks, every tenth course, as far as the courses are tall enough for them.
  for (let course = 0; course < courses.count; course += Math.max(1, Math.ceil(250 / courses.pitch))) {
    const [from, room] = [course * courses.pitch, courses.height];
    const short = textWidth('right stile', TEXT) + 3;
    if (room < short) break;
    if (heights.some(({ y }) => y > from - 3 && y < from + room + 3)) continue;
    const words = (which: string): string => (room < wide ? `${which} stile` : `this edge: ${which} stile, inner edge`);
    names.push(edge(words('right'), 5, from + room / 2), edge(words('left'), WIDTH - 3, from + room / 2));
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
  const more = `From the foot of the frame: ${excess} more`;
  const words = [
    `Print, check both bars, cut out; where it has several pages, join them first. Foot to foot with the stile, front face: the right edge lies on the left stile, the left edge on the right stile. Or clamp the stiles side by side, feet flush, and square every mark across both.`,
    `Each line is the lower edge of a course; distances from the stile’s foot, ${unitName(panel)}, each rounded by itself.`,
    `+ front, − behind: how the course passes the left-hand stave.${courses.gap > 0 ? ' Short ticks: upper edges of the slats.' : ''}`,
    heightWords(heights),
    asBuilt ? 'From the measured slats.' : 'From planned slats: measure the cut stack and print again.',
  ]
    .filter(Boolean)
    .join(' ');
  const width = WIDTH - 4;
  const heading = `${named}: course stick`;
  const large = { height: TEXT_LARGE };
  const moreTop = top - ROWS.stile - LINE_STEP * TEXT_LARGE - paragraph(more, [0, 0], width, large).height - 1;
  const wordsTop = moreTop - paragraph(words, [0, 0], width).height - 2;
  const titleTop = wordsTop - paragraph(heading, [0, 0], width, { ...large, role: 'title' }).height - 1;
  return {
    marks: [
      led(top, top - ROWS.stile, LEADS.stile),
      write('label', `Stile top ${show(stile.length)}`, [LEADS.text, top - ROWS.stile], large),
      write('label', `Room above the stack ${room}`, [LEADS.text, top - ROWS.room], large),
      ...paragraph(more, [2, moreTop], width, large).marks,
      ...paragraph(heading, [2, titleTop], width, { ...large, role: 'title' }).marks,
      ...paragraph(words, [2, wordsTop], width).marks,
    ],
    height: top - titleTop + 2,
  };
}
