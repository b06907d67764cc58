import { readFile } from 'node:fs/promises';
import { createInterface } from 'node:readline';
import { isMainThread, MessageChannel, type MessagePort, parentPort, Worker, workerData } from 'node:worker_threads';
import { STATUS } from './status.ts';
import type { World } from './world.ts';

// The only file that touches the terminal, the clock and the process. The work has a thread of its own, so that a wish to
// stop is heard at once, even in the middle of a long search: signals come to the first thread alone. Run from its source
// it has but one thread, since the runner reads TypeScript in the first alone; a stop then waits for the end of a step.
const threaded = !import.meta.url.endsWith('.ts');

/** What the working thread is given. */
interface Given {
  readonly args: readonly string[];
  readonly watched: boolean;
  /** Set above 0 by the first thread when the person asks to stop. */
  readonly stop: Int32Array;
}

/** What the working thread says. */
type Word =
  | { readonly is: 'out'; readonly content: string | Uint8Array }
  | { readonly is: 'say' | 'progress' | 'ask'; readonly line: string }
  | { readonly is: 'done'; readonly status: number };

/** The working thread, or the end of a channel to work in this one. */
interface Hand {
  on(event: 'message', listener: (word: Word) => void): unknown;
  postMessage(answer: string): void;
}

function handOut(given: Given): Hand {
  const script = new URL(import.meta.url);
  if (threaded) return new Worker(script, { workerData: given });
  const { port1, port2 } = new MessageChannel();
  void work(given, port2);
  return port1;
}

/** The terminal's side. */
function attend(): void {
  const watched = Boolean(process.stderr.isTTY);
  const stop = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
  const given: Given = { args: process.argv.slice(2), watched, stop };
  const hand = handOut(given);
  process.on('SIGINT', () => {
    // A second request means now: nothing is half-written, since folders and files take their names in one move.
    if (Atomics.add(stop, 0, 1) > 0) process.exit(130);
  });
  // A reader that closes early, such as `head`, is no failure.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
  let shown = false;
  const clear = () => {
    if (shown) process.stderr.write('\r\u001b[K');
    shown = false;
  };
  const answer = answers();
  hand.on('message', (word: Word) => {
    if (word.is === 'done') {
      process.exitCode = word.status;
      process.stdin.destroy();
    } else if (word.is === 'progress') {
      process.stderr.write(`\r\u001b[K${word.line}`);
      shown = true;
    } else {
      clear();
      if (word.is === 'out') process.stdout.write(word.content);
      else if (word.is === 'say') process.stderr.write(`${word.line}\n`);
      else void answer(word.line).then((text) => hand.postMessage(text));
    }
  });
}

/** Asks questions one after the other, of a person or of lines piped in. */
function answers(): (question: string) => Promise<string> {
  let lines: AsyncIterator<string> | undefined;
  return async (question) => {
    process.stderr.write(question);
    lines ??= createInterface({ input: process.stdin, terminal: false })[Symbol.asyncIterator]();
    const { value, done } = await lines.next();
    if (!done) return value.trim();
    process.stderr.write('\nwattlewright: no more answers came; nothing is written\n');
    process.exit(STATUS.unreadable);
  };
}

/** The real machine as the command sees it from the working thread. */
function machine({ args, watched, stop }: Given, port: MessagePort, post: (word: Word) => void): World {
  return {
    args,
    out: (content) => post({ is: 'out', content }),
    say: (line) => post({ is: 'say', line }),
    watched,
    progress: (line) => {
      if (watched) post({ is: 'progress', line });
    },
    readText: (path) => readFile(path, 'utf8'),
    today: () => new Date().toISOString().slice(0, 10),
    ask: (question) =>
      new Promise((resolve) => {
        port.once('message', resolve);
        post({ is: 'ask', line: question });
      }),
    interrupted: {
      get aborted() {
        return Atomics.load(stop, 0) > 0;
      },
    },
  };
}

async function work(given: Given, port: MessagePort): Promise<void> {
  const { run } = await import('./cli.ts');
  const post = (word: Word): void => port.postMessage(word);
  try {
    post({ is: 'done', status: await run(machine(given, port, post)) });
  } catch (error) {
    post({
      is: 'say',
      line: `wattlewright: ${error instanceof Error ? (error.stack ?? error.message) : String(error)}`,
    });
    post({ is: 'done', status: STATUS.machine });
  }
  port.close();
}

if (isMainThread) attend();
else await work(workerData as Given, parentPort as MessagePort);
