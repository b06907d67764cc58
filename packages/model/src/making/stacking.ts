import type { Panel } from '../panel/panel.ts';
import { partsToCut, TRIMMED } from '../parts/inhand.ts';
import type { Part } from '../parts/part.ts';
import {
  eachPanel,
  fineIn,
  isMany,
  lengthIn,
  type Making,
  partFigures,
  roundIn,
  type StepFigure,
  type StepText,
} from './step.ts';

/** Steps of the stack: laid out and measured where that is still to be done, then stiles and staves cut to it. */
export function stackSteps(making: Making): StepText[] {
  const open = making.panels.filter(({ asBuilt }) => !asBuilt);
  return [...(open.length > 0 ? [measureStack({ ...making, panels: open })] : []), cutToStack(making)];
}

/** The first step of a job whose slats are all cut and measured: what there is, and what is left to cut. */
export function remainingStep(making: Making): StepText {
  const { panels, parts } = making;
  const show = lengthIn(making);
  const toCut = partsToCut(parts);
  return {
    title: toCut.length > 0 ? 'Gather what is cut; see what is left to cut' : 'Gather what is cut: it is all there',
    cautions: [],
    text: [
      'These sheets are as measured. The slats are smoothed and measured already: take no more off them, for all that follows is figured from them.',
      toCut.length > 0
        ? 'In hand is what was cut with the slats. The shopping list and the cut sheets hold only what is still to be cut.'
        : 'Nothing is left to be cut from boards, so there are no cut sheets.',
      ...(toCut.some(({ role }) => role === 'slat')
        ? [
            'Rip the new slats to the height and thickness measured, and smooth them as the others were. Lay them among the rest and measure the stack once more: it comes out as below.',
          ]
        : []),
      'Lay all slats side by side before they are woven: one that is higher or lower than the rest shifts every course over it.',
      'A part told as in hand that is not there after all is cut to the sizes of the parts list; no board is planned for it.',
    ],
    figures: [
      ...stackFigures(making, 'slats pressed together, as measured'),
      ...parts.map((part) => {
        const { letter, name, inHand = 0, length } = part;
        const cut = toCut.find((one) => one.letter === letter);
        return {
          what: `${letter}, ${name}`,
          value: [
            ...(inHand > 0 ? [`${inHand} in hand`] : []),
            ...(cut ? [`cut ${piecesText(cut)}, ${show(length)}`] : []),
          ].join('; '),
          where: part.where.length === panels.length ? '' : part.where.map(({ panel }) => panel).join(', '),
        };
      }),
    ],
  };
}

/** Pieces, spares apart. */
function piecesText({ count, spare }: Pick<Part, 'count' | 'spare'>): string {
  return [...(count > 0 ? [`${count}`] : []), ...(spare > 0 ? [`${spare} spare`] : [])].join(' and ');
}

/** The stack as planned or as measured: slats, their height together, gaps, thickness. */
function stackFigures(making: Making, pressed: string): StepFigure[] {
  const fine = fineIn(making);
  const { panels } = making;
  return [
    ...eachPanel(panels, 'slats of one panel, pressed together', ({ courses }) => String(courses.count)),
    ...eachPanel(panels, pressed, ({ courses }) => fine(courses.count * courses.height)),
    ...eachPanel(panels, 'gaps between them', ({ courses }) => gapsText(courses, fine)),
    ...eachPanel(panels, 'woven height, gaps counted in', ({ courses }) =>
      courses.gap > 0 ? fine(courses.count * courses.height + courses.gap * (courses.count - 1)) : undefined,
    ),
    ...eachPanel(panels, 'slat thickness', ({ courses }) => fine(courses.thickness)),
  ];
}

function measureStack(making: Making): StepText {
  const { panels, job } = making;
  const doubt = roundIn(making, 0.5, '1/64');
  const many = isMany(making);
  const stops = making.parts.some(({ role }) => role === 'stop') ? ', every stop strip' : '';
  return {
    title: 'Lay out the courses and measure the stack',
    cautions: ['Do this before any stile or stave is cut to length: it is the one check that cannot be made later.'],
    text: [
      ...(panels.length < job.panels.length
        ? [
            `Only for ${panels.map(({ name }) => name).join(', ')}: the slats of the others are smoothed and measured already.`,
          ]
        : []),
      'First smooth the slats lightly with fine paper, their faces only and the same from all: their edges make the stack. What follows is measured after it.',
      'Lay all slats of one panel edge to edge on a flat bench, in the order they will be woven, against a straight edge. Press them together by hand and measure the whole height at both ends; take the greater.',
      ...(many
        ? ['Measure the slats of every panel. Panels that are to be alike get the frame of the highest among them.']
        : []),
      `Measure the thickness of ten slats laid on one another and divide by ten. If they are more than ${doubt} thicker than planned, plane them: thicker slats bend harder and stand out farther. Thinner ones only hold less firmly.`,
      `Then figure stiles and staves on this sheet by the two lines below: the difference between the slats pressed together as measured and as planned goes on, or comes off, every stile and stave${stops}, and the outside height. On the course stick the mark of course n moves by that difference times (n - 1), divided by the number of courses: nothing at the first, half of it half-way up.`,
      'Or whoever keeps the job file writes both measures in it under measured, and prints the packet again: stiles, staves, slats and sticks then fit the wood as it is.',
    ],
    figures: [...stackFigures(making, 'slats pressed together, planned'), ...lengthRules(making)],
  };
}

