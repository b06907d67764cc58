import {
  approval,
  compose,
  type Drawing,
  elevationMaker,
  fit,
  type Layout,
  type Pane,
  paneBox,
  prosePages,
  type ViewMaker,
} from '@wattlewright/drafting';
import type { Panel, Settled } from '@wattlewright/model';

import { clientBlocks, stopsOf } from './clienttexts.ts';
import { type Alike, grouped, makeOf, namedAfterAll, namesText } from './makes.ts';
import { onPaper, type PacketLayout, type Page, sheetsOf } from './page.ts';

/**
 * One sheet for the client for each make of panel: how it looks, how large it is, of what, how heavy, and lines to sign on.
 * Panels of one run are drawn at one scale and lie one way, so that the smallest looks it.
 */
export function clientSheets(settled: Settled, asked: Page): PacketLayout[] {
  return inRuns(settled).flatMap((makes) => onPaper(asked, (page) => sheetsOfRun(makes, settled, page)));
}

/** The makes of panels, those of one run together, in the order of the job. */
function inRuns({ job, panels }: Settled): Alike[][] {
  const runOf = ({ name }: Panel): number => job.runs.findIndex((run) => run.panels.includes(name));
  const keyOf = (panel: Panel): string => (runOf(panel) < 0 ? makeOf(panel) : `run ${runOf(panel)}`);
  return grouped(panels, keyOf).map((group) => grouped(group, makeOf));
}

function sheetsOfRun(makes: readonly Alike[], settled: Settled, page: Page): Layout[] {
  const tall = makes.every(([{ outside }]) => outside.height > outside.width * 0.8);
  const views = makes.map((alike) => viewOf(alike, settled));
  const ways = [
    wayOf(makes, settled, { on: tall ? page.upright : page.wide, kind: tall ? 'tall' : 'wide' }),
    wayOf(makes, settled, { on: page.wide, kind: 'beside' }),
  ].map((way) => ({ ...way, atMost: scaleIn(views, way, page.unit) }));
  // Notes on the sheet of the view come before a larger view.
  const [best] = ways.toSorted((a, b) => Number(b.isWhole) - Number(a.isWhole) || b.atMost - a.atMost);
  const { places, on, atMost } = best as (typeof ways)[number];
  return makes.flatMap((alike, i): Layout[] => {
    const [panel] = alike;
    const [notes, ...more] = notesOf(alike, settled, places, on);
    const sign = paneBox(on, places.sign);
    const signed = approval(Math.min(110, sign.u1 - sign.u0), {
      open: stopsOf(panel, settled).length,
      height: sign.v1 - sign.v0,
    });
    const panes: Pane[] = [
      { item: { ...(views[i] as ViewMaker), ...(atMost > 0 && { atMost }) }, ...places.view },
      ...(notes ? [{ item: notes, ...places.notes, align: 'top-left' as const }] : []),
      { item: signed, ...places.sign, align: 'top-left' as const },
    ];
    const subject = `${namesText(alike)}: for the client`;
    return [compose(panes, on, { unit: page.unit, subject }), ...sheetsOf(more, on, page, subject)];
  });
}

/** How view, notes and signatures share a sheet, and whether all notes stand on it. */
interface Way {
  readonly places: Places;
  readonly on: Page['wide'];
  readonly isWhole: boolean;
}

function wayOf(
  makes: readonly Alike[],
  settled: Settled,
  { on, kind }: { readonly on: Page['wide']; readonly kind: Kind },
): Way {
  const isWhole = (top: number): boolean =>
    makes.every((alike) => notesOf(alike, settled, placesFor(kind, top), on).length === 1);
  const top = TOPS[kind].find(isWhole);
  return { places: placesFor(kind, top ?? (TOPS[kind].at(-1) as number)), on, isWhole: top !== undefined };
}

/** The largest scale at which all views fit, 0 where one fits at none. */
function scaleIn(views: readonly ViewMaker[], { places, on }: Way, unit: Page['unit']): number {
  const room = paneBox(on, places.view);
  return Math.min(...views.map((view) => fit(view, [room], unit)?.scale ?? 0));
}

/** The front view, under the names of all that look so. */
function viewOf(alike: Alike, { parts }: Settled): ViewMaker {
  return namedAfterAll(elevationMaker(alike[0], { parts, detail: 'client' }), alike);
}

/** Notes and signatures under the view, on an upright or a wide sheet, or beside it. */
type Kind = 'tall' | 'wide' | 'beside';

/** Shares of the sheet for the view, of its height or of its width, tried until the notes stand on the same sheet. */
const TOPS: Readonly<Record<Kind, readonly number[]>> = {
  tall: [0.7, 0.65, 0.6, 0.55, 0.5, 0.45, 0.4],
  wide: [0.6, 0.55, 0.5, 0.45, 0.4],
  beside: [0.68, 0.64, 0.6, 0.56, 0.52],
};

type Places = Readonly<Record<'view' | 'notes' | 'sign', Omit<Pane, 'item'>>>;

function notesOf(alike: Alike, settled: Settled, { notes }: Places, on: Page['wide']): Drawing[] {
  const box = paneBox(on, notes);
  return prosePages({
    name: 'client-notes',
    title: '',
    alt: `Size, wood, finish and weight of ${namesText(alike)}.`,
    blocks: clientBlocks(alike[0], settled),
    width: Math.min(box.u1 - box.u0, 150),
    height: box.v1 - box.v0,
  });
}

/** Where view, notes and signatures stand, the view down to `top`, or as far as that to the right. */
function placesFor(kind: Kind, top: number): Places {
  if (kind === 'beside') {
    const width = 1 - top;
    return {
      view: { left: 0, top: 0, width: top, height: 1 },
      notes: { left: top, top: 0, width, height: SIGN_FROM },
      sign: { left: top, top: SIGN_FROM, width, height: 1 - SIGN_FROM },
    };
  }
  const split = kind === 'tall' ? 0.46 : 0.52;
  return {
    view: { left: 0, top: 0, width: 1, height: top },
    notes: { left: 0, top, width: split, height: 1 - top },
    sign: { left: split + 0.02, top: top + 0.02, width: 0.98 - split, height: 0.98 - top },
  };
}

/** Where the signatures start under notes beside the view, as a share of the height. */
const SIGN_FROM = 0.7;
