import { INCH } from '../length.ts';
import { type Panel, sideAt, weaveDepth } from '../panel/panel.ts';
import { weaveReach } from '../panel/reach.ts';
import { eachPanel, fineIn, type Making, namedOf, roundIn, type StepText } from './step.ts';
import { bendCautions } from './trial.ts';

/** Frames up to this tall are woven lying, taller ones standing, mm: 48 in; common practice, no source. */
const LYING = 48 * INCH;

/** Whether a frame is woven standing, by two. */
export function isWovenByTwo({ outside }: Panel): boolean {
  return outside.height > LYING;
}

/** How the frame lies or stands while it is woven, and how many weave it. */
export function standTexts(making: Making): string[] {
  const { panels } = making;
  const tall = panels.filter(isWovenByTwo);
  const low = panels.filter((panel) => !tall.includes(panel));
  const said = (some: readonly Panel[], text: string) => {
    const whose = namedOf(some, panels);
    return some.length === 0 ? [] : [whose === '' ? text : `${whose}${text.charAt(0).toLowerCase()}${text.slice(1)}`];
  };
  return [
    ...said(
      low,
      'Lay the frame across two trestles, its open end towards you, so that a hand reaches the slats from above and from below. One can weave it.',
    ),
    ...said(
      tall,
      `Over ${roundIn(making, 1200, '48')} tall it is woven standing, by two: clamp the frame upright by its stiles, its foot on blocks, both faces free. One at each end of the slat, on a step where the stave tops are over shoulder height; both guide it down.`,
    ),
  ];
}

/** The step of weaving itself. */
export function weave(making: Making): StepText {
  const { panels } = making;
  const show = fineIn(making);
  const gaps = panels.some(({ courses }) => courses.gap > 0);
  const closed = panels.some(({ courses }) => courses.gap <= 0);
  const flying = panels.filter(endsStandOut);
  return {
    title: 'Weave',
    cautions: [
      'A slat under bending flies when it slips: wear eye protection and keep your face out of its line. Set a slat aside that creaks or shows a crack.',
      ...bendCautions(panels),
    ],
    text: [
      'Weave each slat over the free tops of the staves, in front and behind as the weave chart shows, and slide it down. So fed in from the top, no slat is bent harder on its way than it stays bent.',
      ...(closed ? [`${gaps ? 'Where no gap is planned, press' : 'Press'} it down onto the course below.`] : []),
      ...(gaps
        ? [
            'Where gaps are planned, stop each slat at its mark on the stick. Two slips as thick as the gap help to hold it there; where slips and marks differ, the marks are right. The grip of the staves keeps the slat in its place.',
          ]
        : []),
      'Do not push a slat aside to slip a stave in afterwards: that bends it more for a moment.',
      `Check every course against its mark on both stiles before the next one. Move it by hand while it still can be moved; where it stays more than ${roundIn(making, 1.5, '1/16')} off, take another slat, higher or lower.`,
      'The ends lie free, with clearance at both stiles: share it, and never drive an end in. A slat that is too long bows.',
      ...(flying.length > 0
        ? [
            `${namedOf(flying, panels)}${flying.length < panels.length ? 'the' : 'The'} ends stand out past the face of the frame, where nothing holds them, as the findings tell. Settle what is to hold them before you weave.`,
          ]
        : []),
    ],
    figures: [
      ...eachPanel(panels, 'courses', ({ courses }) => String(courses.count)),
      ...eachPanel(panels, 'first course passes the left stave', (panel) =>
        sideAt(panel, 0, 0) > 0 ? 'in front' : 'behind',
      ),
      ...eachPanel(panels, 'course to course', ({ courses }) =>
        courses.gap > 0 ? `about ${show(courses.pitch)}; mark them from the stick` : show(courses.pitch),
      ),
      ...eachPanel(panels, 'clear at each end of a slat', (panel) => endClearance(panel, show)),
    ],
  };
}

/** What is left between the first corner of a slat's square end and its stile. */
function endClearance({ rows }: Panel, show: (length: number) => string): string {
  const gaps = rows.map(({ bend, cutLength }) => Math.max(0, bend.cutLength - cutLength) / 2);
  const [least, most] = [show(Math.min(...gaps)), show(Math.max(...gaps))];
  return least === most ? least : `${least} to ${most}`;
}

/** Whether slat ends stand out past a face of the frame, and past the weave: nothing holds them there. */
function endsStandOut(panel: Panel): boolean {
  const { front, back } = weaveReach(panel);
  const out = Math.max(front, back);
  return out > panel.outside.depth / 2 + 1e-9 && out > weaveDepth(panel) / 2 + 1e-9;
}
