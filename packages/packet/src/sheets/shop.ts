import {
  arrangeLayouts,
  backMakers,
  type Drawing,
  detailMakers,
  elevationMaker,
  fit,
  type Layout,
  openingMakers,
  panelNotes,
  runMaker,
  sideMaker,
  TooLarge,
  type ViewMaker,
  verticalSectionMaker,
  weaveBayMaker,
  weaveSectionMaker,
} from '@wattlewright/drafting';
import { layRuns, type Panel, type Settled } from '@wattlewright/model';

import { attempt, onPaper, type PacketLayout, type Page } from './page.ts';

/** The shop drawings: each run as a whole, then each panel with its elevation, sections and details. */
export function shopSheets(settled: Settled, page: Page): PacketLayout[] {
  return [...runSheets(settled, page), ...settled.panels.flatMap((panel) => panelSheets(panel, settled, page))];
}

function runSheets({ job, panels, parts }: Settled, page: Page): PacketLayout[] {
  return layRuns(job, panels).flatMap((run) =>
    onPaper(page, ({ paper, unit }) =>
      arrangeLayouts([runMaker(run, { panels, parts })], { paper, unit, orientation: 'landscape' }).map((layout) => ({
        ...layout,
        subject: `${run.name}: the whole run`,
      })),
    ),
  );
}

function panelSheets(panel: Panel, settled: Settled, page: Page): PacketLayout[] {
  const { parts, panels } = settled;
  const first = panels.find((other) => make(other) === make(panel)) as Panel;
  const sheets = (what: string, layouts: (on: Page) => Layout[]): PacketLayout[] =>
    onPaper(page, (on) => layouts(on).map((layout) => ({ ...layout, subject: what })));
  const like = first === panel ? undefined : first.name;
  const outside = sheets(`${panel.name}: elevations`, (on) => elevationLayouts(panel, settled, { on, like }));
  // Panels of one make are built alike inside: sections and details are drawn once, for the first of them.
  if (like !== undefined) return outside;
  const others = panels.filter((other) => other !== panel && make(other) === make(panel)).map(({ name }) => name);
  const names = others.length === 0 ? panel.name : `${panel.name}, also ${others.join(', ')}`;
  return [...outside, ...sheets(`${names}: sections and details`, (on) => insideLayouts(panel, parts, on))];
}

/** Sections and details: on the sheets that make the fewest without making the views much smaller. */
function insideLayouts(panel: Panel, parts: Settled['parts'], on: Page): Layout[] {
  const plan = planSections(panel, parts, on).map(remembering);
  const upright = remembering(verticalSectionMaker(panel, parts, true));
  const details = detailMakers(panel, parts).map(remembering);
  const ofStave = details.filter(({ name }) => STAVE_DETAILS.includes(name));
  const others = details.filter(({ name }) => !STAVE_DETAILS.includes(name));
  const tried = [
    [plan, [upright], details],
    [plan, [upright, ...ofStave], others],
    [plan, [half(upright), ...ofStave.map(half)], others],
    [plan, [half(upright), ...details.map(half)]],
    [[...plan, upright], details],
    [[...plan, upright, ...details]],
  ].map((groups) => attempt(() => groups.flatMap((items) => arrangeLayouts(items, on))));
  // One way that does not fit the paper leaves the others.
  const ways = tried.filter((way): way is Layout[] => !(way instanceof TooLarge));
  if (ways.length === 0) throw tried[0];
  const size = (layouts: readonly Layout[]): number =>
    layouts.flatMap(({ drawings }) => drawings).reduce((sum, { scale }) => sum + Math.log(scale), 0);
  const largest = Math.max(...ways.map(size));
  const may = ways.filter((layouts) => size(layouts) > largest - MOST_LOST - 1e-9);
  return may.toSorted((a, b) => a.length - b.length || size(b) - size(a))[0] as Layout[];
}

/** The view at no more than half the width of a sheet, so that another can stand beside it. */
function half(maker: ViewMaker): ViewMaker {
  return { ...maker, share: { width: 0.5 } };
}

/** The view drawn once for each scale: it is tried on several sheets. */
function remembering(maker: ViewMaker): ViewMaker {
  const made = new Map<number, Drawing>();
  const make = (scale: Parameters<ViewMaker['make']>[0]): Drawing => {
    const known = made.get(scale.ratio) ?? maker.make(scale);
    made.set(scale.ratio, known);
    return known;
  };
  return { ...maker, make };
}

/** The details that the upright section marks. */
const STAVE_DETAILS = ['detail-v', 'detail-w'];

/** What fewer sheets may cost of the views' scales together: less than one view at half its scale. */
const MOST_LOST = Math.log(1.5);

/** The panel from outside, and what is to be known of it beside. */
function elevationLayouts(
  panel: Panel,
  { parts, job }: Settled,
  { on: page, like }: { readonly on: Page; readonly like: string | undefined },
): Layout[] {
  const { paper, unit } = page;
  const finish = job.finish.kind === 'none' ? 'none' : `${job.finish.name}, ${job.finish.coats} coats`;
  const front = elevationMaker(panel, { parts });
  // The side view stands at the front view's scale, so that heights read across.
  const atMost = fit(front, [...page.wide.rooms, ...page.upright.rooms], unit)?.scale ?? 1;
  const side = { ...sideMaker(panel, { parts }), atMost };
  const back = backMakers(panel, parts).map((maker) => ({ ...maker, atMost }));
  const inPlace = openingMakers(panel, parts).map((maker) => ({ ...maker, atMost: atMost / 2 }));
  const items = [
    front,
    ...back,
    side,
    ...inPlace,
    untitled(panelNotes(panel, { finish, ...(like !== undefined && { like }) })),
  ];
  return arrangeLayouts(items, { paper, unit });
}

/** The section in plan, and a bay by itself where it comes out larger: at the same scale it shows nothing more. */
function planSections(panel: Panel, parts: Settled['parts'], on: Pick<Page, 'paper' | 'unit'>): ViewMaker[] {
  const [whole, bay] = [weaveSectionMaker(panel, parts), weaveBayMaker(panel, parts)];
  const drawings = arrangeLayouts([whole, bay], on).flatMap((layout) => layout.drawings);
  const scaleOf = ({ name }: ViewMaker): number => drawings.find((drawing) => drawing.name === name)?.scale ?? 0;
  return scaleOf(bay) > scaleOf(whole) + 1e-9 ? [whole, bay] : [whole];
}

function untitled(drawing: Drawing): Drawing {
  return { ...drawing, title: '' };
}

/** What sections and details depend on, as one text. */
function make({ details, spec, courses, staves, groove, cover, weave }: Panel): string {
  const { rail, stile, wood, endStop } = spec;
  const sections = [staves.width, staves.depth, courses.height, courses.thickness, courses.allowance, courses.gap];
  return JSON.stringify([details, rail, stile, wood, endStop, groove, cover, weave.name, weave.start, sections]);
}
