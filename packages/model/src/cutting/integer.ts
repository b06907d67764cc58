import type { Choice, Flow } from './flow.ts';
import { type Aim, fencesOf, keptAt, type Measure, spentOn } from './measure.ts';
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

interface Columns {
  readonly column: (spent: Partial<Record<Measure, number>>, upper: number, entries: Entries, whole?: boolean) => void;
  /** A row's place; a new row takes nothing below 0 unless told. */
  readonly row: (key: string, lower?: number, upper?: number) => number;
  readonly program: () => Program;
}

type Entries = ReadonlyMap<string, number>;

function columnsOf(aim: Aim, unit: number): Columns {
  const rowAt = new Map<string, number>();
  const rowLower: number[] = [];
  const rowUpper: number[] = [];
  const made = {
    costs: [] as number[],
    uppers: [] as number[],
    whole: [] as boolean[],
    starts: [0],
    rows: [] as number[],
    values: [] as number[],
  };
  const row = (key: string, lower = 0, upper = Number.POSITIVE_INFINITY): number => {
    const known = rowAt.get(key);
    if (known !== undefined) return known;
    rowAt.set(key, rowLower.length);
    rowUpper.push(upper);
    return rowLower.push(lower) - 1;
  };
  const put = (at: number, value: number): void => {
    if (value === 0) return;
    made.rows.push(at);
    made.values.push(value);
  };
  return {
    row,
    column: (spent, upper, entries, whole = true) => {
      made.costs.push((spent[aim.least] ?? 0) / unit);
      made.uppers.push(upper);
      made.whole.push(whole);
      for (const [key, value] of entries) put(row(key), value);
      for (const [measure, most] of Object.entries(aim.most) as [Measure, number][]) {
        const by = scaleOf(measure, most);
        put(row(`most ${measure}`, Number.NEGATIVE_INFINITY, most / by + 1e-6), (spent[measure] ?? 0) / by);
      }
      made.starts.push(made.rows.length);
    },
    program: () => ({ ...made, rowLower, rowUpper, unit }),
  };
}

/** Brings amounts of wood to numbers that a solver bears. */
function scaleOf(measure: Measure, most: number): number {
  return measure === 'waste' || measure === 'cost' ? Math.max(1, most / 1e4) : 1;
}

/** The model of a flow: wood that a choice uses must come from other choices; every piece must be made. */
export function programOf(flow: Flow, aim: Aim = { least: 'cost', most: {} }): Program {
  const { nested, rest, choices } = flow;
  const { boards, costStep } = nested.problem;
  const dearest = boards.reduce((m, b) => Math.max(m, b.cost), 1);
  const largest = boards.reduce((m, b) => Math.max(m, b.volume), 1);
  const unit = { cost: Math.max(costStep, dearest / 1e4), waste: largest / 1e4, fences: 1, cuts: 1 }[aim.least];
  const made = columnsOf(aim, unit);
  rest.need.forEach((need, d) => {
    made.row(`part ${d}`, need);
  });
  const pieces = rest.need.reduce((sum, n) => sum + n, 0);
  for (const choice of choices) {
    const entries = new Map<string, number>();
    const put = (key: string, value: number): void => {
      entries.set(key, (entries.get(key) ?? 0) + value);
    };
    enter(nested, choice, put);
    if (usesFences(aim)) for (const f of fencesOf(nested, choice)) put(`fence ${f}`, -1);
    made.column(spentOn(nested, choice), Math.min(pieces, limitOf(flow, choice)), entries);
  }
  for (const [from, to] of drops(nested, choices)) {
    const entries = new Map([
      [from, -1],
      [to, 1],
    ]);
    made.column({}, pieces * 100, entries, false);
  }
  if (aim.least === 'waste' || aim.most.waste !== undefined) {
    const ends = new Map(choices.flatMap((c) => (c.is === 'split' ? [[`bar ${c.room} ${c.to}`, c] as const] : [])));
    for (const [key, { room, to }] of ends)
      made.column({ waste: -keptAt(nested, room, to) }, pieces, new Map([[key, -1]]));
  }
  if (usesFences(aim)) {
    const fences = new Set(choices.flatMap((choice) => fencesOf(nested, choice)));
    for (const f of fences) made.column({ fences: 1 }, 1, new Map([[`fence ${f}`, pieces]]));
  }
  return made.program();
}

function usesFences({ least, most }: Aim): boolean {
  return least === 'fences' || most.fences !== undefined;
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
  if (choice.is === 'buy') {
    put(`bar ${choice.room} ${nested.rooms[choice.room]?.top[choice.board]}`, 1);
  } else if (choice.is === 'split') {
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
