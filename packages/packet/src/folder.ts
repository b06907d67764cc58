import { randomBytes } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import type { PacketFile } from './files.ts';

/** The file by which a folder is known as one that this command made. */
const MARKER = '.wattlewright';
const MARKER_TEXT = 'This folder was written by wattlewright and is replaced whole by its next run.\n';

/** A folder that is not ours to replace, or a disk that fails. */
export class FolderError extends Error {
  override readonly name = 'FolderError';
}

/**
 * Writes a packet as a folder in one move: everything goes into a new folder beside it, which then takes the name. An
 * interrupted run leaves the old folder or the new one whole; the old one may then stand beside it, and the next run puts
 * it back.
 * @throws {FolderError} for a folder with files that this command did not make
 */
export async function writeFolder(folder: string, files: readonly PacketFile[]): Promise<void> {
  const target = resolve(folder);
  const aside = join(dirname(target), `.${basename(target)}.old`);
  await mkdir(dirname(target), { recursive: true });
  if (!existsSync(target) && existsSync(join(aside, MARKER))) await rename(aside, target);
  await refuseStrange(target);
  const fresh = join(dirname(target), `.${basename(target)}.${randomBytes(6).toString('hex')}`);
  try {
    for (const { name, content } of [...files, { name: MARKER, content: MARKER_TEXT }]) {
      const path = join(fresh, ...name.split('/'));
      await mkdir(dirname(path), { recursive: true });
      await writeFile(path, content);
    }
    if (existsSync(join(aside, MARKER))) await rm(aside, { recursive: true });
    if (existsSync(target)) await rename(target, aside);
    await rename(fresh, target);
    await rm(aside, { recursive: true, force: true });
  } finally {
    await rm(fresh, { recursive: true, force: true });
  }
}

async function refuseStrange(target: string): Promise<void> {
  if (!existsSync(target)) return;
  const inside = await readdir(target).catch(() => {
    throw new FolderError(`${target} is not a folder; give another name after --out`);
  });
  if (inside.length === 0) return;
  const made = await readFile(join(target, MARKER), 'utf8').catch(() => '');
  if (made !== MARKER_TEXT) {
    throw new FolderError(`${target} holds files that wattlewright did not make; give another folder after --out`);
  }
}

/** Writes one file whole or not at all. */
export async function writeWhole(path: string, content: string | Uint8Array): Promise<void> {
  const target = resolve(path);
  const fresh = join(dirname(target), `.${basename(target)}.${randomBytes(6).toString('hex')}`);
  await mkdir(dirname(target), { recursive: true });
  try {
    await writeFile(fresh, content);
    await rename(fresh, target);
  } finally {
    await rm(fresh, { force: true });
  }
}
