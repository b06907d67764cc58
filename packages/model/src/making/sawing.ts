import { lettersCut } from '../cutting/partial.ts';
import { THIN_RIP } from '../findings/cutting.ts';
import type { Panel } from '../panel/panel.ts';
import type { Part, PartRole } from '../parts/part.ts';
import { openingFigures } from './openings.ts';
import { eachPanel, fineIn, isMany, lengthIn, type Making, partFigures, roundIn, type StepText } from './step.ts';
import { bendCautions, trialText, trialTexts } from './trial.ts';
import { isWovenByTwo } from './weaving.ts';

/** Steps at the saw before the stack is laid out. */
export function sawingSteps(making: Making): StepText[] {
  return [chooseWood(making), rip(making), crosscut(making)];
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
      'Let the boards lie where they will be worked until their moisture no longer changes, and measure it. Write down where it settles: the step that measures the stack has a table of what the slats then want to swell into.',
      `Parts ${clear.join(', ')} want clear wood: no knots, grain no steeper than 1 in 15. A slat with a knot breaks when it is bent.`,
      ...(job.site.where === 'outdoors' ? ['Heartwood for every part: sapwood rots, whatever the wood.'] : []),
      ...(panels.some(isBetween)
        ? [
            'Measure every opening once more before a rail is cut, its width at foot, middle and head and both diagonals: the least width counts, and a post that leans takes from it.',
            `What it is narrower or wider than planned, up to what is told below, the gaps at both sides take up${panels.some(({ details }) => details.use === 'gate') ? ', those of a gate at its latch' : ''}. Beyond that change the job before a rail is cut: the least width in the job file, under opening, or under size where the job gives no opening, and make the packet again. Rails, slats and the places of the staves all follow it.`,
          ]
        : []),
      ...(panels.some(isWovenByTwo) ? ['Weaving takes two, as its step tells: see in time who helps.'] : []),
      'Mark a face side and a face edge on every board, and write the part letter on every piece as it is cut.',
    ],
    figures: [
      { what: 'moisture when built', value: `${job.site.built} %`, where: '' },
      ...(boards === undefined ? [] : [{ what: 'boards used', value: String(boards), where: '' }]),
      ...openingFigures(making),
    ],
  };
}

/** Whether a panel goes between what stands already. */
function isBetween({ opening, details }: Panel): boolean {
  const onPosts = details.use === 'screen' && details.mounting === 'posts';
  return opening !== undefined || onPosts || details.use === 'guard' || details.use === 'gate';
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
  return {
    title: 'Rip to section',
    cautions: [
      'Stand beside the line of the blade, never behind it: a strip that binds is thrown back. Riving knife in, guard down, push stick at hand.',
      ...(thin.length > 0
        ? [
            `${thin.length > 1 ? 'Parts' : 'Part'} ${thin.map(({ letter }) => letter).join(', ')} ${thin.length > 1 ? 'are' : 'is'} thinner than ${fine(THIN_RIP)}: zero-clearance insert, featherboard before the blade (never beside it), push block. Let the strip fall on the free side of the blade, not between blade and fence: a stop stands there before the blade, as far from its teeth as the setting says (the strip as it comes off, with what is planed off it after); the board runs between fence and blade, and for each strip the fence is moved up until the board touches the stop. Exceptions are only those that the tables of settings mark in their notes: a thin piece that lies flat goes between blade and fence where its setting is the fence’s, the gap under the fence closed and a featherboard to hold it down; and where the last rip of a piece leaves no more than a thin strip at the fence, the piece is taped to a straight scrap wider than a hand, which runs along the fence and carries both past the blade.`,
          ]
        : []),
      `A piece to be ripped is at least ${show(job.saw.shortestRip)} long and ${show(job.saw.narrowestRip)} wide before the cut; the strip that comes off it may be narrower.`,
      ...bendCautions(panels),
    ],
    text: [
      ...sheetsText(making),
      'Rough or bowed boards are crosscut before they are planed or dressed, length by length: a long bowed one loses its thickness before it comes clean.',
      'Try each setting on a scrap and measure the strip with a caliper, not the fence scale. Slats have to be alike: a small difference adds up over all courses.',
      ...trialTexts(panels),
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

/** How the cut sheets are followed, or what they leave out. */
function sheetsText({ parts, plan }: Making): string[] {
  const order =
    'The cut sheets lead: crosscut the boards into lengths first, rip these, then crosscut the strips (next step). Finish all rips of one setting, spares too, before the next.';
  if (plan?.status !== 'impossible') return [order];
  if (plan.boards.length === 0)
    return [
      'There are no cut sheets: the boards of this job do not give every part. Settle that before any board is cut.',
    ];
  const cut = lettersCut(plan);
  const out = parts.filter(({ letter }) => !cut.has(letter)).map(({ letter, name }) => `${letter}, ${name}`);
  return [
    `The cut sheets leave out ${out.length > 1 ? 'parts' : 'part'} ${out.join('; ')}: no board of this job gives ${out.length > 1 ? 'them' : 'it'}. Settle that before any board is cut.`,
    order,
  ];
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
            `${short.length > 1 ? 'Parts' : 'Part'} ${short.map(({ letter }) => letter).join(', ')} ${short.length > 1 ? 'are' : 'is'} short: crosscut last, never holding by hand. Clamp the stick to the mitre fence for every cut, against a stop block that ends before the blade. Where less than ${roundIn(making, 300, '12')} of the stick would be left beside the piece, screw or clamp the stick to a longer carrier first.`,
          ]
        : [],
    text: [
      `Square one end, then cut to a stop. Slats: square ends, all${ofOne} against one stop, the last piece of a strip too. Where the cut sheets take slats to length at the board already, before they are ripped, set the stop here by one of these, so that all come out alike. Their length reckons with what the bend takes up and with clearance at both ends.`,
      `Leave ${stops ? 'stiles, staves and stop strips' : 'stiles and staves'} over length: ${panels.some(({ courses }) => courses.gap <= 0) ? 'they are trimmed to the measured stack' : 'they are cut to length once the slats are measured'}.`,
      'Keep an offcut of the rails: plugs for the ends of grooves that are sawn right through come from it.',
      ...(parts.some(({ role }) => role === 'stand-off block') ? [bevelText(fine, parts)] : []),
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

/** Slope of the top of a stand-off block, degrees; common practice, no source. */
const BEVEL = 10;

/** How the tops of stand-off blocks are bevelled, while they are still one stick. */
function bevelText(fine: (length: number) => string, parts: readonly Part[]): string {
  const blocks = parts.filter(({ role }) => role === 'stand-off block');
  const letters = [...new Set(blocks.map(({ letter }) => letter))].join(', ');
  const falls = [...new Set(blocks.map(({ width }) => fine(width * Math.tan((BEVEL * Math.PI) / 180))))].join(', ');
  return `The top of every stand-off block (${letters}) slopes, so that water runs off it. Cut it on the long stick, the stick flat and the mitre fence ${BEVEL}° off square, then the square cut that takes the block off: ${falls} lower at one side, full length at the other. The low side goes away from the middle of the panel.`;
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
