// Makes the pictures of README.md and docs/ again from the examples: `npm run pictures`. Needs pdftoppm (poppler-utils).
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Drawing, place, type Sheet, titled, toPdf } from '@wattlewright/drafting';
import { readJob, type Settled, settle } from '@wattlewright/model';
import { packetSheets } from '../packages/packet/src/sheets/sheets.ts';
import { stickSheets } from '../packages/packet/src/sheets/sticks.ts';
import { drawingNamed } from '../packages/packet/src/sheets/views.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = join(root, 'docs', 'pictures');

/** Room left round a view, mm. */
const ROOM = 4;

async function example(name: string): Promise<Settled> {
  return await settle(readJob(readFileSync(join(root, 'examples', `${name}.yaml`), 'utf8')));
}

/** A view with its title on paper of its own size. */
function alone(drawing: Drawing): Sheet {
  const whole = titled(drawing);
  const { u0, v0, u1, v1 } = whole.bounds;
  const [width, height] = [u1 - u0 + 2 * ROOM, v1 - v0 + 2 * ROOM];
  const { name, title, alt, marks } = place(whole, { du: ROOM - u0, dv: ROOM - v0 });
  return {
    width,
    height,
    paper: 'its own',
    title,
    label: '1',
    figures: [{ name, title, alt, marks }],
    furniture: [],
    inside: { u0: 0, v0: 0, u1: width, v1: height },
    chains: [],
    fullSize: false,
  };
}

/** A sheet as docs/pictures/NAME.png in greys. */
async function picture(name: string, sheet: Sheet, scratch: string, dots = 100): Promise<void> {
  const file = join(scratch, `${name}.pdf`);
  writeFileSync(file, await toPdf([sheet], { title: sheet.title }));
  execFileSync('pdftoppm', ['-png', '-gray', '-singlefile', '-r', String(dots), file, join(folder, name)]);
}

function found<T>(what: T | undefined, name: string): T {
  if (what === undefined) throw new RangeError(`no ${name} among the examples`);
  return what;
}

/** Views that each stand for their kind, from the inch job unless the kind wants another. */
const VIEWS = ['elevation', 'side', 'picture', 'weave-section', 'weave-bay', 'vertical-section', 'detail-x'] as const;
const CHARTS = ['weave-chart', 'sight-chart', 'spacing-chart', 'rail-end', 'corner'] as const;

const scratch = mkdtempSync(join(tmpdir(), 'pictures-'));
try {
  mkdirSync(folder, { recursive: true });
  const window = await example('tern-hollow-window');
  for (const name of [...VIEWS, ...CHARTS])
    await picture(name, alone(found(drawingNamed(window, name), name)), scratch);
  const guard = await example('larch-deck-guard');
  await picture('run', alone(found(drawingNamed(guard, 'run'), 'run')), scratch);
  const gate = await example('wash-house-gate');
  await picture('brace-corner', alone(found(drawingNamed(gate, 'brace-corner'), 'brace-corner')), scratch);
  const divider = await example('studio-divider');
  await picture('foot', alone(found(drawingNamed(divider, 'foot'), 'foot')), scratch);
  const sheets = packetSheets(window);
  const sheet = (title: RegExp) =>
    found(
      sheets.find((one) => title.test(one.title)),
      String(title),
    );
  await picture('sheet-cover', sheet(/^Cover/), scratch, 72);
  await picture('sheet-elevation', sheet(/elevation/), scratch, 72);
  await picture('sheet-cuts', sheet(/^Cut sheets/), scratch, 72);
  await picture('sheet-stick', found(stickSheets(window)[0], 'stick'), scratch, 72);
} finally {
  rmSync(scratch, { recursive: true });
}
