import { wrapText } from '../lettering.ts';
import type { Weight } from '../pen.ts';
import { TEXT } from './style.ts';

/** Between a whole number and its fraction, or a number and its unit, a line must not break. */
const NUMBER_GAP = /(?<=\d) (?=\d+[⁄/]\d|(?:mm|in|ft|N|kg|%|°C)(?![\p{L}\d]))/gu;

/** A text with the spaces inside sizes made unbreakable: `1 1⁄2`, `12 mm`. */
export function held(text: string): string {
  return text.replace(NUMBER_GAP, '\u00a0');
}

/** A text in lines no wider than `width` mm: broken at its own line ends and between words, never inside a size. */
export function lines(
  text: string,
  width: number,
  { height = TEXT, weight = 'regular' }: { readonly height?: number; readonly weight?: Weight } = {},
): string[] {
  return text.split('\n').flatMap((part) => wrapText(held(part), width, height, weight));
}
