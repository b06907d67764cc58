import { type Panel, type ScreenUse, sideFixings, weaveReach } from '@wattlewright/model';
import { hatch } from '../layout/hatch.ts';
import type { NoteTarget } from '../layout/notes.ts';
import type { Size } from '../layout/rows.ts';
import type { Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import { backingName, THERE_TONE } from './backing.ts';
import { type StatedOptions, said, stated } from './detaildrawing.ts';
import { type FixingInk, type FixingPlace, frameOf, PAST_TIP, POST_SHOWN } from './detailfixing.ts';
import { screwName, screwReach, screwSide, screwsOf } from './detailscrew.ts';
import { breakLine, cutFace } from './grain.ts';
import { partOf } from './partof.ts';
import { planBox } from './weavesectionink.ts';

/** What is drawn of a wall behind its face at the least, mm. */
const WALL_SHOWN = 10;

/** Thickness of a pane as drawn, mm: 4 mm float glass, common practice, no source. */
const PANE = 4;

/** What is drawn of the wall beside an opening, before its reveal and of its thickness, mm. */
const REVEAL = { before: 8, thick: 12 } as const;

/** The places of a wall fixing, mm. */
interface WallPlaces {
  readonly back: number;
  /** Face of the wall or frame, z; and how deep it is drawn. */
  readonly wall: number;
  readonly deep: number;
  /** Inner and outer end of the wall as drawn, x. */
  readonly inner: number;
  readonly outer: number;
  /** The reveal beside the panel, x; absent where the job gives no opening. */
  readonly reveal?: number;
  /** Tip of the screw, z. */
  readonly tip?: number;
}

function placesOf(place: FixingPlace, screen: ScreenUse): WallPlaces {
  const { panel, side } = place;
  const { stile, opening } = panel;
  const { edge, out } = frameOf(place);
  const back = -stile.depth / 2;
  const wall = back - screen.standoff;
  const screws = screwsOf(panel, 'mounting');
  const tip = screws ? stile.depth / 2 - screwReach(screws) : undefined;
  const wanted = Math.max(WALL_SHOWN, tip === undefined ? 0 : wall - tip + PAST_TIP);
  // A frame is not drawn through the pane that it holds.
  const most = screen.glass === undefined ? Infinity : Math.max(WALL_SHOWN, wall - glassPlane(panel, screen.glass));
  const reveal = opening && edge + out * opening.gaps[side];
  return {
    back,
    wall,
    deep: Math.min(wanted, most),
    inner: edge - out * stile.width * 1.35,
    outer: reveal ?? edge + out * POST_SHOWN * 0.6,
    ...(reveal !== undefined && { reveal }),
    ...(tip !== undefined && { tip }),
  };
}

/** The wall or the frame of a window behind the panel, with the stand-off block if there is one, and the screw through. */
export function wallFixing(place: FixingPlace, screen: ScreenUse): FixingInk {
  const { panel, parts, plan, scale } = place;
  const { stile, outside, display } = panel;
  const { edge, out } = frameOf(place);
  const places = placesOf(place, screen);
  const { back, wall, deep } = places;
  const block = partOf(parts, panel, 'stand-off block');
  const blockFace = rectangle(planBox(plan, [edge - out * stile.width, edge], [wall, back]));
  const screws = screwsOf(panel, 'mounting');
  const at = sideFixings(panel).places.find(({ x }) => x > outside.width / 2 === out > 0);
  const pane = glassInk(place, screen, places);
  const clash = weaveReach(panel).back + wall;
  const names: NoteTarget[] = [
    { at: plan(edge + (places.outer - edge) * 0.4 - out * 2, wall - deep * 0.35), text: backingName(screen) },
    ...(places.reveal === undefined
      ? []
      : [{ at: plan(places.reveal + out * REVEAL.thick * 0.6, back / 2), text: 'Wall, its reveal beside the panel' }]),
    ...(screen.standoff > 0
      ? [{ at: plan(edge - out * stile.width * 0.15, (wall + back) / 2), text: 'Stand-off block' }]
      : []),
    ...(screws && at
      ? [
          {
            at: plan(at.x, at.z - stile.depth * 0.3),
            text: `Screw ${screwName(screws)} at each fixing${screen.standoff > 0 ? ', through stile and block' : ''}`,
          },
        ]
      : []),
    ...(clash > 1e-6
      ? [
          {
            at: plan(edge - out * stile.width, wall),
            text: `Clash: slats reach ${said(clash, display)} past this face. Packers, see the findings`,
            end: 'arrow' as const,
          },
        ]
      : []),
  ];
  return {
    under: wallInk(place, places),
    marks: [
      ...(screen.standoff > 0 ? cutFace(blockFace, { grain: 'end', ...(block ? { of: block.letter } : {}) }) : []),
      ...pane.marks,
      ...(screws && at ? screwSide(screws, { from: plan(at.x, at.z), way: [0, -1], scale }) : []),
    ],
    notes: [...names, ...pane.notes],
    along: places.reveal === undefined ? [] : stated(edge, places.reveal, { display, along: (x) => plan(x, 0)[0] }),
    through: depths(place, screen, places),
  };
}

/** The wall or frame, lined and broken off where its size is not the panel's; and the reveal before it. */
function wallInk({ plan, panel, side }: FixingPlace, { wall, deep, inner, outer, reveal }: WallPlaces): Mark[] {
  const out = side === 'right' ? 1 : -1;
  const box = rectangle(planBox(plan, [Math.min(inner, outer), Math.max(inner, outer)], [wall - deep, wall]));
  const front = panel.stile.depth / 2 + REVEAL.before;
  const far = (reveal ?? outer) + out * REVEAL.thick;
  const beside = rectangle(planBox(plan, [Math.min(outer, far), Math.max(outer, far)], [wall - deep, front]));
  return [
    { ...stroke('paper', box), shade: THERE_TONE },
    ...hatch(box, { grain: 'end', angle: -45 }),
    stroke('edge-light', line(plan(outer, wall), plan(inner, wall))),
    breakLine(plan(inner, wall - deep), plan(inner, wall), 1),
    breakLine(plan(inner, wall - deep), plan(outer, wall - deep), 1),
    ...(reveal === undefined
      ? [breakLine(plan(outer, wall - deep), plan(outer, wall), 1)]
      : [
          { ...stroke('paper', beside), shade: THERE_TONE },
          stroke('edge-light', line(plan(reveal, wall - deep), plan(reveal, front))),
          breakLine(plan(far, wall - deep), plan(far, front), 1),
          breakLine(plan(reveal, front), plan(far, front), 1),
        ]),
  ];
}

/** From the pane to the screw's tip, its thread in the wall, the block; and over them how far the pane is from the frame. */
function depths({ panel, plan }: FixingPlace, screen: ScreenUse, { back, wall, tip }: WallPlaces): Size[] {
  const depth: StatedOptions = { display: panel.display, along: (z) => plan(0, z)[1] };
  const near = screen.glass === undefined ? undefined : glassPlane(panel, screen.glass);
  return [
    ...(screen.standoff > 0 ? stated(wall, back, depth) : []),
    ...(tip === undefined || tip >= wall ? [] : stated(tip, wall, depth)),
    ...(near === undefined || tip === undefined || tip <= near ? [] : stated(near, tip, depth)),
    ...(near === undefined ? [] : stated(near, back, { ...depth, level: 1 })),
  ];
}

/** The face of the pane behind the frame, z in mm. */
const glassPlane = ({ outside }: Panel, glass: number): number => -outside.depth / 2 - glass;

/** The pane of the window behind the panel, as far as the detail reaches. */
function glassInk(place: FixingPlace, { glass }: ScreenUse, { inner }: WallPlaces): Pick<FixingInk, 'marks' | 'notes'> {
  if (glass === undefined) return { marks: [], notes: [] };
  const { panel, plan } = place;
  const { stile, display } = panel;
  const { out } = frameOf(place);
  const near = glassPlane(panel, glass);
  const [from, to] = [inner, inner - out * stile.width * 0.9];
  const pane = [near, near - PANE].map((z) => stroke('neighbour', line(plan(from, z), plan(to, z))));
  const text = `Glass ${said(glass, display)} behind the frame`;
  return { marks: pane, notes: [{ at: plan((from + to) / 2, near - PANE / 2), text }] };
}
