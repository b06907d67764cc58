import { type Panel, type PanelPlace, type ScrewRow, screwSchedule } from '@wattlewright/model';
import { union } from '../ink.ts';
import type { NoteTarget } from '../layout/notes.ts';
import type { Size } from '../layout/rows.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line } from '../path.ts';
import type { Extent } from '../scale.ts';
import { type View, viewBox } from '../view.ts';
import { boxOfInk, dimensioned, facingFree, type StatedOptions, saidFine, stated } from './detaildrawing.ts';
import type { DetailLetter } from './detailkey.ts';
import { screwName } from './detailscrew.ts';
import { breakLine } from './grain.ts';
import { coverBox, uprightInk, uprightView } from './verticalsectionink.ts';
import type { SectionOptions } from './weavesection.ts';

/** Wood shown under the room over the stack at the least, mm: a course and more, as far as the rail's height makes sense of it. */
function downFrom({ clear, courses, rail, cover }: Panel): number {
  const top = clear.bottom + clear.height;
  const shown = Math.max(courses.allowance + Math.min(courses.pitch * 1.2, rail.height), cover.height * 1.3);
  return top - Math.min(shown, clear.height * 0.9);
}

/** Real size of the detail, mm. */
export function staveHeadExtent(panel: Panel): Extent {
  return { width: panel.rail.depth, height: panel.outside.height - downFrom(panel) };
}

/**
 * The top rail from front to back through a stave: the groove with the stave's head, the room for swelling
 * that is left over the stack, and the cover strips before it with their pins.
 */
export function staveHead(panel: Panel, key: DetailLetter, { scale, parts = [] }: SectionOptions): Drawing {
  const { outside, name } = panel;
  const s = scale.ratio;
  const low = downFrom(panel);
  const at = uprightView(s, low);
  const half = outside.depth / 2;
  // In the wood over the groove.
  const solid = panel.rail.height - panel.groove.depth;
  const cut = uprightInk({ panel, parts, at, span: [low, outside.height + 1] });
  return dimensioned({
    name: `detail-${key.letter.toLowerCase()}`,
    title: `Detail ${key.letter}  ${key.title}`,
    alt: `The top of ${name} cut from front to back: the stave's head in the groove of the top rail and the room over the stack.`,
    scale,
    ink: [...cut, ...pinInk(panel, at), breakLine(at(half, low), at(-half, low))],
    words: facingFree(
      [at(half, 0)[0], at(-half, 0)[0]],
      // Beside the solid rail, else beside the groove and the weave.
      [
        ...[0.5, 0.4, 0.6, 0.25, 0.75, 0.1, 0.9, 0].map((share) => outside.height - solid * share),
        ...[0.75, 0.5, 0.25, 0].map((share) => low + (outside.height - solid - low) * share),
      ].map((y) => at(0, y)[1]),
    ),
    // Slats that are bent hard can stand out before the frame.
    outline: union([viewBox(at, [half, low], [-half, outside.height]), boxOfInk(cut)]),
    sizes: { left: heights(panel, at), above: depths(panel, s) },
    notes: notes(panel, at),
    noteWidth: 42,
  });
}

function heights(panel: Panel, at: View): Size[] {
  const { clear, groove, outside, courses, display, rail } = panel;
  const up: StatedOptions = { display, along: (y) => at(0, y)[1] };
  const top = outside.height - rail.height;
  const strip = coverBox(panel);
  const fine = Math.min(courses.step, display.mark);
  return [
    ...stated(clear.bottom + courses.stack, top, { ...up, mark: fine }),
    ...stated(top, top + groove.depth, up),
    ...(strip ? stated(strip.y[0], strip.y[1], { ...up, level: 1 }) : []),
    ...stated(top, outside.height, { ...up, level: 1 }),
  ];
}

/** From the rail's front face to the strip, the strip, and the rail. */
function depths(panel: Panel, scale: number): Size[] {
  const { rail, display, staves } = panel;
  const through: StatedOptions = { display, along: (z) => -z * scale };
  const strip = coverBox(panel);
  return [
    ...(strip ? stated(strip.z[0], strip.z[1], through) : stated(-staves.depth / 2, staves.depth / 2, through)),
    ...(strip ? stated(Math.min(strip.z[1], rail.depth / 2), Math.max(strip.z[1], rail.depth / 2), through) : []),
    ...stated(-rail.depth / 2, rail.depth / 2, { ...through, total: true }),
  ];
}

/** The pins of the cover strips, and where one stands in front and one at the back. */
function pinsOf(panel: Panel): { readonly row: ScrewRow; readonly places: readonly PanelPlace[] } | undefined {
  const row = screwSchedule(panel).find(({ joint }) => joint === 'cover strip to top rail');
  if (!row) return undefined;
  const sides = [...new Set(row.places.map(({ z }) => Math.sign(z)))];
  return { row, places: sides.flatMap((side) => row.places.find(({ z }) => Math.sign(z) === side) ?? []) };
}

function pinInk(panel: Panel, at: View): Mark[] {
  const pins = pinsOf(panel);
  if (!pins) return [];
  const { length } = pins.row.fastener;
  return pins.places.map(({ y, z }) => stroke('edge', line(at(z, y), at(z, y + length))));
}

function notes(panel: Panel, at: View): NoteTarget[] {
  const { clear, courses, groove, staves, display } = panel;
  const top = clear.bottom + clear.height;
  const stack = clear.bottom + courses.stack;
  const strip = coverBox(panel);
  const pins = pinsOf(panel);
  const back = -(staves.depth + courses.thickness) / 2;
  const lift = top + groove.depth - (staves.bottom + staves.length);
  return [
    ...(lift > display.mark / 8
      ? [
          {
            at: at(0, top + groove.depth - lift / 2),
            text: `${saidFine(lift, display)} of room over the stave`,
          },
        ]
      : []),
    ...(courses.allowance > display.mark / 2
      ? [{ at: at(back, (stack + top) / 2), text: 'Room for swelling: leave it empty' }]
      : []),
    ...(strip
      ? [
          {
            at: at(-(strip.z[0] + strip.z[1]) / 2, strip.y[0] + (strip.y[1] - strip.y[0]) / 3),
            text: `Cover strips, ${saidFine(2 * strip.z[0], display)} apart, ${coverPlace(panel)}${pins ? `, glued and pinned plumb up into the rail, ${screwName(pins.row)}` : ', glued without pins'}; never to a slat`,
          },
        ]
      : []),
    { at: at(back, Math.min(stack - courses.height / 2, top - courses.allowance - 2)), text: 'Top course' },
  ];
}

/** How the cover strips stand to the faces of the rail. */
function coverPlace({ cover, rail, display }: Panel): string {
  const inset = rail.depth / 2 - cover.face - cover.thickness;
  return inset > FLUSH ? `${saidFine(inset, display)} in from the rail’s faces` : 'flush with the rail’s faces';
}

/** Faces closer than this are one to the eye, mm. */
const FLUSH = 0.05;
