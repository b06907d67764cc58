import type { Panel } from '../panel/panel.ts';
import { partsToCut, TRIMMED } from '../parts/inhand.ts';
import type { Part } from '../parts/part.ts';
import { measureStack, stackFigures } from './measuring.ts';
import { eachPanel, fineIn, lengthIn, type Making, partFigures, type StepText } from './step.ts';
import { trialText, trialTexts } from './trial.ts';

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
            'Rip the new slats to the height and thickness measured, and smooth them as the others were. Lay them among the rest and measure the stack once more: it comes out as below, within what the room over it has to spare. Where it does not, put the new measure in the job file (field measured) and make the packet again.',
            'Let the new board lie where the panel is made until its moisture no longer changes; for slats it has to be clear, its grain no steeper than 1 in 15.',
            ...trialTexts(panels),
          ]
        : []),
      'Lay all slats side by side before they are woven: one that is higher or lower than the rest shifts every course over it.',
      'A part told as in hand that is not there after all is cut to the sizes of the parts list; no board is planned for it.',
    ],
    figures: [
      ...stackFigures(making, 'slats pressed together, as measured'),
      ...(toCut.some(({ role }) => role === 'slat')
        ? eachPanel(panels, 'trial slat', (panel) => trialText(panel, show, fineIn(making)))
        : []),
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
  const planned = panels.filter(({ asBuilt }) => !asBuilt);
  const followed = planned.some(({ courses }) => courses.gap <= 0);
  const trims = parts.some(({ role, inHand = 0 }) => inHand > 0 && TRIMMED.includes(role));
  const strips = parts.filter(
    (part) => part.role === 'cover strip' && panels.some((panel) => isPlanedDown(panel, part)),
  );
  return {
    title: planned.length > 0 && !followed ? 'Cut stiles and staves to length' : 'Cut stiles and staves to the stack',
    cautions: [],
    text: [
      panels.every(({ asBuilt }) => asBuilt)
        ? 'These lengths come from the measured stack.'
        : `${panels.some(({ asBuilt }) => asBuilt) ? 'Of panels measured already these lengths come from the stack; of the others they' : 'These'} are the lengths planned. ${
            followed
              ? `Where the stack or its moisture came out otherwise, every stile${stops} and every stave${planned.every(({ courses }) => courses.gap <= 0) ? '' : ' of slats that lie close'} is cut to what the step before made of it.`
              : 'They hold whatever the slats measure: the gaps take it up.'
          }`,
      ...(trims ? ['Those in hand were left over length: trim them to it.'] : []),
      'Stiles in pairs from one stop, staves from one stop.',
      ...(strips.length > 0
        ? [
            'Plane the cover strips in hand to the section below, by hand, two together on edge in the vice; strips so thin are not ripped again.',
          ]
        : []),
    ],
    figures: [
      ...partFigures(making, ['stile', 'stave', 'stop', 'filler'], ({ length }) => show(length)),
      ...partFigures({ ...making, parts: strips }, ['cover strip'], (part) =>
        [part.thickness, part.width].map(fine).join(' x '),
      ),
      ...eachPanel(
        panels,
        `room over the stack${panels.some(({ asBuilt }) => asBuilt) ? '' : ', as planned'}`,
        (panel) => roomText(panel, fine),
      ),
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
