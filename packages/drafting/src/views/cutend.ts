import { boxOf, pointsOf, union } from '../ink.ts';
import { grown, overlaps } from '../layout/clearance.ts';
import { type NoteTarget, placeNotes } from '../layout/notes.ts';
import { TEXT, TEXT_LARGE } from '../layout/style.ts';
import type { Picture } from '../layout/table.ts';
import { textBox, textWidth } from '../lettering.ts';
import type { Box, Mark, TextMark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import { view, viewBox } from '../view.ts';
import type { Rip, RippedLength, SectionBox, Strip } from './cutboard.ts';
import { setBy } from './cutrips.ts';

/** What `endView` needs to know. */
export interface EndViewOptions {
  readonly ripped: RippedLength;
  /** Paper length over real length. */
  readonly ratio: number;
  /** Number of the fence setting that a rip is made at. */
  readonly numberOf: (rip: Rip) => number;
}

/** Thickness of a fence as drawn, its gap to the wood, and how far it runs past it, paper mm. */
const FENCE = { thick: 1.8, gap: 0.7, past: 3 };

/** Grey of a blade at the size of an end view: dark, yet a leader's line shows on it. */
const BLADE = 0.35;

/**
 * A length of wood seen from its left end, ready to be ripped: strips with their letters, blades to scale with the numbers
 * of their fence settings, waste crossed out. The fence is at the left, and below for wood that stands on edge.
 */
export function endView({ ripped, ratio, numberOf }: EndViewOptions): Picture {
  const at = view(ratio);
  const paper = ({ x, y, width, height }: SectionBox): Box => viewBox(at, [x, y], [x + width, y + height]);
  const outline = paper(ripped.box);
  const lettered = ripped.strips.map((strip) => ({
    strip,
    box: paper(strip.box),
    text: letters(strip, paper(strip.box)),
  }));
  const fences = fenceInk(ripped, outline);
  const numbers = bladeNumbers(ripped.rips, { outline, paper, numberOf, left: fences.bounds.u0 });
  const signs = fenceSigns(ripped.rips, fences, { outline, numbers });
  const marks: Mark[] = [
    ...lettered.flatMap(({ strip, box }) => stripFace(strip, box)),
    ...ripped.rips.map(({ blade }) => ({ ...stroke('blade', rectangle(paper(blade))), shade: BLADE })),
    stroke('edge', rectangle(outline)),
    ...lettered.flatMap(({ text }) => text ?? []),
    ...fences.marks,
    ...numbers,
    ...signs,
  ];
  const texts = [...numbers, ...signs].map(textBox);
  const around = union([outline, fences.bounds, ...texts]);
  const targets = [
    ...unnumbered(ripped.rips, numbers, numberOf).map(
      (rip): NoteTarget => ({ at: onBlade(paper(rip.blade)), text: `${numberOf(rip)}` }),
    ),
    ...unlettered(lettered).map(({ strip, box }): NoteTarget => ({ at: middle(box), text: strip.letters.join(' ') })),
  ];
  if (targets.length === 0) return { marks, bounds: around };
  const inner = lettered.flatMap(({ text }) => (text ? [textBox(text)] : []));
  const notes = placeNotes({ around, targets, sides: ['right'], keepOut: [...texts, ...inner] });
  return { marks: [...marks, ...notes.marks], bounds: union([notes.bounds, boxOfPaths(notes.marks)]) };
}

const middle = ({ u0, v0, u1, v1 }: Box): [number, number] => [(u0 + u1) / 2, (v0 + v1) / 2];

/** Where a leader meets a blade: near its right or upper end, out of the way of letters. */
function onBlade({ u0, v0, u1, v1 }: Box): [number, number] {
  const [wide, tall] = [u1 - u0, v1 - v0];
  return wide > tall ? [u1 - Math.min(2, wide / 4), (v0 + v1) / 2] : [(u0 + u1) / 2, v0 + Math.min(2, tall / 4)];
}

function boxOfPaths(marks: readonly Mark[]): Box {
  return boxOf(marks.flatMap((mark) => (mark.kind === 'path' ? pointsOf(mark.path) : [])));
}

function stripFace({ letters: own }: Strip, box: Box): Mark[] {
  const outline = rectangle(box);
  if (own.length > 0) return [stroke('wood', outline, own[0]), stroke('edge-light', outline, own[0])];
  return [
    stroke('waste', outline),
    stroke('grid', line([box.u0, box.v0], [box.u1, box.v1])),
    stroke('grid', line([box.u0, box.v1], [box.u1, box.v0])),
  ];
}

/** The letters of a strip's parts in the middle of its end, along its longer side where that alone has room. */
function letters({ letters: own }: Strip, box: Box): TextMark | undefined {
  const text = own.join(' ');
  if (text === '') return undefined;
  const [wide, tall] = [box.u1 - box.u0, box.v1 - box.v0];
  const [u, v] = middle(box);
  const more = { anchor: 'middle' as const, ...(own[0] === undefined ? {} : { of: own[0] }) };
  const fits = (height: number, along: number, across: number): boolean =>
    textWidth(text, height, 'semibold') + 1.4 <= along && height + 1 <= across;
  for (const height of [TEXT_LARGE, TEXT])
    if (fits(height, wide, tall)) return write('title', text, [u, v + height / 2], { ...more, height });
  for (const height of [TEXT_LARGE, TEXT])
    if (fits(height, tall, wide)) return write('title', text, [u + height / 2, v], { ...more, height, angle: 90 });
  return undefined;
}

/** One strip of each sort that has no room for its letters. */
function unlettered<T extends { readonly strip: Strip; readonly text: TextMark | undefined }>(all: readonly T[]): T[] {
  const seen = new Set<string>();
  return all.filter(({ strip, text }) => {
    const key = strip.letters.join(' ');
    if (text !== undefined || key === '' || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function fenceInk({ rips }: RippedLength, outline: Box): { marks: Mark[]; bounds: Box; left?: Box; below?: Box } {
  const { thick, gap, past } = FENCE;
  const { u0, v0, u1, v1 } = outline;
  const left = { u0: u0 - gap - thick, v0: v0 - past, u1: u0 - gap, v1 };
  const below = { u0, v0: v1 + gap, u1: u1 + past, v1: v1 + gap + thick };
  const flat = rips.some(({ axis }) => axis === 'width');
  const edge = rips.some(({ axis }) => axis === 'thickness');
  const boxes = [...(flat ? [left] : []), ...(edge ? [below] : [])];
  return {
    marks: boxes.flatMap((box) => [stroke('wood-deep', rectangle(box)), stroke('edge-light', rectangle(box))]),
    bounds: union([outline, ...boxes]),
    ...(flat ? { left } : {}),
    ...(edge ? { below } : {}),
  };
}

/** The word beside each fence, outside the numbers. */
function fenceSigns(
  rips: readonly Rip[],
  fences: { left?: Box; below?: Box },
  { outline, numbers }: { readonly outline: Box; readonly numbers: readonly TextMark[] },
): TextMark[] {
  const signs: TextMark[] = [];
  const [u, v] = middle(outline);
  const named = (axis: Rip['axis']): string =>
    [...new Set(rips.filter((rip) => rip.axis === axis).map(setBy))].sort().join(' or ');
  if (fences.left) {
    const edge = Math.min(fences.left.u0, ...numbers.map((mark) => textBox(mark).u0));
    signs.push(write('label', named('width'), [edge - 1.4, v], { height: TEXT, angle: 90, anchor: 'middle' }));
  }
  if (fences.below) {
    const at = [u, fences.below.v1 + 1.2 + TEXT] as const;
    signs.push(write('label', named('thickness'), at, { height: TEXT, anchor: 'middle' }));
  }
  return signs;
}

/** Numbers outside the wood at the ends of blades that reach its edge: above it, right of it, or left of the fence. */
function bladeNumbers(
  rips: readonly Rip[],
  on: { outline: Box; paper: (box: SectionBox) => Box; numberOf: (rip: Rip) => number; left: number },
): TextMark[] {
  const { outline, paper, numberOf, left } = on;
  const placed: TextMark[] = [];
  for (const rip of rips) {
    const box = paper(rip.blade);
    const [u, v] = middle(box);
    const text = `${numberOf(rip)}`;
    const side = { height: TEXT } as const;
    const reaches = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;
    const tries: TextMark[] =
      rip.axis === 'width'
        ? [
            ...(reaches(box.v0, outline.v0)
              ? [write('label', text, [u, outline.v0 - 1.2], { ...side, anchor: 'middle' })]
              : []),
          ]
        : [
            ...(reaches(box.u1, outline.u1) ? [write('label', text, [outline.u1 + 1.2, v + TEXT / 2], side)] : []),
            ...(reaches(box.u0, outline.u0)
              ? [write('label', text, [left - 1.2, v + TEXT / 2], { ...side, anchor: 'end' })]
              : []),
          ];
    const free = tries.find((mark) => placed.every((one) => !overlaps(grown(textBox(one), 0.6), textBox(mark))));
    if (free) placed.push(free);
  }
  return placed;
}

/** The rip furthest to the right of each setting whose number stands nowhere yet. */
function unnumbered(rips: readonly Rip[], numbers: readonly TextMark[], numberOf: (rip: Rip) => number): Rip[] {
  const shown = new Set(numbers.map(({ text }) => text));
  const found = new Map<number, Rip>();
  const right = ({ blade }: Rip): number => blade.x + blade.width;
  for (const rip of rips) {
    const number = numberOf(rip);
    const known = found.get(number);
    if (!shown.has(`${number}`) && (known === undefined || right(rip) > right(known))) found.set(number, rip);
  }
  return [...found.values()];
}
