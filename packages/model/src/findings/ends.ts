import { ceilToMark } from '../length.ts';
import { type Panel, weaveDepth } from '../panel/panel.ts';
import { weaveReach } from '../panel/reach.ts';
import { sideFixings } from '../uses/fixings.ts';
import { panelRule, type Rule } from './rule.ts';
import { lengthText, unlikeLengths } from './words.ts';

/** A room that a packer leaves between slat ends and wall, mm; common practice, no source. */
const PACKER_ROOM = 2;

/** Staves that every course passes on one side, counted from 1 at the left: those behind all slats, those in front. */
function unwovenStaves({ weave, staves }: Pick<Panel, 'weave' | 'staves'>): {
  readonly behind: readonly number[];
  readonly before: readonly number[];
} {
  const used = new Set(weave.rowOfCourse);
  const rows = weave.rows.filter((_, row) => used.has(row));
  const all = Array.from({ length: staves.count }, (_, j) => j);
  const passedBy = (side: number) => all.filter((j) => rows.every((row) => row[j] === side)).map((j) => j + 1);
  return { behind: passedBy(1), before: passedBy(-1) };
}

/** `3`, `3 and 4`, `3, 4 and 6`. */
function listed(items: readonly (string | number)[]): string {
  return items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

function stavesText(numbers: readonly number[]): string {
  return `stave${numbers.length > 1 ? 's' : ''} ${listed(numbers)}`;
}

/** Whether the panel lies flat on a wall or frame behind it, with how far off, mm; undefined where nothing is behind it. */
function wallBehind({ details }: Panel): number | undefined {
  if (details.use !== 'screen' || details.mounting === 'posts') return undefined;
  return details.mounting === 'blocks' ? details.standoff : 0;
}

/** How thick packers are to be that keep a panel's slats out of the wall behind it, mm; undefined where it lies flat without. */
export function wallPacker(panel: Panel): number | undefined {
  const off = wallBehind(panel);
  if (off === undefined) return undefined;
  const behind = weaveReach(panel).back - panel.outside.depth / 2;
  return behind <= off + 1e-6 ? undefined : ceilToMark(behind + PACKER_ROOM - off, panel.display.mark);
}

/** The screw that fixes the panel so far off what is behind it, by its size. */
function packedScrew(panel: Panel, off: number): string {
  const { details, display } = panel;
  if (details.use !== 'screen') return '';
  const { screw } = sideFixings({ ...panel, details: { ...details, mounting: 'blocks', standoff: off } });
  return `No. ${screw.gauge} x ${lengthText(screw.length, display)}`;
}

/** Rules on where slats and their ends stand against frame and staves. */
export const endRules: readonly Rule[] = [
  panelRule({
    code: 'stave-not-woven',
    reason:
      'slats lock only on staves that they pass on both sides; one that they all pass on one side stands before or behind the weave and only its grooves hold it',
    source: 'geometry of the weave',
    judge: (panel) => {
      const { behind, before } = unwovenStaves(panel);
      const all = [...behind, ...before].sort((a, b) => a - b);
      // With one row only, or rows all alike, courses come off and another rule says so.
      if (all.length === 0 || all.length === panel.staves.count) return undefined;
      const said = [
        ...(behind.length > 0 ? [`every slat passes in front of ${stavesText(behind)}`] : []),
        ...(before.length > 0 ? [`every slat passes behind ${stavesText(before)}`] : []),
      ];
      return {
        level: 'caution',
        text: `${all.length > 1 ? 'Staves' : 'Stave'} ${listed(all)}, counted from the left, ${all.length > 1 ? 'are' : 'is'} not woven in.`,
        figure: `${all.length} of ${panel.staves.count} staves`,
        limit: 'none',
        judged: () => `${said.join(', ')}`,
        mend: 'change one sign in that column of the weave in some rows, or leave the stave out',
        field: 'weave.rows',
      };
    },
  }),
  panelRule({
    code: 'ends-flying',
    reason: 'where a row ends with two neighbours on one side nothing presses the end of the slat to its stave',
    source: 'the shape of the bent slat',
    judge: (panel) => {
      const { front, back } = weaveReach(panel);
      const out = Math.max(front, back);
      const half = panel.outside.depth / 2;
      if (out <= half + 1e-9 || out <= weaveDepth(panel) / 2 + 1e-9) return undefined;
      const [figure, limit] = unlikeLengths(out, half, panel.display);
      const past = (reach: number) => lengthText(Math.max(0, reach - half), panel.display);
      return {
        level: 'caution',
        text: 'Slat ends stand out beyond the face of the frame.',
        figure,
        limit,
        judged: () =>
          `At the stiles they reach ${past(front)} past the front of the frame and ${past(back)} past its back; within the frame nothing would stand out`,
        mend: 'a weave that starts and ends each row with a single stave, or stops at the stiles that hold the ends in; as it is, do not count on the ends staying where they are drawn',
        field: 'slat.stop',
      };
    },
  }),
  panelRule({
    code: 'slats-in-wall',
    reason: 'a panel screwed flat to what is behind it leaves no room for what stands out at its back',
    source: 'geometry',
    judge: (panel) => {
      const packer = wallPacker(panel);
      if (packer === undefined) return undefined;
      const off = wallBehind(panel) ?? 0;
      const behind = weaveReach(panel).back - panel.outside.depth / 2;
      const [figure, limit] = unlikeLengths(behind, off, panel.display);
      return {
        level: 'stop',
        text: 'Slats stand out behind the frame, where the wall is: the panel cannot lie flat on it.',
        figure,
        limit,
        judged: (found, room) =>
          `They reach ${found} behind the back of the frame, and ${off > 0 ? `the blocks keep it only ${room} off` : 'it is fixed with no room there'}`,
        mend: `packers ${lengthText(packer, panel.display)} thick ${off > 0 ? 'under the blocks' : 'behind both stiles'}, which take screws ${packedScrew(panel, off + packer)} in place of those listed, or a weave whose ends stay within the frame`,
        field: 'screen.standoff',
      };
    },
  }),
  panelRule({
    code: 'weave-proud',
    reason: 'slats that stand proud of the frame catch hands and knocks',
    source: 'common practice, no source',
    judge: (panel) => {
      const depth = weaveDepth(panel);
      if (depth <= panel.outside.depth) return undefined;
      const [figure, limit] = unlikeLengths(depth, panel.outside.depth, panel.display);
      return {
        level: 'caution',
        text: 'The weave is thicker than the frame.',
        figure,
        limit,
        judged: (found, frame) => `Staves and slats are ${found} thick together, and the frame is ${frame} deep`,
        mend: 'a deeper frame, or thinner staves or slats',
        field: 'rail.depth',
      };
    },
  }),
];
