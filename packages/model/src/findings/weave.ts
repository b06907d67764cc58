import { INCH } from '../length.ts';
import { windOnSlat } from '../loads/wind.ts';
import { type Panel, weaveDepth } from '../panel/panel.ts';
import { GUARD_CODE } from '../uses/codes.ts';
import { panelBall } from '../uses/openwork.ts';
import { panelWind } from '../uses/wind.ts';
import { hangsTogether } from '../weave/hang.ts';
import { insertionFactor } from '../weave/insertion.ts';
import { plainWeave, smallestPitch } from '../weave/plain.ts';
import { poundForce } from '../wood/inchpound.ts';
import { panelRule, type Rule } from './rule.ts';
import { forceText, lengthText, shareText } from './words.ts';

/** Shares of the strength: what a slat may be held at for good, for a moment while weaving, and where it breaks. */
export const SLAT_USE: { readonly kept: number; readonly weaving: number; readonly breaks: number } = {
  kept: 0.55,
  weaving: 0.75,
  breaks: 1,
};

/** Least grip: what a 3/16 in yellow-cedar slat 1 5/8 in high has at 14 in pitch, N for each mm of its height. */
export const LEAST_GRIP: number = (7.5 * poundForce) / (1.625 * INCH);

/** Gust factor of a rigid panel. ASCE 7-16, 26.11. */
const GUST = 0.85;

/** The greatest share of its strength that any slat of the panel is bent to. */
export function mostUse({ rows }: Panel): number {
  return Math.max(0, ...rows.map(({ bend }) => bend.use));
}

/** The pitch and the thickness at which this weave would take no more than the kept share of its strength, mm. */
export function gentler(panel: Panel): { readonly pitch: number; readonly thickness: number } {
  const { staves, courses, spec } = panel;
  const { modulus, strength } = spec.wood.slat.wood;
  const sizes = {
    staveWidth: staves.width,
    staveDepth: staves.depth,
    slatThickness: courses.thickness,
    modulus,
    strength,
  };
  const use = mostUse(panel);
  // The closed form over-states narrow panels: it is asked for the share that it itself would show here.
  const wanted = (SLAT_USE.kept * plainWeave({ ...sizes, pitch: staves.pitch }).use) / use;
  // Stress goes as t (d + t) at one pitch.
  const product = (courses.thickness * (staves.depth + courses.thickness) * SLAT_USE.kept) / use;
  return {
    pitch: smallestPitch({ ...sizes, use: wanted }),
    thickness: (Math.sqrt(staves.depth ** 2 + 4 * product) - staves.depth) / 2,
  };
}

