import type { CutPlan, CutTree, PlannedBoard } from './plan.ts';
import { isPlaned } from './plane.ts';
import type { CuttingInput } from './problem.ts';
import type { Stock } from './stock.ts';
import { ticksDown, ticksUp } from './ticks.ts';

type Size = { length: number; width: number; thickness: number };

/**
 * Walks a plan cut by cut, knowing nothing of how it was made, and says everything that is wrong with it: a cut outside
 * its piece, a rip of too small a piece, a piece that is not its part's size, wood or grade, too few or too many
 * pieces, more boards than there are, a cost that does not add up, a bound above the cost. Empty when all is well.
 */
export function checkPlan(plan: CutPlan, input: CuttingInput): string[] {
  if (plan.status === 'impossible') return [];
  const wrong: string[] = [];
  const made = new Map<string, number>();
  const used = new Map<string, number>();
  plan.boards.forEach((board, i) => {
    const stock = input[board.from][board.stock];
    if (stock === undefined) {
      wrong.push(`board ${i}: no such stock`);
      return;
    }
    const key = `${board.from} ${board.stock}`;
    used.set(key, (used.get(key) ?? 0) + board.count);
    walkBoard({ board, stock, input, made, say: (text) => wrong.push(`board ${i}: ${text}`) });
  });
  for (const part of input.parts) {
    const count = made.get(part.letter) ?? 0;
    const need = input.parts.reduce((n, p) => (p.letter === part.letter ? n + p.count + p.spare : n), 0);
    if (count !== need) wrong.push(`part ${part.letter}: ${count} pieces cut, ${need} wanted`);
  }
  for (const [key, count] of used) {
    const [from, index] = key.split(' ') as ['stock' | 'offcuts', string];
    const most = input[from][Number(index)]?.count ?? (from === 'offcuts' ? 1 : Number.POSITIVE_INFINITY);
    if (count > most) wrong.push(`${key}: ${count} used, ${most} there`);
  }
  const total = plan.shopping.reduce((sum, line) => sum + (line.total ?? 0), 0);
  if (plan.costIs === 'price' && Math.abs(total - plan.cost) > 0.005) wrong.push(`cost ${plan.cost}, list ${total}`);
  if (plan.bound > plan.cost + 0.005) wrong.push(`bound ${plan.bound} above cost ${plan.cost}`);
  const { parts, dust, kept, waste } = plan.shares;
  if (plan.boards.length > 0 && Math.abs(parts + dust + kept + waste - 1) > 1e-9) wrong.push('shares do not make 1');
  return wrong;
}

interface Walk {
  readonly board: PlannedBoard;
  readonly stock: Stock;
  readonly input: CuttingInput;
  readonly made: Map<string, number>;
  readonly say: (text: string) => void;
}

function walkBoard(walk: Walk): void {
  const { board, stock, input } = walk;
  const { saw } = input;
  const off = stock.surface === 'rough' ? 2 * ticksUp(saw.dressing ?? saw.planing) : 0;
  const sides = [ticksDown(stock.thickness) - off, ticksDown(stock.width) - off].sort((a, b) => a - b);
  const size = { length: ticksDown(stock.length), width: sides[1] as number, thickness: sides[0] as number };
  for (const name of ['length', 'width', 'thickness'] as const) {
    if (Math.round(board[name] * 640) !== size[name]) walk.say(`${name} ${board[name]} is not the stock's`);
  }
  const head = ticksUp(stock.trim ?? saw.trimHead);
  const tail = ticksUp(stock.trim ?? saw.trimTail);
  const root = board.tree;
  let body: CutTree = root;
  if (head > 0) {
    const squared = root !== null && 'cut' in root && root.cut === 'cross' && root.a === null;
    if (!squared || Math.round(root.at * 640) < head) walk.say('the head is not squared');
    else {
      size.length -= Math.round(root.at * 640) + ticksUp(saw.crossKerf);
      body = root.b;
    }
  }
  walkTree(walk, body, size, tail);
}

