import { ceilToMark, fineMarks, floorToMark, formatLength, INCH, type Marks } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { BRACKET, sideFixings } from '../uses/fixings.ts';
import { CABLE, gateDetails, TURNBUCKLE } from '../uses/gate.ts';
import { GRAVITY, panelCentre } from '../uses/weight.ts';
import { poundForce } from '../wood/inchpound.ts';
import { type BracePlate, bracePlates } from './braceplate.ts';
import type { ChosenScrew } from './choose.ts';
import { corners } from './corner.ts';
import { hingePlate } from './hingeplate.ts';
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

/** What one carrier has to bear, of the wood of a leaf: all of it, since two never share alike, and a quarter for the rest; common practice, no source. */
const CARRIED = 1.25;

/** Least thickness of a plate that a brace pulls at, mm: 1/8 in or 3 mm; common practice, no source. */
const PLATE_LEAST = { in: INCH / 8, mm: 3 } as const;

/** Hinges, latch, brace fittings, brackets, plugs, track and glides of one panel. */
export function fittingsOf(panel: Panel): Fitting[] {
  const material = metalFor(panel).name;
  const piece = (name: string, count: number): Fitting => ({ name, material, count, unit: 'pieces' });
  const { details, outside } = panel;
  const size = (length: number) => formatLength(length, panel.display, { named: true });
  const ends = grooveEnds(panel);
  switch (details.use) {
    case 'screen': {
      const fixings = sideFixings(panel);
      if (fixings.kind === 'bracket') return [...ends, piece(bracketText(panel), fixings.places.length)];
      const plug = `wall plug for a ${gaugeText(fixings.screw, panel.display)} screw, ${size(fixings.screw.penetration)} or longer`;
      return details.into === 'masonry'
        ? [...ends, { ...piece(plug, fixings.places.length), material: 'nylon' }]
        : ends;
    }
    case 'guard':
      return [...ends, piece(bracketText(panel), sideFixings(panel).places.length)];
    case 'divider':
      return details.stand === 'track'
        ? [
            ...ends,
            piece(
              `track carrier for ${loadText(panelCentre(panel).mass * GRAVITY * CARRIED, panel.display)} or more, with its own screws, its plate no wider than ${size(panel.rail.depth)}, rail to track in ${size(details.track?.above ?? 0)} with its bolt; its screws go no more than ${size(carrierReach(panel))} into the rail`,
              2,
            ),
            piece('floor guide that keeps the foot of the leaf from swinging, as the maker of the track has it', 1),
            {
              name: 'ceiling track, two widths of a leaf for each leaf, with its screws',
              material: 'aluminium',
              count: 2 * outside.width,
              unit: 'mm',
            },
          ]
        : [
            ...ends,
            {
              ...piece(
                `felt glide, about ${panel.display.unit === 'in' ? '1 in across and 1/8 in' : '25 mm across and 3 mm'} thick, stuck or nailed on, two under each foot, flush with its ends`,
                4,
              ),
              material: 'felt',
            },
          ];
    case 'gate': {
      const gate = gateDetails(panel);
      const hinge = `${details.pool ? 'self-closing ' : ''}hinge for ${loadText(hingeLoad(gate), panel.display)} or more, ${hingeText(panel)}`;
      const [plate] = bracePlates(panel);
      const brace =
        gate.brace?.kind === 'cable'
          ? [
              {
                name: `wire rope ${formatLength(CABLE.diameter, panel.display, { named: true })}, 7x7`,
                material,
                count: Math.ceil(gate.brace.length + WIRE_TURNS),
                unit: 'mm' as const,
              },
              piece(
                `turnbuckle with ${TURNBUCKLE[panel.display.unit].name} thread, about ${size(6 * INCH)} long opened out: an eye at one end for the thimble, a jaw with pin at the other for the plate’s eye`,
                1,
              ),
              piece(`thimble for wire of ${size(CABLE.diameter)}`, 2),
              piece(`wire clip for wire of ${size(CABLE.diameter)}`, 4),
              piece(
                `plate with an eye that stands up from it${plate ? `, ${size(plate.to.x - plate.from.x)} x ${size(plate.to.y - plate.from.y)} or more` : ''}, ${size(PLATE_LEAST[panel.display.unit])} thick or more, the hole of its eye wide enough for the thimble and the pin of the jaw${plate ? `; ${holesText(plate, size)}` : ''}`,
                2,
              ),
            ]
          : [];
      const latch = `${details.pool ? 'self-latching latch' : 'latch that opens from both sides'} with its keep and screws, for a gap of ${size(details.clear.latch)} and a stile ${size(panel.stile.width)} wide and ${size(panel.stile.depth)} deep; its keep stops the leaf, or a stop strip on the post does, which is not in this list`;
      return [...ends, piece(hinge, details.hinges), piece(latch, 1), ...brace];
    }
  }
}

