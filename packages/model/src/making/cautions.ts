import type { Job } from '../job/job.ts';

/** A group of cautions under one heading. */
export interface CautionGroup {
  readonly title: string;
  readonly lines: readonly string[];
}

/** What the program does not know, and the care that every shop takes: the same for every job, but for its uses. */
export function cautions(job: Job): CautionGroup[] {
  const uses = new Set(job.panels.map(({ details }) => details.use));
  const outdoors = job.site.where === 'outdoors';
  return [
    {
      title: 'What this packet does not know',
      lines: [
        'Your wood. Strength, stiffness and movement are averages of clear straight-grained wood; one board in three is off by more than 16 % in strength. Bend a trial slat before cutting them all.',
        'Time. Wood held bent creeps and loses some of its spring. Steaming, soaking and glue are not reckoned.',
        'The joint. Don’t count on screws in end grain; corners are held square by glue, end staves and the weave.',
        'What it is fixed to: walls, plugs, posts, footings and ceilings are for whoever knows them.',
        'The law. Figures of model codes are told where they bear on the job; the local code and a licensed professional decide.',
        ...(outdoors
          ? [
              'Salt air and treated posts, which want better steel than the schedule names, and the weather while you build.',
            ]
          : ['Heating that starts while you build: let the wood settle to the room first.']),
      ],
    },
    {
      title: 'What it reckons simply',
      lines: [
        'Slats: rigid staves, no friction, small slopes, linear up to the strength.',
        'Wind: a free-standing panel after ASCE 7 with constants from memory; nothing for gusts between buildings.',
        'Weight: wood alone, without hardware and finish.',
        'Largest ball: rigid slats. A child pushes slats apart.',
      ],
    },
    ...(uses.has('guard')
      ? [
          {
            title: 'Guards',
            lines: [
              'Nothing here is a test. A guard that people may fall against is proved by test or by engineering.',
            ],
          },
        ]
      : []),
    ...(uses.has('gate')
      ? [
          {
            title: 'Gates',
            lines: [
              'The post moves more than the leaf: most sagging gates have a leaning post. Look at brace and screws after the first season.',
            ],
          },
        ]
      : []),
    {
      title: 'At the saw and the bench',
      lines: [
        'Eye and ear protection; no gloves, loose sleeves or rings at a running blade.',
        'Riving knife and guard on for every through cut. Unplug before changing a blade.',
        'Push sticks before the hand comes within a hand’s breadth of the blade; featherboards before it, never beside it.',
        'Nobody behind the saw while thin strips are ripped.',
        'Dust at its source; a fitted mask for sanding. Some woods harm beyond being dust: see the findings.',
        'Oily rags burn by themselves: spread them out or drown them.',
      ],
    },
  ];
}
