import type { Measured, PanelSpec } from '../job/job.ts';
import { ceilToMark, fineMarks, type Marks } from '../length.ts';
import { allowanceMargin } from './courses.ts';
import { stopThickness } from './cover.ts';
import type { Change, Courses, Panel } from './panel.ts';

/**
 * The courses as the cut slats really make them: the measured stack shared evenly among the courses, with the room over
 * it that this stack needs. Where open gaps close the height, the gaps take up the difference and the height stays.
 */
export function measuredCourses(
  planned: Courses,
  {
    spec,
    measured,
    swellShare,
    display,
    bottom,
  }: { spec: PanelSpec; measured: Measured; swellShare: number; display: Marks; bottom: number },
): Courses {
  const height = measured.stack / planned.count;
  const clear = planned.stack + planned.allowance;
  const open = planned.gap > 0;
  const gap = open ? Math.max(0, (clear - planned.allowance - measured.stack) / (planned.count - 1)) : 0;
  const needed = spec.allowance ?? ceilToMark(measured.stack * swellShare + allowanceMargin(display), display.mark);
  return {
    ...planned,
    height,
    thickness: measured.thickness,
    gap,
    pitch: height + gap,
    stack: measured.stack + gap * (planned.count - 1),
    // The frame stays as planned where the real stack leaves room enough, and grows where it does not.
    allowance: open
      ? planned.allowance
      : Math.min(Math.max(clear - measured.stack, needed), Math.max(planned.allowance, needed)),
    bottoms: planned.bottoms.map((_, i) => bottom + i * (height + gap)),
    // A measured height lies on no step of the fence.
    step: Math.min(planned.step, fineMarks(display).mark),
  };
}

/** The sizes that the measured slats changed, planned against now; a size that only one of them has is 0 in the other. */
export function changesOf(planned: Panel, now: Panel): Change[] {
  const row = (what: string, size: (panel: Panel) => number): Change => ({
    what,
    planned: size(planned),
    now: size(now),
  });
  const some = (has: (panel: Panel) => boolean, rows: () => Change[]): Change[] =>
    has(planned) || has(now) ? rows() : [];
  const lengths = new Set(planned.rows.map(({ cutLength }) => cutLength));
  return [
    row('stack of courses', ({ courses }) => courses.stack),
    row('course height', ({ courses }) => courses.height),
    ...some(
      ({ courses }) => courses.gap > 0,
      () => [row('gap between courses', ({ courses }) => courses.gap)],
    ),
    row('slat thickness', ({ courses }) => courses.thickness),
    row('lower edge of the top course, from the foot of the frame', ({ courses }) => courses.bottoms.at(-1) ?? 0),
    row('room over the stack', ({ courses }) => courses.allowance),
    ...some(
      ({ cover }) => cover.height > 0,
      () => [
        row('cover strip height', ({ cover }) => cover.height),
        row('cover strip thickness', ({ cover }) => cover.thickness),
        row('between the cover strips', ({ cover }) => 2 * cover.face),
      ],
    ),
    ...some(
      (panel) => stopThickness(panel) > 0,
      () => [
        row('stop strip length', ({ clear }) => clear.height),
        row('stop strip thickness', (panel) => stopThickness(panel)),
      ],
    ),
    row('stile length', ({ stile }) => stile.length),
    row('stave length', ({ staves }) => staves.length),
    ...[...lengths].map((length, i) => {
      const at = planned.rows.findIndex(({ cutLength }) => cutLength === length);
      return row(lengths.size > 1 ? `slat length ${i + 1}` : 'slat length', ({ rows }) => rows[at]?.cutLength ?? 0);
    }),
    row('outside height', ({ outside }) => outside.height),
    row('outside depth', ({ outside }) => outside.depth),
    row('diagonal', ({ diagonal }) => diagonal),
  ];
}
