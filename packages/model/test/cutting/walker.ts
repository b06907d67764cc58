import type { CutPlan, CutTree, Part, Saw, Stock } from '../../src/index.ts';

interface Input {
  readonly parts: readonly Part[];
  readonly stock: readonly Stock[];
  readonly offcuts: readonly Stock[];
  readonly saw: Saw;
}

const near = (a: number, b: number): boolean => Math.abs(a - b) < 1e-6;

/**
 * Saws a plan in plain millimetres and shares no code with the planner: every end of every piece of wood has its place
 * on the board, and what comes out is measured. Returns pieces by letter; throws at the first fault.
 */
export function sawUp(plan: CutPlan, input: Input): Map<string, number> {
  const out = new Map<string, number>();
  const taken = new Map<string, number>();
  const K = input.saw.ripKerf + 2 * input.saw.planing;
  const fail = (text: string): never => {
    throw new Error(text);
  };
  for (const b of plan.boards) {
    const wood = (b.from === 'stock' ? input.stock : input.offcuts)[b.stock] ?? fail('no such stock');
    const key = `${b.from}${b.stock}`;
    taken.set(key, (taken.get(key) ?? 0) + b.count);
    if ((taken.get(key) ?? 0) > (wood.count ?? (b.from === 'stock' ? Number.POSITIVE_INFINITY : 1)))
      fail(`too many ${key}`);
    const allowance = wood.surface === 'rough' ? 2 * (input.saw.dressing ?? input.saw.planing) : 0;
    const start = wood.trim ?? input.saw.trimHead;
    const end = wood.length - (wood.trim ?? input.saw.trimTail);
    const cut = (tree: CutTree, x0: number, x1: number, w: number, t: number): void => {
      if (tree === null) return;
      if ('part' in tree) {
        const p = input.parts.find((q) => q.letter === tree.part) ?? fail(`no part ${tree.part}`);
        const sides = near(w, p.width) && near(t, p.thickness);
        const turned = near(t, p.width) && near(w, p.thickness);
        if (!(sides || turned) || !near(x1 - x0, p.length + p.over))
          fail(`part ${p.letter} measures ${t} x ${w} x ${x1 - x0}`);
        if (p.wood !== wood.wood || (p.grade === 'clear' && wood.grade === 'knotty'))
          fail(`wrong wood for ${p.letter}`);
        if (x0 < start - 1e-6 || x1 > end + 1e-6) fail(`part ${p.letter} reaches into a trimmed end`);
        out.set(p.letter, (out.get(p.letter) ?? 0) + b.count);
      } else if ('left' in tree) {
        if (!near(tree.left, x1 - x0) || tree.left < input.saw.keepFrom - 1e-6) fail(`leftover ${tree.left}`);
        const [wide, thin] = [Math.max(w, t) + 1e-6, Math.min(w, t) + 1e-6];
        const holds = input.parts.some(
          (p) => Math.max(p.width, p.thickness) <= wide && Math.min(p.width, p.thickness) <= thin,
        );
        if (!holds) fail(`leftover ${t} x ${w} holds no part`);
      } else if (tree.cut === 'cross') {
        if (!(tree.at > 0 && tree.at < x1 - x0)) fail(`crosscut at ${tree.at} of ${x1 - x0}`);
        cut(tree.a, x0, x0 + tree.at, w, t);
        const next = x0 + tree.at + input.saw.crossKerf;
        if (tree.b !== null && next >= x1) fail('wood beyond the end');
        cut(tree.b, next, x1, w, t);
      } else {
        const size = tree.axis === 'width' ? w : t;
        if (!(tree.at > 0 && tree.at < size)) fail(`rip at ${tree.at} of ${size}`);
        if (x1 - x0 < input.saw.shortestRip - 1e-6) fail(`rip of a piece ${x1 - x0} long`);
        // What a plane takes asks for no blade.
        const planed = tree.b === null && size - tree.at <= (input.saw.shaving ?? 0) + 1e-6;
        if (!planed && size < input.saw.narrowestRip - 1e-6) fail(`rip of a piece ${size} wide`);
        const through = tree.axis === 'width' ? t : w;
        const deepest = input.saw.deepest ?? Number.POSITIVE_INFINITY;
        if (!planed && through > deepest + 1e-6) fail(`rip ${through} deep`);
        const rest = size - tree.at - K;
        if (tree.b !== null && rest <= 0) fail('wood beyond the side');
        cut(tree.a, x0, x1, tree.axis === 'width' ? tree.at : w, tree.axis === 'width' ? t : tree.at);
        cut(tree.b, x0, x1, tree.axis === 'width' ? rest : w, tree.axis === 'width' ? t : rest);
      }
    };
    const [a, c] = [wood.thickness - allowance, wood.width - allowance].sort((x, y) => x - y) as [number, number];
    if (!near(b.width, c) || !near(b.thickness, a) || !near(b.length, wood.length))
      fail(`board ${b.name} is of another size`);
    cut(b.tree, 0, wood.length, c, a);
  }
  for (const p of input.parts) {
    if ((out.get(p.letter) ?? 0) !== p.count + p.spare) fail(`${out.get(p.letter) ?? 0} pieces of ${p.letter}`);
  }
  return out;
}
