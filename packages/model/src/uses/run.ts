import type { Job, Run } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';
import { bottomAbove } from './wind.ts';

/** One post of a run: its left face and width along the run, mm. */
export interface RunPost {
  readonly x: number;
  readonly width: number;
}

/** One panel in its place in a run, mm: x of its left edge along the run, y of its lower edge above the floor. */
export interface RunPanel {
  readonly name: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** Heights above the floor of the lower edges of its courses, and of the top one's upper edge. */
  readonly levels: readonly number[];
}

/** Panels and posts of one run in their places, from the left face of the first post (or panel), mm. */
export interface RunLayout {
  readonly name: string;
  readonly posts: readonly RunPost[];
  readonly panels: readonly RunPanel[];
  readonly total: number;
  /** Highest edge of frame or cap above the floor. */
  readonly top: number;
  /** Whether every course line runs through, and by how much the worst one steps. */
  readonly level: { readonly equal: boolean; readonly off: number };
  /** Clear width between neighbouring posts, bay by bay; empty without posts. */
  readonly bays: readonly number[];
}

/** Course lines nearer than this are one line: the finest mark of a millimetre tape, mm. */
const SAME_LEVEL = 0.5;

/** Every run of the job with its panels and posts in their places. */
export function layRuns(job: Job, panels: readonly Panel[]): RunLayout[] {
  return job.runs.map((run) => layRun(run, panels));
}

/**
 * One run from left to right: post, gap, panel, gap, post; or panels side by side with a gap where there are no posts.
 * A panel with an opening keeps the gaps of its opening. Names without a panel are passed over.
 */
export function layRun(run: Run, panels: readonly Panel[]): RunLayout {
  const row = run.panels.flatMap((name) => panels.find((panel) => panel.name === name) ?? []);
  const posts: RunPost[] = [];
  const placed: RunPanel[] = [];
  let x = 0;
  const post = () => {
    posts.push({ x, width: run.post });
    x += run.post;
  };
  if (run.post > 0) post();
  row.forEach((panel, i) => {
    const { left, right } = runGaps(run, panel);
    if (run.post > 0) x += left;
    placed.push(placePanel(panel, x));
    x += panel.outside.width;
    if (run.post > 0) {
      x += right;
      post();
    } else if (i < row.length - 1) x += run.gap;
  });
  const caps = row.map((panel) => (panel.details.use === 'guard' ? (panel.details.cap?.height ?? 0) : 0));
  return {
    name: run.name,
    posts,
    panels: placed,
    total: x,
    top: Math.max(0, ...placed.map(({ y, height }, i) => y + height + (caps[i] ?? 0))),
    level: levelOf(placed),
    bays: posts.slice(1).map((next, i) => next.x - ((posts[i]?.x ?? 0) + run.post)),
  };
}

/** Gaps of a panel to its neighbours in a run: those of its opening where it has one, else the run's. */
export function runGaps(run: Pick<Run, 'gap'>, panel: Panel): { readonly left: number; readonly right: number } {
  return panel.opening?.gaps ?? { left: run.gap, right: run.gap };
}

function placePanel(panel: Panel, x: number): RunPanel {
  const y = bottomAbove(panel);
  const { courses, outside } = panel;
  const last = (courses.bottoms.at(-1) ?? 0) + courses.height;
  return {
    name: panel.name,
    x,
    y,
    width: outside.width,
    height: outside.height,
    levels: [...courses.bottoms, last].map((bottom) => y + bottom),
  };
}

function levelOf(placed: readonly RunPanel[]): RunLayout['level'] {
  const most = Math.max(0, ...placed.map(({ levels }) => levels.length));
  const offs = Array.from({ length: most }, (_, i) => {
    const line = placed.flatMap(({ levels }) => levels[i] ?? []);
    return Math.max(...line) - Math.min(...line);
  });
  const off = Math.max(0, ...offs);
  return { equal: off <= SAME_LEVEL && placed.every(({ levels }) => levels.length === most), off };
}
