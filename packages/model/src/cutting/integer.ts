import type { Choice, Flow } from './flow.ts';
import type { BoardRoom, Nested } from './nested.ts';

/** A whole-number program in sparse columns; costs are in units of `unit`. */
export interface Program {
  readonly costs: readonly number[];
  readonly uppers: readonly number[];
  readonly whole: readonly boolean[];
  readonly starts: readonly number[];
  readonly rows: readonly number[];
  readonly values: readonly number[];
  readonly rowLower: readonly number[];
  readonly rowUpper: readonly number[];
  readonly unit: number;
}

/** The model of a flow: wood that a choice uses must come from other choices; every piece must be made. */
export function programOf(flow: Flow): Program {
  const { nested, rest } = flow;
  const rowAt = new Map<string, number>();
  const rowLower: number[] = [];
  const rowUpper: number[] = [];
  const row = (key: string, lower = 0, upper = Number.POSITIVE_INFINITY): number => {
    const known = rowAt.get(key);
    if (known !== undefined) return known;
    rowAt.set(key, rowLower.length);
    rowUpper.push(upper);
    return rowLower.push(lower) - 1;
  };
  const dearest = nested.problem.boards.reduce((m, b) => Math.max(m, b.cost), 1);
  const unit = Math.max(nested.problem.costStep, dearest / 1e4);
  rest.need.forEach((need, d) => {
    row(`part ${d}`, need);
  });
  const pieces = rest.need.reduce((sum, n) => sum + n, 0);
  const made = {
    costs: [] as number[],
    uppers: [] as number[],
    whole: [] as boolean[],
    starts: [0],
    rows: [] as number[],
    values: [] as number[],
  };
  const column = (cost: number, upper: number, whole: boolean, entries: ReadonlyMap<string, number>): void => {
    made.costs.push(cost);
    made.uppers.push(upper);
    made.whole.push(whole);
    for (const [key, value] of entries) {
      if (value === 0) continue;
      made.rows.push(row(key));
      made.values.push(value);
    }
    made.starts.push(made.rows.length);
  };
  for (const choice of flow.choices) {
    const entries = new Map<string, number>();
    const put = (key: string, value: number): void => {
      entries.set(key, (entries.get(key) ?? 0) + value);
    };
    enter(nested, choice, put);
    column(costOf(nested, choice) / unit, Math.min(pieces, limitOf(flow, choice)), true, entries);
  }
  for (const [from, to] of drops(nested, flow.choices))
    column(
      0,
      pieces * 100,
      false,
      new Map([
        [from, -1],
        [to, 1],
      ]),
    );
  return { ...made, rowLower, rowUpper, unit };
}

function costOf(nested: Nested, choice: Choice): number {
  return choice.is === 'buy' ? (nested.rooms[choice.room]?.boards[choice.board]?.cost ?? 0) : 0;
}

function limitOf({ rest }: Flow, choice: Choice): number {
  if (choice.is === 'buy') return rest.left[choice.room]?.[choice.board] as number;
  if (choice.is !== 'cut') return Number.POSITIVE_INFINITY;
  const used = new Map<number, number>();
  for (const d of choice.pieces) used.set(d, (used.get(d) ?? 0) + 1);
  return [...used].reduce(
    (most, [d, n]) => Math.min(most, Math.ceil((rest.need[d] as number) / n)),
    Number.POSITIVE_INFINITY,
  );
}

/** What a choice yields (above 0) and uses (below 0). */
function enter(nested: Nested, choice: Choice, put: (key: string, value: number) => void): void {
  if (choice.is === 'buy') put(`bar ${choice.room} ${nested.rooms[choice.room]?.top[choice.board]}`, 1);
  else if (choice.is === 'split') {
    put(`bar ${choice.room} ${choice.from}`, -1);
    put(`segment ${choice.room} ${choice.segment}`, 1);
    if (choice.to > 0) put(`bar ${choice.room} ${choice.to}`, 1);
  } else if (choice.is === 'rip') {
    const room = nested.rooms[choice.room] as BoardRoom;
    put(`segment ${choice.room} ${choice.segment}`, -1);
    room.patterns[choice.pattern]?.counts.forEach((n, s) => {
      if (n > 0) put(stick(room.kinds[s] as number, room.inKind[s]?.[choice.segment] as number), n);
    });
  } else {
    put(stick(choice.kind, choice.position), -1);
    for (const d of choice.pieces) put(`part ${d}`, 1);
  }
}

function stick(kind: number, position: number): string {
  return `stick ${kind} ${position}`;
}

/** Pairs of stick rows where the first may serve as the second: the next shorter, or knotty for clear. */
function drops(nested: Nested, choices: readonly Choice[]): [string, string][] {
  const used = nested.kinds.map(() => new Set<number>());
  for (const choice of choices) {
    if (choice.is === 'cut') used[choice.kind]?.add(choice.position);
    if (choice.is !== 'rip') continue;
    const room = nested.rooms[choice.room] as BoardRoom;
    room.patterns[choice.pattern]?.counts.forEach((n, s) => {
      if (n > 0) used[room.kinds[s] as number]?.add(room.inKind[s]?.[choice.segment] as number);
    });
  }
  const pairs: [string, string][] = [];
  const sorted = used.map((set) => [...set].sort((a, b) => b - a));
  sorted.forEach((list, k) => {
    list.slice(1).forEach((to, i) => {
      pairs.push([stick(k, list[i] as number), stick(k, to)]);
    });
    const clear = nested.clearTwin[k] as number;
    if (clear < 0) return;
    for (const from of sorted[clear] ?? []) {
      const size = nested.kinds[clear]?.at[from] as number;
      const to = list.find((p) => (nested.kinds[k]?.at[p] as number) <= size);
      if (to !== undefined) pairs.push([stick(clear, from), stick(k, to)]);
    }
  });
  return pairs;
}
