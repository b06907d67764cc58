import type { ParseArgsConfig } from 'node:util';
import { toPdf, toSvg } from '@wattlewright/drafting';
import {
  type Finding,
  type Job,
  JobError,
  jobSchema,
  locateProblems,
  readJob,
  type Settled,
  settle,
  woodChoices,
} from '@wattlewright/model';
import { writeFolder, writeWhole } from './folder.ts';
import { packetOf } from './packet.ts';
import { findingLines, planLines, woodLines } from './report.ts';
import { sheetsFor } from './sheets/sheets.ts';
import { stickSheets } from './sheets/sticks.ts';
import { drawingNamed, drawingNames } from './sheets/views.ts';
import { askForJob } from './start.ts';
import { STATUS, UsageError } from './status.ts';
import type { World } from './world.ts';

/** One call of a command: the world, its options and its other words. */
interface Call {
  readonly world: World;
  readonly values: Readonly<Record<string, string | boolean | undefined>>;
  readonly words: readonly string[];
}

interface Command {
  readonly usage: string;
  readonly about: string;
  readonly options: NonNullable<ParseArgsConfig['options']>;
  readonly run: (call: Call) => Promise<number>;
}

const out = { out: { type: 'string' } } as const;
const json = { json: { type: 'boolean' } } as const;

/** Every command by its name. */
export const commands: Readonly<Record<string, Command>> = {
  packet: {
    usage: 'wattlewright packet JOB --out FOLDER',
    about: 'Writes the shop packet into FOLDER, whole or not at all. A folder that it made before is replaced.',
    options: out,
    async run(call) {
      const { world } = call;
      const folder = wanted(call, 'out');
      const settled = await settledJob(call);
      world.progress('drawing ...');
      const files = await located(call, () => packetOf(settled));
      await writeFolder(folder, files);
      world.say(`${files.length} files in ${folder}; start with README.txt`);
      return reported(settled.findings, world);
    },
  },
  check: {
    usage: 'wattlewright check JOB [--json]',
    about: 'Says what the design makes true and you must know, stops first.',
    options: json,
    async run(call) {
      const { findings } = await settledJob(call);
      call.world.out(
        call.values.json ? `${JSON.stringify(findings, null, 2)}\n` : `${findingLines(findings).join('\n')}\n`,
      );
      return statusOf(findings);
    },
  },
  plan: {
    usage: 'wattlewright plan JOB [--json]',
    about: 'Says what to buy, what to rip and crosscut from each board, and how near the plan is to the best there is.',
    options: json,
    async run(call) {
      const { plan, job, choices } = await settledJob(call);
      const text = call.values.json ? JSON.stringify(plan, null, 2) : planLines(plan, job, choices).join('\n');
      call.world.out(`${text}\n`);
      return plan.status === 'impossible' ? STATUS.stop : STATUS.fine;
    },
  },
  sticks: {
    usage: 'wattlewright sticks JOB --out FILE.pdf',
    about: 'Full-size marking sticks and templates on the paper of the job. Print at actual size.',
    options: out,
    async run(call) {
      const file = wanted(call, 'out');
      const settled = await settledJob(call);
      const sheets = stickSheets(settled);
      await writeWhole(file, await toPdf(sheets, { title: `${settled.job.name}: full-size sticks`, language: 'en' }));
      call.world.say(`${sheets.length} pages in ${file}; print at actual size and measure the check bar`);
      return reported(settled.findings, call.world);
    },
  },
  draw: {
    usage: 'wattlewright draw JOB [VIEW] [--svg | --pdf] [--panel NAME] [--machine] [--out FILE]',
    about:
      'One view as SVG (or PDF). Without VIEW: the views there are. --machine gives true millimetres and outlined text for cutters.',
    options: {
      ...out,
      svg: { type: 'boolean' },
      pdf: { type: 'boolean' },
      machine: { type: 'boolean' },
      panel: { type: 'string' },
    },
    run: draw,
  },
  woods: {
    usage: 'wattlewright woods JOB [--json]',
    about: 'The first panel of the job in every wood of the table: stress, spacing, movement, weight and decay.',
    options: json,
    async run(call) {
      const { job, panels } = await settledJob(call);
      const [panel] = panels;
      if (!panel) return STATUS.fine;
      const choices = woodChoices(job, panel);
      call.world.out(
        call.values.json ? `${JSON.stringify(choices, null, 2)}\n` : `${woodLines(choices, job).join('\n')}\n`,
      );
      return STATUS.fine;
    },
  },
  start: {
    usage: 'wattlewright start [--out FILE.yaml]',
    about: 'Asks a few questions and writes a job file (job.yaml unless told otherwise).',
    options: out,
    async run({ world, values }) {
      const file = typeof values.out === 'string' ? values.out : 'job.yaml';
      if ((await world.readText(file).catch(() => undefined)) !== undefined)
        throw new UsageError(`${file} is there already; give another name after --out`);
      await writeWhole(file, await askForJob(world));
      world.say(`wrote ${file}; next: wattlewright packet ${file} --out packet`);
      return STATUS.fine;
    },
  },
  schema: {
    usage: 'wattlewright schema',
    about: 'The JSON Schema of a job file, for editors and other programs.',
    options: {},
    async run({ world }) {
      world.out(`${JSON.stringify(jobSchema(), null, 2)}\n`);
      return STATUS.fine;
    },
  },
};

