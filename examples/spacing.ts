// How many staves does a panel want? More of them hold the slats better and bend them harder. The same panel with three
// to seven: how hard its slats are bent, what can be seen through from a window one floor up, and how large a ball
// passes. Then, on standard output, the elevation of the one whose staves stand closest while its slats are safe.
//
//     npm run --silent example > elevation.svg

import { elevationMaker, standardScale, toSvg } from '@wattlewright/drafting';
import { openworkOf, type Panel, panelBall, partsOf, readJob, seeThrough, solve } from '@wattlewright/model';

/** Slats bent to no more than this share of their strength last; the packet warns over it. */
const SAFE = 0.55;

function panelWith(staves: number): Panel {
  const job = readJob(`
    job: Potting shed
    unit: mm
    panels:
      - name: Door panel
        size: { width: 900, height: 700 }
        stave: { count: ${staves} }
  `);
  return solve(job)[0] as Panel;
}

function bentTo({ rows }: Panel): number {
  return Math.max(...rows.map(({ bend }) => bend.use));
}

const panels = [3, 4, 5, 6, 7].map(panelWith);
for (const panel of panels) {
  const seen = seeThrough({ ...openworkOf(panel), elevation: 30 });
  console.error(
    `${panel.staves.count} staves at ${panel.staves.pitch.toFixed(0)} mm:`,
    `${(bentTo(panel) * 100).toFixed(0)} % of strength,`,
    `${(seen * 100).toFixed(1)} % seen through,`,
    `a ball of ${panelBall(panel).toFixed(0)} mm passes`,
  );
}

const best = panels.findLast((panel) => bentTo(panel) <= SAFE);
if (best) {
  const parts = partsOf([best], { spare: 10 });
  console.log(toSvg(elevationMaker(best, { parts }).make(standardScale(1 / 5, 'mm'))));
}
