import type { Drawing, Layout } from '@wattlewright/drafting';
import { planCutsQuick } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { clientSheets } from '../../src/sheets/client.ts';
import { clientBlocks } from '../../src/sheets/clienttexts.ts';
import { coverSheet } from '../../src/sheets/cover.ts';
import { pageFor } from '../../src/sheets/page.ts';
import { closingSheets, makingSheets } from '../../src/sheets/words.ts';
import { settledOf } from './settled.ts';

const wordsOf = ({ drawings }: Pick<Layout, 'drawings'>): string =>
  drawings
    .flatMap(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])))
    .join(' ')
    .replaceAll('\u00a0', ' ');
const scaleOf = (layout: Layout): number | undefined => layout.drawings.find(({ scale }: Drawing) => scale > 0)?.scale;

const bay = { use: 'guard', guard: { cap: { height: 31, depth: 120 }, drop: 1200 } };
const opening = (width: number) => ({ opening: { width, height: 965 } });
const deck = settledOf({
  job: 'Deck',
  unit: 'mm',
  panels: [
    { name: 'Bay 1', ...bay, ...opening(1600) },
    { name: 'Bay 2', ...bay, ...opening(1600) },
    { name: 'Bay 3', ...bay, ...opening(900) },
  ],
  runs: [{ name: 'Front', panels: ['Bay 1', 'Bay 2', 'Bay 3'], post: 90, gap: 6 }],
  paper: { sheets: 'A3' },
});

describe('clientSheets', () => {
  const sheets = clientSheets(deck, pageFor(deck.job));

  test('panels alike share a sheet, and those of one run lie one way at one scale', () => {
    const firsts = sheets.filter((layout) => scaleOf(layout) !== undefined);
    expect(firsts.map(({ subject }) => subject)).toEqual(['Bay 1 and Bay 2: for the client', 'Bay 3: for the client']);
    expect(new Set(firsts.map(scaleOf)).size).toBe(1);
    expect(new Set(firsts.map(({ frame }) => frame.width)).size).toBe(1);
    expect(wordsOf(firsts[0] as Layout)).toContain('Bay 1 and Bay 2, front elevation');
  });

  test.each(['A4', 'Letter'])('notes stand on the sheet of the view on %s too', (sheets) => {
    const size = { width: 300, height: 300 };
    const gate = settledOf({ job: 'G', unit: 'mm', panels: [{ name: 'L', use: 'gate', size }], paper: { sheets } });
    expect(clientSheets(gate, pageFor(gate.job))).toHaveLength(1);
  });

  test('the size over all counts the cap, the frame is told beside it', () => {
    const text = clientBlocks(deck.panels[0] as (typeof deck.panels)[number], deck)
      .map((block) => block.text)
      .join(' ');
    expect(text).toMatch(/Over all 15\d\d mm wide, \d+ mm high, 120 mm deep, with the cap rail\. The frame alone is/);
  });

  test('a guard with a cap speaks of the cap alone, one without of the handrail', () => {
    const textOf = (settled: typeof deck) =>
      clientBlocks(settled.panels[0] as (typeof deck.panels)[number], settled)
        .map((block) => block.text)
        .join(' ');
    const bare = settledOf({ job: 'G', unit: 'mm', panels: [{ name: 'B', use: 'guard', ...opening(1600) }] });
    expect(textOf(deck)).toMatch(/fills in below its own cap rail/);
    expect(textOf(deck)).not.toMatch(/fills in under a handrail/);
    expect(textOf(bare)).toMatch(/fills in under a handrail/);
    expect(textOf(deck)).toMatch(/the slats together grow \S+ mm taller/);
  });

  test('with a stop nothing can be approved, and the points are told', () => {
    const gate = settledOf({
      job: 'Gate',
      unit: 'mm',
      panels: [{ name: 'Leaf', use: 'gate', size: { width: 800, height: 900 }, gate: { latch: 1500, hinge: 'left' } }],
    });
    const [sheet] = clientSheets(gate, pageFor(gate.job));
    const words = wordsOf(sheet as Layout);
    expect(words).toMatch(/Not for approval yet: /);
    expect(words).not.toContain('Approved as drawn');
    expect(words).toContain('The latch is not on the leaf.');
    expect(words).toContain('hinges at the left as drawn');
    const [first] = makingSheets(gate, pageFor(gate.job));
    expect(wordsOf(first as Layout)).toMatch(/STOP Do not cut yet\./);
    const [cover] = coverSheet(gate, pageFor(gate.job), () => ({ lines: ['Making order: sheet 7'], findings: 9 }));
    expect(wordsOf(cover as Layout)).toMatch(/STOP , Leaf: The latch is not on the leaf. Sheet 9\./);
  });

  test.each([
    [{ vary: 'slats' }, /into the room left at the top/],
    [{ vary: 'gaps', from: 4, to: 12 }, /open gaps between them narrow and widen/],
  ])('a panel fitted by %j says where its movement goes', (fit, says) => {
    const settled = settledOf({
      job: 'Screen',
      unit: 'mm',
      panels: [{ name: 'S', size: { width: 900, height: 1200 }, fit, slat: { height: 40 } }],
    });
    const [panel] = settled.panels as unknown as [(typeof settled.panels)[number]];
    expect(
      clientBlocks(panel, settled)
        .map((block) => block.text)
        .join(' '),
    ).toMatch(says);
  });
});

