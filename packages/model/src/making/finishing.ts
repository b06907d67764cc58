import { finishFor } from '../hardware/finish.ts';
import { hasGluedEnds } from '../hardware/framejoints.ts';
import { amountText, hardwareList } from '../hardware/list.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import { INCH } from '../length.ts';
import type { Making, StepFigure, StepText } from './step.ts';

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
          `Put on ${name} ${whenOf(making)}.`,
          `Glued are ${gluedOf(making)}. Coat the end grain twice; it drinks most.`,
        ],
        figures: amounts(making),
      },
    ];
  return [
    {
      title: 'Coat end grain, grooves and holes before weaving',
      cautions: [RAGS],
      text: [
        `Once joined, no brush reaches them: coat the ends of slats, staves${gluedEnds(making) === 'all' ? '' : ' and strips'}, the grooves and the drilled holes with ${name}, twice, and let it dry before anything is set up. Leave the corner holes dry: they open into faces that are glued.`,
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
      text: [`Put on ${name} ${whenOf(making)}.`, 'Wipe off what has not soaked in; let each coat dry.'],
      figures: amounts(making),
    },
  ];
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
  const plugs = panels.some((panel) => screwSchedule(panel).some(({ plug }) => plug));
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
