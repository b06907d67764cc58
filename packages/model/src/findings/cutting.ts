import type { RefusalReason } from '../cutting/plan.ts';
import { gapPercent } from '../cutting/plantext.ts';
import type { Job } from '../job/job.ts';
import { fineMarks, formatLength, INCH } from '../length.ts';
import { partsToCut } from '../parts/inhand.ts';
import type { Part } from '../parts/part.ts';
import { woodNames } from '../wood/species.ts';
import type { Rule } from './rule.ts';
import { sentence, unlikeLengths } from './words.ts';

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

/** Section and length of a part with their unit. */
function sizeText({ thickness, width, length }: Part, { display }: Job): string {
  const show = (size: number) => formatLength(size, fineMarks(display));
  return `${show(thickness)} × ${show(width)} × ${show(length)} ${display.unit}`;
}

/** `part F`, `parts D, E`. */
function lettersText(parts: readonly Part[]): string {
  return `part${parts.length > 1 ? 's' : ''} ${parts.map(({ letter }) => letter).join(', ')}`;
}

/** `A`, `A and B`, `A, B and C`. */
function listed(words: readonly string[]): string {
  return words.length > 1 ? `${words.slice(0, -1).join(', ')} and ${words.at(-1)}` : words.join('');
}

function woodText({ wood, grade }: Part): string {
  return `${grade === 'clear' ? 'clear ' : ''}${wood}`;
}

