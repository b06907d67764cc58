import type { Measured, PanelSpec } from '../job/job.ts';
import { ceilToMark, fineMarks, type Marks } from '../length.ts';
import { allowanceMargin } from './courses.ts';
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

/** The sizes that the measured slats changed, planned against now. */
export function changesOf(planned: Panel, now: Panel): Change[] {
  const row = (what: string, size: (panel: Panel) => number): Change => ({
    what,
    planned: size(planned),
    now: size(now),
  });
  const first = (panel: Panel) => panel.rows[0]?.cutLength ?? 0;
  return [
    row('stack of courses', ({ courses }) => courses.stack),
    row('course height', ({ courses }) => courses.height),
    ...(planned.courses.gap > 0 ? [row('gap between courses', ({ courses }) => courses.gap)] : []),
    row('slat thickness', ({ courses }) => courses.thickness),
    row('room over the stack', ({ courses }) => courses.allowance),
    ...(planned.cover.height > 0 || now.cover.height > 0
      ? [
          row('height of the cover strips', ({ cover }) => cover.height),
          row('between the cover strips', ({ cover }) => 2 * cover.face),
        ]
      : []),
    row('stile length', ({ stile }) => stile.length),
    row('stave length', ({ staves }) => staves.length),
    row('slat length', first),
    row('outside height', ({ outside }) => outside.height),
    row('diagonal', ({ diagonal }) => diagonal),
  ];
}
