import {
  BRACKET,
  ceilToMark,
  formatLength,
  type Panel,
  type Part,
  type ScreenUse,
  sideFixings,
} from '@wattlewright/model';
import type { NoteTarget } from '../layout/notes.ts';
import type { Size } from '../layout/rows.ts';
import type { Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, polygon, rectangle } from '../path.ts';
import type { View } from '../view.ts';
import { type StatedOptions, said, stated } from './detaildrawing.ts';
import { screwName, screwReach, screwSide, screwsOf } from './detailscrew.ts';
import { breakLine, cutFace } from './grain.ts';
import { partOf } from './partof.ts';
import { planBox } from './weavesectionink.ts';

/** What holds the panel at one side, looking down: its ink, its notes and its sizes along and through the panel. */
export interface FixingInk {
  readonly marks: readonly Mark[];
  readonly notes: readonly NoteTarget[];
  readonly along: readonly Size[];
  readonly through: readonly Size[];
}

/** Where a fixing is drawn. */
export interface FixingPlace {
  readonly panel: Panel;
  readonly parts: readonly Part[];
  readonly scale: number;
  readonly plan: View;
  /** Side of the panel, and its outer edge, x in mm. */
  readonly side: 'left' | 'right';
}

/** What is drawn of a post at the least, from the face that the panel meets, mm; its real size is nothing of the panel's. */
export const POST_SHOWN = 30;

/** Grey of a post or a wall. */
const POST_TONE = 0.9;

/** Wood drawn beyond a screw's tip before the post is broken off, mm. */
const PAST_TIP = 8;

/** The panel's outer edge at the side of a fixing, x in mm, and the way from it out of the panel. */
export const frameOf = ({ panel, side }: FixingPlace): { edge: number; out: 1 | -1 } =>
  side === 'right' ? { edge: panel.outside.width, out: 1 } : { edge: 0, out: -1 };

/**
 * The face of a post that is there already, its wood toned and broken off on all other sides: neither its size nor how far
 * the panel stands in it is the panel's.
 */
export function postFace(plan: View, from: number, to: number, [z0, z1]: readonly [number, number]): Mark[] {
  const tone = rectangle(planBox(plan, [Math.min(from, to), Math.max(from, to)], [z0, z1]));
  return [
    { ...stroke('paper', tone), shade: POST_TONE },
    stroke('edge-light', line(plan(from, z0), plan(from, z1))),
    breakLine(plan(from, z0), plan(to, z0)),
    breakLine(plan(from, z1), plan(to, z1)),
    breakLine(plan(to, z0), plan(to, z1)),
  ];
}

/** A post beside the panel and the bracket that joins them at the back. */
export function postFixing(place: FixingPlace): FixingInk {
  const { panel, plan, scale, side } = place;
  const { outside, opening, stile, display } = panel;
  const { edge, out } = frameOf(place);
  const gap = opening ? (side === 'right' ? opening.gaps.right : opening.gaps.left) : 0;
  const face = edge + out * gap;
  const deep = outside.depth / 2 + BRACKET.leg + 6;
  const back = -stile.depth / 2;
  const { leg, metal } = BRACKET;
  const bracket = polygon([
    plan(face - out * leg, back),
    plan(face, back),
    plan(face, back - leg),
    plan(face - out * metal, back - leg),
    plan(face - out * metal, back - metal),
    plan(face - out * leg, back - metal),
  ]);
  const screws = screwsOf(panel, 'mounting');
  const driven = screws?.driven.find(({ x }) => x > outside.width / 2 === out > 0);
  const reach = driven ? Math.abs(driven.x - edge) : leg * 0.6;
  // A bought angle has its holes at one distance from the heel on both legs.
  const into = back - (reach + gap);
  const behind = formatLength(ceilToMark(leg + BRACKET.beyond, display.mark), display, {
    named: true,
    fractions: 'stacked',
  });
  const shown = screws ? Math.max(POST_SHOWN, screwReach(screws) - metal + PAST_TIP) : POST_SHOWN;
  const legs = formatLength(leg, display, { named: true, fractions: 'stacked' });
  return {
    marks: [
      ...postFace(plan, face, face + out * shown, [-deep, outside.depth / 2 + 6]),
      { ...stroke('edge-light', bracket), shade: 0.55 },
      stroke('edge-light', bracket),
      ...(screws
        ? [
            ...screwSide(screws, { from: plan(edge - out * reach, back - metal), way: [0, 1], scale }),
            ...screwSide(screws, { from: plan(face - out * metal, into), way: [out, 0], scale }),
          ]
        : []),
    ],
    notes: [
      {
        at: plan(face + out * shown * 0.6, 0),
        text: `Post, broken off all round: place the panel so that the post reaches ${behind} or more behind its back`,
      },
      {
        at: plan(face - out * metal * 0.5, back - leg * 0.9),
        text: `Angle bracket at the back, both legs ${legs}${screws ? `, screws ${screwName(screws)}` : ''}`,
      },
    ],
    along: [
      ...stated(edge, face, { display, along: (x) => plan(x, 0)[0] }),
      ...(driven ? stated(edge, driven.x, { display, along: (x) => plan(x, 0)[0], level: 1 }) : []),
    ],
    through: screws ? stated(back, into, { display, along: (z) => plan(0, z)[1] }) : [],
  };
}

