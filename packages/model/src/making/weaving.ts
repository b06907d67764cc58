import { type Panel, sideAt } from '../panel/panel.ts';
import { eachPanel, fineIn, type Making, type StepText } from './step.ts';

/** The step of weaving itself. */
export function weave(making: Making): StepText {
  const { panels } = making;
  const show = fineIn(making);
  const gaps = panels.some(({ courses }) => courses.gap > 0);
  const closed = panels.some(({ courses }) => courses.gap <= 0);
  return {
    title: 'Weave',
    cautions: [
      'A slat under bending flies when it slips: wear eye protection and keep your face out of its line. Set a slat aside that creaks or shows a crack.',
    ],
    text: [
      'Weave each slat over the free tops of the staves, in front and behind as the weave chart shows (+ in front, - behind), and slide it down. So fed in from the top, no slat is bent harder on its way than it stays bent.',
      ...(closed ? [`${gaps ? 'Where no gap is planned, press' : 'Press'} it down onto the course below.`] : []),
      ...(gaps
        ? [
            'Where gaps are planned, stop each slat at its mark on the stick. Two slips as thick as the gap help to hold it there; where slips and marks differ, the marks are right. The grip of the staves keeps the slat in its place.',
          ]
        : []),
      'Do not push a slat aside to slip a stave in afterwards: that bends it more for a moment.',
      'Check every course against its mark on both stiles before the next one. Move it by hand while it still can be moved; change a slat that is too high or too low to come to its mark.',
      'The ends lie free, with clearance at both stiles: share it, and never drive an end in. A slat that is too long bows.',
    ],
    figures: [
      ...eachPanel(panels, 'courses', ({ courses }) => String(courses.count)),
      ...eachPanel(panels, 'first course passes the left stave', (panel) =>
        sideAt(panel, 0, 0) > 0 ? 'in front' : 'behind',
      ),
      ...eachPanel(panels, 'rows, bottom up', (panel) => repeatText(panel.weave)),
      ...eachPanel(panels, 'course to course', ({ courses }) =>
        courses.gap > 0 ? `about ${show(courses.pitch)}; mark them from the stick` : show(courses.pitch),
      ),
      ...eachPanel(panels, 'clear at each end of a slat', (panel) => endClearance(panel, show)),
    ],
  };
}

/** Longest repeat that is written out, courses; a longer one is read off the chart. */
const WRITTEN = 24;

/** Every course of one repeat of the weave, bottom up, neighbours alike together. */
export function repeatText({ rows, rowOfCourse }: Pick<Panel['weave'], 'rows' | 'rowOfCourse'>): string {
  const repeat = repeatOf(rowOfCourse);
  if (repeat > WRITTEN) return 'every course of its own: see the weave chart';
  const text = (course: number) =>
    rows[rowOfCourse[course] as number]?.map((side) => (side > 0 ? '+' : '-')).join('') ?? '';
  const runs: { from: number; to: number; text: string }[] = [];
  for (let course = 0; course < repeat; course++) {
    const last = runs.at(-1);
    if (last && last.text === text(course)) last.to = course;
    else runs.push({ from: course, to: course, text: text(course) });
  }
  const said = runs.map(({ from, to, text: row }) => {
    const which =
      from === to ? `course ${from + 1}` : `courses ${from + 1}${to > from + 1 ? ' to ' : ' and '}${to + 1}`;
    return `${which} ${row}`;
  });
  return `${said.join(', ')}${repeat < rowOfCourse.length ? `; then as from course 1` : ''}`;
}

/** After how many courses the rows come again in the same order. */
function repeatOf(rowOfCourse: readonly number[]): number {
  const count = rowOfCourse.length;
  for (let period = 1; period < count; period++)
    if (rowOfCourse.every((row, course) => row === rowOfCourse[course % period])) return period;
  return count;
}

/** What is left between the first corner of a slat's square end and its stile. */
function endClearance({ rows }: Panel, show: (length: number) => string): string {
  const gaps = rows.map(({ bend, cutLength }) => Math.max(0, bend.cutLength - cutLength) / 2);
  const [least, most] = [show(Math.min(...gaps)), show(Math.max(...gaps))];
  return least === most ? least : `${least} to ${most}`;
}
