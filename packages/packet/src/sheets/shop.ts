import {
  arrangeLayouts,
  backMakers,
  type Drawing,
  detailMakers,
  elevationMaker,
  fit,
  type Item,
  type Layout,
  openingMakers,
  panelNotes,
  runMaker,
  sideMaker,
  type ViewMaker,
  verticalSectionMaker,
  weaveBayMaker,
  weaveChart,
  weaveSectionMaker,
} from '@wattlewright/drafting';
import { layRuns, type Panel, type Settled } from '@wattlewright/model';

import { onPaper, type PacketLayout, type Page, sheetsOf, textRoom } from './page.ts';

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
  const groups: (readonly [string, (on: Page) => Layout[]])[] = [
    ['elevations', (on) => elevationLayouts(panel, settled, on)],
    // Panels of one make are built alike inside: sections and details are drawn once, for the first of them.
    ...(firstOfItsMake(panel, panels)
      ? [
          ['sections', (on: Page) => sectionLayouts(panel, parts, on)] as const,
          ['details', (on: Page) => arrangeLayouts(detailMakers(panel, parts), on)] as const,
        ]
      : []),
  ];
  return groups.flatMap(([what, layouts]) =>
    onPaper(page, (on) => layouts(on).map((layout) => ({ ...layout, subject: `${panel.name}: ${what}` }))),
  );
}

/** The panel from outside, and what is to be known of it beside. */
function elevationLayouts(panel: Panel, { parts, job }: Settled, page: Page): Layout[] {
  const { paper, unit } = page;
  const finish = job.finish.kind === 'none' ? 'none' : `${job.finish.name}, ${job.finish.coats} coats`;
  const front = elevationMaker(panel, { parts });
  // The side view stands at the front view's scale, so that heights read across.
  const atMost = fit(front, [...page.wide.rooms, ...page.upright.rooms], unit)?.scale ?? 1;
  const side = { ...sideMaker(panel, { parts }), atMost };
  const back = backMakers(panel, parts).map((maker) => ({ ...maker, atMost }));
  const inPlace = openingMakers(panel, parts).map((maker) => ({ ...maker, atMost: atMost / 2 }));
  const items = [front, ...back, side, ...inPlace, untitled(panelNotes(panel, { finish }))];
  return arrangeLayouts(items, { paper, unit });
}

/** The sections, and a bay by itself where it comes out larger than in the section: at the same scale it shows nothing more. */
function sectionLayouts(panel: Panel, parts: Settled['parts'], on: Pick<Page, 'paper' | 'unit'>): Layout[] {
  const [whole, bay] = [weaveSectionMaker(panel, parts), weaveBayMaker(panel, parts)];
  const upright = verticalSectionMaker(panel, parts, true);
  const layouts = inTwo([whole, bay], [upright], on);
  const scaleOf = ({ name }: ViewMaker): number =>
    layouts.flatMap(({ drawings }) => drawings).find((drawing) => drawing.name === name)?.scale ?? 0;
  return scaleOf(bay) > scaleOf(whole) + 1e-9 ? layouts : inTwo([whole], [upright], on);
}

/** Two groups of views, each on sheets that lie as suits it; on the same sheets where that takes fewer. */
function inTwo(first: readonly Item[], second: readonly Item[], on: Pick<Page, 'paper' | 'unit'>): Layout[] {
  const together = arrangeLayouts([...first, ...second], on);
  const apart = [first, second].flatMap((items) => arrangeLayouts(items, on));
  return apart.length > together.length ? together : apart;
}

function untitled(drawing: Drawing): Drawing {
  return { ...drawing, title: '' };
}

function firstOfItsMake(panel: Panel, panels: readonly Panel[]): boolean {
  return panels.find((other) => make(other) === make(panel)) === panel;
}

/** What sections and details depend on, as one text. */
function make({ details, spec, courses, staves, groove, cover, weave }: Panel): string {
  const { rail, stile, wood, endStop } = spec;
  const sections = [staves.width, staves.depth, courses.height, courses.thickness, courses.allowance, courses.gap];
  return JSON.stringify([details, rail, stile, wood, endStop, groove, cover, weave.name, weave.start, sections]);
}

/** The weave chart of every panel whose weave differs from those before it. */
export function chartSheets({ panels, parts }: Settled, page: Page): PacketLayout[] {
  const seen = new Set<string>();
  return panels.flatMap((panel) => {
    const key = JSON.stringify([panel.weave.rows, panel.courses.count]);
    if (seen.has(key)) return [];
    seen.add(key);
    const like = panels
      .filter((other) => JSON.stringify([other.weave.rows, other.courses.count]) === key)
      .map(({ name }) => name);
    return onPaper(page, (on) =>
      sheetsOf(
        weaveChart(panel, { parts, room: textRoom(on.upright) }),
        on.upright,
        on,
        `Weave chart: ${like.join(', ')}`,
      ),
    );
  });
}
