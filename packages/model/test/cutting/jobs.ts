import type { Grade, Part, Saw, Stock } from '../../src/index.ts';

const IN = 25.4;

/** A part in inches. */
export function part(
  letter: string,
  [thickness, width, length]: readonly [number, number, number],
  count: number,
  more: { readonly grade?: Grade; readonly wood?: string; readonly spare?: number; readonly over?: number } = {},
): Part {
  return {
    letter,
    name: `piece ${letter}`,
    role: 'slat',
    count,
    spare: more.spare ?? 0,
    length: length * IN,
    over: (more.over ?? 0) * IN,
    width: width * IN,
    thickness: thickness * IN,
    wood: more.wood ?? 'cedar',
    grade: more.grade ?? 'knotty',
    grain: 'length',
    where: [{ panel: 'panel', count }],
    made: 'as given',
  };
}

/** A board in inches at a price per board; `Infinity` pieces unless told. */
export function board(
  [thickness, width, length]: readonly [number, number, number],
  amount: number,
  more: Partial<Stock> = {},
): Stock {
  return {
    name: `${thickness} x ${width} x ${length}${more.grade === 'clear' ? ' clear' : ''}`,
    thickness: thickness * IN,
    width: width * IN,
    length: length * IN,
    wood: 'cedar',
    grade: 'knotty',
    surface: 'surfaced',
    price: { amount, per: 'board' },
    ...more,
  };
}

/** A saw in inches: both kerfs 1/8 unless told, no trim, no limits. */
export function saw(more: Partial<Record<keyof Saw, number>> = {}): Saw {
  const inches = {
    ripKerf: 1 / 8,
    crossKerf: 1 / 8,
    planing: 0,
    trimHead: 0,
    trimTail: 0,
    shortestRip: 0,
    narrowestRip: 0,
    keepFrom: 12,
    ...more,
  };
  return Object.fromEntries(Object.entries(inches).map(([k, v]) => [k, v * IN])) as unknown as Saw;
}

/** The boards of a lumber yard: cedar in two grades and three sections, prices per board. */
export function yard(): Stock[] {
  const rows: [number, number, Grade, [number, number][]][] = [
    [
      1.5,
      3.5,
      'clear',
      [
        [8, 1150],
        [10, 1475],
        [12, 1795],
        [16, 2450],
      ],
    ],
    [
      1.5,
      3.5,
      'knotty',
      [
        [8, 595],
        [10, 760],
        [12, 925],
        [16, 1260],
      ],
    ],
    [
      1.5,
      5.5,
      'clear',
      [
        [8, 1720],
        [12, 2640],
        [16, 3560],
      ],
    ],
    [
      1.5,
      5.5,
      'knotty',
      [
        [8, 880],
        [12, 1360],
        [16, 1840],
      ],
    ],
    [
      0.75,
      5.5,
      'clear',
      [
        [6, 690],
        [8, 930],
        [12, 1420],
      ],
    ],
  ];
  return rows.flatMap(([t, w, grade, list]) =>
    list.map(([feet, cents]) => board([t, w, feet * 12], cents / 100, { grade })),
  );
}

/** Panels by outside size in inches and how many; frame, staves and slats by one rule; pieces of one size are one part. */
export function screens(list: readonly (readonly [number, number, number])[], slat = 1.5): Part[] {
  const pieces = new Map<string, { size: [number, number, number]; grade: Grade; count: number; spare: number }>();
  const add = (size: [number, number, number], grade: Grade, count: number): void => {
    const key = `${size.join('x')}${grade}`;
    const entry = pieces.get(key) ?? { size, grade, count: 0, spare: 0 };
    entry.count += count;
    pieces.set(key, entry);
  };
  for (const [width, height, n] of list) {
    const [w, h] = [width - 5, height - 5];
    add([1.5, 2.5, height], 'knotty', 2 * n);
    add([1.5, 2.5, w + 2], 'knotty', 2 * n);
    add([5 / 8, 5 / 8, h + 1], 'knotty', n * Math.max(3, Math.round(w / 6)));
    add([3 / 16, slat, w + 1], 'clear', n * Math.ceil(h / slat));
  }
  return [...pieces.values()].map(({ size, grade, count }, i) =>
    part(`P${i + 1}`, size, count, {
      grade,
      spare: grade === 'clear' ? Math.ceil((count * 115) / 100) - count : 0,
    }),
  );
}

const rack = (size: readonly [number, number, number], count: number, grade: Grade): Stock =>
  board(size, 0, { count, grade, trim: 0 });

/** Three shop jobs: one screen; twelve with a rack of offcuts; a hundred. */
export const shopJobs = {
  A: () => ({ parts: screens([[60, 48, 1]]), stock: yard(), offcuts: [] as Stock[], saw: saw({ trimHead: 1 / 4 }) }),
  B: () => ({
    parts: screens([
      [72, 36, 4],
      [68.5, 36, 3],
      [47.25, 36, 2],
      [60, 42, 2],
      [33.5, 42, 1],
    ]),
    stock: yard(),
    offcuts: [
      rack([1.5, 3.5, 41.5], 2, 'clear'),
      rack([1.5, 3.5, 29.25], 3, 'knotty'),
      rack([1.5, 3.5, 75], 1, 'knotty'),
      rack([1.5, 5.5, 50], 1, 'clear'),
      rack([0.75, 5.5, 66.5], 2, 'clear'),
      rack([1.5, 15 / 16, 70], 4, 'clear'),
    ],
    saw: saw({ trimHead: 1 / 4 }),
  }),
  C: () => ({
    parts: screens([
      [72, 48, 30],
      [96, 48, 22],
      [60, 48, 14],
      [66.75, 60, 10],
      [81.5, 60, 9],
      [45.25, 36, 6],
      [38.875, 36, 4],
      [54.5, 72, 3],
      [29.75, 72, 2],
    ]),
    stock: yard(),
    offcuts: [] as Stock[],
    saw: saw({ trimHead: 1 / 4 }),
  }),
};
