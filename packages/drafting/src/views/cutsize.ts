import { fineMarks, formatLength, type Marks, type Part, type Saw } from '@wattlewright/model';

/** Marks of inch work finer than a job's own, mm, that a fence can be set to. */
const INCH_MARKS = [25.4 / 16, 25.4 / 32, 25.4 / 64];

/** The same in millimetre work. */
const MILLIMETRE_MARKS = [1, 0.5, 0.1];

/** How far a size may stand off a mark to count as on it, mm: sizes in a plan are whole 640ths of a millimetre. */
const ON_MARK = 1 / 640 + 1e-9;

/** A length along the grain, rounded once to the job's mark. */
export function lengthText(length: number, display: Marks): string {
  return formatLength(length, display, { fractions: 'stacked' });
}

/**
 * A side of a section, or a fence distance: at the job's mark where it lies on one, else at the next finer that it lies on,
 * at the finest 1/64 in or 0.1 mm. A slat of 1 33/64 in is not to be ripped to 1 1/2.
 */
export function sideText(side: number, display: Marks, options: { readonly named?: boolean } = {}): string {
  const mark = markUnder(side, display) ?? finestMark(display);
  return formatLength(side, { unit: display.unit, mark }, { ...options, fractions: 'stacked' });
}

/** The coarsest mark, from the job's own down, that a size lies on, mm; absent where it lies on none. */
export function markUnder(side: number, display: Marks): number | undefined {
  return marksOf(display).find((one) => Math.abs(side - Math.round(side / one) * one) <= ON_MARK);
}

/** The finest mark that a size is printed to, mm: 1/64 in or 0.1 mm, or the job's own where that is finer. */
export function finestMark(display: Marks): number {
  return fineMarks(display).mark;
}

function marksOf({ unit, mark }: Marks): number[] {
  return [mark, ...(unit === 'in' ? INCH_MARKS : MILLIMETRE_MARKS).filter((one) => one < mark)];
}

/** A section, the smaller side first: `3⁄16 × 1 5⁄8`; no line breaks in it. */
export function sectionText(a: number, b: number, display: Marks): string {
  return `${sideText(Math.min(a, b), display)}\u00a0×\u00a0${sideText(Math.max(a, b), display)}`;
}

/** The blades that a plan is made for, and what others would do. */
export function kerfText({ ripKerf, crossKerf }: Pick<Saw, 'ripKerf' | 'crossKerf'>, display: Marks): string {
  const [rip, cross] = [ripKerf, crossKerf].map((kerf) => sideText(kerf, display, { named: true }));
  const blade = rip === cross ? `a blade ${rip} thick` : `blades ${rip} thick to rip and ${cross} to crosscut`;
  return `Planned for ${blade} at the teeth. A thicker one does not fit. A thinner one does; the last strip of a piece is then a little wide and is brought to size.`;
}

/** Which parts are cut long at first and by how much; empty where none are. */
export function overText(parts: readonly Part[], display: Marks): string {
  const by = new Map<number, string[]>();
  for (const { letter, over } of parts) if (over > 0) by.set(over, [...(by.get(over) ?? []), letter]);
  const each = [...by].map(([over, letters]) => `${letters.join(', ')} ${sideText(over, display, { named: true })}`);
  return each.length === 0
    ? ''
    : `Lengths are those to cut now: ${each.join('; ')} longer than finished, to be trimmed to the measured stack.`;
}

/** `pattern 1 (12 boards)`, `patterns 1, 2 and 4 (19 boards)`; from the indices of boards cut alike. */
export function patternsText(
  list: readonly number[],
  boards: readonly { readonly board: { readonly count: number } }[],
): string {
  const names = list.map((i) => i + 1);
  const count = list.reduce((sum, i) => sum + (boards[i]?.board.count ?? 0), 0);
  const many = ` (${count} ${count === 1 ? 'board' : 'boards'})`;
  if (names.length === 1) return `pattern ${names[0]}${many}`;
  return `patterns ${names.slice(0, -1).join(', ')} and ${names.at(-1)}${many}`;
}
