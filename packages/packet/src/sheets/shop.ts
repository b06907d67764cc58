import {
  arrangeLayouts,
  backMakers,
  type Drawing,
  elevationMaker,
  fit,
  type Layout,
  openingMakers,
  panelNotes,
  runMaker,
  sideMaker,
} from '@wattlewright/drafting';
import { layRuns, type Panel, type Settled } from '@wattlewright/model';

import { insideLayouts, insideOf, planLayouts, planOf } from './inside.ts';
import { onPaper, type PacketLayout, type Page } from './page.ts';

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
  // Panels that are alike inside have their sections and details drawn once, for the first of them.
  const first = panels.find((other) => insideOf(other) === insideOf(panel)) as Panel;
  const planFirst = panels.find((other) => planOf(other) === planOf(panel)) as Panel;
  const sheets = (what: string, layouts: (on: Page) => Layout[]): PacketLayout[] =>
    onPaper(page, (on) => layouts(on).map((layout) => ({ ...layout, subject: what })));
  const like = first === panel ? {} : { like: first.name, ownPlan: planFirst === panel };
  const outside = sheets(`${panel.name}: elevations`, (on) => elevationLayouts(panel, settled, { on, ...like }));
  const named = (others: readonly Panel[]): string => others.map(({ name }) => name).join(', ');
  const also = (same: (other: Panel) => boolean): string => {
    const others = panels.filter((other) => other !== panel && same(other));
    return others.length === 0 ? panel.name : `${panel.name}, also ${named(others)}`;
  };
  if (first !== panel) {
    if (planFirst !== panel) return outside;
    const names = also((other) => planOf(other) === planOf(panel));
    return [...outside, ...sheets(`${names}: section in plan`, (on) => planLayouts(panel, parts, on))];
  }
  const alike = panels.filter((other) => other !== panel && insideOf(other) === insideOf(panel));
  const names = also((other) => insideOf(other) === insideOf(panel));
  return [...outside, ...sheets(`${names}: sections and details`, (on) => insideLayouts(panel, { parts, alike }, on))];
}

/** The panel from outside, and what is to be known of it beside. */
function elevationLayouts(
  panel: Panel,
  { parts, job }: Settled,
  { on: page, ...like }: { readonly on: Page; readonly like?: string; readonly ownPlan?: boolean },
): Layout[] {
  const { paper, unit } = page;
  const finish = job.finish.kind === 'none' ? 'none' : `${job.finish.name}, ${job.finish.coats} coats`;
  const front = elevationMaker(panel, { parts });
  // The side view stands at the front view's scale, so that heights read across.
  const atMost = fit(front, [...page.wide.rooms, ...page.upright.rooms], unit)?.scale ?? 1;
  const side = { ...sideMaker(panel, { parts }), atMost };
  const back = backMakers(panel, parts).map((maker) => ({ ...maker, atMost }));
  const inPlace = openingMakers(panel, parts).map((maker) => ({ ...maker, atMost: atMost / 2 }));
  const items = [front, ...back, side, ...inPlace, untitled(panelNotes(panel, { finish, ...like }))];
  return arrangeLayouts(items, { paper, unit });
}

function untitled(drawing: Drawing): Drawing {
  return { ...drawing, title: '' };
}
