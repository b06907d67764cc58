import { drillText, formatLength, type Panel, type Part } from '@wattlewright/model';
import { union } from '../ink.ts';
import type { Size } from '../layout/rows.ts';
import { dimensionSide } from '../layout/running.ts';
import { TEXT } from '../layout/style.ts';
import { fractions, textBox } from '../lettering.ts';
import type { Box, Drawing, Mark, TextMark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { circle, line, rectangle } from '../path.ts';
import { standardScale } from '../scale.ts';
import { screwsOf } from './detailscrew.ts';
import { partOf } from './partof.ts';
import type { StickOptions } from './stick.ts';
import {
  breakLine,
  centreCross,
  cornerScrews,
  fullSize,
  fullSizes,
  gaugedSizes,
  nameIn,
  plugRadius,
  staveName,
  unitName,
} from './template.ts';
import { templateWords } from './templatewords.ts';

/** Rail shown beyond the first stave, mm. */
const BEYOND = 18;

/** The three faces of the rail that the template is folded round, top to bottom on paper. */
interface Faces {
  readonly length: number;
  /** Grooved edge, front face, outer edge: where each begins, and where the last ends. */
  readonly v: readonly [grooved: number, front: number, outer: number, end: number];
}

/**
 * Full-size template of a rail's end, to fold round it: grooved edge, front face and outer edge side by side, with the
 * groove, the stile's place, the first stave and the centres of the screws. One template serves all four ends: on the
 * front face of the bottom rail's left and the top rail's right end, on the back face of the other two.
 */
export function railEndTemplate(panel: Panel, { parts = [], named = panel.name }: StickOptions = {}): Drawing {
  const { rail, clear, staves, display } = panel;
  const of = partOf(parts, panel, 'rail')?.letter;
  const length = Math.min(rail.length / 2, clear.left + staves.width + BEYOND);
  const faces: Faces = { length, v: [0, rail.depth, rail.depth + rail.height, 2 * rail.depth + rail.height] };
  const outline: Box = { u0: 0, v0: 0, u1: length, v1: faces.v[3] };
  const sizes = dimensions(panel, faces, outline);
  const names = faceNames(panel, faces);
  const around = union([outline, sizes.bounds, ...names.map(textBox)]);
  const words = templateWords(around, { heading: `${named}: rail end template`, text: howTo(panel) });
  return {
    name: 'rail-end-template',
    title: `Rail end template: ${named}`,
    scale: 1,
    scaleText: standardScale(1, display.unit).text,
    marks: [
      stroke('edge', line([0, 0], [0, faces.v[3]]), of),
      ...faces.v.map((v) => stroke('edge', line([0, v], [length, v]), of)),
      breakLine([length, 0], faces.v[3]),
      ...groovedEdge(panel, faces, parts),
      ...frontFace(panel, faces, parts),
      ...outerEdge(panel, faces, of),
      ...names,
      ...sizes.marks,
      ...words.marks,
    ],
    bounds: words.bounds,
    alt: `Full-size template of a rail's end for ${named}: groove, stile, first stave and screw centres on three faces.`,
    chains: sizes.chains,
  };
}

/** The edge with the groove in it: front arris below. */
function groovedEdge(panel: Panel, { length, v }: Faces, parts: readonly Part[]): Mark[] {
  const { groove, rail, clear, staves } = panel;
  const rails = partOf(parts, panel, 'rail')?.letter;
  const [back, front] = [v[0] + (rail.depth - groove.width) / 2, v[0] + (rail.depth + groove.width) / 2];
  const middle = v[0] + rail.depth / 2;
  const stave = partOf(parts, panel, 'stave')?.letter;
  const own = {
    u0: clear.left,
    u1: clear.left + staves.width,
    v0: middle - staves.depth / 2,
    v1: middle + staves.depth / 2,
  };
  return [
    stroke('wood-shade', rectangle(own), stave),
    ...[back, front].map((at) => stroke('tick', line([clear.left, at], [length, at]), rails)),
    stroke('tick', line([clear.left, v[0]], [clear.left, v[1]]), partOf(parts, panel, 'stile')?.letter),
    stroke('tick', line([own.u1, back], [own.u1, front]), stave),
    ...nameIn('stile', [0, clear.left], back - 1.2),
    ...nameIn('groove', [own.u1, length], back - 1.2),
  ];
}

/** The front face: the stile's inner face, the bottom of the groove, the first stave in it. */
function frontFace(panel: Panel, { length, v }: Faces, parts: readonly Part[]): Mark[] {
  const { groove, clear, staves } = panel;
  const bottom = v[1] + groove.depth;
  const stave = partOf(parts, panel, 'stave')?.letter;
  const right = clear.left + staves.width;
  return [
    stroke('hidden', line([clear.left, bottom], [length, bottom]), partOf(parts, panel, 'rail')?.letter),
    stroke(
      'tick',
      line([clear.left, v[1]], [clear.left, Math.min(v[2], bottom + 6)]),
      partOf(parts, panel, 'stile')?.letter,
    ),
    stroke('tick', line([right, v[1]], [right, bottom]), stave),
    ...cornerScrews(panel).map(({ along }) => stroke('centre', line([along, v[1]], [along, v[2]]))),
    ...nameIn(staveName([clear.left, right]), [clear.left, right], bottom - 1.2),
  ];
}

/** What each face is, beside the break. */
function faceNames({ rail }: Panel, { length, v }: Faces): TextMark[] {
  const at = (top: number, tall: number, text: string): TextMark =>
    write('note', text, [length + 5, top + tall / 2 + TEXT / 2], { height: TEXT });
  return [
    at(v[0], rail.depth, 'grooved edge'),
    at(v[1], rail.height, 'front face'),
    at(v[2], rail.depth, 'outer edge'),
  ];
}

/** The outer edge: where the screws go in, with the plugs over their heads. */
function outerEdge(panel: Panel, { v }: Faces, of: string | undefined): Mark[] {
  const plug = plugRadius(panel);
  return cornerScrews(panel).flatMap(({ along, z }) => {
    const at = [along, v[2] + panel.rail.depth / 2 - z] as const;
    return [...centreCross(at, of), ...(plug === undefined ? [] : [stroke('hidden', circle(at, plug), of)])];
  });
}

function dimensions(panel: Panel, { v }: Faces, outline: Box): ReturnType<typeof dimensionSide> {
  const { groove, rail, clear } = panel;
  const screws = cornerScrews(panel);
  const front = v[0] + (rail.depth + groove.width) / 2;
  const along = fullSizes(panel, 0, [clear.left, ...screws.map((screw) => screw.along)]);
  const down: Size[] = [
    fullSize(panel, v[1], front),
    fullSize(panel, front, front - groove.width),
    ...fullSizes(panel, v[1], [v[1] + groove.depth, v[2]]),
    ...gaugedSizes(
      panel,
      [v[2], v[3]],
      screws.map(({ z }) => v[2] + rail.depth / 2 - z),
    ),
  ];
  const above = dimensionSide({ side: 'above', outline, sizes: along });
  const left = dimensionSide({ side: 'left', outline, sizes: down });
  return {
    marks: [...above.marks, ...left.marks],
    bounds: union([above.bounds, left.bounds]),
    depth: left.depth,
    chains: [...above.chains, ...left.chains],
  };
}

function howTo(panel: Panel): string {
  const plug = screwsOf(panel, 'rail to stile')?.plug;
  const { unit } = panel.display;
  return [
    'Cut out and fold along the two long lines: grooved edge, front face, outer edge; the end of the paper flush with the end of the rail.',
    'Bottom rail left and top rail right: on the front face. The other two ends: on the back face.',
    'Stop the groove at the stile; if you run it out through the end, plug it there.',
    'Crosses on the outer edge: screws into the stile; prick through.',
    plug
      ? `Dashed rings: plugs over their heads, bored first: ${fractions(drillText(plug.drill, unit))}, ${formatLength(plug.depth, panel.display, { named: true, fractions: 'stacked' })} deep.`
      : '',
    `Sizes in ${unitName(panel)}.`,
  ]
    .filter(Boolean)
    .join(' ');
}
