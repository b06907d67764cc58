import type { Marks } from '../length.ts';
import type { Part } from '../parts/part.ts';
import type { Saw, Stock } from './stock.ts';
import { gcd, ticksDown, ticksUp } from './ticks.ts';

/** Pieces of one size as first cut, wood and grade, whatever they are called; sizes in ticks. */
export interface Demand {
  readonly thickness: number;
  readonly width: number;
  readonly length: number;
  readonly wood: string;
  readonly clear: boolean;
  readonly need: number;
  /** The parts that share this size, with the pieces wanted of each. */
  readonly parts: readonly { readonly letter: string; readonly name: string; readonly need: number }[];
}

/** A section, grade and wood of stock: a room of its own with the pieces it may serve; sizes after rough allowance. */
export interface BoardClass {
  readonly thickness: number;
  readonly width: number;
  readonly wood: string;
  readonly clear: boolean;
}

/** One kind of board or offcut. */
export interface Board {
  /** Index among the stock, or among the offcuts where `rack` is true. */
  readonly index: number;
  readonly rack: boolean;
  readonly name: string;
  readonly class: number;
  readonly length: number;
  readonly trimHead: number;
  readonly trimTail: number;
  /** Length between squared ends plus one crosscut kerf, so that pieces pack as length + kerf. */
  readonly room: number;
  /** Whole number: hundredths of the price's unit, or mm3 of wood where prices are missing. */
  readonly cost: number;
  /** Volume of the whole board as given, mm3. */
  readonly volume: number;
  readonly most: number;
}

/** A job of cutting in whole numbers. */
export interface Problem {
  readonly demands: readonly Demand[];
  readonly classes: readonly BoardClass[];
  readonly boards: readonly Board[];
  readonly crossKerf: number;
  /** Lost between two neighbours of a rip: kerf and two planed faces. */
  readonly ripLoss: number;
  /** Planed off each sawn face. */
  readonly planing: number;
  readonly shortestRip: number;
  readonly narrowestRip: number;
  /** Infinity where there is no limit. */
  readonly deepestRip: number;
  /** What a plane takes off a side instead of a rip; 0 where everything is ripped. */
  readonly shaving: number;
  readonly keepFrom: number;
  readonly costIs: 'price' | 'wood';
  /** Every cost is a whole multiple of it. */
  readonly costStep: number;
  /** How lengths are told; mm where absent. */
  readonly display?: Marks;
}

/** What a cutting plan is made from. */
export interface CuttingInput {
  readonly parts: readonly Part[];
  /** Boards that can be bought. */
  readonly stock: readonly Stock[];
  /** The rack: pieces left from before; they cost nothing, and each is there `count` times, once where that is absent. */
  readonly offcuts: readonly Stock[];
  readonly saw: Saw;
  /** How lengths are told in a refusal; whole and half millimetres unless given. */
  readonly display?: Marks;
}

const FOOT = 304.8;
const BOARD_FOOT = FOOT * FOOT * 25.4;

