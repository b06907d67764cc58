import {
  arrangeLayouts,
  type Drawing,
  detailMakers,
  type Layout,
  TooLarge,
  type ViewMaker,
  verticalSectionMaker,
  weaveBayMaker,
  weaveSectionMaker,
} from '@wattlewright/drafting';
import { type Panel, type Settled, screwSchedule } from '@wattlewright/model';

import { attempt, type Page } from './page.ts';

/** What the sections and details of a panel are drawn from. */
interface Inside {
  readonly parts: Settled['parts'];
  /** Panels that the same sections and details stand for. */
  readonly alike: readonly Panel[];
  /** The panels that the section in plan holds for, where others of these have one of their own. */
  readonly named?: string;
}

/** Sections and details of a panel and of those alike: on few sheets, and yet large. */
export function insideLayouts(panel: Panel, { parts, alike, named }: Inside, on: Page): Layout[] {
  const plan = planSections(panel, { parts, named }, on).map(remembering);
  const upright = remembering(verticalSectionMaker(panel, parts, true));
  const details = detailMakers(panel, parts, alike).map(remembering);
  const ofStave = details.filter(({ name }) => STAVE_DETAILS.includes(name));
  const others = details.filter(({ name }) => !STAVE_DETAILS.includes(name));
  const tried = [
    [plan, [upright], details],
    [plan, [upright], details.toSorted((a, b) => b.real.height - a.real.height)],
    [plan, [upright, ...ofStave], others],
    [plan, [half(upright), ...ofStave.map(half)], others],
    [plan, [half(upright), ...details.map(half)]],
    [[...plan, upright], details],
    [[...plan, upright, ...details]],
  ];
  return cheapest(tried, on);
}

/** Of several ways to share views among sheets the one of few sheets and large views. */
function cheapest(tried: readonly (readonly (readonly ViewMaker[])[])[], on: Page): Layout[] {
  const made = tried.map((groups) => attempt(() => groups.flatMap((items) => arrangeLayouts(items, on))));
  // One way that does not fit the paper leaves the others.
  const ways = made.filter((way): way is Layout[] => !(way instanceof TooLarge));
  if (ways.length === 0) throw made[0];
  const size = (layouts: readonly Layout[]): number =>
    layouts.flatMap(({ drawings }) => drawings).reduce((sum, { scale }) => sum + Math.log(scale), 0);
  const cost = (layouts: readonly Layout[]): number => layouts.length * SHEET - size(layouts);
  return ways.toSorted((a, b) => cost(a) - cost(b) || a.length - b.length)[0] as Layout[];
}

/** The view at no more than half the width of a sheet, so that another can stand beside it. */
function half(maker: ViewMaker): ViewMaker {
  return { ...maker, share: { width: 0.5 } };
}

/** The view drawn once for each scale: it is tried on several sheets. */
export function remembering(maker: ViewMaker): ViewMaker {
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

/** What a sheet saved is worth, as the logarithm of a view's scale: more than one view at half its scale, less than two. */
const SHEET = 1;

/** The sections in plan of panels whose other sections and details stand on the sheets of another. */
export function planLayouts(
  sections: readonly { readonly panel: Panel; readonly named: string }[],
  parts: Settled['parts'],
  on: Page,
): Layout[] {
  const each = sections.map(({ panel, named }) => planSections(panel, { parts, named }, on).map(remembering));
  const [whole, bays] = [each.flatMap(([first]) => first ?? []), each.flatMap((views) => views.slice(1))];
  return cheapest([each, [each.flat()], [[...whole, ...bays.map(half)]]], on);
}

/** The section in plan, and a bay by itself where it comes out larger: at the same scale it shows nothing more. */
function planSections(
  panel: Panel,
  { parts, named }: { readonly parts: Settled['parts']; readonly named?: string | undefined },
  on: Pick<Page, 'paper' | 'unit'>,
): ViewMaker[] {
  const [whole, bay] = [weaveSectionMaker(panel, parts, named), weaveBayMaker(panel, parts, named)];
  const drawings = arrangeLayouts([whole, bay], on).flatMap((layout) => layout.drawings);
  const scaleOf = ({ name }: ViewMaker): number => drawings.find((drawing) => drawing.name === name)?.scale ?? 0;
  return scaleOf(bay) > scaleOf(whole) + 1e-9 ? [whole, bay] : [whole];
}

/** What the upright section and the details depend on, as one text; what differs less than they show is left out. */
export function insideOf(panel: Panel): string {
  const { details, spec, courses, staves, groove, cover, weave, outside, opening } = panel;
  const { rail, stile, wood, endStop } = spec;
  const sections = [staves.width, staves.depth, courses.height, courses.thickness, courses.allowance, courses.gap];
  const strips = [cover.height, cover.thickness, cover.face];
  const screws = screwSchedule(panel).map(({ joint, name }) => [joint, name]);
  return JSON.stringify([
    [details, rail, stile, wood, endStop, groove, strips, weave.name, weave.start, sections],
    [outside.height, courses.count, opening?.gaps, screws],
  ]);
}

/** What the section in plan depends on, as one text. */
export function planOf(panel: Panel): string {
  const { outside, staves, weave, rows } = panel;
  return JSON.stringify([
    insideOf(panel),
    outside.width,
    staves.lefts,
    weave.rowOfCourse,
    rows.map(({ bend }) => bend),
  ]);
}
