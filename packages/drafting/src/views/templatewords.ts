import { union } from '../ink.ts';
import { TEXT_LARGE } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Box, Mark } from '../mark.ts';
import { paragraph } from './stick.ts';

/** What one page of A4 and Letter alike shows of a drawing, upright and lying, mm: margins of 12, bars and words left out. */
const PAGES = [
  { width: 169, height: 217 },
  { width: 238, height: 148 },
] as const;

/** Widths of the words under a template and beside it, mm. */
const UNDER = [90, 120, 150, 167] as const;
const BESIDE = [60, 75, 90] as const;

/** From the template to the words, mm. */
const AWAY = { under: 4, beside: 6 } as const;

/** What is said with a template: its name and whose it is, and how to use it. */
interface Words {
  readonly heading: string;
  readonly text: string;
}

/**
 * The words of a template under or beside what is drawn in `around`: so that both stand on one page of the commonest
 * papers where they can, on as little paper as does it.
 */
export function templateWords(
  around: Box,
  { heading, text }: Words,
): { readonly marks: readonly Mark[]; readonly bounds: Box } {
  const at = (u: number, v: number, width: number) => {
    const head = paragraph(heading, [u, v], width, { height: TEXT_LARGE, role: 'title' });
    const body = paragraph(text, [u, v + head.height + 1], width);
    const words = { u0: u, v0: v, u1: u + width, v1: v + head.height + 1 + body.height };
    return { marks: [...head.marks, ...body.marks], bounds: union([around, words]) };
  };
  const longest = Math.max(...heading.split(' ').map((word) => textWidth(word, TEXT_LARGE, 'semibold')));
  const ways = [
    ...UNDER.map((width) => at(around.u0, around.v1 + AWAY.under, width)),
    ...BESIDE.filter((width) => width >= longest).map((width) => at(around.u1 + AWAY.beside, around.v0, width)),
  ];
  const area = ({ u0, v0, u1, v1 }: Box): number => (u1 - u0) * (v1 - v0);
  const onOne = ways.filter(({ bounds }) =>
    PAGES.some(({ width, height }) => bounds.u1 - bounds.u0 <= width && bounds.v1 - bounds.v0 <= height),
  );
  // What no page holds anyway keeps its words narrow, so that a page joint can pass beside them.
  if (onOne.length === 0) return at(around.u0, around.v1 + AWAY.under, UNDER[1]);
  return onOne.reduce((best, other) => (area(other.bounds) < area(best.bounds) ? other : best));
}
