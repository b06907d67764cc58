import type { Saw, Stock } from '../cutting/stock.ts';
import { formatLength, INCH, type Marks } from '../length.ts';
import { woodNamed } from '../wood/species.ts';
import type { Wood } from '../wood/wood.ts';
import type { Assumptions } from './assume.ts';
import { noSuchWood } from './completewood.ts';
import type { Fault } from './context.ts';
import type { JobFile, StockFile } from './file.ts';
import type { FieldPath } from './problem.ts';

interface Context {
  readonly display: Marks;
  readonly assume: Assumptions;
  readonly faults: Fault[];
  readonly woods: readonly Wood[];
  /** Names of the woods that the panels ask for. */
  readonly used: readonly string[];
}

/** A board as written, complete. Without a wood it is of the one wood that the panels ask for. */
export function completeStock(
  board: StockFile,
  at: FieldPath,
  { display, assume, faults, woods, used }: Context,
): Stock {
  const named =
    board.wood === undefined ? undefined : (woods.find(({ name }) => name === board.wood) ?? woodNamed(board.wood));
  if (board.wood !== undefined && !named)
    faults.push({ path: [...at, 'wood'], message: noSuchWood(board.wood, woods) });
  if (board.wood === undefined && used.length > 1) {
    faults.push({ path: [...at, 'wood'], message: `say which wood this board is: the panels use ${used.join(', ')}` });
  }
  const [thickness, width] = [Math.min(board.thickness, board.width), Math.max(board.thickness, board.width)];
  const name = [thickness, width].map((side) => formatLength(side, display)).join(' x ');
  return {
    name: board.name ?? `${name}, ${formatLength(board.length, display, { named: true })}`,
    thickness,
    width,
    length: board.length,
    wood: named?.name ?? used[0] ?? '',
    grade: assume.value([...at, 'grade'], board.grade, 'clear', 'a board without a grade is taken as clear'),
    surface: board.surface ?? 'surfaced',
    ...(board.price !== undefined && { price: { amount: board.price, per: board.per ?? 'board' } }),
    ...(board.count !== undefined && { count: board.count }),
    ...(board.trim !== undefined && { trim: board.trim }),
  };
}

/**
 * Boards to plan with when the job names none: dressed sizes of PS 20 (American Softwood Lumber Standard) in the lengths
 * that yards hold (from memory), in each wood of the job, without prices.
 */
export function customaryStock({ display, assume, used }: Context): Stock[] {
  const sections = [
    ['2x4', 1.5, 3.5],
    ['2x6', 1.5, 5.5],
    ['1x6', 0.75, 5.5],
  ] as const;
  const lengths = display.unit === 'in' ? [8, 10, 12, 16].map((feet) => feet * 12 * INCH) : [2400, 3000, 3600, 4800];
  const round = (side: number) => (display.unit === 'in' ? side * INCH : Math.round(side * INCH));
  assume.note(
    ['stock'],
    sections.map(([name]) => name).join(', '),
    'no boards were named: PS 20 dressed sizes, clear, without prices, so the plan uses the least wood',
  );
  return used.flatMap((wood) =>
    sections.flatMap(([name, thickness, width]) =>
      lengths.map(
        (length): Stock => ({
          name: `${name}, ${display.unit === 'in' ? `${length / INCH / 12} ft` : `${length / 1000} m`}${used.length > 1 ? `, ${wood}` : ''}`,
          thickness: round(thickness),
          width: round(width),
          length,
          wood,
          grade: 'clear',
          surface: 'surfaced',
        }),
      ),
    ),
  );
}

/** The saw and the shop's rules, complete; common practice, no source. */
export function completeSaw(saw: NonNullable<JobFile['saw']>, { display, assume }: Context): Saw {
  const inch = display.unit === 'in';
  const kerf = inch ? INCH / 8 : 3;
  const thin = saw.kerf ?? kerf;
  if (saw.kerf === undefined && (saw.rip === undefined || saw.cross === undefined)) {
    assume.length(['saw', 'kerf'], undefined, kerf, 'a full-kerf blade');
  }
  const planing = assume.length(
    ['saw', 'planing'],
    saw.planing,
    0,
    'slats are used as sawn, but where the cut sheets plane them',
  );
  return {
    ripKerf: saw.rip ?? thin,
    crossKerf: saw.cross ?? thin,
    planing,
    dressing: assume.length(
      ['saw', 'dressing'],
      saw.dressing,
      Math.max(planing, inch ? INCH / 16 : 2),
      'a rough face is not flat and clean before that much is off',
    ),
    shaving: assume.length(
      ['saw', 'shaving'],
      saw.shaving,
      inch ? INCH / 16 : 1.5,
      'up to this much is planed off a side, more is ripped off',
    ),
    trimHead: assume.length(
      ['saw', 'trim', 'head'],
      saw.trim?.head,
      inch ? INCH / 4 : 6,
      'one end is squared before measuring',
    ),
    trimTail: assume.length(['saw', 'trim', 'tail'], saw.trim?.tail, 0, 'the far end falls off with the rest'),
    shortestRip: assume.length(
      ['saw', 'shortest'],
      saw.shortest,
      inch ? 12 * INCH : 300,
      'shorter pieces are not ripped on a table saw',
    ),
    narrowestRip: assume.length(
      ['saw', 'narrowest'],
      saw.narrowest,
      inch ? INCH / 2 : 12,
      'narrower pieces are not ripped again',
    ),
    deepest: assume.length(['saw', 'deepest'], saw.deepest, inch ? 3 * INCH : 75, 'the usual blade reaches no deeper'),
    keepFrom: assume.length(['saw', 'keep'], saw.keep, inch ? 24 * INCH : 600, 'shorter leftovers are burnt'),
  };
}

/** How much longer stiles and staves are cut at first; common practice, no source. */
export function completeLong(saw: NonNullable<JobFile['saw']>, { display, assume }: Context): number {
  const long = display.unit === 'in' ? INCH : 25;
  return assume.length(
    ['saw', 'long'],
    saw.long,
    long,
    'stiles and staves are cut to length once the slats are measured',
  );
}
