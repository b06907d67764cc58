import {
  backMakers,
  cornerTemplate,
  courseStick,
  type Drawing,
  detailMakers,
  elevationMaker,
  footTemplate,
  largestScale,
  openingMakers,
  pictureMaker,
  railEndTemplate,
  runMaker,
  sideMaker,
  sightChart,
  spacingChart,
  standardScale,
  staveStick,
  stileEndTemplate,
  type ViewMaker,
  verticalSectionMaker,
  weaveBayMaker,
  weaveChart,
  weaveSectionMaker,
} from '@wattlewright/drafting';
import { layRuns, type Panel, type Settled } from '@wattlewright/model';

/** A view of one panel, or of a run, by a name for files and for `wattlewright draw`. */
interface NamedView {
  readonly name: string;
  readonly panel: string;
  readonly draw: () => Drawing;
}

/** Room that a single view is scaled for when it stands on no sheet, mm: the drawing space of A3. */
const ROOM = { width: 390, height: 277 };

/** The names of the views of a job's panels. */
export function drawingNames(settled: Settled): string[] {
  return [...new Set(viewsOf(settled).map(({ name }) => name))];
}

/** One view by name, of the panel or run named or of the first. */
export function drawingNamed(settled: Settled, name: string, panel?: string): Drawing | undefined {
  return viewsOf(settled)
    .find((view) => view.name === name && (panel === undefined || view.panel === panel))
    ?.draw();
}

/** Every view of a job for its own file, with that file's name. */
export function drawingsOf(settled: Settled): { readonly file: string; readonly drawing: Drawing }[] {
  const many = settled.panels.length > 1 || settled.job.runs.length > 0;
  const taken = new Map<string, number>();
  return viewsOf(settled).map(({ name, panel, draw }) => {
    const wanted = many ? `${slug(panel)}-${name}` : name;
    const times = (taken.get(wanted) ?? 0) + 1;
    taken.set(wanted, times);
    return { file: times === 1 ? wanted : `${wanted}-${times}`, drawing: draw() };
  });
}

function viewsOf({ panels, parts, job }: Settled): NamedView[] {
  const scaled = (maker: ViewMaker) => () => maker.make(scaleFor(maker, job.display.unit));
  return [
    ...layRuns(job, panels).map((run) => ({
      name: 'run',
      panel: run.name,
      draw: scaled(runMaker(run, { panels, parts })),
    })),
    ...panels.flatMap((panel): NamedView[] =>
      Object.entries({
        ...makersOf(panel, parts, scaled),
        'weave-chart': () => weaveChart(panel, { parts, room: { width: 10_000, height: 10_000 } })[0] as Drawing,
        'sight-chart': () => sightChart(panel),
        'spacing-chart': () => spacingChart(panel),
        'stave-stick': () => staveStick(panel, { parts }),
        'course-stick': () => courseStick(panel, { parts }),
        'rail-end': () => railEndTemplate(panel, { parts }),
        'stile-end': () => stileEndTemplate(panel, { parts }),
        corner: () => cornerTemplate(panel, { parts }),
        ...(footTemplate(panel) && { foot: () => footTemplate(panel, { parts }) as Drawing }),
      }).map(([name, draw]) => ({ name, panel: panel.name, draw })),
    ),
  ];
}

function makersOf(
  panel: Panel,
  parts: Settled['parts'],
  scaled: (maker: ViewMaker) => () => Drawing,
): Record<string, () => Drawing> {
  return {
    elevation: scaled(elevationMaker(panel, { parts })),
    client: scaled(elevationMaker(panel, { parts, detail: 'client' })),
    side: scaled(sideMaker(panel, { parts })),
    ...Object.fromEntries(
      [...backMakers(panel, parts), ...openingMakers(panel, parts)].map((maker) => [maker.name, scaled(maker)]),
    ),
    picture: scaled(pictureMaker(panel, { parts })),
    'weave-section': scaled(weaveSectionMaker(panel, parts)),
    'weave-bay': scaled(weaveBayMaker(panel, parts)),
    'vertical-section': scaled(verticalSectionMaker(panel, parts)),
    ...Object.fromEntries(detailMakers(panel, parts).map((maker) => [maker.name, scaled(maker)])),
  };
}

function scaleFor({ real, atMost = 1 }: ViewMaker, unit: 'in' | 'mm') {
  return largestScale(real, ROOM, { unit, atMost }) ?? standardScale(unit === 'mm' ? 1 / 100 : 0.125 / 12, unit);
}

/** A name as part of a file's name: letters and figures of any script, the rest as hyphens. */
function slug(name: string): string {
  return (
    name
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'panel'
  );
}
