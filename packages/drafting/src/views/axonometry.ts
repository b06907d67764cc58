import type { PanelPlace } from '@wattlewright/model';
import type { Point } from '../mark.ts';

/** Where the viewer of a picture stands, degrees: to the right of straight ahead, and above it. */
const YAW = 28;
const PITCH = 15;

const radians = Math.PI / 180;
const [sinYaw, cosYaw] = [Math.sin(YAW * radians), Math.cos(YAW * radians)];
const [sinPitch, cosPitch] = [Math.sin(PITCH * radians), Math.cos(PITCH * radians)];

/** From the panel to the viewer of a picture, a unit vector of the panel frame. */
export const TO_VIEWER: PanelPlace = { x: sinYaw * cosPitch, y: sinPitch, z: cosYaw * cosPitch };

/** From the panel to the light of a picture: upper left and in front. */
export const TO_LIGHT: PanelPlace = { x: -0.42, y: 0.7, z: 0.58 };

/** Maps a point of the panel frame, mm, to paper in parallel projection. */
export type Axonometry = (x: number, y: number, z: number) => Point;

/**
 * The parallel projection of a picture, `ratio` paper mm for a real mm; uprights stay upright. Nobody measures a picture,
 * so that points are rounded to a hundredth of a millimetre of paper: its file is a quarter smaller.
 */
export function axonometry(ratio: number): Axonometry {
  const round = (length: number): number => Math.round(length * 100) / 100;
  return (x, y, z) => [
    round(ratio * (x * cosYaw - z * sinYaw)),
    round(ratio * ((x * sinYaw + z * cosYaw) * sinPitch - y * cosPitch)),
  ];
}

/** Grey of a flat face of wood by its direction, a unit vector: 1 would be paper. Bright above, dark to the right. */
export function faceShade({ x, y, z }: PanelPlace): number {
  const light = x * TO_LIGHT.x + y * TO_LIGHT.y + z * TO_LIGHT.z;
  return light > 0 ? 0.68 + 0.43 * light : 0.68 + 0.2 * light;
}
