import { type Drawing, weaveChart } from '@wattlewright/drafting';
import { type Panel, type Settled, sideAt } from '@wattlewright/model';

import { panelNames } from './names.ts';
import type { textRoom } from './page.ts';

/** The weave charts, each for all panels that can be woven by it; as posters where they have sheets for themselves. */
export function weaveCharts(
  { panels, parts }: Pick<Settled, 'panels' | 'parts'>,
  room: ReturnType<typeof textRoom>,
  poster = false,
): Drawing[] {
  return chartGroups(panels).flatMap(({ widest, served }, i) =>
    weaveChart(widest, { parts, room, poster, serves: served, named: panelNames(served.map(({ name }) => name)) }).map(
      (drawing) => (i === 0 ? drawing : { ...drawing, name: `${drawing.name}-of-${i + 1}` }),
    ),
  );
}

/** Panels woven alike course for course, as far as their staves go, and the widest of them. */
interface ChartGroup {
  readonly widest: Panel;
  readonly served: readonly Panel[];
}

function chartGroups(panels: readonly Panel[]): ChartGroup[] {
  const left = new Set(panels);
  const groups: ChartGroup[] = [];
  for (const widest of panels.toSorted((a, b) => b.staves.count - a.staves.count)) {
    if (!left.has(widest)) continue;
    const served = panels.filter((panel) => left.has(panel) && isWovenBy(panel, widest));
    for (const panel of served) left.delete(panel);
    groups.push({ widest, served });
  }
  return groups.toSorted((a, b) => panels.indexOf(a.served[0] as Panel) - panels.indexOf(b.served[0] as Panel));
}

/** Whether the chart of the wider panel holds for a panel: as many courses, each passing its staves on the same sides. */
function isWovenBy(panel: Panel, wider: Panel): boolean {
  if (panel.courses.count !== wider.courses.count) return false;
  return panel.courses.bottoms.every((_, course) =>
    panel.staves.lefts.every((_, stave) => sideAt(panel, course, stave) === sideAt(wider, course, stave)),
  );
}
