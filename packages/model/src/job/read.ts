import { type Document, isMap, isNode, isScalar, LineCounter, parseDocument } from 'yaml';
import type { z } from 'zod';
import type { Unit } from '../length.ts';
import { completeJob } from './complete.ts';
import type { JobFile } from './file.ts';
import type { Job } from './job.ts';
import { nearestWord } from './nearest.ts';
import { notYaml } from './notyaml.ts';
import { type FieldPath, JobError, type Problem, pathText } from './problem.ts';
import { jobFileSchema, jobSchema } from './schema.ts';

/** Longest job file that is read, in characters: far past any job, short enough to answer at once. */
const LONGEST = 2_000_000;

/**
 * Reads a job from YAML or JSON text. Every error of the file is reported at once, each with its line, column and path,
 * what was found and what would do. Defaults are filled in and listed in `assumed`.
 * @param text the file's text
 * @param file name of the file, for the messages only
 * @throws {JobError} if the text is not a job
 */
export function readJob(text: string, file = ''): Job {
  if (text.length > LONGEST) {
    throw new JobError(
      [{ path: '', found: `${text.length} characters`, message: 'the file is too long for a job' }],
      file,
    );
  }
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, merge: true, version: '1.2' });
  const locate = (path: FieldPath, key?: string) => position(document, lines, path, key);
  if (document.errors.length > 0) throw new JobError(notYaml(document.errors, text), file);
  const raw = plainData(document, file);
  const unit: Unit = raw !== null && typeof raw === 'object' && (raw as { unit?: unknown }).unit === 'mm' ? 'mm' : 'in';
  const read = jobFileSchema(unit).safeParse(raw);
  if (!read.success) {
    const problems = read.error.issues.flatMap((issue) => problemsOf(issue, raw, []));
    throw new JobError(placed(problems, locate), file);
  }
  const { job, faults } = completeJob(read.data as JobFile);
  if (faults.length > 0) {
    const problems = faults.map(({ path: full, message }) => {
      const path = writtenPath(raw, full);
      return { path, message, found: shown(valueAt(raw, path)) };
    });
    throw new JobError(placed(once(problems), locate), file);
  }
  return job;
}

/**
 * The problems of `error` with line and column looked up again in the job's text, for problems that were found after
 * reading (when solving).
 */
export function locateProblems(error: JobError, text: string, file = ''): JobError {
  const lines = new LineCounter();
  const document = parseDocument(text, { lineCounter: lines, merge: true });
  const problems = error.problems.map((problem) => {
    const path = problem.path.split(/[.[\]]+/).filter(Boolean);
    const steps = path.map((step) => (/^\d+$/.test(step) ? Number(step) : step));
    return { ...problem, ...position(document, lines, steps) };
  });
  return new JobError(problems, file);
}

/** The path down to the value that is written short, such as `wood: larch` for `wood: { all: { wood: larch } }`. */
function writtenPath(raw: unknown, path: FieldPath): FieldPath {
  const short = path.findIndex((_, i) => {
    const value = valueAt(raw, path.slice(0, i + 1));
    return value !== null && value !== undefined && typeof value !== 'object';
  });
  return short < 0 ? path : path.slice(0, short + 1);
}

function once(faults: readonly Fault[]): Fault[] {
  return [...new Map(faults.map((fault) => [`${pathText(fault.path)}|${fault.message}`, fault])).values()];
}

function plainData(document: Document, file: string): unknown {
  try {
    return document.toJS({ maxAliasCount: 100 });
  } catch {
    throw new JobError([{ path: '', found: '', message: 'too many aliases for a job file' }], file);
  }
}

interface Fault {
  readonly path: FieldPath;
  readonly key?: string;
  readonly found: string;
  readonly message: string;
}

function placed(faults: readonly Fault[], locate: (path: FieldPath, key?: string) => Place): Problem[] {
  return faults
    .map(({ path, key, found, message }) => ({
      ...locate(path, key),
      path: pathText(key === undefined ? path : [...path, key]),
      found,
      message,
    }))
    .sort((a, b) => a.line - b.line || a.column - b.column);
}

