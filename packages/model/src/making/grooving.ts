import { INCH } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { eachPanel, fineIn, lengthIn, listed, type Making, roundIn, type StepText } from './step.ts';

/** Shortest piece that is run over a cutter: 12 in or 300 mm, common practice, no source. */
const SHORTEST_GROOVED = 300;

export function grooves(making: Making): StepText {
  const { panels } = making;
  const show = fineIn(making);
  const size = lengthIn(making);
  const short = panels.filter(({ rail }) => rail.length < SHORTEST_GROOVED);
  return {
    title: 'Cut the grooves in the rails',
    cautions: [
      'Measure the printed check bar of every stick and template before any of them is used: a page printed at the wrong size is wrong everywhere.',
      `Groove nothing shorter than ${roundIn(making, SHORTEST_GROOVED, '12')} over a cutter. Press the rail to fence and table by featherboards before and over the cutter; hands never over it. Sneak up on the depth in two or three passes. Never lower a rail onto a turning saw blade or dado set.`,
    ],
    text: [
      'In the middle of the inner edge of both rails, with a router and straight bit, with a dado set, or with a saw blade in as many passes beside one another as it takes until the width is out. Cut from both faces with one fence setting, so that the groove is centred.',
      ...(short.length > 0
        ? [
            `The rails of ${short.map(({ name }) => name).join(', ')} are too short for that: groove both as one piece, end to end, and crosscut them afterwards.`,
          ]
        : []),
      'The groove runs from stile to stile and stops there: the end staves stand against the stiles. The rail end template shows its end. With the router, clamp a stop at either end and square the ends with a chisel. With saw or dado set, run it through and glue plugs of the same wood into the ends, over the stiles; the corner screws pass along their edges, so let the glue harden before they are bored.',
      'Try the width with a stave: it slides in by hand without force and does not twist.',
    ],
    figures: [
      ...eachPanel(panels, 'groove depth', ({ groove }) => show(groove.depth)),
      ...eachPanel(panels, 'groove width', ({ groove }) => `${show(groove.width)}, ${playText(groove, show)}`),
      ...eachPanel(panels, 'from each face to the groove', ({ groove, rail }) => show((rail.depth - groove.width) / 2)),
      ...eachPanel(panels, 'groove, from the end of the rail', ({ stile }) => size(stile.width)),
      ...eachPanel(panels, 'groove, its length', ({ clear }) => size(clear.width)),
    ],
  };
}

function playText({ clearance }: Panel['groove'], show: (length: number) => string): string {
  return clearance > 0.05 ? `${show(clearance)} more than the stave` : 'as the stave';
}

/** Arris taken off a stave, mm: 1/32 in or 1 mm; common practice, no source. */
const ARRIS = { in: INCH / 32, mm: 1 } as const;

/** Sanding and easing, before anything is marked on the faces that are sanded. */
export function ease(making: Making): StepText {
  const { panels, parts, job } = making;
  const fine = fineIn(making);
  const film = job.finish.kind === 'film';
  const has = (role: (typeof parts)[number]['role']) => parts.some((part) => part.role === role);
  const strips = [...(has('cover strip') ? ['the cover strips'] : []), ...(has('stop') ? ['the stop strips'] : [])];
  return {
    title: 'Ease and sand the parts',
    cautions: [],
    text: [
      `Now, before anything is marked on them, and since no paper gets between once they are woven: sand ${listed(['the staves', ...strips, film ? 'all faces of the frame' : 'the inner faces of the frame'])}.${film ? '' : ' Its outer faces follow when it is together.'} The slats were smoothed before they were measured: take no more off them.`,
      'Ease the arrises of the staves as told below: a slat bears on the arris of a stave, and a sharp one marks it. Leave the ends of the stiles, the edges of the grooves and the faces that are glued as the saw left them.',
      ...(has('stop') ? ['Ease the inner arris of every stop strip, where slats lean on it.'] : []),
    ],
    figures: eachPanel(panels, 'arris of a stave, eased by about', ({ staves }) =>
      fine(Math.min(ARRIS[job.display.unit], Math.min(staves.width, staves.depth) / 4)),
    ),
  };
}
