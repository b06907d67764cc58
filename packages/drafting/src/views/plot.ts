import { pointsOf, union } from '../ink.ts';
import { grown } from '../layout/clearance.ts';
import { lines } from '../layout/lines.ts';
import { TEXT } from '../layout/style.ts';
import { textBox } from '../lettering.ts';
import type { Box, Drawing, Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { circle, line, polyline } from '../path.ts';
import type { Axis, PlotOptions } from './plotdata.ts';
import { names } from './plotnames.ts';
import { type Curve, type Field, ON_GAP, onCurves, outside, POINT_RADIUS } from './ploton.ts';

/**
 * Round values from `from` to `to`, about `wanted` of them, stepping by 1, 2 or 5 times a power of ten.
 * `niceTicks(0, 0.43, 5)` is 0, 0.1, 0.2, 0.3, 0.4.
 */
export function niceTicks(from: number, to: number, wanted = 6): number[] {
  const raw = (to - from) / Math.max(1, wanted);
  if (!(raw > 0)) return [from];
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = ([1, 2, 5].find((n) => n * power >= raw * (1 - 1e-9)) ?? 10) * power;
  const first = Math.ceil(from / step - 1e-9);
  const last = Math.floor(to / step + 1e-9);
  // Multiplied out and rounded, so that 3 × 0.1 reads 0.3.
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/**
 * A small chart: axes with round ticks and a light grid, lines named where they end, levels to judge by, and points of
 * interest. Names give way to each other up and down; none stands on another. It has no scale, so text keeps its size.
 */
export function plot(options: PlotOptions): Drawing {
  const { name, title, alt, x, y, series, levels = [], points = [], note, width = 110, height = 65 } = options;
  const box: Box = { u0: 0, v0: 0, u1: width, v1: height };
  const field: Field = {
    box,
    u: (value) => ((value - x.from) / (x.to - x.from)) * width,
    v: (value) => height - ((value - y.from) / (y.to - y.from)) * height,
  };
  const curves = series.flatMap((one): Curve[] => {
    const run = inField(one.points, x, y).map(([a, b]): Point => [field.u(a), field.v(b)]);
    return run.length > 1 ? [{ one, run }] : [];
  });
  const axes = axisInk(field, x, y);
  const grid = axes.marks.flatMap((mark) =>
    mark.kind === 'path' && mark.role === 'grid' ? [pointsOf(mark.path)] : [],
  );
  const inside = levels.filter((level) => level.y >= y.from && level.y <= y.to);
  const heights = inside.map((level) => field.v(level.y));
  const on = onCurves({ ...field, grid }, { curves, levels: inside, points });
  const marks: Mark[] = [
    ...axes.marks,
    ...heights.map((v) => stroke('hidden', line([box.u0, v], [box.u1, v]))),
    ...curves.flatMap(({ one, run }) => {
      const name = on.get(one);
      const pieces = name ? outside(run, grown(textBox(name), ON_GAP)) : [run];
      return pieces.map((piece) => stroke(one.main ? 'accent' : 'plot', polyline(piece)));
    }),
    ...points.map((point) => ({
      ...stroke('accent', circle([field.u(point.x), field.v(point.y)], POINT_RADIUS)),
      shade: 1,
    })),
    ...names({ ...field, grid }, { curves, levels: inside, points }),
    ...(note ? noteInk(note, axes.depth + 2, width) : []),
  ];
  const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
  return { name, title, scale: 0, scaleText: '', marks, bounds: union([box, ...texts]), alt };
}

/** Grid, ticks and their values, and the names of the axes; `depth` is how far down the ink goes. */
function axisInk({ box, u, v }: Field, x: Axis, y: Axis): { readonly marks: Mark[]; readonly depth: number } {
  const xs = ticksOf(x, Math.floor((box.u1 - box.u0) / 16));
  const ys = ticksOf(y, Math.floor((box.v1 - box.v0) / 10));
  const showX = x.show ?? String;
  const showY = y.show ?? String;
  const marks: Mark[] = [
    // Ticks alone along x: a name inside the field then finds room between two lines of the grid.
    ...xs.map((value) => stroke('table', line([u(value), box.v1 - 1.2], [u(value), box.v1 + 1.2]))),
    ...ys.map((value) => stroke('grid', line([box.u0 - 1.2, v(value)], [box.u1, v(value)]))),
    stroke(
      'table',
      polyline([
        [box.u0, box.v0],
        [box.u0, box.v1],
        [box.u1, box.v1],
      ]),
    ),
    ...xs.map((value) => write('label', showX(value), [u(value), box.v1 + 4.6], { height: TEXT, anchor: 'middle' })),
    ...ys.map((value) =>
      write('label', showY(value), [box.u0 - 2.2, v(value) + TEXT / 2], { height: TEXT, anchor: 'end' }),
    ),
    write('note', x.label, [(box.u0 + box.u1) / 2, box.v1 + 9.4], { height: TEXT, anchor: 'middle' }),
    write('note', y.label, [box.u0, box.v0 - 3], { height: TEXT }),
  ];
  return { marks, depth: box.v1 + 10.4 };
}

function ticksOf({ from, to, ticks }: Axis, most: number): readonly number[] {
  return ticks?.filter((value) => value >= from - 1e-9 && value <= to + 1e-9) ?? niceTicks(from, to, Math.max(2, most));
}

type Run = readonly (readonly [number, number])[];

/** A curve with its ink kept inside the plot: cut, by straight pieces, where it leaves through the top or bottom. */
function inField(points: Run, x: Axis, y: Axis): Run {
  const inside = points.filter(([a]) => a >= x.from - 1e-9 && a <= x.to + 1e-9);
  const out: (readonly [number, number])[] = [];
  inside.forEach(([a, b], i) => {
    const before = inside[i - 1];
    const ok = b >= y.from && b <= y.to;
    if (before) {
      const wasOk = before[1] >= y.from && before[1] <= y.to;
      if (ok !== wasOk) {
        const edge = (ok ? before[1] : b) > y.to ? y.to : y.from;
        const t = (edge - before[1]) / (b - before[1]);
        out.push([before[0] + t * (a - before[0]), edge]);
      }
    }
    if (ok) out.push([a, b]);
  });
  return out;
}

function noteInk(note: string, top: number, width: number): Mark[] {
  return lines(note, width).map((words, i) => write('note', words, [0, top + TEXT + i * 4.4], { height: TEXT }));
}
