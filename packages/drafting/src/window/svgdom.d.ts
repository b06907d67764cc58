declare module 'svgdom' {
  /** A window with an empty SVG document. */
  export function createSVGWindow(): Window & typeof globalThis;
}
