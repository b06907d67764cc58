import type { Job } from '../job/job.ts';
import type { Marks } from '../length.ts';
import type { Panel } from '../panel/panel.ts';
import { membersOf } from '../parts/parts.ts';

/** Finish for every panel of a kind, its count in. Area in m², volume in litres. */
export interface FinishAmount {
  readonly area: number;
  readonly coats: number;
  readonly litresPerCoat: number;
  readonly litres: number;
  readonly quartsPerCoat: number;
  readonly quarts: number;
  /** m² that a litre covers in one coat. */
  readonly spread: number;
  readonly when: string;
}

/** Square metres a litre covers in one coat on sawn wood; common practice, no source: the tin knows better. */
const SPREAD = { penetrating: 8, film: 10, none: 1 } as const;

/** One US liquid quart in litres: 57.75 cubic inches, exact. */
export const QUART: number = (57.75 * 25.4 ** 3) / 1e6;

/** Area of all faces and ends of the pieces of one panel, m². */
export function finishArea(panel: Panel): number {
  const area = membersOf(panel).reduce((sum, { count, length, section: [a, b] }) => {
    return sum + count * 2 * (length * a + length * b + a * b);
  }, 0);
  return area / 1e6;
}

/** An amount of finish as it is told: to the next tenth of a litre, or of a US quart in inch work, so that told ones add up; litres. */
export function toldLitres(litres: number, unit: Marks['unit']): number {
  const measure = unit === 'in' ? QUART : 1;
  return (Math.ceil((litres / measure) * 10 - 1e-9) / 10) * measure;
}

/** Finish that the panels of one kind ask for, and when it goes on. */
export function finishFor(panel: Panel, job: Pick<Job, 'finish'>): FinishAmount {
  const { kind, coats } = job.finish;
  const area = finishArea(panel) * panel.count;
  const litresPerCoat = kind === 'none' ? 0 : area / SPREAD[kind];
  const litres = litresPerCoat * coats;
  return {
    area,
    coats,
    litresPerCoat,
    litres,
    quartsPerCoat: litresPerCoat / QUART,
    quarts: litres / QUART,
    spread: SPREAD[kind],
    when: WHEN[kind],
  };
}

const WHEN = {
  penetrating:
    'after weaving: thin oil or stain reaches between the slats; end grain, grooves and holes had theirs before',
  film: 'before weaving: varnish and paint bridge the joints and crack when the slats move; keep it off glued faces',
  none: 'no finish: outdoors the wood greys and swells more',
} as const;
