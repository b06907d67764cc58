import { type Panel, sideAt } from '@wattlewright/model';
import { TEXT } from '../layout/style.ts';
import { wrapText } from '../lettering.ts';
import type { Mark } from '../mark.ts';
import { write } from '../mark.ts';
import type { Ticks } from './weaveticks.ts';

/** Widest legend, mm: longer lines are hard to follow. Common practice, no source. */
const LEGEND = 185;

/** From the weave to the legend, from line to line of it, and under it, mm. */
const GAP = 3;
const STEP = 4.4;
const REST = 1.5;

/** What a legend says beyond how to read the weave. */
export interface LegendOptions {
  readonly width: number;
  /** Whether the staves go on over pages. */
  readonly split: boolean;
  /** Whether the page brackets a repeat. */
  readonly bracketed: boolean;
  /** Panels of fewer staves than the chart. */
  readonly narrower: readonly Panel[];
  readonly ticks: Ticks;
}

/** How to read the chart, in lines no wider than `width`. */
export function legendLines(
  panel: Panel,
  { width, split, bracketed, narrower, ticks }: LegendOptions,
): readonly string[] {
  const { weave } = panel;
  const every = weave.repeat.courses;
  const repeat =
    every >= panel.courses.count
      ? 'The weave does not repeat within the panel.'
      : `The weave repeats every ${every} course${every === 1 ? '' : 's'}${bracketed ? ' (one repeat is bracketed)' : ''}.`;
  const text = [
    `Seen from the front, bottom course first. Black, + in the steps: the slat passes in front of the stave. Where the stave runs on, light, − in the steps: behind it.`,
    `${capital(weave.name)}; course 1 starts ${sideAt(panel, 0, 0) > 0 ? 'in front of' : 'behind'} the left stave.`,
    repeat,
    ticks.tally > 0
      ? `Tally each course when it is in, a stroke for each of the ${ticks.tally} panels.`
      : `Tick each course when it is in${ticks.boxes > 1 ? ', a column for each panel' : ''}.`,
    ...narrower.map(({ name, staves }) => `${name} has staves 1 to ${staves.count} alone.`),
    split ? 'One stave stands on both neighbouring pages.' : '',
  ]
    .filter(Boolean)
    .join(' ');
  return wrapText(text, Math.min(width, LEGEND), TEXT);
}

/** From the weave to the end of the legend under it, mm. */
export function legendHeight(lines: readonly string[]): number {
  return GAP + TEXT + (lines.length - 1) * STEP + REST;
}

/** The legend under a weave that ends at `foot`. */
export function legendMarks(legend: readonly string[], foot: number): Mark[] {
  return legend.map((words, i) => write('note', words, [0, foot + GAP + TEXT + i * STEP], { height: TEXT }));
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
