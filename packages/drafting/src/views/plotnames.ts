import { boxOf } from '../ink.ts';
import { crossesBox, grown, overlaps } from '../layout/clearance.ts';
import { ASCENT, DESCENT, TEXT, TEXT_CLEAR } from '../layout/style.ts';
import { textBox } from '../lettering.ts';
import type { Box, Mark, Point, TextMark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import { type Field, type Named, ON_GAP, onCurves, POINT_RADIUS } from './ploton.ts';

/** How far from its point a name may stand, mm, nearest first. */
const FAR = [3, 5, 8, 12, 17, 23, 30];

/** From one name at the side of a plot to the next, mm. */
const STEP = (ASCENT + DESCENT) * TEXT + 1.2;

/** The names of a plot's curves, levels and points: at the ends beside it, or inside with a leader, none on another. */
export function names(field: Field, named: Named): Mark[] {
  const { curves, levels, points } = named;
  const on = onCurves(field, named);
  const ends = [
    ...curves.flatMap(({ one, run }) =>
      one.named === undefined && !on.has(one) ? [{ label: one.label, main: one.main, end: run.at(-1) as Point }] : [],
    ),
    ...levels.map(({ label, y }) => ({ label, main: false, end: [field.box.u1, field.v(y)] as const })),
  ];
  const inside = [
    ...points.map(({ x, y, label }) => ({ at: [field.u(x), field.v(y)] as const, label, from: POINT_RADIUS + 0.4 })),
    ...curves.flatMap(({ one, run }) =>
      one.named === undefined ? [] : [{ at: nearest(run, field.u(one.named)), label: one.label, from: 0.3 }],
    ),
  ];
  const lines: (readonly Point[])[] = [
    ...curves.map(({ run }) => run),
    ...levels.map(({ y }): Point[] => [
      [field.box.u0, field.v(y)],
      [field.box.u1, field.v(y)],
    ]),
  ];
  const taken: Box[] = [
    ...inside.map(({ at }) => grown(boxOf([at]), POINT_RADIUS)),
    ...[...on.values()].map((text) => grown(textBox(text), ON_GAP)),
  ];
  const marks: Mark[] = [];
  for (const one of inside) {
    const text = freePlace(field, one, [...lines, ...(field.grid ?? [])], taken) ?? freePlace(field, one, lines, taken);
    if (!text) continue;
    taken.push(textBox(text));
    lines.push(lead(one.at, textBox(text)));
    marks.push(...called(one, text));
  }
  return [...on.values(), ...marks, ...endNames(field, ends)];
}

function nearest(run: readonly Point[], u: number): Point {
  return run.reduce((best, point) => (Math.abs(point[0] - u) < Math.abs(best[0] - u) ? point : best));
}

/** Names at the right beside the plot, moved apart where they would touch; where one needs a leader, all have one. */
function endNames(
  { box }: Field,
  ends: readonly { readonly label: string; readonly main?: boolean | undefined; readonly end: Point }[],
): Mark[] {
  const sorted = ends.toSorted((a, b) => a.end[1] - b.end[1]);
  const places = apart(
    sorted.map(({ end }) => end[1]),
    STEP,
  );
  // None below the axis, where its values stand.
  for (let i = places.length - 1; i >= 0; i--)
    places[i] = Math.min(places[i] as number, i + 1 < places.length ? (places[i + 1] as number) - STEP : box.v1 - 0.5);
  const led = sorted.some(({ end }, i) => Math.abs(end[1] - (places[i] as number)) > 0.6 || box.u1 - end[0] > 1);
  return sorted.flatMap(({ label, main, end }, i): Mark[] => {
    const v = places[i] as number;
    return [
      ...(led ? [stroke('dimension', line([end[0] + 0.3, end[1]], [box.u1 + 4, v]))] : []),
      write(main ? 'title' : 'label', label, [box.u1 + (led ? 5 : 2), v + TEXT / 2], { height: TEXT }),
    ];
  });
}

/** Places at least `step` apart, each as near its wish as the others allow: groups that would touch share their middle. */
export function apart(wishes: readonly number[], step: number): number[] {
  const groups: { sum: number; count: number }[] = [];
  const top = ({ sum, count }: { sum: number; count: number }): number => sum / count - ((count - 1) * step) / 2;
  for (const wish of wishes) {
    groups.push({ sum: wish, count: 1 });
    for (;;) {
      const [a, b] = groups.slice(-2);
      if (!a || !b || top(a) + a.count * step <= top(b) + 1e-9) break;
      groups.splice(-2, 2, { sum: a.sum + b.sum, count: a.count + b.count });
    }
  }
  return groups.flatMap((group) => Array.from({ length: group.count }, (_, i) => top(group) + i * step));
}

/** Something inside the plot to be named: its place, and where a leader starts, mm from it. */
interface Called {
  readonly at: Point;
  readonly label: string;
  readonly from: number;
}

/** The nearest place about a point where its name lies inside the plot, off all lines and names. */
function freePlace(
  { box }: Field,
  { at: [u, v], label }: Called,
  lines: readonly (readonly Point[])[],
  taken: readonly Box[],
): TextMark | undefined {
  const within = grown(box, -0.8);
  for (const far of FAR)
    for (const turn of [30, 150, -30, -150, 60, 120, -60, -120, 0, 180, 90, -90]) {
      const cos = Math.cos((turn * Math.PI) / 180);
      const place: Point = [u + far * cos, v - far * Math.sin((turn * Math.PI) / 180) + TEXT / 2];
      const anchor = Math.abs(cos) < 0.6 ? 'middle' : cos > 0 ? 'start' : 'end';
      const text = write('title', label, place, { height: TEXT, anchor });
      const own = textBox(text);
      const room = grown(own, TEXT_CLEAR / 2);
      const free =
        own.u0 >= within.u0 &&
        own.u1 <= within.u1 &&
        own.v0 >= within.v0 &&
        own.v1 <= within.v1 &&
        !taken.some(
          (other) => overlaps(room, other) || (!holds(other, [u, v]) && crossesBox(lead([u, v], own), other)),
        ) &&
        !lines.some((run) => run.some((point, i) => i > 0 && crossesBox([run[i - 1] as Point, point], room)));
      if (free) return text;
    }
  return undefined;
}

/** From a point to the nearest place on its name. */
function lead([u, v]: Point, box: Box): readonly [Point, Point] {
  return [
    [u, v],
    [Math.min(Math.max(u, box.u0), box.u1), Math.min(Math.max(v, box.v0), box.v1)],
  ];
}

function holds({ u0, v0, u1, v1 }: Box, [u, v]: Point): boolean {
  return u > u0 && u < u1 && v > v0 && v < v1;
}

/** A name on a patch of paper, so that the grid does not run through it, and a short leader where it stands off. */
function called({ at: [u, v], from }: Called, text: TextMark): Mark[] {
  const box = textBox(text);
  const [, to] = lead([u, v], box);
  const far = Math.hypot(to[0] - u, to[1] - v);
  const start: Point = [u + ((to[0] - u) * from) / far, v + ((to[1] - v) * from) / far];
  const end: Point = [to[0] - ((to[0] - u) * 0.5) / far, to[1] - ((to[1] - v) * 0.5) / far];
  return [
    stroke('paper', rectangle(grown(box, 0.4))),
    ...(far - from > 1.5 ? [stroke('dimension', line(start, end))] : []),
    text,
  ];
}