/** Rules on bending, grip and holding together. */
export const weaveRules: readonly Rule[] = [
  panelRule({
    code: 'slat-strength',
    reason:
      'strength tables give averages of short tests; wood under lasting stress keeps about 0.56 of it and pieces scatter by 16 %: at 0.55 about one slat in 400 breaks, at 1 every second',
    source: 'derived from Wood Handbook FPL-GTR-190 scatter and duration of load (from memory)',
    judge: (panel) => {
      const use = mostUse(panel);
      if (use <= SLAT_USE.kept) return undefined;
      const { pitch, thickness } = gentler(panel);
      const breaks = use > SLAT_USE.breaks;
      return {
        level: breaks ? 'stop' : 'caution',
        text: breaks ? 'The slats break when bent round the staves.' : 'The slats are bent close to their strength.',
        figure: shareText(use),
        limit: String(breaks ? SLAT_USE.breaks : SLAT_USE.kept),
        mend: `staves ${lengthText(pitch, panel.display)} apart, or slats ${lengthText(thickness, panel.display)} thick, or a tougher wood`,
      };
    },
  }),
  panelRule({
    code: 'slat-strength-weaving',
    reason:
      'pushing a slat aside to slip the last stave in bends it more for a moment; three quarters is a sensible bound',
    source: 'derived for this project',
    judge: (panel) => {
      const { staves, courses } = panel;
      const use = mostUse(panel) * insertionFactor({ staveDepth: staves.depth, slatThickness: courses.thickness });
      if (use <= SLAT_USE.weaving || mostUse(panel) > SLAT_USE.breaks) return undefined;
      return {
        level: 'caution',
        text: 'A slat pushed off its stave to slip another stave in may break.',
        figure: shareText(use),
        limit: String(SLAT_USE.weaving),
        mend: 'set every stave first and weave over the free stave tops, the top rail off',
      };
    },
  }),
  panelRule({
    code: 'slat-in-wind',
    reason:
      'a gust bends slats between staves beyond what the weave bends them already; it is short, so three quarters',
    source: 'ASCE 7-16 (constants from memory); slat as a beam held at every stave, derived for this project',
    judge: (panel) => {
      const wind = panelWind(panel);
      if (!wind) return undefined;
      const { staves, courses, spec } = panel;
      const pressure = wind.velocityPressure * GUST * wind.forceCoefficient;
      const sizes = { pitch: staves.pitch, thickness: courses.thickness, height: courses.height };
      const use = mostUse(panel) + windOnSlat({ ...sizes, pressure }).stress / spec.wood.slat.wood.strength;
      if (use <= SLAT_USE.weaving || mostUse(panel) > SLAT_USE.breaks) return undefined;
      return {
        level: 'caution',
        text: 'Wind and weave together bend the slats close to their strength.',
        figure: shareText(use),
        limit: String(SLAT_USE.weaving),
        mend: 'staves a little closer where the slats are weak, or thicker slats where they are slack',
      };
    },
  }),
  panelRule({
    code: 'row-not-gripped',
    reason: 'a slat needs two changes of side, or end stops, to be bent; a straight one rattles and slides out',
    source: 'derived for this project: statics of a strip between staves',
    judge: ({ rows }) => {
      const loose = rows.filter(({ bend }) => !bend.gripped);
      if (loose.length === 0) return undefined;
      const courses = loose.reduce((sum, row) => sum + row.courses, 0);
      return {
        level: 'caution',
        text: `${courses} courses are not gripped by their staves: the slats lie straight and loose.`,
        figure: `${loose.length} of ${rows.length} rows straight`,
        limit: 'none',
        mend: 'more staves, a weave with two changes of side in every row, or stops at the stiles',
      };
    },
  }),
  panelRule({
    code: 'ends-flying',
    reason: 'past two neighbours on one side at the end of a row nothing presses the slat’s end to its stave',
    source: 'derived for this project',
    judge: (panel) => {
      const half = panel.outside.depth / 2;
      const out = Math.max(
        ...panel.rows.map(({ bend }) => Math.max(...bend.endOffsets.map(Math.abs)) + panel.courses.thickness / 2),
      );
      if (out <= half) return undefined;
      return {
        level: 'caution',
        text: 'Slat ends stand out beyond the face of the frame.',
        figure: `${lengthText(out, panel.display)} from mid-depth`,
        limit: lengthText(half, panel.display),
        mend: 'a weave that starts and ends each row with a single stave, or stops at the stiles',
      };
    },
  }),
  panelRule({
    code: 'loose-layers',
    reason:
      'a course that passes every stave on one side can be lifted off; with staves in grooves every course needs both',
    source: 'Clapham 1980, When a fabric hangs together (from memory); checked by brute force',
    judge: ({ weave, spec }) => {
      const rows = weave.rowOfCourse.map((row) => weave.rows[row] ?? []);
      const { looseCourses } = hangsTogether(rows, { stavesTied: true });
      if (looseCourses.length === 0) return undefined;
      const held = spec.endStop !== undefined;
      return {
        level: held ? 'caution' : 'stop',
        text: held ? 'Courses are held by the end stops alone.' : 'Courses come off the panel: nothing holds them.',
        figure: `${looseCourses.length} courses loose, the lowest is course ${looseCourses[0]}`,
        limit: 'none',
        mend: 'give every course at least one stave in front and one behind',
      };
    },
  }),
  panelRule({
    code: 'little-grip',
    reason: 'force goes as one over the pitch cubed; past the widest usual pitch slats rattle in the wind',
    source: 'a 3/16 in slat at 14 in pitch, the trade’s widest (common practice, no source); force derived',
    judge: ({ rows, courses, display }) => {
      const gripped = rows.filter(({ bend }) => bend.gripped);
      if (gripped.length === 0) return undefined;
      const force = Math.min(...gripped.map(({ bend }) => Math.max(...bend.staveForces)));
      const least = LEAST_GRIP * courses.height;
      if (force >= least) return undefined;
      return {
        level: 'caution',
        text: 'The staves hold the slats only lightly.',
        figure: forceText(force, display),
        limit: forceText(least, display),
        mend: 'staves closer together, or thicker slats',
      };
    },
  }),
  panelRule({
    code: 'weave-proud',
    reason: 'slats that stand proud of the frame catch hands and knocks and cannot lie against a wall',
    source: 'common practice, no source',
    judge: (panel) => {
      const depth = weaveDepth(panel);
      if (depth <= panel.outside.depth) return undefined;
      return {
        level: 'caution',
        text: 'The weave is thicker than the frame.',
        figure: lengthText(depth, panel.display),
        limit: lengthText(panel.outside.depth, panel.display),
        mend: 'a deeper frame, or thinner staves or slats',
      };
    },
  }),
  panelRule({
    code: 'ball-passes',
    reason: 'the ball stands for a small child’s head; guards have a rule of their own',
    source: GUARD_CODE.sphere.source,
    judge: (panel) => {
      if (panel.details.use === 'guard') return undefined;
      const ball = panelBall(panel);
      if (ball < GUARD_CODE.sphere.value) return undefined;
      return {
        level: 'caution',
        text: 'A ball as big as a small child’s head passes between the courses.',
        figure: lengthText(ball, panel.display),
        limit: `under ${lengthText(GUARD_CODE.sphere.value, panel.display)}`,
        mend: 'smaller gaps between the courses, and less room over the stack',
      };
    },
  }),
];
