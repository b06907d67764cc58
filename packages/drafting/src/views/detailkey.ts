import { dividerDetails, gateDetails, type Panel, sideFixings, VIEW_LETTERS } from '@wattlewright/model';

/** The letters in the order in which the sections and details of a panel take them. */
const [DOWN, ACROSS, HEAD, FOOT, CORNER, END, FIXING] = VIEW_LETTERS;

/** Where the two sections of a panel are taken. */
export interface CutPlanes {
  /** The section in plan looks down from the middle of a course. */
  readonly down: { readonly letter: string; readonly y: number; readonly course: number };
  /** The upright section looks to the left from the middle of a stave. */
  readonly across: { readonly letter: string; readonly x: number; readonly stave: number };
}

/** What of a panel says where its sections are taken. */
export type Cuttable = Pick<Panel, 'courses' | 'staves' | 'rows' | 'weave'>;

/**
 * Where the sections of a panel are taken, panel frame, mm: in plan through the middle of the course nearest half height
 * whose slat's end at the left stile lies farthest off mid-depth, which the detail of that end shows too; upright through
 * the middle of the stave at half width. Courses and staves count from 0. Their letters, T and U, are never those of parts.
 */
export function cutPlanes(panel: Cuttable): CutPlanes {
  const { courses, staves } = panel;
  const course = farthestEnd(panel);
  const stave = Math.floor((staves.count - 1) / 2);
  return {
    down: { letter: DOWN, y: (courses.bottoms[course] as number) + courses.height / 2, course },
    across: { letter: ACROSS, x: staves.centres[stave] as number, stave },
  };
}

/** The course nearest half height whose slat's end at the left stile lies farthest off mid-depth, from 0. */
function farthestEnd({ courses, rows, weave }: Cuttable): number {
  const middle = Math.floor(courses.count / 2);
  const off = rows.map(({ bend }) => Math.abs(bend.endOffsets[0]));
  const most = Math.max(...off);
  const far = weave.rowOfCourse.flatMap((row, course) => ((off[row] as number) > most - 1e-6 ? [course] : []));
  return far.toSorted((a, b) => Math.abs(a - middle) - Math.abs(b - middle) || a - b)[0] ?? middle;
}

/** What a section is called by: `T–T`. */
export function cutName({ letter }: { readonly letter: string }): string {
  return `${letter}–${letter}`;
}

/** What a detail shows. */
export type DetailSubject = 'stave head' | 'stave foot' | 'corner' | 'slat end' | 'fixing';

/** A detail of a panel: its letter, and the place in other views that its circle marks. */
export interface DetailLetter {
  readonly letter: string;
  readonly subject: DetailSubject;
  readonly title: string;
  /** Middle of the circle, panel frame, mm. */
  readonly at: { readonly x: number; readonly y: number; readonly z: number };
  /** Radius that takes in what the detail shows, mm. */
  readonly radius: number;
  /** The views that carry the circle. */
  readonly on: readonly ('elevation' | 'weave section' | 'vertical section')[];
}

/**
 * The details of a panel, with letters that no part has, so that nobody takes them for the cut letters of
 * parts: V the head of a stave under the top rail, W its foot in its groove, X the corner, Y the slat's end at the stile, Z how the panel is fixed.
 */
export function detailLetters(panel: Panel): readonly DetailLetter[] {
  const { rail, stile, clear, groove, outside, courses, display } = panel;
  const planes = cutPlanes(panel);
  const fixing = fixingPlace(panel);
  const reach = Math.max(rail.depth, rail.height) * 0.75;
  return [
    {
      letter: HEAD,
      subject: 'stave head',
      title: courses.allowance > display.mark / 8 ? 'Top rail and room for swelling' : 'Top rail and stave head',
      at: { x: planes.across.x, y: clear.bottom + clear.height, z: 0 },
      radius: reach,
      on: ['vertical section'],
    },
    {
      letter: FOOT,
      subject: 'stave foot',
      title: 'Groove and stave foot',
      at: { x: planes.across.x, y: clear.bottom - groove.depth / 2, z: 0 },
      radius: reach,
      on: ['vertical section'],
    },
    {
      letter: CORNER,
      subject: 'corner',
      title: 'Corner of rail and stile',
      at: { x: stile.width / 2, y: rail.height, z: 0 },
      radius: Math.max(rail.height, stile.width) * 0.9,
      on: ['elevation'],
    },
    {
      letter: END,
      subject: 'slat end',
      title: 'Slat end at the stile',
      at: { x: clear.left, y: planes.down.y, z: 0 },
      radius: Math.max(endReach(panel), stile.width * 0.6, outside.depth * 0.6),
      on: ['weave section'],
    },
    { letter: FIXING, subject: 'fixing', title: fixing.title, at: fixing.at, radius: fixing.radius, on: ['elevation'] },
  ];
}

/** How far from mid-depth the slats' ends reach at the left stile, mm, with some room. */
function endReach({ rows, courses, staves }: Panel): number {
  const ends = rows.map(({ bend }) => Math.abs(bend.endOffsets[0]));
  return Math.max(staves.depth / 2, ...ends) + courses.thickness;
}

/** Where the panel meets what holds it, and what that is called. */
function fixingPlace(panel: Panel): Pick<DetailLetter, 'title' | 'at' | 'radius'> {
  const { details, outside, stile, rail } = panel;
  const radius = Math.max(stile.width, rail.height) * 0.9;
  const side = (right: boolean, y: number): DetailLetter['at'] => ({
    x: right ? outside.width - stile.width / 2 : stile.width / 2,
    y,
    z: 0,
  });
  switch (details.use) {
    case 'gate':
      return {
        title: 'Hinge',
        at: side(details.hinge === 'right', Math.max(...gateDetails(panel).hinges.map(({ y }) => y))),
        radius,
      };
    case 'divider':
      return details.stand === 'feet'
        ? { title: 'Foot', at: side(true, 0), radius }
        : {
            title: 'Track',
            at: {
              x: dividerDetails(panel).track?.carriers.at(-1)?.x ?? outside.width / 2,
              y: outside.height - rail.height / 2,
              z: 0,
            },
            radius,
          };
    case 'guard':
      return { title: 'Fixing to the post', at: side(true, fixingHeight(panel)), radius };
    case 'screen':
      return { title: SCREEN_FIXINGS[details.mounting], at: side(true, fixingHeight(panel)), radius };
  }
}

/** Height of the fixing nearest half height: the lower of two, mm. */
function fixingHeight(panel: Panel): number {
  const half = panel.outside.height / 2;
  const heights = sideFixings(panel).places.map(({ y }) => y);
  return heights.toSorted((a, b) => Math.abs(a - half) - Math.abs(b - half) || a - b)[0] ?? half;
}

const SCREEN_FIXINGS = {
  stiles: 'Fixing through the stile',
  blocks: 'Stand-off block',
  posts: 'Fixing to the post',
} as const;
