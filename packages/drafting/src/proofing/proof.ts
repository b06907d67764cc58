import type { Finding, Part } from '@wattlewright/model';
import { boxOf, pointsOf } from '../ink.ts';
import { contains, grown } from '../layout/clearance.ts';
import { rings } from '../layout/clip.ts';
import { printable, textBox } from '../lettering.ts';
import type { Box, Mark, Path, Sheet } from '../mark.ts';
import { clashes } from './clash.ts';
import { fault, placeName, sheetName } from './fault.ts';

/** What `proof` is told besides the sheets. */
export interface ProofOptions {
  /** The parts list, to be held against what is drawn. */
  readonly parts?: readonly Pick<Part, 'letter' | 'name'>[];
}

/** Smallest lettering, mm: the least of the heights that the drawings use. ISO 3098-1. */
const smallest = 2.5;
/** Printed sizes are read back as mm; sums agree within this, far under the finest mark of any rule. */
const sum = 1e-3;

/**
 * Whether the ink itself is sound: text on text or on wide lines, text under a face, ink outside the border, text under
 * 2.5 mm, a chain whose printed sizes do not make its printed total, a part drawn but not listed or listed but not drawn,
 * and characters that the lettering lacks. Nothing found is nothing wrong.
 */
export function proof(sheets: readonly Sheet[], options: ProofOptions = {}): Finding[] {
  return [...sheets.flatMap(proofSheet), ...(options.parts ? proofParts(sheets, options.parts) : [])];
}

function proofSheet(sheet: Sheet): Finding[] {
  const marks = [...sheet.figures.flatMap((figure) => figure.marks), ...sheet.furniture];
  return [...clashes(sheet, marks), ...outside(sheet, marks), ...lettering(sheet, marks), ...chains(sheet)];
}

function outside(sheet: Sheet, marks: readonly Mark[]): Finding[] {
  // A hundredth of a millimetre, so that a border drawn on the limit itself is inside it.
  const limit = grown(sheet.inside, 0.01);
  const where = sheetName(sheet);
  return marks.flatMap((mark): Finding[] => {
    const box = mark.kind === 'text' ? textBox(mark) : inkBox(mark.path, limit);
    if (contains(limit, box)) return [];
    const what = mark.kind === 'text' ? `“${mark.text}”` : `A line (${mark.role})`;
    return [fault('ink-outside', { where, text: `${what} runs outside.`, figure: placeName([box.u0, box.v0]) })];
  });
}

/** The box of a path: of its points where that is inside anyway, else of the curve itself. */
function inkBox(path: Path, limit: Box): Box {
  const points = pointsOf(path);
  const box = boxOf(points);
  if (contains(limit, box) || !path.some((step) => step[0] === 'C')) return box;
  const ends = path.flatMap((step) => pointsOf([step]).slice(-1));
  return boxOf([...ends, ...rings(path).flat()]);
}

function lettering(sheet: Sheet, marks: readonly Mark[]): Finding[] {
  const where = sheetName(sheet);
  const replaced = new Map<string, readonly string[]>();
  const found: Finding[] = [];
  for (const mark of marks) {
    if (mark.kind !== 'text') continue;
    if (mark.height < smallest - 1e-9) {
      found.push(fault('text-small', { where, text: `“${mark.text}” is too small.`, figure: `${mark.height} mm` }));
    }
    const lacking = printable(mark.text).replaced;
    if (lacking.length > 0) replaced.set(mark.text, lacking);
  }
  for (const [text, lacking] of replaced) {
    const figure = [...new Set(lacking)].map(name).join(', ');
    found.push(
      fault('glyph-replaced', { where, text: `“${text}” is printed with □ or a code for ${figure}.`, figure }),
    );
  }
  return found;
}

/** A character by its number, such as `U+1F332`. */
function name(cluster: string): string {
  return [...cluster]
    .map((c) => `U+${(c.codePointAt(0) as number).toString(16).toUpperCase().padStart(4, '0')}`)
    .join(' ');
}

function chains(sheet: Sheet): Finding[] {
  const where = sheetName(sheet);
  return sheet.chains.flatMap(({ what, parts, total, saidSo }): Finding[] => {
    const made = parts.reduce((all, part) => all + part, 0);
    if (saidSo === true || Math.abs(made - total) <= sum) return [];
    const figure = `${made.toFixed(3)} mm against ${total.toFixed(3)} mm`;
    return [fault('chain-sum', { where, text: `The printed sizes of ${what} do not make the printed total.`, figure })];
  });
}

function proofParts(sheets: readonly Sheet[], parts: readonly Pick<Part, 'letter' | 'name'>[]): Finding[] {
  const drawn = new Map<string, string>();
  for (const sheet of sheets) {
    for (const { marks } of sheet.figures) {
      for (const { of } of marks) if (of !== undefined && !drawn.has(of)) drawn.set(of, sheetName(sheet));
    }
  }
  const listed = new Set(parts.flatMap(({ letter, name }) => [letter, name]));
  const unlisted = [...drawn].filter(([of]) => !listed.has(of));
  const undrawn = parts.filter(({ letter, name }) => !drawn.has(letter) && !drawn.has(name));
  return [
    ...unlisted.map(([of, where]) =>
      fault('part-unlisted', { where, text: `Part ${of} is drawn but not listed.`, figure: of }),
    ),
    ...undrawn.map(({ letter, name }) =>
      fault('part-undrawn', {
        where: 'parts list',
        text: `Part ${letter}, ${name}, is listed but not drawn.`,
        figure: letter,
      }),
    ),
  ];
}