/** How many gaps, all of them together, and one: a gap need not lie on a mark, so the sum is told too. */
function gapsText({ count, gap }: Panel['courses'], fine: (length: number) => string): string | undefined {
  return gap > 0 ? `${count - 1}, ${fine(gap * (count - 1))} in all, about ${fine(gap)} each` : undefined;
}

/** How stile and stave follow from the measured stack, with the sizes planned. */
function lengthRules(making: Making): StepFigure[] {
  const { panels } = making;
  const show = lengthIn(making);
  const fine = fineIn(making);
  return [
    ...eachPanel(panels, 'stile', ({ courses, stile }) => {
      const gaps = courses.gap * (courses.count - 1);
      const room = courses.allowance > 0 ? ` + ${fine(courses.allowance)} (room over them)` : '';
      return `slats pressed together as measured${gaps > 0 ? ` + ${fine(gaps)} (gaps)` : ''}${room}; planned ${show(stile.length)}`;
    }),
    ...eachPanel(panels, 'stave', ({ groove, staves, spec }) => {
      const less = spec.stave.clearance > 0 ? ` - ${fine(spec.stave.clearance)} (room at the top)` : '';
      return `stile + 2 x ${fine(groove.depth)} (grooves)${less}; planned ${show(staves.length)}`;
    }),
  ];
}

/** Room over the stack, and why it is what it is. */
function roomText({ courses, movement, spec }: Panel, show: (length: number) => string): string | undefined {
  const { allowance } = courses;
  if (allowance <= 0) return undefined;
  if (spec.allowance !== undefined) return `${show(allowance)}, as the job says`;
  const over = allowance - movement.needed;
  const needed = `${show(movement.needed)} to swell up to ${movement.wettest} % moisture, margin counted in`;
  return over > SAME
    ? `${show(allowance)}: ${needed}; the rest is what whole courses leave over`
    : `${show(allowance)}: ${needed}`;
}

/** Lengths that differ by less are one on a tape, mm. */
const SAME = 0.5;

function cutToStack(making: Making): StepText {
  const fine = fineIn(making);
  const { panels, parts } = making;
  const show = lengthIn(making);
  const stops = parts.some(({ role }) => role === 'stop') ? ', every stop strip' : '';
  const trims = parts.some(({ role, inHand = 0 }) => inHand > 0 && TRIMMED.includes(role));
  const strips = parts.filter(
    (part) => part.role === 'cover strip' && panels.some((panel) => isPlanedDown(panel, part)),
  );
  return {
    title: 'Cut stiles and staves to the stack',
    cautions: [],
    text: [
      panels.every(({ asBuilt }) => asBuilt)
        ? 'These lengths come from the measured stack.'
        : `${panels.some(({ asBuilt }) => asBuilt) ? 'Of panels measured already these lengths come from the stack; of the others they' : 'These'} are the lengths planned. If the stack measures otherwise, add or take off the difference on every stile${stops} and every stave.`,
      ...(trims ? ['Those in hand were left over length: trim them to it.'] : []),
      'Stiles in pairs from one stop, staves from one stop.',
      ...(strips.length > 0 ? ['Rip or plane the cover strips in hand to the section below.'] : []),
    ],
    figures: [
      ...partFigures(making, ['stile', 'stave', 'stop', 'filler'], ({ length }) => show(length)),
      ...partFigures({ ...making, parts: strips }, ['cover strip'], (part) =>
        [part.thickness, part.width].map(fine).join(' x '),
      ),
      ...eachPanel(panels, 'room over the stack', (panel) => roomText(panel, fine)),
    ],
  };
}

/** Whether a cover strip in hand was cut larger than the measured panel wants it. */
function isPlanedDown({ name, asBuilt, cover }: Panel, { where }: Part): boolean {
  if (!asBuilt || !where.some(({ panel, inHand = 0 }) => panel === name && inHand > 0)) return false;
  const { planned } = asBuilt;
  return planned.cover.height > cover.height + SAME_SECTION || planned.cover.thickness > cover.thickness + SAME_SECTION;
}

/** Sections that differ by less are one to a plane, mm. */
const SAME_SECTION = 0.05;
