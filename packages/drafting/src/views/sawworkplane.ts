import type { Marks, Saw, Stock } from '@wattlewright/model';
import type { Block } from '../layout/prose.ts';
import type { BoardCuts } from './cutboard.ts';
import { planedStrips, THIN_PLANED, thinPlaned } from './cutplaned.ts';
import { patternsText, sectionText } from './cutsize.ts';

/** What becomes of rough boards before they are ripped: crosscut first where they are crosscut, then planed. */
export function roughBoards(
  boards: readonly BoardCuts[],
  of: { readonly stock: readonly Stock[]; readonly offcuts: readonly Stock[]; readonly display: Marks },
): string[] {
  const { stock, offcuts, display } = of;
  const rough = new Map<string, { size: string; crosscut: boolean; list: number[] }>();
  boards.forEach(({ board, cuts }, i) => {
    const bought = (board.from === 'stock' ? stock : offcuts)[board.stock];
    if (bought?.surface !== 'rough') return;
    const from = sectionText(bought.thickness, bought.width, display);
    const size = `from ${from} to ${sectionText(board.thickness, board.width, display)} ${display.unit}`;
    const crosscut = cuts.kerfs.length > (cuts.datum > 0 ? 1 : 0);
    const entry = rough.get(`${size} ${crosscut}`) ?? { size, crosscut, list: [] };
    entry.list.push(i);
    rough.set(`${size} ${crosscut}`, entry);
  });
  return [...rough.values()].map(({ size, crosscut, list }) =>
    crosscut
      ? `Rough boards of ${patternsText(list, boards)}: crosscut them first as table 1 says, a little over where the board has it to spare, then plane each length all round ${size}: a short length comes flat where a whole board that is bent would not. Then square the ends at the stop.`
      : `Plane the rough boards of ${patternsText(list, boards)} all round ${size}.`,
  );
}

/** The caution for strips that are planed thin; none where there are none. Common practice, no source. */
export function planeCautions(boards: readonly BoardCuts[], { planing }: Pick<Saw, 'planing'>): Block[] {
  const lengths = boards.flatMap(({ ripped }) => ripped);
  const strips = lengths.flatMap((length) => planedStrips(length));
  const blanks = lengths.flatMap(({ stages }) => stages);
  const sawn = lengths.flatMap((length) => length.strips.filter(({ letters }) => letters.length > 0));
  const thin =
    strips.some(thinPlaned) ||
    blanks.some(thinPlaned) ||
    (planing > 0 && sawn.some(({ box }) => Math.min(box.width, box.height) < THIN_PLANED));
  if (!thin) return [];
  return [
    {
      kind: 'caution',
      text: 'Thin strips at the plane: a planing machine breaks up what is thinner than about 8 mm (5/16 in) and feeds it badly. Plane faces on a flat carrier board with a low stop behind the strip, a little at a time, or take them down by hand plane or sander. Plane edges with several strips clamped together on edge between two battens, never one alone. A strip that is not ripped again may be planed after it is crosscut; nothing shorter than the machine’s rollers are apart goes through it.',
    },
  ];
}
