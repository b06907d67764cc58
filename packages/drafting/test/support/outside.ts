import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/**
 * Why a test that needs a program of the machine is left out, or `false` when it runs. Where `CI` is set it always runs,
 * so that a missing program fails there.
 */
export function lacking(program: string): string | false {
  if (process.env.CI !== undefined) return false;
  const there = program.startsWith('/') ? existsSync(program) : !spawnSync(program, ['-v']).error;
  return there ? false : `${program} is not installed here`;
}
