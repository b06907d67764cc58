import { hasGluedEnds } from '../hardware/framejoints.ts';
import type { Panel } from '../panel/panel.ts';
import { jointFigures } from './screws.ts';
import { eachPanel, fineIn, type Making, namedOf, type StepText } from './step.ts';

/** The step of the cover strips, at the bench; absent where no panel has any. */
export function coverStripSteps(making: Making): StepText[] {
  const panels = making.panels.filter(({ cover }) => cover.height > 0);
  if (panels.length === 0) return [];
  const show = fineIn(making);
  const glued = panels.filter(hasGluedEnds);
  const how =
    glued.length === 0 ? 'pin and glue' : glued.length === panels.length ? 'glue' : 'glue, and pin where told,';
  const stops = panels.some(({ cover, clear }) => cover.length < clear.width);
  return [
    {
      title: 'Fix the cover strips at the bench',
      cautions: [],
      text: [
        `Before the top rail goes on, ${how} the cover strips under its inner edge, one on either side of the groove, ${stops ? 'between the places of the stop strips' : 'from stile to stile'}; never to a slat. Their length is that of the clear width as it came out at the dry fit. Take a shaving off their ends, so that they pass between the ${stops ? 'strips' : 'stiles'} as the rail comes down.`,
        ...(glued.length > 0
          ? [
              `${namedOf(glued, panels)}${glued.length < panels.length ? 'where' : 'Where'} a strip is held by glue alone, set it on its narrow edge against the block, lay a batten along its other edge, and clamp batten and rail together every hand’s breadth for as long as the glue says. Its ends are glued when the rail is home: run glue into the joint with the ${stops ? 'stop strips' : 'stiles'} from the face.`,
            ]
          : []),
        'Their inner faces stand clear of the top course all along, its leaning ends included. Plane a block to the distance between them and set both strips by it.',
      ],
      figures: [
        ...eachPanel(panels, 'between the two strips', ({ cover }) => show(2 * cover.face)),
        ...eachPanel(panels, 'outer face of a strip', (panel) => placeText(panel, show)),
        ...eachPanel(
          panels,
          'play between strip and top course',
          ({ cover }) => `${show(cover.face - cover.reach)} or more`,
        ),
        ...jointFigures({ ...making, panels }, 'cover strip to top rail'),
      ],
    },
  ];
}

/** How the outer faces of the strips stand to the faces of the rail. */
function placeText({ cover, rail }: Panel, show: (length: number) => string): string {
  const inset = rail.depth / 2 - cover.face - cover.thickness;
  return inset > 0.05 ? `${show(inset)} in from the face of the rail` : 'flush with the face of the rail';
}
