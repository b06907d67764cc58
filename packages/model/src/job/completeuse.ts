import { ceilToMark, floorToMark, INCH, type Marks } from '../length.ts';
import type { PanelContext } from './context.ts';
import type { PanelFile } from './file.ts';
import type { DividerUse, GateUse, GuardUse, ScreenUse, Use, UseDetails } from './job.ts';
import type { FieldPath } from './problem.ts';

type Length = (field: FieldPath, given: number | undefined, inches: number, mm: number, reason: string) => number;

/** What the panel's use asks for, complete; common practice, no source, unless said. */
export function completeUse(file: PanelFile, context: PanelContext): UseDetails {
  const { at, assume, display, faults } = context;
  const use = assume.value([...at, 'use'], file.use ?? usedGroup(file), 'screen', 'the commonest use');
  for (const other of ['screen', 'guard', 'divider', 'gate'] as const) {
    if (other !== use && file[other])
      faults.push({ path: [...at, other], message: `this panel is a ${use}; drop ${other} or change its use` });
  }
  const length: Length = (field, given, inches, mm, reason) =>
    assume.length([...at, use, ...field], given, display.unit === 'in' ? inches * INCH : mm, reason);
  switch (use) {
    case 'screen':
      return screen(file, length, context);
    case 'guard':
      return guard(file, length, context);
    case 'divider':
      return divider(file, length, context);
    case 'gate':
      return gate(file, length, context);
  }
}

/** A panel that says how its gate is hung is a gate, also without `use`. */
function usedGroup(file: PanelFile): Use | undefined {
  const groups = (['screen', 'guard', 'divider', 'gate'] as const).filter((use) => file[use]);
  return groups.length === 1 ? groups[0] : undefined;
}

function screen({ screen: own = {} }: PanelFile, length: Length, { at, assume }: PanelContext): ScreenUse {
  const mounting = assume.value(
    [...at, 'screen', 'mounting'],
    own.mounting,
    'stiles',
    'screws through the stiles are the plainest fixing',
  );
  return {
    use: 'screen',
    mounting,
    standoff:
      mounting === 'blocks'
        ? length(['standoff'], own.standoff, 1.5, 38, 'room for water to run off and air to pass')
        : 0,
    ...(own.glass !== undefined && { glass: own.glass }),
    bedroom: own.bedroom ?? false,
    above: own.above ?? 0,
    into: own.into ?? 'wood',
  };
}

function guard({ guard: own = {}, opening }: PanelFile, length: Length, { at, assume }: PanelContext): GuardUse {
  return {
    use: 'guard',
    floorGap:
      own.floor ?? opening?.gap?.bottom ?? length(['floor'], undefined, 3, 75, 'under the ball of the guard rules'),
    drop: length(['drop'], own.drop, 36, 900, 'not said: taken as high enough to need a guard'),
    ...(own.cap && { cap: own.cap }),
    ...(own.top !== undefined && { top: own.top }),
    dwelling: assume.value([...at, 'guard', 'dwelling'], own.dwelling, 'one or two family', 'decks of houses'),
  };
}

function divider({ divider: own = {} }: PanelFile, length: Length, { at, assume }: PanelContext): DividerUse {
  const stand = assume.value(
    [...at, 'divider', 'stand'],
    own.stand ?? (own.track ? 'track' : own.feet ? 'feet' : undefined),
    'feet',
    'stands anywhere',
  );
  if (stand === 'track') {
    return {
      use: 'divider',
      stand,
      track: {
        above: length(['track', 'above'], own.track?.above, 0.75, 20, 'room for the carriers'),
        below: length(['track', 'below'], own.track?.below, 0.5, 12, 'clears a rug'),
      },
    };
  }
  return {
    use: 'divider',
    stand,
    feet: {
      length: length(['feet', 'length'], own.feet?.length, 16, 400, 'wide enough not to tip when brushed past'),
      height: length(['feet', 'height'], own.feet?.height, 2.5, 60, 'takes a screw into each stile’s end'),
      width: length(['feet', 'width'], own.feet?.width, 1.5, 38, 'the width of the stiles'),
    },
  };
}

