// Runs the one pnpm release that package.json names, so that a machine with only Node and npm needs no install by hand.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const { packageManager } = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
const version = packageManager.replace(/^pnpm@/, '').replace(/\+.*$/, '');
const shell = process.platform === 'win32';
const present = spawnSync('pnpm', ['--version'], { encoding: 'utf8', shell, cwd: root }).stdout?.trim();
const [command, first] = present === version ? ['pnpm', []] : ['npx', ['--yes', `pnpm@${version}`]];
const done = spawnSync(command, [...first, ...process.argv.slice(2)], { stdio: 'inherit', cwd: root, shell });
process.exit(done.status ?? 3);
