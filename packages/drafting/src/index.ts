// Ink: marks, how roles look, and lettering measured in the embedded font.
export {
  fitText,
  fractions,
  type Printable,
  printable,
  textBox,
  textCorners,
  textStart,
  textWidth,
  wrapText,
} from './lettering.ts';
export { fillOf, type Layer, layers, type Pen, pen, roles, thick, thin, type Weight } from './pen.ts';
