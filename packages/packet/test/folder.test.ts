import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rename, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { FolderError, writeFolder } from '../src/index.ts';

const place = async () => join(await mkdtemp(join(tmpdir(), 'wattlewright-')), 'packet');
const first = [
  { name: 'a.txt', content: 'one' },
  { name: 'sub/b.txt', content: new Uint8Array([1, 2]) },
];

describe('writeFolder', () => {
  test('writes every file, folders among them', async () => {
    const folder = await place();
    await writeFolder(folder, first);
    expect(await readFile(join(folder, 'a.txt'), 'utf8')).toBe('one');
    expect([...(await readFile(join(folder, 'sub', 'b.txt')))]).toEqual([1, 2]);
  });
  test('replaces a folder of its own whole: no file of the old one is left', async () => {
    const folder = await place();
    await writeFolder(folder, first);
    await writeFolder(folder, [{ name: 'c.txt', content: 'two' }]);
    expect((await readdir(folder)).filter((name) => !name.startsWith('.'))).toEqual(['c.txt']);
    expect(await readdir(join(folder, '..'))).toEqual(['packet']);
  });
  test('refuses a folder with files that it did not make, and a file, and leaves them', async () => {
    const folder = await place();
    await mkdir(folder);
    await writeFile(join(folder, 'mine.txt'), 'mine');
    await expect(writeFolder(folder, first)).rejects.toThrow(FolderError);
    expect(await readdir(folder)).toEqual(['mine.txt']);
    await expect(writeFolder(join(folder, 'mine.txt'), first)).rejects.toThrow('is not a folder');
  });
  test('fills an empty folder', async () => {
    const folder = await place();
    await mkdir(folder);
    await writeFolder(folder, first);
    expect(existsSync(join(folder, 'a.txt'))).toBe(true);
  });
  test('a run that failed half-way leaves the old folder whole and nothing beside it', async () => {
    const folder = await place();
    await writeFolder(folder, first);
    await expect(
      writeFolder(folder, [
        { name: 'x.txt', content: 'x' },
        { name: 'x.txt/y.txt', content: 'y' },
      ]),
    ).rejects.toThrow();
    expect(await readFile(join(folder, 'a.txt'), 'utf8')).toBe('one');
    expect(await readdir(join(folder, '..'))).toEqual(['packet']);
  });
  test('a run stopped between its two moves is put right by the next', async () => {
    const folder = await place();
    await writeFolder(folder, first);
    await rename(folder, join(folder, '..', '.packet.old'));
    await writeFolder(folder, [{ name: 'c.txt', content: 'two' }]);
    expect(await readdir(join(folder, '..'))).toEqual(['packet']);
    expect(await readFile(join(folder, 'c.txt'), 'utf8')).toBe('two');
  });
});
