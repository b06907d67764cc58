import { fineMarks, formatLength, type Panel, type Part, sideAt } from '@wattlewright/model';
import { ASCENT, LINE_STEP, TEXT, TEXT_LARGE } from '../layout/style.ts';
import { originCircle } from '../layout/terminator.ts';
import { textWidth } from '../lettering.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import { standardScale } from '../scale.ts';
import { partOf } from './partof.ts';
import { paragraph, pointer, STICK_TICK, STICK_WIDTH } from './stick.ts';
import { heightMarks, stileHeights } from './stickheights.ts';
import { unitName } from './template.ts';

/** Width of the course stick across, mm: as any stick, and a column for the heights of screws and hardware. */
const WIDTH: number = STICK_WIDTH + 30;

/** Places across the stick, mm from its left edge: the box of the numbers, start of the distances, of the sides. */
const BOX = { from: 13, to: 22 } as const;
const DISTANCE = 25;
const SIDE = 45;

/** The column of the heights of screws and hardware, mm: the lines of the courses end before it. */
const HEIGHTS = { from: 61, to: 85 } as const;

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
export function courseStick(panel: Panel, { parts = [] }: { readonly parts?: readonly Part[] } = {}): Drawing {
  const letters: Letters = {
    stile: partOf(parts, panel, 'stile')?.letter,
    slat: partOf(parts, panel, 'slat')?.letter,
  };
  const top = -panel.stile.length;
  const head = header(panel, top);
  return {
    name: 'course-stick',
    title: `Course stick: ${panel.name}`,
    scale: 1,
    scaleText: standardScale(1, panel.display.unit).text,
    marks: [
      ...head.marks,
      stroke('tick', rectangle({ u0: 0, v0: top, u1: WIDTH, v1: 0 }), letters.stile),
      ...panel.courses.bottoms.flatMap((_, course) => courseMarks(panel, course, letters)),
      ...stackTop(panel, top, letters),
      ...heightMarks(stileHeights(panel), { panel, to: HEIGHTS.to, width: WIDTH, of: letters.stile }),
      ...foot(panel),
    ],
    bounds: { u0: 0, v0: top - head.height, u1: WIDTH, v1: 1 },
    alt: `Full-size stick up the stiles of ${panel.name}: the lower edges of ${panel.courses.count} courses, each with its distance from the stile's foot.`,
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

/** The top of the stack, with its distance over the stile's top, where there is always room. */
function stackTop({ courses, display }: Panel, top: number, { slat }: Letters): Mark[] {
  const text = `Top of stack ${formatLength(courses.stack, fineMarks(display), { fractions: 'stacked' })}`;
  const base = top - LIFT - LINE_STEP * TEXT_LARGE;
  return [
    stroke('tick', line([0, -courses.stack], [WIDTH, -courses.stack]), slat),
    stroke('dimension', line([14, -courses.stack], [14, base - TEXT_LARGE]), slat),
    write('label', text, [16, base], { height: TEXT_LARGE, ...(slat === undefined ? {} : { of: slat }) }),
  ];
}

/** The datum, and what each edge is laid on. */
function foot(panel: Panel): Mark[] {
  const { courses } = panel;
  const heights = stileHeights(panel);
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
function header(panel: Panel, top: number): { readonly marks: Mark[]; readonly height: number } {
  const { clear, courses, stile, display, asBuilt, name } = panel;
  const show = (length: number): string => formatLength(length, display, { fractions: 'stacked' });
  const step = LINE_STEP * TEXT_LARGE;
  const rows = top - LIFT - 2 * step;
  // The stile stands on the bottom rail, while the making order counts from the rail's outer edge.
  const excess = formatLength(clear.bottom, display, { fractions: 'stacked', named: true });
  const more = `From the foot of the frame: ${excess} more`;
  const words = [
    `Print, check both bars, join the pages and cut out. Foot to foot with the stile, front face: the right edge lies on the left stile, the left edge on the right stile. Or clamp the stiles side by side, feet flush, and square every mark across both.`,
    `Each line is the lower edge of a course; distances from the stile’s foot, ${unitName(panel)}, each rounded by itself.`,
    `+ front, − behind: how the course passes the left-hand stave.${courses.gap > 0 ? ' Short ticks: upper edges of the slats.' : ''}`,
    'Ringed: heights of screws, fixings, hinges and latch on both stiles; of a hinge and a latch the middle.',
    asBuilt ? 'From the measured slats.' : 'From planned slats: measure the cut stack and print again.',
  ].join(' ');
  const width = WIDTH - 4;
  const size = paragraph(words, [0, 0], width).height;
  const heading = paragraph(`${name}: course stick`, [0, 0], width, { height: TEXT_LARGE, role: 'title' }).height;
  const moreTop = rows - step - paragraph(more, [0, 0], width, { height: TEXT_LARGE }).height - 1;
  const titleTop = moreTop - size - heading - 4;
  return {
    marks: [
      write('label', `Stile top ${show(stile.length)}`, [16, top - 1.6], { height: TEXT_LARGE }),
      write(
        'label',
        `Room above ${formatLength(courses.allowance, fineMarks(display), { fractions: 'stacked' })}`,
        [16, rows],
        { height: TEXT_LARGE },
      ),
      ...paragraph(more, [2, moreTop], width, { height: TEXT_LARGE }).marks,
      pointer([7, top - LIFT - 0.5], 'down'),
      ...paragraph(`${name}: course stick`, [2, titleTop], width, { height: TEXT_LARGE, role: 'title' }).marks,
      ...paragraph(words, [2, titleTop + heading + 1], width).marks,
    ],
    height: top - titleTop + 2,
  };
}
