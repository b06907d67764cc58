import { union } from '../ink.ts';
import { ASCENT, DESCENT, TEXT } from '../layout/style.ts';
import { textBox, textWidth } from '../lettering.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line } from '../path.ts';

/** Room for a hand to write in, and to write at some length, mm. Common practice, no source. */
const LINE_HEIGHT = 11;
const SIGNED = 45;

/**
 * Lines to sign on: who approves what is drawn, and when. `width` in mm, and `height` to keep within.
 * With points still `open` there is none for the client's approval.
 */
export function approval(
  width: number,
  { open = 0, height = Number.POSITIVE_INFINITY }: { readonly open?: number; readonly height?: number } = {},
): Drawing {
  const rows = [
    open > 0
      ? `Not for approval yet: ${open === 1 ? 'one point' : `${open} points`} to settle`
      : 'Approved as drawn (client)',
    'Changes wanted',
    'For the shop',
  ];
  const date = width * 0.7;
  // Beside its words where that leaves every rule long enough, else under them.
  const longest = Math.max(...rows.slice(open > 0 ? 1 : 0).map((label) => textWidth(label, TEXT)));
  const under = date - 3 - longest - 2 < SIGNED;
  const words = (ASCENT + DESCENT) * TEXT + 2;
  // Closer where the room wants it.
  const most = (height - 2.2 * TEXT + words) / rows.length;
  const step = under ? Math.min(LINE_HEIGHT + words, most) : LINE_HEIGHT;
  const hand = step - words;
  const marks: Mark[] = rows.flatMap((label, i) => {
    const v = (i + 1) * step;
    const base = under ? v - hand : v;
    if (i === 0 && open > 0) return [write('title', label, [0, base], { height: TEXT })];
    const start = under ? 0 : textWidth(label, TEXT) + 2;
    return [
      write('note', label, [0, base], { height: TEXT }),
      stroke('grid', line([start, v + 0.5], [date - 3, v + 0.5])),
      write('note', 'Date', [date, v], { height: TEXT }),
      stroke('grid', line([date + textWidth('Date', TEXT) + 2, v + 0.5], [width, v + 0.5])),
    ];
  });
  const texts = marks.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
  return {
    name: 'approval',
    title: '',
    scale: 0,
    scaleText: '',
    marks,
    bounds: union([
      { u0: 0, v0: step - (under ? hand : 0) - TEXT * 1.2, u1: width, v1: rows.length * step + TEXT },
      ...texts,
    ]),
    alt: 'Lines for the client’s and the shop’s signatures.',
  };
}
