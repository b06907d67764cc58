import type { Assumed, Job } from '../job/job.ts';
import type { Panel } from '../panel/panel.ts';

/** Something that the job left open, in words for the bench: what, what was taken, why, and of which panels. */
export interface AssumedLine {
  readonly what: string;
  readonly taken: string;
  readonly why: string;
  /** Names of the panels that it is of; empty where it is of all of them, or of none. */
  readonly panels: readonly string[];
}

/** How a field is told: its name in words, what stands before its value where several fields share a name, its unit. */
type Words = readonly [what: string, before?: string, unit?: string];

/**
 * Fields of the job file in the words of the trade; numbers of panels, boards and runs left out. Fields of the office only,
 * such as paper and numbers of sheets, are told on no sheet.
 */
const WORDS: Readonly<Record<string, Words | undefined>> = {
  mark: ['Finest mark of the tape'],
  drawing: undefined,
  spare: ['Spare slats', '', ' %'],
  'site.where': ['Place'],
  'site.driest': ['Moisture of the wood at the place', 'driest', ' %'],
  'site.wettest': ['Moisture of the wood at the place', 'wettest', ' %'],
  'site.built': ['Moisture of the wood when built', '', ' %'],
  'finish.kind': ['Finish'],
  'finish.coats': ['Coats of finish'],
  stock: ['Boards'],
  'stock.grade': ['Grade of the boards'],
  'offcuts.grade': ['Grade of the offcuts'],
  'saw.kerf': ['Saw kerf'],
  'saw.planing': ['Taken off by planing'],
  'saw.trim.head': ['Trimmed off a board', 'at one end'],
  'saw.trim.tail': ['Trimmed off a board', 'at the other end'],
  'saw.shortest': ['Smallest piece that is ripped', 'length'],
  'saw.narrowest': ['Smallest piece that is ripped', 'width'],
  'saw.deepest': ['Deepest cut of the saw'],
  'saw.dressing': ['Taken off by dressing a rough board'],
  'saw.shaving': ['Least that a rip may take off'],
  'saw.keep': ['Leftovers kept', 'from'],
  'saw.long': ['Stiles and staves first cut long', 'by'],
  'runs.post': ['Width of the posts'],
  'runs.gap': ['Gap at the posts'],
  use: ['Use of the panel'],
  wood: ['Wood'],
  weave: ['Weave'],
  'weave.start': ['First course', 'at the first stave:'],
  fit: ['How the height is closed'],
  'fit.go': ['How the height is closed'],
  'fit.to': ['Gaps between courses', 'up to'],
  'fit.step': ['Slat height set in steps', 'of'],
  'opening.gap.left': ['Gaps round the panel', 'left'],
  'opening.gap.right': ['Gaps round the panel', 'right'],
  'opening.gap.top': ['Gaps round the panel', 'top'],
  'opening.gap.bottom': ['Gaps round the panel', 'bottom'],
  'rail.height': ['Rails', 'height'],
  'rail.depth': ['Rails', 'depth'],
  'stile.width': ['Stiles', 'width'],
  'stile.depth': ['Stiles', 'depth'],
  'groove.depth': ['Grooves', 'depth'],
  'groove.clearance': ['Grooves', 'play of the staves'],
  'stave.width': ['Staves', 'width'],
  'stave.depth': ['Staves', 'depth'],
  'stave.clearance': ['Staves', 'shorter than from groove to groove by'],
  'stave.pitch.from': ['Staves, middle to middle', 'from'],
  'stave.pitch.to': ['Staves, middle to middle', 'to'],
  'stave.pitch.prefer': ['Staves, middle to middle', 'best'],
  'slat.thickness': ['Slats', 'thickness'],
  'top.cover': ['Cover strips', 'height'],
  'screen.mounting': ['Fixed by'],
  'screen.standoff': ['Depth of the stand-off blocks'],
  'guard.floor': ['Gap over the floor'],
  'guard.drop': ['Fall at the guard'],
  'guard.dwelling': ['House'],
  'divider.stand': ['Stands on'],
  'divider.track.above': ['Room at the track', 'above'],
  'divider.track.below': ['Room at the track', 'below'],
  'divider.feet.length': ['Feet', 'length'],
  'divider.feet.height': ['Feet', 'height'],
  'divider.feet.width': ['Feet', 'width'],
  'gate.brace.kind': ['Brace of the gate'],
  'gate.hinge': ['Hinges of the gate', 'side'],
  'gate.hinges.count': ['Hinges of the gate', 'count'],
  'gate.hinges.inset': ['Hinges of the gate', 'middles from the ends'],
  'gate.swing': ['The gate opens'],
  'gate.clear.hinge': ['Gaps of the gate', 'at the hinges'],
  'gate.clear.latch': ['Gaps of the gate', 'at the latch'],
  'gate.clear.ground': ['Gaps of the gate', 'over the ground'],
  'gate.latch': ['Latch', 'above the ground'],
  'gate.load': ['Load at the latch', '', ' N'],
};

