import type { Panel, Part } from '@wattlewright/model';
import { boxOf, pointsOf } from '../ink.ts';
import type { Picture } from '../layout/table.ts';
import type { Path, Point } from '../mark.ts';
import { polygon } from '../path.ts';
import { cutFace } from './grain.ts';

/** The scale of a list's pictures. */
export interface PictureScale {
  readonly ratio: number;
  readonly text: string;
}

/** Largest a picture may be, paper mm. */
const ROOM = { width: 34, height: 34 };

/** One scale for all sections of a list: full size, half, a fifth or a tenth, the largest at which all have room. */
export function pictureScale(parts: readonly Part[]): PictureScale {
  const widest = parts.reduce((most, { width }) => Math.max(most, width), 0);
  const thickest = parts.reduce((most, { thickness }) => Math.max(most, thickness), 0);
  const scales = [
    { ratio: 1, text: '1:1' },
    { ratio: 1 / 2, text: '1:2' },
    { ratio: 1 / 5, text: '1:5' },
    { ratio: 1 / 10, text: '1:10' },
  ];
  const fits = ({ ratio }: PictureScale): boolean => widest * ratio <= ROOM.width && thickest * ratio <= ROOM.height;
  return scales.find(fits) ?? (scales.at(-1) as PictureScale);
}

/** The part's section with end grain; a rail with its groove, open side down as in a top rail. */
export function partPicture(part: Part, ratio: number, panels: readonly Panel[]): Picture {
  const panel = panels.find(({ name }) => part.where.some((place) => place.panel === name));
  const outline =
    part.role === 'rail' && panel ? grooved(panel, ratio) : block(part.width * ratio, part.thickness * ratio);
  return { marks: cutFace(outline, { grain: 'end', of: part.letter }), bounds: boxOf(pointsOf(outline)) };
}

function block(width: number, height: number): Path {
  return polygon([
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]);
}

/** A rail's section: height upright, depth across, the groove in the middle of its lower edge. */
function grooved({ rail, groove }: Panel, ratio: number): Path {
  const [width, height] = [rail.depth * ratio, rail.height * ratio];
  const [left, right] = [(width - groove.width * ratio) / 2, (width + groove.width * ratio) / 2];
  const top = height - groove.depth * ratio;
  const points: Point[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [right, height],
    [right, top],
    [left, top],
    [left, height],
    [0, height],
  ];
  return polygon(points);
}