/** Blocks that close the ends of grooves that a saw has run through: four, cut from an offcut of the rails. */
function grooveEnds({ groove, stile, display }: Panel): Fitting[] {
  const [depth, width, length] = [groove.depth, groove.width, stile.width].map((each) =>
    formatLength(each, fineMarks(display)),
  );
  const name = `block for the end of a groove, only if it is sawn right through: ${width} wide, ${depth} deep, ${length} ${display.unit} long, from an offcut`;
  return [{ name, material: 'wood of the frame', count: 4, unit: 'pieces' }];
}

function bracketText({ display, outside }: Panel): string {
  const size = (length: number) => formatLength(length, display, { named: true });
  const behind = ceilToMark(BRACKET.leg + BRACKET.beyond, display.mark);
  const post = ceilToMark(outside.depth + behind, display.mark);
  return `angle bracket, legs of ${size(BRACKET.leg)} and as wide or wider, ${size(BRACKET.metal)} thick or more, two screw holes in each leg side by side across its width, ${size(BRACKET.screws)} apart; posts ${size(post)} deep or more where their front is level with the panel’s: ${size(behind)} behind its back`;
}

/** What the places of the screws are laid out for, so that a hinge can be bought to them. */
function hingeText(panel: Panel): string {
  const { display, stile, details } = panel;
  const size = (length: number) => formatLength(length, fineMarks(display), { named: true });
  const { height, step, across } = hingePlate(panel, corners(panel));
  const gap = details.use === 'gate' ? `; closes to a gap of ${size(details.clear.hinge)}` : '';
  return `plates about ${size(height)} high and no wider than ${size(stile.depth)}, three holes in each, ${size(step)} apart up the stile, the middle one ${size(across)} across from the others${gap}`;
}

/** Where the screws of a brace plate go in it, from its eye. */
function holesText({ eye, screws }: BracePlate, size: (length: number) => string): string {
  const spots = screws.map(({ y }) => `${size(Math.abs(y - eye.y))} ${y > eye.y ? 'above' : 'below'} its eye`);
  const across = [...new Set(screws.map(({ x }) => size(Math.abs(x - eye.x))))].join(' and ');
  return `drill it to suit: one screw hole ${spots.join(', one ')}, both ${across} from its middle towards the side of the leaf (the upper plate; the lower one is the same the other way up)`;
}

function gaugeText({ gauge, diameter }: ChosenScrew, { unit }: Marks): string {
  return unit === 'in' ? `No. ${gauge}` : `No. ${gauge} (${diameter.toFixed(1)} mm)`;
}

/** Wood over the groove that a carrier's screws may go into, 3 mm kept, mm. */
export function carrierReach({ rail, groove, display }: Panel): number {
  return floorToMark(Math.max(0, rail.height - groove.depth - 3), display.mark);
}

/** Upright load to ask of one hinge, N: the leaf and whoever leans on it. */
function hingeLoad({ hingeForces, mass }: ReturnType<typeof gateDetails>): number {
  return hingeForces?.loaded.vertical ?? mass * GRAVITY;
}

/** A load rounded up for buying: tens of newtons, or fives of pounds in inch work. */
function loadText(load: number, { unit }: Marks): string {
  return unit === 'in' ? `${Math.ceil(load / poundForce / 5) * 5} lb` : `${Math.ceil(load / 10) * 10} N`;
}
