import { createSVGWindow } from 'svgdom';

/** A fresh window whose document is an empty SVG document, for the SVG writer: here one without a browser. */
export function emptyWindow(): { readonly Node: unknown; readonly document: object } {
  return createSVGWindow();
}
