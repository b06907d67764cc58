import type { RefusalReason } from '../cutting/plan.ts';
import { INCH } from '../length.ts';
import type { Rule } from './rule.ts';
import { lengthText } from './words.ts';

/**
 * Strips thinner than this, mm, are ripped against a stop on the free side of the blade, never between blade and fence:
 * 3/8 in, common practice, no source.
 */
export const THIN_RIP: number = (3 / 8) * INCH;

/** What the stock lacks, by the test that refused it. */
const REFUSED: Readonly<Record<RefusalReason, string>> = {
  input: 'figures that no saw can follow',
  size: 'more pieces or sizes than are planned at once',
  species: 'no board of that wood',
  grade: 'no board of that grade',
  section: 'no board thick and wide enough',
  length: 'no board long enough',
  minRip: 'no board that may be ripped to it',
  supply: 'too few boards',
};

/** Rules on sawing and on the cutting plan. */
export const cuttingRules: readonly Rule[] = [
  {
    code: 'thin-rips',
    reason: 'a thin strip between blade and fence binds, shatters and is thrown back at whoever stands there',
    source: 'common practice, no source',
    judge: ({ parts, job }) => {
      const thin = parts.filter(({ thickness }) => thickness < THIN_RIP - 1e-9);
      if (thin.length === 0) return [];
      const thinnest = Math.min(...thin.map(({ thickness }) => thickness));
      return [
        {
          level: 'caution',
          where: `parts ${thin.map(({ letter }) => letter).join(', ')}`,
          text: 'Thin strips are ripped.',
          figure: lengthText(thinnest, job.display),
          limit: lengthText(THIN_RIP, job.display),
          mend: 'let the strip fall on the free side of the blade against a stop set before it, the board between fence and blade and the fence moved up for each strip; zero-clearance insert, featherboard before the blade, push block, nobody behind the saw',
        },
      ];
    },
  },
  {
    code: 'small-parts',
    reason: 'a short piece turns on the saw table and cannot be held',
    source: 'common practice, no source; the shop’s own shortest rip',
    judge: ({ parts, job }) => {
      const { shortestRip } = job.saw;
      const short = parts.filter(({ length }) => length < shortestRip - 1e-9);
      if (short.length === 0) return [];
      return [
        {
          level: 'caution',
          where: `parts ${short.map(({ letter }) => letter).join(', ')}`,
          text: 'Some parts are shorter than the shortest piece that may be ripped.',
          figure: lengthText(Math.min(...short.map(({ length }) => length)), job.display),
          limit: lengthText(shortestRip, job.display),
          mend: 'rip a long stick first and crosscut it last, against a stop block clear of the blade',
        },
      ];
    },
  },
  {
    code: 'plan-impossible',
    reason: 'the boards of the job cannot give every part',
    source: 'the cutting plan',
    judge: ({ plan, parts }) => {
      if (plan?.status !== 'impossible') return [];
      const { refusal } = plan;
      const part = parts.find(({ letter }) => letter === refusal?.part);
      return [
        {
          level: 'stop',
          where: part ? `${part.letter}, ${part.name}` : 'stock',
          text: refusal?.text ?? 'No plan cuts every part from these boards.',
          figure: REFUSED[refusal?.reason ?? 'supply'],
          limit: 'every part cut',
          mend: 'more, longer, larger or better boards in stock',
        },
      ];
    },
  },
  {
    code: 'plan-not-proven',
    reason: 'the search ended before it could show that no plan costs less',
    source: 'the bound of the cutting plan',
    judge: ({ plan }) => {
      if (plan?.status !== 'within' || plan.gap <= 0) return [];
      return [
        {
          level: 'note',
          where: 'cutting plan',
          text: `A cheaper plan may exist; this one is at most ${(plan.gap * 100).toFixed(1)} % over the least that any plan could cost.`,
          figure: `at most ${(plan.gap * 100).toFixed(1)} % over that least cost`,
          limit: '0 %',
          mend: 'let it search longer, or buy as planned',
        },
      ];
    },
  },
  {
    code: 'no-prices',
    reason: 'without prices the plan uses the least wood, which need not cost the least',
    source: 'the job',
    judge: ({ job }) => {
      const without = job.stock.filter(({ price }) => price === undefined).length;
      if (without === 0) return [];
      return [
        {
          level: 'note',
          where: 'stock',
          text: 'Some boards have no price, so the plan uses the least wood.',
          figure: `${without} of ${job.stock.length} boards without a price`,
          limit: 'none',
          mend: 'give a price for every board',
        },
      ];
    },
  },
];
