import { type Panel, type Part, weaveReach } from '@wattlewright/model';
import type { NoteTarget } from '../layout/notes.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line } from '../path.ts';
import type { Extent } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import type { View } from '../view.ts';
import { backingOf, backingUpright } from './backing.ts';
import { freeCircle } from './detailcircle.ts';
import { boxOfInk, dimensioned, facing, said } from './detaildrawing.ts';
import { cutName, cutPlanes, detailLetters } from './detailkey.ts';
import { breakLine } from './grain.ts';
import { coverBox, uprightInk, uprightView } from './verticalsectionink.ts';
import { clearances, siteInk } from './verticalsectionsite.ts';
import { capDepths, depths, heights, type Piece, totals } from './verticalsectionsizes.ts';
import type { SectionOptions } from './weavesection.ts';

/** Options of `verticalSection`. */
export interface VerticalOptions extends SectionOptions {
  /** Leaves out the middle courses between break lines, for a large scale; panels of few courses stay whole. */
  readonly broken?: boolean;
}

/** Courses shown at the foot and at the head of a broken view. */
const COURSES_KEPT = 3;

/** Between the two parts of a broken view, mm on paper. */
const BREAK_ROOM = 6;

/** From where a leader to a note ends to the right, mm: no letter of a circle stands on its terminator or on its start. */
const LED = 6;

/** Real size of `verticalSection`, mm. */
export function verticalSectionExtent(panel: Panel, broken = false): Extent {
  const { outside, details } = panel;
  const { under = 0, over = 0, cap } = clearances(panel);
  const feet = details.use === 'divider' ? (details.feet?.length ?? 0) : 0;
  const whole = outside.height + under + Math.max(over, cap?.height ?? 0);
  const cut = broken ? leftOut(panel) : undefined;
  return { width: Math.max(outside.depth, cap?.depth ?? 0, feet), height: whole - (cut ? cut[1] - cut[0] : 0) };
}

/** The heights between which a broken view leaves the courses out; undefined when there are too few. */
function leftOut({ courses }: Panel): readonly [number, number] | undefined {
  if (courses.count < 2 * COURSES_KEPT + 2) return undefined;
  const low = (courses.bottoms[COURSES_KEPT - 1] as number) + courses.height;
  return [low, courses.bottoms[courses.count - COURSES_KEPT] as number];
}

/**
 * The upright section: from front to back through the middle of a stave, looking to the left, the front on the left. Rails with
 * their grooves, the stave's ends in them, every course with its slat where the plane cuts it and where it bends away
 * behind, the allowance and its cover strips, and what the panel stands in.
 */
export function verticalSection(panel: Panel, { scale, parts = [], broken = false }: VerticalOptions): Drawing {
  const s = scale.ratio;
  const cut = broken ? leftOut(panel) : undefined;
  const foot = uprightView(s);
  const head = cut ? uprightView(s, cut[1] - cut[0] - BREAK_ROOM / s) : foot;
  const [low, high] = [-1, panel.outside.height + 1];
  const pieces: Piece[] = cut
    ? [
        { span: [low, cut[0]], at: foot },
        { span: [cut[1], high], at: head },
      ]
    : [{ span: [low, high], at: foot }];
  const site = siteInk({ panel, parts, scale: s, foot, head });
  const half = panel.outside.depth / 2;
  const breaks = cut
    ? [breakLine(foot(-half, cut[0]), foot(half, cut[0])), breakLine(head(-half, cut[1]), head(half, cut[1]))]
    : [];
  const behind = pieces.map((piece) => backingUpright(panel, parts, piece));
  const frame = [
    ...behind.flatMap(({ marks }) => marks),
    ...pieces.flatMap(({ span, at }) => uprightInk({ panel, parts, span, at })),
    ...breaks,
  ];
  const drawn = [...frame, ...site.marks];
  // At half height, where no line of floor, ground or opening runs; in a broken view in the break.
  const middle = cut ? (foot(0, cut[0])[1] + head(0, cut[1])[1]) / 2 : foot(0, panel.outside.height / 2)[1];
  const reach = weaveReach(panel);
  const back = Math.max(half, reach.back, -(backingOf(panel)?.face ?? 0));
  const words = facing([foot(Math.max(half, reach.front), 0)[0] - 2, middle], [foot(-back, 0)[0], middle]);
  const notes = [
    ...notesOf(panel, { foot, head, scale: s, cut: cut !== undefined }),
    ...backingNotes(behind.map(({ notes }) => notes)),
    ...site.notes,
  ];
  const led = notes.map(({ at: [u, v] }) => stroke('dimension', line([u, v], [u + LED, v])));
  const circled = [...drawn, ...circles(panel, [...drawn, ...words, ...led], { foot, head, scale: s })];
  const ink: Mark[] = [...circled, ...words];
  return dimensioned({
    name: broken ? 'vertical-section-broken' : 'vertical-section',
    title: `Section ${cutName(cutPlanes(panel).across)}, looking left`,
    alt: `Section of ${panel.name} from front to back through a stave${cut ? ', its middle courses left out' : ''}: rails with grooves and ${panel.courses.count} courses of slats.`,
    scale,
    ink,
    outline: boxOfInk(ink),
    sizes: {
      left: [
        ...pieces.flatMap((piece) => heights(panel, piece, s)),
        ...totals(panel, { foot, head, ...(cut && { broken: middle }) }),
      ],
      above: capDepths(panel, s),
      below: depths(panel, s, backingOf(panel)?.face),
    },
    notes,
    noteWidth: 50,
  });
}

