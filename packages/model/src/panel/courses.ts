import type { PanelSpec } from '../job/job.ts';
import { ceilToMark, floorToMark, formatLength, type Marks } from '../length.ts';
import type { Courses } from './panel.ts';
import type { NoRoom } from './staves.ts';

/** What closing the height needs to know. */
export interface HeightToClose {
  readonly spec: PanelSpec;
  /** Clear height that was asked for. */
  readonly clearHeight: number;
  readonly bottom: number;
  readonly display: Marks;
  /** Swelling of one millimetre of stack up to the wettest season, mm. */
  readonly swellShare: number;
  /** A slat height that is settled already, such as by the cutting plan; only with `vary: 'slats'`. */
  readonly slatHeight?: number;
}

/** Least room left over the stack beyond its swelling: 1/16 in, common practice, no source. */
export function allowanceMargin({ unit }: Marks): number {
  return unit === 'in' ? 25.4 / 16 : 1.5;
}

/** Most courses of one panel. */
const MOST_COURSES = 1000;

/** Closes a height on whole courses, by the fit that the job asks for. Says the nearest sizes that work if none does. */
export function closeCourses(ask: HeightToClose): Courses | NoRoom {
  const { fit } = ask.spec;
  if (fit.vary === 'slats') return bySlatHeight(ask, fit);
  return fit.vary === 'outside' ? byOutsideHeight(ask, fit.go) : byGaps(ask, fit);
}

/** Room to leave over a stack, exact. */
function allowanceFor(ask: HeightToClose, stack: number): number {
  return ask.spec.allowance ?? stack * ask.swellShare + allowanceMargin(ask.display);
}

function bySlatHeight(ask: HeightToClose, fit: Extract<PanelSpec['fit'], { vary: 'slats' }>): Courses | NoRoom {
  const { clearHeight } = ask;
  if (ask.slatHeight !== undefined) return settled(ask, ask.slatHeight, fit.step);
  const options = slatOptions(ask);
  const [first, ...rest] = options;
  if (!first) return noHeight(ask, fit);
  // Near the preferred height comes first; four parts of spare room at the top weigh as much as one part of slat height.
  const score = ({ count, height }: SlatOption) =>
    Math.abs(height - fit.prefer) + (clearHeight - count * height - allowanceFor(ask, count * height)) / 4;
  const best = rest.reduce((a, b) => (score(b) < score(a) - 1e-9 ? b : a), first);
  return lay(ask, { ...best, gap: 0, allowance: clearHeight - best.count * best.height, step: fit.step });
}

function settled(ask: HeightToClose, height: number, step: number): Courses {
  const share = ask.spec.allowance === undefined ? 1 + ask.swellShare : 1;
  const room = ask.clearHeight - (ask.spec.allowance ?? allowanceMargin(ask.display));
  const count = Math.max(1, Math.min(MOST_COURSES, Math.floor(room / share / height + 1e-9)));
  return lay(ask, { count, height, gap: 0, allowance: ask.clearHeight - count * height, step });
}

/** One way to close a height: so many courses of slats so high. */
export interface SlatOption {
  readonly count: number;
  readonly height: number;
}

/** Every count of courses that closes the height with slats in the fit's range, each with its greatest slat height. */
export function slatOptions(ask: HeightToClose): SlatOption[] {
  const { fit, allowance } = ask.spec;
  if (fit.vary !== 'slats') return [];
  const share = allowance === undefined ? 1 + ask.swellShare : 1;
  const room = ask.clearHeight - (allowance ?? allowanceMargin(ask.display));
  const options: SlatOption[] = [];
  for (let count = Math.max(1, Math.floor(room / (fit.to + fit.step) / share)); count <= MOST_COURSES; count++) {
    const exact = room / share / count;
    // Spare room of one mark of the tape is no reason to refuse the greatest height.
    const most = (exact - fit.to) * count <= ask.display.mark ? Math.min(exact, fit.to) : exact;
    const height = floorToMark(most, fit.step);
    if (height < fit.from - 1e-9) break;
    if (height <= fit.to + 1e-9) options.push({ count, height });
  }
  return options;
}

