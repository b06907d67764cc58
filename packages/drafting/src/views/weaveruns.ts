import type { Panel } from '@wattlewright/model';

/** The courses of each page, at most `most`: broken between two repeats of the weave where a page holds a whole one. */
export function runsOf({ courses: { count }, weave }: Panel, most: number): (readonly [from: number, to: number])[] {
  const every = weave.repeat.courses;
  if (count <= most || every > most) return spread(count, most, 0);
  const pages = Math.ceil(count / (Math.floor(most / every) * every));
  const step = Math.ceil(count / pages / every) * every;
  return Array.from(
    { length: Math.ceil(count / step) },
    (_, i) => [i * step, Math.min(count, (i + 1) * step)] as const,
  );
}

/** `count` things in runs of at most `most`, as even as can be, neighbours sharing `overlap`. */
export function spread(count: number, most: number, overlap: number): (readonly [from: number, to: number])[] {
  const runs = Math.max(1, Math.ceil((count - overlap) / (most - overlap)));
  const step = (count - overlap) / runs;
  return Array.from({ length: runs }, (_, i) => [Math.round(i * step), Math.round((i + 1) * step) + overlap] as const);
}
