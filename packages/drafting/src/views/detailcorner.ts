import { type Panel, type PanelPlace, type Part, type ScrewRow, sideAt } from '@wattlewright/model';
import { moved } from '../ink.ts';
import type { NoteTarget } from '../layout/notes.ts';
import { TEXT } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Drawing, Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import type { Extent } from '../scale.ts';
import { type View, view, viewBox } from '../view.ts';
import { dimensioned, planFacing, type StatedOptions, said, stated } from './detaildrawing.ts';
import type { DetailLetter } from './detailkey.ts';
import {
  cornerPlaces,
  hasShape,
  plugText,
  screwEnd,
  screwName,
  screwReach,
  screwsOf,
  screwsSide,
  sunkBy,
} from './detailscrew.ts';
import { breakLine, cutFace, seenFace } from './grain.ts';
import { partOf } from './partof.ts';
import type { SectionOptions } from './weavesection.ts';
import { planBox, planView, stopBox } from './weavesectionink.ts';

/** Between the view from the front and the one looking down, mm on paper. */
const BETWEEN = 12;

interface Reach {
  readonly x: number;
  readonly y: number;
}

/** How far the detail reaches into the panel: past the stave, and over the tips of the screws. */
function reachOf(panel: Panel): Reach {
  const { stile, staves, rail, clear } = panel;
  const screws = screwsOf(panel, 'rail to stile');
  const tip = screws ? screwReach(screws) * 1.15 : 0;
  return {
    x: stile.width + staves.width + Math.min(staves.bay * 0.75, stile.width * 0.6),
    y: Math.min(rail.height + clear.height * 0.5, Math.max(rail.height * 2, rail.height + stile.width, tip)),
  };
}

/** Real size of the detail, mm. */
export function cornerExtent(panel: Panel): Extent {
  const { x, y } = reachOf(panel);
  return { width: x, height: y + panel.rail.depth };
}

/**
 * The lower left corner from the front, the groove and the stave's foot hidden in the rail; and under it the joint looking
 * down on the rail, with the stile's end cut across. Centre lines show the screws.
 */
export function corner(panel: Panel, key: DetailLetter, { scale, parts = [] }: SectionOptions): Drawing {
  const { rail, stile, groove, staves, display } = panel;
  const s = scale.ratio;
  const down = BETWEEN + (rail.depth / 2) * s;
  const joint = moved(jointInk(panel, parts, s), { du: 0, dv: down });
  const along: StatedOptions = { display, along: (x) => x * s };
  const up: StatedOptions = { display, along: (y) => -y * s };
  const through: StatedOptions = { display, along: (z) => z * s + down };
  const screws = screwsOf(panel, 'rail to stile');
  const places = screws ? cornerPlaces(screws, panel) : [];
  return dimensioned({
    name: `detail-${key.letter.toLowerCase()}`,
    title: `Detail ${key.letter}  ${key.title}`,
    alt: `The lower left corner of ${panel.name}: the stile stands on the rail that runs through, held by screws through the rail.`,
    scale,
    ink: [...frontInk(panel, parts, s), ...joint, ...planWords([reachOf(panel).x * s, down])],
    sizes: {
      above: [...stated(0, stile.width, along), ...stated(stile.width, stile.width + staves.width, along)],
      left: [
        ...stated(0, rail.height, { ...up, level: 1 }),
        ...stated(rail.height - groove.depth, rail.height, up),
        ...(screws ? stated(0, sunkBy(screws), up) : []),
        // Each from the face that it is nearer to, as a marking gauge is set.
        ...places.flatMap(({ z }) => stated(z < 0 ? -rail.depth / 2 : rail.depth / 2, z, through)),
        ...stated(-rail.depth / 2, rail.depth / 2, { ...through, level: 1 }),
      ],
      below: [...new Set(places.map(({ x }) => x))].flatMap((x) => stated(0, x, along)),
    },
    notes: notes(panel, s, (x, z) => [x * s, z * s + down]),
    noteWidth: 42,
  });
}

