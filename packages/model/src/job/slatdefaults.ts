import { INCH, type Marks } from '../length.ts';
import { bendSlat } from '../weave/bend.ts';
import { BENCH_STEP, LEAST_GRIP, leastGrip, SLAT_USE } from '../weave/limits.ts';
import { type NamedWeave, weaveSides } from '../weave/pattern.ts';
import { woodNamed } from '../wood/species.ts';
import type { Wood } from '../wood/wood.ts';
import type { PanelFile } from './file.ts';

/** A range of pitches and the one wished for, mm. */
export interface PitchRange {
  readonly from: number;
  readonly to: number;
  readonly prefer: number;
}

/** Of a range of pitches the count of staves nearest the pitch wished for, over a run from first stave to last, mm. */
export function countFor(run: number, { from, to, prefer }: PitchRange): number {
  const counts = Array.from({ length: 199 }, (_, i) => i + 2);
  const inRange = counts.filter((n) => run / (n - 1) >= from - 1e-9 && run / (n - 1) <= to + 1e-9);
  // Three staves are the fewest that bend a slat, so an assumed range gives way to them before two.
  const among = inRange.length > 0 ? inRange : counts.slice(1);
  const far = (n: number) => Math.abs(run / (n - 1) - prefer);
  return among.reduce((best, n) => (far(n) < far(best) - 1e-9 ? n : best));
}

/** What is taken of slats and staves where the job leaves it open, mm. */
export interface SlatDefaults {
  readonly thickness: number;
  readonly thicknessWhy: string;
  readonly pitch: PitchRange;
  readonly pitchWhy: string;
}

const WHY = {
  thicknessWhy: 'thin enough to bend, thick enough to stand alone',
  pitchWhy: 'the trade’s spacing for thin slats, common practice, no source',
} as const;

/** Usual spacing of staves and thickness of slats; common practice, no source. */
const USUAL: Readonly<Record<Marks['unit'], SlatDefaults>> = {
  in: { ...WHY, thickness: (3 / 16) * INCH, pitch: { from: 9 * INCH, to: 14 * INCH, prefer: 11 * INCH } },
  mm: { ...WHY, thickness: 5, pitch: { from: 230, to: 355, prefer: 280 } },
};

/** Counts tried beside the usual one, and steps of thickness to either side. */
const TRIED = { counts: 2, steps: 5 } as const;

/** What the slats are bent with. */
interface Weaving {
  readonly file: PanelFile;
  readonly clearWidth: number;
  readonly stave: { readonly width: number; readonly depth: number };
  readonly display: Marks;
  readonly woods: readonly Wood[];
}

/**
 * Spacing of the staves and thickness of the slats to take where the job gives neither count nor pitch, or no thickness: the
 * usual ones where the staves grip the slats without bending them too much; else the nearest count, then the nearest
 * thickness, with which they do; else the usual ones after all.
 */
export function slatDefaults(weaving: Weaving): SlatDefaults {
  const { file, clearWidth, stave, display } = weaving;
  const usual = USUAL[display.unit];
  const wood = slatWood(weaving);
  const run = clearWidth - stave.width;
  const openCount = file.stave?.count === undefined && !file.stave?.pitch && !file.weave?.rows;
  const openThickness = file.slat?.thickness === undefined && !file.measured;
  if (!wood || run < 3 * stave.width || (!openCount && !openThickness)) return usual;
  const pitch = { ...usual.pitch, ...file.stave?.pitch };
  const own = file.stave?.count ?? countFor(run, pitch);
  const near = (count: number) => Math.abs(run / (count - 1) - pitch.prefer);
  const counts = openCount
    ? Array.from({ length: 2 * TRIED.counts + 1 }, (_, i) => own - TRIED.counts + i)
        .filter((count) => count >= 3 && run / (count - 1) > 2 * stave.width)
        .sort((one, other) => near(one) - near(other))
    : [own];
  const step = BENCH_STEP[display.unit];
  const thicknesses = openThickness
    ? [0, ...Array.from({ length: TRIED.steps }, (_, i) => i + 1).flatMap((by) => [by, -by])].map(
        (by) => usual.thickness + by * step,
      )
    : [file.slat?.thickness ?? usual.thickness];
  for (const thickness of thicknesses)
    for (const count of counts) {
      if (!holds(weaving, { count, thickness, wood })) continue;
      const thick =
        !openThickness || thickness === usual.thickness
          ? usual
          : { ...usual, thickness, thicknessWhy: 'the nearest to the usual one with which the staves grip the slats' };
      if (!openCount || count === own) return thick;
      const { from, to } = usual.pitch;
      const at = run / (count - 1);
      const pitchWhy = 'the nearest to the trade’s spacing at which the staves grip the slats';
      return { ...thick, pitch: { from: Math.min(from, at), to: Math.max(to, at), prefer: at }, pitchWhy };
    }
  return usual;
}

/** Whether so many staves grip slats of a thickness without bending any past what it keeps. */
function holds(
  { file, clearWidth, stave }: Weaving,
  { count, thickness, wood }: { readonly count: number; readonly thickness: number; readonly wood: Wood },
): boolean {
  const { pattern, rows, start = 'front' } = file.weave ?? {};
  const endStop = file.slat?.stop;
  if (endStop !== undefined && endStop < (stave.depth + thickness) / 2) return false;
  if (rows?.some((row) => row.length !== count) || clearWidth / count <= stave.width) return false;
  const weave = rows ?? (pattern as NamedWeave | undefined) ?? 'plain';
  const { modulus, strength } = wood;
  const bends = weaveSides({ weave, start, courses: MOST_ROWS, staves: count }).rows.map((sides) =>
    bendSlat({
      clearWidth,
      staves: { count, ...stave },
      slat: { thickness, height: 1 },
      sides,
      modulus,
      strength,
      ...(endStop !== undefined && { endStop }),
    }),
  );
  return Math.max(...bends.map(({ use }) => use)) <= SLAT_USE.kept && (leastGrip(bends) ?? 0) >= LEAST_GRIP;
}

/** Courses of a weave that show all its rows. */
const MOST_ROWS = 24;

/** The wood of the slats; undefined for one that is in no table. */
function slatWood({ file: { wood }, woods }: Weaving): Wood | undefined {
  const name = wood?.slat?.wood ?? wood?.all?.wood ?? wood?.rail?.wood ?? 'western redcedar';
  return woods.find((each) => each.name === name) ?? woodNamed(name);
}
