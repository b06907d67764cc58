import { type Panel, type RowBehaviour, sampleSlat, weaveDepth } from '@wattlewright/model';
import type { NoteTarget } from '../layout/notes.ts';
import type { Drawing, Mark } from '../mark.ts';
import { stroke } from '../mark.ts';
import { line } from '../path.ts';
import type { Extent } from '../scale.ts';
import type { View } from '../view.ts';
import { boxOfInk, dimensioned, planFacing, type StatedOptions, said, stated } from './detaildrawing.ts';
import { cutPlanes, type DetailLetter } from './detailkey.ts';
import { slatEnds } from './detailslat.ts';
import { breakLine } from './grain.ts';
import { partOf } from './partof.ts';
import type { Stretch } from './passes.ts';
import type { SectionOptions } from './weavesection.ts';
import { planView, stopBox, weaveInk } from './weavesectionink.ts';

/** From where to where a detail of the frame's left or right edge reaches into the first bay, mm along the panel. */
export function edgeStretch({ outside, stile, staves }: Panel, side: 'left' | 'right'): Stretch {
  const reach = stile.width + staves.width + Math.min(staves.bay * 0.75, stile.width * 0.8);
  return side === 'left' ? [0, reach] : [outside.width - reach, outside.width];
}

/** Real size of the detail, mm. */
export function slatEndExtent(panel: Panel): Extent {
  const [from, to] = edgeStretch(panel, 'left');
  return { width: to - from, height: panel.outside.depth };
}

/** The left end of a slat beside its stile, looking down: how far off mid-depth it lies, and the stops that hold it. */
export function slatEnd(panel: Panel, key: DetailLetter, { scale, parts = [] }: SectionOptions): Drawing {
  const { staves, stile, display, outside } = panel;
  const s = scale.ratio;
  const plan = planView(s);
  const stretch = edgeStretch(panel, 'left');
  const course = cutPlanes(panel).down.course;
  const row = panel.rows[panel.weave.rowOfCourse[course] as number] as RowBehaviour;
  const half = Math.max(outside.depth, weaveDepth(panel)) / 2;
  const along: StatedOptions = { display, along: (x) => x * s };
  const through: StatedOptions = { display, along: (z) => z * s };
  const [face, weave] = [staves.depth / 2, weaveDepth(panel) / 2];
  const ink: Mark[] = [
    ...weaveInk({ panel, parts, scale: s, stretch }),
    stroke('centre', line(plan(-3 / s, 0), plan(stretch[1] + 3 / s, 0))),
    breakLine(plan(stretch[1], -half), plan(stretch[1], half)),
  ];
  return dimensioned({
    name: `detail-${key.letter.toLowerCase()}`,
    title: `Detail ${key.letter}  ${key.title}`,
    alt: `The end of the slat of course ${course + 1} of ${panel.name} at the left stile, looking down.`,
    scale,
    // Beside all ink: a slat that is bent hard can reach past the break.
    ink: [...ink, ...planFacing([boxOfInk(ink).u1, plan(0, 0)[1]])],
    sizes: {
      above: [...stated(0, stile.width, along), ...stated(stile.width, stile.width + staves.width, along)],
      left: [
        ...stated(-weave, -face, through),
        ...stated(-face, face, through),
        ...stated(face, weave, through),
        ...stated(0, row.bend.endOffsets[0], { ...through, level: 1 }),
        ...stated(-stile.depth / 2, stile.depth / 2, { ...through, total: true, level: 2 }),
      ],
    },
    notes: notes({ panel, row, plan, stops: stopBox(panel, partOf(parts, panel, 'stop')) }),
    noteWidth: 42,
  });
}

interface NotesOf {
  readonly panel: Panel;
  readonly row: RowBehaviour;
  readonly plan: View;
  readonly stops: ReturnType<typeof stopBox>;
}

function notes({ panel, row, plan, stops }: NotesOf): NoteTarget[] {
  const { display, clear, courses, staves } = panel;
  const { bend } = row;
  const [start] = slatEnds(panel, row);
  const off = said(Math.abs(bend.endOffsets[0]), display);
  const x = start + staves.width + Math.min(staves.bay * 0.4, 15);
  const at = (place: number): NoteTarget['at'] => plan(clear.left + place, sampleSlat(bend, place).z);
  const lean = `${(Math.atan(Math.abs(bend.endSlopes[0])) * (180 / Math.PI)).toFixed(1)}°`;
  return [
    {
      at: at(start),
      text: `Square end ${off} off mid-depth, leaning ${lean}`,
      end: 'arrow',
    },
    { at: at(x), text: `Slat ${said(courses.thickness, display)} thick, long grain` },
    ...(stops
      ? [
          {
            at: plan(clear.left + stops.width * 0.7, (stops.from + stops.to) / 2),
            text: `Stop ${said(stops.to - stops.from, display)} thick, front and back`,
          },
        ]
      : []),
  ];
}
