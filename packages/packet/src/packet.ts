import { toPdf, toSvg } from '@wattlewright/drafting';
import { type Job, massOf, type Settled, type SettleOptions, settle } from '@wattlewright/model';
import { cutsCsv } from './cuts.ts';
import type { PacketFile } from './files.ts';
import { readmeText } from './readme.ts';
import { packetSheets } from './sheets/sheets.ts';
import { stickSheets } from './sheets/sticks.ts';
import { drawingsOf } from './sheets/views.ts';
import { partsCsv } from './tables.ts';

/**
 * The whole shop packet of a job as files in memory: `packet.pdf`, `sticks.pdf`, `drawings/*.svg`, `parts.csv`,
 * `cuts.csv`, `job.json` and `README.txt`. The same job gives the same bytes.
 * @throws {JobError} for a job that cannot be laid out
 */
export async function packet(job: Job, options: SettleOptions = {}): Promise<PacketFile[]> {
  return packetOf(await settle(job, options));
}

/** The packet of a job that is worked out already. */
export async function packetOf(settled: Settled): Promise<PacketFile[]> {
  const { job, parts, plan } = settled;
  const sheets = packetSheets(settled);
  const sticks = stickSheets(settled);
  const about = {
    language: 'en',
    ...(job.shop !== undefined && { author: job.shop }),
    ...(job.date !== undefined && { date: job.date }),
  };
  return [
    { name: 'README.txt', content: readmeText(settled, { packet: sheets, sticks }) },
    { name: 'packet.pdf', content: await toPdf(sheets, { ...about, title: `${job.name}: shop packet` }) },
    { name: 'sticks.pdf', content: await toPdf(sticks, { ...about, title: `${job.name}: full-size sticks` }) },
    ...drawingsOf(settled).map(({ file, drawing }) => ({ name: `drawings/${file}.svg`, content: toSvg(drawing) })),
    { name: 'parts.csv', content: partsCsv(parts, job) },
    { name: 'cuts.csv', content: cutsCsv(plan, job) },
    { name: 'job.json', content: `${JSON.stringify(dataOf(settled), null, 1)}\n` },
  ];
}

/** All results as data, mm, N, MPa, kg, percent; the panels with what they weigh. */
function dataOf({ job, panels, parts, plan, findings, choices }: Settled): object {
  return {
    job,
    panels: panels.map((panel) => ({ ...panel, weight: massOf(panel) })),
    parts,
    plan,
    choices,
    findings,
  };
}
