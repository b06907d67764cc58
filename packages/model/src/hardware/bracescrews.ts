import type { GateUse } from '../job/job.ts';
import { ceilToMark, INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { type BraceLine, braceLine, PLATE, strutThickness } from '../uses/brace.ts';
import type { Place } from '../uses/place.ts';
import { type ChosenScrew, chooseScrew } from './choose.ts';
import type { Gauge } from './gauge.ts';
import { isClear, jointStretches, type Stretch, stretchesAt } from './meet.ts';
import { DISTANCES, type JointToScrew } from './row.ts';
import { lengthsText } from './where.ts';

/** Where the two screws of one end stand: in from the leaf's side and from its foot or top, mm. */
interface Spot {
  readonly x: number;
  readonly y: number;
}

interface Pair {
  readonly rail: Spot;
  readonly stile: Spot;
}

/** One way to drive them: the screw, and how near to the edges of strut and frame it may come, in diameters. */
interface Try {
  readonly screw: ChosenScrew;
  readonly edge: number;
}

/**
 * Screws of a brace at the back: at each end one in the rail and one in the stile, clear of the corner's screws, which run
 * on into the stile. A thinner gauge, then less wood at the edges, where nothing else is clear.
 */
export function braceScrews(panel: Panel, gate: GateUse, others: readonly JointToScrew[]): JointToScrew[] {
  const line = braceLine(panel, gate);
  if (!line) return [];
  const { stile, rail, outside, spec, display } = panel;
  const strut = line.kind === 'strut';
  const through = strut ? strutThickness(panel) : PLATE;
  const z = -stile.depth / 2 - through;
  const choose = (gauge: Gauge) => chooseScrew({ gauges: [gauge], through, room: stile.depth - 3, unit: display.unit });
  const taken = others.flatMap((joint) => jointStretches(joint, panel));
  const ends = [line.hinge, line.latch];
  const place = (end: Place, { x, y }: Spot): Place => ({
    x: end.x < outside.width / 2 ? x : outside.width - x,
    y: end.y < outside.height / 2 ? y : outside.height - y,
    z,
  });
  const tries: readonly Try[] = [DISTANCES.edge, 2, 1.5].flatMap((edge) =>
    ([10, 8] as const).map((gauge) => ({ screw: choose(gauge), edge })),
  );
  let first: { readonly pair: Pair; readonly screw: ChosenScrew } | undefined;
  for (const { screw, edge } of tries) {
    const lie = (spot: Spot): Stretch[][] =>
      ends.map((end) => stretchesAt({ fastener: screw, along: 'z' }, place(end, spot), panel));
    const pair = pairOf(panel, { line, edge: edge * screw.diameter, end: DISTANCES.end * screw.diameter }, (spot) =>
      lie(spot).every((one) => isClear(one, taken)),
    );
    first ??= { pair: pair.found, screw };
    if (!pair.clear) continue;
    first = { pair: pair.found, screw };
    break;
  }
  const { pair, screw } = first as NonNullable<typeof first>;
  const sides = (spot: Spot, height: number) => Math.min(spot.x, stile.width - spot.x, spot.y, height - spot.y);
  return [
    {
      joint: strut ? 'strut to frame' : 'brace plate to frame',
      screw,
      places: ends.flatMap((end) => [place(end, pair.rail), place(end, pair.stile)]),
      along: 'z',
      into: spec.wood.stile.wood,
      edge: Math.min(
        sides(pair.rail, rail.height),
        pair.stile.x,
        stile.width - pair.stile.x,
        ...(strut
          ? [pair.rail, pair.stile].map((spot) => Math.max(0, stile.width / 2 - offLine(panel, line, spot)))
          : []),
      ),
      end: Math.min(pair.rail.x, pair.stile.y - rail.height),
      where: whereText(panel, { strut, pair }),
      remark: strut
        ? 'screws and glue carry the push; the places keep clear of the corner’s screws'
        : 'the places keep clear of the corner’s screws: a plate with other holes is drilled to suit',
    },
  ];
}

function whereText({ display }: Panel, { strut, pair }: { readonly strut: boolean; readonly pair: Pair }): string {
  const at = ({ x, y }: Spot) =>
    `${lengthsText([x], display)} from the leaf’s side and ${lengthsText([y], display)} from its foot or top`;
  return `two in each ${strut ? 'end' : 'plate'}, at the back: one in the rail, ${at(pair.rail)}; one in the stile, ${at(pair.stile)}`;
}

/** Distance of a spot of the corner from the brace's line, mm. */
function offLine({ outside, stile, rail }: Panel, { hinge, latch }: BraceLine, { x, y }: Spot): number {
  const [run, rise] = [Math.abs(latch.x - hinge.x), Math.abs(latch.y - hinge.y)];
  if (run <= 0 || rise <= 0 || outside.width <= 0) return 0;
  return Math.abs((x - stile.width / 2) * rise - (y - rail.height) * run) / Math.hypot(run, rise);
}

interface Margins {
  readonly line: BraceLine;
  readonly edge: number;
  readonly end: number;
}

/** One spot in the rail and one in the stile: of a plate both as far in, above one another; of a strut on its line. */
function pairOf(
  panel: Panel,
  { line, edge, end }: Margins,
  clear: (spot: Spot) => boolean,
): { readonly found: Pair; readonly clear: boolean } {
  const { stile, rail, display } = panel;
  const mark = Math.max(display.mark, display.unit === 'in' ? INCH / 16 : 1);
  const steps = (from: number, to: number) =>
    Array.from({ length: Math.max(0, Math.floor((to - from) / mark + 1e-9) + 1) }, (_, i) => from + i * mark);
  const strut = line.kind === 'strut';
  const xs = steps(ceilToMark(edge, mark), stile.width - edge);
  const up = ceilToMark(end, mark);
  const low = ceilToMark(edge, mark);
  // A plate's screws stand above one another, the nearer the better; a strut's anywhere under it.
  const ys = strut
    ? { rail: steps(low, rail.height - edge), stile: steps(rail.height + low, rail.height + 2 * up) }
    : { rail: [rail.height / 2, rail.height - low], stile: [1, 1.5, 2, 2.5, 3].map((far) => rail.height + far * up) };
  const within = (spot: Spot) => !strut || offLine(panel, line, spot) <= stile.width / 2 - edge + 1e-9;
  const cost = (spot: Spot) => (strut ? offLine(panel, line, spot) : Math.abs(spot.x - stile.width / 2));
  const best = (of: readonly number[], ok: (spot: Spot) => boolean) =>
    xs
      .flatMap((x) => of.map((y) => ({ x, y })))
      .filter(within)
      .sort((a, b) => cost(a) - cost(b))
      .find(ok);
  const middle = {
    rail: { x: stile.width / 2, y: rail.height / 2 },
    stile: { x: stile.width / 2, y: rail.height + up },
  };
  if (!strut) {
    const columns = xs.toSorted((a, b) => cost({ x: a, y: 0 }) - cost({ x: b, y: 0 }));
    for (const stileY of ys.stile)
      for (const railY of ys.rail.filter((y) => y >= edge - 1e-9))
        for (const x of columns) {
          const pair = { rail: { x, y: railY }, stile: { x, y: stileY } };
          if (clear(pair.rail) && clear(pair.stile)) return { found: pair, clear: true };
        }
    return { found: middle, clear: false };
  }
  const [inRail, inStile] = [best(ys.rail, clear), best(ys.stile, clear)];
  return {
    found: { rail: inRail ?? middle.rail, stile: inStile ?? middle.stile },
    clear: inRail !== undefined && inStile !== undefined,
  };
}
