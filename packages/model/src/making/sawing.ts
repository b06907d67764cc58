import { THIN_RIP } from '../findings/cutting.ts';
import type { Panel } from '../panel/panel.ts';
import type { PartRole } from '../parts/part.ts';
import {
  eachPanel,
  fineIn,
  isMany,
  lengthIn,
  type Making,
  partFigures,
  type StepFigure,
  type StepText,
} from './step.ts';
import { trialBend } from './trial.ts';

/** Steps at the saw before the stack is laid out. */
export function sawingSteps(making: Making): StepText[] {
  return [chooseWood(making), rip(making), crosscut(making)];
}

/** What the stack's wood moves for one percent of moisture, mm; undefined where the site knows no range. */
function perPercent({ built, wettest, driest, swell, shrink }: Panel['movement']): number | undefined {
  if (wettest > built) return swell / (wettest - built);
  return driest < built ? shrink / (driest - built) : undefined;
}

/** How the room to swell follows the moisture at building, for the panels that keep it in one place. */
function moistureFigures(making: Making, here: (panel: Panel) => boolean, place: string): StepFigure[] {
  const fine = fineIn(making);
  const what = `${place}, for each percent drier than ${making.job.site.built} %`;
  return eachPanel(making.panels, what, (panel) => {
    const each = here(panel) ? perPercent(panel.movement) : undefined;
    return each === undefined ? undefined : `${fine(each)} more; for each percent wetter as much less`;
  });
}

function chooseWood(making: Making): StepText {
  const { job, panels, parts, plan } = making;
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
      'Let the boards lie where they will be worked until their moisture no longer changes, and measure it. Where it settles at another figure than planned, what is left for the slats to swell into changes as told below.',
      `Parts ${clear.join(', ')} want clear wood: no knots, grain no steeper than 1 in 15. A slat with a knot breaks when it is bent.`,
      ...(job.site.where === 'outdoors' ? ['Heartwood for every part: sapwood rots, whatever the wood.'] : []),
      'Mark a face side and a face edge on every board, and write the part letter on every piece as it is cut.',
    ],
    figures: [
      { what: 'moisture when built', value: `${job.site.built} %`, where: '' },
      ...moistureFigures(making, ({ courses }) => courses.gap <= 0, 'room over the stack'),
      ...moistureFigures(making, ({ courses }) => courses.gap > 0, 'gaps between courses, all together'),
      ...(boards === undefined ? [] : [{ what: 'boards used', value: String(boards), where: '' }]),
    ],
  };
}

function rip(making: Making): StepText {
  const fine = fineIn(making);
  const { job, panels, parts, plan } = making;
  const show = lengthIn(making);
  const thin = parts.filter(({ thickness }) => thickness < THIN_RIP - 1e-9);
  const sections = new Map<string, string[]>();
  for (const part of parts) {
    const size = `${fine(part.thickness)} x ${fine(part.width)}`;
    sections.set(size, [...(sections.get(size) ?? []), part.letter]);
  }
  const trials = panels.some((panel) => trialBend(panel));
  return {
    title: 'Rip to section',
    cautions: [
      'Stand beside the line of the blade, never behind it: a strip that binds is thrown back. Riving knife in, guard down, push stick at hand.',
      ...(thin.length > 0
        ? [
            `Parts ${thin.map(({ letter }) => letter).join(', ')} are thinner than ${fine(THIN_RIP)}: zero-clearance insert, featherboard before the blade (never beside it), push block. Let the strip fall on the free side of the blade, never between blade and fence: a stop stands there before the blade, as far from it as the strip is thick; the board runs between fence and blade, and for each strip the fence is moved up until the board touches the stop.`,
          ]
        : []),
      `A piece to be ripped is at least ${show(job.saw.shortestRip)} long and ${show(job.saw.narrowestRip)} wide before the cut; the strip that comes off it may be narrower.`,
    ],
    text: [
      plan?.status === 'impossible'
        ? 'There are no cut sheets: the boards of this job do not give every part. Settle that before any board is cut.'
        : 'The cut sheets lead: crosscut the boards into lengths first, rip these, then crosscut the strips (next step). Finish all rips of one setting, spares too, before the next.',
      'Try each setting on a scrap and measure the strip, not the fence scale. Slats have to be alike: a small difference adds up over all courses.',
      ...(trials
        ? [
            'Bend a trial slat before all are ripped, one from each board: lay it flat on two blocks and press its middle down as far as told below. That is as hard as the weave bends it. A board whose slat creaks or cracks gives no slats.',
          ]
        : []),
    ],
    figures: [
      { what: 'rip kerf', value: fine(job.saw.ripKerf), where: '' },
      ...[...sections].map(([size, letters]) => ({ what: `section of ${letters.join(', ')}`, value: size, where: '' })),
      ...(plan && plan.fences.length > 0
        ? [{ what: 'settings, in order on the sheets for the saw', value: String(plan.fences.length), where: '' }]
        : []),
      ...eachPanel(panels, 'trial slat', (panel) => trialText(panel, show, fine)),
    ],
  };
}