/** Rules on sawing and on the cutting plan. */
export const cuttingRules: readonly Rule[] = [
  {
    code: 'thin-rips',
    reason: 'a thin strip between blade and fence binds, shatters and is thrown back at whoever stands there',
    source: 'common practice, no source',
    judge: ({ parts, job }) => {
      const thin = partsToCut(parts).filter(({ thickness }) => thickness < THIN_RIP - 1e-9);
      if (thin.length === 0) return [];
      const thinnest = Math.min(...thin.map(({ thickness }) => thickness));
      const [figure, limit] = unlikeLengths(thinnest, THIN_RIP, job.display);
      return [
        {
          level: 'caution',
          where: lettersText(thin),
          text: 'Thin strips are ripped.',
          figure,
          limit,
          judged: (found, from) => `The thinnest is ${found}; take this care with everything thinner than ${from}`,
          mend: 'let the strip fall on the free side of the blade against a stop set before it, the board between fence and blade and the fence moved up for each strip; zero-clearance insert, featherboard before the blade, push block, nobody behind the saw; between blade and fence runs only what the tables of settings mark in their notes: a thin piece that lies flat, the gap under the fence closed and a featherboard to hold it down, and the last strip of a piece, taped to a straight scrap that carries it past the blade',
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
      const short = partsToCut(parts).filter(({ length }) => length < shortestRip - 1e-9);
      if (short.length === 0) return [];
      const [figure, limit] = unlikeLengths(Math.min(...short.map(({ length }) => length)), shortestRip, job.display);
      return [
        {
          level: 'caution',
          where: lettersText(short),
          text: 'Some parts are shorter than the shortest piece that may be ripped.',
          figure,
          limit,
          judged: (found, least) => `The shortest is ${found} long; nothing under ${least} is ripped`,
          mend: 'rip a long stick first and crosscut it last, clamped to the mitre fence or to a longer carrier, against a stop block clear of the blade',
        },
      ];
    },
  },
  {
    code: 'plan-impossible',
    reason: 'the boards of the job cannot give every part',
    source: 'the cutting plan',
    judge: ({ plan, parts, job }) => {
      if (plan?.status !== 'impossible') return [];
      const { refusal } = plan;
      const short = new Set(refusal?.short?.map(({ part }) => part) ?? []);
      const left = parts.filter(
        ({ letter }) => letter === refusal?.part || short.has(letter) || refusal?.text.includes(`part ${letter}, `),
      );
      const list = listed(
        [...new Set(left.map(({ name }) => name))].map(
          (name) => `${listed(left.filter((part) => part.name === name).map(({ letter }) => letter))} (${name})`,
        ),
      );
      return [
        {
          level: 'stop',
          where: left.length > 0 ? lettersText(left) : 'stock',
          text:
            left.length > 0
              ? `Part${left.length > 1 ? 's' : ''} ${list} cannot be cut from the boards of the job.`
              : 'No plan cuts every part from these boards.',
          figure:
            left.length > 0 ? `${left.length} of ${parts.length} parts left out` : REFUSED[refusal?.reason ?? 'supply'],
          limit: 'every part cut',
          judged: () =>
            [
              ...left.map((part) => `${part.letter} is ${sizeText(part, job)}, of ${woodText(part)}`),
              refusal?.text.replaceAll('; part ', '. Part ') ?? 'Some part is left over',
            ]
              .map(sentence)
              .join(' '),
          mend: `${left.length > 0 ? 'add the boards that are named here to those of the job, with room to square and saw them' : 'more, longer, larger or better boards'}; then make the packet again before anything is cut`,
          field: 'stock',
        },
      ];
    },
  },
  {
    code: 'plan-not-proven',
    reason: 'the search for one ended before it could show that there is none',
    source: 'the bound of the cutting plan',
    judge: ({ plan }) => {
      if (plan?.status !== 'within' || plan.gap <= 0) return [];
      return [
        {
          level: 'note',
          where: 'cutting plan',
          text:
            plan.costIs === 'wood'
              ? 'A way to cut the boards that takes less wood may exist.'
              : 'A cheaper way to cut the boards may exist.',
          figure: gapPercent(plan.gap),
          limit: '0 %',
          judged: (found) =>
            `This one is at most ${found} over the least that any could ${plan.costIs === 'wood' ? 'take' : 'cost'}`,
          mend: 'buy and cut as planned',
        },
      ];
    },
  },
  {
    code: 'no-prices',
    reason: 'the least wood need not cost the least',
    source: 'the job',
    judge: ({ job }) => {
      const without = job.stock.filter(({ price }) => price === undefined).length;
      if (without === 0) return [];
      return [
        {
          level: 'note',
          where: 'stock',
          text: 'Prices are missing, so the plan uses the least wood.',
          figure: `${without} of ${job.stock.length} kinds of board`,
          limit: 'none',
          judged: (found) => `${found} have no price`,
          mend: 'give a price for every board',
          field: 'stock.price',
        },
      ];
    },
  },
  {
    code: 'board-named-otherwise',
    reason: 'weight, strength, swelling and decay are those of the wood that the board counts as',
    source: 'the names of the boards',
    judge: ({ job }) => {
      const odd = [...job.stock, ...job.offcuts].flatMap(({ name, wood }) => {
        const says = woodInName(name);
        return says === undefined || wood.toLowerCase().includes(says) ? [] : [{ name, says, wood }];
      });
      const [first] = odd;
      if (first === undefined) return [];
      return [
        {
          level: 'caution',
          where: `board ${first.name}`,
          text: `The name says ${first.says}, and the board counts as ${first.wood}.`,
          figure: first.says,
          limit: first.wood,
          judged: () =>
            odd.length === 1
              ? 'Everything here is worked out for the wood that it counts as'
              : `So it is with ${odd.length} boards: ${odd.map((one) => one.name).join('; ')}`,
          mend: 'say which wood the board is, and the panels are',
          field: 'stock.wood',
        },
      ];
    },
  },
];

/** The kind of tree that a board's name speaks of, such as `ash`; of the last words of the woods in the table. */
export function woodInName(name: string): string | undefined {
  const kinds = new Set(
    woodNames.map((wood) => (wood.toLowerCase().split(/[ -]/).at(-1) ?? '').replace(/^red(?=cedar)/, '')),
  );
  return name
    .toLowerCase()
    .split(/[^a-z]+/)
    .find((word) => kinds.has(word));
}
