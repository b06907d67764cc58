import { printable, textStart } from '../lettering.ts';
import type { Path, Point, Step, TextMark } from '../mark.ts';
import { pen } from '../pen.ts';
import { face, shape, sizeOf } from './face.ts';

/** The outlines of a text's letters, mm on paper, as closed paths: for machines, which know no fonts. */
export function textOutline(mark: TextMark): Path {
  const { weight } = pen(mark.role);
  const scale = sizeOf(mark.height, weight) / face(weight).unitsPerEm;
  const start = textStart(mark);
  const turn = (mark.angle * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn) * scale, Math.sin(turn) * scale];
  const run = shape(printable(mark.text).text, weight);
  const steps: Step[] = [];
  let along = 0;
  run.glyphs.forEach((glyph, i) => {
    const place = run.positions[i];
    const origin = along + (place?.xOffset ?? 0);
    const lift = place?.yOffset ?? 0;
    const on = (x: number, y: number): Point => [
      start[0] + (origin + x) * cos - (lift + y) * sin,
      start[1] - (origin + x) * sin - (lift + y) * cos,
    ];
    steps.push(...outline(glyph.path.commands as readonly Command[], on));
    along += place?.xAdvance ?? glyph.advanceWidth;
  });
  return steps;
}

interface Command {
  readonly command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
  readonly args: readonly number[];
}

/** A glyph's own steps on paper; a quadratic curve becomes the cubic that is the same curve. */
function outline(commands: readonly Command[], on: (x: number, y: number) => Point): Step[] {
  let [x, y] = [0, 0];
  return commands.map(({ command, args }): Step => {
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = args;
    if (command === 'closePath') return ['Z'];
    const before: Point = [x, y];
    [x, y] = [args.at(-2) ?? 0, args.at(-1) ?? 0];
    if (command === 'moveTo') return ['M', ...on(a, b)];
    if (command === 'lineTo') return ['L', ...on(a, b)];
    if (command === 'bezierCurveTo') return ['C', ...on(a, b), ...on(c, d), ...on(e, f)];
    const third = (from: number, to: number): number => from + (2 / 3) * (to - from);
    return ['C', ...on(third(before[0], a), third(before[1], b)), ...on(third(c, a), third(d, b)), ...on(c, d)];
  });
}
