import type { CutPlan, Marks, Shares } from '@wattlewright/model';
import { boundText, moneyText, PLANS_JUDGED, sharePercents, volumeText } from '@wattlewright/model';
import { moved } from '../ink.ts';
import { lines } from '../layout/lines.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT, TEXT_HEADING, TEXT_LARGE } from '../layout/style.ts';
import { table } from '../layout/table.ts';
import { fractions, textWidth } from '../lettering.ts';
import type { Box, Drawing, Mark, Role } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import { sentence } from './leftout.ts';
import { leftovers } from './shopping.ts';

/** A plan for another blade, to set beside the plan itself. */
export interface BladeRow {
  /** Kerf of both blades, ready to read, such as `3⁄32 in`. */
  readonly kerf: string;
  readonly plan: CutPlan;
}

/** What `yieldBar` needs to know. */
export interface YieldOptions {
  readonly display: Marks;
  /** Such as `USD`; empty where the job names none. */
  readonly currency: string;
  /** Paper mm. */
  readonly width: number;
  /** The same parts planned for other blades; the plan's own kerf first. */
  readonly blades?: readonly BladeRow[];
  /** Room for a table of the leftovers under it all, paper mm; without it there is none. */
  readonly height?: number;
}

const SHARES: readonly {
  readonly key: keyof Shares;
  readonly name: string;
  readonly role: Role;
  readonly shade?: number;
}[] = [
  { key: 'parts', name: 'parts', role: 'wood-shade' },
  { key: 'dust', name: 'sawdust and shavings', role: 'wood-deep', shade: 0.35 },
  { key: 'kept', name: 'leftovers to keep', role: 'keep' },
  { key: 'waste', name: 'waste', role: 'waste' },
];

/** Height of the bar, and side of a swatch in its key, mm. */
const BAR = 12;
const SWATCH = 3;

/** From what is said of the plan down to the table of its leftovers, mm: its title between. */
const UNDER = 12;

/**
 * What becomes of the wood, as a bar of four shares in whole percent that make 100, with a key; under it how good the plan
 * is in words, what other blades would give, and the leftovers to keep where they have room.
 */
export function yieldBar(plan: CutPlan, { display, currency, width, blades = [], height = 0 }: YieldOptions): Drawing {
  const percent = sharePercents(plan.shares);
  const marks: Mark[] = [...(plan.boards.length > 0 ? bar(plan.shares, width) : [])];
  let v = plan.boards.length > 0 ? BAR + 3 : 0;
  const key = plan.boards.length > 0 ? keyInk(percent, width, v) : { marks: [], v1: 0 };
  marks.push(...key.marks);
  v = key.v1 + (plan.boards.length > 0 ? 3.5 : 0);
  const same = sameForAll(blades);
  const said = [
    saidOf(plan, { display, currency }),
    ...(plan.status === 'within' ? [PLANS_JUDGED] : []),
    ...(same === '' ? [] : [same]),
  ];
  for (const one of said.flatMap((text) => lines(text, width))) {
    marks.push(write('note', one, [0, v + ASCENT * TEXT], { height: TEXT }));
    v += LINE_STEP * TEXT;
  }
  v += DESCENT * TEXT;
  if (blades.length > 0 && same === '') {
    const drawing = bladeTable(blades, { display, currency, width });
    marks.push(...moved(drawing.marks, { du: 0, dv: v + 2 }));
    v += 2 + drawing.bounds.v1;
  }
  const [kept, ...more] = leftovers(plan, { display, width, height: 1000 });
  if (kept && more.length === 0 && v + UNDER + kept.bounds.v1 <= height) {
    v += UNDER;
    marks.push(
      write('title', kept.title, [0, v - 2.5], { height: TEXT_LARGE }),
      ...moved([...kept.marks], { du: 0, dv: v }),
    );
    v += kept.bounds.v1;
  }
  const told = SHARES.map(({ key: share, name }) => `${name} ${percent[share]} %`).join(', ');
  return {
    name: 'yield',
    title: 'What becomes of the wood',
    scale: 0,
    scaleText: '',
    marks,
    bounds: { u0: 0, v0: 0, u1: width, v1: v },
    alt: `Shares of the wood: ${told}. ${said[0]}`,
  };
}

/** How good the plan is, or that it leaves parts out: why stands in a table of its own. */
function saidOf(plan: CutPlan, told: Pick<YieldOptions, 'display' | 'currency'>): string {
  if (plan.status !== 'impossible') return boundText(plan, told);
  return plan.boards.length > 0
    ? 'Of the boards to buy; parts that they do not give are not in it.'
    : sentence(fractions(boundText(plan, told)));
}

