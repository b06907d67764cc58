// `npm run bench`: everything in one run on one machine, so that ratios hold even where times do not. Words after it pick
// sections: `npm run bench -- panel drawing`.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bendSlat, type Job, openworkOf, type Panel, partsOf, readJob, seeThrough, solve } from '@wattlewright/model';
import { jobRows, packingRows, type Row } from './cutting.ts';
import { drawingWorks, elevationOf } from './drawing.ts';
import { race, type Timing, usedUp, type Work } from './timing.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** A panel of 60 courses and 8 staves in a weave of four rows. */
const TALL = `
job: Bench
unit: mm
panels:
  - name: Tall
    size: { width: 2000, height: 2516 }
    weave: two-over-two twill
    stave: { count: 8 }
    slat: { thickness: 4, height: 40 }
    fit: { vary: outside, go: nearest }
site: { where: outdoors, driest: 9, wettest: 16, built: 12 }
`;

const text = (timing: Timing): string => {
  const ms = (n: number) => (n < 10 ? n.toFixed(3) : n.toFixed(1)).padStart(9);
  return `  ${timing.name.padEnd(46)}${ms(timing.least)}${ms(timing.median)}${ms(timing.low)}${ms(timing.high)}${String(timing.rounds).padStart(7)}`;
};
const HEAD = `  ${''.padEnd(46)}${['least', 'median', '10 %', '90 %'].map((word) => word.padStart(9)).join('')} rounds   (ms)`;

function print(title: string, timings: readonly Timing[], ratios: readonly (readonly [string, string])[]): void {
  console.log(`\n${title}\n${HEAD}`);
  for (const timing of timings) console.log(text(timing));
  const least = (name: string) => timings.find((timing) => timing.name === name)?.least ?? Number.NaN;
  for (const [a, b] of ratios) console.log(`  ${a} / ${b}: ${(least(a) / least(b)).toFixed(2)}`);
}

function machine(): void {
  const all = cpus();
  const versions = ['@svgdotjs/svg.js', 'pdfkit', 'fontkit', 'svgdom', 'highs'].map((name) => {
    const catalog = readFileSync(join(root, 'pnpm-workspace.yaml'), 'utf8');
    return `${name} ${new RegExp(`^ +"?${name}"?: (.+)`, 'm').exec(catalog)?.[1] ?? '?'}`;
  });
  console.log(`${all.length} × ${all[0]?.model.trim()}, node ${process.version}, ${process.platform} ${process.arch}`);
  console.log(versions.join(', '));
}

/** Twelve staves, plain: the row that `bendSlat` is timed on. */
function twelve(): Work {
  const slat = {
    clearWidth: 3000,
    staves: { count: 12, width: 19, depth: 13 },
    slat: { thickness: 5, height: 40 },
    sides: Array.from({ length: 12 }, (_, j) => (j % 2 === 0 ? 1 : -1) as 1 | -1),
    modulus: 9800,
    strength: 77,
  };
  return { name: 'bendSlat, 12 staves', run: () => bendSlat(slat).use };
}

async function panelSection(job: Job, panel: Panel): Promise<void> {
  const parts = partsOf([panel], { spare: 10 });
  const openwork = openworkOf(panel);
  const works: Work[] = [
    { name: 'read the job file', run: () => readJob(TALL).panels.length },
    { name: 'solve with all behaviour', run: () => solve(job).length },
    { name: 'draw its elevation', run: () => elevationOf(panel, parts).marks.length },
    twelve(),
    { name: 'seeThrough, one angle', run: () => seeThrough({ ...openwork, elevation: 30, azimuth: 20 }) },
  ];
  print(`A panel of ${panel.courses.count} courses and ${panel.staves.count} staves`, await race(works, 60), [
    ['solve with all behaviour', 'draw its elevation'],
  ]);
}

async function drawingSection(panel: Panel): Promise<void> {
  const parts = partsOf([panel], { spare: 10 });
  const works = drawingWorks(panel, parts);
  print(`Its elevation, ${elevationOf(panel, parts).marks.length} marks, through each backend`, await race(works, 25), [
    ['SVG', 'SVG by bare svg.js, no font'],
    ['PDF', 'PDF by bare pdfkit, same font'],
  ]);
}

/** The whole packet by the command, a process of its own each time: start, read, plan, draw, write. */
async function packetSection(): Promise<void> {
  const scratch = mkdtempSync(join(tmpdir(), 'bench-'));
  const command = ['packages/packet/dist/main.js'];
  const start = (args: readonly string[]) => {
    const done = spawnSync(process.execPath, [...command, ...args], { cwd: root, encoding: 'utf8' });
    if (done.status !== 0 && done.status !== 1) throw new Error(done.stderr);
    return done.stdout.length + done.stderr.length;
  };
  try {
    const whole = (name: string): Work => ({
      name: `packet of ${name}`,
      run: () => start(['packet', `examples/${name}.yaml`, '--out', join(scratch, name)]),
    });
    const works = [{ name: 'start and say help', run: () => start(['--help']) }, whole('tern-hollow-window')];
    print('From a cold process', await race(works, 3), [['packet of tern-hollow-window', 'start and say help']]);
  } finally {
    rmSync(scratch, { recursive: true });
  }
}

function printRows(title: string, rows: readonly Row[]): void {
  console.log(`\n${title}`);
  for (const { name, value, unit, note } of rows)
    console.log(`  ${name.padEnd(58)}${value.toFixed(2).padStart(9)} ${unit}${note ? ` (${note})` : ''}`);
}

const job = readJob(TALL);
const [panel] = solve(job);
if (!panel) throw new Error('the bench job has no panel');
const sections: Readonly<Record<string, () => Promise<void>>> = {
  panel: () => panelSection(job, panel),
  drawing: () => drawingSection(panel),
  packet: packetSection,
  cutting: async () => printRows('The cutting plan', await jobRows()),
  packing: async () => printRows('Boards only crosscut', await packingRows()),
};
const asked = process.argv.slice(2);
machine();
for (const name of asked.length > 0 ? asked : Object.keys(sections)) {
  const section = sections[name];
  if (!section) throw new RangeError(`no section ${name} (expected ${Object.keys(sections).join(', ')})`);
  await section();
}
console.log(`\n(results used up: ${usedUp().toPrecision(6)})`);
