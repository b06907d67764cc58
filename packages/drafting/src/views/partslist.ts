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
  /** Set where all boards are clear, so that parts that may have knots are cut from clear wood too. */
  readonly fromClear?: boolean;
  /** To show the groove of rails. */
  readonly panels?: readonly Panel[];
  /** Mass of all pieces without the spares, kg. */
  readonly mass?: number;
}

/**
 * The parts list as a drawn schedule: letter, picture of the section with its groove, name, pieces with spares apart,
 * finished sizes, wood and grade, and where each goes; under it the wood that all pieces but the spares hold. Where slats are
 * measured: pieces wanted, in hand, to be cut now, and the spares that there are then.
 */
export function partsTable(parts: readonly Part[], options: PartsTableOptions): Drawing[] {
  const { display, width, height, panels = [], mass } = options;
  const scale = pictureScale(parts);
  // Where slats are measured some pieces are there, and the list has to say how many of each are cut now.
  const inHand = parts.some((part) => part.inHand !== undefined);
  const countsOf = ({ count, spare, inHand: there = 0 }: Pick<Part, 'count' | 'spare' | 'inHand'>): string[] =>
    inHand
      ? [count, there, count + spare - there, spare].map(String)
      : [spare > 0 ? `${count} + ${spare}` : `${count}`];
  const rows = parts.map((part): Cell[] => [
    { marks: balloon([0, 0], part.letter, part.letter), bounds: LETTER },
    partPicture(part, scale.ratio, panels),
    nameOf(part, display),
    ...countsOf(part),
    lengthText(part.length, display),
    sideText(part.width, display),
    sideText(part.thickness, display),
    `${part.wood}, ${gradeText(part, options.fromClear ?? false)}`,
    part.where.map(({ panel, count }) => `${panel}: ${count}`).join(', '),
  ]);
  const pieces = parts.reduce((sum, { count }) => sum + count, 0);
  const spare = parts.reduce((sum, part) => sum + part.spare, 0);
  const there = parts.reduce((sum, part) => sum + (part.inHand ?? 0), 0);
  const volume = parts.reduce((sum, part) => sum + part.count * volumeOf(part), 0);
  const foot = [
    '',
    '',
    'all pieces',
    ...countsOf({ count: pieces, spare, inHand: there }),
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
      ...(inHand ? ['Pieces', 'In hand', 'To cut now', 'Spare left'] : [spare > 0 ? 'Pieces + spare' : 'Pieces']).map(
        (title) => ({ title, align: 'right' as const }),
      ),
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

/** What a part's wood may have; a knotty board is not asked for. */
function gradeText({ grade }: Part, fromClear: boolean): string {
  if (grade === 'clear') return 'clear';
  return `knots allowed${fromClear ? ' (cut from clear)' : ''}`;
}

/** Box of the balloon round a part's letter, paper mm. */
const LETTER: Box = { u0: -BALLOON_RADIUS, v0: -BALLOON_RADIUS, u1: BALLOON_RADIUS, v1: BALLOON_RADIUS };

/** What is done to a part beyond what its sizes say. */
function nameOf({ name, role, length, over, inHand = 0 }: Part, display: Marks): string {
  if (inHand > 0 && TRIMMED.includes(role)) return `${name}\ntrim those in hand`;
  return over > 0
    ? `${name}\nleave ${sideText(over, display, { named: true })} over:\ncut ${lengthText(length + over, display)} first`
    : name;
}

/** Parts that were cut long before the stack was measured. */
const TRIMMED: readonly Part['role'][] = ['stile', 'stave', 'stop'];

function volumeOf({ length, width, thickness }: Part): number {
  return length * width * thickness;
}
