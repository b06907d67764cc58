import { formatLength, type MemberWood, type Panel, type Part, sideAt } from '@wattlewright/model';
import { lines } from '../layout/lines.ts';
import { ASCENT, DESCENT, LINE_STEP, TEXT } from '../layout/style.ts';
import { textWidth } from '../lettering.ts';
import type { Drawing, TextMark } from '../mark.ts';
import { write } from '../mark.ts';
import { cutName, cutPlanes, type DetailSubject, detailLetters } from './detailkey.ts';
import { printed } from './elevationsizes.ts';

/** What `panelNotes` needs to know. */
export interface PanelNotesOptions {
  /** Finish in words, such as `oil, 2 coats`; left out unless given. */
  readonly finish?: string;
  /** The panel whose sections and details hold for this one too. */
  readonly like?: Panel;
  /** Whether its section in plan is drawn all the same, for its own width. */
  readonly ownPlan?: boolean;
  /** Width of a line, mm; 70 unless given. */
  readonly width?: number;
}

/** What holds for a whole panel, in words to stand by its elevation: weave, wood, finish and the diagonals. */
export function panelNotes(panel: Panel, options: PanelNotesOptions = {}): Drawing {
  const { width = 70 } = options;
  const step = LINE_STEP * TEXT;
  const marks: TextMark[] = [];
  let v = 0;
  for (const paragraph of noteTexts(panel, options)) {
    for (const text of lines(paragraph, width)) {
      marks.push(write('note', text, [0, v + ASCENT * TEXT], { height: TEXT }));
      v += step;
    }
    v += step / 3;
  }
  const wide = Math.max(...marks.map(({ text }) => textWidth(text, TEXT)));
  return {
    name: 'panel-notes',
    title: `Notes on ${panel.name}`,
    scale: 0,
    scaleText: '',
    marks,
    bounds: { u0: 0, v0: 0, u1: wide, v1: v - step * (4 / 3) + (ASCENT + DESCENT) * TEXT },
    alt: `Weave, wood and diagonals of ${panel.name}.`,
  };
}

function noteTexts(panel: Panel, { finish, like, ownPlan }: PanelNotesOptions): string[] {
  const { weave, courses, diagonal, staves } = panel;
  const { across, down } = cutPlanes(panel);
  const fixing = detailLetters(panel).at(-1)?.letter ?? '';
  const first = weave.rows[weave.rowOfCourse[0] as number]?.[0] === 1 ? 'in front of' : 'behind';
  return [
    `Weave: ${weave.name}, ${courses.count} courses, ${staves.count} staves. The first course, at the bottom, starts ${first} the left stave.`,
    'Grey on a slat: there it bends back, behind a stave or on its way.',
    ...hangingTexts(panel),
    ...woodTexts(panel),
    ...(finish === undefined ? [] : [`Finish: ${finish}.`]),
    `Diagonals, corner to corner of the frame: ${printed(panel, diagonal).text}, both alike when it is square.`,
    ...(like === undefined
      ? []
      : [
          `Sections and details ${ownPlan ? across.letter : down.letter} to ${fixing}: as those of ${like.name}.${otherSides(panel, like)}`,
        ]),
  ];
}

/** In which of the views drawn for another panel the slats pass their stave on other sides than in this one. */
function otherSides(panel: Panel, like: Panel): string {
  const differs = (own: number, theirs: number): boolean =>
    panel.courses.bottoms.some((_, course) => sideAt(panel, course, own) !== sideAt(like, course, theirs));
  const letterOf = (subject: DetailSubject): string =>
    detailLetters(panel).find((one) => one.subject === subject)?.letter ?? '';
  const { across } = cutPlanes(panel);
  const views = [
    ...(differs(across.stave, cutPlanes(like).across.stave)
      ? [cutName(across), letterOf('stave head'), letterOf('stave foot')]
      : []),
    // The fixing shows the last stave.
    ...(differs(panel.staves.count - 1, like.staves.count - 1) ? [letterOf('fixing')] : []),
  ];
  const [last, ...before] = views.toReversed();
  if (last === undefined) return '';
  const named = before.length > 0 ? `${before.toReversed().join(', ')} and ${last}` : last;
  return ` But here slats pass the stave of ${named} on the other side than drawn there: weave by the weave chart.`;
}

/** Which way a gate hangs, and where its latch is. */
function hangingTexts({ details, display }: Panel): string[] {
  if (details.use !== 'gate') return [];
  const { hinge, hinges, swing, latch } = details;
  const height = formatLength(latch, display, { fractions: 'stacked' });
  return [`${hinges} hinges at the ${hinge}; the leaf opens ${swing}. Latch ${height} above the ground.`];
}

/** Each wood with the members made of it, in the order rail, stile, stave, slat. */
function woodTexts({ spec }: Panel): string[] {
  const named = new Map<string, string[]>();
  for (const [member, wood] of Object.entries(spec.wood) as [string, MemberWood][]) {
    const text = `${wood.wood.name}, ${gradeText(wood.grade)}`;
    named.set(text, [...(named.get(text) ?? []), `${member}s`]);
  }
  const all = [...named];
  return all.map(([text, members]) =>
    all.length === 1 ? `Wood: ${text}.` : `${capital(members.join(', '))}: ${text}.`,
  );
}

function gradeText(grade: Part['grade']): string {
  return grade === 'clear' ? 'clear' : 'sound knots allowed';
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
