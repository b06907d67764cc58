import type { Finding } from '@wattlewright/model';
import type { Point, Sheet } from '../mark.ts';

/** What `proof` can find, with what each is judged by. */
export type FaultKind =
  | 'text-on-text'
  | 'text-on-line'
  | 'text-hidden'
  | 'ink-outside'
  | 'text-small'
  | 'chain-sum'
  | 'part-unlisted'
  | 'part-undrawn'
  | 'glyph-replaced';

const rules: Readonly<Record<FaultKind, Omit<Finding, 'code' | 'where' | 'text' | 'figure'>>> = {
  'text-on-text': {
    level: 'caution',
    limit: 'no text on another',
    reason: 'two texts on one place cannot be read',
    source: 'ISO 3098-1, clear lettering; common practice',
    mend: 'give the view more room: a smaller scale or a larger sheet',
  },
  'text-on-line': {
    level: 'caution',
    limit: 'no text on a wide line',
    reason: 'a wide line through a figure makes it another figure',
    source: 'ISO 129-1 (from memory): values are not crossed by any line',
    mend: 'give the view more room: a smaller scale or a larger sheet',
  },
  'text-hidden': {
    level: 'stop',
    limit: 'no face over a text',
    reason: 'what is covered cannot be read',
    source: 'common practice, no source',
    mend: 'write the text after the face, or beside it',
  },
  'ink-outside': {
    level: 'stop',
    limit: 'all ink inside the border or the printable area',
    reason: 'ink outside is clipped by the printer or runs into the margin',
    source: 'ISO 5457, borders; common practice for printers',
    mend: 'choose a larger sheet or a smaller scale',
  },
  'text-small': {
    level: 'caution',
    limit: 'at least 2.5 mm',
    reason: 'smaller lettering cannot be read at the bench',
    source: 'ISO 3098-1, heights 2.5, 3.5, 5 mm',
    mend: 'write it at 2.5 mm and give it more room',
  },
  'chain-sum': {
    level: 'stop',
    limit: 'parts make the total, or the sheet says that they do not',
    reason: 'sizes stepped off one by one would miss the total',
    source: 'ISO 129-1 practice; common practice, no source',
    mend: 'state running dimensions from one datum, or say that each size is rounded by itself',
  },
  'part-unlisted': {
    level: 'stop',
    limit: 'every part drawn is listed',
    reason: 'a part that is not in the list is not cut',
    source: 'common practice, no source',
    mend: 'list the part, or mark the ink as no part',
  },
  'part-undrawn': {
    level: 'caution',
    limit: 'every part listed is drawn',
    reason: 'the maker cannot see where the part goes',
    source: 'common practice, no source',
    mend: 'show the part in a view',
  },
  'glyph-replaced': {
    level: 'note',
    limit: 'every character has a glyph',
    reason: 'the lettering covers Latin, Greek and Cyrillic; anything else is printed as □, signs as their code',
    source: 'the lettering’s own character set',
    mend: 'write the word in one of these scripts',
  },
};

/** Whose sheet it is, in words: label and title. */
export function sheetName({ label, title }: Pick<Sheet, 'label' | 'title'>): string {
  return `sheet ${label}, ${title}`;
}

/** A place on paper in words, whole millimetres from the upper left corner. */
export function placeName([u, v]: Point): string {
  return `${Math.round(u)} mm from the left, ${Math.round(v)} mm from the top`;
}

/** A finding about ink. */
export function fault(kind: FaultKind, said: { where: string; text: string; figure: string }): Finding {
  return { code: kind, ...rules[kind], ...said };
}
