import { lines } from '../layout/lines.ts';
import { DESCENT, LINE_STEP, TEXT, TEXT_LARGE } from '../layout/style.ts';
import { fitText, textWidth } from '../lettering.ts';
import type { Box, Mark, Role } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';

/** What the title block of every sheet says (the data fields of ISO 7200). What is left out stays blank, to be written in. */
export interface SheetMeta {
  /** Legal owner: the shop. */
  readonly owner: string;
  /** Title of the job. */
  readonly title: string;
  /** Drawing number. */
  readonly number: string;
  readonly revision?: string;
  readonly date?: string;
  /** How sizes are given, such as `inches` or `mm`. */
  readonly unit: string;
  readonly drawn?: string;
  readonly checked?: string;
  readonly approved?: string;
}

/** What differs from sheet to sheet. */
export interface SheetFacts {
  /** What is on the sheet, as the second title (ISO 7200: supplementary title). */
  readonly subject: string;
  readonly scale: string;
  readonly sheet: number;
  readonly of: number;
  readonly paper: string;
}

/** The warning on every sheet: wood moves and stock varies, so a size on paper is no order to cut. */
export const CHECK_FIRST = 'Check against the wood before cutting.';

interface Field {
  readonly caption: string;
  readonly value: string;
  /** Share of the block's width. */
  readonly share: number;
  readonly strong?: boolean;
}

/** From a cell's edge to its text, mm. */
const PAD = 1.5;

/** The title block, filling `box`. */
export function titleBlock(box: Box, meta: SheetMeta, facts: SheetFacts): Mark[] {
  const { owner, title, number, revision = '', date = '', unit, drawn = '', checked = '', approved = '' } = meta;
  const rows: { height: number; fields: Field[] }[] = [
    {
      height: 14,
      fields: [
        { caption: 'Owner', value: owner, share: 0.28 },
        { caption: 'Title', value: title, share: 0.36, strong: true },
        { caption: 'On this sheet', value: facts.subject, share: 0.36 },
      ],
    },
    {
      height: 9.5,
      fields: [
        { caption: 'Drawn', value: drawn, share: 0.25 },
        { caption: 'Checked', value: checked, share: 0.25 },
        { caption: 'Approved', value: approved, share: 0.25 },
        { caption: 'Date', value: date, share: 0.25 },
      ],
    },
    {
      height: 11,
      fields: [
        { caption: 'Drawing number', value: number, share: 0.3, strong: true },
        { caption: 'Revision', value: revision, share: 0.12 },
        { caption: 'Scale', value: facts.scale, share: 0.24 },
        { caption: 'Sizes in', value: unit, share: 0.16 },
        { caption: 'Sheet', value: `${facts.sheet} of ${facts.of}`, share: 0.18, strong: true },
      ],
    },
  ];
  const marks: Mark[] = [stroke('frame', rectangle(box))];
  let v = box.v0;
  for (const { height, fields } of rows) {
    marks.push(...rowInk(box, v, height, fields));
    v += height;
    marks.push(stroke('grid', line([box.u0, v], [box.u1, v])));
  }
  const base = (v + box.v1) / 2 + TEXT / 2;
  marks.push(
    write('title', CHECK_FIRST, [box.u0 + PAD, base], { height: TEXT }),
    write('faint', facts.paper, [box.u1 - PAD, base], { height: TEXT, anchor: 'end' }),
  );
  return marks;
}

function rowInk(box: Box, v: number, height: number, fields: readonly Field[]): Mark[] {
  let u = box.u0;
  return fields.flatMap(({ caption, value, share, strong }, i) => {
    const left = u;
    u += share * (box.u1 - box.u0);
    const marks: Mark[] = i === 0 ? [] : [stroke('grid', line([left, v], [left, v + height]))];
    marks.push(write('faint', caption, [left + PAD, v + 1 + TEXT], { height: TEXT }));
    if (value !== '')
      marks.push(...valueInk({ u0: left + PAD, v0: v, u1: u - PAD, v1: v + height }, value, strong ?? false));
    return marks;
  });
}

/** From the caption's baseline and from the cell's lower edge to the value, mm. */
const CAPTION = 1 + TEXT + DESCENT * TEXT + 0.4;
const FOOT = 1.8;

/** The value under its caption: large if it fits, else small, on as many lines as the cell holds, the last cut with an ellipsis. */
function valueInk({ u0, v0, u1, v1 }: Box, value: string, strong: boolean): Mark[] {
  const [role, weight]: [Role, 'semibold' | 'regular'] = strong ? ['title', 'semibold'] : ['note', 'regular'];
  const width = u1 - u0;
  const large = strong && textWidth(value, TEXT_LARGE, weight) <= width;
  const height = large ? TEXT_LARGE : TEXT;
  const room = 1 + Math.max(0, Math.floor((v1 - v0 - CAPTION - FOOT - height) / (LINE_STEP * height)));
  const all = lines(value, width, { height, weight });
  const shown =
    all.length <= room
      ? all
      : [...all.slice(0, room - 1), fitText(all.slice(room - 1).join(' '), width, height, weight)];
  return shown.map((text, i) =>
    write(role, text, [u0, v1 - FOOT - (shown.length - 1 - i) * LINE_STEP * height], { height }),
  );
}
