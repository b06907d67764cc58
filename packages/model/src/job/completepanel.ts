import { INCH, type Marks } from '../length.ts';
import type { NamedWeave } from '../weave/pattern.ts';
import { completeFit, completeSpacing } from './completefit.ts';
import { completeUse } from './completeuse.ts';
import { completeWood } from './completewood.ts';
import type { PanelContext } from './context.ts';
import type { PanelFile } from './file.ts';
import type { OpeningGaps, PanelSpec, UseDetails } from './job.ts';
import type { FieldPath } from './problem.ts';
import { slatDefaults } from './slatdefaults.ts';

/** A panel laid over what every panel shares: groups merge field by field, the panel's own word wins. */
export function mergePanel(every: PanelFile, panel: PanelFile): PanelFile {
  const merged: Record<string, unknown> = { ...every };
  for (const [key, own] of Object.entries(panel)) {
    const shared = merged[key];
    merged[key] = isGroup(own) && isGroup(shared) ? { ...shared, ...own } : own;
  }
  if (panel.size && !panel.opening) delete merged.opening;
  if (panel.opening && !panel.size) delete merged.size;
  if (panel.fit) merged.fit = panel.fit.vary === every.fit?.vary ? merged.fit : panel.fit;
  if (panel.weave) merged.weave = panel.weave.pattern || panel.weave.rows ? panel.weave : merged.weave;
  return merged as PanelFile;
}

function isGroup(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** One panel with every default filled in. Sizes of the defaults are common practice, no source. */
export function completePanel(file: PanelFile & { name: string }, context: PanelContext): PanelSpec {
  const { at, display, assume } = context;
  const inch = display.unit === 'in';
  const size = (field: FieldPath, given: number | undefined, inches: number, mm: number, reason: string) =>
    assume.length([...at, ...field], given, inch ? inches * INCH : mm, reason);
  const details = completeUse(file, context);
  const { outside, opening } = outsideSize(file, details, context);
  const railDepth = size(['rail', 'depth'], file.rail?.depth, 1.5, 38, 'the thickness of dressed framing boards');
  const fit = completeFit(file, context);
  const rail = {
    height: size(['rail', 'height'], file.rail?.height, 1.5, 38, 'the trade’s usual rail'),
    depth: railDepth,
  };
  const stile = {
    width: size(['stile', 'width'], file.stile?.width, 1.5, 38, 'stiles match the rails'),
    depth:
      file.stile?.depth ??
      assume.length([...at, 'stile', 'depth'], undefined, railDepth, 'stiles are flush with the rails'),
  };
  const groove = {
    depth: size(['groove', 'depth'], file.groove?.depth, 0.5, 12, 'a third of the rail'),
    clearance: size(['groove', 'clearance'], file.groove?.clearance, 1 / 32, 1, 'staves slide in by hand'),
  };
  const stave = {
    width: size(['stave', 'width'], file.stave?.width, 0.75, 19, 'staves from dressed boards'),
    depth: size(['stave', 'depth'], file.stave?.depth, 0.5, 12, 'thin staves bend the slats less'),
  };
  const clearWidth = outside.width - 2 * stile.width;
  const taken = slatDefaults({ file, clearWidth, stave, display, woods: context.woods });
  return {
    name: file.name,
    count: file.count ?? 1,
    details,
    size: outside,
    ...(opening && { opening }),
    fit,
    rail,
    stile,
    groove,
    stave: {
      ...stave,
      clearance: size(
        ['stave', 'clearance'],
        file.stave?.clearance,
        0,
        0,
        'staves and stiles lengthen alike along the grain',
      ),
      spacing: completeSpacing(file, context, taken),
    },
    slat: {
      thickness: assume.length([...at, 'slat', 'thickness'], file.slat?.thickness, taken.thickness, taken.thicknessWhy),
      height: file.slat?.height ?? (inch ? 1.5 * INCH : 38),
    },
    ...(file.top?.allowance !== undefined && { allowance: file.top.allowance }),
    cover: file.top?.cover ?? completeCover(context),
    ...(file.slat?.stop !== undefined && { endStop: file.slat.stop }),
    weave: {
      pattern:
        file.weave?.rows ??
        (assume.value(
          [...at, 'weave'],
          file.weave?.pattern,
          'plain',
          'the strongest and simplest weave',
        ) as NamedWeave),
      start: assume.value(
        [...at, 'weave', 'start'],
        file.weave?.start,
        'front',
        'the first course starts in front of the first stave',
      ),
    },
    wood: completeWood(file, context),
    ...(file.measured && {
      measured: {
        stack: file.measured.stack,
        thickness: file.measured.thickness ?? file.slat?.thickness ?? taken.thickness,
        broken: file.measured.broken ?? 0,
        uncut: file.measured.uncut ?? [],
      },
    }),
  };
}

function completeCover({ at, assume }: PanelContext): 'auto' {
  assume.note(
    [...at, 'top', 'cover'],
    'the widest gap of the dry season and a lap',
    'strips under the top rail hide the room left for swelling',
  );
  return 'auto';
}

function outsideSize(file: PanelFile, details: UseDetails, { at, display, assume, faults }: PanelContext) {
  if (file.size && file.opening) faults.push({ path: [...at, 'opening'], message: 'give size or opening, not both' });
  if (file.size) return { outside: file.size };
  if (!file.opening) {
    faults.push({
      path: [...at],
      message: 'give size (outside of the frame) or opening (with gaps), each with width and height',
    });
    return { outside: { width: 1000, height: 1000 } };
  }
  const { width, height, gap = {} } = file.opening;
  const usual = usualGaps(details, display);
  const side = (name: keyof OpeningGaps) => {
    const given = gap[name] ?? (name === 'left' || name === 'right' ? gap.sides : undefined);
    return assume.length([...at, 'opening', 'gap', name], given, usual[name], usual.reason);
  };
  const gaps: OpeningGaps = { left: side('left'), right: side('right'), top: side('top'), bottom: side('bottom') };
  const outside = { width: width - gaps.left - gaps.right, height: height - gaps.top - gaps.bottom };
  if (Math.min(outside.width, outside.height) < 150) {
    faults.push({ path: [...at, 'opening'], message: 'the gaps leave less than 150 mm for the panel' });
  }
  return { outside, opening: { width, height, gaps } };
}

function usualGaps(details: UseDetails, { unit }: Marks): OpeningGaps & { readonly reason: string } {
  const room = unit === 'in' ? INCH / 4 : 6;
  if (details.use === 'gate') {
    const { hinge, latch, ground } = details.clear;
    const [left, right] = details.hinge === 'left' ? [hinge, latch] : [latch, hinge];
    return { left, right, top: 0, bottom: ground, reason: 'the clearance of the leaf' };
  }
  if (details.use === 'divider' && details.track) {
    return {
      left: room,
      right: room,
      top: details.track.above,
      bottom: details.track.below,
      reason: 'the clearance of the track',
    };
  }
  if (details.use === 'guard') {
    return {
      left: room,
      right: room,
      top: 0,
      bottom: details.floorGap,
      reason: 'room to set the panel between its posts',
    };
  }
  return { left: room, right: room, top: room, bottom: room, reason: 'room to set the panel in its opening' };
}
