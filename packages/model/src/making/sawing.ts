import { THIN_RIP } from '../findings/cutting.ts';
import type { Panel } from '../panel/panel.ts';
import { eachPanel, fineIn, lengthIn, type Making, partFigures, type StepFigure, type StepText } from './step.ts';

/** Steps at the saw and the bench before anything is joined. */
export function sawingSteps(making: Making): StepText[] {
  return [chooseWood(making), rip(making), crosscut(making), measureStack(making), cutToStack(making)];
}

function chooseWood({ job, panels, parts, plan }: Making): StepText {
  const dust = new Set(panels.flatMap(({ spec }) => Object.values(spec.wood).map(({ wood }) => wood)));
  const boards =
    plan && plan.status !== 'impossible' ? plan.boards.reduce((sum, { count }) => sum + count, 0) : undefined;
  const clear = parts.filter(({ grade }) => grade === 'clear').map(({ letter }) => letter);
  return {
    title: 'Choose and mark the wood',
    cautions: [...dust].flatMap(({ name, dust: harm }) =>
      harm ? [`${name}: ${harm}. Extract it and wear a mask.`] : [],
    ),
    text: [
      'Let the boards lie where they will be worked until their moisture no longer changes, and measure it.',
      `Parts ${clear.join(', ')} want clear wood: no knots, grain no steeper than 1 in 15, no sapwood outdoors. A slat with a knot breaks when it is bent.`,
      'Mark a face side and a face edge on every board, and write the part letter on every piece as it is cut.',
    ],
    figures: [
      { what: 'moisture when built', value: `${job.site.built} %`, where: '' },
      ...(boards === undefined ? [] : [{ what: 'boards used', value: String(boards), where: '' }]),
    ],
  };
}

function rip(making: Making): StepText {
  const fine = fineIn(making);
  const { job, parts, plan } = making;
  const show = lengthIn(making);
  const thin = parts.filter(({ thickness }) => thickness < THIN_RIP - 1e-9);
  const sections = new Map<string, string[]>();
  for (const part of parts) {
    const size = `${fine(part.thickness)} x ${fine(part.width)}`;
    sections.set(size, [...(sections.get(size) ?? []), part.letter]);
  }
  return {
    title: 'Rip to section',
    cautions: [
      'Stand beside the line of the blade, never behind it: a strip that binds is thrown back. Riving knife in, guard down, push stick at hand.',
      ...(thin.length > 0
        ? [
            `Parts ${thin.map(({ letter }) => letter).join(', ')} are thinner than ${show(THIN_RIP)}: zero-clearance insert, featherboard before the blade (never beside it), push block. Let the strip fall on the free side of the blade, never between blade and fence: a stop stands there before the blade, as far from it as the strip is thick; the board runs between fence and blade, and for each strip the fence is moved up until the board touches the stop.`,
          ]
        : []),
      `A piece to be ripped is at least ${show(job.saw.shortestRip)} long and ${show(job.saw.narrowestRip)} wide before the cut; the strip that comes off it may be narrower.`,
    ],
    text: [
      'Follow the cut sheets: they group the rips by fence setting. Rip everything of one setting before the fence moves, spares too.',
      'Try each setting on a scrap and measure the strip, not the fence scale. Slats have to be alike: a difference of a hair adds up over all courses.',
    ],
    figures: [
      { what: 'rip kerf', value: fine(job.saw.ripKerf), where: '' },
      ...[...sections].map(([size, letters]) => ({ what: `section of ${letters.join(', ')}`, value: size, where: '' })),
      ...(plan && plan.fences.length > 0
        ? [{ what: 'settings, in order on the sheets for the saw', value: String(plan.fences.length), where: '' }]
        : []),
    ],
  };
}

function crosscut(making: Making): StepText {
  const show = lengthIn(making);
  const short = making.parts.filter(({ length }) => length < making.job.saw.shortestRip);
  return {
    title: 'Crosscut, but not the stiles and staves',
    cautions:
      short.length > 0
        ? [
            `Part ${short.map(({ letter }) => letter).join(', ')} is short: cut it last from a long stick, against a stop block that ends before the blade, and never hold it with the hand.`,
          ]
        : [],
    text: [
      'Square one end, then cut to a stop. Slats: square ends, all of one length from one setting; they are longer than the clear width because they bend.',
      'Leave stiles and staves long: they are trimmed to the measured stack.',
    ],
    figures: [
      ...partFigures(making, ['rail', 'slat', 'cap rail', 'foot', 'strut', 'stand-off block'], ({ length }) =>
        show(length),
      ),
      ...partFigures(
        { ...making, parts: making.parts.filter(({ over }) => over > 0) },
        ['stile', 'stave'],
        ({ length, over }) => `cut ${show(over)} long, ${show(length + over)}`,
      ),
    ],
  };
}

function measureStack(making: Making): StepText {
  const fine = fineIn(making);
  const { panels } = making;
  const show = lengthIn(making);
  const done = panels.every(({ asBuilt }) => asBuilt);
  return {
    title: 'Lay out the courses and measure the stack',
    cautions: ['Do this before any stile or stave is cut to length: it is the one check that cannot be made later.'],
    text: [
      'Lay all slats of one panel edge to edge on a flat bench, in the order they will be woven, against a straight edge. Press them together by hand and measure the whole height at both ends.',
      'Measure the thickness of ten slats laid on one another and divide by ten.',
      done
        ? 'Both are in the job already: what follows is figured from them.'
        : 'Then figure stiles and staves on this sheet by the two lines below. Or write both measures in the job under measured and print the packet again: stiles, staves, slats and sticks then fit the wood as it is.',
    ],
    figures: [
      ...eachPanel(panels, 'slats in the stack', ({ courses }) => String(courses.count)),
      ...eachPanel(panels, 'stack, slats alone', ({ courses }) => show(courses.count * courses.height)),
      ...eachPanel(panels, 'gaps between them', ({ courses }) =>
        courses.gap > 0 ? `${courses.count - 1} of ${fine(courses.gap)}` : undefined,
      ),
      ...eachPanel(panels, 'slat thickness', ({ courses }) => fine(courses.thickness)),
      ...(done ? [] : lengthRules(making)),
    ],
  };
}

/** How stile and stave follow from the measured stack, with the sizes planned. */
function lengthRules(making: Making): StepFigure[] {
  const { panels } = making;
  const show = lengthIn(making);
  return [
    ...eachPanel(panels, 'stile', ({ courses, stile }) => {
      const gaps = courses.gap * (courses.count - 1);
      return `slats as measured${gaps > 0 ? ` + ${show(gaps)} (gaps)` : ''} + ${show(courses.allowance)} (room over them); planned ${show(stile.length)}`;
    }),
    ...eachPanel(
      panels,
      'stave',
      ({ groove, staves, spec }) =>
        `stile + 2 x ${show(groove.depth)} (grooves) - ${show(spec.stave.clearance)} (clearance); planned ${show(staves.length)}`,
    ),
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
  const { panels } = making;
  const show = lengthIn(making);
  return {
    title: 'Cut stiles and staves to the stack',
    cautions: [],
    text: [
      panels.some(({ asBuilt }) => asBuilt)
        ? 'These lengths come from the measured stack.'
        : 'These are the lengths planned. If the stack measures otherwise, add or take off the difference on every stile and every stave.',
      'Stiles in pairs from one stop, staves from one stop.',
    ],
    figures: [
      ...partFigures(making, ['stile', 'stave', 'cover strip', 'stop', 'filler'], ({ length }) => show(length)),
      ...eachPanel(panels, 'room over the stack', (panel) => roomText(panel, fine)),
    ],
  };
}
