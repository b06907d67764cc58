import { ceilToMark } from '../length.ts';
import { woven } from '../panel/behaviour.ts';
import { type Panel, weaveDepth } from '../panel/panel.ts';
import { layStaves } from '../panel/staves.ts';
import { guardDetails } from '../uses/guard.ts';
import { BENCH_STEP, LEAST_GRIP, leastGrip, SLAT_USE } from '../weave/limits.ts';
import { woods } from '../wood/species.ts';
import type { Species } from '../wood/wood.ts';
import { guardShare, mostUse, windyUse } from './strength.ts';
import { panelIn } from './woodchoice.ts';
import { lengthText } from './words.ts';

/** Sizes of the weave to try in place of a panel's own. */
interface Sizes {
  readonly count: number;
  readonly thickness: number;
  /** Of the staves, through the panel. */
  readonly depth: number;
}

/** Staves that are tried more or fewer, thicknesses of slats, mm, and how many sets of sizes are bent at most. */
const TRIED = { staves: 12, from: 2, to: 12.7, sets: 24 } as const;

/** How near a scaled figure must come to its limit for the slat to be bent anew. */
const NEAR = 1.05;

/** The limits that pull against one another in this panel, in words. */
export function limitsOf(panel: Panel): string {
  const all = [
    'bend',
    'grip',
    ...(windyUse(panel) === undefined ? [] : ['wind']),
    ...(panel.details.use === 'guard' ? ['load'] : []),
  ];
  return `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
}

/** Whether slats and staves of a panel keep every limit on bend, grip, wind and load, and the weave its frame. */
export function keepsLimits(panel: Panel): boolean {
  const { details, courses, outside, rows } = panel;
  const grip = leastGrip(rows.map(({ bend }) => bend));
  if (mostUse(panel) > SLAT_USE.kept || (windyUse(panel) ?? 0) > SLAT_USE.weaving) return false;
  if (grip !== undefined && grip < LEAST_GRIP * courses.height) return false;
  if (weaveDepth(panel) > outside.depth) return false;
  if (details.use !== 'guard') return true;
  return guardDetails(panel).bending.every(
    ({ of, share }) => (of !== 'slat' && of !== 'stave') || share <= guardShare(of),
  );
}

/**
 * What would bring slats and staves of a panel within every limit at once, each way tried in all its sizes: by one change,
 * else by the nearest set of changes; else that none does.
 */
export function curesText(panel: Panel): string {
  const own = sizesOf(panel);
  const deeper = { ...own, depth: depthFor(panel) };
  const firstOf = (ways: readonly Sizes[]) => ways.find((sizes) => passes(panel, sizes));
  const ways = [
    firstOf(counts(panel).map((count) => ({ ...own, count }))),
    firstOf(likely(panel, own).slice(0, TRIED.sets)),
    firstOf(deeper.depth > own.depth ? [deeper] : []),
  ].flatMap((sizes) => (sizes ? [sizesText(panel, sizes)] : []));
  const others = panel.asBuilt ? [] : woodsThatDo(panel);
  const single = [...ways, ...(others.length > 0 ? [`the same sizes in ${others.join(' or ')}`] : [])];
  const limits = `the limits on ${limitsOf(panel)}`;
  if (single.length === 1) return `${single[0]}: that keeps ${limits}`;
  if (panel.asBuilt && single.length === 0)
    return `no other count of staves keeps ${limits} with the slats as they are: that takes new slats`;
  if (single.length > 1) return `one of these, each of which keeps ${limits}: ${single.join('; or ')}`;
  const sets = [own.count, ...counts(panel)]
    .flatMap((count) => likely(panel, { ...deeper, count }))
    .sort((one, other) => far(own, one) - far(own, other));
  const found = firstOf(sets.slice(0, TRIED.sets));
  if (found) return `no single change keeps ${limits}; together these do: ${sizesText(panel, found)}`;
  const none = `no spacing of the staves with any thickness of slats was found that keeps ${limits}`;
  const tougher = toughest(panel, deeper);
  return tougher ? `${none} in this wood; ${tougher} would` : `${none}: another weave or size of panel is wanted`;
}

function sizesOf({ staves, courses }: Panel): Sizes {
  return { count: staves.count, thickness: courses.thickness, depth: staves.depth };
}

function sizesText(panel: Panel, { count, thickness, depth }: Sizes): string {
  const { display, staves, courses, clear } = panel;
  const pitch = lengthText((clear.width - staves.width) / (count - 1), display);
  return [
    ...(count === staves.count ? [] : [`${count} staves, ${pitch} apart`]),
    ...(Math.abs(thickness - courses.thickness) < 1e-6 ? [] : [`slats ${lengthText(thickness, display)} thick`]),
    ...(depth <= staves.depth + 1e-6 ? [] : [`staves ${lengthText(depth, display)} deep`]),
  ]
    .join(', with ')
    .replace(/, with (.*), with /, ', with $1 and ');
}

/** How far sizes are from a panel's own, each as a share of it. */
function far(own: Sizes, { count, thickness, depth }: Sizes): number {
  const share = (one: number, other: number) => Math.abs(one - other) / other;
  return share(count, own.count) + share(thickness, own.thickness) + share(depth, own.depth);
}

/** Counts of staves to try, the nearest first: within the job's own range of pitch where it gives one. */
function counts({ staves, clear, spec }: Panel): number[] {
  // Rows given stave by stave hold for their own count only.
  if (typeof spec.weave.pattern !== 'string') return [];
  const { spacing } = spec.stave;
  const fits = (count: number) => {
    const pitch = (clear.width - staves.width) / (count - 1);
    if (count < 3 || staves.width * count >= clear.width / 2) return false;
    return 'count' in spacing || spacing.soft || (pitch >= spacing.from - 1e-9 && pitch <= spacing.to + 1e-9);
  };
  return Array.from({ length: TRIED.staves }, (_, i) => i + 1)
    .flatMap((by) => [staves.count - by, staves.count + by])
    .filter(fits);
}

/** Those sizes with every other thickness of slats that may do, scaled from one bend; the nearest to the panel's own first. */
function likely(panel: Panel, sizes: Sizes): Sizes[] {
  // Slats that were measured are cut already.
  const bent = panel.asBuilt ? undefined : sized(panel, sizes);
  if (!bent) return [];
  const own = sizesOf(panel);
  const step = BENCH_STEP[panel.display.unit];
  const [use, grip] = [mostUse(bent), leastGrip(bent.rows.map(({ bend }) => bend)) ?? 0];
  const least = LEAST_GRIP * panel.courses.height;
  // At one pitch stress goes as t (d + t), and force as t³ (d + t).
  const lever = (t: number) => (t * (sizes.depth + t)) / (own.thickness * (sizes.depth + own.thickness));
  return Array.from({ length: Math.floor(TRIED.to / step + 1e-9) }, (_, i) => (i + 1) * step)
    .filter((t) => t >= TRIED.from - 1e-9 && Math.abs(t - own.thickness) > 1e-6)
    .filter((t) => use * lever(t) <= NEAR * SLAT_USE.kept)
    .filter((t) => NEAR * grip * lever(t) * (t / own.thickness) ** 2 >= least)
    .map((thickness) => ({ ...sizes, thickness }))
    .sort((one, other) => far(own, one) - far(own, other));
}

/** Depth of the staves of a guard at which the code's load keeps its limit; else their own. Stress goes as one over its square. */
function depthFor(panel: Panel): number {
  const { details, staves, display } = panel;
  if (details.use !== 'guard') return staves.depth;
  const load = guardDetails(panel).bending.find(({ of }) => of === 'stave');
  const over = load ? load.share / guardShare('stave') : 1;
  return over > 1 ? ceilToMark(staves.depth * Math.sqrt(over), BENCH_STEP[display.unit]) : staves.depth;
}

/** The panel with other sizes of its weave, laid out and bent anew; undefined where they find no room. */
function sized(panel: Panel, { count, thickness, depth }: Sizes): Panel | undefined {
  const { clear, display, weave } = panel;
  const spec = {
    ...panel.spec,
    stave: { ...panel.spec.stave, depth, spacing: { count } },
    slat: { ...panel.spec.slat, thickness },
  };
  if (spec.endStop !== undefined && spec.endStop < (depth + thickness) / 2) return undefined;
  const courses = { ...panel.courses, thickness };
  const staves = layStaves(spec, clear, display);
  if ('field' in staves) return undefined;
  const { weave: sides, rows } = woven(spec, { clearWidth: clear.width, staves, courses, display });
  return { ...panel, spec, courses, staves, weave: { ...weave, ...sides }, rows };
}

function passes(panel: Panel, sizes: Sizes): boolean {
  const other = sized(panel, sizes);
  return other !== undefined && keepsLimits(other);
}

/** Other sizes and the first other wood in which they keep every limit, in words; undefined where there are none. */
function toughest(panel: Panel, sizes: Sizes): string | undefined {
  for (const wood of woodsFor(panel)) {
    const other = panelIn(panel, wood);
    const found = [...(sizes.depth > panel.staves.depth ? [sizes] : []), ...likely(other, sizes).slice(0, 3)].find(
      (tried) => passes(other, tried),
    );
    if (found) return `${sizesText(panel, found)} in ${wood.name}`;
  }
  return undefined;
}

/** Other woods of the table that last at the place. */
function woodsFor({ spec, site }: Panel): Species[] {
  return woods
    .filter(({ name }) => name !== spec.wood.slat.wood.name)
    .filter(({ decay }) => site.where !== 'outdoors' || /^(very )?resistant$/.test(decay.group));
}

/** Names of other woods that last at the place and in which the panel as it is keeps every limit, two at most. */
function woodsThatDo(panel: Panel): string[] {
  return woodsFor(panel)
    .filter((wood) => keepsLimits(panelIn(panel, wood)))
    .slice(0, 2)
    .map(({ name }) => name);
}
