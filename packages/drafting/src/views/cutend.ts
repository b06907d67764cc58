import { union } from '../ink.ts';
import { TEXT, TEXT_LARGE } from '../layout/style.ts';
import type { Picture } from '../layout/table.ts';
import { textBox, textWidth } from '../lettering.ts';
import type { Box, Mark, TextMark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import { setBy } from './cutfence.ts';
import { lettersText } from './cutgives.ts';
import { namedRuns, type Run } from './cutruns.ts';
import type { Region, Rip, RippedLength, SectionBox, Stage } from './cutstages.ts';

/** What `stageView` needs to know. */
export interface StageViewOptions {
  readonly ripped: RippedLength;
  readonly stage: Stage;
  /** Paper length over real length. */
  readonly ratio: number;
  /** Number of the fence setting that a rip is made at. */
  readonly numberOf: (rip: Rip) => number;
}

/** Thickness of a fence as drawn and its gap to the wood, paper mm. */
const FENCE = { thick: 1.8, gap: 0.7 };

/** Side of the thin-rip stop as drawn, paper mm. */
const STOP = 1.6;

/** Grey of a blade at the size of an end view: dark, yet a line shows on it. */
const BLADE = 0.35;

/** Least side of waste that is crossed out, paper mm: smaller it would be a speckle, and is named instead. */
const CROSSED = 2;

/** Least side of waste that is named, paper mm: less is dust. */
const DUST = 0.3;

/** Room that numbers and names may take beside the wood, paper mm. */
const BESIDE = 12;

/**
 * A piece seen from its left end as it lies on the saw before its first rip: strips with their letters, blanks with the
 * setting at which they are ripped again, blades to scale with the numbers of their settings above, waste crossed out,
 * leftovers named `keep`.
 * Fence and thin-rip stop stand beside it as its first setting has them.
 */
export function stageView({ ripped, stage, ratio, numberOf }: StageViewOptions): Picture {
  const rips = stage.rips.map((i) => ripped.rips[i] as Rip);
  const paper = onSaw(stage, ratio);
  const outline = paper(stage.piece);
  const regions = onceNamed(
    stage.regions.map((region) => {
      const box = paper(region.box);
      const name = isNamedWaste(region, box) ? 'waste' : nameOf(region, ripped, numberOf);
      return { region, box, name, text: inside(name, box, region.letters[0]) };
    }),
  );
  const blades = rips.map((rip) => ({ box: paper(rip.blade), name: `${numberOf(rip)}` }));
  const room: readonly [number, number] = [outline.u0 - BESIDE, outline.u1 + BESIDE];
  const above = namedRuns(bladeRuns(blades), outline.v0, room, { up: true });
  const below = namedRuns(regionRuns(regions), outline.v1, room);
  const guides = guideInk(rips, outline);
  const marks: Mark[] = [
    ...regions.flatMap(({ region, box }) => face(region, box)),
    ...blades.map(({ box }) => ({ ...stroke('blade', rectangle(box)), shade: BLADE })),
    stroke('edge', rectangle(outline)),
    ...regions.flatMap(({ text }) => text ?? []),
    ...guides.marks,
    ...above.marks,
    ...below.marks,
  ];
  const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
  const reach: Box = { ...outline, v0: above.v1, v1: below.v1 };
  return { marks, bounds: union([outline, reach, guides.bounds, ...texts]) };
}

/** From the section of the board to paper: the fence at the left, the saw's table below. */
function onSaw({ axis, piece }: Stage, ratio: number): (box: SectionBox) => Box {
  return ({ x, y, width, height }) => {
    const [along, across, a, b] =
      axis === 'width' ? [x - piece.x, y - piece.y, width, height] : [y - piece.y, x - piece.x, height, width];
    return { u0: along * ratio, v0: across * ratio, u1: (along + a) * ratio, v1: (across + b) * ratio };
  };
}

/** Letters of a strip, or where a blank is ripped again. */
function nameOf(region: Region, { rips, stages }: RippedLength, numberOf: (rip: Rip) => number): string {
  const { names, stage } = region;
  if (stage === undefined) return lettersText(names);
  return `rip at ${numberOf(rips[stages[stage]?.rips[0] as number] as Rip)}`;
}

const leastSide = ({ u0, v0, u1, v1 }: Box): number => Math.min(u1 - u0, v1 - v0);

const isWaste = ({ names, stage }: Region): boolean => names.length === 0 && stage === undefined;

function isNamedWaste(region: Region, box: Box): boolean {
  return isWaste(region) && leastSide(box) < CROSSED && leastSide(box) >= DUST;
}

function face(region: Region, box: Box): Mark[] {
  const outline = rectangle(box);
  const { letters, kept } = region;
  if (kept) return [stroke('keep', outline), stroke('edge-light', outline)];
  if (!isWaste(region)) return [stroke('wood', outline, letters[0]), stroke('edge-light', outline, letters[0])];
  if (leastSide(box) < CROSSED) return [stroke('waste', outline)];
  return [
    stroke('waste', outline),
    stroke('grid', line([box.u0, box.v0], [box.u1, box.v1])),
    stroke('grid', line([box.u0, box.v1], [box.u1, box.v0])),
  ];
}

/** A name in the middle of a region, along its longer side where that alone has room. */
function inside(text: string, { u0, v0, u1, v1 }: Box, of: string | undefined): TextMark | undefined {
  if (text === '') return undefined;
  const [wide, tall, u, v] = [u1 - u0, v1 - v0, (u0 + u1) / 2, (v0 + v1) / 2];
  const more = { anchor: 'middle' as const, ...(of === undefined ? {} : { of }) };
  const fits = (height: number, along: number, across: number): boolean =>
    textWidth(text, height, 'semibold') + 1.4 <= along && height + 1 <= across;
  for (const height of [TEXT_LARGE, TEXT])
    if (fits(height, wide, tall)) return write('title', text, [u, v + height / 2], { ...more, height });
  for (const height of [TEXT_LARGE, TEXT])
    if (fits(height, tall, wide)) return write('title', text, [u + height / 2, v], { ...more, height, angle: 90 });
  return undefined;
}

/** Neighbouring blades of one setting under one bracket with its number. */
function bladeRuns(blades: readonly { readonly box: Box; readonly name: string }[]): Run[] {
  const runs: { u0: number; u1: number; text: string }[] = [];
  for (const { box, name } of blades) {
    const last = runs.at(-1);
    if (last?.text === name) last.u1 = box.u1;
    else runs.push({ u0: box.u0, u1: box.u1, text: name });
  }
  return runs;
}

interface Named {
  readonly region: Region;
  readonly box: Box;
  readonly name: string;
  readonly text: TextMark | undefined;
}

/** From this many neighbours on a name that stands on end in each is written once for all. */
const ROW = 3;

/** Names left out of neighbours that are alike and so narrow that names stand on end in them. */
function onceNamed(regions: readonly Named[]): Named[] {
  const onEnd = ({ text }: Named): boolean => text?.angle === 90;
  return regions.map((one, i) => {
    if (!onEnd(one)) return one;
    const alike = (step: number): number => {
      let n = 0;
      for (let at = regions[i + step]; at !== undefined && onEnd(at) && at.name === one.name; ) {
        n += 1;
        at = regions[i + step * (n + 1)];
      }
      return n;
    };
    return alike(-1) + 1 + alike(1) < ROW ? one : { ...one, text: undefined };
  });
}

/** Neighbours that are alike and have no room for their names, to be named under the wood: `10 × D`. */
function regionRuns(regions: readonly Named[]): Run[] {
  const runs: { u0: number; u1: number; name: string; count: number; of: string | undefined; last: number }[] = [];
  regions.forEach(({ region, box, name, text }, i) => {
    if (name === '' || text !== undefined) return;
    const before = runs.at(-1);
    if (before?.name === name && before.last === i - 1) {
      Object.assign(before, { u1: box.u1, count: before.count + 1, last: i });
    } else runs.push({ u0: box.u0, u1: box.u1, name, count: 1, of: region.letters[0], last: i });
  });
  return runs.map(({ u0, u1, name, count, of }) => ({
    u0,
    u1,
    text: count > 1 ? `${count} × ${name}` : name,
    ...(of === undefined ? {} : { of }),
  }));
}

/** In words, where later rips of a stage go by the stop and the first by the fence, or the other way round. */
export function laterGuides({ rips: own }: Stage, { rips }: RippedLength, numberOf: (rip: Rip) => number): string {
  const [first, ...later] = own.map((i) => rips[i] as Rip);
  const other = later.filter((rip) => first && setBy(rip) !== setBy(first));
  const numbers = [...new Set(other.map(numberOf))].join(', ');
  if (!first || numbers === '') return '';
  return setBy(first) === 'stop' ? `at ${numbers} fence left` : `at ${numbers} stop left`;
}

/** Fence at the left; for thin strips the stop at the left and the fence at the right: those of the first rip. */
function guideInk(rips: readonly Rip[], { u0, v0, u1, v1 }: Box): { marks: Mark[]; bounds: Box } {
  const { thick, gap } = FENCE;
  const kinds = new Set(rips.slice(0, 1).map(setBy));
  const middle = (v0 + v1) / 2;
  // On end beside the wood; level, away from it, where the wood is too thin for that.
  const word = (text: string, side: -1 | 1, u: number): TextMark[] =>
    textWidth(text, TEXT) <= v1 - v0
      ? [write('label', text, [side < 0 ? u : u + TEXT, middle], { height: TEXT, angle: 90, anchor: 'middle' })]
      : [write('label', text, [u, middle + TEXT / 2], { height: TEXT, anchor: side < 0 ? 'end' : 'start' })];
  const bar = (left: number): Box => ({ u0: left, v0, u1: left + thick, v1 });
  if (kinds.size !== 1) return { marks: [], bounds: { u0, v0, u1, v1 } };
  const fence = bar(kinds.has('fence') ? u0 - gap - thick : u1 + gap);
  const ink = [stroke('wood-deep', rectangle(fence)), stroke('edge-light', rectangle(fence))];
  if (kinds.has('fence')) {
    return { marks: [...ink, ...word('fence', -1, fence.u0 - 1.4)], bounds: fence };
  }
  const stop: Box = { u0: u0 - gap - STOP, v0: middle - STOP / 2, u1: u0 - gap, v1: middle + STOP / 2 };
  const marks = [
    ...ink,
    stroke('blade', rectangle(stop)),
    ...word('fence', 1, fence.u1 + 1.2),
    ...word('thin-rip stop', -1, stop.u0 - 1.4),
  ];
  return { marks, bounds: union([fence, stop]) };
}
