import { jobSchema, readJob } from '@wattlewright/model';

/** One field of a job file, derived from the schema and from what jobs that say little are taken to mean. */
export interface JobField {
  /** From the top of the file; `[]` for each of a list; fields of a panel without `panels[].`. */
  readonly path: string;
  /** What may stand there. */
  readonly allowed: string;
  /** What is assumed where it is absent, with the reason; the value of inch work, then of millimetre work. */
  readonly defaults: readonly string[];
}

interface Node {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly items?: Node;
  readonly enum?: readonly string[];
  readonly const?: string;
  readonly format?: string;
  readonly maxLength?: number;
  readonly anyOf?: readonly Node[];
  readonly oneOf?: readonly Node[];
}

/** Every field of a job file, in the order of the schema. Offcuts are like stock, and `every` is like a panel. */
export function jobFields(): JobField[] {
  const allowed = new Map<string, string[]>();
  for (const [name, node] of Object.entries((jobSchema('mm') as Node).properties ?? {})) {
    if (name === 'every' || name === 'offcuts') allowed.set(name, [name === 'every' ? 'as a panel' : 'as `stock`']);
    else if (name === 'panels')
      for (const [key, of] of Object.entries(node.items?.properties ?? {})) walk(key, of, allowed);
    else walk(name, node, allowed);
  }
  for (const role of ['rail', 'stile', 'stave', 'slat']) {
    for (const field of ['', '.wood', '.grade', '.rings']) allowed.delete(`wood.${role}${field}`);
    allowed.set(`wood.${role}`, ['as `wood.all`']);
  }
  const taken = assumedOf();
  return [...allowed].map(([path, texts]) => ({
    path,
    allowed: [...new Set(texts)].join(' or '),
    defaults: taken.get(path) ?? [],
  }));
}

function walk(path: string, node: Node, into: Map<string, string[]>): void {
  const add = (text: string) => into.set(path, [...(into.get(path) ?? []), text]);
  const variants = node.anyOf ?? node.oneOf;
  if (variants) {
    for (const variant of variants) walk(path, variant, into);
  } else if (node.properties) {
    for (const [key, of] of Object.entries(node.properties)) walk(`${path}.${key}`, of, into);
  } else if (node.items?.properties) {
    for (const [key, of] of Object.entries(node.items.properties)) walk(`${path}[].${key}`, of, into);
  } else {
    add(node.items ? `list of ${allowedText(node.items)}` : allowedText(node));
  }
}

function allowedText({ description = '', enum: words, const: word, format, type, maxLength }: Node): string {
  const length = /^length: .*; ([\d.]+) mm to ([\d.]+) mm: (.*)$/.exec(description);
  if (length) return `${length[1]} to ${length[2]} mm: ${length[3]}`;
  if (description) return description;
  if (words) return words.map((each) => `\`${each}\``).join(', ');
  if (word) return `\`${word}\``;
  if (format) return format;
  if (type === 'boolean') return '`true` or `false`';
  return maxLength ? `text, at most ${maxLength} characters` : 'text';
}

/** What jobs that say next to nothing are taken to mean, by path. */
function assumedOf(): Map<string, string[]> {
  // Wide enough for the usual slats and spacing to do.
  const size = { width: 1180, height: 1200 };
  const panels = [
    { name: 'sized', size },
    { name: 'fitted', opening: size },
    { name: 'ends', size, fit: { vary: 'outside' } },
    { name: 'open', size, fit: { vary: 'gaps' } },
    { name: 'blocks', size, screen: { mounting: 'blocks' } },
    { name: 'guard', use: 'guard', size },
    { name: 'gate', use: 'gate', size },
    { name: 'feet', use: 'divider', size },
    { name: 'track', use: 'divider', size, divider: { stand: 'track' } },
  ];
  const shared = { job: 'x', runs: [{ name: 'r', panels: ['sized'] }] };
  const inches = (text: string) => text.replaceAll('1180', '"46 in"').replaceAll('1200', '"48 in"');
  const jobs = panels.flatMap((panel) => [
    inches(JSON.stringify({ ...shared, unit: 'in', panels: [{ ...panel, name: 'sized' }] })),
    JSON.stringify({ ...shared, unit: 'mm', panels: [{ ...panel, name: 'sized' }] }),
  ]);
  const board = { thickness: 38, width: 140, length: 2400 };
  jobs.push(JSON.stringify({ job: 'x', unit: 'mm', panels: [{ name: 'sized', size }], stock: [board] }));
  const found = new Map<string, Map<string, string[]>>();
  for (const text of jobs) {
    for (const { path, value, reason } of readJob(text).assumed) {
      const field = path.replace(/\[\d+\]/g, '[]').replace(/^panels\[\]\./, '');
      const reasons = found.get(field) ?? new Map<string, string[]>();
      const values = reasons.get(reason) ?? [];
      if (!values.includes(value)) reasons.set(reason, [...values, value]);
      found.set(field, reasons);
    }
  }
  const told = (reasons: Map<string, string[]>) =>
    [...reasons].map(([reason, values]) => `${values.join(' or ')}: ${reason}`);
  return new Map([...found].map(([field, reasons]) => [field, told(reasons)]));
}
