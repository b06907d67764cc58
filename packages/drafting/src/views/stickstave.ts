import { drainHoles, formatLength, type Panel, sideAt } from '@wattlewright/model';
import { TEXT, TEXT_HEADING, TEXT_LARGE } from '../layout/style.ts';
import { originCircle } from '../layout/terminator.ts';
import { fitText, textBox, textWidth } from '../lettering.ts';
import type { Drawing, Mark, Point } from '../mark.ts';
import { stroke, write } from '../mark.ts';
import { line, rectangle } from '../path.ts';
import { standardScale } from '../scale.ts';
import { partOf } from './partof.ts';
import { paragraph, pointer, STICK_TICK, STICK_WIDTH, type StickOptions } from './stick.ts';
import { type Letters, staveTexts, textInk, VALUES_FROM } from './stickvalues.ts';
import { unitName } from './template.ts';

/** Heights on the stick, mm from its top edge: running dimensions, the first course, its words, the two lines of the title. */
const WEAVE = { from: 31.5, to: 40.5 };
const BAR = { from: 34, to: 38 };
const WORDS = 44.5;
const TITLE = 50;
const KIND = 55;
/** How often the names come again at the least, mm, and how wide they may be. */
const NAMES_EVERY = 220;
const NAMES_WIDE = 52;
/** Lines of the instructions under the stick, mm: so wide at the most that they stand on the first page, and at the least. */
const INSTRUCTIONS = { most: 155, least: 100 };
/** Room after the instructions in which no text stands, mm: a joint of pages finds its place there. */
const JOINT_ROOM = 5;

/**
 * The stave stick, full size: laid along a rail's grooved edge it marks every stave's left and right face, its centre and
 * its number, the stiles' inner faces and the rail's ends. All distances run from the rail's left end and are rounded once
 * each. The top edge serves the bottom rail, the bottom edge the top rail, both seen from the front, so that one stick
 * marks both. The first course is drawn as it passes each stave. One drawing however long; `tile` cuts it.
 */
export function staveStick(panel: Panel, { parts = [], named = panel.name }: StickOptions = {}): Drawing {
  const letters: Letters = {
    rail: partOf(parts, panel, 'rail')?.letter,
    stile: partOf(parts, panel, 'stile')?.letter,
    stave: partOf(parts, panel, 'stave')?.letter,
    slat: partOf(parts, panel, 'slat')?.letter,
  };
  const { length } = panel.rail;
  const written = staveTexts(panel, letters);
  const stick: Mark[] = [
    ...bands(panel, letters),
    ...firstCourse(panel, letters),
    stroke('tick', rectangle({ u0: 0, v0: 0, u1: length, v1: STICK_WIDTH }), letters.rail),
    ...ticks(panel, letters),
    ...textInk(written),
    originCircle([0, VALUES_FROM + 6]),
    ...staveNumbers(panel, letters),
    ...stileNames(panel, letters),
    ...drainMarks(panel, letters),
    ...titles(panel, named),
  ];
  const width = instructionsWidth(stick);
  const below = instructions(panel, { named, said: written.said, width });
  return {
    name: 'stave-stick',
    title: `Stave stick: ${named}`,
    scale: 1,
    scaleText: standardScale(1, panel.display.unit).text,
    marks: [...stick, ...below.marks],
    bounds: { u0: -1, v0: 0, u1: Math.max(length, width), v1: STICK_WIDTH + 4 + below.height },
    alt: `Full-size stick along the rails of ${named}: the faces of ${panel.staves.count} staves, each with its distance from the rail's left end.`,
  };
}

/** The wood between the two faces of each stave, shaded at both edges of the stick. */
function bands({ staves }: Panel, { stave }: Letters): Mark[] {
  return staves.lefts.flatMap((left) =>
    [0, STICK_WIDTH - STICK_TICK].map((v0) =>
      stroke('wood-shade', rectangle({ u0: left, v0, u1: left + staves.width, v1: v0 + STICK_TICK }), stave),
    ),
  );
}

