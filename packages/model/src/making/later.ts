import type { ScrewRow } from '../hardware/row.ts';
import { screwSchedule } from '../hardware/schedule.ts';
import type { Panel } from '../panel/panel.ts';
import { sideFixings } from '../uses/fixings.ts';
import { escapeScreens } from './escape.ts';

/** Joints that are drilled in the steps that close them, each in a word. */
const LATER: Readonly<Partial<Record<ScrewRow['joint'], string>>> = {
  'cover strip to top rail': 'pins of the cover strips',
  'stop strip to stile': 'pins of the stop strips',
  'foot to bottom rail': 'the feet',
  'cap rail to top rail': 'the cap rail',
  'hinge to stile': 'hinges',
  'brace plate to frame': 'brace plates',
  'strut to frame': 'the strut',
};

/** What is drilled in the steps that close it, since it is marked from what it joins. */
export function drilledLater(panels: readonly Panel[]): string[] {
  const joints = panels.flatMap((panel) => screwSchedule(panel).map(({ joint }) => joint));
  const brackets = panels.some(isBracketed);
  return [...new Set(joints.flatMap((joint) => LATER[joint] ?? [])), ...(brackets ? ['brackets'] : [])];
}

/** Whether brackets at its back hold the panel. */
export function isBracketed(panel: Panel): boolean {
  return hasFixings(panel) && escapeScreens([panel]).length === 0 && sideFixings(panel).kind === 'bracket';
}

function hasFixings({ details }: Panel): boolean {
  return details.use === 'screen' || details.use === 'guard';
}

/** Whether the panel is screwed fast through its stiles, whose holes are bored at the bench. */
export function isBoredThrough(panel: Panel): boolean {
  const { details } = panel;
  return details.use === 'screen' && details.mounting !== 'posts' && escapeScreens([panel]).length === 0;
}
