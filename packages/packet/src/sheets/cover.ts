import { type Block, compose, type Layout, paneBox, pictureMaker, prosePages } from '@wattlewright/drafting';
import { formatLength, massOf, type Panel, planText, type Settled } from '@wattlewright/model';

import { weightText } from './amounts.ts';
import type { Page } from './page.ts';

/**
 * The cover: a picture of the first panel, the job at a glance, and where things stand.
 * @param contentsFrom names the chapters with their sheets, given the number of the first sheet after the cover
 */
export function coverSheet(settled: Settled, page: Page, contentsFrom: (first: number) => readonly string[]): Layout[] {
  const { panels, parts, job } = settled;
  const [panel] = panels as readonly [Panel];
  const on = page.upright;
  const words = { left: 0, top: 0.6, width: 1, height: 0.4 } as const;
  const box = paneBox(on, words);
  const textBefore = (first: number) =>
    prosePages({
      name: 'glance',
      title: '',
      alt: `${job.name} at a glance.`,
      blocks: glance(settled, contentsFrom(first)),
      width: box.u1 - box.u0,
      height: box.v1 - box.v0,
      columns: 2,
    });
  // How many sheets the text takes does not depend on the numbers in it.
  const text = textBefore(Math.max(1, textBefore(2).length) + 1);
  const panes = [
    { item: pictureMaker(panel, { parts }), left: 0.04, top: 0.02, width: 0.92, height: 0.56 },
    ...text.slice(0, 1).map((item) => ({ item, ...words, align: 'top-left' as const })),
  ];
  const cover = compose(panes, on, { unit: page.unit, subject: 'Cover' });
  const rest = text.slice(1).map((item) =>
    compose([{ item, left: 0, top: 0, width: 1, height: 1, align: 'top-left' }], on, {
      unit: page.unit,
      subject: 'Cover, continued',
    }),
  );
  return [cover, ...rest];
}

function glance(settled: Settled, contents: readonly string[]): Block[] {
  const { panels, job, findings, plan } = settled;
  const counts = (['stop', 'caution', 'note'] as const).map((level) => ({
    level,
    n: findings.filter((finding) => finding.level === level).length,
  }));
  const stops = findings.filter(({ level }) => level === 'stop');
  return [
    { kind: 'heading', text: job.name },
    ...(job.client ? [{ kind: 'paragraph' as const, text: `For ${job.client}.` }] : []),
    ...panels.slice(0, 6).map((panel): Block => ({ kind: 'bullet', text: panelLine(panel) })),
    ...(panels.length > 6 ? [{ kind: 'bullet' as const, text: `and ${panels.length - 6} more panels` }] : []),
    { kind: 'heading', text: 'Wood and cost' },
    { kind: 'paragraph', text: planText(plan, { display: job.display, currency: job.currency })[0] ?? '' },
    { kind: 'heading', text: 'Before you cut' },
    {
      kind: 'paragraph',
      text: `${counts.map(({ level, n }) => `${n} ${level}${n === 1 ? '' : 's'}`).join(', ')}: see the findings.`,
    },
    ...stops
      .slice(0, 3)
      .map((finding): Block => ({ kind: 'caution', text: `STOP, ${finding.where}: ${finding.text}` })),
    ...job.notes.slice(0, 3).map((text): Block => ({ kind: 'paragraph', text })),
    { kind: 'heading', text: 'In this packet' },
    ...contents.map((text): Block => ({ kind: 'bullet', text })),
    {
      kind: 'bullet',
      text: 'Full-size sticks and templates: sticks.pdf. Print at actual size, measure the check bar first.',
    },
  ];
}

function panelLine(panel: Panel): string {
  const { display, outside, courses, staves, count } = panel;
  const show = (length: number) => formatLength(length, display, { fractions: 'stacked' });
  const size = `${show(outside.width)} × ${show(outside.height)} ${display.unit}`;
  return `${panel.name}${count > 1 ? ` (${count})` : ''}: ${size}, ${courses.count} courses, ${staves.count} staves, ${weightText(massOf(panel).mass, display.unit)}`;
}
