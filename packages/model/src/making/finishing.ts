import { finishFor } from '../hardware/finish.ts';
import { hasGluedEnds } from '../hardware/framejoints.ts';
import { amountText, hardwareList } from '../hardware/list.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import { INCH } from '../length.ts';
import { drainHoles } from '../panel/drains.ts';
import type { PartRole } from '../parts/part.ts';
import { drilledLater, isBoredThrough } from './later.ts';
import { listed, type Making, type StepFigure, type StepText } from './step.ts';

const RAGS =
  'Rags wet with oil heat up by themselves and burn: spread them out to dry outdoors or drown them in a closed tin of water. Air the room.';

/** Finish that has to be on before the joints close: a film on everything, oil or stain where no brush reaches later. */
export function finishBefore(making: Making): StepText[] {
  const { kind, coats, name } = making.job.finish;
  if (kind === 'none' || coats === 0) return [];
  if (kind === 'film')
    return [
      {
        title: 'Finish the parts before weaving',
        cautions: [RAGS],
        text: [
          `Put on ${name} ${whenOf(making)}.${looseText(making, ' Finish now too ', '.')}`,
          `Keep it off what is glued: ${gluedOf(making)}. Coat all other end grain twice, the ends of the rails too; it drinks most.`,
          ...laterHoles(making),
        ],
        figures: amounts(making),
      },
    ];
  const drains = making.panels.some((panel) => drainHoles(panel).places.length > 0);
  return [
    {
      title: 'Coat end grain, grooves and holes before weaving',
      cautions: [RAGS],
      text: [
        `Once joined, no brush reaches them: coat the ends of ${endsOf(making)}, the grooves${drains ? ', the drain holes' : ''} and the holes through end staves${throughStiles(making) ? ' and stiles' : ''} with ${name}, twice, and let it dry before anything is set up. Leave the corner holes dry: they open into faces that are glued.`,
        `Keep it off the faces that are glued: ${gluedOf(making)}.`,
      ],
      figures: [],
    },
  ];
}

/** The step of finishing what shows, after weaving; absent for a film, and where the job wants no finish. */
export function finishAfter(making: Making): StepText[] {
  const { kind, coats, name } = making.job.finish;
  if (kind !== 'penetrating' || coats === 0) return [];
  return [
    {
      title: 'Finish',
      cautions: [RAGS],
      text: [
        `Put on ${name} ${whenOf(making)}.`,
        `Coat the ends of the rails${pluggedCorners(making) ? ' and the plugs' : ''} again${looseText(making, '; and, before it is fixed, ', ', all over, end grain twice')}.`,
        ...laterHoles(making),
        ...(making.parts.some(({ role }) => role === 'strut')
          ? ['Leave bare what is still to be glued: the inner face of the strut, and the back of the leaf under it.']
          : []),
        'Wipe off what has not soaked in; let each coat dry.',
      ],
      figures: amounts(making),
    },
  ];
}

/** Parts that are fixed after the finish, each in a word, in the order of the list. */
const LOOSE: readonly (readonly [role: PartRole, word: string])[] = [
  ['cap rail', 'cap rails'],
  ['stand-off block', 'stand-off blocks'],
  ['foot', 'feet'],
  ['strut', 'strut'],
];

/** What is still loose, so that it is sanded and finished all round; nothing where all is joined. */
export function looseParts({ parts }: Making): string {
  const words = LOOSE.flatMap(([role, word]) => (parts.some((part) => part.role === role) ? [word] : []));
  return words.length === 0 ? '' : `what is still loose (${words.join(', ')})`;
}

function looseText(making: Making, before: string, after: string): string {
  const loose = looseParts(making);
  return loose === '' ? '' : `${before}${loose}${after}`;
}

/** Of holes that are drilled once the finish is on. */
function laterHoles({ panels }: Making): string[] {
  return drilledLater(panels).length === 0
    ? []
    : ['Holes that are drilled later get a little of it too, before their screws go in.'];
}

/** Parts whose end grain is open when all is joined, or out of reach. */
function endsOf(making: Making): string {
  const has = (role: PartRole) => making.parts.some((part) => part.role === role);
  return listed([
    'rails',
    'slats',
    'staves',
    ...(has('cover strip') && gluedEnds(making) !== 'all' ? ['cover strips'] : []),
    ...(has('stop') ? ['stop strips'] : []),
  ]);
}

function throughStiles({ panels }: Making): boolean {
  return panels.some(isBoredThrough);
}

function pluggedCorners({ panels }: Making): boolean {
  return panels.some((panel) => screwSchedule(panel).some(({ joint, plug }) => joint === 'rail to stile' && plug));
}

/** Whether the ends of the cover strips are glued to the stiles: of all panels that have strips, of some, of none. */
function gluedEnds({ panels }: Making): 'all' | 'some' | 'none' {
  const strips = panels.filter(({ cover }) => cover.height > 0);
  const glued = strips.filter(hasGluedEnds);
  return glued.length === 0 ? 'none' : glued.length === strips.length ? 'all' : 'some';
}

/** What is glued later and so stays bare. */
function gluedOf(making: Making): string {
  const { panels } = making;
  const some = gluedEnds(making);
  const strips = panels.some(({ cover }) => cover.height > 0);
  const plugs = panels.some((panel) => screwSchedule(panel).some(({ plug }) => plug && !plug.open));
  return [
    'the ends of the stiles and the rails where they stand',
    ...(strips ? ['the upper edges of the cover strips and the rail over them'] : []),
    ...(some === 'none'
      ? []
      : [
          `the ends of the cover strips and the stiles where they meet them${
            some === 'some'
              ? ` (${panels
                  .filter(hasGluedEnds)
                  .map(({ name }) => name)
                  .join(', ')})`
              : ''
          }`,
        ]),
    ...(making.parts.some(({ role }) => role === 'strut') ? ['the strut and the back of the leaf under it'] : []),
    ...(plugs ? ['the wide part of the holes that take plugs'] : []),
  ].join('; ');
}

function whenOf({ job, panels }: Making): string {
  return panels[0] ? finishFor(panels[0], job).when : '';
}

function amounts({ job, panels }: Making): StepFigure[] {
  const area = panels.reduce((sum, panel) => sum + finishFor(panel, job).area, 0);
  const tin = hardwareList(job, panels).find(({ kind }) => kind === 'finish');
  return [
    { what: 'all faces', value: areaText(area, job.display.unit), where: '' },
    { what: 'coats', value: String(job.finish.coats), where: '' },
    ...(tin ? [{ what: 'for all coats, as on the shopping list', value: amountText(tin, job), where: '' }] : []),
  ];
}

/** Square metres, or square feet in inch work. */
function areaText(area: number, unit: 'in' | 'mm'): string {
  return unit === 'in' ? `${(area / ((12 * INCH) / 1000) ** 2).toFixed(0)} sq ft` : `${area.toFixed(1)} m²`;
}
