import { formatLength, INCH, type Marks } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { sideFixings } from '../uses/fixings.ts';
import { CABLE, gateDetails } from '../uses/gate.ts';
import { GRAVITY } from '../uses/weight.ts';
import { poundForce } from '../wood/inchpound.ts';
import { metalFor } from './metal.ts';

/** A fitting of one panel. */
export interface Fitting {
  readonly name: string;
  readonly material: string;
  /** Pieces, or mm. */
  readonly count: number;
  readonly unit: 'pieces' | 'mm';
}

/** Wire beyond the brace for the loops and clips at both ends, mm: 6 in each; common practice, no source. */
export const WIRE_TURNS: number = 12 * INCH;

/** Hinges, latch, brace fittings, brackets, plugs, track and glides of one panel. */
export function fittingsOf(panel: Panel): Fitting[] {
  const material = metalFor(panel).name;
  const piece = (name: string, count: number): Fitting => ({ name, material, count, unit: 'pieces' });
  const { details, outside } = panel;
  switch (details.use) {
    case 'screen': {
      const fixings = sideFixings(panel);
      if (fixings.kind === 'bracket') return [piece('angle bracket', fixings.places.length)];
      return details.into === 'masonry'
        ? [{ ...piece('wall plug for the screw', fixings.places.length), material: 'nylon' }]
        : [];
    }
    case 'guard':
      return [piece('angle bracket', sideFixings(panel).places.length)];
    case 'divider':
      return details.stand === 'track'
        ? [
            piece('track carrier', 2),
            { name: 'ceiling track', material: 'aluminium', count: 2 * outside.width, unit: 'mm' },
          ]
        : [{ ...piece('felt glide', 4), material: 'felt' }];
    case 'gate': {
      const gate = gateDetails(panel);
      const hinge = `${details.pool ? 'self-closing ' : ''}hinge for ${loadText(hingeLoad(gate), panel.display)} or more`;
      const brace =
        gate.brace?.kind === 'cable'
          ? [
              {
                name: `wire rope ${formatLength(CABLE.diameter, panel.display, { named: true })}, 7x7`,
                material,
                count: Math.ceil(gate.brace.length + WIRE_TURNS),
                unit: 'mm' as const,
              },
              piece('turnbuckle', 1),
              piece('thimble', 2),
              piece('wire clip', 4),
              piece('corner plate with eye', 2),
            ]
          : [];
      return [piece(hinge, details.hinges), piece(details.pool ? 'self-latching latch' : 'latch', 1), ...brace];
    }
  }
}

/** Upright load to ask of one hinge, N: the leaf and whoever leans on it. */
function hingeLoad({ hingeForces, mass }: ReturnType<typeof gateDetails>): number {
  return hingeForces?.loaded.vertical ?? mass * GRAVITY;
}

/** A load rounded up for buying: tens of newtons, or fives of pounds in inch work. */
function loadText(load: number, { unit }: Marks): string {
  return unit === 'in' ? `${Math.ceil(load / poundForce / 5) * 5} lb` : `${Math.ceil(load / 10) * 10} N`;
}
