import type { Drawing, Mark, Sheet } from '../../src/mark.ts';
import { stroke, write } from '../../src/mark.ts';
import { arc, circle, curve, line, polygon, rectangle } from '../../src/path.ts';

/** One of each kind of ink, with every awkward letter, on 120 × 90 mm. */
export function sampleMarks(): Mark[] {
  return [
    stroke('wood', rectangle({ u0: 20, v0: 15, u1: 90, v1: 30 }), 'A'),
    stroke('wood-shade', rectangle({ u0: 20, v0: 30, u1: 35, v1: 60 }), 'B'),
    {
      ...stroke(
        'wood',
        polygon([
          [60, 32],
          [85, 40],
          [60, 58],
        ]),
      ),
      shade: 0.5,
    },
    stroke('edge', rectangle({ u0: 20, v0: 15, u1: 90, v1: 30 }), 'A'),
    stroke('edge', rectangle({ u0: 20, v0: 30, u1: 35, v1: 60 }), 'B'),
    stroke('hidden', line([22.5, 20], [88.123456, 20]), 'A'),
    stroke('centre', line([55, 10], [55, 70])),
    stroke('hatch', line([20, 45], [35, 30.0001])),
    stroke('edge-light', arc([70, 70], 12.5, 20, 275)),
    stroke('edge', circle([104, 70], 7.0710678)),
    stroke(
      'edge',
      curve([
        [40, 65, 0],
        [47.3, 60.1, 0.2],
        [54.6, 66.2, 0],
      ]),
    ),
    stroke('dimension', line([20, 8], [90, 8])),
    {
      ...stroke(
        'dimension',
        polygon([
          [20, 8],
          [23, 7.5],
          [23, 8.5],
        ]),
      ),
      shade: 0,
    },
    write('label', '44 13⁄16', [55, 7], { height: 2.5, anchor: 'middle' }),
    write('label', '5′ 2 3⁄8″ ±½', [16, 45], { height: 2.5, angle: 90, anchor: 'middle' }),
    write('title', 'AV Staves & <rails> "Tern"', [20, 82], { height: 5 }),
    write('note', 'Θύρα, щит, office Ø 6 × 20° → 🌲', [118, 88], { height: 3.5, anchor: 'end' }),
    write('faint', '</text><script>alert(1)</script>', [40, 34], { height: 2.5, of: 'A' }),
  ];
}

/** The sample as a drawing. */
export function sampleDrawing(): Drawing {
  return {
    name: 'sample',
    title: 'Sample & <title>',
    scale: 0.1,
    scaleText: '1:10',
    marks: sampleMarks(),
    bounds: { u0: 0, v0: 0, u1: 120, v1: 90 },
    alt: 'One of each kind of ink.',
  };
}

/** The sample on a sheet with a border. */
export function sampleSheet(more: Partial<Sheet> = {}): Sheet {
  const { name, title, alt, marks } = sampleDrawing();
  return {
    width: 130,
    height: 100,
    paper: 'none',
    title: 'Sample sheet',
    label: '1',
    figures: [{ name, title, alt, marks }],
    furniture: [
      stroke('frame', rectangle({ u0: 2, v0: 2, u1: 128, v1: 98 })),
      write('note', 'Sheet 1 of 1', [126, 96], { height: 2.5, anchor: 'end' }),
    ],
    inside: { u0: 2, v0: 2, u1: 128, v1: 98 },
    chains: [],
    fullSize: false,
    ...more,
  };
}
