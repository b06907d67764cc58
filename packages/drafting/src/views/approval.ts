import { union } from '../ink.ts';
import { TEXT } from '../layout/style.ts';
import { textBox, textWidth } from '../lettering.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line } from '../path.ts';

/** Room for a hand to write in, mm. Common practice, no source. */
const LINE_HEIGHT = 11;

/**
 * Lines to sign on: who approves what is drawn, and when. `width` in mm. With points still `open` there is none for the
 * client's approval.
 */
export function approval(width: number, { open = 0 }: { readonly open?: number } = {}): Drawing {
  const rows = [
    open > 0
      ? `Not for approval yet: ${open === 1 ? 'one point' : `${open} points`} to settle`
      : 'Approved as drawn (client)',
    'Changes wanted',
    'For the shop',
  ];
  const date = width * 0.7;
  const marks: Mark[] = rows.flatMap((label, i) => {
    const v = (i + 1) * LINE_HEIGHT;
    if (i === 0 && open > 0) return [write('title', label, [0, v], { height: TEXT })];
    const start = textWidth(label, TEXT) + 2;
    return [
      write('note', label, [0, v], { height: TEXT }),
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
    bounds: union([{ u0: 0, v0: LINE_HEIGHT - TEXT * 1.2, u1: width, v1: rows.length * LINE_HEIGHT + TEXT }, ...texts]),
    alt: 'Lines for the client’s and the shop’s signatures.',
  };
}
