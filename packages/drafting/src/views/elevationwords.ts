import { overlaps } from '../layout/clearance.ts';
import { lines } from '../layout/lines.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT, TEXT_CLEAR } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Mark } from '../mark.ts';
import { write } from '../mark.ts';

/** Where words about the rows of sizes at the left and below stand. */
export interface CornerPlace {
  readonly outline: Box;
  /** The rows of sizes at the left. */
  readonly rows: Box;
  /** Labels that the words keep clear of. */
  readonly keepOut: readonly Box[];
}

/** From the panel's edge to the words, paper mm: a detail's letter and the origin of the sizes stand between. */
const OFF = 8;

/** Narrowest and widest set of the words, mm. */
const WIDTH = { least: 38, most: 52 };

/** Between what two rows say, mm. */
const PARAGRAPH = 1.5;

/**
 * What rows of sizes say, in the free corner under those at the left and beside those below: between two dimension lines
 * it would be read with neither.
 */
export function cornerWords(texts: readonly string[], { outline, rows, keepOut }: CornerPlace): Mark[] {
  const right = outline.u0 - OFF;
  const wrapped = texts.map((text) => lines(text, Math.min(WIDTH.most, Math.max(WIDTH.least, right - rows.u0))));
  const wide = Math.max(0, ...wrapped.flat().map((one) => textWidth(one, TEXT)));
  let v = Math.max(rows.v1, outline.v1) + TEXT_CLEAR;
  return wrapped.flatMap((block) => {
    const high = (ASCENT + DESCENT + (block.length - 1) * LINE_STEP) * TEXT;
    const v0 = v;
    v += high + PARAGRAPH;
    let u1 = right;
    for (const other of keepOut.map(apart).toSorted((a, b) => b.u0 - a.u0))
      if (overlaps({ u0: u1 - wide, v0, u1, v1: v0 + high }, other)) u1 = other.u0;
    return block.map((one, i) =>
      write('note', one, [u1 - wide, v0 + (ASCENT + i * LINE_STEP) * TEXT], { height: TEXT }),
    );
  });
}

/** A label with the room that keeps words on its line from being read on with it. */
function apart({ u0, v0, u1, v1 }: Box): Box {
  return { u0: u0 - APART, v0: v0 - TEXT_CLEAR, u1: u1 + APART, v1: v1 + TEXT_CLEAR };
}

const APART = 6;
