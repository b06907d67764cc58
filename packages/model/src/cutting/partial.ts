import { planCuts, type SearchOptions } from './engine.ts';
import { whyAndBuy } from './impossible.ts';
import type { CutPlan, Refusal } from './plan.ts';

/**
 * The cutting plan; where some parts cannot be cut from the stock at all, the plan of the others. It stays `impossible`, with
 * the first refusal, whose text names every part that is left out.
 */
export async function planWhatCanBeCut(options: SearchOptions): Promise<CutPlan> {
  const refused: Refusal[] = [];
  let parts = options.parts;
  for (;;) {
    const plan = await planCuts({ ...options, parts });
    const { refusal } = plan;
    const [first] = refused;
    if (refusal?.part === undefined || refusal.reason === 'supply' || refusal.reason === 'input') {
      if (first === undefined) return plan;
      const text = refused.map((one) => one.text).join('; ');
      const each = refused.map(whyAndBuy);
      const { short } = refusal ?? {};
      return { ...plan, status: 'impossible', refusal: { ...first, text, each, ...(short && { short }) } };
    }
    refused.push(refusal);
    parts = parts.filter(({ letter }) => letter !== refusal.part);
  }
}

/** Letters of the parts that a plan makes. */
export function lettersCut({ boards }: Pick<CutPlan, 'boards'>): ReadonlySet<string> {
  const found = new Set<string>();
  const walk = (tree: CutPlan['boards'][number]['tree']): void => {
    if (tree === null || 'left' in tree) return;
    if ('part' in tree) found.add(tree.part);
    else {
      walk(tree.a);
      walk(tree.b);
    }
  };
  for (const { tree } of boards) walk(tree);
  return found;
}
