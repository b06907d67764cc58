import { gateDetails, type Panel, type Part, partsOf } from '@wattlewright/model';
import { lines } from '../layout/lines.ts';
import { LINE_STEP, TEXT, TEXT_CLEAR } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { polyline, rectangle } from '../path.ts';
import type { Extent, Scale } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { type View, view } from '../view.ts';
import { dimensioned, type StatedOptions, stated } from './detaildrawing.ts';
import { fittings, grounds } from './fittings.ts';
import { type Face, faceBox, frameFront, woodFace } from './front.ts';
import { partOf } from './partof.ts';

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

/** A gap narrower than this on paper, mm, is drawn this wide: true to scale it would melt into the lines beside it. */
const GAP_SHOWN = 2.5;

/** How much of posts and ground is drawn beyond the opening, paper mm: room for their names. */
const AROUND = 5;

/** Grey of what stands round the opening. */
const TONE = 0.88;

/** Real size of the view, mm. */
function openingExtent({ outside }: Panel, { left, right, bottom, top = 0 }: Gaps): Extent {
  return { width: outside.width + left + right, height: outside.height + bottom + top };
}

/** What stands at the left, the right and under the opening; nothing where the job does not say. */
function neighbours(panel: Panel): { readonly left: string; readonly right: string; readonly under: string } {
  const { details } = panel;
  const ground = grounds(panel).find(({ y }) => y <= 0)?.name;
  if (details.use === 'gate') {
    const posts = ['hinge post', 'latch post'] as const;
    const [left, right] = details.hinge === 'left' ? posts : ([posts[1], posts[0]] as const);
    return { left, right, under: ground ?? '' };
  }
  const between = details.use === 'guard' || (details.use === 'screen' && details.mounting === 'posts');
  const side = between ? 'post' : 'wall';
  return { left: side, right: side, under: ground ?? (between ? '' : 'sill') };
}

/** A cap rail over the frame. */
function capInk(panel: Panel, parts: readonly Part[], at: View): Mark[] {
  return fittings(panel).flatMap(({ role, from, to }) =>
    role === 'cap rail'
      ? woodFace(
          at,
          { x0: from.x, y0: from.y, x1: to.x, y1: to.y },
          { of: partOf(parts, panel, role)?.letter, edge: 'edge-light' },
        )
      : [],
  );
}

/** Says that gaps are not to scale. */
const WIDER = 'gaps drawn wider than they are';

/** Words in the empty frame, in lines; nothing where it has not room for them. */
function inFrame(text: string, { clear }: Panel, at: View): Mark[] {
  const { u0, v0, u1, v1 } = faceBox(at, {
    x0: clear.left,
    y0: clear.bottom,
    x1: clear.left + clear.width,
    y1: clear.bottom + clear.height,
  });
  const wrapped = lines(text, u1 - u0 - 2 * TEXT_CLEAR);
  const step = LINE_STEP * TEXT;
  const wide = Math.max(...wrapped.map((one) => textWidth(one, TEXT)));
  if (wide > u1 - u0 - 2 * TEXT_CLEAR || wrapped.length * step > v1 - v0 - 2 * TEXT_CLEAR) return [];
  const first = (v0 + v1 - (wrapped.length - 1) * step + CAPITAL) / 2;
  return wrapped.map((one, i) =>
    write('note', one, [(u0 + u1) / 2, first + i * step], { height: TEXT, anchor: 'middle' }),
  );
}

/**
 * The panel's frame in its opening from the front: the opening's own size, the panel's, and the gap at each side, drawn
 * wider where it could not be seen.
 */
