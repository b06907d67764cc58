import { readFileSync } from 'node:fs';
import { type Panel, partsOf, readJob, solve } from '@wattlewright/model';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { arbitraryJob } from '../../../../test/support/jobs.ts';
import { overlaps } from '../../src/layout/clearance.ts';
import { addsUp } from '../../src/layout/rows.ts';
import { textBox } from '../../src/lettering.ts';
import type { Drawing, TextMark } from '../../src/mark.ts';
import { standardScale } from '../../src/scale.ts';
import { SHEET_PAPERS } from '../../src/sheet/arrange.ts';
import { fit } from '../../src/sheet/fit.ts';
import { frame } from '../../src/sheet/frame.ts';
import { toSvg } from '../../src/svg.ts';
import { view } from '../../src/view.ts';
import { detailLetters } from '../../src/views/detailkey.ts';
import { elevation, elevationMaker } from '../../src/views/elevation.ts';
import { partOf } from '../../src/views/partof.ts';
import { fills, screen, topmost } from './seen.ts';

const scale = { ratio: 0.1, text: '1:10' };
const examples = ['larch-deck-guard', 'studio-divider', 'tern-hollow-window', 'wash-house-gate'] as const;

function example(name: string): Panel[] {
  return solve(readJob(readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8')));
}

function texts({ marks }: Drawing): TextMark[] {
  return marks.filter((mark) => mark.kind === 'text');
}

/** Places spread evenly over a range without repeating a pitch: the multiples of the golden ratio, wrapped. */
function spread(count: number, from: number, to: number): number[] {
  return Array.from({ length: count }, (_, i) => from + (to - from) * ((i * 0.618034 + 0.5) % 1));
}

/** What the solved panel says is foremost at a place of the clear opening, by its own numbers alone. */
function foremost(panel: Panel, x: number, y: number): string | undefined {
  const { staves, courses, weave, rows, clear, cover } = panel;
  const parts = partsOf(panel);
  const stop = partOf(parts, panel, 'stop');
  const fromLeft = x - clear.left;
  if (stop && (fromLeft < stop.width || clear.width - fromLeft < stop.width)) return stop.letter;
  if (clear.bottom + clear.height - y < cover.height) return partOf(parts, panel, 'cover strip')?.letter;
  const stave = staves.centres.findIndex((centre) => Math.abs(x - centre) < staves.width / 2);
  const course = courses.bottoms.findIndex((bottom) => y > bottom && y < bottom + courses.height);
  const row = weave.rowOfCourse[course];
  const slat = row === undefined ? undefined : partOf(parts, panel, 'slat', rows[row]?.cutLength)?.letter;
  if (stave < 0) return slat;
  const before = row !== undefined && weave.rows[row]?.[stave] === 1;
  return before ? slat : partOf(parts, panel, 'stave')?.letter;
}

describe('elevation(panel).marks', () => {
  const weaves: [string, Panel][] = [
    ['plain', screen('plain')],
    ['twill in five staves', screen(['++--+', '-++--', '--++-', '+--++'])],
    ['two-over-two basket with open gaps', screen('two-over-two basket', { fit: { vary: 'gaps', from: 3, to: 12 } })],
    ['plain behind stops', screen('plain', { slat: { thickness: 4, height: 40, stop: 10 } })],
  ];
  test.each(weaves)('paint last at each of 3000 places what the %s weave has in front', (_, panel) => {
    const { clear } = panel;
    const on = topmost(fills(elevation(panel, { scale, detail: 'client' }).marks));
    const xs = spread(3000, clear.left, clear.left + clear.width);
    const wrong = xs.filter((x, i) => {
      const y = clear.bottom + clear.height * ((i * 0.7548777 + 0.3) % 1);
      return on([x * 0.1, -y * 0.1]) !== foremost(panel, x, y);
    });
    expect(wrong).toEqual([]);
  });

  test('draw the mirror image of the panel whose rows run the other way', () => {
    const rows = ['++--+-', '-+-++-', '+---++'];
    const mirrored = rows.map((row) => [...row].reverse().join(''));
    const [one, other] = [screen(rows), screen(mirrored)];
    const [onOne, onOther] = [one, other].map((panel) =>
      topmost(fills(elevation(panel, { scale, detail: 'client' }).marks)),
    ) as [ReturnType<typeof topmost>, ReturnType<typeof topmost>];
    const width = one.outside.width;
    const roleOf = (panel: Panel, letter: string | undefined) =>
      partsOf(panel).find((part) => part.letter === letter)?.role;
    spread(2000, 0, width).forEach((x, i) => {
      const v = -one.outside.height * 0.1 * ((i * 0.7548777 + 0.3) % 1);
      expect(roleOf(one, onOne([x * 0.1, v]))).toBe(roleOf(other, onOther([(width - x) * 0.1, v])));
    });
  });

  test.each(examples)('%s: depict every listed part of the panel and none that is not listed', (name) => {
    const panels = example(name);
    const parts = partsOf(panels);
    for (const panel of panels) {
      const drawn = new Set(elevation(panel, { scale, parts }).marks.flatMap(({ of }) => of ?? []));
      const listed = parts.filter(({ where }) => where.some((place) => place.panel === panel.name));
      expect([...drawn].sort()).toEqual(listed.map(({ letter }) => letter).sort());
    }
  });

  test('shade no slats that are too low on paper, and draw their edges', () => {
    const panel = screen('plain');
    const shades = (ratio: number): number =>
      elevation(panel, { scale: { ratio, text: '' } }).marks.filter(({ role }) => /wood-(shade|deep)/.test(role))
        .length;
    expect(shades(1.3 / panel.courses.pitch)).toBeGreaterThan(0);
    expect(shades(1.1 / panel.courses.pitch)).toBe(0);
  });

  test('letter at the same heights at any scale', () => {
    const [panel] = example('larch-deck-guard');
    const heights = [0.2, 0.1, 0.05, 0.02].map((ratio) => {
      const drawing = elevation(panel as Panel, { scale: { ratio, text: '' } });
      return [...new Set(texts(drawing).map(({ height }) => height))].sort();
    });
    expect(heights).toEqual(heights.map(() => [2.5, 3.5, 5]));
  });

  test('stay under 250 kB as SVG for 60 courses', () => {
    const panel = screen('plain', { size: { width: 1800, height: 2500 }, stave: { width: 20, depth: 13, count: 9 } });
    expect(panel.courses.count).toBeGreaterThanOrEqual(55);
    expect(toSvg(elevation(panel, { scale })).length).toBeLessThan(250_000);
  });
});

describe('elevation(panel)', () => {
  test('states outside and clear sizes, left faces of staves, tops of courses', () => {
    const panel = screen('plain');
    const printed = texts(elevation(panel, { scale: { ratio: 0.2, text: '1:5' } })).map(({ text }) => text);
    const { clear, courses, staves } = panel;
    const first = (courses.bottoms[0] as number) + courses.height - clear.bottom;
    for (const size of [1100, panel.outside.height, clear.width, clear.height, first, staves.lefts[1] as number]) {
      expect(printed).toContain(String(Math.round(size)));
    }
  });

  test.each(examples)('%s: the stave is named at a bare piece in the lower half', (name) => {
    for (const panel of example(name).slice(0, 1)) {
      const parts = partsOf(panel);
      const of = partOf(parts, panel, 'stave')?.letter;
      const { marks } = elevation(panel, { scale, parts, detail: 'client' });
      const leads = marks.flatMap((mark) =>
        mark.kind === 'path' && mark.role === 'dimension' && mark.of === of ? [mark.path[0]] : [],
      );
      const [, , v] = leads[0] as unknown as readonly [string, number, number];
      expect(-v * 10).toBeLessThan(panel.outside.height / 2);
    }
  });

  test('words on the rows of sizes stand under the rows, outside every row', () => {
    const { marks } = elevation(screen('plain'), { scale });
    const words = marks.filter((mark) => mark.kind === 'text' && /Courses|Left edges/.test(mark.text));
    expect(words.length).toBe(2);
    for (const word of words)
      if (word.kind === 'text') {
        expect(word.angle).toBe(0);
        expect(textBox(word).u1).toBeLessThan(-5);
        expect(textBox(word).v0).toBeGreaterThan(0);
      }
  });

  test('for the client names nothing twice, also where slats are of two lengths', () => {
    const [solved] = example('studio-divider') as [Panel];
    const rows = solved.rows.map((row, i) => ({ ...row, cutLength: row.cutLength - 3 * i }));
    const panel = { ...solved, rows };
    expect(
      new Set(
        partsOf([panel])
          .filter(({ role }) => role === 'slat')
          .map(({ letter }) => letter),
      ).size,
    ).toBeGreaterThan(1);
    const printed = texts(elevation(panel, { scale, detail: 'client' })).map(({ text }) => text);
    expect(printed.filter((text) => text === 'slat')).toEqual(['slat']);
  });

  test('for the client states the outside alone and names parts in words', () => {
    const printed = texts(elevation(screen('plain'), { scale, detail: 'client' })).map(({ text }) => text);
    expect(printed).toEqual(expect.arrayContaining(['rail', 'stile', 'stave', 'slat', '1100']));
    expect(printed.filter((text) => /^\d/.test(text))).toHaveLength(2);
  });

  test('prints chains that add up, or says that they do not; no text lies on another: any job', () => {
    fc.assert(
      fc.property(arbitraryJob({ panels: 1 }), fc.constantFrom('shop' as const, 'client' as const), (data, detail) => {
        const job = readJob(JSON.stringify(data));
        const [panel] = solve(job) as [Panel];
        const paper = job.display.unit === 'mm' ? SHEET_PAPERS.A3 : SHEET_PAPERS.Tabloid;
        const rooms = frame(paper, 'landscape').rooms;
        const drawing = fit(elevationMaker(panel, { detail }), rooms, job.display.unit);
        if (!drawing) return;
        expect(drawing.chains?.filter((chain) => !addsUp(chain) && !chain.saidSo)).toEqual([]);
        const boxes = texts(drawing).map((mark) => ({ text: mark.text, box: textBox(mark) }));
        const upon = boxes.flatMap((a, i) => boxes.slice(i + 1).filter((b) => overlaps(a.box, b.box)));
        expect(upon.map(({ text }) => text)).toEqual([]);
      }),
      { seed: 20261124, numRuns: 60 },
    );
  });
});

test('letters of the details at the left stand beside their circles where sizes leave room', () => {
  const [panel] = example('wash-house-gate') as [Panel];
  const { marks } = elevation(panel, { scale: standardScale(1 / 12, 'in') });
  const at = (letter: string) =>
    marks.find((mark): mark is TextMark => mark.kind === 'text' && mark.role === 'label' && mark.text === letter);
  for (const { letter, at: middle } of detailLetters(panel).filter(({ on }) => on.includes('elevation'))) {
    const text = at(letter);
    if (!text) throw new Error(`no ${letter}`);
    const [u, v] = view(1 / 12)(middle.x, middle.y);
    // The circle is 6 mm at the most beyond the stile's half width; then the letter.
    expect(Math.hypot(text.at[0] - u, text.at[1] - v)).toBeLessThan(12);
    expect(textBox(text).u1).toBeLessThan(0);
  }
});
