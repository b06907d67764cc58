import { type Panel, readJob, solve } from '@wattlewright/model';
import { boxOf } from '../../src/ink.ts';
import { isInside, rings } from '../../src/layout/clip.ts';
import type { Mark, Point } from '../../src/mark.ts';

/** A fill with its outline ready to be asked. */
interface Fill {
  readonly of: string | undefined;
  readonly rings: readonly (readonly Point[])[];
}

/** Every painted face of wood of a drawing, in painting order; each ring of a path is a face of its own. */
export function fills(marks: readonly Mark[]): Fill[] {
  return marks.flatMap((mark) =>
    mark.kind === 'path' && mark.role.startsWith('wood')
      ? rings(mark.path).map((ring) => ({ of: mark.of, rings: [ring] }))
      : [],
  );
}

/** The part whose face was painted last over a point; undefined for bare paper. */
export function topmost(painted: readonly Fill[]): (point: Point) => string | undefined {
  const boxed = painted.map((fill) => ({ ...fill, box: boxOf(fill.rings.flat()) }));
  return (point) =>
    boxed.findLast(
      ({ box, rings: outline }) =>
        point[0] >= box.u0 &&
        point[0] <= box.u1 &&
        point[1] >= box.v0 &&
        point[1] <= box.v1 &&
        isInside(point, outline),
    )?.of;
}

/** The panels of a job given as data. */
export function panelsOf(panels: readonly object[], more: object = {}): Panel[] {
  return solve(readJob(JSON.stringify({ job: 'Seen', unit: 'mm', panels, ...more })));
}

/** A screen with rows of weave as given, mm. */
export function screen(pattern: readonly string[] | string, more: object = {}): Panel {
  const staves = typeof pattern === 'string' ? 5 : (pattern[0] as string).length;
  return panelsOf([
    {
      name: 'Screen',
      use: 'screen',
      size: { width: 1100, height: 900 },
      stave: { width: 20, depth: 14, count: staves },
      slat: { thickness: 4, height: 40 },
      fit: { vary: 'slats', from: 36, to: 44, prefer: 40 },
      weave: typeof pattern === 'string' ? { pattern } : { rows: pattern },
      wood: 'white oak',
      ...more,
    },
  ])[0] as Panel;
}
