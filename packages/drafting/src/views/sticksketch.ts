import { TEXT } from '../layout/style.ts';
import type { Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';

/** Size of the sketch of how a course stick lies, mm. */
export const SKETCH = { width: 56, height: 34 } as const;

/** Width of a stile and of the stick in the sketch, and how tall it is, mm. */
const [STILE, STICK, TALL] = [7, 20, 24];

/**
 * How a course stick lies on the two stiles, not to scale: its edge along the inner edge of each, the paper hanging over the outer
 * edge, feet flush. Its upper left corner is at `at`.
 */
export function stickSketch([u, v]: Point): Mark[] {
  const foot = v + TALL;
  const one = (which: 'left' | 'right'): Mark[] => {
    const inner = which === 'left' ? u + STICK : u + SKETCH.width - STICK;
    const out = which === 'left' ? -1 : 1;
    const box = (wide: number, top: number) =>
      rectangle({
        u0: Math.min(inner, inner + out * wide),
        v0: top,
        u1: Math.max(inner, inner + out * wide),
        v1: foot,
      });
    return [
      { ...stroke('wood-shade', box(STILE, v)) },
      stroke('edge-light', box(STILE, v)),
      stroke('table', box(STICK, v + 3)),
      write('note', 'stick', [inner + out * ((STILE + STICK) / 2), v + TALL / 2 + 3], {
        height: TEXT,
        anchor: 'middle',
      }),
      write('note', `${which} stile`, [inner + out * (STICK / 2), foot + 1.2 + TEXT], {
        height: TEXT,
        anchor: 'middle',
      }),
    ];
  };
  const middle = u + SKETCH.width / 2;
  return [
    ...one('left'),
    ...one('right'),
    stroke('grid', line([u, foot], [u + SKETCH.width, foot])),
    write('note', 'inner', [middle, v + TALL / 2], { height: TEXT, anchor: 'middle' }),
    write('note', 'edges', [middle, v + TALL / 2 + 4.4], { height: TEXT, anchor: 'middle' }),
    write('note', 'feet flush', [middle, foot + 6 + TEXT], { height: TEXT, anchor: 'middle' }),
  ];
}
