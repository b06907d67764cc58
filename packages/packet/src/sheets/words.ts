import {
  type Block,
  type FigureRow,
  fractions,
  type Layout,
  prosePages,
  sightChart,
  spacingChart,
} from '@wattlewright/drafting';
import {
  assumedLines,
  cautions,
  type Finding,
  findingSentences,
  makingOrder,
  type Panel,
  type Settled,
  type StepFigure,
} from '@wattlewright/model';

import { NOTES_ON_COVER } from './cover.ts';
import { type Page, sheetsOf, textRoom } from './page.ts';

/** Numbered steps with this job's own numbers, each caution before its cut; what forbids the first cut before them all. */
export function makingSheets({ job, panels, parts, plan, findings }: Settled, page: Page): Layout[] {
  const stops = findings.filter(({ level }) => level === 'stop');
  const steps = makingOrder(job, { panels, parts, plan }).flatMap(
    ({ title, text, figures, cautions: before }): Block[] => [
      { kind: 'step', text: title },
      ...before.map((caution): Block => ({ kind: 'caution', text: caution })),
      ...text.map((more): Block => ({ kind: 'bullet', text: more })),
      ...(figures.length > 0 ? [{ kind: 'figures' as const, text: '', rows: figureRows(figures, panels) }] : []),
    ],
  );
  const pages = prosePages({
    name: 'making',
    title: 'Making order',
    alt: 'The steps of making the panels, in order.',
    blocks: [...beforeTheFirstCut(stops), ...steps].map(lettered),
    columns: page.columns,
    together: true,
    ...textRoom(page.text),
  });
  return sheetsOf(pages, page.text, page, 'Making order');
}

/** What forbids the first cut, each point for itself. */
function beforeTheFirstCut(stops: readonly Finding[]): Block[] {
  if (stops.length === 0) return [];
  const count = stops.length === 1 ? 'One point is' : `${stops.length} points are`;
  return [
    { kind: 'stop', text: `STOP Do not cut yet. ${count} to be settled first, as the findings say.`, keep: true },
    ...stops.map(
      ({ where, text }, i): Block => ({
        kind: 'bullet',
        text: `${where}: ${text}`,
        keep: i < stops.length - 1,
      }),
    ),
  ];
}

/** Most panels that share one row of figures: a row is not broken. Common practice, no source. */
const MOST_IN_ROW = 12;

/** A row for each figure, in their order: its value, or where panels differ a line for each value under their names, in the job's order. */
function figureRows(figures: readonly StepFigure[], panels: readonly Panel[]): FigureRow[] {
  const first = ({ where }: StepFigure): number =>
    panels.findIndex(({ name }) => where === name || where.startsWith(`${name}, `));
  return [...new Set(figures.map(({ what }) => what))].flatMap((what): FigureRow[] => {
    const own = figures.filter((figure) => figure.what === what).toSorted((a, b) => first(a) - first(b));
    const said = own.map(({ where, value }) => (where === '' ? value : `${where}: ${value}`));
    return Array.from({ length: Math.ceil(said.length / MOST_IN_ROW) }, (_, i) => [
      i === 0 ? what : `${what}, continued`,
      said.slice(i * MOST_IN_ROW, (i + 1) * MOST_IN_ROW).join('\n'),
    ]);
  });
}

/**
 * What was found, what was assumed and what the program does not know, one after the other as one text; with the charts of
 * sight and spacing where they find room.
 */
export function closingSheets({ job, findings, panels }: Settled, page: Page): Layout[] {
  const charts = [
    // Indoors nobody looks through from above, and no sun stands over it.
    ...onePer(job.site.where === 'indoors' ? [] : panels, openworkKey).map((panel) => sightChart(panel, CHART)),
    ...onePer(panels, bendKey).map((panel) => spacingChart(panel, CHART)),
  ];
  const none: Block = { kind: 'paragraph', text: 'Nothing was found that the maker must know beyond these sheets.' };
  const blocks: Block[] = [
    { kind: 'heading', text: 'Findings' },
    ...(findings.length > 0 ? findings.flatMap(findingBlocks) : [none]),
    ...noteBlocks(job.notes.slice(NOTES_ON_COVER)),
    ...assumedBlocks(job, panels),
    ...cautions(job).flatMap(({ title, lines }): Block[] => [
      { kind: 'heading', text: title },
      ...lines.map((text): Block => ({ kind: 'bullet', text })),
    ]),
  ];
  const pages = prosePages({
    name: 'closing',
    title: '',
    alt: 'What the design makes true, what was assumed, and the limits and usual cautions.',
    blocks: blocks.map(lettered),
    columns: page.columns,
    balanced: true,
    ...textRoom(page.text),
  });
  return sheetsOf([...pages, ...charts], page.text, page, 'Findings, assumptions and cautions');
}

/** Plot size of a chart, mm: two with their names stand over each other on the smallest sheet. */
const CHART = { width: 125, height: 36 } as const;

function findingBlocks(finding: Finding): Block[] {
  const { level, where, text } = finding;
  const head = `${level.toUpperCase()}, ${where}: ${text}`;
  return [
    { kind: level === 'stop' ? 'stop' : level === 'note' ? 'bullet' : 'caution', text: head },
    { kind: 'more', text: findingSentences(finding).join(' ') },
  ];
}

/** Notes of the job that the cover has no room for. */
function noteBlocks(notes: readonly string[]): Block[] {
  if (notes.length === 0) return [];
  return [
    { kind: 'heading', text: 'More notes of this job' },
    ...notes.map((text): Block => ({ kind: 'bullet', text: `“${text}”` })),
  ];
}

/** What was assumed, a line for each thing; nothing where the job says it all. */
function assumedBlocks(job: Settled['job'], panels: readonly Panel[]): Block[] {
  const lines = assumedLines(job, panels);
  if (lines.length === 0) return [];
  return [
    { kind: 'heading', text: 'Assumed, since the job does not say' },
    ...lines.map(({ what, taken, why, panels }): Block => {
      const of = panels.length > 0 ? ` (${panels.join(', ')})` : '';
      return { kind: 'bullet', text: `${what}${of}: ${taken}. ${why.charAt(0).toUpperCase()}${why.slice(1)}.` };
    }),
  ];
}

/** The first panel of those whose keys are alike: a chart of each would be the same picture twice. */
function onePer(panels: readonly Panel[], keyOf: (panel: Panel) => unknown): Panel[] {
  const seen = new Set<string>();
  return panels.filter((panel) => {
    const key = JSON.stringify(keyOf(panel));
    return !seen.has(key) && seen.add(key);
  });
}

/** What is seen through a weave depends on its slats and gaps, and next to nothing on how far its staves stand apart. */
function openworkKey({ weave, courses, staves }: Panel): unknown {
  return [weave.rows.length, courses.height, courses.gap, courses.thickness, staves.width, staves.depth];
}

function bendKey({ weave, courses, staves, spec }: Panel): unknown {
  return [weave.rows, courses.thickness, staves.count, Math.round(staves.pitch), spec.wood.slat.wood.name];
}

/** A block with its fractions set as fractions. */
function lettered({ text, rows, ...block }: Block): Block {
  return {
    ...block,
    text: fractions(text),
    ...(rows && { rows: rows.map(([what, value]) => [fractions(what), fractions(value)] as const) }),
  };
}
