import { approval, compose, elevationMaker, type Layout, type Pane, paneBox, prosePages } from '@wattlewright/drafting';
import { formatLength, massOf, type Panel, type Settled } from '@wattlewright/model';

import { weightText } from './amounts.ts';
import { onPaper, type PacketLayout, type Page, sheetsOf } from './page.ts';

/** One sheet a panel for the client: how it looks, how large it is, of what, how heavy, and lines to sign on. */
export function clientSheets({ panels, parts, job }: Settled, asked: Page): PacketLayout[] {
  const ofPanel = (panel: Panel, page: Page): Layout[] => {
    const view = elevationMaker(panel, { parts, detail: 'client' });
    const tall = panel.outside.height > panel.outside.width * 0.8;
    const on = tall ? page.upright : page.wide;
    const places = tall ? UNDER : BESIDE;
    const box = paneBox(on, places.notes);
    const width = Math.min(box.u1 - box.u0, 150);
    const [notes, ...more] = prosePages({
      name: 'client-notes',
      title: '',
      alt: `Size, wood, finish and weight of ${panel.name}.`,
      blocks: clientTexts(panel, job).map((text) => ({ kind: 'paragraph', text })),
      width,
      height: box.v1 - box.v0,
    });
    const panes: Pane[] = [
      { item: view, ...places.view },
      ...(notes ? [{ item: notes, ...places.notes, align: 'top-left' as const }] : []),
      { item: approval(Math.min(110, paneWidth(on, places.sign))), ...places.sign, align: 'top-left' as const },
    ];
    const subject = `${panel.name}: for the client`;
    return [compose(panes, on, { unit: page.unit, subject }), ...sheetsOf(more, on, page, subject)];
  };
  return panels.flatMap((panel) => onPaper(asked, (page) => ofPanel(panel, page)));
}

const UNDER = {
  view: { left: 0, top: 0, width: 1, height: 0.72 },
  notes: { left: 0, top: 0.72, width: 0.42, height: 0.28 },
  sign: { left: 0.44, top: 0.74, width: 0.56, height: 0.26 },
} as const;

const BESIDE = {
  view: { left: 0, top: 0, width: 1, height: 0.62 },
  notes: { left: 0, top: 0.62, width: 0.5, height: 0.38 },
  sign: { left: 0.52, top: 0.64, width: 0.48, height: 0.36 },
} as const;

function paneWidth(on: Page['wide'], pane: Omit<Pane, 'item'>): number {
  const { u0, u1 } = paneBox(on, pane);
  return u1 - u0;
}

function clientTexts(panel: Panel, job: Settled['job']): string[] {
  const { outside, display, count, courses, staves } = panel;
  const show = (length: number) => formatLength(length, display, { named: true, fractions: 'stacked' });
  const { mass } = massOf(panel);
  const weight = weightText(mass, display.unit);
  const woods = [...new Set(Object.values(panel.spec.wood).map(({ wood }) => wood.name))];
  const finish = job.finish.kind === 'none' ? 'left as it is' : `${job.finish.name}, ${job.finish.coats} coats`;
  return [
    `${count > 1 ? `${count} alike, each` : 'Outside'} ${show(outside.width)} wide, ${show(outside.height)} high, ${show(outside.depth)} deep.`,
    `${woods.join(' and ')}; ${panel.weave.name} weave of ${courses.count} courses round ${staves.count} staves.`,
    `Finish: ${finish}. Weight about ${weight}${count > 1 ? ' each' : ''}.`,
    `Wood moves: over the year the slats swell and shrink by about ${show(panel.movement.swell - panel.movement.shrink)} in all, which the top of the frame takes up.`,
  ];
}
