/** Letters of a panel's sections and details, T to Z. No part ever has one, however many parts there are. */
export const VIEW_LETTERS = ['T', 'U', 'V', 'W', 'X', 'Y', 'Z'] as const;

/** What part letters are made of: not I and O, which read as figures, and not what views are called by. */
const PART_LETTERS: readonly string[] = [...'ABCDEFGHJKLMNPQRSTUVWXYZ'].filter(
  (letter) => !(VIEW_LETTERS as readonly string[]).includes(letter),
);

/** The letter of a part by its place in the list, from 0: A, B ... S, AA, AB ... */
export function partLetter(index: number): string {
  const count = PART_LETTERS.length;
  const last = PART_LETTERS[index % count] as string;
  return index < count ? last : partLetter(Math.floor(index / count) - 1) + last;
}
