import fc from 'fast-check';

/** A job file as data, ready for `JSON.stringify`, which is YAML too. Lengths are numbers in the job's unit. */
export interface JobObject {
  readonly job: string;
  readonly unit: 'in' | 'mm';
  readonly panels: readonly PanelObject[];
  readonly [field: string]: unknown;
}

/** One panel of such a file. */
interface PanelObject {
  readonly name: string;
  readonly use: (typeof uses)[number];
  readonly [field: string]: unknown;
}

/** What the jobs are to be like; absent: anything. */
export interface JobsWanted {
  readonly use?: PanelObject['use'];
  readonly unit?: JobObject['unit'];
  /** Most panels of one job; 3 if absent. */
  readonly panels?: number;
  /** Least and most outside size of a panel, mm; 300 to 4000 if absent. */
  readonly from?: number;
  readonly to?: number;
}

/** Every use a panel can have. */
export const uses = ['screen', 'guard', 'divider', 'gate'] as const;

const woods = [
  'western redcedar',
  'Alaska yellow-cedar',
  'white oak',
  'western larch',
  'ponderosa pine',
  'teak',
] as const;
const names = ['Window', 'Bay', 'Größe 2 µ', 'Ωmega <b>&"quoted"', 'Seaward edge, long and named at length'] as const;
const weaves = ['plain', 'two-over-two twill', 'two-over-two basket', 'two-over-one twill', 'paired courses'] as const;

/** A size between two others, mm, as a number of the unit that a tape can show. */
type Between = (share: number, from: number, to: number) => number;

const share = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);
const coin = fc.boolean();

/**
 * Jobs that can be read and solved, of every use, both units, panels of 300 mm to 4 m, every fit, weave and mounting,
 * with or without opening, site, wind, stock, end stops and measured slats. They are no good designs: most trip findings.
 */
export function arbitraryJob(wanted: JobsWanted = {}): fc.Arbitrary<JobObject> {
  return fc
    .record({
      unit: wanted.unit ? fc.constant(wanted.unit) : fc.constantFrom('in' as const, 'mm' as const),
      seeds: fc.array(panelSeed(wanted), { minLength: 1, maxLength: wanted.panels ?? 3 }),
      site: fc.constantFrom<object | undefined>(
        undefined,
        { where: 'outdoors', place: 'Portland, ME' },
        { where: 'outdoors', driest: 8, wettest: 20, built: 12, wind: { speed: 49, exposure: 'C' } },
        { where: 'indoors', climate: { temperature: 20, humidity: { driest: 30, wettest: 65 } } },
      ),
      stocked: coin,
      finish: fc.constantFrom('penetrating', 'film', 'none'),
      run: fc.record({ wanted: coin, post: share, gap: share }),
    })
    .map(({ unit, seeds, site, stocked, finish, run }) => {
      const between = betweenIn(unit);
      const panels = seeds.map((seed, i) => panelObject(seed, i, between, unit === 'in' ? 25.4 : 1));
      const used = [...new Set(panels.map(({ wood }) => wood))];
      return {
        job: 'Arbitrary',
        unit,
        panels,
        ...(site && { site }),
        ...(stocked && { stock: used.flatMap((wood) => boards(wood, between)) }),
        finish: { kind: finish },
        ...(run.wanted && {
          runs: [
            {
              name: 'Run',
              panels: panels.map(({ name }) => name),
              post: between(run.post, 45, 140),
              gap: between(run.gap, 0, 20),
            },
          ],
        }),
      };
    });
}

function betweenIn(unit: JobObject['unit']): Between {
  // Rounded inwards, so that no size leaves its range: sixteenths of an inch or whole millimetres.
  const step = unit === 'in' ? 25.4 / 16 : 1;
  const per = unit === 'in' ? 1 / 16 : 1;
  return (at, from, to) => {
    const least = Math.ceil(from / step - 1e-9);
    const most = Math.max(least, Math.floor(to / step + 1e-9));
    return (least + Math.round(at * (most - least))) * per;
  };
}

interface PanelSeed {
  readonly use: PanelObject['use'];
  readonly name: string;
  readonly wood: string;
  readonly weave: string | { readonly rows: readonly string[]; readonly start?: 'front' | 'behind' };
  readonly sizes: readonly number[];
  readonly width: number;
  readonly height: number;
  readonly fit: 'slats' | 'outside up' | 'outside down' | 'outside nearest' | 'gaps';
  readonly staves: number | undefined;
  readonly opening: boolean;
  readonly stop: boolean;
  readonly measured: number | undefined;
  readonly count: number;
  readonly choice: number;
  readonly yes: boolean;
}

