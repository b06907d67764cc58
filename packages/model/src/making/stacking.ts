import type { Panel } from '../panel/panel.ts';
import { remainingCuts } from './remaining.ts';
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

/** Steps of the stack: laid out and measured, then stiles and staves cut to it. */
export function stackSteps(making: Making): StepText[] {
  return [measureStack(making), cutToStack(making)];
}

/** The first step of a job whose slats are all cut and measured: what there is, and what is left to cut. */
export function remainingStep(making: Making): StepText {
  const { panels, parts } = making;
  const show = lengthIn(making);
  return {
    title: 'Gather what is cut; see what is left to cut',
    cautions: [],
    text: [
      'These sheets are as measured: rails and slats are cut already, and sections are ripped. Only what is listed here is still to be cut; the shopping list and the cut sheets hold that and no more.',
      'Stiles and staves that were left over length only want trimming. New ones are for where none are ripped yet, or where they turn out too short.',
      'Check the slats that are still good against those broken: a spare that is higher or lower than the rest shifts every course over it.',
    ],
    figures: remainingCuts(panels, parts).map(({ letter, name, count, length }) => ({
      what: `${letter}, ${name}`,
      value: `${count}, ${show(length)}`,
      where: '',
    })),
  };
}

function measureStack(making: Making): StepText {
  const fine = fineIn(making);
  const { panels } = making;
  const done = panels.every(({ asBuilt }) => asBuilt);
  const doubt = roundIn(making, 0.5, '1/64');
  const many = isMany(making);
  const stops = making.parts.some(({ role }) => role === 'stop') ? ', every stop strip' : '';
  return {
    title: 'Lay out the courses and measure the stack',
    cautions: ['Do this before any stile or stave is cut to length: it is the one check that cannot be made later.'],
    text: [
      'First smooth the slats lightly with fine paper, their faces only and the same from all: their edges make the stack. What follows is measured after it.',
      'Lay all slats of one panel edge to edge on a flat bench, in the order they will be woven, against a straight edge. Press them together by hand and measure the whole height at both ends; take the greater.',
      ...(many
        ? ['Measure the slats of every panel. Panels that are to be alike get the frame of the highest among them.']
        : []),
      `Measure the thickness of ten slats laid on one another and divide by ten. If they are more than ${doubt} thicker than planned, plane them: thicker slats bend harder and stand out farther. Thinner ones only hold less firmly.`,
      done
        ? 'Both are in the job already: what follows is figured from them.'
        : `Then figure stiles and staves on this sheet by the two lines below: the difference between the slats pressed together as measured and as planned goes on, or comes off, every stile and stave${stops}, and the outside height. On the course stick the mark of course n moves by that difference times (n - 1), divided by the number of courses: nothing at the first, half of it half-way up.`,
      ...(done
        ? []
        : [
            'Or whoever keeps the job file writes both measures in it under measured, and prints the packet again: stiles, staves, slats and sticks then fit the wood as it is.',
          ]),
    ],
    figures: [
      ...eachPanel(panels, 'slats of one panel, pressed together', ({ courses }) => String(courses.count)),
      ...eachPanel(
        panels,
        done ? 'slats pressed together, as measured' : 'slats pressed together, planned',
        ({ courses }) => fine(courses.count * courses.height),
      ),
      ...eachPanel(panels, 'gaps between them', ({ courses }) => gapsText(courses, fine)),
      ...eachPanel(panels, 'woven height, gaps counted in', ({ courses }) =>
        courses.gap > 0 ? fine(courses.count * courses.height + courses.gap * (courses.count - 1)) : undefined,
      ),
      ...eachPanel(panels, 'slat thickness', ({ courses }) => fine(courses.thickness)),
      ...(done ? [] : lengthRules(making)),
    ],
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
  return {
    title: 'Cut stiles and staves to the stack',
    cautions: [],
    text: [
      panels.some(({ asBuilt }) => asBuilt)
        ? 'These lengths come from the measured stack.'
        : `These are the lengths planned. If the stack measures otherwise, add or take off the difference on every stile${stops} and every stave.`,
      'Stiles in pairs from one stop, staves from one stop.',
    ],
    figures: [
      ...partFigures(making, ['stile', 'stave', 'stop', 'filler'], ({ length }) => show(length)),
      ...eachPanel(panels, 'room over the stack', (panel) => roomText(panel, fine)),
    ],
  };
}
