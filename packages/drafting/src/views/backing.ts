import { type Panel, type Part, type ScreenUse, screenDetails } from '@wattlewright/model';
import type { NoteTarget } from '../layout/notes.ts';
import type { Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, polyline, rectangle } from '../path.ts';
import { type View, viewBox } from '../view.ts';
import { breakLine, cutFace, seenFace } from './grain.ts';
import { partOf } from './partof.ts';
import type { Stretch } from './passes.ts';
import { planBox } from './weavesectionink.ts';

/** Grey of a post, a wall or a window frame that is there already. */
export const THERE_TONE = 0.9;

/** How deep and how far past the stile a wall or frame is drawn in a section, paper mm: its real size is nothing of the panel's. */
const SHOWN = 4;
const PAST = 3;

/** What a screen is fixed to. */
export interface Backing {
  /** Its face, z in mm. */
  readonly face: number;
  readonly name: string;
  /** Middles of the stand-off blocks, y in mm, and half their height; none where the stiles lie on it. */
  readonly blocks: readonly { readonly y: number; readonly right: boolean }[];
  readonly half: number;
}

/** The wall or frame behind a screen; undefined for panels that stand on feet, hang, or are held between posts. */
export function backingOf(panel: Panel): Backing | undefined {
  const { details, stile, outside } = panel;
  if (details.use !== 'screen' || details.mounting === 'posts') return undefined;
  const { blocks } = screenDetails(panel);
  return {
    face: -stile.depth / 2 - details.standoff,
    name: backingName(details),
    blocks: (blocks?.places ?? []).map(({ x, y }) => ({ y, right: x > outside.width / 2 })),
    half: (blocks?.height ?? 0) / 2,
  };
}

/** What a screen is fixed to is called. */
export function backingName({ into, glass }: ScreenUse): string {
  if (into === 'masonry') return 'Wall, plugged';
  return glass === undefined ? 'Wall or frame' : 'Window frame';
}

/** Where the backing is drawn in plan. */
export interface BackingPlan {
  readonly panel: Panel;
  readonly parts: readonly Part[];
  readonly plan: View;
  readonly scale: number;
  /** Height of the plane, y in mm: a block that it passes is cut, one under it is seen. */
  readonly y: number;
  /** From where to where the plan reaches, mm from the panel's left edge. */
  readonly stretch?: Stretch;
  /** Breaks deep blocks off and leaves what is behind them to the detail of the fixing. */
  readonly brief?: boolean;
}

/** How deep a block is drawn that is broken off, mm. */
const BLOCK_SHOWN = 10;

/** Ink behind the panel, and notes on it. */
export interface BackingInk {
  readonly marks: readonly Mark[];
  readonly notes: readonly NoteTarget[];
}

/** Blocks and wall or frame behind the stiles, looking down. */
export function backingPlan({ panel, parts, plan, scale, y, stretch, brief = false }: BackingPlan): BackingInk {
  const backing = backingOf(panel);
  if (!backing) return { marks: [], notes: [] };
  const { stile, outside } = panel;
  const { face, blocks, half, name } = backing;
  const [from, to] = stretch ?? [0, outside.width];
  const [past, deep] = [PAST / scale, SHOWN / scale];
  const of = partOf(parts, panel, 'stand-off block')?.letter;
  const sides = [false, true].flatMap((right) => {
    const [x0, x1] = right ? [outside.width - stile.width, outside.width] : [0, stile.width];
    if (x0 < from - 1e-6 || x1 > to + 1e-6) return [];
    const under = blocks.filter((block) => block.right === right && block.y - half < y);
    const isCut = under.some((block) => block.y + half > y);
    return [{ x0, x1, isSeen: under.length > 0, isCut }];
  });
  const back = -stile.depth / 2;
  const broken = brief && sides.some(({ isSeen }) => isSeen) && back - face > 1.5 * BLOCK_SHOWN;
  const shown = broken ? back - BLOCK_SHOWN : face;
  const marks = sides.flatMap(({ x0, x1, isSeen, isCut }): Mark[] => {
    const block = rectangle(planBox(plan, [x0, x1], [shown, back]));
    const [a, b] = [x0 - past, x1 + past];
    const open = polyline([plan(x0, shown), plan(x0, back), plan(x1, back), plan(x1, shown)]);
    if (broken)
      return [
        ...(isCut ? cutFace(block, { grain: 'end', inked: open, ...(of === undefined ? {} : { of }) }) : []),
        ...(isCut ? [] : [stroke('wood', block, of), stroke('edge-light', open, of)]),
        breakLine(plan(x0, shown), plan(x1, shown)),
      ];
    return [
      { ...stroke('paper', rectangle(planBox(plan, [a, b], [face - deep, face]))), shade: THERE_TONE },
      stroke('edge-light', line(plan(a, face), plan(b, face))),
      breakLine(plan(a, face - deep), plan(a, face), 0.6),
      breakLine(plan(b, face - deep), plan(b, face), 0.6),
      ...(isCut ? cutFace(block, { grain: 'end', ...(of === undefined ? {} : { of }) }) : []),
      ...(isSeen && !isCut ? seenFace(block, of) : []),
    ];
  });
  const last = sides.at(-1);
  const notes: NoteTarget[] = last
    ? [
        ...(broken ? [] : [{ at: plan(last.x1 - stile.width * 0.3, face - deep / 2), text: name }]),
        ...(last.isSeen
          ? [
              {
                at: plan(last.x1 - stile.width * 0.3, (shown + back) / 2),
                text: `Stand-off block, ${last.isCut ? 'cut' : 'below'}${broken ? `; ${name.toLowerCase()} behind it: see the detail of the fixing` : ''}`,
              },
            ]
          : []),
      ]
    : [];
  return { marks, notes };
}

/** What of the left stile's blocks, and of the wall or frame, an upright section shows between two heights. */
export function backingUpright(
  panel: Panel,
  parts: readonly Part[],
  { at, span }: { readonly at: View; readonly span: readonly [from: number, to: number] },
): BackingInk {
  const backing = backingOf(panel);
  if (!backing) return { marks: [], notes: [] };
  const { face, blocks, half, name } = backing;
  const { stile, outside } = panel;
  const [low, high] = [Math.max(0, span[0]), Math.min(outside.height, span[1])];
  const of = partOf(parts, panel, 'stand-off block')?.letter;
  const shown = blocks
    .filter(({ right }) => !right)
    .map(({ y }) => [Math.max(y - half, low), Math.min(y + half, high)] as const)
    .filter(([from, to]) => to - from > 1e-6);
  return {
    marks: [
      ...shown.flatMap(([from, to]) => seenFace(rectangle(viewBox(at, [face, from], [-stile.depth / 2, to])), of)),
      stroke('neighbour', line(at(face, low), at(face, high))),
    ],
    notes: [
      ...shown.slice(0, 1).map(([from, to]) => ({
        at: at((face - stile.depth / 2) / 2, (from + to) / 2),
        text: 'Stand-off block at the left stile, beyond',
      })),
      { at: at(face, low + (high - low) * 0.7), text: name, end: 'arrow' as const },
    ],
  };
}