/** What the plan is and which side of it is which; over a narrow plan the first clear of the break lines and of the other. */
function planWords(end: Point): Mark[] {
  const text = 'looking down, stile cut';
  const narrow = textWidth(text, TEXT) + 1 > end[0];
  return [write('note', text, [0, narrow ? BETWEEN / 2 + 1 : BETWEEN - 2.6], { height: TEXT }), ...planFacing(end)];
}

/** The corner from the front: faces in their order from back to front, then what is hidden in the rail. */
function frontInk(panel: Panel, parts: readonly Part[], scale: number): Mark[] {
  const at = view(scale);
  const { rail, stile, staves, groove } = panel;
  const { x, y } = reachOf(panel);
  const letter = (role: Part['role']): string | undefined => partOf(parts, panel, role)?.letter;
  const face = (x0: number, y0: number, x1: number, y1: number, role: Part['role']): Mark[] =>
    seenFace(rectangle(viewBox(at, [x0, y0], [x1, y1])), letter(role));
  const right = staves.lefts[0] as number;
  const bed = rail.height - groove.depth;
  const hidden = (ax: number, ay: number, bx: number, by: number): Mark =>
    stroke('hidden', line(at(ax, ay), at(bx, by)));
  return [
    ...weaveFront(panel, face, { x, y }),
    ...stopFront(panel, parts, face, y),
    ...face(0, 0, x, rail.height, 'rail'),
    ...face(0, rail.height, stile.width, y, 'stile'),
    hidden(stile.width, bed, x, bed),
    hidden(stile.width, bed, stile.width, rail.height),
    hidden(right, staves.bottom, right, rail.height),
    hidden(right + staves.width, staves.bottom, right + staves.width, rail.height),
    ...screwLines(panel, at, scale),
    breakLine(at(x, 0), at(x, y)),
    breakLine(at(0, y), at(x, y)),
  ];
}

/** The first stave and the courses beside it, each in front of the other as the weave has it. */
function weaveFront(panel: Panel, face: FaceMaker, { x, y }: Reach): Mark[] {
  const { courses, staves, clear, rail } = panel;
  const left = staves.lefts[0] as number;
  const shown = courses.bottoms.flatMap((bottom, course) => (bottom < y ? [{ bottom, course }] : []));
  const slats = (side: number): Mark[] =>
    shown.flatMap(({ bottom, course }) =>
      sideAt(panel, course, 0) === side
        ? face(clear.left, bottom, x, Math.min(bottom + courses.height, y), 'slat')
        : [],
    );
  return [...slats(-1), ...face(left, rail.height, left + staves.width, y, 'stave'), ...slats(1)];
}

/** The corner's screws, the nearest the front first. */
function fromFront(screws: ScrewRow, panel: Panel): readonly PanelPlace[] {
  return cornerPlaces(screws, panel).toSorted((a, b) => b.z - a.z);
}

/** The corner's screws, that nearer the front in full, the other by its centre line. */
function screwLines(panel: Panel, at: View, scale: number): Mark[] {
  const screws = screwsOf(panel, 'rail to stile');
  if (!screws) return [];
  return screwsSide(
    screws,
    fromFront(screws, panel).map(({ x }) => ({ from: at(x, 0), way: [0, -1], scale })),
  );
}

/** The front stop strip over slats and stave, from the rail upwards. */
function stopFront(panel: Panel, parts: readonly Part[], face: FaceMaker, y: number): Mark[] {
  const box = stopBox(panel, partOf(parts, panel, 'stop'));
  const { left, bottom } = panel.clear;
  return box ? face(left, bottom, left + box.width, y, 'stop') : [];
}

/** A face of a part in the view from the front, by its corners. */
type FaceMaker = (x0: number, y0: number, x1: number, y1: number, role: Part['role']) => Mark[];