describe('clientBlocks of a screen', () => {
  const said = (screen: object): string => {
    const settled = settledOf({
      job: 'Window',
      unit: 'mm',
      panels: [{ name: 'W', size: { width: 900, height: 900 }, screen }],
    });
    return clientBlocks(settled.panels[0] as (typeof settled.panels)[number], settled)
      .map((block) => ('text' in block ? String(block.text) : ''))
      .join(' ');
  };

  test('over a window the client is asked how it opens and whether it is an escape', () => {
    expect(said({ glass: 120 })).toMatch(
      /It does not open.*which way the window opens, and whether anyone may need it/,
    );
    expect(said({})).not.toMatch(/escape/);
  });

  test('over an escape window no fixing is promised', () => {
    expect(said({ bedroom: true, mounting: 'posts' })).toMatch(/how it is to open is still to be settled/);
    expect(said({ bedroom: true, mounting: 'posts' })).not.toMatch(/Fixed with brackets/);
  });
});

describe('closingSheets', () => {
  test('findings, assumptions and cautions follow one another, without paths of the job file', () => {
    const sheets = closingSheets(deck, pageFor(deck.job));
    const words = sheets.map(wordsOf).join(' ');
    const at = ['Findings', 'Assumed, since the job does not say', 'What this packet does not know'].map((title) =>
      words.indexOf(title),
    );
    expect(at).toEqual([...at].sort((a, b) => a - b));
    expect(Math.min(...at)).toBeGreaterThanOrEqual(0);
    expect(words).not.toMatch(/panels\[|\b(?:guard|stave|top)\.[a-z]/);
    expect(new Set(sheets.map(({ frame }) => frame.width)).size).toBe(1);
  });
});

describe('coverSheet', () => {
  test('a run is shown as it stands', () => {
    const [cover] = coverSheet(deck, pageFor(deck.job), () => ({ lines: [], findings: 9 }));
    expect(cover?.drawings.map(({ name }) => name)).toContain('run');
  });

  test('what the wood costs stays where some parts cannot be cut, which are told; all stops stand under one heading', () => {
    const first = deck.parts[0] as (typeof deck.parts)[number];
    const stop = (where: string): (typeof deck.findings)[number] => ({
      ...(deck.findings[0] as (typeof deck.findings)[number]),
      level: 'stop',
      where,
      text: 'It cannot be cut.',
    });
    const plan = planCutsQuick({ ...deck.job, parts: [first] });
    const partly = {
      ...deck,
      plan: { ...plan, status: 'impossible' as const },
      findings: ['A', 'B', 'C', 'D', 'E'].map(stop),
    };
    const [cover] = coverSheet(partly, pageFor(deck.job), () => ({ lines: [], findings: 9 }));
    const words = wordsOf(cover as Layout);
    const others = deck.parts.filter(({ letter }) => letter !== first.letter).map(({ letter }) => letter);
    expect(words).toMatch(/Wood(?: and cost)? Cut from \d+ board/);
    expect(words.replace(/\s+/g, ' ')).toContain(`Without ${others.join(', ')}: see the stops.`);
    for (const where of ['A', 'B', 'C', 'D', 'E']) expect(words).toContain(`, ${where}: It cannot be cut.`);
    expect(words).not.toMatch(/more: sheet/);
  });

  test('a sign that cannot be printed is left out of the name of the client, and that is said', () => {
    const job = { ...deck.job, client: 'Ash \u{1FAB5} Co' };
    const [cover] = coverSheet({ ...deck, job }, pageFor(job), () => ({ lines: [], findings: 9 }));
    const words = wordsOf(cover as Layout);
    expect(words).toContain('For Ash Co. (A sign in this name that cannot be printed is left out.)');
    expect(words).not.toContain('[U+');
  });
});

describe('makingSheets', () => {
  test('figures that differ stand in one row, panel by panel in the order of the job', () => {
    const words = makingSheets(deck, pageFor(deck.job)).map(wordsOf).join(' ');
    expect(words).toMatch(/diagonals Bay 1, Bay 2: alike, \d+ mm if built as planned Bay 3: alike, \d+ mm/);
  });
});

describe('charts', () => {
  test.each(['indoors', 'outdoors'])('sight and sun %s', (where) => {
    const settled = settledOf({
      job: 'S',
      unit: 'mm',
      site: { where },
      panels: [{ name: 'S', size: { width: 900, height: 1200 } }],
    });
    const names = closingSheets(settled, pageFor(settled.job)).flatMap(({ drawings }) =>
      drawings.map(({ name }) => name),
    );
    expect(names).toContain('spacing-chart');
    expect(names.includes('sight-chart')).toBe(where === 'outdoors');
  });
});
