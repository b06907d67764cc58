import type { Panel, PartRole } from '@wattlewright/model';
import type { Face } from './front.ts';

/** Something that a panel's use adds to its front view, panel frame, mm. */
export interface Fitting {
  readonly what: string;
  /** `wood`: seen; `hidden`: behind the panel; `neighbour`: there already, or hardware, which is on no parts list. */
  readonly shown: 'wood' | 'hidden' | 'neighbour';
  /** A closed outline, or an open line of two points. */
  readonly outline: readonly (readonly [x: number, y: number])[];
  readonly role?: PartRole;
}

/** Height of a hinge as drawn, mm: a 3 in butt or strap; common practice, no source. */
const HINGE_HEIGHT = 76.2;

/** Height of a latch's case as drawn, mm: common practice, no source. */
const LATCH_HEIGHT = 50;

/** What the panel's use adds to the front view. Sizes are the job's; places are the panel's own edges and clearances. */
export function fittings(panel: Panel): Fitting[] {
  const { details, outside } = panel;
  switch (details.use) {
    case 'guard': {
      const top = outside.height;
      return details.cap
        ? [
            {
              what: 'cap rail',
              shown: 'wood',
              role: 'cap rail',
              outline: corners({ x0: 0, y0: top, x1: outside.width, y1: top + details.cap.height }),
            },
          ]
        : [];
    }
    case 'divider': {
      const { feet } = details;
      if (!feet) return [];
      return [0, outside.width - feet.width].map((x0) => ({
        what: 'foot',
        shown: 'wood' as const,
        role: 'foot' as const,
        outline: corners({ x0, y0: -feet.height, x1: x0 + feet.width, y1: 0 }),
      }));
    }
    case 'gate':
      return [...hinges(panel, details), ...latch(panel, details), ...brace(panel, details)];
    case 'screen':
      return [];
  }
}

type Gate = Extract<Panel['details'], { use: 'gate' }>;

/** The heights of a gate's hinges, mm: the outer two at their inset from the stile's ends, others evenly between. */
export function hingeHeights({ clear }: Pick<Panel, 'clear'>, { hinges: count, hingeInset }: Gate): number[] {
  const [low, high] = [clear.bottom + hingeInset, clear.bottom + clear.height - hingeInset];
  return Array.from({ length: count }, (_, i) =>
    count < 2 ? (low + high) / 2 : low + ((high - low) * i) / (count - 1),
  );
}

function hinges(panel: Panel, gate: Gate): Fitting[] {
  const { width } = panel.outside;
  const [x0, x1] = gate.hinge === 'left' ? [-gate.clear.hinge, 0] : [width, width + gate.clear.hinge];
  return hingeHeights(panel, gate).map((y) => ({
    what: 'hinge',
    shown: 'neighbour' as const,
    outline: corners({ x0, y0: y - HINGE_HEIGHT / 2, x1, y1: y + HINGE_HEIGHT / 2 }),
  }));
}

function latch({ outside, stile }: Panel, gate: Gate): Fitting[] {
  const y = gate.latch - gate.clear.ground;
  const right = gate.hinge === 'left';
  const [x0, x1] = right ? [outside.width - stile.width / 2, outside.width] : [0, stile.width / 2];
  return [
    {
      what: 'latch',
      shown: 'neighbour',
      outline: corners({ x0, y0: y - LATCH_HEIGHT / 2, x1, y1: y + LATCH_HEIGHT / 2 }),
    },
  ];
}

/** The brace from corner to corner of the clear opening: behind the weave, so hidden from the front. */
function brace({ clear, stile }: Panel, { brace: { kind, from }, hinge }: Gate): Fitting[] {
  if (kind === 'none') return [];
  const [left, right] = [clear.left, clear.left + clear.width];
  const [low, high] = [clear.bottom, clear.bottom + clear.height];
  const [hingeX, latchX] = hinge === 'left' ? [left, right] : [right, left];
  const [a, b] =
    from === 'hinge top'
      ? [[hingeX, high] as const, [latchX, low] as const]
      : [[hingeX, low] as const, [latchX, high] as const];
  if (kind === 'cable') return [{ what: 'cable brace', shown: 'hidden', outline: [a, b] }];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const half = stile.width / 2 / length;
  const across = (p: readonly [number, number], way: number) =>
    [p[0] - way * half * (b[1] - a[1]), p[1] + way * half * (b[0] - a[0])] as const;
  return [
    {
      what: 'strut',
      shown: 'hidden',
      role: 'strut',
      outline: [across(a, 1), across(b, 1), across(b, -1), across(a, -1)],
    },
  ];
}

/** Floor, ground or ceiling near a panel: their heights in the panel frame, mm, and their names. */
export function grounds({
  details,
  outside,
}: Pick<Panel, 'details' | 'outside'>): readonly { readonly y: number; readonly name: string }[] {
  switch (details.use) {
    case 'guard':
      return [{ y: -details.floorGap, name: 'floor' }];
    case 'divider':
      if (details.feet) return [{ y: -details.feet.height, name: 'floor' }];
      return details.track
        ? [
            { y: -details.track.below, name: 'floor' },
            { y: outside.height + details.track.above, name: 'ceiling track' },
          ]
        : [];
    case 'gate':
      return [{ y: -details.clear.ground, name: 'ground' }];
    case 'screen':
      return [];
  }
}

function corners({ x0, y0, x1, y1 }: Face): (readonly [number, number])[] {
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ];
}
