import { textWidth } from '../lettering.ts';
import { type Box, type Mark, type Point, stroke, write } from '../mark.ts';
import { line, polygon, rectangle } from '../path.ts';

const text = 2.5;
/** Half the length of a register cross's arms, mm. */
const arm = 4;

/** Where a page stands among the others: row and column from 0, and the number of its drawing in its file, from 1. */
export interface Place {
  readonly row: number;
  readonly column: number;
  readonly series?: number | undefined;
}

/** Row letter and column number, such as `B-3`; rows after Z are AA, AB ... After the drawing's number, if it has one: `2B-3`. */
export function pageLabel({ row, column, series }: Place): string {
  let letters = '';
  for (let n = row + 1; n > 0; n = Math.floor((n - 1) / 26))
    letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters;
  return `${series ?? ''}${letters}-${column + 1}`;
}

/** A cross by which neighbouring pages are laid on each other: drawn at the same place of the drawing on both. */
export function registerCross([u, v]: Point): Mark[] {
  return [stroke('register', line([u - arm, v], [u + arm, v])), stroke('register', line([u, v - arm], [u, v + arm]))];
}

/** Which neighbour a side of a page meets. */
export interface Neighbour {
  readonly side: 'left' | 'right' | 'up' | 'down';
  /** Where the two pages' crosses near this corner stand, on paper. */
  readonly cross: Point;
  readonly label: string;
}

/** An arrow beside a register cross with the name of the page that joins there. */
export function neighbourArrow({ side, cross: [u, v], label }: Neighbour): Mark[] {
  // The arrow stands clear of the cross on the page's own side of the joint; names read level.
  const out: Readonly<Record<Neighbour['side'], Point>> = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] };
  const [du, dv] = out[side];
  const tip: Point = [u - du * (arm + 3.5), v - dv * (arm + 3.5)];
  const tail: Point = [tip[0] - du * 4, tip[1] - dv * 4];
  const [wu, wv] = [-dv * 0.8, du * 0.8];
  const back: Point = [tip[0] - du * 2.4, tip[1] - dv * 2.4];
  const head = polygon([tip, [back[0] + wu, back[1] + wv], [back[0] - wu, back[1] - wv]]);
  // Beyond the tail of the arrow, so that it stays within the room kept round the drawing.
  const at: Point = dv === 0 ? [tail[0] - du * 1.2, v + text / 2] : [u, tail[1] + (dv > 0 ? -1 : text + 1)];
  const anchor = dv !== 0 ? 'middle' : du > 0 ? 'end' : 'start';
  return [
    stroke('register', line(tail, back)),
    { ...stroke('register', head), shade: 0 },
    write('label', label, at, { height: text, anchor }),
  ];
}

/** How the pages of a drawing hang together, drawn small, this page dark. Its size is at most `room`. */
export function joiningMap(here: Place, rows: number, columns: number, room: Box): Mark[] {
  const widest = pageLabel({ row: rows - 1, column: columns - 1, series: here.series });
  const width = Math.min(Math.max(9, textWidth(widest, text) + 1.6), (room.u1 - room.u0) / columns);
  const height = Math.min(5, (room.v1 - room.v0) / rows);
  const marks: Mark[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [u0, v0] = [room.u0 + column * width, room.v0 + row * height];
      const cell = rectangle({ u0, v0, u1: u0 + width, v1: v0 + height });
      const current = row === here.row && column === here.column;
      if (current) marks.push(stroke('wood-deep', cell));
      marks.push(stroke('grid', cell));
      // A row too long for the whole names is still told apart by its numbers.
      const label = [pageLabel({ row, column, series: here.series }), `${column + 1}`].find(
        (words) => textWidth(words, text) + 0.8 <= width,
      );
      if (label === undefined || height < text + 1.2) continue;
      marks.push(write('label', label, [u0 + width / 2, v0 + (height + text) / 2], { height: text, anchor: 'middle' }));
    }
  }
  return marks;
}
