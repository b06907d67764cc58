import {
  arrangeLayouts,
  backMakers,
  type Drawing,
  elevationMaker,
  fit,
  type Layout,
  openingMakers,
  panelNotes,
  sideMaker,
  TooLarge,
  type ViewMaker,
} from '@wattlewright/drafting';
import type { Panel, Settled } from '@wattlewright/model';

import { remembering } from './inside.ts';
import { type Alike, namedAfterAll } from './makes.ts';
import { attempt, type Page } from './page.ts';

/** What the notes beside the elevations need to know. */
interface Beside {
  readonly on: Page;
  readonly like?: Panel;
  readonly ownPlan?: boolean;
}

/**
 * A panel from outside, and what is to be known of it beside: on the sheets that show the front largest, then the back, then
 * on the fewest. The end view stands at the scale of the front, beside it or beside the back where there is room, so that
 * heights read across.
 */
export function elevationLayouts(alike: Alike, { parts, job }: Settled, { on: page, ...like }: Beside): Layout[] {
  const [panel] = alike;
  const { paper, unit } = page;
  const finish = job.finish.kind === 'none' ? 'none' : `${job.finish.name}, ${job.finish.coats} coats`;
  const named = (view: ViewMaker): ViewMaker => remembering(namedAfterAll(view, alike));
  const front = named(elevationMaker(panel, { parts }));
  const back = backMakers(panel, parts).map(named);
  const side = remembering(sideMaker(panel, { parts }));
  const inPlace = openingMakers(panel, parts).map(named);
  const notes = untitled(panelNotes(panel, { finish, ...like }));
  const tried = (['landscape', 'portrait'] as const).flatMap((orientation) => {
    const { rooms } = orientation === 'landscape' ? page.wide : page.upright;
    const atMost = fit(front, rooms, unit)?.scale ?? 1;
    return [front, ...back, undefined].map((partner) => {
      const views = [front, ...back].map((view) => (view === partner ? level(view, side) : view));
      const items = [...views, partner ? level(side, partner) : side, ...inPlace].map((view) => ({
        ...view,
        atMost: inPlace.includes(view) ? atMost / 2 : atMost,
      }));
      return attempt((): Way => {
        const layouts = arrangeLayouts([...items, notes], { paper, unit, orientation });
        return { layouts, askew: partner === undefined ? 1 : isBeside(partner.name, layouts) ? 0 : 2 };
      });
    });
  });
  const ways = tried.filter((way): way is Way => !(way instanceof TooLarge));
  if (ways.length === 0) throw tried[0];
  return (ways.toSorted(better)[0] as Way).layouts;
}

/** One way to lay the sheets. */
interface Way {
  readonly layouts: Layout[];
  /** 0 where the end view stands level beside another, 1 where it stands as it comes, 2 where it was made level in vain. */
  readonly askew: number;
}

function better(a: Way, b: Way): number {
  const more = (name: string): number => scaleOf(name, b.layouts) - scaleOf(name, a.layouts);
  return more('elevation') || more('back') || a.layouts.length - b.layouts.length || more('side') || a.askew - b.askew;
}

/** Whether the end view stands on the sheet of another view. */
function isBeside(name: string, layouts: readonly Layout[]): boolean {
  return layouts.some(({ drawings }) =>
    ['side', name].every((one) => drawings.some((drawing) => drawing.name === one)),
  );
}

/** The scale of a view on some sheets, 0 where it is not. */
function scaleOf(name: string, layouts: readonly Layout[]): number {
  return layouts.flatMap(({ drawings }) => drawings).find((one) => one.name === name)?.scale ?? 0;
}

/** A view as high on paper as another of the same panel at the same scale takes, so that the two side by side are level. */
function level(view: ViewMaker, other: ViewMaker): ViewMaker {
  return {
    ...view,
    make: (scale) => {
      const drawing = view.make(scale);
      const { v0, v1 } = other.make(scale).bounds;
      const { bounds } = drawing;
      return { ...drawing, bounds: { ...bounds, v0: Math.min(bounds.v0, v0), v1: Math.max(bounds.v1, v1) } };
    },
  };
}

function untitled(drawing: Drawing): Drawing {
  return { ...drawing, title: '' };
}
