import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import formats from 'ajv-formats';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { JobError, jobSchema, locateProblems, readJob, solve } from '../../src/index.ts';

const MINIMAL = `job: Tern Hollow wash house
unit: in
panels:
  - name: Window screen
    size: { width: 44 1/2, height: 52 }
`;

function problemsOf(text: string) {
  try {
    readJob(text, 'job.yaml');
  } catch (error) {
    if (error instanceof JobError) return error;
    throw error;
  }
  throw new Error('the job was read');
}

describe('readJob reads', () => {
  test('the smallest job is four fields, and every default is listed with its reason', () => {
    const job = readJob(MINIMAL);
    expect(job.panels[0]?.size).toEqual({ width: 44.5 * 25.4, height: 52 * 25.4 });
    expect(job.assumed.length).toBeGreaterThan(20);
    for (const { path, value, reason } of job.assumed) {
      expect(path).not.toBe('');
      expect(value).not.toBe('');
      expect(reason.length).toBeGreaterThan(5);
    }
    expect(job.assumed.map(({ path }) => path)).toContain('panels[0].slat.thickness');
  });

  test('a given value is not listed as assumed', () => {
    const job = readJob(MINIMAL.replace('size:', 'slat: { thickness: 1/4 }\n    size:'));
    expect(job.panels[0]?.slat.thickness).toBe(6.35);
    expect(job.assumed.map(({ path }) => path)).not.toContain('panels[0].slat.thickness');
  });

  test('the saw reaches 3 in, stiles and staves are cut 1 in long, unless the job says otherwise', () => {
    const sizes = (saw: string): number[] => {
      const { saw: rules, long } = readJob(`${MINIMAL}${saw}`);
      return [rules.deepest ?? 0, long].map((size) => Math.round(size * 10) / 10);
    };
    expect(sizes('')).toEqual([76.2, 25.4]);
    expect(sizes('saw: { deepest: 2, long: 0 }')).toEqual([50.8, 0]);
  });

  test('JSON is YAML, and inch and millimetre forms of one job agree', () => {
    const inch = readJob(MINIMAL);
    const json = readJob(
      JSON.stringify({
        job: 'x',
        unit: 'in',
        panels: [{ name: 'p', size: { width: '1130.3 mm', height: '1320.8 mm' } }],
      }),
    );
    expect(json.panels[0]?.size.width).toBeCloseTo(inch.panels[0]?.size.width ?? 0, 9);
  });

  test('every lays shared fields under each panel, and the panel’s own word wins', () => {
    const job = readJob(`job: x
unit: mm
every: { size: { width: 900, height: 900 }, rail: { height: 40, depth: 30 }, wood: western larch }
panels:
  - { name: a }
  - { name: b, rail: { height: 50 }, opening: { width: 800, height: 800 } }
`);
    expect(job.panels[0]?.rail).toEqual({ height: 40, depth: 30 });
    expect(job.panels[1]?.rail).toEqual({ height: 50, depth: 30 });
    expect(job.panels[1]?.opening?.width).toBe(800);
    expect(job.panels[1]?.wood.slat.wood.name.toLowerCase()).toBe('western larch');
  });
});

