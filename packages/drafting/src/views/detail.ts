import type { Panel, Part } from '@wattlewright/model';
import type { Drawing } from '../mark.ts';
import type { Extent } from '../scale.ts';
import type { ViewMaker } from '../sheet/fit.ts';
import { braceMakers } from './detailbrace.ts';
import { corner, cornerExtent } from './detailcorner.ts';
import { dimensioned, planFacing, type StatedOptions, stated } from './detaildrawing.ts';
import { type FixingInk, type FixingPlace, postFixing } from './detailfixing.ts';
import { hingeFixing } from './detailhinge.ts';
import { type DetailLetter, type DetailSubject, detailLetters } from './detailkey.ts';
import { edgeStretch, slatEnd, slatEndExtent } from './detailslatend.ts';
import { stand, standExtent } from './detailstand.ts';
import { staveFoot, staveFootExtent } from './detailstavefoot.ts';
import { staveHead, staveHeadExtent } from './detailstavehead.ts';
import { wallFixing } from './detailwall.ts';
import { breakLine } from './grain.ts';
import type { SectionOptions } from './weavesection.ts';
import { planView, weaveInk } from './weavesectionink.ts';

/** What details take. */
export interface DetailOptions extends SectionOptions {
  /** Other panels that the detail stands for; it says what differs in them. */
  readonly alike?: readonly Panel[];
}

/**
 * A detail of the panel at large scale; its letter is that of its circle on other views (`detailLetters`). A RangeError
 * for a subject that the panel has no detail of.
 */
export function detail(panel: Panel, subject: DetailSubject, options: DetailOptions): Drawing {
  const key = keyOf(panel, subject);
  switch (subject) {
    case 'stave foot':
      return staveFoot(panel, key, options);
    case 'stave head':
      return staveHead(panel, key, options);
    case 'corner':
      return corner(panel, key, options);
    case 'slat end':
      return slatEnd(panel, key, options);
    case 'fixing':
      return fixing(panel, key, options);
  }
}

/** Real size of a detail, mm. */
export function detailExtent(panel: Panel, subject: DetailSubject): Extent {
  switch (subject) {
    case 'stave foot':
      return staveFootExtent(panel);
    case 'stave head':
      return staveHeadExtent(panel);
    case 'corner':
      return cornerExtent(panel);
    case 'slat end':
      return slatEndExtent(panel);
    case 'fixing':
      return panel.details.use === 'divider' ? standExtent(panel, panel.details) : slatEndExtent(panel);
  }
}

/** Every detail of a panel and of those alike for `arrange`, at full size or smaller; last the end of a cable brace, which has no letter. */
export function detailMakers(panel: Panel, parts: readonly Part[] = [], alike: readonly Panel[] = []): ViewMaker[] {
  const lettered = detailLetters(panel).map(
    ({ letter, subject }): ViewMaker => ({
      name: `detail-${letter.toLowerCase()}`,
      real: detailExtent(panel, subject),
      make: (scale) => detail(panel, subject, { scale, parts, alike }),
    }),
  );
  return [...lettered, ...braceMakers(panel, parts)];
}

function keyOf(panel: Panel, subject: DetailSubject): DetailLetter {
  const key = detailLetters(panel).find((one) => one.subject === subject);
  if (!key) throw new RangeError(`invalid detail: ${subject} (expected one of detailLetters)`);
  return key;
}

/** How the panel is held: by a post, on a wall or a hinge, looking down; or on its feet or track. */
function fixing(panel: Panel, key: DetailLetter, options: SectionOptions): Drawing {
  const { details } = panel;
  if (details.use === 'divider') return stand(panel, key, { ...options, divider: details });
  const { scale, parts = [] } = options;
  const side = details.use === 'gate' && details.hinge === 'left' ? 'left' : 'right';
  const plan = planView(scale.ratio);
  const place: FixingPlace = { panel, parts, scale: scale.ratio, plan, side };
  const held = heldBy(place);
  const stretch = edgeStretch(panel, side);
  const half = panel.outside.depth / 2;
  const inner = side === 'right' ? stretch[0] : stretch[1];
  const { display, stile, outside } = panel;
  const through: StatedOptions = { display, along: (z) => plan(0, z)[1] };
  const across: StatedOptions = { display, along: (x) => plan(x, 0)[0] };
  const stileAt = side === 'right' ? outside.width - stile.width : 0;
  const woven = [
    ...weaveInk({ panel, parts, scale: scale.ratio, stretch }),
    breakLine(plan(inner, -half), plan(inner, half)),
  ];
  return dimensioned({
    name: `detail-${key.letter.toLowerCase()}`,
    title: `Detail ${key.letter}  ${key.title}`,
    alt: `How ${panel.name} is held at its ${side} side, looking down.`,
    scale,
    ink: [
      ...(held.under ?? []),
      ...woven,
      ...held.marks,
      ...planFacing(plan(inner, 0), side === 'right' ? -1 : 1, woven),
    ],
    sizes: {
      above: [...stated(stileAt, stileAt + stile.width, across), ...held.along],
      [side === 'right' ? 'left' : 'right']: [...stated(-stile.depth / 2, stile.depth / 2, through), ...held.through],
    },
    notes: [...held.notes],
    noteSide: side,
    noteWidth: 42,
  });
}

function heldBy(place: FixingPlace): FixingInk {
  const { details } = place.panel;
  if (details.use === 'gate') return hingeFixing(place, details);
  if (details.use === 'screen' && details.mounting !== 'posts') return wallFixing(place, details);
  return postFixing(place);
}
