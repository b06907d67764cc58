import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * The ladder of each package: a file may import from its own rung and from rungs above it in this list. An entry is a
 * folder or a file. Within a rung no file may depend on itself round a corner.
 */
const LADDERS: Readonly<Record<string, readonly (readonly string[])[]>> = {
  model: [
    ['length.ts', 'finding.ts', 'parts/part.ts', 'cutting/stock.ts'],
    ['wood'],
    ['weave', 'loads'],
    ['job'],
    ['panel'],
    ['parts', 'uses', 'hardware'],
    ['cutting'],
    ['findings'],
    ['making'],
    ['settle.ts'],
    ['index.ts'],
  ],
  drafting: [
    ['mark.ts'],
    ['path.ts', 'ink.ts', 'pen.ts', 'scale.ts', 'view.ts', 'paper.ts'],
    ['font', 'lettering.ts'],
    ['layout'],
    ['sheet'],
    ['views'],
    ['tiling', 'proofing'],
    ['machine.ts', 'catalog.ts', 'window'],
    ['svg.ts', 'pdf.ts'],
    ['index.ts'],
  ],
  packet: [
    ['files.ts', 'status.ts', 'world.ts'],
    ['tables.ts', 'folder.ts', 'readme.ts', 'report.ts', 'start.ts'],
    ['cuts.ts', 'sheets'],
    ['packet.ts'],
    ['commands.ts'],
    ['cli.ts'],
    ['main.ts'],
    ['index.ts', 'demo.ts'],
  ],
};

const sourceOf = (name: string) => join(root, 'packages', name, 'src');

function filesIn(folder: string): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? filesIn(path) : /\.ts$/.test(name) && !name.endsWith('.d.ts') ? [path] : [];
  });
}

/** Every source file of a package with the files of the package that it imports. */
function graph(name: string): Map<string, string[]> {
  const src = sourceOf(name);
  return new Map(
    filesIn(src).map((file) => {
      const imports = [...readFileSync(file, 'utf8').matchAll(/(?:from|import\()\s*'(\.[^']+)'/g)];
      return [relative(src, file), imports.map(([, to]) => relative(src, join(dirname(file), to as string)))];
    }),
  );
}

function rungOf(ladder: readonly (readonly string[])[], file: string): number {
  const exact = ladder.findIndex((rung) => rung.includes(file));
  return exact >= 0 ? exact : ladder.findIndex((rung) => rung.includes(file.split('/')[0] as string));
}

describe.each(Object.keys(LADDERS))('packages/%s', (name) => {
  const ladder = LADDERS[name] as readonly (readonly string[])[];
  const files = graph(name);

  test('every file stands on a rung', () => {
    expect([...files.keys()].filter((file) => rungOf(ladder, file) < 0)).toEqual([]);
  });
  test('files import only from their own rung and those above', () => {
    const down = [...files].flatMap(([file, imports]) =>
      imports.filter((to) => rungOf(ladder, to) > rungOf(ladder, file)).map((to) => `${file} imports ${to}`),
    );
    expect(down).toEqual([]);
  });
  test('no file depends on itself round a corner', () => {
    const cycles: string[] = [];
    const state = new Map<string, 'open' | 'done'>();
    const visit = (file: string, path: readonly string[]): void => {
      if (state.get(file) === 'done') return;
      if (state.get(file) === 'open') return void cycles.push([...path.slice(path.indexOf(file)), file].join(' > '));
      state.set(file, 'open');
      for (const to of files.get(file) ?? []) visit(to, [...path, file]);
      state.set(file, 'done');
    };
    for (const file of files.keys()) visit(file, []);
    expect(cycles).toEqual([]);
  });
  test('files hold one subject: at most 250 lines, named by it, and the public list is explicit', () => {
    for (const file of filesIn(sourceOf(name))) {
      const text = readFileSync(file, 'utf8');
      // Font data is a table of letters, not code.
      if (!/font\/(regular|semibold)\.ts$/.test(file)) expect(text.split('\n').length, file).toBeLessThanOrEqual(251);
      expect(file).not.toMatch(/(utils?|helpers?|common|misc)\.ts$/);
      expect(text, file).not.toMatch(/export \*|export default/);
    }
  });
});

describe('packages', () => {
  const texts = (name: string) => filesIn(sourceOf(name)).map((file) => [file, readFileSync(file, 'utf8')] as const);

  test('depend only downwards: model on neither, drafting on model, packet on both', () => {
    for (const [file, text] of texts('model')) expect(text, file).not.toMatch(/@wattlewright\/(drafting|packet)/);
    for (const [file, text] of texts('drafting')) expect(text, file).not.toMatch(/@wattlewright\/packet/);
  });
  test('model and drafting touch no clock, no chance, no disk and nothing of Node alone', () => {
    for (const [file, text] of [...texts('model'), ...texts('drafting')]) {
      expect(text, file).not.toMatch(
        /Date\.now|new Date\(\)|Math\.random|performance\.now|from 'node:|\bprocess\.|require\(/,
      );
    }
  });
  test('only the command’s own files touch clock, disk and terminal', () => {
    const touching = texts('packet')
      .filter(([, text]) => /from 'node:(fs|readline|child)|new Date\(|process\./.test(text))
      .map(([file]) => relative(sourceOf('packet'), file));
    expect(touching.sort()).toEqual(['demo.ts', 'folder.ts', 'main.ts']);
  });
});

describe('the tree', () => {
  const tracked = execFileSync('git', ['ls-files'], { cwd: root, encoding: 'utf8' })
    .trim()
    .split('\n')
    .filter((file) => existsSync(join(root, file)));

  test('holds nothing at the top but what is allowed', () => {
    const allowed =
      /^(\..*|packages|docs|examples|test|package\.json|pnpm-workspace\.yaml|pnpm-lock\.yaml|tsconfig(\.base)?\.json|README\.md|DEVELOPERS\.md|LICENSE|vitest\.config\.ts|biome\.json|typedoc\.json|knip\.json)$/;
    expect(
      [...new Set(tracked.map((file) => file.split('/')[0] as string))].filter((name) => !allowed.test(name)),
    ).toEqual([]);
  });
  test('names no path of a machine and no registry host', () => {
    // Assembled, so that this file does not name them either.
    const unwanted = new RegExp(
      [
        ['/wo', 'rk/'],
        ['/ro', 'ot/'],
        ['/ho', 'me/'],
        ['regis', 'try\\.npm'],
        ['deb', '\\.debian'],
      ]
        .map((halves) => halves.join(''))
        .join('|'),
    );
    const text = tracked.filter((file) => /\.(ts|mjs|json|ya?ml|md|txt)$|\.ci\/run/.test(file));
    expect(text.filter((file) => unwanted.test(readFileSync(join(root, file), 'utf8')))).toEqual([]);
  });
});