function trialText(
  panel: Panel,
  show: (length: number) => string,
  fine: (length: number) => string,
): string | undefined {
  const trial = trialBend(panel);
  return (
    trial && `blocks ${show(trial.span)} apart, middle pressed down ${fine(trial.sag)}; radius ${show(trial.radius)}`
  );
}

/** Parts that are finished at the saw, and those that wait for the stack. */
const AT_ONCE: readonly PartRole[] = ['rail', 'slat', 'cover strip', 'cap rail', 'foot', 'strut', 'stand-off block'];
const AFTER_STACK: readonly PartRole[] = ['stile', 'stave', 'stop'];

function crosscut(making: Making): StepText {
  const { panels, parts, job } = making;
  const show = lengthIn(making);
  const fine = fineIn(making);
  const short = parts.filter(({ length }) => length < job.saw.shortestRip);
  const stops = parts.some(({ role }) => role === 'stop');
  const ofOne = `${isMany(making) ? ' of one panel' : ''}${panels.some((panel) => lengthsOf(panel) > 1) ? ' and of one letter' : ''}`;
  return {
    title: 'Crosscut to length; leave stiles and staves over length',
    cautions:
      short.length > 0
        ? [
            `Part ${short.map(({ letter }) => letter).join(', ')} is short: cut it last from a long stick, against a stop block that ends before the blade, and never hold it with the hand.`,
          ]
        : [],
    text: [
      `Square one end, then cut to a stop. Slats: square ends, all${ofOne} from one setting. Their length reckons with what the bend takes up and with clearance at both ends.`,
      `Leave ${stops ? 'stiles, staves and stop strips' : 'stiles and staves'} over length: they are trimmed to the measured stack.`,
    ],
    figures: [
      ...partFigures(making, AT_ONCE, ({ length }) => show(length)),
      ...eachPanel(panels, 'slats against the clear width', (panel) => againstWidth(panel, fine)),
      ...partFigures(
        { ...making, parts: parts.filter(({ over }) => over > 0) },
        AFTER_STACK,
        ({ length, over }) => `cut ${show(length + over)}, which is ${show(over)} over`,
      ),
    ],
  };
}

function lengthsOf({ rows }: Panel): number {
  return new Set(rows.map(({ cutLength }) => cutLength)).size;
}

function againstWidth({ rows, clear }: Panel, fine: (length: number) => string): string {
  const overs = [...new Set(rows.map(({ cutLength }) => Math.round((cutLength - clear.width) * 1e4) / 1e4))];
  const said = overs.map((over) =>
    Math.abs(over) < 0.05 ? 'as long' : `${fine(Math.abs(over))} ${over > 0 ? 'longer' : 'shorter'}`,
  );
  return [...new Set(said)].join(', ');
}
