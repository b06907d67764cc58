import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { growthRoom, type RoomAt, roomsByMoisture } from './room.ts';
import {
  eachPanel,
  fineIn,
  isMany,
  lengthIn,
  type Making,
  namedOf,
  roundIn,
  type StepFigure,
  type StepText,
} from './step.ts';

/** Most that a rub takes off an arris, mm: 1/32 in or 1 mm, and never over a quarter of the slat; common practice, no source. */
const ARRIS = { in: INCH / 32, mm: 1 } as const;

/** The step that lays the slats out, measures them, and makes the lengths of stiles and staves of it. */
export function measureStack(making: Making): StepText {
  const { panels, job } = making;
  const doubt = roundIn(making, 0.5, '1/64');
  return {
    title: 'Lay out the courses and measure the stack',
    cautions: ['Do this before any stile or stave is cut to length: it is the one check that cannot be made later.'],
    text: [
      ...(panels.length < job.panels.length
        ? [
            `Only for ${panels.map(({ name }) => name).join(', ')}: the slats of the others are smoothed and measured already.`,
          ]
        : []),
      'First rub the slats lightly with fine paper, faces and arrises, the same from all: never more off an arris than told below, for their edges make the stack. What follows is measured after it, and no more is taken off them.',
      'Lay all slats of one panel edge to edge on a flat bench, in the order they will be woven, against a straight edge. Press them together by hand and measure the whole height at both ends; take the greater.',
      ...(isMany(making)
        ? ['Measure the slats of every panel. Panels that are to be alike get the frame of the highest among them.']
        : []),
      `Measure the thickness of ten slats laid on one another and divide by ten. If they are more than ${doubt} thicker than planned, plane them: thicker slats bend harder and stand out farther. Thinner ones only hold less firmly.`,
      ...closedTexts(making),
      ...gapTexts(making),
      'Or put both measures in the job file (measured:), with the moisture if it is another, and print the packet again: stiles, staves, slats and sticks then fit the wood as it is.',
    ],
    figures: [
      ...stackFigures(making, 'slats pressed together, planned'),
      ...eachPanel(panels, 'off an arris of a slat, at most', ({ courses }) =>
        fineIn(making)(Math.min(ARRIS[job.display.unit], courses.thickness / 4)),
      ),
      ...lengthRules(making),
    ],
  };
}

/** The stack as planned or as measured: slats, their height together, gaps, thickness. */
export function stackFigures(making: Making, pressed: string): StepFigure[] {
  const fine = fineIn(making);
  const { panels } = making;
  return [
    ...eachPanel(panels, 'slats of one panel, pressed together', ({ courses }) => String(courses.count)),
    ...eachPanel(panels, pressed, ({ courses }) => fine(courses.count * courses.height)),
    ...eachPanel(panels, 'gaps between them', ({ courses }) => gapsText(courses, fine)),
    ...eachPanel(panels, 'woven height, gaps counted in', ({ courses }) =>
      courses.gap > 0 ? fine(courses.count * courses.height + courses.gap * (courses.count - 1)) : undefined,
    ),
    ...eachPanel(panels, 'slat thickness', ({ courses }) => fine(courses.thickness)),
  ];
}

/** How many gaps, all of them together, and one: a gap need not lie on a mark, so the sum is told too. */
function gapsText({ count, gap }: Panel['courses'], fine: (length: number) => string): string | undefined {
  return gap > 0 ? `${count - 1}, ${fine(gap * (count - 1))} in all, about ${fine(gap)} each` : undefined;
}

/** Whether the slats lie close, so that the room to swell is over them. */
const isClosed = ({ courses }: Panel): boolean => courses.gap <= 0;

