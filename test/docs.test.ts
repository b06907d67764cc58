import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readJob, solve } from '@wattlewright/model';
import { describe, expect, test } from 'vitest';
import { commands } from '../packages/packet/src/commands.ts';
import { jobFields } from './support/jobfields.ts';
import { agrees, examplesOf, fencesOf, runSnippet } from './support/snippets.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const read = (file: string) => readFileSync(join(root, file), 'utf8');

const documents = [
  'README.md',
  'DEVELOPERS.md',
  ...readdirSync(join(root, 'docs')).map((name) => `docs/${name}`),
].filter((file) => file.endsWith('.md'));
const fences = documents.flatMap((file) => fencesOf(read(file)).map((fence) => ({ file, ...fence })));
const written = (language: string) => fences.filter((fence) => fence.language === language);

describe('documents', () => {
  test.each(written('ts'))('$file:$line runs, and each value it claims is so', async ({ text }) => {
    const claims = await runSnippet(text);
    expect(claims.map(({ is }) => is)).toEqual(claims.map(({ claim }) => claim));
    expect(claims.length).toBe(text.split('// → ').length - 1);
  });

  test.each(written('yaml'))('$file:$line can be read and solved as a job, or as part of one', ({ text }) => {
    const job = /^job:/m.test(text) ? '' : 'job: Snippet\n';
    const unit = /^unit:/m.test(text) ? '' : 'unit: mm\n';
    const panels = /^panels:/m.test(text)
      ? ''
      : 'panels: [{ name: Screen, size: { width: 1000 mm, height: 1200 mm } }]\n';
    expect(solve(readJob(`${job}${unit}${panels}${text}`)).length).toBeGreaterThan(0);
  });

  test('documents name only scripts and commands that there are', () => {
    const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };
    const words = documents.flatMap((file) => [
      ...[...read(file).matchAll(/npm run (?:--silent )?(\w+)/g)].map(([, name]) => ({ file, name, known: scripts })),
      ...[...read(file).matchAll(/(?:^|`|: )wattlewright (\w+)/gm)].map(([, name]) => ({
        file,
        name,
        known: commands,
      })),
    ]);
    expect(words.length).toBeGreaterThan(15);
    expect(words.filter(({ name = '', known }) => !(name in known))).toEqual([]);
  });

  test.each(documents)('%s links only to what there is', (file) => {
    const targets = [...read(file).matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)|src="([^"]+)"/g)].map(
      ([, link, image]) => link ?? (image as string),
    );
    const here = targets.filter((target) => !/^https?:/.test(target));
    expect(here.filter((target) => !existsSync(join(root, dirname(file), target)))).toEqual([]);
  });

  test('documents show every picture, none over 200 kB', () => {
    const pictures = readdirSync(join(root, 'docs', 'pictures'));
    const all = documents.map(read).join('\n');
    expect(pictures.filter((name) => !all.includes(`pictures/${name}`))).toEqual([]);
    expect(pictures.filter((name) => statSync(join(root, 'docs', 'pictures', name)).size > 200_000)).toEqual([]);
  });
});

describe('docs/job-file.md', () => {
  const rows = read('docs/job-file.md')
    .split('\n')
    .filter((line) => line.startsWith('| `'))
    .map((line) => line.split('|').map((cell) => cell.trim()))
    .map(([, path = '', , allowed, absent]) => ({ path: path.replaceAll('`', ''), allowed, absent }));

  test('job-file.md has each field of the schema once, and no other', () => {
    expect(rows.map(({ path }) => path).sort()).toEqual(
      jobFields()
        .map(({ path }) => path)
        .sort(),
    );
  });

  test.each(jobFields())('job-file.md gives the bounds and the default of $path', ({ path, allowed, defaults }) => {
    const row = rows.find((each) => each.path === path);
    expect(row?.allowed).toBe(allowed);
    expect(row?.absent).not.toBe('');
    for (const said of defaults) expect(row?.absent).toContain(said);
  });
});

describe('examples in comments', () => {
  const examples = readdirSync(join(root, 'packages'), { recursive: true, encoding: 'utf8' })
    .filter(
      (file) => /^\w+.src.*\.ts$/.test(file) && !/node_modules|\.d\.ts$|index\.ts$|main\.ts$|demo\.ts$/.test(file),
    )
    .flatMap((file) => examplesOf(read(join('packages', file))).map((example) => ({ file, ...example })));

  test('there are examples to check', () => {
    expect(examples.length).toBeGreaterThanOrEqual(20);
  });

  test.each(examples)('$expression is $claim', async ({ file, expression, claim }) => {
    const exports = (await import(join(root, 'packages', file))) as Record<string, unknown>;
    const value: unknown = new Function(...Object.keys(exports), `return ${expression}`)(...Object.values(exports));
    expect(agrees(claim, value) ? claim : value).toBe(claim);
  });
});
