import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { growthRoom, LEFT, type RoomAt, roomPerPercent, roomsByMoisture } from './room.ts';
import {
  eachPanel,
  fineIn,
  isMany,
  lengthIn,
  listed,
  type Making,
  namedOf,
  roundIn,
  type StepFigure,
  type StepText,
} from './step.ts';
import { thickerBy } from './trial.ts';

/** Most that a rub takes off an arris, mm: 1/32 in or 1 mm, and never over a quarter of the slat; common practice, no source. */
const ARRIS = { in: INCH / 32, mm: 1 } as const;

/** The step that lays the slats out, measures them, and makes the lengths of stiles and staves of it. */
export function measureStack(making: Making): StepText {
  const { panels, job } = making;
  return {
    title: 'Lay out the courses and measure the stack',
    cautions: [
      panels.some(isClosed)
        ? 'Do this before any stile or stave is cut to length: it is the one check that cannot be made later.'
        : 'Do this before anything is woven: slats that came out too high for their gaps can be planed now, and never later.',
    ],
    text: [
      ...(panels.length < job.panels.length
        ? [
            `Only for ${panels.map(({ name }) => name).join(', ')}: the slats of the others are smoothed and measured already.`,
          ]
        : []),
      'First rub the slats lightly with fine paper, faces and arrises, the same from all: never more off an arris than told below, for their edges make the stack. What follows is measured after it, and no more is taken off them.',
      'Lay all slats of one panel edge to edge on a flat bench, in the order they will be woven, against a straight edge. Press them together by hand and measure the whole height at both ends; take the greater.',
      ...(isMany(making)
        ? [
            `Measure the slats of every panel.${panels.some(isClosed) ? ' Panels that are to be alike, or stand in one run, get the frame of the highest among them.' : ''}`,
          ]
        : []),
      `Measure the thickness of ten slats laid on one another and divide by ten. If they are thicker than planned by more than told below, plane them: thicker slats bend harder and stand out farther. Thinner ones only hold less firmly.`,
      ...closedTexts(making),
      ...gapTexts(making),
      'Or put both measures in the job file (field measured), with the moisture if it is another, and make the packet again: stiles, staves, slats and sticks then fit the wood as it is.',
    ],
    figures: [
      ...stackFigures(making, 'slats pressed together, planned'),
      ...eachPanel(panels, 'off an arris of a slat, at most', ({ courses }) =>
        fineIn(making)(Math.min(ARRIS[job.display.unit], courses.thickness / 4)),
      ),
      ...eachPanel(panels, 'slats thicker than planned by at most', (panel) => fineIn(making)(thickerBy(panel))),
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
    ...stripTexts(closed),
    outsideText(closed),
    `Where the stile is not as planned, ${listed(followers(closed))} follow it: the two diagonals stay alike whatever they measure, and the figures for them further on hold for a frame built as planned.`,
    'On the course stick the mark of course n moves by the difference between the slats pressed together as measured and as planned, times (n - 1), divided by the number of courses: nothing at the first, half of it half-way up. Marks of screws stay.',
    ...(posted
      ? ['Where the frame comes out taller, see before a stile is cut that posts, handrail or cap still suit.']
      : []),
    ...(limited
      ? [
          `Where the frame would come out taller than it may (below; the gap under it stays as planned, and ${roundIn(making, LEFT.mm, '1/16')} is left over it), ${spare ? 'add only the least room; where that does not do, ' : ''}plane all slats lower at one setting, or ${FILLER[closed.some(({ cover }) => cover.height > 0) ? 'covered' : 'bare']}.`,
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
    outsideText(open),
    'Where slats came out as high as planned, the marks on the course stick hold. Where they came out higher, the top course stands under its mark by as much as one slat is higher, and every course under it by its share of that, the first by nothing.',
  ];
}

/** Of slats whose moisture lies beyond the table: how they are brought into it, or reckoned with. */
function outsideText(panels: readonly Panel[]): string {
  const [{ movement } = { movement: undefined }] = panels;
  const { driest, wettest } = movement ?? { driest: 0, wettest: 0 };
  return `Wood drier or wetter than the table goes is brought to what the place makes it first, ${percent(driest)} to ${percent(wettest)} %: let it lie there, or where the air is alike. Drier slats may also be woven as they are, with what the last line of the table adds for every percent; never wetter ones, which shrink farther than is reckoned with.`;
}

/** Of slats woven so dry that the room over them is higher than the strips: that the joint closes later. */
function stripTexts(panels: readonly Panel[]): string[] {
  const dry = panels.flatMap((panel) =>
    roomsByMoisture(panel)
      .filter(({ room }) => panel.cover.height > 0 && room > panel.cover.height - SAME)
      .map(({ moisture }) => moisture),
  );
  if (dry.length === 0) return [];
  return [
    `Woven at ${percent(Math.max(...dry))} % or drier, the cover strips end above the top course at first: the joint closes as the slats take up the moisture of the place. Where it is to be closed at once, rip the strips a little higher than the room.`,
  ];
}

/** What changes with the height of the frame, in words. */
function followers(panels: readonly Panel[]): string[] {
  const braces = new Set(
    panels.flatMap(({ details }) =>
      details.use === 'gate' && details.brace.kind !== 'none' ? [details.brace.kind] : [],
    ),
  );
  return [
    'the height over all',
    'both diagonals',
    ...(braces.size > 0 ? ['the height of the upper end of the brace', 'the length of the brace'] : []),
    ...(braces.has('cable') ? ['its wire'] : []),
  ];
}

/** What stands in for a top course that is left out, where there are cover strips and where there are none. */
const FILLER = {
  covered:
    'leave out the top course and rip both cover strips higher by what is then missing: they stand on either side of the staves and fill it, glued to the rail, and pinned where a pin long enough is sold',
  bare: 'leave out the top course and fill what is then missing under the top rail with two strips from stile to stile, one on either side of the staves, flush with the faces of the rail and glued to it',
} as const;

function percent(moisture: number): string {
  return String(Number(moisture.toFixed(1)));
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
        ? `${what}, wood at ${percent(moisture)} % when woven (as planned)`
        : `${what}, at ${percent(moisture)} %`,
      (panel) => {
        const at = roomsByMoisture(panel)[i];
        return at && value(at, panel, i === 0);
      },
    ),
  );
}

/** The last line of the table: what every percent adds under its driest row. */
function perPercent(making: Making, panels: readonly Panel[], what: string): StepFigure[] {
  const [first] = panels;
  if (!first) return [];
  const fine = fineIn(making);
  return eachPanel(
    panels,
    `${what}, for every percent under ${percent(roomPerPercent(first).below)} %`,
    (panel) => `${fine(roomPerPercent(panel).room)} more`,
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
    ...perPercent(making, panels.filter(isClosed), 'stile'),
    ...eachPanel(panels, 'stile', (panel) => (isClosed(panel) ? undefined : `as planned, ${show(panel.stile.length)}`)),
    ...byMoisture(panels, 'all gaps together, at least', (at, panel) => (isClosed(panel) ? undefined : fine(at.least))),
    ...perPercent(
      making,
      panels.filter((panel) => !isClosed(panel)),
      'all gaps together',
    ),
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
