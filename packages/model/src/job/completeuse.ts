import { INCH } from '../length.ts';
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
      own.floor ??
      opening?.gap?.bottom ??
      length(['floor'], undefined, 3, 75, 'under the 4 in sphere of the guard rules'),
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

function gate({ gate: own = {} }: PanelFile, length: Length, { at, assume }: PanelContext): GateUse {
  const kind = assume.value(
    [...at, 'gate', 'brace', 'kind'],
    own.brace?.kind,
    'cable',
    'a wire with a turnbuckle takes up what the joints give',
  );
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
      ground: length(['clear', 'ground'], own.clear?.ground, 2, 50, 'clears leaves and frost heave'),
    },
    brace: {
      kind,
      from: own.brace?.from ?? (kind === 'strut' ? 'hinge bottom' : 'hinge top'),
    },
    hinges: assume.value([...at, 'gate', 'hinges', 'count'], own.hinges?.count, 2, 'two hinges carry a light leaf'),
    hingeInset: length(['hinges', 'inset'], own.hinges?.inset, 7, 180, 'clear of the corner joints'),
    latch: length(['latch'], own.latch, 40, 1000, 'at hand height'),
    load: assume.value(
      [...at, 'gate', 'load'],
      own.load,
      180,
      'newtons: a child leaning on the latch side (about 40 lbf), common practice, no source',
    ),
    pool: own.pool ?? false,
  };
}
