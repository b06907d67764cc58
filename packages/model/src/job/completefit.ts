import { formatLength, INCH } from '../length.ts';
import type { PanelContext } from './context.ts';
import type { PanelFile } from './file.ts';
import type { Fit, PanelSpec } from './job.ts';
import type { SlatDefaults } from './slatdefaults.ts';

/** How the height closes, complete; common practice, no source. */
export function completeFit(file: PanelFile, { at, display, assume, faults }: PanelContext): Fit {
  const fit = file.fit;
  const inch = display.unit === 'in';
  if (fit?.vary === 'outside') {
    return { vary: 'outside', go: assume.value([...at, 'fit', 'go'], fit.go, 'nearest', 'the nearest whole course') };
  }
  if (fit?.vary === 'gaps') {
    const from = fit.from ?? 0;
    const to = assume.length(
      [...at, 'fit', 'to'],
      fit.to,
      inch ? INCH / 4 : 6,
      'a gap that still reads as a closed weave',
    );
    if (from > to) faults.push({ path: [...at, 'fit', 'from'], message: 'expected at most the field "to"' });
    return { vary: 'gaps', from, to };
  }
  const prefer = fit?.prefer ?? file.slat?.height ?? (inch ? 1.5 * INCH : 38);
  const from = fit?.from ?? prefer - (inch ? INCH / 8 : 3);
  const to = fit?.to ?? prefer + (inch ? INCH / 4 : 6);
  if (fit?.from === undefined || fit.to === undefined) {
    const show = (length: number) => formatLength(length, display, { named: true });
    assume.note(
      [...at, 'fit'],
      `slats from ${show(from)} to ${show(to)}, near ${show(prefer)}`,
      'slat heights that look alike, so that the height closes',
    );
  }
  if (from > to) faults.push({ path: [...at, 'fit', 'from'], message: 'expected at most the field "to"' });
  const step = fit?.step ?? (inch ? INCH / 64 : 0.5);
  return { vary: 'slats', from, to, prefer: Math.min(Math.max(prefer, from), to), step };
}

/** How the staves are spaced, complete. */
export function completeSpacing(
  { stave = {} }: PanelFile,
  { at, assume, faults }: PanelContext,
  { pitch: usual, pitchWhy: reason }: SlatDefaults,
): PanelSpec['stave']['spacing'] {
  if (stave.count !== undefined && stave.pitch) {
    faults.push({ path: [...at, 'stave', 'count'], message: 'give count or pitch, not both' });
  }
  if (stave.count !== undefined) return { count: stave.count };
  const length = (name: 'from' | 'to' | 'prefer') =>
    assume.length([...at, 'stave', 'pitch', name], stave.pitch?.[name], usual[name], reason);
  const spacing = {
    from: length('from'),
    to: length('to'),
    prefer: length('prefer'),
    soft: !stave.pitch,
  };
  if (spacing.from > spacing.to) faults.push({ path: [...at, 'stave', 'pitch'], message: 'expected from at most to' });
  return spacing;
}