/** Fields whose nought is said in words of its own. */
const NONE: Readonly<Record<string, ((value: string) => string | undefined) | undefined>> = {
  'saw.trim.tail': (value) => (/^0\b(?![./])/.test(value) ? 'no trim at the other end' : undefined),
};

/** Paths of the office's own. */
const OFFICE = /^(?:paper|drawing)\b/;

interface Told extends AssumedLine {
  readonly key: string;
}

/**
 * What was assumed, once for all panels alike and together where it is of one thing; in the order of the job.
 * @param panels the panels solved, where they are: of a panel that gets no cover strips none are told
 */
export function assumedLines(job: Job, panels: readonly Pick<Panel, 'name' | 'cover'>[] = []): AssumedLine[] {
  const bare = new Set(panels.filter(({ cover }) => cover.height <= 0).map(({ name }) => name));
  const told: Told[] = [];
  for (const one of oncePerPanels(job, bare)) {
    const at = told.findIndex(({ key }) => key === one.key);
    const before = told[at];
    if (!before) told.push(one);
    else told[at] = { ...before, taken: `${before.taken}, ${one.taken}`, why: joined(before.why, one.why) };
  }
  return told.map(({ key: _, ...line }) => line);
}

function joined(before: string, more: string): string {
  return before.split('; ').includes(more) ? before : `${before}; ${more}`;
}

/** Every field once for the panels that it was assumed alike of. */
function oncePerPanels({ assumed, panels }: Job, bare: ReadonlySet<string>): Told[] {
  const groups = new Map<string, Assumed & { readonly field: string; readonly names: readonly string[] }>();
  for (const one of assumed) {
    const field = one.path.replace(/^panels\[\d+\]\.?/, '').replace(/\[\d+\]/g, '');
    if (OFFICE.test(one.path)) continue;
    if (field === 'saw.long' && panels.every(({ measured }) => measured)) continue;
    const panel = /^panels\[(\d+)\]/.exec(one.path);
    const name = panel ? panels[Number(panel[1])]?.name : undefined;
    if (field === 'top.cover' && name !== undefined && bare.has(name)) continue;
    const key = [field, one.value, one.reason].join('|');
    const before = groups.get(key)?.names ?? [];
    groups.set(key, { ...one, field, names: name === undefined ? before : [...before, name] });
  }
  return [...groups.values()].map(({ field, value, reason, names }) => {
    const [what, before = '', unit = ''] = WORDS[field] ?? [
      `${field.charAt(0).toUpperCase()}${field.slice(1).replaceAll('.', ' ')}`,
    ];
    const own = names.length === panels.length ? [] : names;
    return {
      what,
      taken: NONE[field]?.(value) ?? `${before === '' ? '' : `${before} `}${value}${unit}`,
      why: reason,
      panels: own,
      key: [what, ...own].join('|'),
    };
  });
}
