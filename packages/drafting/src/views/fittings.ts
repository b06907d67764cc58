import {
  dividerDetails,
  gateDetails,
  type Panel,
  type PanelPlace,
  type PartRole,
  screenDetails,
} from '@wattlewright/model';

/** A block of the panel frame, mm, its lower corner and its upper. */
export interface Block {
  readonly from: PanelPlace;
  readonly to: PanelPlace;
}

/** Something that a panel's use adds to it, as a block. */
export interface Fitting extends Block {
  readonly what: string;
  /** Its part; absent for hardware, which is on no parts list. */
  readonly role?: PartRole;
}

/** Height and thickness of a hinge's knuckle as drawn, mm: a 3 in hinge; common practice, no source. */
const HINGE = { height: 76.2, thickness: 12 };

/** Height and thickness of a latch's case as drawn, mm: common practice, no source. */
const LATCH = { height: 50, thickness: 15 };

/** Width of a track's carrier as drawn, mm: common practice, no source. */
const CARRIER = 10;

/** What the panel's use adds to it, a brace apart. Hardware is drawn by its place; its own shape is the maker's. */
export function fittings(panel: Panel): Fitting[] {
  const { details, outside } = panel;
  switch (details.use) {
    case 'guard': {
      if (!details.cap) return [];
      const { height, depth } = details.cap;
      const middle = { x: outside.width / 2, y: outside.height + height / 2, z: 0 };
      return [{ what: 'cap rail', role: 'cap rail', ...blockAt(middle, [outside.width, height, depth]) }];
    }
    case 'divider': {
      const { feet, track } = dividerDetails(panel);
      if (track)
        return track.carriers.map(({ x, y, z }) => ({
          what: 'carrier',
          ...blockAt({ x, y: y + track.above / 2, z }, [CARRIER, track.above, CARRIER]),
        }));
      if (!feet) return [];
      return feet.places.map((place) => ({
        what: 'foot',
        role: 'foot',
        ...blockAt(place, [feet.width, feet.height, feet.length]),
      }));
    }
    case 'screen': {
      const { blocks } = screenDetails(panel);
      if (!blocks) return [];
      const size = [blocks.width, blocks.height, blocks.depth] as const;
      return blocks.places.map((place) => ({
        what: 'stand-off block',
        role: 'stand-off block',
        ...blockAt(place, size),
      }));
    }
    case 'gate':
      return gateHardware(panel);
  }
}

/** Hinge knuckles in the gap at the hinge side, on the face that the leaf swings towards, and the latch on the other stile. */
function gateHardware(panel: Panel): Fitting[] {
  const { hinges, latch, hinge, swing, clear } = gateDetails(panel);
  const { outside, stile } = panel;
  const outward = hinge === 'left' ? -1 : 1;
  const face = ((swing === 'towards the front' ? 1 : -1) * outside.depth) / 2;
  const knuckles = hinges.map(({ x, y }) => ({
    what: 'hinge',
    ...blockAt({ x: x + (outward * clear.hinge) / 2, y, z: face }, [clear.hinge, HINGE.height, HINGE.thickness]),
  }));
  const width = stile.width / 2;
  const middle = { x: latch.x + (outward * width) / 2, y: latch.y, z: (outside.depth + LATCH.thickness) / 2 };
  const latches = latch.inside ? [{ what: 'latch', ...blockAt(middle, [width, LATCH.height, LATCH.thickness]) }] : [];
  return [...knuckles, ...latches];
}

function blockAt({ x, y, z }: PanelPlace, [width, height, depth]: readonly [number, number, number]): Block {
  return {
    from: { x: x - width / 2, y: y - height / 2, z: z - depth / 2 },
    to: { x: x + width / 2, y: y + height / 2, z: z + depth / 2 },
  };
}

/** A gate's brace from the front, where frame and weave hide it: a line for a cable, an outline for a strut. */
export function braceOutline(
  panel: Panel,
):
  | { readonly what: string; readonly role?: PartRole; readonly outline: readonly (readonly [x: number, y: number])[] }
  | undefined {
  if (panel.details.use !== 'gate') return undefined;
  const { brace } = gateDetails(panel);
  if (!brace) return undefined;
  const [a, b] = [brace.hinge, brace.latch];
  if (brace.kind === 'cable') {
    return {
      what: 'cable brace at the back',
      outline: [
        [a.x, a.y],
        [b.x, b.y],
      ],
    };
  }
  // The strut laps both joints by half its width, as the parts list has its length; what would stand out is sawn off.
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const half = panel.stile.width / 2;
  const [cx, cy] = [((b.x - a.x) / length) * half, ((b.y - a.y) / length) * half];
  return {
    what: 'strut at the back',
    role: 'strut',
    outline: trimmed(
      [
        [a.x - cx - cy, a.y - cy + cx],
        [b.x + cx - cy, b.y + cy + cx],
        [b.x + cx + cy, b.y + cy - cx],
        [a.x - cx + cy, a.y - cy - cx],
      ],
      panel.outside,
    ),
  };
}

type Corner = readonly [x: number, y: number];

/** A convex outline cut off at the panel's own, side by side (Sutherland and Hodgman, 1974). */
function trimmed(outline: readonly Corner[], { width, height }: Panel['outside']): readonly Corner[] {
  const inside: ((corner: Corner) => number)[] = [([x]) => x, ([x]) => width - x, ([, y]) => y, ([, y]) => height - y];
  return inside.reduce<readonly Corner[]>(
    (ring, depth) =>
      ring.flatMap((b, i): Corner[] => {
        const a = ring.at(i - 1) as Corner;
        const [da, db] = [depth(a), depth(b)];
        const share = da / (da - db);
        const cut: Corner[] = da * db < 0 ? [[a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share]] : [];
        return db >= 0 ? [...cut, b] : cut;
      }),
    outline,
  );
}

/** Floor, ground or track near a panel: their heights in the panel frame, mm, and their names. */
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
            { y: outside.height + details.track.above, name: 'underside of track' },
          ]
        : [];
    case 'gate':
      return [{ y: -details.clear.ground, name: 'ground' }];
    case 'screen':
      return [];
  }
}
