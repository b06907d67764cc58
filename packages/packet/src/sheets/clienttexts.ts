import { type Block, fractions } from '@wattlewright/drafting';
import {
  dividerDetails,
  type Finding,
  fineMarks,
  formatLength,
  massOf,
  overallOf,
  type Panel,
  roundToMark,
  type Settled,
  screenDetails,
} from '@wattlewright/model';

import { weightText } from './amounts.ts';

/** Stops that concern a panel, or everything: those that name no panel of the job. */
export function stopsOf(panel: Panel, { findings, panels }: Pick<Settled, 'findings' | 'panels'>): Finding[] {
  const names = new Set(panels.map(({ name }) => name));
  return findings.filter(({ level, where }) => {
    const about = where.split(', ').filter((name) => names.has(name));
    return level === 'stop' && (about.length === 0 || about.includes(panel.name));
  });
}

/** What the client is told beside the picture: what stands against approval first, then size, wood, weight and use. */
export function clientBlocks(panel: Panel, settled: Settled): Block[] {
  const stops = stopsOf(panel, settled);
  const points: Block[] =
    stops.length === 0
      ? []
      : [
          { kind: 'stop', text: `STOP Not for approval yet: ${openText(stops.length)}.`, keep: true },
          ...stops.map(
            ({ where, text }): Block => ({
              kind: 'bullet',
              // A panel's own sheet need not name it.
              text: fractions(where === panel.name || where === '' ? text : `${where}: ${text}`),
            }),
          ),
        ];
  return [
    ...points,
    ...[...sizeTexts(panel), ...woodTexts(panel, settled.job), ...useTexts(panel), movementText(panel)].map(
      (text): Block => ({ kind: 'paragraph', text: fractions(text) }),
    ),
  ];
}

/** `one point to settle`, `3 points to settle`. */
function openText(count: number): string {
  return `${count === 1 ? 'one point' : `${count} points`} to settle`;
}

function shower({ display }: Panel): (length: number) => string {
  return (length) => formatLength(length, display, { named: true });
}

function sizeTexts(panel: Panel): string[] {
  const { outside, count } = panel;
  const show = shower(panel);
  const { width, height, depth, by } = overallOf(panel);
  const alike = count > 1 ? `${count} alike, each ` : '';
  const sides = `${show(width)} wide, ${show(height)} high, ${show(depth)} deep`;
  if (by.length === 0) return [`${alike === '' ? 'Outside ' : alike}${sides}.`];
  const frame = `${show(outside.width)} wide, ${show(outside.height)} high, ${show(outside.depth)} deep`;
  return [
    `${alike === '' ? 'Over all ' : `${alike}over all `}${sides}, with ${by.join(' and ')}. The frame alone is ${frame}.`,
  ];
}

function woodTexts(panel: Panel, { finish }: Settled['job']): string[] {
  const { courses, staves, weave, count, display } = panel;
  const woods = [...new Set(Object.values(panel.spec.wood).map(({ wood }) => wood.name))].join(' and ');
  const woven = weave.name === 'as given' ? 'your own weave' : `${weave.name} weave`;
  const put = finish.kind === 'none' ? 'left as it is' : `${finish.name}, ${finish.coats} coats`;
  const weight = weightText(massOf(panel).mass, display.unit);
  return [
    `${woods.charAt(0).toUpperCase()}${woods.slice(1)}; ${woven} of ${courses.count} courses round ${staves.count} staves. Grey on a slat: there it bends back.`,
    `Finish: ${put}. Weight about ${weight}${count > 1 ? ' each' : ''}, without hardware.`,
  ];
}

/** Where the wood's movement goes: into the gaps between courses, or into the room over them. */
function movementText(panel: Panel): string {
  const { movement, courses, cover, display } = panel;
  // To the fine mark, so that the rise and the fall make the whole.
  const show = (length: number): string => formatLength(length, fineMarks(display), { named: true });
  const { swell, shrink, driest, wettest, dryOpening } = movement;
  // The sum of what is shown of its parts.
  const { mark } = fineMarks(display);
  const grows = roundToMark(swell, mark) + roundToMark(-shrink, mark);
  const all = `Wood moves with the seasons: from the driest (${driest} %) to the wettest (${wettest} %) the slats together grow ${show(grows)} taller.`;
  if (courses.gap > 0) return `${all} The open gaps between them narrow and widen by as much.`;
  const over =
    cover.height > 0
      ? `the strips under the top rail hide the gap of up to ${show(dryOpening)} over them`
      : `a gap of up to ${show(Math.max(0, dryOpening))} shows over them`;
  return `${all} From the day it is built they rise by up to ${show(Math.max(0, swell))} into the room left at the top, and sink by up to ${show(Math.max(0, -shrink))}; ${over}.`;
}

/** How it hangs, opens, stands or is fixed. */
function useTexts(panel: Panel): string[] {
  const { details } = panel;
  const show = shower(panel);
  switch (details.use) {
    case 'gate': {
      const { hinge, swing, brace, latch } = details;
      const braced = brace.kind === 'none' ? 'No brace.' : `A ${brace.kind} at the back braces it.`;
      return [
        `A gate: hinges at the ${hinge} as drawn, from the front; opens ${swing}; latch ${show(latch)} above the ground. ${braced}`,
      ];
    }
    case 'divider': {
      const { faces, tipping } = dividerDetails(panel);
      const stands = tipping
        ? `Stands on feet: a push of ${Math.round(tipping.push / 9.81)} kg by hand ${show(tipping.at)} up tips it.`
        : 'Hangs on a track.';
      const front =
        faces === 'alike' || faces === 'alike but shifted'
          ? 'Both sides look alike.'
          : `Drawn from the front; from behind the pattern ${faces === 'mirrored' ? 'runs the other way' : 'is another'}: say which side is the front.`;
      return [`${stands} ${front}`];
    }
    case 'guard':
      return [
        details.cap
          ? `A guard: fills in below its own cap rail, ${show(details.floorGap)} over the floor. It is not a tested guard; a handrail, where one is wanted, and the posts are not part of it.`
          : `A guard: fills in under a handrail, ${show(details.floorGap)} over the floor. It is not a tested guard, and handrail and posts are not part of it.`,
      ];
    case 'screen': {
      const { standoff, mounting } = screenDetails(panel);
      if (details.bedroom)
        return ['It covers an escape window, so it is not screwed fast: how it is to open is still to be settled.'];
      const fixed =
        mounting === 'posts'
          ? 'Fixed with brackets between posts.'
          : standoff > 0
            ? `Fixed on blocks, ${show(standoff)} off what is behind it.`
            : 'Screwed to what is behind it.';
      return [
        `${fixed} It does not open.`,
        ...(details.glass === undefined
          ? []
          : [
              'It covers a window: say before it is made which way the window opens, and whether anyone may need it as an escape. If so, it has to be hung another way.',
            ]),
      ];
    }
  }
}
