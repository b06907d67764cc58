import { formatLength, type Panel } from '@wattlewright/model';
import { TEXT, TEXT_LARGE } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line } from '../path.ts';
import { STICK_TICK, type TickText, tickBase, ticksFit } from './stick.ts';

/** Where the running dimensions begin, mm from the stick's top edge. */
export const VALUES_FROM = 13.5;

/** What the marks of a stave stick depict. */
export interface Letters {
  readonly rail?: string | undefined;
  readonly stile?: string | undefined;
  readonly stave?: string | undefined;
  readonly slat?: string | undefined;
}

/** Which distances are written, and how high. */
export interface Written {
  readonly texts: readonly TickText[];
  readonly height: number;
  /** What is left out, for the reader; empty for nothing. */
  readonly said: string;
}

/** Both faces of every stave, or as many as there is room for, the last one always. */
export function staveTexts(panel: Panel, { stave, stile, rail }: Letters): Written {
  const { staves, clear, display } = panel;
  const show = (u: number): string => formatLength(u, display, { fractions: 'stacked' });
  const text = (at: number, way: -1 | 1, of: string | undefined): TickText => ({
    at,
    way,
    text: show(at),
    ...(of === undefined ? {} : { of }),
  });
  const ends = [
    text(0, 1, rail),
    text(panel.rail.length, -1, rail),
    text(clear.left, -1, stile),
    text(clear.left + clear.width, 1, stile),
  ];
  const inner = (step: number, both: boolean): TickText[] =>
    staves.lefts.flatMap((left, j) => {
      const [isFirst, isLast] = [j === 0, j === staves.count - 1];
      if (j % step !== 0 && !isLast) return [];
      if (!isLast && isFirst === false && staves.count - 1 - j < step) return [];
      return [
        ...(isFirst ? [] : [text(left, -1, stave)]),
        ...(both && !isLast ? [text(left + staves.width, 1, stave)] : []),
      ];
    });
  for (const height of [TEXT_LARGE, TEXT]) {
    const texts = [...ends, ...inner(1, true)];
    if (ticksFit(texts, height)) return { texts, height, said: '' };
  }
  for (const step of [1, 2, 3, 4, 5, 10, 20, 50, 100]) {
    const texts = [...ends, ...inner(step, false)];
    const said =
      step === 1 ? 'Left faces only are figured' : `Only every ${nth(step)} left face and the last are figured`;
    if (ticksFit(texts, TEXT)) return { texts, height: TEXT, said: `${said}; every face is marked.` };
  }
  const said = 'Only the ends are figured; every face is marked.';
  const few = [ends.slice(0, 2), ends.slice(0, 1)].find((texts) => ticksFit(texts, TEXT)) ?? [];
  return { texts: ticksFit(ends, TEXT) ? ends : few, height: TEXT, said };
}

function nth(n: number): string {
  return n === 2 ? '2nd' : n === 3 ? '3rd' : `${n}th`;
}

/** Each distance along a thin line that goes on from its tick. */
export function textInk({ texts, height }: Written): Mark[] {
  return texts.flatMap((one) => {
    const end = VALUES_FROM + textWidth(one.text, height) + 0.5;
    const of = one.of === undefined ? {} : { of: one.of };
    const more = { height, angle: 90, anchor: 'end' as const, ...of };
    return [
      stroke('dimension', line([one.at, STICK_TICK], [one.at, end]), one.of),
      write('label', one.text, [tickBase(one, height), VALUES_FROM], more),
    ];
  });
}