/** What is drawn of a wall behind its face, mm. */
const WALL_SHOWN = 10;

/** Thickness of a pane as drawn, mm: 4 mm float glass, common practice, no source. */
const PANE = 4;

/** The wall or the frame of a window behind the panel, with the stand-off block if there is one, and the screw through. */
export function wallFixing(place: FixingPlace, screen: ScreenUse): FixingInk {
  const { panel, parts, plan, scale } = place;
  const { stile, outside, display } = panel;
  const { edge, out } = frameOf(place);
  const back = -stile.depth / 2;
  const wall = back - screen.standoff;
  const block = partOf(parts, panel, 'stand-off block');
  const blockFace = rectangle(planBox(plan, [edge - out * stile.width, edge], [wall, back]));
  const screws = screwsOf(panel, 'mounting');
  const right = edge > outside.width / 2;
  const at = sideFixings(panel).places.find(({ x }) => x > outside.width / 2 === right);
  const pane = glassInk(place, screen);
  const past = edge + out * POST_SHOWN;
  const deep = screws && at && screen.glass !== undefined ? back - at.z + screwReach(screws) : 0;
  const tip = deep > 0 ? `; its tip ${said(deep, display)} behind the frame` : '';
  const inner = edge - out * stile.width;
  const depth: StatedOptions = { display, along: (z) => plan(0, z)[1] };
  return {
    marks: [
      ...(screen.standoff > 0 ? cutFace(blockFace, { grain: 'end', ...(block ? { of: block.letter } : {}) }) : []),
      {
        ...stroke(
          'paper',
          rectangle(planBox(plan, [Math.min(past, inner), Math.max(past, inner)], [wall - WALL_SHOWN, wall])),
        ),
        shade: POST_TONE,
      },
      stroke('edge-light', line(plan(past, wall), plan(inner, wall))),
      ...pane.marks,
      ...(screws && at ? screwSide(screws, { from: plan(at.x, at.z), way: [0, -1], scale }) : []),
    ],
    notes: [
      {
        at: plan(past - out * 6, wall - WALL_SHOWN / 2),
        text: screen.into === 'masonry' ? 'Wall, plugged' : 'Wall or frame',
      },
      ...(screen.standoff > 0
        ? [{ at: plan(edge - out * stile.width * 0.15, (wall + back) / 2), text: 'Stand-off block' }]
        : []),
      ...(screws && at
        ? [{ at: plan(at.x, at.z - stile.depth * 0.3), text: `Screw ${screwName(screws)} at each fixing${tip}` }]
        : []),
      ...pane.notes,
    ],
    along: [],
    through: [
      ...(screen.standoff > 0 ? stated(wall, back, depth) : []),
      // The two that must not meet: the pane, and the tip of the screw.
      ...(screen.glass === undefined
        ? []
        : [
            ...stated(glassPlane(panel, screen.glass), back, { ...depth, level: 1 }),
            ...(screws && at ? stated(at.z - screwReach(screws), back, { ...depth, level: 2 }) : []),
          ]),
    ],
  };
}

/** The face of the pane behind the frame, z in mm. */
const glassPlane = ({ outside }: Panel, glass: number): number => -outside.depth / 2 - glass;

/** The pane of the window behind the panel, as far as the detail reaches. */
function glassInk(place: FixingPlace, { glass }: ScreenUse): Pick<FixingInk, 'marks' | 'notes'> {
  if (glass === undefined) return { marks: [], notes: [] };
  const { panel, plan } = place;
  const { stile, display } = panel;
  const { edge, out } = frameOf(place);
  const near = glassPlane(panel, glass);
  const [from, to] = [edge - out * stile.width, edge - out * stile.width * 2.2];
  const pane = [near, near - PANE].map((z) => stroke('neighbour', line(plan(from, z), plan(to, z))));
  const text = `Glass ${said(glass, display)} behind the frame`;
  return { marks: pane, notes: [{ at: plan((from + to) / 2, near - PANE / 2), text }] };
}
