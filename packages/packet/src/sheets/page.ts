import {
  type Box,
  type Drawing,
  type Frame,
  frame,
  type Layout,
  lay,
  SHEET_PAPERS,
  type SheetPaperName,
} from '@wattlewright/drafting';
import type { Job } from '@wattlewright/model';

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

/**
 * What `make` gives on the paper of the job, or on the smallest larger one of its series on which everything can be read.
 * @throws {RangeError} what fits not even the largest
 */
export function onPaper<T>({ paper, display }: Pick<Job, 'paper' | 'display'>, make: (page: Page) => T): T {
  const named = paper.sheets as SheetPaperName;
  const series = SERIES.find((names) => names.includes(named)) ?? [named];
  const [first = named, ...larger] = series.slice(series.indexOf(named));
  try {
    return make(pageOf(first, display.unit));
  } catch (error) {
    const [next] = larger;
    if (!(error instanceof RangeError) || next === undefined) throw error;
    return onPaper({ paper: { ...paper, sheets: next }, display }, make);
  }
}

function pageOf(paper: SheetPaperName, unit: Page['unit']): Page {
  const upright = frame(SHEET_PAPERS[paper], 'portrait');
  const wide = frame(SHEET_PAPERS[paper], 'landscape');
  const small = paper === 'A4' || paper === 'Letter';
  return { paper, unit, upright, wide, text: small ? upright : wide, columns: small ? 1 : 2 };
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