function noHeight(ask: HeightToClose, { from, to, step }: { from: number; to: number; step: number }): NoRoom {
  const { spec, clearHeight, display, bottom } = ask;
  const outside = (count: number, height: number) =>
    count * height + allowanceFor(ask, count * height) + bottom + spec.rail.height;
  const below = Math.max(0, Math.floor(clearHeight / (to * (1 + ask.swellShare))));
  const show = (length: number) =>
    formatLength(length, { ...display, mark: Math.min(display.mark, step) }, { named: true });
  const ways = [
    below > 0 ? `${show(ceilToMark(outside(below, to), display.mark))} (${below} courses of ${show(to)})` : '',
    `${show(ceilToMark(outside(below + 1, from), display.mark))} (${below + 1} courses of ${show(from)})`,
  ].filter(Boolean);
  return {
    field: 'fit',
    message: `no whole number of slats from ${show(from)} to ${show(to)} closes ${show(spec.size.height)}; nearest outside heights that work: ${ways.join(', ')}; or widen the range`,
  };
}

function byOutsideHeight(ask: HeightToClose, go: 'up' | 'down' | 'nearest'): Courses | NoRoom {
  const { spec, clearHeight, display } = ask;
  const height = spec.slat.height;
  const allowance = (count: number) => ceilToMark(allowanceFor(ask, count * height), display.mark);
  const used = (count: number) => count * height + allowance(count);
  let below = Math.max(0, Math.floor(clearHeight / height));
  while (below > 0 && used(below) > clearHeight + 1e-6) below--;
  const above = below > 0 && Math.abs(used(below) - clearHeight) < 1e-6 ? below : below + 1;
  const nearest = clearHeight - used(below) <= used(above) - clearHeight ? below : above;
  const wanted = go === 'up' ? above : go === 'down' ? below : nearest;
  // A panel in an opening can only give way downwards.
  const count = spec.opening ? Math.min(wanted, below) : wanted;
  if (count < 1 || count > MOST_COURSES) {
    const least = formatLength(used(1) + ask.bottom + spec.rail.height, display, { named: true });
    return { field: 'fit', message: `not one course of this slat height fits; the least outside height is ${least}` };
  }
  return lay(ask, { count, height, gap: 0, allowance: allowance(count), step: display.mark });
}

function byGaps(ask: HeightToClose, fit: { readonly from: number; readonly to: number }): Courses | NoRoom {
  const { spec, clearHeight, display } = ask;
  const height = spec.slat.height;
  const allowance = spec.allowance ?? 0;
  const room = clearHeight - allowance;
  const most = Math.min(MOST_COURSES, Math.floor((room + fit.from) / (height + fit.from) + 1e-9));
  const gap = most > 1 ? (room - most * height) / (most - 1) : room - height;
  if (most < 2 || gap > fit.to + 1e-9) {
    const show = (length: number) => formatLength(length, display, { named: true });
    const outside = (count: number, wide: number) =>
      count * height + (count - 1) * wide + allowance + ask.bottom + spec.rail.height;
    const ways = [
      ...(most > 1 ? [`${show(outside(most, fit.to))} (${most} courses)`] : []),
      `${show(outside(Math.max(2, most + 1), fit.from))} (${Math.max(2, most + 1)} courses)`,
    ];
    return {
      field: 'fit',
      message: `${show(spec.size.height)} wants gaps of ${show(gap)}, more than ${show(fit.to)}; nearest outside heights that work: ${ways.join(', ')}`,
    };
  }
  return lay(ask, { count: most, height, gap, allowance, step: display.mark });
}

function lay(
  { spec, bottom }: HeightToClose,
  {
    count,
    height,
    gap,
    allowance,
    step,
  }: SlatOption & { readonly gap: number; readonly allowance: number; readonly step: number },
): Courses {
  const pitch = height + gap;
  return {
    count,
    height,
    thickness: spec.slat.thickness,
    gap,
    pitch,
    stack: count * height + (count - 1) * gap,
    allowance,
    bottoms: Array.from({ length: count }, (_, i) => bottom + i * pitch),
    step,
  };
}
