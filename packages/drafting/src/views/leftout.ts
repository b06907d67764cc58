import type { CutPlan, Part } from '@wattlewright/model';
import { tablePages } from '../layout/table.ts';
import { fractions } from '../lettering.ts';
import type { Drawing } from '../mark.ts';

/** Letters of the parts of which a plan leaves some or all pieces uncut, in the order of the parts. */
export function lettersLeftOut({ status, refusal }: CutPlan, parts: readonly Part[]): string[] {
  if (status !== 'impossible') return [];
  const left = new Set([refusal?.part, ...(refusal?.each ?? []), ...(refusal?.short ?? [])].map(letterOf));
  return parts.map(({ letter }) => letter).filter((letter) => left.has(letter));
}

function letterOf(of: string | { readonly part: string } | undefined): string | undefined {
  return typeof of === 'object' ? of.part : of;
}

/** The parts that the boards to buy do not give: how many pieces, what is in the way, and what to buy. */
export function leftOutTable(
  { status, refusal }: CutPlan,
  parts: readonly Part[],
  room: { readonly width: number; readonly height: number },
): Drawing[] {
  if (status !== 'impossible' || refusal === undefined) return [];
  const { each = [], short = [], text } = refusal;
  const partOf = (letter: string): Part | undefined => parts.find((part) => part.letter === letter);
  const named = (letter: string): string => [letter, partOf(letter)?.name].filter(Boolean).join(', ');
  const whole = each.map(({ part, why, buy }) => {
    const { count = 0, spare = 0 } = partOf(part) ?? {};
    return [named(part), `${count + spare}`, sentence(why), sentence(buy)];
  });
  const some = short.map(({ part, count }) => [named(part), `${count}`, 'The boards there are run out', 'Buy more']);
  const rows = [...whole, ...some];
  return tablePages({
    name: 'left-out',
    title: 'Not in the boards to buy',
    alt: 'Parts that the boards do not give, why, and what to buy.',
    columns: [{ title: 'Part' }, { title: 'Pieces', align: 'right' }, { title: 'Why' }, { title: 'What to buy' }],
    rows: (rows.length > 0 ? rows : [['', '', sentence(text), '']]).map((row) => row.map(fractions)),
    balance: true,
    ...room,
  });
}

/** `C and E`, `C, D and E`. */
export function andText(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** With a capital at its beginning. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
