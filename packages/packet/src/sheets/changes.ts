import { type Block, type Drawing, fractions, type Layout, prosePages, tablePages } from '@wattlewright/drafting';
import {
  fineMarks,
  formatLength,
  type Job,
  type Panel,
  type Part,
  partsToCut,
  type Settled,
  screwSchedule,
} from '@wattlewright/model';

import { type Page, sheetsOf, textRoom } from './page.ts';

/** What the measured slats changed, in sentences and planned against now; nothing when nothing was measured. */
export function changeSheets({ panels, parts, job }: Settled, page: Page): Layout[] {
  return panels.flatMap((panel) =>
    panel.asBuilt
      ? sheetsOf(changeDrawings(panel, parts, job, page), page.text, page, `${panel.name}: what changed`)
      : [],
  );
}

function changeDrawings(panel: Panel, parts: readonly Part[], { display }: Job, page: Page): Drawing[] {
  const room = textRoom(page.text);
  const show = (length: number) => formatLength(length, fineMarks(display), { fractions: 'stacked' });
  const changes = panel.asBuilt?.changes ?? [];
  const isChanged = ({ planned, now }: (typeof changes)[number]) => show(planned) !== show(now);
  const kept = changes.filter((change) => !isChanged(change));
  const blocks: Block[] = [
    ...[...sentences(panel), ...inHand(panel, parts), ...moved(panel), LAST].map(
      (text): Block => ({ kind: 'bullet', text: fractions(text) }),
    ),
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
  ];
}

const LAST =
  'Work by these sheets and sticks from now on, and throw those printed before the measuring away. Marks and holes made by them already are checked against these first.';

/** What of the panel's parts is there, what is cut anew and why. */
function inHand({ name, asBuilt }: Panel, parts: readonly Part[]): string[] {
  const own = parts.filter(({ where }) => where.some(({ panel }) => panel === name));
  const called = ({ letter, name: part }: Part) => `${letter} (${part})`;
  const there = own.filter(({ inHand: cut = 0 }) => cut > 0);
  const isUncut = ({ role }: Part) => asBuilt?.uncut.some((word) => word === role || `${role} strip` === word);
  const outgrown = own.filter((part) => part.role !== 'slat' && !isIn(part, name) && !isUncut(part));
  const cut = partsToCut(own);
  const pieces = ({ count, spare }: Part) =>
    [count > 0 ? `${count}` : '', spare > 0 ? `${spare} spare` : ''].filter(Boolean).join(' and ');
  return [
    ...(there.length > 0 ? [`Taken to be in hand, cut with the slats: ${there.map(called).join(', ')}.`] : []),
    ...(outgrown.length > 0
      ? [`Larger now than they were cut, and so cut anew: ${outgrown.map(called).join(', ')}.`]
      : []),
    cut.length > 0
      ? `Still to be cut, and all that shopping list and cut sheets hold of this panel: ${cut.map((part) => `${called(part)} ${pieces(part)}`).join(', ')}.`
      : 'Nothing is left to be cut from boards for this panel.',
  ];
}

function isIn({ where }: Part, name: string): boolean {
  return where.some(({ panel, inHand: cut = 0 }) => panel === name && cut > 0);
}

/** What is not a size of a part: where screws stand, and how hard the slats are bent. */
function moved(panel: Panel): string[] {
  const planned = panel.asBuilt?.planned;
  if (!planned) return [];
  const before = screwSchedule(planned);
  const joints = screwSchedule(panel).filter(({ joint, where }) =>
    before.some((row) => row.joint === joint && row.where !== where),
  );
  const use = ({ rows }: Panel) => Math.round(100 * Math.max(...rows.map(({ bend }) => bend.use)));
  return [
    ...(joints.length > 0
      ? [
          `Screws that stand elsewhere now, as the list of screws and the sticks have them: ${joints.map(({ joint }) => joint).join(', ')}.`,
        ]
      : []),
    ...(use(planned) === use(panel)
      ? []
      : [`Bending takes ${use(panel)} % of the slats’ strength; planned ${use(planned)} %.`]),
  ];
}

function signed(change: number, show: (length: number) => string): string {
  return `${change > 0 ? '+' : '−'}${show(Math.abs(change))}`;
}
