import type { Sheet } from '@wattlewright/drafting';
import { formatLength, type Settled } from '@wattlewright/model';

/** `README.txt` of a packet: what is what, and how to print. */
export function readmeText(
  { job, panels, findings }: Settled,
  sheets: { readonly packet: readonly Sheet[]; readonly sticks: readonly Sheet[] },
): string {
  const size = (length: number) => formatLength(length, job.display, { named: true });
  const stops = findings.filter(({ level }) => level === 'stop');
  const lines = [
    job.name,
    '='.repeat(job.name.length),
    '',
    ...panels.map(
      ({ name, count, outside }) => `${count} x ${name}: ${size(outside.width)} wide, ${size(outside.height)} high`,
    ),
    '',
    ...(stops.length > 0
      ? ['STOP before you build:', ...stops.map(({ where, text }) => `  ${where}: ${text}`), '']
      : []),
    'What is what',
    `  packet.pdf      ${sheets.packet.length} sheets on ${papersOf(sheets.packet)}: cover, client, drawings, lists, cuts, chart, steps, findings`,
    ...largerThan(job.paper.sheets, sheets.packet).map((line) => `                  ${line}`),
    `  sticks.pdf      ${sheets.sticks.length} full-size pages on ${papersOf(sheets.sticks)}: marking sticks and templates`,
    ...pagesOf(sheets.sticks).map((line) => `                  ${line}`),
    '  drawings/*.svg  each view by itself',
    '  parts.csv       the parts list for a spreadsheet',
    '  cuts.csv        the cutting plan, cut by cut',
    '  job.json        everything as data; sizes in mm',
    '',
    'Printing the full-size sheets',
    '  1. Print sticks.pdf at actual size (100 %), no fitting, no scaling, one page a sheet.',
    '  2. Measure the check bars on the first page, across and along. They must be 100 mm and 4 in.',
    '  3. If they are not, put what your printer does into the job and make the packet again:',
    '       paper: { printed: { across: 99.7, along: 100.4 } }    (measured over true, in percent)',
    '  4. Cut each page on its trim line, lay the crosses on each other, and measure the whole once more.',
    '',
    'Read the findings and the cautions before the first cut. Check every size against the wood in hand.',
    'Guards, gates, wind and escape windows: your local code and a licensed professional decide.',
    '',
  ];
  return lines.join('\r\n');
}

/** Which sheets are on another paper than the job names, a line for each paper. */
function largerThan(named: string, sheets: readonly Sheet[]): string[] {
  const others = [...new Set(sheets.map(({ paper }) => paper))].filter((paper) => paper !== named);
  return others.map((paper) => {
    const labels = sheets.filter((sheet) => sheet.paper === paper).map(({ label }) => label);
    return `too large for ${named}, on ${paper}: ${labels.length === 1 ? 'sheet' : 'sheets'} ${labels.join(', ')}`;
  });
}

/** What the full-size pages hold, a line for each drawing. */
function pagesOf(sheets: readonly Sheet[]): string[] {
  return [...new Set(sheets.map(({ title }) => title))].map((title) => {
    const labels = sheets.filter((sheet) => sheet.title === title).map(({ label }) => label);
    return `${labels.length === 1 ? labels[0] : `${labels[0]} to ${labels.at(-1)}`}  ${title}`;
  });
}

function papersOf(sheets: readonly Sheet[]): string {
  return [...new Set(sheets.map(({ paper }) => paper))].join(' and ');
}