/** `tail` is what must be trimmed off this piece's far end before a part may reach it; 0 where nothing must. */
function walkTree(walk: Walk, tree: CutTree, size: Size, tail: number): void {
  const { saw } = walk.input;
  if (tree === null) return;
  if ('left' in tree) {
    if (!holdsPart(walk, size)) walk.say(`leftover of ${tree.left} is too thin for any part`);
    if (Math.round(tree.left * 640) !== size.length) walk.say(`leftover of ${tree.left} is ${size.length / 640}`);
    if (size.length < ticksUp(saw.keepFrom)) walk.say(`leftover of ${tree.left} is too short to keep`);
    return;
  }
  if ('part' in tree) {
    if (tail > 0) walk.say(`part ${tree.part} reaches an end that is to be trimmed`);
    finish(walk, tree.part, size);
    return;
  }
  const along = tree.cut === 'cross' ? 'length' : tree.axis;
  const cut = Math.round(tree.at * 640);
  const lost = tree.cut === 'cross' ? ticksUp(saw.crossKerf) : ticksUp(saw.ripKerf) + 2 * ticksUp(saw.planing);
  if (Math.abs(cut / 640 - tree.at) > 1e-9) walk.say(`cut at ${tree.at} is off the grid`);
  if (cut <= 0 || cut >= size[along]) walk.say(`cut at ${tree.at} is outside its piece of ${size[along] / 640}`);
  if (tree.cut === 'rip' && !isPlaned(tree, size[along] / 640, saw)) {
    if (size.length < ticksUp(saw.shortestRip)) walk.say(`rip of a piece ${size.length / 640} long`);
    if (size[along] < ticksUp(saw.narrowestRip)) walk.say(`rip of a piece ${size[along] / 640} wide`);
    const through = size[tree.axis === 'width' ? 'thickness' : 'width'];
    if (saw.deepest !== undefined && through > ticksDown(saw.deepest)) walk.say(`rip ${through / 640} deep`);
  }
  const rest = size[along] - cut - lost;
  const freed = tree.cut === 'cross' && (rest >= tail || tree.b === null);
  if (tree.cut === 'cross' && size.length - cut < tail) walk.say(`the cut at ${tree.at} leaves too little trim`);
  walkTree(walk, tree.a, { ...size, [along]: cut }, freed ? 0 : tail);
  if (rest <= 0 && tree.b !== null) walk.say(`nothing is left beyond the cut at ${tree.at}`);
  else walkTree(walk, tree.b, { ...size, [along]: rest }, tail);
}

/** Whether some part of the job, of the board's wood and grade, could be ripped from a section. */
function holdsPart({ stock, input }: Walk, { width, thickness }: Size): boolean {
  const [thin, wide] = [width, thickness].sort((a, b) => a - b) as [number, number];
  return input.parts.some((part) => {
    const [a, b] = [ticksUp(part.thickness), ticksUp(part.width)].sort((x, y) => x - y) as [number, number];
    const grown = part.wood === stock.wood && (part.grade !== 'clear' || stock.grade === 'clear');
    return grown && a <= thin && b <= wide;
  });
}

function finish(walk: Walk, letter: string, size: Size): void {
  const { board, stock, input, made } = walk;
  made.set(letter, (made.get(letter) ?? 0) + board.count);
  const part = input.parts.find((p) => p.letter === letter);
  if (part === undefined) {
    walk.say(`no part ${letter}`);
    return;
  }
  const wantedSides = [ticksUp(part.thickness), ticksUp(part.width)].sort((a, b) => a - b).join();
  const sides = [size.thickness, size.width].sort((a, b) => a - b).join();
  if (sides !== wantedSides || size.length !== ticksUp(part.length + part.over)) {
    walk.say(`part ${letter} comes out ${size.thickness / 640} x ${size.width / 640} x ${size.length / 640}`);
  }
  if (part.wood !== stock.wood) walk.say(`part ${letter} is cut from ${stock.wood}`);
  if (part.grade === 'clear' && stock.grade !== 'clear') walk.say(`part ${letter} is cut from knotty stock`);
}
