import type { GateUse, ScrewRow } from '@wattlewright/model';
import type { Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { circle, rectangle } from '../path.ts';
import { type StatedOptions, said, stated } from './detaildrawing.ts';
import { type FixingInk, type FixingPlace, frameOf, POST_SHOWN, postFace } from './detailfixing.ts';
import { screwName, screwSide, screwsOf } from './detailscrew.ts';
import { planBox } from './weavesectionink.ts';

/** Hinge plates as drawn, mm: thickness as for the screw schedule's; knuckle radius common practice, no source. */
const HINGE = { plate: 2.5, knuckle: 5 } as const;

/** The hinge of a gate: a plate on the stile's edge, one on the post, the pin at the face that the gate swings to. */
export function hingeFixing(place: FixingPlace, gate: GateUse): FixingInk {
  const { panel, plan, scale } = place;
  const { stile, display, outside } = panel;
  const { edge, out } = frameOf(place);
  const post = edge + out * gate.clear.hinge;
  const way = gate.swing === 'towards the front' ? 1 : -1;
  const pin: readonly [number, number] = [(edge + post) / 2, way * (stile.depth / 2 + HINGE.knuckle)];
  const plate = Math.min(HINGE.plate, gate.clear.hinge / 2);
  const plates = [
    [edge, edge + out * plate],
    [post - out * plate, post],
  ] as const;
  const screws: ScrewRow | undefined = screwsOf(panel, 'hinge to stile');
  const across: StatedOptions = { display, along: (x) => plan(x, 0)[0] };
  const half = outside.depth / 2 + 6;
  return {
    marks: [
      ...postFace(plan, post, post + out * POST_SHOWN, [-half, half]),
      ...plates.flatMap(([a, b]): Mark[] => {
        const box = rectangle(planBox(plan, [a, b], [-way * stile.depth * 0.35, way * (stile.depth / 2)]));
        return [{ ...stroke('edge-light', box), shade: 0.55 }, stroke('edge-light', box)];
      }),
      stroke('paper', circle(plan(...pin), HINGE.knuckle * scale)),
      stroke('edge-light', circle(plan(...pin), HINGE.knuckle * scale)),
      stroke('edge-light', circle(plan(...pin), HINGE.knuckle * 0.45 * scale)),
      ...(screws
        ? ([1, -1] as const).flatMap((z) =>
            screwSide(screws, { from: plan(edge, (z * stile.depth) / 6), way: [-out, 0], scale }),
          )
        : []),
    ],
    notes: [
      {
        at: plan(post + out * POST_SHOWN * 0.6, 0),
        text: `Hinge post, ${said(gate.clear.hinge, display)} from the leaf; latch post ${said(gate.clear.latch, display)}`,
      },
      {
        at: plan(...pin),
        text: `Hinge pin: the leaf swings ${gate.swing}. Heights of the hinges: back elevation`,
      },
      ...(screws
        ? [
            {
              at: plan(edge - out * stile.width * 0.3, stile.depth / 6),
              text: `Screws ${screwName(screws)} through the hinge plate`,
            },
          ]
        : []),
    ],
    along: stated(edge, post, across),
    through: [],
  };
}
