import { type Panel, type Part, sideAt } from '@wattlewright/model';
import { moved } from '../ink.ts';
import type { NoteTarget } from '../layout/notes.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import type { Extent } from '../scale.ts';
import { type View, view, viewBox } from '../view.ts';
import { dimensioned, said, type StatedOptions, stated } from './detaildrawing.ts';
import type { DetailLetter } from './detailkey.ts';
import { breakLine, cutFace, seenFace } from './grain.ts';
import { partOf } from './partof.ts';
import type { SectionOptions } from './weavesection.ts';
import { planBox, planView } from './weavesectionink.ts';

/**
 * Middle of each corner screw: x from the panel's edge, z through it, mm. Two go up through the rail into the stile's
 * end, in the middle of the stile's width, each in the middle of one cheek beside the groove, so that they miss it.
 */
export function cornerScrews({ stile, rail, groove }: Panel): readonly { readonly x: number; readonly z: number }[] {
  const off = (Math.min(rail.depth, stile.depth) + groove.width) / 4;
  return [off, -off].map((z) => ({ x: stile.width / 2, z }));
}

/** Between the view from the front and the one looking down, mm on paper. */
const BETWEEN = 12;

interface Reach {
  readonly x: number;
  readonly y: number;
}

function reachOf({ stile, staves, rail, clear }: Panel): Reach {
  return {
    x: stile.width + staves.width + Math.min(staves.bay * 0.75, stile.width * 0.6),
    y: rail.height + Math.min(clear.height * 0.4, Math.max(stile.width, rail.height)),
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
  const at = view(s);
  const down = BETWEEN + (rail.depth / 2) * s;
  const joint = moved(jointInk(panel, parts, s), { du: 0, dv: down });
  const along: StatedOptions = { display, along: (x) => x * s };
  const up: StatedOptions = { display, along: (y) => -y * s };
  const through: StatedOptions = { display, along: (z) => z * s + down };
  const [front, back] = cornerScrews(panel).map(({ z }) => z) as [number, number];
  const [screw] = cornerScrews(panel);
  return dimensioned({
    name: `detail-${key.letter.toLowerCase()}`,
    title: `Detail ${key.letter}  ${key.title}`,
    alt: `The lower left corner of ${panel.name}: the stile stands on the rail that runs through, held by screws through the rail.`,
    scale,
    ink: [...frontInk(panel, parts, at), ...joint],
    sizes: {
      above: [...stated(0, stile.width, along), ...stated(stile.width, stile.width + staves.width, along)],
      left: [
        ...stated(0, rail.height, { ...up, level: 1 }),
        ...stated(rail.height - groove.depth, rail.height, up),
        ...stated(-rail.depth / 2, back, through),
        ...stated(back, front, through),
        ...stated(front, rail.depth / 2, through),
        ...stated(-rail.depth / 2, rail.depth / 2, { ...through, level: 1 }),
      ],
      below: stated(0, screw?.x ?? 0, along),
    },
    notes: notes(panel, at, (x, z) => [x * s, z * s + down]),
    noteWidth: 42,
  });
}

/** The corner from the front: faces in their order from back to front, then what is hidden in the rail. */
function frontInk(panel: Panel, parts: readonly Part[], at: View): Mark[] {
  const { rail, stile, staves, groove } = panel;
  const { x, y } = reachOf(panel);
  const letter = (role: Part['role']): string | undefined => partOf(parts, panel, role)?.letter;
  const face = (x0: number, y0: number, x1: number, y1: number, role: Part['role']): Mark[] =>
    seenFace(rectangle(viewBox(at, [x0, y0], [x1, y1])), letter(role));
  const right = staves.lefts[0] as number;
  const bed = rail.height - groove.depth;
  const hidden = (ax: number, ay: number, bx: number, by: number): Mark => stroke('hidden', line(at(ax, ay), at(bx, by)));
  return [
    ...weaveFront(panel, face, { x, y }),
    ...face(0, 0, x, rail.height, 'rail'),
    ...face(0, rail.height, stile.width, y, 'stile'),
    hidden(0, bed, x, bed),
    hidden(right, staves.bottom, right, rail.height),
    hidden(right + staves.width, staves.bottom, right + staves.width, rail.height),
    ...screwLines(panel, at),
    breakLine(at(x, 0), at(x, y)),
    breakLine(at(0, y), at(x, y)),
  ];
}

/** The first stave and the courses beside it, each in front of the other as the weave has it. */
function weaveFront(
  panel: Panel,
  face: (x0: number, y0: number, x1: number, y1: number, role: Part['role']) => Mark[],
  { x, y }: Reach,
): Mark[] {
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

function screwLines(panel: Panel, at: View): Mark[] {
  const { rail } = panel;
  const [screw] = cornerScrews(panel);
  const top = rail.height + Math.min(rail.height, reachOf(panel).y - rail.height) * 0.75;
  return screw ? [stroke('centre', line(at(screw.x, -rail.height * 0.1), at(screw.x, top)))] : [];
}

/** The joint looking down on the rail: its groove, the stile cut across, crosses at the screws. */
function jointInk(panel: Panel, parts: readonly Part[], s: number): Mark[] {
  const { rail, stile, groove, staves } = panel;
  const plan = planView(s);
  const { x } = reachOf(panel);
  const letter = (role: Part['role']): { of?: string } => {
    const part = partOf(parts, panel, role);
    return part ? { of: part.letter } : {};
  };
  const across = (z: number, from: number): Mark => stroke('edge-light', line(plan(from, z), plan(x, z)), letter('rail').of);
  const box = (x0: number, x1: number, depth: number) => rectangle(planBox(plan, [x0, x1], [-depth / 2, depth / 2]));
  const left = staves.lefts[0] as number;
  return [
    ...seenFace(box(0, x, rail.depth), letter('rail').of),
    across(groove.width / 2, stile.width),
    across(-groove.width / 2, stile.width),
    ...cutFace(box(left, left + staves.width, staves.depth), { grain: 'end', ...letter('stave') }),
    ...cutFace(box(0, stile.width, stile.depth), { grain: 'end', angle: -45, ...letter('stile') }),
    ...[groove.width / 2, -groove.width / 2].map((z) => stroke('hidden', line(plan(0, z), plan(stile.width, z)))),
    ...cornerScrews(panel).flatMap((screw) => cross(plan, screw, 5 / s)),
    breakLine(plan(x, -rail.depth / 2), plan(x, rail.depth / 2)),
  ];
}

function cross(plan: View, { x, z }: { readonly x: number; readonly z: number }, arm: number): Mark[] {
  return [
    stroke('centre', line(plan(x - arm, z), plan(x + arm, z))),
    stroke('centre', line(plan(x, z - arm), plan(x, z + arm))),
  ];
}

function notes(panel: Panel, at: View, plan: View): NoteTarget[] {
  const { rail, stile, groove, staves, display } = panel;
  const { x } = reachOf(panel);
  const [screw] = cornerScrews(panel);
  return [
    { at: at((x + stile.width) / 2, (rail.height - groove.depth) / 2), text: 'Rail runs through' },
    { at: at(stile.width * 0.75, rail.height * 1.3), text: 'Stile stands on the rail' },
    {
      at: at((staves.lefts[0] as number) + staves.width / 2, rail.height - groove.depth / 2),
      text: `First stave against the stile, in a groove ${said(groove.depth, display)} deep`,
    },
    ...(screw ? [{ at: plan(screw.x, screw.z), text: 'Two screws, one in each cheek, clear of the groove' }] : []),
  ];
}
