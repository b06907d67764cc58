import type { Panel } from '@wattlewright/model';
import { union } from '../ink.ts';
import { dimensionSide } from '../layout/running.ts';
import type { Box, Drawing } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import { standardScale } from '../scale.ts';
import { partOf } from './partof.ts';
import type { StickOptions } from './stick.ts';
import { centreCross, cornerScrews, fullSizes, gaugedSizes, nameIn, unitName } from './template.ts';
import { templateWords } from './templatewords.ts';

/** Length of the flap that folds down on the stile's front face, mm. */
const FLAP = 25;

/**
 * Full-size template of a stile's end: the end grain with the centres of the screws, and a flap that folds down on the
 * front face. As drawn it is the foot of the left stile seen from below, the front at the lower edge; it is the top of the right
 * stile too, and on the back face it serves the other two ends.
 */
export function stileEndTemplate(panel: Panel, { parts = [], named = panel.name }: StickOptions = {}): Drawing {
  const { stile, display } = panel;
  const of = partOf(parts, panel, 'stile')?.letter;
  const end: Box = { u0: 0, v0: 0, u1: stile.width, v1: stile.depth };
  const outline: Box = { ...end, v1: stile.depth + FLAP };
  const screws = cornerScrews(panel).map(({ along, z }) => ({ u: stile.width - along, v: stile.depth / 2 + z }));
  const above = dimensionSide({
    side: 'above',
    outline,
    sizes: fullSizes(panel, stile.width, [...screws.map(({ u }) => u), 0]),
  });
  const left = dimensionSide({
    side: 'left',
    outline,
    sizes: [
      ...gaugedSizes(
        panel,
        [0, stile.depth],
        screws.map(({ v }) => v),
      ),
      ...fullSizes(panel, stile.depth, [0]),
    ],
  });
  const around = union([outline, above.bounds, left.bounds]);
  const words = templateWords(around, {
    heading: `${named}: stile end template`,
    text: `Foot of the left stile seen from below, outer edge at the right. Cut out, fold the flap down on the front face; it serves the top of the right stile too. For the other two ends lay the flap on the back face. Sizes in ${unitName(panel)}.`,
  });
  return {
    name: 'stile-end-template',
    title: `Stile end template: ${named}`,
    scale: 1,
    scaleText: standardScale(1, display.unit).text,
    marks: [
      stroke('edge', rectangle(end), of),
      stroke('edge-light', line([0, end.v1], [0, outline.v1]), of),
      stroke('edge-light', line([end.u1, end.v1], [end.u1, outline.v1]), of),
      stroke('edge-light', line([0, outline.v1], [end.u1, outline.v1]), of),
      ...screws.flatMap(({ u, v }) => centreCross([u, v], of)),
      ...nameIn('front face', [0, stile.width], stile.depth + FLAP / 2),
      ...above.marks,
      ...left.marks,
      ...words.marks,
    ],
    bounds: words.bounds,
    alt: `Full-size template of a stile's end for ${named} with the centres of ${screws.length} screws.`,
    chains: [...above.chains, ...left.chains],
  };
}