function panelSeed({ use, from = 300, to = 4000 }: JobsWanted): fc.Arbitrary<PanelSeed> {
  const outside = share.map((at) => from + at * (to - from));
  const row = (length: number) => fc.string({ unit: fc.constantFrom('+', '-'), minLength: length, maxLength: length });
  const rows = fc.integer({ min: 1, max: 4 }).chain((length) => fc.array(row(length), { minLength: 1, maxLength: 4 }));
  return fc.record({
    use: use ? fc.constant(use) : fc.constantFrom(...uses),
    name: fc.constantFrom(...names),
    wood: fc.constantFrom(...woods),
    weave: fc.oneof(
      { weight: 3, arbitrary: fc.constantFrom(...weaves) },
      { weight: 1, arbitrary: rows.map((own) => ({ rows: own })) },
    ),
    sizes: fc.array(share, { minLength: 12, maxLength: 12 }),
    width: outside,
    height: outside,
    fit: fc.constantFrom('slats', 'outside up', 'outside down', 'outside nearest', 'gaps'),
    staves: fc.option(share, { nil: undefined }),
    opening: coin,
    stop: fc.nat({ max: 3 }).map((n) => n === 0),
    measured: fc.option(share, { nil: undefined, freq: 3 }),
    count: fc.integer({ min: 1, max: 3 }),
    choice: fc.nat({ max: 11 }),
    yes: coin,
  });
}

/** @param mm millimetres in one of the job's unit */
function panelObject(
  seed: PanelSeed,
  i: number,
  between: Between,
  mm: number,
): PanelObject & { readonly wood: string } {
  const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, k = 0, l = 0] = seed.sizes;
  const exact = (size: number) => between(0, size, size + 2);
  const rail = { height: between(a, 25, 90), depth: between(b, 32, 60) };
  const stile = { width: between(c, 25, 90), depth: rail.depth };
  const stave = { width: between(d, 12, 30), depth: between(e, 8, Math.min(20, rail.depth * mm - 15)) };
  const thickness = between(f, 2, 8);
  const clear = { width: seed.width - 2 * stile.width * mm, height: seed.height - 2 * rail.height * mm };
  const height = between(g, 18, Math.max(20, Math.min(60, clear.height / 4)));
  const most = Math.min(14, 1 + Math.floor((clear.width - stave.width * mm) / (stave.width * mm * 1.6)));
  const measured = seed.measured;
  const thick = measured === undefined ? thickness : thickness + between(1, 1, 2);
  return {
    name: `${seed.name} ${i + 1}`,
    use: seed.use,
    count: seed.count,
    ...(seed.opening
      ? { opening: { width: exact(seed.width + 25), height: exact(seed.height + 130) } }
      : { size: { width: exact(seed.width), height: exact(seed.height) } }),
    rail,
    stile,
    groove: { depth: between(h, 6, Math.min(25, rail.height * mm - 6)), clearance: 1 / mm },
    stave:
      seed.staves === undefined ? stave : { ...stave, count: 2 + Math.round(seed.staves * (Math.max(2, most) - 2)) },
    slat: {
      thickness,
      height,
      ...(seed.stop && { stop: exact(((stave.depth + thick) * mm) / 2 + 3 + 12 * k) }),
    },
    fit: fitObject(seed.fit, height),
    weave: seed.weave,
    wood: seed.wood,
    ...(measured !== undefined && {
      measured: {
        stack: exact(Math.max(150, clear.height * (0.9 + 0.15 * measured))),
        thickness: thick,
        broken: seed.count,
      },
    }),
    [seed.use]: useObject(seed, l, between),
  };
}

function fitObject(fit: PanelSeed['fit'], height: number): object {
  if (fit === 'slats') return { vary: 'slats', from: height * 0.8, to: height * 1.3, prefer: height };
  if (fit === 'gaps') return { vary: 'gaps', from: 0, to: height };
  return { vary: 'outside', go: fit.split(' ')[1] };
}

function useObject({ use, choice, yes, sizes }: PanelSeed, at: number, between: Between): object {
  const pick = <T>(...of: readonly T[]) => of[choice % of.length] as T;
  const other = sizes[10] ?? 0;
  switch (use) {
    case 'screen':
      return {
        mounting: pick('stiles', 'blocks', 'posts'),
        ...(yes && { glass: between(at, 10, 120), bedroom: true, above: between(other, 0, 6000) }),
        into: choice > 5 ? 'wood' : 'masonry',
      };
    case 'guard':
      return {
        drop: between(at, 0, 5000),
        ...(yes && { cap: { height: between(at, 20, 45), depth: between(other, 40, 140) } }),
        ...(choice > 8 && { top: between(other, 500, 1500) }),
        dwelling: pick('one or two family', 'other'),
      };
    case 'divider':
      return yes ? { stand: 'track' } : { stand: 'feet', feet: { length: between(at, 200, 900) } };
    case 'gate':
      return {
        hinge: pick('left', 'right'),
        swing: pick('towards the front', 'towards the front', 'towards the back'),
        brace: { kind: pick('cable', 'strut', 'none'), ...(choice > 8 && { from: 'hinge bottom' }) },
        hinges: { count: 2 + (choice % 3), ...(yes && { inset: between(at, 40, 300) }) },
        load: Math.round(at * 900),
        pool: yes,
      };
  }
}

/** Boards big enough for every section and length that these jobs ask for. */
function boards(wood: string, between: Between): object[] {
  return [
    { wood, thickness: between(0, 95, 97), width: between(0, 200, 202), length: between(0, 4800, 4802), price: 60 },
    { wood, thickness: between(0, 45, 47), width: between(0, 150, 152), length: between(0, 4200, 4202), price: 25 },
    { wood, thickness: between(0, 25, 27), width: between(0, 150, 152), length: between(0, 3000, 3002), price: 12 },
  ];
}
