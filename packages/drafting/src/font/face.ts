import { create, type Font, type GlyphRun } from 'fontkit';
import type { Weight } from '../pen.ts';
import { regular } from './regular.ts';
import { semibold } from './semibold.ts';

const opened = new Map<Weight, { readonly font: Font; readonly bytes: Uint8Array }>();

function open(weight: Weight): { readonly font: Font; readonly bytes: Uint8Array } {
  const known = opened.get(weight);
  if (known) return known;
  const bytes = Uint8Array.from(atob(weight === 'regular' ? regular : semibold), (c) => c.charCodeAt(0));
  // The types ask for Node's Buffer; fontkit itself takes any byte array, which is what a browser has.
  const font = create(bytes as Parameters<typeof create>[0]);
  if (!('layout' in font)) throw new Error('invalid lettering: the font file holds a collection');
  const face = { font, bytes };
  opened.set(weight, face);
  return face;
}

/** The font of a weight, opened once. */
export function face(weight: Weight): Font {
  return open(weight).font;
}

/** The font file of a weight: TrueType, not packed, since a packed table is unpacked again for every glyph that is read. */
export function fontBytes(weight: Weight): Uint8Array {
  return open(weight).bytes;
}

/** Shaping used everywhere, so that measure and both outputs agree: kerning, marks and true fractions, no ligatures. */
export const features: Readonly<Record<string, boolean>> = { liga: false, clig: false, calt: false, rlig: false };

/** The text shaped: glyphs and their places, in font units. The text must be `printable` already. */
export function shape(text: string, weight: Weight): GlyphRun {
  return face(weight).layout(text, { ...features });
}

/**
 * Font size that gives capitals of a height, in the height's unit. Measured on the letter H, since the font's own figure
 * for its capitals (660) is above the H it draws (656).
 */
export function sizeOf(height: number, weight: Weight): number {
  const font = face(weight);
  return (height * font.unitsPerEm) / font.glyphForCodePoint(0x48).bbox.maxY;
}
