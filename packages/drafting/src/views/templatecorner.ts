import { formatLength, INCH, type Panel, type Part } from '@wattlewright/model';
import { union } from '../ink.ts';
import { dimensionSide } from '../layout/running.ts';
import { TEXT } from '../layout/style.ts';
import type { Box, Drawing, Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, polyline } from '../path.ts';
import { standardScale } from '../scale.ts';
import { type View, view } from '../view.ts';
import { screwReach, screwsOf, screwsSide } from './detailscrew.ts';
import { partOf } from './partof.ts';
import type { StickOptions } from './stick.ts';
import { breakAcross, breakLine, cornerScrews, fullSizes, nameIn, staveName, unitName } from './template.ts';
import { templateWords } from './templatewords.ts';

/** Clear room shown inside the corner, mm: beside a wide stile less, so that the template still stands on one page. */
const INSIDE = { most: 75, least: 40, together: 143 } as const;

/** Side of the square check: legs of 3 and 4 units, slope 5 (3² + 4² = 5²). */
const UNIT = { in: INCH, mm: 25 } as const;

/**
 * Full-size template of the lower left corner as put together, seen from the front: lay the corner on it to see that rail,
 * stile, first stave and first courses sit where they should, and that it is square (3, 4, 5 along the outer edges).
 */
export function cornerTemplate(panel: Panel, { parts = [], named = panel.name }: StickOptions = {}): Drawing {
  const { clear, outside, display } = panel;
  const unit = UNIT[display.unit];
  const show = (length: number): string => formatLength(length, display, { named: true });
  const room = (frame: number): number =>
    frame + Math.max(INSIDE.least, Math.min(INSIDE.most, INSIDE.together - frame));
  const width = Math.min(outside.width / 2, Math.max(room(clear.left), 3 * unit + 8));
  const screws = screwsOf(panel, 'rail to stile');
  const tip = screws ? screwReach(screws) + 5 : 0;
  const height = Math.max(
    Math.min(outside.height / 2, Math.max(room(clear.bottom), 4 * unit + 8)),
    Math.min(outside.height, tip),
  );
  const fits = 3 * unit < width && 4 * unit < height;
  const at = view(1);
  const outline: Box = { u0: 0, v0: -height, u1: width, v1: 0 };
  const below = dimensionSide({
    side: 'below',
    outline,
    sizes: fullSizes(panel, 0, [clear.left, ...(fits ? [3 * unit] : [])]),
  });
  const left = dimensionSide({
    side: 'left',
    outline,
    sizes: fullSizes(panel, 0, [-clear.bottom, ...(fits ? [-4 * unit] : [])]),
  });
  const around = union([{ ...outline, u1: width + 3 }, below.bounds, left.bounds]);
  const words = templateWords(around, {
    heading: `${named}: corner template`,
    text: [
      'Lower left corner from the front; for the lower right one lay the panel on its face. The upper corners are the same turned round, without the courses.',
      fits
        ? `Square: ${show(3 * unit)} along the rail and ${show(4 * unit)} up the stile are ${show(5 * unit)} apart.`
        : '',
      `Dashed: in the groove, and the screw nearer the front at its full length; dash and dot: the screw nearer the back.${coursesWithin(panel, height).length > 0 ? ' Lines across: lower edges of the courses.' : ''} Sizes in ${unitName(panel)}.`,
    ]
      .filter(Boolean)
      .join(' '),
  });
  return {
    name: 'corner-template',
    title: `Corner template: ${named}`,
    scale: 1,
    scaleText: standardScale(1, display.unit).text,
    marks: [
      ...frame(panel, at, { width, height, parts }),
      ...inside(panel, at, { width, height, parts }),
      ...below.marks,
      ...left.marks,
      ...words.marks,
    ],
    bounds: words.bounds,
    alt: `Full-size lower left corner of ${named} from the front: rail, stile, groove, first stave and first courses.`,
    chains: [...below.chains, ...left.chains],
  };
}

/** What is shown: real mm from the panel's lower left corner. */
interface Shown {
  readonly width: number;
  readonly height: number;
  readonly parts: readonly Part[];
}

/** Rail and stile, where they meet, and the bottom of the groove. */
function frame(panel: Panel, at: View, { width, height, parts }: Shown): Mark[] {
  const { clear, groove, rail, staves } = panel;
  const rails = partOf(parts, panel, 'rail')?.letter;
  const stiles = partOf(parts, panel, 'stile')?.letter;
  const railTop = at(0, clear.bottom)[1];
  // The stave's own end is drawn before the groove's bottom, hardly a millimetre over it.
  const grooveFrom = Math.min(width, clear.left + staves.width);
  const screws = screwsOf(panel, 'rail to stile');
  return [
    ...(screws
      ? screwsSide(
          screws,
          cornerScrews(panel)
            .toSorted((a, b) => b.z - a.z)
            .map(({ along }) => ({ from: at(along, 0), way: [0, -1], scale: 1 })),
        )
      : []),
    stroke('edge', polyline([at(width, 0), at(0, 0), at(0, clear.bottom), at(width, clear.bottom)]), rails),
    stroke('edge', polyline([at(0, clear.bottom), at(0, height)]), stiles),
    stroke('edge', polyline([at(clear.left, clear.bottom), at(clear.left, height)]), stiles),
    stroke('hidden', line(at(grooveFrom, clear.bottom - groove.depth), at(width, clear.bottom - groove.depth)), rails),
    breakLine(at(width, clear.bottom), 0),
    breakAcross(at(0, height), at(grooveFrom, height)[0]),
    ...nameIn('rail, front face', [clear.left, width], railTop + Math.min(rail.height - 1.5, groove.depth + 5)),
  ];
}

/** Lower edges of the courses above the rail that the template reaches, y in mm. */
function coursesWithin({ courses, clear }: Panel, height: number): readonly number[] {
  return courses.bottoms.filter((y) => y > clear.bottom + 1e-6 && y < height);
}

/** The first stave, standing in the groove, and the lower edges of the courses. */
function inside(panel: Panel, at: View, { width, height, parts }: Shown): Mark[] {
  const { clear, courses, staves } = panel;
  const stave = partOf(parts, panel, 'stave')?.letter;
  const slat = partOf(parts, panel, 'slat')?.letter;
  const right = clear.left + staves.width;
  const shown = coursesWithin(panel, height);
  return [
    ...(right < width
      ? [
          stroke('tick', line(at(right, clear.bottom), at(right, height)), stave),
          stroke(
            'hidden',
            polyline([at(right, clear.bottom), at(right, staves.bottom), at(clear.left, staves.bottom)]),
            stave,
          ),
        ]
      : []),
    ...shown.map((y) => stroke('tick', line(at(clear.left, y), at(width, y)), slat)),
    ...nameIn(
      staveName([clear.left, right]),
      [clear.left, right],
      at(0, clear.bottom + courses.height / 2)[1] + TEXT / 2,
    ),
  ];
}
