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
  verticalSectionMaker,
  weaveBayMaker,
  weaveChart,
  weaveSectionMaker,
} from '@wattlewright/drafting';
import { layRuns, type Panel, type Settled } from '@wattlewright/model';

import { type Page, sheetsOf, textRoom } from './page.ts';

/** The shop drawings: each run as a whole, then each panel with its elevation, sections and details. */
export function shopSheets(settled: Settled, page: Page): Layout[] {
  return [...runSheets(settled, page), ...settled.panels.flatMap((panel) => panelSheets(panel, settled, page))];
}

function runSheets({ job, panels, parts }: Settled, { paper, unit }: Page): Layout[] {
  return layRuns(job, panels).flatMap((run) =>
    arrangeLayouts([runMaker(run, { panels, parts })], { paper, unit, orientation: 'landscape' }).map((layout) => ({
      ...layout,
      subject: `${run.name}: the whole run`,
    })),
  );
}

function panelSheets(panel: Panel, { parts, panels, job }: Settled, page: Page): Layout[] {
  const { paper, unit } = page;
  const finish = job.finish.kind === 'none' ? 'none' : `${job.finish.name}, ${job.finish.coats} coats`;
  const front = elevationMaker(panel, { parts });
  // The side view stands at the front view's scale, so that heights read across.
  const atMost = fit(front, [...page.wide.rooms, ...page.upright.rooms], unit)?.scale ?? 1;
  const side = { ...sideMaker(panel, { parts }), atMost };
  const back = backMakers(panel, parts).map((maker) => ({ ...maker, atMost }));
  const inPlace = openingMakers(panel, parts).map((maker) => ({ ...maker, atMost: atMost / 2 }));
  const groups: (readonly [string, readonly Item[]])[] = [
    ['elevations', [front, ...back, side, ...inPlace, untitled(panelNotes(panel, { finish }))]],
    // Panels of one make are built alike inside: sections and details are drawn once, for the first of them.
    ...(firstOfItsMake(panel, panels)
      ? [
          [
            'sections',
            [weaveSectionMaker(panel, parts), weaveBayMaker(panel, parts), verticalSectionMaker(panel, parts, true)],
          ] as const,
          ['details', detailMakers(panel, parts)] as const,
        ]
      : []),
  ];
  return groups.flatMap(([what, items]) =>
    arrangeLayouts(items, { paper, unit }).map((layout) => ({ ...layout, subject: `${panel.name}: ${what}` })),
  );
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
export function chartSheets({ panels, parts }: Settled, page: Page): Layout[] {
  const room = textRoom(page.upright);
  const seen = new Set<string>();
  return panels.flatMap((panel) => {
    const key = JSON.stringify([panel.weave.rows, panel.courses.count]);
    if (seen.has(key)) return [];
    seen.add(key);
    const like = panels
      .filter((other) => JSON.stringify([other.weave.rows, other.courses.count]) === key)
      .map(({ name }) => name);
    return sheetsOf(weaveChart(panel, { parts, room }), page.upright, page, `Weave chart: ${like.join(', ')}`);
  });
}
