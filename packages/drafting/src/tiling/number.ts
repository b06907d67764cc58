import { type Sheet, write } from '../mark.ts';

/** From the corner of where ink may stand to the number of a page, mm: under the check bar, in the room that `footer` leaves. */
const IN = { u: 3, v: 1.2 } as const;

/** Full-size pages of one file, each saying which of them it is. */
export function numberPages(sheets: readonly Sheet[]): Sheet[] {
  return sheets.map((sheet, i) => {
    const { u0, v1 } = sheet.inside;
    const text = `Page ${i + 1} of ${sheets.length} in this file`;
    return { ...sheet, furniture: [...sheet.furniture, write('note', text, [u0 + IN.u, v1 - IN.v], { height: 2.5 })] };
  });
}