describe('readJob refuses', () => {
  test('every error of a file at once, each with line, column, path, what was found and what would do', () => {
    const { problems, message } = problemsOf(`job: x
unit: in
panels:
  - name: a
    size: { width: 44 1/2, hieght: 52 }
    weave: plian
  - name: b
    size: { width: 40 m, height: 52 }
saw: { kerf: -1/8 }
`);
    expect(problems.map(({ line, column, path }) => [line, column, path])).toEqual([
      [5, 11, 'panels[0].size.height'],
      [5, 28, 'panels[0].size.hieght'],
      [6, 12, 'panels[0].weave'],
      [8, 20, 'panels[1].size.width'],
      [9, 14, 'saw.kerf'],
    ]);
    expect(message).toContain('job.yaml:5:28 panels[0].size.hieght: unknown key; did you mean "height"');
    expect(message).toContain('did you mean plain?');
    expect(message).toContain('(found "40 m")');
    expect(message).toContain('no blade has a kerf under nothing');
  });

  test.each<[string, string, string]>([
    ['an unknown unit', MINIMAL.replace('unit: in', 'unit: cm'), 'expected in or mm'],
    ['no unit', MINIMAL.replace('unit: in\n', ''), 'unit: missing: expected in or mm'],
    ['no panel', 'job: x\nunit: in\npanels: []\n', 'at least one panel'],
    ['a panel with neither size nor opening', 'job: x\nunit: in\npanels: [{ name: a }]\n', 'give size'],
    ['both size and opening', MINIMAL.replace('size:', 'opening: { width: 50, height: 60 }\n    size:'), 'not both'],
    ['a slat of 0.1 mm', MINIMAL.replace('size:', 'slat: { thickness: 0.1 mm }\n    size:'), 'veneer'],
    ['a slat that is not a number', MINIMAL.replace('size:', 'slat: { thickness: .nan }\n    size:'), 'slat.thickness'],
    ['ten million staves', MINIMAL.replace('size:', 'stave: { count: 10000000 }\n    size:'), 'past any panel'],
    [
      'count and pitch together',
      MINIMAL.replace('size:', 'stave: { count: 5, pitch: { prefer: 10 } }\n    size:'),
      'count or pitch',
    ],
    ['an unknown wood', MINIMAL.replace('size:', 'wood: western redceder\n    size:'), 'did you mean'],
    ['an unknown place', `${MINIMAL}site: { place: Nowhere }\n`, 'no moisture figures'],
    [
      'two panels of one name',
      `${MINIMAL}  - { name: Window screen, size: { width: 30, height: 30 } }\n`,
      'two panels',
    ],
    ['a run of a panel that is not there', `${MINIMAL}runs: [{ name: r, panels: [Gone] }]\n`, 'no panel has this name'],
    [
      'gate details on a screen',
      MINIMAL.replace('size:', 'use: screen\n    gate: { hinge: left }\n    size:'),
      'drop gate',
    ],
    ['a mark that no tape has', `${MINIMAL}mark: 1/12\n`, 'marks of an inch tape'],
    ['a date that is none', `${MINIMAL}date: 2026-02-30\n`, 'expected a date'],
    ['text that is not YAML', 'job: [', 'not YAML'],
    ['a list instead of a job', '- 1\n', 'expected a job: fields such as job, unit and panels'],
    ['nothing', '', '(found nothing)'],
    ['a wood of two names', MINIMAL.replace('size:', 'wood: oak\n    size:'), 'name one of white oak'],
    [
      'a board of no wood',
      `${MINIMAL}stock: [{ thickness: 1, width: 4, length: 96, wood: oka }]\n`,
      'no such wood: oka',
    ],
    ['a tab', MINIMAL.replace('    size', '\tsize'), 'indent by spaces'],
    ['a field told twice', `${MINIMAL}unit: mm\n`, 'stands twice in its group (found unit: mm)'],
  ])('%s, saying what would do', (_, text, says) => {
    expect(problemsOf(text).message).toContain(says);
  });

  test('an unknown wood once, at the field that names it, long or short', () => {
    for (const wood of ['wood: elven', 'wood: { all: elven }', 'wood: { all: { wood: elven, grade: clear } }']) {
      const { problems } = problemsOf(MINIMAL.replace('size:', `${wood}\n    size:`));
      expect(problems.map(({ found }) => found)).toEqual(['"elven"']);
    }
  });

  test('where YAML breaks, the first place alone, with its line as written', () => {
    const text = MINIMAL.replace('unit: in', 'unit in');
    const { problems } = problemsOf(text);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ line: 2, found: 'unit in' });
    expect(problems[0]?.message).toContain('a colon is missing');
  });

  test('a file past any job’s length, and aliases that multiply, without reading on', () => {
    expect(problemsOf(`job: ${'x'.repeat(2_000_001)}`).message).toContain('too long');
    const bomb = Array.from({ length: 12 }, (_, i) => `a${i}: &a${i} [${`*a${i - 1},`.repeat(i ? 9 : 0)}]`).join('\n');
    expect(problemsOf(bomb).message).not.toBe('');
  });

  test('what solving finds is put back on its line', () => {
    const text = MINIMAL.replace('size:', 'fit: { vary: slats, from: 2.99, to: 3, prefer: 3 }\n    size:').replace(
      '52',
      '7',
    );
    expect(() => solve(readJob(text))).toThrow(JobError);
    try {
      solve(readJob(text));
    } catch (error) {
      const { problems } = locateProblems(error as JobError, text, 'job.yaml');
      expect(problems[0]).toMatchObject({ line: 5, path: 'panels[0].fit' });
      expect(problems[0]?.message).toContain('nearest outside heights that work');
    }
  });
});

describe('jobSchema', () => {
  // An independent validator of JSON Schema judges the schema and the examples.
  const ajv = new Ajv2020({ strict: false });
  formats.default(ajv);
  const valid = ajv.compile(jobSchema());
  const examples = new URL('../../../../examples/', import.meta.url);

  test.each(readdirSync(examples).filter((name) => name.endsWith('.yaml')))('jobSchema accepts %s', (name) => {
    expect(valid(parse(readFileSync(new URL(name, examples), 'utf8'))), JSON.stringify(valid.errors)).toBe(true);
  });
  test.each([
    { job: 'x', unit: 'in' },
    { job: 'x', unit: 'yd', panels: [{ name: 'a' }] },
    { job: 'x', unit: 'in', panels: [{ name: 'a', hieght: 3 }] },
    { job: 'x', unit: 'in', panels: [{ name: 'a', stave: { count: 'many' } }] },
  ])('jobSchema refuses %j', (job) => {
    expect(valid(job)).toBe(false);
  });
});
