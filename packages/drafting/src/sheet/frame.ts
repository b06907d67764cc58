import type { Box } from '../mark.ts';
import type { Extent } from '../scale.ts';

/** How a sheet lies. */
export type Orientation = 'landscape' | 'portrait';

/** A sheet before anything is drawn on it, mm. */
export interface Frame {
  /** Name of the paper, such as `A3`. */
  readonly paper: string;
  readonly width: number;
  readonly height: number;
  /** The border; all ink stays within it. */
  readonly border: Box;
  /** The title block, in the lower right corner of the border. */
  readonly block: Box;
  /** The free room above the title block, and the free room beside it where that is worth having. They overlap. */
  readonly rooms: readonly Box[];
}

/** Height of the title block, mm: rows of 14, 9.5 and 11, and 6.5 for the warning. */
export const BLOCK_HEIGHT = 41;

/** Greatest width of a title block, mm (ISO 7200, from memory), which is the drawing space of an upright A4 sheet. */
export const BLOCK_WIDTH = 180;

/** Left border with filing margin and the other borders, mm (ISO 5457). */
const BORDER = { filing: 20, other: 10 };

/** The same on office paper outside the ISO sizes, where room is dear, mm. Common practice, no source. */
const OFFICE_BORDER = { filing: 16, other: 8 };

/** Clear room along the inside of the border and round the title block, mm. Common practice, no source. */
const INSET = 4;

/** Room beside the title block narrower than this, mm, is left empty. */
const WORTH_HAVING = 60;

/** The frame of a sheet of paper, which is given by its name and its two sides in mm. */
export function frame(paper: { readonly name: string } & Extent, orientation: Orientation): Frame {
  const [short, long] = [Math.min(paper.width, paper.height), Math.max(paper.width, paper.height)];
  const [width, height] = orientation === 'landscape' ? [long, short] : [short, long];
  const { filing, other } = paper.name === 'Letter' || paper.name === 'Legal' ? OFFICE_BORDER : BORDER;
  const border = { u0: filing, v0: other, u1: width - other, v1: height - other };
  const beside = border.u1 - border.u0 - BLOCK_WIDTH;
  const block = {
    u0: beside < WORTH_HAVING / 2 ? border.u0 : border.u1 - BLOCK_WIDTH,
    v0: border.v1 - BLOCK_HEIGHT,
    u1: border.u1,
    v1: border.v1,
  };
  const inner = { u0: border.u0 + INSET, v0: border.v0 + INSET, u1: border.u1 - INSET, v1: border.v1 - INSET };
  const above = { ...inner, v1: block.v0 - INSET };
  const left = { ...inner, u1: block.u0 - INSET };
  return { paper: paper.name, width, height, border, block, rooms: beside < WORTH_HAVING ? [above] : [above, left] };
}

/** Width and height of a box. */
export function extentOf({ u0, v0, u1, v1 }: Box): Extent {
  return { width: u1 - u0, height: v1 - v0 };
}