/** Ticks at both edges: faces of staves (and so of stiles), and the shorter, lighter centres. */
function ticks({ staves, clear }: Panel, { stave, stile }: Letters): Mark[] {
  const edge = (u: number, long: number, role: 'tick' | 'centre', of: string | undefined): Mark[] => [
    stroke(role, line([u, 0], [u, long]), of),
    stroke(role, line([u, STICK_WIDTH], [u, STICK_WIDTH - long]), of),
  ];
  const faces = staves.lefts.flatMap((left) => [left, left + staves.width]);
  const stiles = [clear.left, clear.left + clear.width];
  const isStile = (u: number): boolean => stiles.some((face) => Math.abs(face - u) < 1e-6);
  return [
    ...stiles.flatMap((u) => edge(u, STICK_TICK, 'tick', stile)),
    ...faces.filter((u) => !isStile(u)).flatMap((u) => edge(u, STICK_TICK, 'tick', stave)),
    ...staves.centres.flatMap((u) => edge(u, STICK_TICK / 2 - 1, 'centre', stave)),
  ];
}

/** The first course as seen from above the stick: a bar over the staves that it passes in front of, under the others. */
function firstCourse(panel: Panel, { stave, slat }: Letters): Mark[] {
  const { staves, clear } = panel;
  const end = clear.left + clear.width;
  const words = staves.pitch >= textWidth('behind', TEXT) + 2;
  const bar = rectangle({ u0: clear.left, v0: BAR.from, u1: end, v1: BAR.to });
  return [
    stroke('dimension', bar, slat),
    ...staves.lefts.flatMap((left, j): Mark[] => {
      const front = sideAt(panel, 0, j) > 0;
      const [u0, u1] = [left, left + staves.width];
      const box = rectangle({ u0, v0: WEAVE.from, u1, v1: WEAVE.to });
      const wood = { ...stroke('dimension', box, stave), shade: 1 };
      const over = { ...stroke('dimension', rectangle({ u0, v0: BAR.from, u1, v1: BAR.to }), slat), shade: 0.25 };
      const at: Point = [(u0 + u1) / 2, WORDS];
      const word = write('note', front ? 'front' : 'behind', at, { height: TEXT, anchor: 'middle' });
      return [wood, ...(front ? [over] : []), ...(words ? [word] : [])];
    }),
  ];
}

/** Numbers of the staves, in their bands at both edges where the band is wide enough. */
function staveNumbers({ staves }: Panel, { stave }: Letters): Mark[] {
  const widest = `${staves.count}`;
  const height = [TEXT_HEADING, TEXT_LARGE, TEXT].find((h) => textWidth(widest, h, 'semibold') + 1 <= staves.width);
  if (height === undefined) return [];
  const more = { height, anchor: 'middle' as const, ...(stave === undefined ? {} : { of: stave }) };
  return staves.centres.flatMap((u, j) =>
    [STICK_TICK - 0.9, STICK_WIDTH - 6.1 + height - TEXT_HEADING + 0.2].map((v) =>
      write('title', `${j + 1}`, [u, v], more),
    ),
  );
}

/** Heights on the stick, mm from its top edge: the distance of a drain hole, and the words of that edge where there are any. */
const DRAIN = { distance: 12.8, words: 9 } as const;

/** The drain holes of the bottom rail, which the top edge serves: triangles at the edge, no ticks, with their distances. */
function drainMarks(panel: Panel, { rail }: Letters): Mark[] {
  const { places } = drainHoles(panel);
  return places.flatMap((u): Mark[] => {
    const text = `drain ${formatLength(u, panel.display, { fractions: 'stacked' })}`;
    // Beside the distances of the staves' faces.
    const fits = textWidth(text, TEXT) + 14 <= panel.staves.bay;
    return [
      pointer([u, 0], 'up'),
      ...(fits
        ? [
            write('label', text, [u, DRAIN.distance], {
              height: TEXT,
              anchor: 'middle',
              ...(rail === undefined ? {} : { of: rail }),
            }),
          ]
        : []),
    ];
  });
}

/** The room that each stile takes at the ends of the rail. */
function stileNames({ rail, stile: { width } }: Panel, { stile }: Letters): Mark[] {
  if (textWidth('stile', TEXT) + 2 > width) return [];
  const more = { height: TEXT, anchor: 'middle' as const, ...(stile === undefined ? {} : { of: stile }) };
  return [width / 2, rail.length - width / 2].flatMap((u) =>
    [8, STICK_WIDTH - 5.5].map((v) => write('note', 'stile', [u, v], more)),
  );
}

/**
 * The stick's name, and what each edge is laid on, again and again along it. They stand over each other in the middles of
 * bays and are narrow, so that pages can be joined between them.
 */