/** One issue of the schema as faults in words: the arm of a union that the value was meant for, keys by their names. */
function problemsOf(issue: z.core.$ZodIssue, raw: unknown, above: FieldPath): Fault[] {
  const path = [...above, ...(issue.path as (string | number)[])];
  const value = valueAt(raw, path);
  const found = shown(value);
  if (issue.code === 'unrecognized_keys') {
    const allowed = allowedKeys(path);
    return issue.keys.map((key) => {
      const near = nearestWord(key, allowed);
      const hint = near ? `; did you mean ${JSON.stringify(near)}` : '';
      return {
        path,
        key,
        found: shown(valueAt(value, [key])),
        message: `unknown key${hint}; allowed: ${allowed.join(', ')}`,
      };
    });
  }
  if (value === undefined) return [{ path, found: '', message: `missing${kindWanted(issue)}` }];
  if (issue.code === 'invalid_union' && issue.errors.length > 0) {
    const meant = issue.errors.find(
      (arm) => !arm.some((inner) => inner.code === 'invalid_type' && inner.path.length === 0),
    );
    if (meant) return meant.flatMap((inner) => problemsOf(inner, raw, path));
    return [{ path, found, message: `expected ${issue.errors.flat().map(kindOf).join(' or ')}` }];
  }
  const choices =
    issue.code === 'invalid_value' ? issue.values : issue.code === 'invalid_union' ? unionChoices(issue) : undefined;
  if (choices) {
    const near = typeof value === 'string' ? nearestWord(value, choices.map(String)) : undefined;
    const hint = near ? `; did you mean ${near}?` : '';
    return [{ path, found, message: `expected ${either(choices)}${hint}` }];
  }
  if (issue.code === 'invalid_type' && path.length === 0) return [{ path, found, message: NO_JOB }];
  if (issue.code === 'invalid_type') return [{ path, found, message: `expected ${kindOf(issue)}` }];
  return [{ path, found, message: issue.message }];
}

function unionChoices(issue: z.core.$ZodIssueInvalidUnion): readonly unknown[] | undefined {
  return (issue as { options?: readonly unknown[] }).options;
}

const NO_JOB = 'expected a job: fields such as job, unit and panels, each on a line of its own with a colon';

function either(choices: readonly unknown[]): string {
  return [choices.slice(0, -1).map(String).join(', '), String(choices.at(-1))].filter(Boolean).join(' or ');
}

const KINDS: Readonly<Record<string, string>> = {
  object: 'a group of fields',
  array: 'a list',
  string: 'text',
  number: 'a number',
  boolean: 'true or false',
  int: 'a whole number',
};

function kindOf(issue: z.core.$ZodIssue): string {
  const expected = 'expected' in issue ? String(issue.expected) : '';
  return KINDS[expected] ?? (expected || issue.message.replace(/^expected /, ''));
}

function kindWanted(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_union' && issue.errors.length === 0)
    return `: expected ${either(unionChoices(issue) ?? [])}`;
  if (issue.code === 'invalid_value') return `: expected ${either(issue.values)}`;
  if (issue.code === 'invalid_union') return ': expected a length or text';
  return `: expected ${kindOf(issue)}`;
}

/** A value as found: scalars as written, cut short; groups and lists by what they are, since aliases can make them huge. */
function shown(value: unknown): string {
  if (value === undefined) return '';
  if (value === null) return 'nothing';
  if (typeof value === 'object') return Array.isArray(value) ? 'a list' : 'a group of fields';
  const text = typeof value === 'number' ? String(value) : JSON.stringify(value);
  return text.length > 60 ? `${text.slice(0, 57)}...` : text;
}

function valueAt(raw: unknown, path: FieldPath): unknown {
  return path.reduce<unknown>((at, step) => (at as Record<string | number, unknown> | null | undefined)?.[step], raw);
}

type SchemaNode = {
  properties?: Record<string, SchemaNode>;
  items?: SchemaNode;
  anyOf?: SchemaNode[];
  oneOf?: SchemaNode[];
};

/** The keys that the schema knows at a path, from its JSON Schema form so that every union arm counts. */
function allowedKeys(path: FieldPath): string[] {
  let nodes: SchemaNode[] = [jobSchema() as SchemaNode];
  const spread = (node: SchemaNode): SchemaNode[] => [
    node,
    ...[...(node.anyOf ?? []), ...(node.oneOf ?? [])].flatMap(spread),
  ];
  for (const step of path) {
    nodes = nodes
      .flatMap(spread)
      .flatMap((node) => (typeof step === 'number' ? node.items : node.properties?.[step]) ?? []);
  }
  return [...new Set(nodes.flatMap(spread).flatMap((node) => Object.keys(node.properties ?? {})))];
}

type Place = { readonly line: number; readonly column: number };

/** Line and column of a key or value; of the nearest thing above it where it is missing. */
function position(document: Document, lines: LineCounter, path: FieldPath, key?: string): Place {
  for (let depth = path.length; depth >= 0; depth--) {
    const node = depth === 0 ? document.contents : document.getIn(path.slice(0, depth), true);
    if (!isNode(node) || !node.range) continue;
    const pair =
      isMap(node) && depth === path.length && key !== undefined
        ? node.items.find((item) => isScalar(item.key) && item.key.value === key)
        : undefined;
    const offset = pair && isScalar(pair.key) && pair.key.range ? pair.key.range[0] : node.range[0];
    const { line, col } = lines.linePos(offset);
    return { line, column: col };
  }
  return { line: 1, column: 1 };
}
