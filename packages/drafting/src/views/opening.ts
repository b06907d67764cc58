import { gateDetails, type Panel, type Part, partsOf } from '@wattlewright/model';
import type { Drawing, Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { polyline, rectangle } from '../path.ts';
import type { Extent, Scale } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { view } from '../view.ts';
import { dimensioned, type StatedOptions, stated } from './detaildrawing.ts';
import { faceBox, frameFront } from './front.ts';

/** What a panel stands in, panel frame, mm: from the panel's edges outwards; absent sides have nothing beside them. */
interface Gaps {
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top?: number;
}

/** The gaps round a panel, from its opening or a gate's posts; undefined for one that stands in none. */
function gapsOf(panel: Panel): Gaps | undefined {
  if (panel.details.use === 'gate') {
    const { hinge, clear } = gateDetails(panel);
    const [left, right] = hinge === 'left' ? [clear.hinge, clear.latch] : [clear.latch, clear.hinge];
    return { left, right, bottom: clear.ground, ...(panel.opening && { top: panel.opening.gaps.top }) };
  }
  return panel.opening?.gaps;
}

/** Real size of the view, mm. */
function openingExtent({ outside }: Panel, { left, right, bottom, top = 0 }: Gaps): Extent {
  return { width: outside.width + left + right, height: outside.height + bottom + top };
}

/** The panel's frame in its opening from the front: the opening's own size, the panel's, and the gap at each side. */
function inOpening(panel: Panel, gaps: Gaps, { scale, parts }: { scale: Scale; parts: readonly Part[] }): Drawing {
  const { outside, display, details, name } = panel;
  const at = view(scale.ratio);
  const [x0, x1] = [-gaps.left, outside.width + gaps.right];
  const [y0, y1] = [-gaps.bottom, outside.height + (gaps.top ?? 0)];
  const frame: Mark[] = frameFront({ panel, parts, at, ratio: scale.ratio });
  const edge =
    gaps.top === undefined
      ? polyline([at(x0, y1), at(x0, y0), at(x1, y0), at(x1, y1)])
      : rectangle(faceBox(at, { x0, y0, x1, y1 }));
  const across: StatedOptions = { display, along: (x) => at(x, 0)[0] };
  const up: StatedOptions = { display, along: (y) => at(0, y)[1] };
  const whole = { mark: display.mark };
  const { height } = outside;
  return dimensioned({
    name: 'opening',
    title: `${name} in its opening`,
    alt: `The frame of ${name} from the front in the opening that it goes into, with the gap at each side.`,
    scale,
    ink: [...frame, stroke('neighbour', edge)],
    outline: faceBox(at, { x0, y0, x1, y1 }),
    sizes: {
      above: [
        ...stated(x0, 0, across),
        ...stated(0, outside.width, { ...across, ...whole }),
        ...stated(outside.width, x1, across),
        ...stated(x0, x1, { ...across, ...whole, total: true }),
      ],
      left: [
        ...stated(y0, 0, up),
        ...stated(0, height, { ...up, ...whole }),
        ...stated(height, y1, up),
        ...(y1 - y0 > height + 1e-6 ? stated(y0, y1, { ...up, ...whole, total: true }) : []),
      ],
    },
    notes:
      details.use === 'gate'
        ? [
            {
              at: at(x1, height * 0.6),
              text: details.hinge === 'right' ? 'Hinge post' : 'Latch post, the hinge post at the left',
              end: 'arrow',
            },
            { at: at(outside.width * 0.8, y0), text: 'Ground', end: 'arrow' },
          ]
        : [],
    noteWidth: 34,
  });
}

/** The view of a panel in its opening, for `arrange`; nothing for a panel that stands in none. */
export function openingMakers(panel: Panel, parts: readonly Part[] = partsOf(panel)): ViewMaker[] {
  const gaps = gapsOf(panel);
  if (!gaps) return [];
  return [
    {
      name: 'opening',
      real: openingExtent(panel, gaps),
      make: (scale) => inOpening(panel, gaps, { scale, parts }),
    },
  ];
}