/** The bar itself: each share as wide as it truly is, its percent inside where it has room. */
function bar(shares: Shares, width: number): Mark[] {
  const marks: Mark[] = [];
  let u = 0;
  for (const { key, role, shade } of SHARES) {
    const box: Box = { u0: u, v0: 0, u1: u + shares[key] * width, v1: BAR };
    u = box.u1;
    if (box.u1 - box.u0 < 1e-6) continue;
    const path = rectangle(box);
    marks.push(shade === undefined ? stroke(role, path) : { ...stroke(role, path), shade }, stroke('edge-light', path));
    if (key === 'waste')
      marks.push(stroke('grid', line([box.u0, 0], [box.u1, BAR])), stroke('grid', line([box.u0, BAR], [box.u1, 0])));
  }
  return marks;
}

/** Swatch, percent and name of each share, in a row or, where that is too wide, one under the other. */
function keyInk(percent: Shares, width: number, v: number): { marks: Mark[]; v1: number } {
  const entries = SHARES.map(({ key, name, role, shade }) => {
    const big = `${percent[key]} %`;
    const wide = SWATCH + 2 + Math.max(textWidth(big, TEXT_HEADING, 'semibold'), textWidth(name, TEXT));
    return { big, name, role, shade, wide };
  });
  const tall = ASCENT * TEXT_HEADING + LINE_STEP * TEXT + DESCENT * TEXT;
  const columns = Math.max(1, Math.min(4, Math.floor(width / (Math.max(...entries.map(({ wide }) => wide)) + 4))));
  const marks = entries.flatMap(({ big, name, role, shade }, i): Mark[] => {
    const u = ((i % columns) * width) / columns;
    const top = v + Math.floor(i / columns) * (tall + 3);
    const base = top + ASCENT * TEXT_HEADING;
    const path = rectangle({ u0: u, v0: base - TEXT_HEADING, u1: u + SWATCH, v1: base });
    return [
      shade === undefined ? stroke(role, path) : { ...stroke(role, path), shade },
      stroke('edge-light', path),
      write('title', big, [u + SWATCH + 2, base], { height: TEXT_HEADING }),
      write('note', name, [u + SWATCH + 2, base + LINE_STEP * TEXT], { height: TEXT }),
    ];
  });
  return { marks, v1: v + Math.ceil(entries.length / columns) * (tall + 3) - 3 };
}

/** In a line where no thinner blade saves anything, empty where one does or there is none. */
function sameForAll(blades: readonly BladeRow[]): string {
  const [own, ...others] = blades;
  if (!own || !others.every(({ plan }) => plan.status !== 'impossible' && saves(own.plan, plan) === 0)) return '';
  if (others.length === 0) return '';
  const kerfs = others.map(({ kerf }) => kerf).join(' or ');
  return `A blade that takes ${kerfs} instead of ${own.kerf} saves nothing: the same boards do.`;
}

/** What another plan costs less, 0 where that is nothing that can be told. */
function saves(own: CutPlan, plan: CutPlan): number {
  const saved = own.cost - plan.cost;
  return saved <= 0.005 ? 0 : saved;
}

/** What each blade costs in boards, and what it saves against the plan in hand, which every thinner blade can cut too. */
function bladeTable(blades: readonly BladeRow[], of: Pick<YieldOptions, 'display' | 'currency' | 'width'>): Drawing {
  const { display, currency, width } = of;
  const [own] = blades;
  const told = ({ costIs }: CutPlan, cost: number): string =>
    costIs === 'price' ? moneyText(cost, currency) : volumeText(cost, display);
  const rows = blades.map(({ kerf, plan }, i) => {
    if (plan.status === 'impossible' || own === undefined) return [kerf, 'cannot be cut', ''];
    if (i === 0) return [kerf, told(plan, plan.cost), 'this plan'];
    const saved = saves(own.plan, plan);
    if (saved === 0) return [kerf, told(plan, own.plan.cost), 'nothing: the same boards do'];
    const fewer = boardsIn(own.plan) - boardsIn(plan);
    const boards = fewer > 0 ? `${fewer} ${fewer === 1 ? 'board' : 'boards'}, ` : '';
    return [kerf, told(plan, plan.cost), `${boards}${told(plan, saved)}`];
  });
  return table({
    name: 'blades',
    title: '',
    alt: '',
    columns: [
      { title: 'Blade takes' },
      { title: blades.some(({ plan }) => plan.costIs === 'wood') ? 'Wood bought' : 'Boards cost', align: 'right' },
      { title: 'Saves' },
    ],
    rows,
    width,
  });
}

function boardsIn({ shopping }: CutPlan): number {
  return shopping.reduce((sum, { count }) => sum + count, 0);
}