function names(panel: Panel, named: string, free: readonly [from: number, to: number]): Mark[] {
  const { staves, asBuilt } = panel;
  const top = drainHoles(panel).places.length > 0 ? DRAIN.words : 5;
  const size = textWidth(named, TEXT_LARGE) <= NAMES_WIDE ? TEXT_LARGE : TEXT;
  const title = fitText(named, NAMES_WIDE, size);
  const kind = `stave stick, front face${asBuilt ? ', as measured' : ''}`;
  const half = Math.max(textWidth(title, size), textWidth(kind, TEXT)) / 2;
  const middles = staves.lefts.slice(0, -1).map((left) => left + staves.width + staves.bay / 2);
  const roomy = middles.filter((u) => u - half >= free[0] && u + half <= free[1]);
  const spaced: number[] = [];
  for (const u of roomy) if (u - (spaced.at(-1) ?? -Infinity) >= NAMES_EVERY) spaced.push(u);
  const at = (text: string, u: number, v: number, height: number): Mark =>
    write('note', text, [u, v], { height, anchor: 'middle' });
  return spaced.flatMap((u) => [
    at(title, u, TITLE, size),
    at(kind, u, KIND, TEXT),
    ...(['bottom', 'top'] as const).flatMap((which) => {
      const v = which === 'bottom' ? top : STICK_WIDTH - 3;
      const text = [`this edge: ${which} rail, grooved edge`, `${which} rail`][longFits(staves.bay) ? 0 : 1] as string;
      return textWidth(text, TEXT) + 3 <= staves.bay ? [at(text, u, v, TEXT)] : [];
    }),
  ]);
}

/** Whether the longer words for both edges fit between two staves. */
function longFits(bay: number): boolean {
  return textWidth('this edge: bottom rail, grooved edge', TEXT) + 3 <= bay;
}

/** Which end is which, and the names between. */
function titles(panel: Panel, named: string): Mark[] {
  const { length } = panel.rail;
  const half = TITLE - TEXT_LARGE / 2;
  const wide = textWidth('RIGHT END', TEXT_LARGE, 'semibold') + 8;
  const right = length > 2 * wide + 10;
  return [
    pointer([2, half], 'left'),
    write('title', 'LEFT END', [7, TITLE], { height: TEXT_LARGE }),
    ...(right
      ? [
          pointer([length - 2, half], 'right'),
          write('title', 'RIGHT END', [length - 7, TITLE], { height: TEXT_LARGE, anchor: 'end' }),
        ]
      : []),
    ...names(panel, named, [wide + 3, length - (right ? wide + 3 : 3)]),
  ];
}

/** The widest lines of the instructions that end clear of the stick's own texts, so that no joint need cut either. */
function instructionsWidth(stick: readonly Mark[]): number {
  const texts = stick.flatMap((mark) => (mark.kind === 'text' ? [textBox(mark)] : []));
  for (let width = INSTRUCTIONS.most; width >= INSTRUCTIONS.least; width--) {
    if (!texts.some(({ u0, u1 }) => u0 < width + JOINT_ROOM && u1 > width)) return width;
  }
  return INSTRUCTIONS.most;
}

/** Whose stick it is and how to use it, on the paper under it. */
function instructions(
  panel: Panel,
  { named, said, width }: { readonly named: string; readonly said: string; readonly width: number },
): { readonly marks: Mark[]; readonly height: number } {
  const text = [
    `Check both bars first. Cut along the outline, where it has several pages after joining them: the stick is as long as the rail.`,
    `Clamp both rails side by side, grooved edges up and left ends flush, front faces outward, and square every mark across both; or lay the top edge of the stick along the bottom rail and the bottom edge along the top rail.`,
    `Shaded: a stave; short tick: its centre. Distances from the left end of the rail, ${unitName(panel)}, each rounded by itself: never step off the pitch.`,
    `The bar is the first course: black over a stave where it passes in front, under it where it passes behind.`,
    drainHoles(panel).places.length > 0
      ? 'Black triangles at the top edge: middles of the drain holes in the bottom rail, half-way between the staves.'
      : '',
    said,
  ]
    .filter(Boolean)
    .join(' ');
  const top = STICK_WIDTH + 4;
  const heading = paragraph(`${named}: stave stick`, [0, top], width, { height: TEXT_LARGE, role: 'title' });
  const words = paragraph(text, [0, top + heading.height + 1], width);
  return { marks: [...heading.marks, ...words.marks], height: heading.height + 1 + words.height };
}