/** How a frame follows slats that lie close: by what they measure and by their moisture. */
function closedTexts(making: Making): string[] {
  const { panels, parts } = making;
  const closed = panels.filter(isClosed);
  if (closed.length === 0) return [];
  const whose = namedOf(closed, panels);
  const stops = parts.some(({ role }) => role === 'stop') ? ', and every stop strip,' : '';
  const limited = closed.some((panel) => growthRoom(panel) !== undefined);
  const posted = closed.some((panel) => panel.details.use === 'guard' && growthRoom(panel) === undefined);
  const spare = closed.some((panel) => roomsByMoisture(panel).some(hasSlack));
  return [
    `${whose}${whose === '' ? 'Measure' : 'measure'} the moisture of the slats too. Every stile${stops} is as long as the slats pressed together and what the table below adds for that moisture; between two rows take what lies between. Staves go by their line, the outside height changes as much as the stile.${closed.some(({ cover }) => cover.height > 0) ? ' Cover strips stay as they are planned: what wood woven drier has more to swell, it has less to shrink.' : ''}`,
    'On the course stick the mark of course n moves by the difference between the slats pressed together as measured and as planned, times (n - 1), divided by the number of courses: nothing at the first, half of it half-way up. Marks of screws stay.',
    ...(posted
      ? ['Where the frame comes out taller, see before a stile is cut that posts, handrail or cap still suit.']
      : []),
    ...(limited
      ? [
          `Where the frame would come out taller than it may (below), ${spare ? 'add only the least room; where that does not do, ' : ''}plane all slats lower at one setting, or leave out the top course and glue a filler under the top rail, as high as what is then missing.`,
        ]
      : []),
  ];
}

/** How slats with gaps between them fit the frame planned. */
function gapTexts(making: Making): string[] {
  const open = making.panels.filter((panel) => !isClosed(panel));
  if (open.length === 0) return [];
  const whose = namedOf(open, making.panels);
  const stops = making.parts.some(({ role }) => role === 'stop') ? ', stop strips' : '';
  return [
    `${whose}${whose === '' ? 'Stiles' : 'stiles'}${stops} and staves stay as they are planned, whatever the slats measure and whatever their moisture: the gaps take it up. One gap is the woven height below less the slats pressed together as measured, divided by one less than the number of courses. All gaps together are never less than told below for the moisture of the slats: plane the slats lower if they are.`,
    'The marks on the course stick hold as they are; where a slat came out higher than planned, the top course sits lower by as much, and those under it by their share.',
  ];
}

/** Rooms that differ by less are one on a tape, mm. */
const SAME = 0.5;

function hasSlack({ room, least }: RoomAt): boolean {
  return room - least > SAME;
}

/** A row for every moisture of the table, the planned one first; the site is the same for all panels. */
function byMoisture(
  panels: readonly Panel[],
  what: string,
  value: (at: RoomAt, panel: Panel, planned: boolean) => string | undefined,
): StepFigure[] {
  const [first] = panels;
  return (first ? roomsByMoisture(first) : []).flatMap(({ moisture }, i) =>
    eachPanel(
      panels,
      i === 0
        ? `${what}, wood at ${Number(moisture.toFixed(1))} % when woven (as planned)`
        : `${what}, at ${Number(moisture.toFixed(1))} %`,
      (panel) => {
        const at = roomsByMoisture(panel)[i];
        return at && value(at, panel, i === 0);
      },
    ),
  );
}

/** How stile and stave follow from the measured stack, with the sizes planned. */
function lengthRules(making: Making): StepFigure[] {
  const { panels } = making;
  const show = lengthIn(making);
  const fine = fineIn(making);
  return [
    ...byMoisture(panels, 'stile', (at, panel, planned) => {
      if (!isClosed(panel)) return undefined;
      const least = hasSlack(at) ? ` (at least ${fine(at.least)})` : '';
      return planned
        ? `slats pressed together + ${fine(at.room)}${least}; planned ${show(panel.stile.length)}`
        : `+ ${fine(at.room)}${least}`;
    }),
    ...eachPanel(panels, 'stile', (panel) => (isClosed(panel) ? undefined : `as planned, ${show(panel.stile.length)}`)),
    ...byMoisture(panels, 'all gaps together, at least', (at, panel) => (isClosed(panel) ? undefined : fine(at.least))),
    ...eachPanel(panels, 'stave', ({ groove, staves, spec }) => {
      const less = spec.stave.clearance > 0 ? ` - ${fine(spec.stave.clearance)} (room at the top)` : '';
      return `stile + 2 x ${fine(groove.depth)} (grooves)${less}; planned ${show(staves.length)}`;
    }),
    ...eachPanel(panels, 'taller than planned the frame may be by', (panel) => {
      const room = isClosed(panel) ? growthRoom(panel) : undefined;
      return room === undefined ? undefined : fine(room);
    }),
  ];
}
