import { INCH } from '../length.ts';
import type { Rule } from './rule.ts';
import { lengthText } from './words.ts';

/** Strips thinner than this are ripped with more care, mm: 1/4 in, common practice, no source. */
export const THIN_RIP: number = INCH / 4;

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
          mend: 'rip on the waste side of the blade with a stop before it, zero-clearance insert, featherboard before the blade, push block, nobody behind the saw',
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
          figure: refusal?.reason ?? 'no plan',
          limit: 'every part cut',
          mend: 'more, longer, larger or better boards in stock',
        },
      ];
    },
  },
  {
    code: 'plan-not-proven',
    reason: 'the search ended before it could show that no cheaper plan exists',
    source: 'the bound of the cutting plan',
    judge: ({ plan }) => {
      if (plan?.status !== 'within' || plan.gap <= 0) return [];
      return [
        {
          level: 'note',
          where: 'cutting plan',
          text: 'A cheaper plan may exist.',
          figure: `within ${(plan.gap * 100).toFixed(1)} % of the least any plan could cost`,
          limit: '0 %',
          mend: 'let it search longer',
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
          figure: `${without} of ${job.stock.length}`,
          limit: '0',
          mend: 'give a price for every board',
        },
      ];
    },
  },
];
