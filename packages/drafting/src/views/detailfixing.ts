import { BRACKET, ceilToMark, formatLength, type Panel, type Part } from '@wattlewright/model';
import type { NoteTarget } from '../layout/notes.ts';
import type { Size } from '../layout/rows.ts';
import type { Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, polygon, rectangle } from '../path.ts';
import type { View } from '../view.ts';
import { THERE_TONE } from './backing.ts';
import { stated } from './detaildrawing.ts';
import { screwName, screwReach, screwSide, screwsOf } from './detailscrew.ts';
import { breakLine } from './grain.ts';
import { planBox } from './weavesectionink.ts';

/** What holds the panel at one side, looking down: its ink, its notes and its sizes along and through the panel. */
export interface FixingInk {
  /** What lies under the panel's own ink; nothing unless given. */
  readonly under?: readonly Mark[];
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

/** Wood drawn beyond a screw's tip before what it holds in is broken off, mm. */
export const PAST_TIP = 8;

/** Gap drawn to a post where the job gives no opening, mm: for the place only. */
const GAP_DRAWN = 4;

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
    { ...stroke('paper', tone), shade: THERE_TONE },
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
  const gap = opening ? (side === 'right' ? opening.gaps.right : opening.gaps.left) : GAP_DRAWN;
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
        text: `Post, broken off all round: place the panel so that the post reaches ${behind} or more behind its back${opening ? '' : '. Its gap to the panel is as the posts stand, for the job gives no opening'}`,
      },
      {
        at: plan(face - out * metal * 0.5, back - leg * 0.9),
        text: `Angle bracket at the back, both legs ${legs}${screws ? `, screws ${screwName(screws)}` : ''}`,
      },
    ],
    along: [
      ...(opening ? stated(edge, face, { display, along: (x) => plan(x, 0)[0] }) : []),
      ...(driven ? stated(edge, driven.x, { display, along: (x) => plan(x, 0)[0], level: 1 }) : []),
    ],
    through: screws && opening ? stated(back, into, { display, along: (z) => plan(0, z)[1] }) : [],
  };
}
