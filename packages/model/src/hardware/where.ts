import { formatLength, type Marks, sizeMarks } from '../length.ts';

/** Lengths in the job's unit, shortest first, each once: `4 1/2, 26 and 47 1/2 in`. */
export function lengthsText(lengths: readonly number[], display: Marks): string {
  const sorted = [...lengths].sort((a, b) => a - b);
  const shown = [...new Set(sorted.map((length) => formatLength(length, sizeMarks(length, display))))];
  const last = shown.at(-1) ?? '';
  const list = shown.length > 1 ? `${shown.slice(0, -1).join(', ')} and ${last}` : last;
  return `${list} ${display.unit}`;
}

/** Heights in the panel frame, which starts at the foot of the frame, in words. */
export function heightsText(heights: readonly number[], display: Marks): string {
  return `from the foot of the frame: ${lengthsText(heights, display)}`;
}
