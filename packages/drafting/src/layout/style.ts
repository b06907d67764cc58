/** Height of ordinary lettering on every drawing, mm (ISO 3098-1 series 2.5, 3.5, 5, 7). */
export const TEXT = 2.5;

/** Height of totals, view titles and balloon letters, mm (ISO 3098-1). */
export const TEXT_LARGE = 3.5;

/** Height of sheet headings and of the letters of cuts and details, mm (ISO 3098-1). */
export const TEXT_HEADING = 5;

/** From the outline to the start of an extension line, mm: 1/16 in (inch practice, ASME Y14.2/Y14.5). */
export const EXTENSION_GAP = 1.5875;

/** How far an extension line runs past its dimension line, mm: 8 line widths of 0.25 (ISO 129-1, from memory). */
export const EXTENSION_PAST = 2;

/** From the outline to the first dimension line, mm: at least 3/8 in or 10 mm (inch practice, ASME Y14.5). */
export const FIRST_ROW = 10;

/** Between parallel dimension lines, mm: at least 1/4 in or 6 mm (inch practice, ASME Y14.5), with room for text. */
export const ROW_STEP = 8;

/** From a line up to the baseline of the text that stands on it, mm: 4 line widths of 0.25. Common practice, no source. */
export const TEXT_LIFT = 1;

/** Between neighbouring labels, and from a label to a line beside it, mm. Common practice, no source. */
export const TEXT_CLEAR = 1.2;

/** Rise of a line of lettering over its baseline, in heights: capitals, and the raised top of a fraction. */
export const ASCENT = 1.15;

/** Fall under the baseline, in heights: descenders, brackets and the low end of a fraction. */
export const DESCENT = 0.35;

/** From baseline to baseline of running text, in heights: 19/10 h for capitals, small letters and accents (ISO 3098-1 B). */
export const LINE_STEP = 1.9;