/** Each thing behind the panel named once, in the lowest piece of the view that shows it. */
function backingNotes(pieces: readonly (readonly NoteTarget[])[]): NoteTarget[] {
  const all = pieces.flat();
  return all.filter(({ text }, i) => all.findIndex((other) => other.text === text) === i);
}

/** The circles of the details of the stave's foot and head, each letter where it stands free of the other ink. */
function circles(panel: Panel, ink: readonly Mark[], { foot, head, scale }: Omit<NotedView, 'cut'>): Mark[] {
  return detailLetters(panel)
    .filter(({ on }) => on.includes('vertical section'))
    .flatMap(({ at, radius, letter }) => {
      const view = at.y < panel.outside.height / 2 ? foot : head;
      return freeCircle(ink, { at: view(at.z, at.y), radius: Math.max(radius * scale, 4), letter });
    });
}

/** A rail at least this high on paper, mm, has room for leaders to what is in it; detail W names it in any case. */
const NOTED_FROM = 12;

interface NotedView {
  readonly foot: View;
  readonly head: View;
  readonly scale: number;
  readonly cut: boolean;
}

function notesOf(panel: Panel, { foot, head, scale, cut }: NotedView): NoteTarget[] {
  const { display, courses, groove, staves, rail, clear, cover } = panel;
  const top = clear.bottom + clear.height;
  const beside = -(staves.depth + courses.thickness) / 2;
  const strip = coverBox(panel);
  const course = cut ? Math.min(1, courses.count - 1) : Math.floor(courses.count / 2);
  const inRail: NoteTarget[] = [
    { at: foot(-(rail.depth + groove.width) / 4, rail.height / 2), text: 'Rail, end grain' },
    {
      at: foot(0, rail.height - groove.depth / 2),
      text: `Stave, long grain, in a groove ${said(groove.depth, display)} deep`,
    },
  ];
  return [
    ...(rail.height * scale >= NOTED_FROM ? inRail : []),
    {
      at: foot(beside, (courses.bottoms[course] as number) + courses.height / 2),
      text: coursesText(panel),
    },
    // Cover strips hide the allowance; detail V shows both.
    ...(!strip && courses.allowance > display.mark / 2
      ? [{ at: head(beside, top - courses.allowance / 2), text: 'Room for swelling' }]
      : []),
    ...(strip
      ? [
          {
            at: head(-(strip.z[0] + strip.z[1]) / 2, (strip.y[0] + strip.y[1]) / 2),
            text: `Cover strip ${said(cover.thickness, display)} thick, front and back`,
          },
        ]
      : []),
  ];
}

/** How many courses of what height. */
function coursesText({ courses, display }: Panel): string {
  const { count, gap } = courses;
  const tall = said(courses.height, { unit: display.unit, mark: courses.step });
  const gaps = gap > 0 && count > 1 ? `, open gaps of ${said(gap, display)}` : '';
  return `${count} ${count === 1 ? 'course' : 'courses'} of ${tall}${gaps}`;
}

/** `verticalSection` for `arrange`. */
export function verticalSectionMaker(panel: Panel, parts: readonly Part[] = [], broken = false): ViewMaker {
  return {
    name: broken ? 'vertical-section-broken' : 'vertical-section',
    real: verticalSectionExtent(panel, broken),
    make: (scale) => verticalSection(panel, { scale, parts, broken }),
  };
}