async function draw(call: Call): Promise<number> {
  const { world, values, words } = call;
  const settled = await settledJob(call);
  const [, name] = words;
  if (name === undefined) {
    world.out(`${drawingNames(settled).join('\n')}\n`);
    return STATUS.fine;
  }
  const drawing = drawingNamed(settled, name, typeof values.panel === 'string' ? values.panel : undefined);
  if (!drawing)
    throw new UsageError(`no view ${JSON.stringify(name)} of this job; there are ${drawingNames(settled).join(', ')}`);
  const content = values.pdf
    ? await located(call, () => toPdf(sheetsFor(settled, drawing), { title: drawing.title, language: 'en' }))
    : toSvg(drawing, values.machine ? { machine: true, text: 'outlines' } : {});
  if (typeof values.out === 'string') await writeWhole(values.out, content);
  else world.out(content);
  return STATUS.fine;
}

/** The text after an option that a command cannot do without. */
function wanted({ values }: Call, option: string): string {
  const value = values[option];
  if (typeof value !== 'string' || value === '') throw new UsageError(`say where to write with --${option}`);
  return value;
}

async function settledJob({ world, words }: Call): Promise<Settled> {
  const [path] = words;
  if (path === undefined) throw new UsageError('name a job file');
  const text = await world.readText(path);
  const job = readJob(text);
  try {
    return await settle(job, { signal: world.interrupted, onProgress: progressOf(world, job) });
  } catch (error) {
    throw error instanceof JobError ? locateProblems(error, text) : error;
  }
}

/** What `make` gives; problems of the job that it throws are told with their lines in the job file. */
async function located<T>({ world, words }: Call, make: () => Promise<T>): Promise<T> {
  try {
    return await make();
  } catch (error) {
    throw error instanceof JobError ? locateProblems(error, await world.readText(words[0] as string)) : error;
  }
}

function progressOf(world: World, job: Job): (at: { readonly cost: number; readonly bound: number }) => void {
  return ({ cost, bound }) => {
    const gap = bound > 0 ? `${(((cost - bound) / bound) * 100).toFixed(1)} % over the bound` : '';
    world.progress(`planning the cuts of ${job.name}: ${gap} (Ctrl-C ends with the best so far)`);
  };
}

function statusOf(findings: readonly Finding[]): number {
  return findings.some(({ level }) => level === 'stop') ? STATUS.stop : STATUS.fine;
}

/** Says the stops on the way out, so that nobody misses them. */
function reported(findings: readonly Finding[], world: World): number {
  for (const finding of findings.filter(({ level }) => level === 'stop'))
    world.say(`STOP ${finding.where}: ${finding.text}`);
  return statusOf(findings);
}
