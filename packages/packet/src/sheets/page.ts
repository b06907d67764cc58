import {
  type Box,
  type Drawing,
  type Frame,
  frame,
  type Layout,
  lay,
  SHEET_PAPERS,
  type SheetPaperName,
  TooLarge,
} from '@wattlewright/drafting';
import { type Job, JobError } from '@wattlewright/model';

/** The paper of a packet, both ways round, and the job's unit: what every maker of sheets needs. */
export interface Page {
  readonly paper: SheetPaperName;
  readonly unit: Job['display']['unit'];
  readonly upright: Frame;
  readonly wide: Frame;
  /** The way that lists and text lie: upright on small paper, wide on large. */
  readonly text: Frame;
  /** Columns of running text. */
  readonly columns: number;
}

/** Sheet sizes of one series, each twice the last or nearly. */
const SERIES: readonly (readonly SheetPaperName[])[] = [
  ['A4', 'A3', 'A2'],
  ['Letter', 'Tabloid', 'ARCH C'],
];

/** A sheet of a packet. */
export interface PacketLayout extends Layout {
  /** What did not fit the job's paper, where the sheet is therefore on a larger one. */
  readonly outgrew?: string;
}

/** The page that a job asks for. */
export function pageFor({ paper, display }: Pick<Job, 'paper' | 'display'>): Page {
  return pageOf(paper.sheets as SheetPaperName, display.unit);
}

/**
 * The sheets that `make` lays on the paper of the job, or on the smallest larger one of its series that holds them.
 * @throws {JobError} what fits not even the largest, at `paper.sheets`
 */
export function onPaper(page: Page, make: (page: Page) => readonly Layout[]): PacketLayout[] {
  const series = SERIES.find((names) => names.includes(page.paper)) ?? [page.paper];
  const refused: TooLarge[] = [];
  for (const paper of series.slice(series.indexOf(page.paper))) {
    const made = attempt(() => make(paper === page.paper ? page : pageOf(paper, page.unit)));
    const [first] = refused;
    if (!(made instanceof TooLarge))
      return made.map((layout) => ({ ...layout, ...(first && { outgrew: first.what }) }));
    refused.push(made);
  }
  const { what, sizes } = refused.at(-1) as TooLarge;
  const others = SERIES.flatMap((names) => names.slice(-1)).filter((name) => !series.includes(name));
  const would = others.find((name) => !(attempt(() => make(pageOf(name, page.unit))) instanceof TooLarge));
  const remedy = would ?? 'smaller panels, or fewer panels in a run';
  throw new JobError([
    {
      path: 'paper.sheets',
      found: page.paper,
      message: `${what} fits no paper up to ${series.at(-1)} (${sizes}): ${remedy} would do`,
    },
  ]);
}

/** What is made, or the word that it fits no sheet of the paper. */
export function attempt<T>(make: () => T): T | TooLarge {
  try {
    return make();
  } catch (error) {
    if (error instanceof TooLarge) return error;
    throw error;
  }
}

function pageOf(paper: SheetPaperName, unit: Page['unit']): Page {
  const upright = frame(SHEET_PAPERS[paper], 'portrait');
  const wide = frame(SHEET_PAPERS[paper], 'landscape');
  const small = paper === 'A4' || paper === 'Letter';
  const text = small ? upright : wide;
  return { paper, unit, upright, wide, text, columns: columnsOn(textRoom(text).width) };
}

/**
 * Width of a column of running text that reads easily, mm: some sixty letters, and more on a sheet so wide that the columns
 * would be many; common practice, no source.
 */
const MEASURE = { usual: 95, wide: 115 } as const;

/** A sheet's room for text from which it counts as wide, mm: more than A3 and Tabloid have. */
const WIDE = 450;

/** How many columns of running text stand side by side in a width, mm. */
function columnsOn(width: number): number {
  return Math.max(1, Math.round(width / (width > WIDE ? MEASURE.wide : MEASURE.usual)));
}

/** Room for a titled table or text on a sheet: the room above the title block, less the title. */
export function textRoom({ rooms }: Frame): { readonly width: number; readonly height: number } {
  const { u0, v0, u1, v1 } = rooms[0] as Box;
  return { width: u1 - u0, height: v1 - v0 - TITLE };
}

/** A table's or text's title over it, mm: lettering of 3.5 and its gap. */
const TITLE = 10;

/** Drawings of the same kind, one after the other on as few sheets as they need, under one subject. */
export function sheetsOf(drawings: readonly Drawing[], on: Frame, { unit }: Page, subject: string): Layout[] {
  return lay(drawings, on, unit).map((layout) => ({ ...layout, subject }));
}
