import { readFile } from 'node:fs/promises';
import { createInterface } from 'node:readline/promises';
import { run } from './cli.ts';
import { STATUS } from './status.ts';
import type { World } from './world.ts';

/** The real machine as the command sees it. The only file that touches the terminal, the clock and the process. */
function machine(): World {
  const stop = new AbortController();
  let asked = 0;
  process.on('SIGINT', () => {
    asked += 1;
    // A second request means now: nothing is half-written, since folders and files take their names in one move.
    if (asked > 1) process.exit(130);
    stop.abort();
  });
  const watched = Boolean(process.stderr.isTTY);
  let shown = false;
  const clear = () => {
    if (shown) process.stderr.write('\r\u001b[K');
    shown = false;
  };
  return {
    args: process.argv.slice(2),
    out: (content) => {
      clear();
      process.stdout.write(content);
    },
    say: (line) => {
      clear();
      process.stderr.write(`${line}\n`);
    },
    watched,
    progress: (line) => {
      if (!watched) return;
      process.stderr.write(`\r\u001b[K${line}`);
      shown = true;
    },
    readText: (path) => readFile(path, 'utf8'),
    today: () => new Date().toISOString().slice(0, 10),
    ask: async (question) => {
      const lines = createInterface({ input: process.stdin, output: process.stderr });
      try {
        return (await lines.question(question)).trim();
      } finally {
        lines.close();
      }
    },
    interrupted: stop.signal,
  };
}

// A reader that closes early, such as `head`, is no failure.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
});

try {
  process.exitCode = await run(machine());
} catch (error) {
  process.stderr.write(`wattlewright: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
  process.exitCode = STATUS.machine;
}
