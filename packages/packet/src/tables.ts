import { fineMarks, formatLength, type Job, type Part } from '@wattlewright/model';
import { stringify } from 'csv-stringify/sync';

/** Rows as comma-separated values (RFC 4180): CRLF, quotes where needed; cells that a spreadsheet would run are disarmed. */
export function csv(rows: readonly (readonly (string | number)[])[]): string {
  return stringify(
    rows.map((row) => [...row]),
    { record_delimiter: 'windows', escape_formulas: true },
  );
}

/**
 * `parts.csv`: one row a part, finished sizes in the job's unit as printed and in exact mm; `cut long by` is what stiles and
 * staves are first cut beyond their length; `in hand` is what is cut already where slats are measured, and `to cut` the rest
 * of count and spare.
 */
export function partsCsv(parts: readonly Part[], { display }: Job): string {
  const head = [
    'part',
    'name',
    'count',
    'spare',
    'in hand',
    'to cut',
    'length',
    'cut long by',
    'width',
    'thickness',
    'unit',
    'length mm',
    'cut long by mm',
    'width mm',
    'thickness mm',
    'wood',
    'grade',
    'grain',
    'where',
  ];
  const fine = fineMarks(display);
  const mm = (size: number) => Math.round(size * 1000) / 1000;
  return csv([
    head,
    ...parts.map((part) => [
      part.letter,
      part.name,
      part.count,
      part.spare,
      part.inHand ?? 0,
      part.count + part.spare - (part.inHand ?? 0),
      formatLength(part.length, fine),
      formatLength(part.over, fine),
      formatLength(part.width, fine),
      formatLength(part.thickness, fine),
      display.unit,
      mm(part.length),
      mm(part.over),
      mm(part.width),
      mm(part.thickness),
      part.wood,
      part.grade,
      'along the length',
      part.where.map(({ panel, count }) => `${panel}: ${count}`).join('; '),
    ]),
  ]);
}
