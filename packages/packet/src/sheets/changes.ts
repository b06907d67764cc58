import { type Block, type Drawing, fractions, type Layout, prosePages, tablePages } from '@wattlewright/drafting';
import { fineMarks, formatLength, type Job, type Panel, type Settled } from '@wattlewright/model';

import { type Page, sheetsOf, textRoom } from './page.ts';

/** What the measured slats changed, in sentences and planned against now; nothing when nothing was measured. */
export function changeSheets({ panels, job }: Settled, page: Page): Layout[] {
  return panels.flatMap((panel) =>
    panel.asBuilt ? sheetsOf(changeDrawings(panel, job, page), page.text, page, `${panel.name}: what changed`) : [],
  );
}

function changeDrawings(panel: Panel, { display }: Job, page: Page): Drawing[] {
  const room = textRoom(page.text);
  const show = (length: number) => formatLength(length, fineMarks(display), { fractions: 'stacked' });
  const changes = panel.asBuilt?.changes ?? [];
  const isChanged = ({ planned, now }: (typeof changes)[number]) => show(planned) !== show(now);
  const kept = changes.filter((change) => !isChanged(change));
  const blocks: Block[] = [
    ...sentences(panel).map((text): Block => ({ kind: 'bullet', text: fractions(text) })),
    ...(kept.length > 0
      ? [
          {
            kind: 'bullet' as const,
            text: `As planned: ${kept.map(({ what, now }) => `${what} ${show(now)}`).join(', ')}.`,
          },
        ]
      : []),
  ];
  return [
    ...prosePages({
      name: 'as-measured',
      title: `${panel.name}, as measured`,
      alt: `What was measured of ${panel.name}, and what follows from it.`,
      blocks,
      width: Math.min(room.width, 180),
      height: room.height,
    }),
    ...tablePages({
      name: 'changes',
      title: `What the measured slats changed (${display.unit})`,
      alt: `Planned and corrected sizes of ${panel.name}.`,
      columns: [
        { title: 'Size' },
        { title: 'Planned', align: 'right' },
        { title: 'Now', align: 'right' },
        { title: 'Change', align: 'right' },
      ],
      rows: changes
        .filter(isChanged)
        .map(({ what, planned, now }) => [what, show(planned), show(now), signed(now - planned, show)]),
      width: Math.min(room.width, 180),
      height: room.height,
    }),
  ];
}

/** What was measured, by which rule the sizes follow, and what to do with the sheets. */
function sentences({ asBuilt, courses, movement, display, spec }: Panel): string[] {
  const show = (length: number) => formatLength(length, fineMarks(display), { named: true });
  const size = (what: string) => asBuilt?.changes.find((change) => change.what === what);
  const room = size('room over the stack');
  const stile = size('stile length');
  const grown = (stile?.now ?? 0) - (stile?.planned ?? 0);
  const broken = asBuilt?.broken ?? 0;
  const rule =
    Math.abs(grown) < 0.05
      ? spec.fit.vary === 'gaps'
        ? `The frame stays as planned: the gaps take up the difference, ${show(courses.gap)} each now.`
        : `The frame stays as planned: the room over the stack takes up the difference. It was ${show(room?.planned ?? 0)} and is ${show(courses.allowance)} now; ${show(movement.needed)} are needed to swell.`
      : `The room over the stack is kept at what it needs, ${show(courses.allowance)}, so stiles, staves and the outside height are ${show(Math.abs(grown))} ${grown > 0 ? 'more' : 'less'} than planned.`;
  return [
    `Measured: ${courses.count} slats make ${show(courses.count * courses.height)}, each ${show(courses.thickness)} thick${broken > 0 ? `; ${broken} ${broken === 1 ? 'is' : 'are'} broken` : ''}.`,
    rule,
    'Shopping list and cut sheets hold only what is still to be cut. Slats and rails are cut already.',
    'Work by these sheets and sticks from now on, and throw those printed before the measuring away.',
  ];
}

function signed(change: number, show: (length: number) => string): string {
  return `${change > 0 ? '+' : '−'}${show(Math.abs(change))}`;
}