function inOpening(panel: Panel, gaps: Gaps, { scale, parts }: { scale: Scale; parts: readonly Part[] }): Drawing {
  const { outside, display, name } = panel;
  const { ratio } = scale;
  const at = view(ratio);
  const { width, height } = outside;
  const shown = (gap: number): number => (gap > 0 ? Math.max(gap, GAP_SHOWN / ratio) : 0);
  const [x0, x1] = [-shown(gaps.left), width + shown(gaps.right)];
  const [y0, y1] = [-shown(gaps.bottom), height + shown(gaps.top ?? 0)];
  const past = AROUND / ratio;
  const over = gaps.top ? past : 0;
  // Posts reach to the top of a cap rail, as in the key elevation.
  const cap = fittings(panel).flatMap(({ role, to }) => (role === 'cap rail' ? [to.y] : []));
  const top = Math.max(y1 + over, ...cap);
  const tone = (face: Face): Mark => ({ ...stroke('paper', rectangle(faceBox(at, face))), shade: TONE });
  const edge =
    gaps.top === undefined || gaps.top === 0
      ? polyline([at(x0, top), at(x0, y0), at(x1, y0), at(x1, top)])
      : rectangle(faceBox(at, { x0, y0, x1, y1 }));
  const sides = neighbours(panel);
  const words = (text: string, x: number): Mark =>
    write('note', text, [at(x, 0)[0] + CAPITAL / 2, at(0, (y0 + y1) / 2)[1]], {
      height: TEXT,
      angle: 90,
      anchor: 'middle',
    });
  const ink: Mark[] = [
    tone({ x0: x0 - past, y0: y0 - past, x1: x0, y1: top }),
    tone({ x0: x1, y0: y0 - past, x1: x1 + past, y1: top }),
    tone({ x0, y0: y0 - past, x1, y1: y0 }),
    ...(over > 0 ? [tone({ x0, y0: y1, x1, y1: y1 + over })] : []),
    ...frameFront({ panel, parts, at, ratio }),
    stroke('edge-light', edge),
    ...capInk(panel, parts, at),
    words(sides.left, x0 - past / 2),
    words(sides.right, x1 + past / 2),
    ...(sides.under === ''
      ? []
      : [
          write('note', sides.under, [at(width / 2, 0)[0], at(0, y0 - past / 2)[1] + CAPITAL / 2], {
            height: TEXT,
            anchor: 'middle',
          }),
        ]),
  ];
  const isWider = [gaps.left, gaps.right, gaps.bottom, gaps.top ?? 0].some((gap) => gap > 0 && shown(gap) > gap + 1e-9);
  const told = isWider ? inFrame(WIDER, panel, at) : [];
  // Sizes are the real ones; their ends stand where the gaps are drawn.
  const place = (value: number, [low, high]: readonly [number, number], end: number): number =>
    value < 0 ? low : value > end ? high : value;
  const across: StatedOptions = { display, along: (x) => at(place(x, [x0, x1], width), 0)[0] };
  const up: StatedOptions = { display, along: (y) => at(0, place(y, [y0, y1], height))[1] };
  const whole = { mark: display.mark };
  const [left, right] = [-gaps.left, width + gaps.right];
  const [low, high] = [-gaps.bottom, height + (gaps.top ?? 0)];
  return dimensioned({
    name: 'opening',
    title: `${name} in its opening${isWider && told.length === 0 ? ', gaps drawn wider' : ''}`,
    alt: `The frame of ${name} from the front in the opening that it goes into, with the gap at each side.`,
    scale,
    ink: [...ink, ...told],
    sizes: {
      above: [
        ...stated(left, 0, across),
        ...stated(0, width, { ...across, ...whole }),
        ...stated(width, right, across),
        ...stated(left, right, { ...across, ...whole, total: true }),
      ],
      left: [
        ...stated(low, 0, up),
        ...stated(0, height, { ...up, ...whole }),
        ...stated(height, high, up),
        ...(high - low > height + 1e-6 ? stated(low, high, { ...up, ...whole, total: true }) : []),
      ],
    },
  });
}

/** Height of lettering over its baseline, mm. */
const CAPITAL = TEXT * 0.7;

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