function gate(file: PanelFile, length: Length, { at, assume, display }: PanelContext): GateUse {
  const { gate: own = {} } = file;
  const kind = assume.value(
    [...at, 'gate', 'brace', 'kind'],
    own.brace?.kind,
    'cable',
    'a wire with a turnbuckle takes up what the joints give',
  );
  const ground = length(['clear', 'ground'], own.clear?.ground, 2, 50, 'clears leaves and frost heave');
  const leaf = leafOf(file, ground, display);
  return {
    use: 'gate',
    hinge: assume.value([...at, 'gate', 'hinge'], own.hinge, 'left', 'not said; as seen from the front'),
    swing: assume.value([...at, 'gate', 'swing'], own.swing, 'towards the front', 'not said'),
    clear: {
      hinge: length(
        ['clear', 'hinge'],
        own.clear?.hinge,
        0.375,
        10,
        'room for the hinge’s knuckle and a swollen stile',
      ),
      latch: length(['clear', 'latch'], own.clear?.latch, 0.5, 12, 'room to swing and to swell'),
      ground,
    },
    brace: {
      kind,
      from: own.brace?.from ?? (kind === 'strut' ? 'hinge bottom' : 'hinge top'),
    },
    hinges: assume.value([...at, 'gate', 'hinges', 'count'], own.hinges?.count, 2, 'two hinges carry a light leaf'),
    hingeInset: assume.length([...at, 'gate', 'hinges', 'inset'], own.hinges?.inset, ...hingeInset(leaf, display)),
    latch: assume.length([...at, 'gate', 'latch'], own.latch, ...latchHeight(leaf, ground, display)),
    load: assume.value(
      [...at, 'gate', 'load'],
      own.load,
      180,
      'a child leaning on the latch side (40 lb), common practice, no source',
    ),
    pool: own.pool ?? false,
  };
}

/** What a leaf's own sizes let hinges and latch be placed by, mm. */
interface Leaf {
  readonly height: number;
  readonly rail: number;
}

function leafOf({ size, opening, rail }: PanelFile, ground: number, { unit }: Marks): Leaf {
  const within = opening && opening.height - (opening.gap?.top ?? 0) - (opening.gap?.bottom ?? ground);
  return {
    height: size?.height ?? within ?? 1000,
    rail: rail?.height ?? (unit === 'in' ? 1.5 * INCH : 38),
  };
}

/** Room over the corner joint for its screws and half a hinge, mm: 4 in; most of a low leaf, under a quarter of it. */
const CORNER_ROOM = 4 * INCH;
const LOW_SHARE = 0.22;

/** Hinge's middle from the end of its stile: the usual, more over a high rail, less on a low leaf. */
function hingeInset({ height, rail }: Leaf, { unit, mark }: Marks): [inset: number, reason: string] {
  const usual = unit === 'in' ? 7 * INCH : 180;
  const clear = Math.max(usual, ceilToMark(rail + CORNER_ROOM, Math.max(mark, unit === 'in' ? INCH / 4 : 5)));
  const most = floorToMark(height * LOW_SHARE, mark);
  if (most < clear) return [most, 'under a quarter of a low leaf, so that the hinges stay apart'];
  return [clear, 'clear of the corner joints'];
}

/** Room for a latch's case under the top rail, mm: 3 in. */
const LATCH_ROOM = 3 * INCH;

/** Latch above the ground: at hand height, or as near to it as a low leaf lets, clear of its top rail. */
function latchHeight({ height, rail }: Leaf, ground: number, { unit, mark }: Marks): [latch: number, reason: string] {
  const hand = unit === 'in' ? 40 * INCH : 1000;
  const most = ground + Math.max(height / 2, height - rail - LATCH_ROOM);
  if (most < hand)
    return [
      floorToMark(most, Math.max(mark, unit === 'in' ? INCH / 2 : 5)),
      'as near hand height as the leaf lets, clear of its top rail',
    ];
  return [hand, 'at hand height'];
}
