import type { Marks, Panel, Part } from '@wattlewright/model';
import { massText, volumeText } from '@wattlewright/model';
import { BALLOON_RADIUS, balloon } from '../layout/balloon.ts';
import { type Cell, tablePages } from '../layout/table.ts';
import type { Box, Drawing } from '../mark.ts';
import { lengthText, sideText } from './cutsize.ts';
import { partPicture, pictureScale } from './partslistpicture.ts';

/** What `partsTable` needs to know. */
export interface PartsTableOptions {
  readonly display: Marks;
  /** Room on a page, paper mm. */
  readonly width: number;
  readonly height: number;
  /** To show the groove of rails. */
  readonly panels?: readonly Panel[];
  /** Mass of all pieces without the spares, kg. */
  readonly mass?: number;
}

/**
 * The parts list as a drawn schedule: letter, picture of the section with its groove, name, pieces with spares apart,
 * finished sizes, wood and grade, and where each goes; under it the wood that all pieces but the spares hold.
 */
export function partsTable(parts: readonly Part[], options: PartsTableOptions): Drawing[] {
  const { display, width, height, panels = [], mass } = options;
  const scale = pictureScale(parts);
  const rows = parts.map((part): Cell[] => [
    { marks: balloon([0, 0], part.letter, part.letter), bounds: LETTER },
    partPicture(part, scale.ratio, panels),
    part.over > 0
      ? `${part.name}\nleave ${sideText(part.over, display, { named: true })} over:\ncut ${lengthText(part.length + part.over, display)} first`
      : part.name,
    part.spare > 0 ? `${part.count} + ${part.spare}` : `${part.count}`,
    lengthText(part.length, display),
    sideText(part.width, display),
    sideText(part.thickness, display),
    `${part.wood}, ${part.grade}`,
    part.where.map(({ panel, count }) => `${panel}: ${count}`).join(', '),
  ]);
  const pieces = parts.reduce((sum, { count }) => sum + count, 0);
  const spare = parts.reduce((sum, part) => sum + part.spare, 0);
  const volume = parts.reduce((sum, part) => sum + part.count * volumeOf(part), 0);
  const foot = [
    '',
    '',
    'all pieces',
    spare > 0 ? `${pieces} + ${spare}` : `${pieces}`,
    '',
    '',
    '',
    volumeText(volume, display),
    [
      mass === undefined ? '' : massText(mass, display),
      spare > 0 ? (mass === undefined ? 'without spares' : 'both without spares') : '',
    ]
      .filter((text) => text !== '')
      .join(', '),
  ];
  return tablePages({
    name: 'parts',
    title: 'Parts list',
    alt: `${parts.length} kinds of part, ${pieces} pieces and ${spare} spare: ${parts.map(({ letter, name }) => `${letter} ${name}`).join(', ')}.`,
    columns: [
      { title: 'Part' },
      { title: `Section ${scale.text}` },
      { title: 'Name' },
      { title: spare > 0 ? 'Pieces + spare' : 'Pieces', align: 'right' },
      { title: 'Length', align: 'right' },
      { title: 'Width', align: 'right' },
      { title: 'Thick', align: 'right' },
      { title: 'Wood, grade' },
      { title: 'Goes to' },
    ],
    rows,
    foot,
    width,
    height,
  });
}

/** Box of the balloon round a part's letter, paper mm. */
const LETTER: Box = { u0: -BALLOON_RADIUS, v0: -BALLOON_RADIUS, u1: BALLOON_RADIUS, v1: BALLOON_RADIUS };

function volumeOf({ length, width, thickness }: Part): number {
  return length * width * thickness;
}
