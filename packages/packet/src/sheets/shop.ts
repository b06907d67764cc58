import { arrangeLayouts, type Layout, runMaker } from '@wattlewright/drafting';
import { layRuns, type Panel, type Settled } from '@wattlewright/model';

import { elevationLayouts } from './elevations.ts';
import { insideLayouts, insideOf, planLayouts, planOf } from './inside.ts';
import { type Alike, grouped, makeOf, namesText } from './makes.ts';
import { onPaper, type PacketLayout, type Page } from './page.ts';

/** The shop drawings: each run as a whole, then each panel with its elevation, sections and details. */
export function shopSheets(settled: Settled, page: Page): PacketLayout[] {
  return [
    ...runSheets(settled, page),
    ...grouped(settled.panels, makeOf).flatMap((alike) => panelSheets(alike, settled, page)),
  ];
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

/** The sheets of panels of one make, which are drawn once. */
function panelSheets(make: Alike, settled: Settled, page: Page): PacketLayout[] {
  const { panels } = settled;
  const [panel] = make;
  // Panels that are alike inside have their sections and details drawn once, for the first of them.
  const first = panels.find((other) => insideOf(other) === insideOf(panel)) as Panel;
  const like = first === panel ? {} : { like: first, ownPlan: planOf(panel) !== planOf(first) };
  const outside = subjectSheets(`${namesText(make)}: elevations`, page, (on) =>
    elevationLayouts(make, settled, { on, ...like }),
  );
  return first === panel ? [...outside, ...insideSheets(panel, settled, page)] : outside;
}

/** Sections and details of a panel and of all that are alike inside; after them the sections in plan of those that differ in it. */
function insideSheets(panel: Panel, { parts, panels }: Settled, page: Page): PacketLayout[] {
  const same = panels.filter((other) => insideOf(other) === insideOf(panel));
  const plans = [...new Set(same.map(planOf))].map((plan) => same.filter((other) => planOf(other) === plan));
  const [own, ...others] = plans.map((group) => ({ panel: group[0] as Panel, named: namesText(group) }));
  const also =
    same.length === 1
      ? ''
      : `, also ${same
          .slice(1)
          .map(({ name }) => name)
          .join(', ')}`;
  const inside = {
    parts,
    alike: same.slice(1),
    ...(others.length > 0 && own && { named: own.named }),
  };
  return [
    ...subjectSheets(`${panel.name}${also}: sections and details`, page, (on) => insideLayouts(panel, inside, on)),
    ...(others.length === 0
      ? []
      : subjectSheets(`${others.map(({ named }) => named).join('; ')}: sections in plan`, page, (on) =>
          planLayouts(others, parts, on),
        )),
  ];
}

/** The sheets of a panel, each named by its subject. */
function subjectSheets(subject: string, page: Page, layouts: (on: Page) => Layout[]): PacketLayout[] {
  return onPaper(page, (on) => layouts(on).map((layout) => ({ ...layout, subject })));
}