/** The joint looking down on the rail: its groove, the stile cut across, crosses at the screws. */
function jointInk(panel: Panel, parts: readonly Part[], s: number): Mark[] {
  const { rail, stile, groove, staves } = panel;
  const plan = planView(s);
  const screws = screwsOf(panel, 'rail to stile');
  const { x } = reachOf(panel);
  const letter = (role: Part['role']): { of?: string } => {
    const part = partOf(parts, panel, role);
    return part ? { of: part.letter } : {};
  };
  const across = (z: number, from: number): Mark =>
    stroke('edge-light', line(plan(from, z), plan(x, z)), letter('rail').of);
  const box = (x0: number, x1: number, depth: number) => rectangle(planBox(plan, [x0, x1], [-depth / 2, depth / 2]));
  const left = staves.lefts[0] as number;
  return [
    ...seenFace(box(0, x, rail.depth), letter('rail').of),
    across(groove.width / 2, stile.width),
    across(-groove.width / 2, stile.width),
    ...cutFace(box(left, left + staves.width, staves.depth), { grain: 'end', ...letter('stave') }),
    ...stopPlan(panel, parts, plan),
    ...cutFace(box(0, stile.width, stile.depth), { grain: 'end', angle: -45, ...letter('stile') }),
    ...(screws ? cornerPlaces(screws, panel).flatMap(({ x: ux, z }) => screwEnd(screws, plan(ux, z), s)) : []),
    breakLine(plan(x, -rail.depth / 2), plan(x, rail.depth / 2)),
  ];
}

/** Both stop strips beside the stile, cut across. */
function stopPlan(panel: Panel, parts: readonly Part[], plan: View): Mark[] {
  const stop = partOf(parts, panel, 'stop');
  const strip = stopBox(panel, stop);
  if (!strip || !stop) return [];
  const { left } = panel.clear;
  return [1, -1].flatMap((side) => {
    const face = planBox(plan, [left, left + strip.width], [side * strip.from, side * strip.to]);
    return cutFace(rectangle(face), { grain: 'end', of: stop.letter });
  });
}

function notes(panel: Panel, scale: number, plan: View): NoteTarget[] {
  const at = view(scale);
  const { rail, stile, groove, staves, display } = panel;
  const { x } = reachOf(panel);
  const screws = screwsOf(panel, 'rail to stile');
  // The leader to the one nearest the front starts at the front of its head: it runs clear of stave and groove.
  const [front, back] = screws ? fromFront(screws, panel) : [];
  return [
    ...(screws && front && back && Math.abs(back.x - front.x) > 1e-6
      ? [
          {
            at: at(back.x, screwReach(screws) - 2 * screws.fastener.diameter),
            text: hasShape(screws, scale)
              ? 'Screw nearer the back: its centre line only; dashed, the one nearer the front'
              : `Of the two screws this one, at the ${back.x > front.x ? 'right' : 'left'}, is nearer the back`,
          },
        ]
      : []),
    {
      at: at((x + stile.width) / 2, (rail.height - groove.depth) / 2),
      text: 'Rail runs through; its groove stops at the stile',
    },
    { at: at(stile.width * 0.93, rail.height * 1.3), text: 'Stile stands on the rail' },
    {
      at: at((staves.lefts[0] as number) + staves.width / 2, rail.height - groove.depth / 2),
      text: `First stave against the stile, in a groove ${said(groove.depth, display)} deep`,
    },
    ...(screws && front && sunkBy(screws) > 0
      ? [
          {
            at: at(front.x, sunkBy(screws) / 2),
            text: `Heads sunk ${said(sunkBy(screws), display)}, ${plugText(panel, screws)} glued over them`,
          },
        ]
      : []),
    ...(screws && front
      ? [
          {
            at: plan(front.x, front.z + screws.fastener.diameter * 0.7),
            text: `Two screws ${screwName(screws)}, staggered, up into the stile’s end`,
          },
        ]
      : []),
  ];
}
