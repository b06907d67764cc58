// Ink: how roles look.
export { fillOf, type Layer, layers, type Pen, pen, roles, thick, thin, type Weight } from './pen.ts';
