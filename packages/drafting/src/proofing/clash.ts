import type { Finding } from '@wattlewright/model';
import { boxOf, pointsOf } from '../ink.ts';
import { overlaps } from '../layout/clearance.ts';
import { rings } from '../layout/clip.ts';
import { textBox, textCorners } from '../lettering.ts';
import type { Box, Mark, PathMark, Point, Sheet, TextMark } from '../mark.ts';
import { fillOf, pen } from '../pen.ts';
import { fault, placeName, sheetName } from './fault.ts';
import { gridOf } from './grid.ts';

/** Lines of at least this width, mm, count as wide: between the narrow 0.25 and the wide 0.5 of ISO 128-2. */
const wide = 0.35;
/** Ink that shares less than this, mm, only touches: half of the thinnest line. */
const touch = 0.09;

/** A text with its ink on paper. */
interface Lettered {
  readonly mark: TextMark;
  /** Where it stands in the order of ink. */
  readonly order: number;
  readonly box: Box;
  readonly corners: readonly Point[];
}

interface Face {
  readonly order: number;
  readonly box: Box;
  readonly rings: readonly (readonly Point[])[];
}

/** Texts on texts, texts on wide lines that no face between them hides, and texts under faces, on one sheet. */
export function clashes(sheet: Sheet, marks: readonly Mark[]): Finding[] {
  const texts = marks.flatMap((mark, order): Lettered[] =>
    mark.kind === 'text' && mark.text.trim() !== ''
      ? [{ mark, order, box: textBox(mark), corners: inset(textCorners(mark)) }]
      : [],
  );
  const grid = gridOf(texts.map(({ box }) => box));
  const faces = facesOf(marks, texts, (box) => grid.near(box));
  const where = sheetName(sheet);
  const found: Finding[] = [];
  const said = (kind: 'text-on-text' | 'text-on-line' | 'text-hidden', { mark }: Lettered, what: string): void => {
    found.push(fault(kind, { where, text: `“${mark.text}” ${what}.`, figure: placeName(mark.at) }));
  };
  texts.forEach((one, i) => {
    for (const j of grid.near(one.box)) {
      const other = texts[j] as Lettered;
      if (j > i && overlaps(one.box, other.box) && convexMeet(one.corners, other.corners)) {
        said('text-on-text', one, `lies on “${other.mark.text}”`);
      }
    }
    const over = faces.find((face) => face.order > one.order && one.corners.some((p) => within(face, p)));
    if (over) said('text-hidden', one, 'is covered by a face drawn over it');
  });
  const struck = new Set<number>();
  marks.forEach((mark, order) => {
    if (mark.kind !== 'path' || pen(mark.role).width < wide) return;
    for (const [a, b] of segments(mark)) {
      for (const i of grid.near(boxOf([a, b]))) {
        const text = texts[i] as Lettered;
        if (struck.has(i) || !convexMeet(text.corners, [a, b])) continue;
        const crossed = inside(text.corners, [a, b]);
        if (faces.some((f) => f.order > order && f.order < text.order && crossed.every((p) => within(f, p)))) continue;
        struck.add(i);
        said('text-on-line', text, `lies on a wide line (${mark.role})`);
      }
    }
  });
  return found;
}

/** The faces that lie near any text, with their outlines. */
function facesOf(marks: readonly Mark[], texts: readonly Lettered[], near: (box: Box) => number[]): Face[] {
  return marks.flatMap((mark, order): Face[] => {
    if (mark.kind !== 'path' || fillOf(mark) === undefined) return [];
    const box = boxOf(pointsOf(mark.path));
    if (!near(box).some((i) => overlaps(box, (texts[i] as Lettered).box))) return [];
    return [{ order, box, rings: rings(mark.path) }];
  });
}

/** Corners drawn in a little, so that what only touches does not count. */
function inset(corners: readonly Point[]): Point[] {
  const count = corners.length;
  const [mu, mv] = [0, 1].map((k) => corners.reduce((sum, p) => sum + (p[k] as number), 0) / count) as [number, number];
  return corners.map(([u, v]) => {
    const far = Math.hypot(u - mu, v - mv) || 1;
    const share = Math.max(0, 1 - (touch * Math.SQRT2) / far);
    return [mu + (u - mu) * share, mv + (v - mv) * share];
  });
}

function segments(mark: PathMark): (readonly [Point, Point])[] {
  const out: (readonly [Point, Point])[] = [];
  let [start, pen]: [Point, Point] = [
    [0, 0],
    [0, 0],
  ];
  for (const step of mark.path) {
    if (step[0] === 'M') {
      start = [step[1], step[2]];
      pen = start;
    } else if (step[0] === 'L') {
      out.push([pen, [step[1], step[2]]]);
      pen = [step[1], step[2]];
    } else if (step[0] === 'Z') {
      out.push([pen, start]);
      pen = start;
    } else {
      const [run = []] = rings([['M', ...pen], step, ['L', step[5], step[6]]]);
      for (const p of run) {
        out.push([pen, p]);
        pen = p;
      }
    }
  }
  return out;
}

/** Whether two convex outlines share room: no side of either keeps them apart (separating axes). */
function convexMeet(a: readonly Point[], b: readonly Point[]): boolean {
  for (const shape of [a, b]) {
    for (let i = 0; i < shape.length; i++) {
      const [p, q] = [shape[i] as Point, shape[(i + 1) % shape.length] as Point];
      const normal: Point = [q[1] - p[1], p[0] - q[0]];
      const [a0, a1] = shadow(a, normal);
      const [b0, b1] = shadow(b, normal);
      if (a1 <= b0 || b1 <= a0) return false;
    }
  }
  return true;
}

function shadow(shape: readonly Point[], [nu, nv]: Point): readonly [number, number] {
  const along = shape.map(([u, v]) => u * nu + v * nv);
  return [Math.min(...along), Math.max(...along)];
}

/** Three points of the stretch of a line that lies inside a convex outline: near its ends and its middle. */
function inside(outline: readonly Point[], [a, b]: readonly [Point, Point]): Point[] {
  const on = (t: number): Point => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
  const shares = Array.from({ length: 65 }, (_, i) => i / 64).filter((t) => within({ rings: [outline] }, on(t)));
  const [first, last] = [shares[0], shares.at(-1)];
  if (first === undefined || last === undefined) return [on(0.5)];
  return [on(first), on((first + last) / 2), on(last)];
}

/** Whether a point lies inside some rings, by the even-odd rule. */
function within({ rings: all }: Pick<Face, 'rings'>, [u, v]: Point): boolean {
  let odd = false;
  for (const ring of all) {
    for (let i = 0, j = ring.length - 1; i < ring.length; j = i++) {
      const [pu, pv] = ring[i] as Point;
      const [qu, qv] = ring[j] as Point;
      if (pv > v !== qv > v && u < ((qu - pu) * (v - pv)) / (qv - pv) + pu) odd = !odd;
    }
  }
  return odd;
}
