import type { Job } from '../job/job.ts';

/** A group of cautions under one heading. */
export interface CautionGroup {
  readonly title: string;
  readonly lines: readonly string[];
}

/** A line that is said where it concerns the job. */
type Line = readonly [concerns: boolean, text: string];

function said(lines: readonly Line[]): string[] {
  return lines.flatMap(([concerns, text]) => (concerns ? [text] : []));
}

/** What the program does not know, and the care that every shop takes: those lines that concern the job. */
export function cautions(job: Job): CautionGroup[] {
  const { panels, site, finish } = job;
  const outdoors = site.where === 'outdoors';
  const details = panels.map((panel) => panel.details);
  const has = (use: (typeof details)[number]['use']) => details.some((one) => one.use === use);
  const onTrack = details.some((one) => one.use === 'divider' && one.stand === 'track');
  const atWindow = details.some((one) => one.use === 'screen' && (one.bedroom || one.glass !== undefined));
  const pool = details.some((one) => one.use === 'gate' && one.pool);
  const masonry = details.some((one) => one.use === 'screen' && one.into === 'masonry');
  const onWall = details.some((one) => one.use === 'screen' && one.mounting !== 'posts');
  const onPosts =
    has('gate') || has('guard') || details.some((one) => one.use === 'screen' && one.mounting === 'posts');
  const windy = outdoors && site.wind !== undefined;
  const dusty = panels.some(({ wood }) => Object.values(wood).some((member) => member.wood.dust));
  const fixedTo = said([
    [onWall, masonry ? 'wall and plugs' : 'what is behind it'],
    [onPosts, 'posts and what they stand on'],
    [onTrack, 'ceiling and track'],
  ]);
  const groups: readonly CautionGroup[] = [
    {
      title: 'What this packet does not know',
      lines: said([
        [
          true,
          'Your wood. Strength, stiffness and movement are averages of clear straight-grained wood; one board in three is off by more than 16 % in strength. Bend a trial slat before you cut them all.',
        ],
        [
          true,
          'Time. Wood held bent gives way a little and loses some of its spring. Steaming, soaking and glue are not counted in.',
        ],
        [
          true,
          'The joint. Don’t count on screws in end grain; corners are held square by glue, end staves and the weave.',
        ],
        [
          fixedTo.length > 0,
          `What it is fixed to: ${fixedTo.join(', ')}. Have someone who knows them say whether they hold this panel.`,
        ],
        [
          has('guard') || atWindow || pool || windy,
          'The law. Figures of model codes are told where they bear on the job; the local code and a licensed professional decide.',
        ],
        [outdoors && job.site.salt, 'The weather while you build.'],
        [
          outdoors && !job.site.salt,
          `The weather while you build, and salt air${onPosts ? ' or treated posts' : ''}: the list of hardware takes it that ${onPosts ? 'neither reaches' : 'none reaches'} the panel. Where it does, have the list made again for salt air: it then asks for A4 (316).`,
        ],
        [!outdoors, 'Heating that starts while you build: let the wood settle to the room first.'],
      ]),
    },
    {
      title: 'What is worked out in a simple way',
      lines: said([
        [true, 'The bend of the slats: staves do not give, nothing rubs, and the wood bends evenly until it breaks.'],
        [
          true,
          'Swelling: between 6 and 14 % moisture by the coefficient of the wood, beyond that by its whole shrinkage, so that a table that goes beyond does not step evenly.',
        ],
        [
          windy && details.some(({ use }) => use !== 'gate'),
          'Wind: a panel that stands free, after ASCE 7 (figures not checked against the printed page); nothing for gusts between buildings.',
        ],
        [true, 'Weight: wood alone, without hardware and finish.'],
        [has('guard'), 'The ball that passes a guard: slats are taken as stiff. A child pushes slats apart.'],
      ]),
    },
    {
      title: 'Guards',
      lines: said([
        [
          has('guard'),
          'Nothing here is a test. A guard that people may fall against is proved by test or by engineering.',
        ],
      ]),
    },
    {
      title: 'Gates',
      lines: said([
        [
          has('gate'),
          'The post moves more than the leaf: most sagging gates have a leaning post. Look at brace and screws after the first season.',
        ],
      ]),
    },
    {
      title: 'At the saw and the bench',
      lines: said([
        [true, 'Eye and ear protection; no gloves, loose sleeves or rings at a running blade.'],
        [true, 'Riving knife and guard on for every through cut. Unplug before changing a blade.'],
        [
          true,
          'Push sticks before the hand comes within a hand’s breadth of the blade; featherboards before it, never beside it.',
        ],
        [true, 'Nobody behind the saw while thin strips are ripped.'],
        [
          true,
          `Dust at its source; a fitted mask for sanding.${dusty ? ' The dust of this wood harms beyond being dust: see the findings.' : ''}`,
        ],
        [finish.kind === 'penetrating', 'Oily rags burn by themselves: spread them out or drown them.'],
      ]),
    },
  ];
  return groups.filter(({ lines }) => lines.length > 0);
}
