import type { Panel } from '../panel/panel.ts';

/** Screens before a window that is a way of escape: they must not be screwed fast. */
export function escapeScreens(panels: readonly Panel[]): Panel[] {
  return panels.filter(({ details }) => details.use === 'screen' && details.bedroom);
}