/** Brings parts, stock and saw to whole numbers; parts of one size, wood and grade become one demand. */
export function problemOf({ parts, stock, offcuts, saw, display }: CuttingInput): Problem {
  const crossKerf = ticksUp(saw.crossKerf);
  const planing = ticksUp(saw.planing);
  const costIs = stock.every((s) => s.price !== undefined) ? 'price' : 'wood';
  const classes: BoardClass[] = [];
  const boards: Board[] = [];
  const add = (s: Stock, index: number, rack: boolean): void => {
    const sides = sidesOf(s, saw);
    const [trimHead, trimTail] = [ticksUp(s.trim ?? saw.trimHead), ticksUp(s.trim ?? saw.trimTail)];
    const length = ticksDown(s.length);
    const lost = (trimHead > 0 ? trimHead + crossKerf : 0) + (trimTail > 0 ? trimTail + crossKerf : 0);
    const most = s.count ?? (rack ? 1 : Number.POSITIVE_INFINITY);
    if (length - lost <= 0 || sides.thickness <= 0 || most <= 0) return;
    boards.push({
      index,
      rack,
      name: s.name,
      class: classIndex(classes, { ...sides, wood: s.wood, clear: s.grade === 'clear' }),
      length,
      trimHead,
      trimTail,
      room: length - lost + crossKerf,
      cost: rack ? 0 : costOf(s, costIs),
      volume: s.length * s.width * s.thickness,
      most,
    });
  };
  offcuts.forEach((s, i) => {
    add(s, i, true);
  });
  stock.forEach((s, i) => {
    add(s, i, false);
  });
  return {
    demands: demandsOf(parts),
    classes,
    boards,
    crossKerf,
    ripLoss: ticksUp(saw.ripKerf) + 2 * planing,
    planing,
    shortestRip: ticksUp(saw.shortestRip),
    narrowestRip: ticksUp(saw.narrowestRip),
    deepestRip: saw.deepest === undefined ? Number.POSITIVE_INFINITY : ticksDown(saw.deepest),
    shaving: ticksDown(saw.shaving ?? 0),
    keepFrom: ticksUp(saw.keepFrom),
    costIs,
    costStep: boards.reduce((step, b) => gcd(step, b.cost), 0) || 1,
    ...(display && { display }),
  };
}

/** Section of a stock as it can be used, in ticks: rough stock loses two dressed faces on each side first. */
export function sidesOf(s: Stock, saw: Pick<Saw, 'planing' | 'dressing'>): { thickness: number; width: number } {
  const off = s.surface === 'rough' ? 2 * ticksUp(saw.dressing ?? saw.planing) : 0;
  const a = ticksDown(s.thickness) - off;
  const b = ticksDown(s.width) - off;
  return { thickness: Math.min(a, b), width: Math.max(a, b) };
}

/** Pieces wanted of a part: those the panels need and the spares. */
export function wanted(part: Part): number {
  return part.count + part.spare;
}

/** What one board costs, in hundredths or in mm3; priced by its actual sizes (1 board foot = 144 cubic inches). */
function costOf(s: Stock, costIs: 'price' | 'wood'): number {
  const volume = s.length * s.width * s.thickness;
  if (costIs === 'wood' || s.price === undefined) return Math.round(volume);
  const { amount, per } = s.price;
  const units = { board: 1, metre: s.length / 1000, foot: s.length / FOOT, 'board foot': volume / BOARD_FOOT }[per];
  return Math.round(amount * units * 100);
}

function classIndex(classes: BoardClass[], c: BoardClass): number {
  const at = classes.findIndex(
    (o) => o.thickness === c.thickness && o.width === c.width && o.wood === c.wood && o.clear === c.clear,
  );
  return at >= 0 ? at : classes.push(c) - 1;
}

function demandsOf(parts: readonly Part[]): Demand[] {
  const found = new Map<string, { -readonly [K in keyof Demand]: Demand[K] } & { parts: Demand['parts'][number][] }>();
  for (const part of parts) {
    const need = wanted(part);
    if (need === 0) continue;
    const [a, b, length] = [ticksUp(part.thickness), ticksUp(part.width), ticksUp(part.length + part.over)];
    const [thickness, width, clear] = [Math.min(a, b), Math.max(a, b), part.grade === 'clear'];
    const key = [part.wood, clear, thickness, width, length].join('|');
    const demand = found.get(key) ?? { thickness, width, length, wood: part.wood, clear, need: 0, parts: [] };
    demand.need += need;
    demand.parts.push({ letter: part.letter, name: part.name, need });
    found.set(key, demand);
  }
  // One order whatever order the parts came in, so that the plan does not depend on it.
  return [...found.entries()]
    .sort(([k, a], [l, b]) => a.thickness - b.thickness || a.width - b.width || b.length - a.length || (k < l ? -1 : 1))
    .map(([, d]) => ({ ...d, parts: [...d.parts].sort((a, b) => (a.letter < b.letter ? -1 : 1)) }));
}
